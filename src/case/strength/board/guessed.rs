//! What was not told of a transom: the least and the most that boats of her construction are built with.

use super::{Board, Knee, supports::Sort};
use crate::catalog::{Entry, Material};
use crate::job::{self, Bond, Construction};
use crate::quantity::{Dimensioned, inches};
use crate::reading::reading;
use crate::rig::{Layer, Missing, Rig};

/// A reading of the transom's build that the job does not have, and that is guessed at from both sides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Open {
    /// The skins on its core.
    Skins,
    /// Knees.
    Knees,
    /// Stringers' ends.
    Stringers,
    /// How sides and bottom hold it.
    Bonds,
    /// Whether the splash-well's floor does.
    WellFloor,
    /// Whether the deck holds its shoulders beside the cutout.
    Deck,
}

/// Which readings that were not told are taken at their best; the others are taken at their least.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Guessed {
    best: [bool; Open::ALL.len()],
}

/// Skins of a moulded transom, outside and inside, at the least and at the most. Common practice, no source.
const MOULDED_IN: [[f64; 2]; 2] = [[0.125, 0.0625], [0.3125, 0.3125]];
/// Plate outside the board of a riveted and of a welded boat, at the least and at the most. Common practice, no source.
const RIVETED_IN: [f64; 2] = [0.05, 0.1];
const WELDED_IN: [f64; 2] = [0.125, 0.25];
/// Lighter than this a material is a core or planking, on which skins may lie, kg/m³: laminates and metals are heavier than
/// water. Common practice, no source.
const CORE_DENSITY: f64 = 1000.0;
/// No more of a thickness than this part is skins. Common practice, no source.
const MOST_SKIN: f64 = 0.6;
/// Pairs of knees and of stringers as the best of boats have them: off the centreline, and up as a part of the transom or in
/// inches. Common practice, no source.
const KNEES_IN: [f64; 2] = [12.0, 30.0];
const KNEES_UP: f64 = 0.9;
const STRINGERS_IN: [f64; 2] = [16.0, 10.0];

impl Open {
    /// All of them, the weightiest first.
    pub const ALL: [Open; 6] = [Open::Skins, Open::Knees, Open::Stringers, Open::Bonds, Open::WellFloor, Open::Deck];

    /// Those of this rig.
    pub fn of(rig: &Rig) -> Vec<Open> {
        let structure = &rig.structure;
        let is_open = |open: &Open| match open {
            Open::Skins => skins_open(rig),
            Open::Knees => structure.knees.reading().is_none(),
            Open::Stringers => structure.stringers.reading().is_none(),
            Open::Bonds => structure.said.sides.is_none() || structure.said.bottom.is_none(),
            Open::WellFloor => {
                structure.said.well_floor.is_none()
                    && matches!(rig.job.transom.splash_well().reading(), Some(crate::job::SplashWell::Floor(_)))
            }
            Open::Deck => structure.said.deck.is_none() && rig.job.transom.cutout_width().reading().is_some(),
        };
        Open::ALL.into_iter().filter(is_open).collect()
    }

    /// The reading that settles it.
    pub fn missing(self) -> Missing {
        Missing::one(match self {
            Open::Skins => reading!(job::Structure.lay_up),
            Open::Knees => reading!(job::Structure.knees),
            Open::Stringers => reading!(job::Structure.stringers),
            Open::Bonds => reading!(job::Structure.sides),
            Open::WellFloor => reading!(job::Structure.well_floor),
            Open::Deck => reading!(job::Structure.deck),
        })
    }
}

/// Whether skins may lie on what the transom was said to be of.
fn skins_open(rig: &Rig) -> bool {
    let structure = &rig.structure;
    let light = |layer: &Layer| layer.material.spec.density.value.si() < CORE_DENSITY;
    !structure.layers_told
        && rig.job.boat.construction != Some(Construction::PlywoodOnFrames)
        && structure.lay_up.reading().is_some_and(|layers| layers.iter().all(light))
}

impl Guessed {
    /// Everything at its least.
    pub const LEAST: Guessed = Guessed { best: [false; Open::ALL.len()] };
    /// Everything at its best.
    pub const BEST: Guessed = Guessed { best: [true; Open::ALL.len()] };

    /// Everything at its least but this.
    pub fn only(open: Open) -> Guessed {
        let mut guessed = Guessed::LEAST;
        guessed.best[open as usize] = true;
        guessed
    }

    fn is_best(self, open: Open) -> bool {
        self.best[open as usize]
    }

    /// The layers as told, or with the skins guessed at; the thickness told is of all of them.
    pub(super) fn layers(self, rig: &Rig) -> Result<Vec<Layer>, Missing> {
        let told = rig.structure.lay_up.ask()?.clone();
        let [core] = told.as_slice() else { return Ok(told) };
        if !skins_open(rig) {
            return Ok(told);
        }
        let best = usize::from(self.is_best(Open::Skins));
        let [glass, plate] = &rig.structure.usual_skin;
        let (skin, skins): (&Option<Entry<Material>>, [f64; 2]) = match rig.job.boat.construction {
            Some(Construction::RivetedPlate) => (plate, [RIVETED_IN[best], 0.0]),
            Some(Construction::WeldedPlate) => (plate, [WELDED_IN[best], 0.0]),
            Some(Construction::MouldedGlass) => (glass, MOULDED_IN[best]),
            // Planks or plywood without skins are the least of all.
            Some(Construction::PlywoodOnFrames) | None => (glass, if best == 1 { MOULDED_IN[1] } else { [0.0; 2] }),
        };
        let Some(skin) = skin else { return Ok(told) };
        let whole = core.thickness;
        let sum = inches(skins[0] + skins[1]);
        let shrunk = (MOST_SKIN * whole.si() / sum.si().max(f64::MIN_POSITIVE)).min(1.0);
        let [outer, inner] = skins.map(|skin| shrunk * inches(skin));
        let layer = |thickness| Layer { material: skin.clone(), thickness };
        let board = Layer { material: core.material.clone(), thickness: whole - outer - inner };
        let all = [layer(outer), board, layer(inner)];
        Ok(all.into_iter().filter(|layer| layer.thickness.si() > 0.0).collect())
    }

    /// How sides and bottom hold it.
    pub(super) fn bonds(self, rig: &Rig) -> [Bond; 2] {
        let moulded = rig.job.boat.construction != Some(Construction::PlywoodOnFrames);
        let guess = if self.is_best(Open::Bonds) && moulded { Bond::BuiltIn } else { Bond::Bonded };
        [rig.structure.said.sides, rig.structure.said.bottom].map(|said| said.unwrap_or(guess))
    }

    /// Puts in what is guessed to stand behind it.
    pub(super) fn support(self, rig: &Rig, board: &mut Board) {
        let pair = |board: &Board, sort: Sort, y: f64, height: Option<f64>| -> Vec<Knee> {
            let y = inches(y).si();
            [y, -y].into_iter().filter_map(|y| board.upright(sort, y, height, None, None)).collect()
        };
        let open = Open::of(rig);
        let best = |which: Open| open.contains(&which) && self.is_best(which);
        if best(Open::Knees) {
            let up = KNEES_UP * board.top;
            board.knees = KNEES_IN.iter().flat_map(|y| pair(board, Sort::Knee, *y, Some(up))).collect();
        }
        if best(Open::Stringers) {
            let [y, height] = STRINGERS_IN;
            board.stringers = pair(board, Sort::Stringer, y, Some(inches(height).si()));
        }
        if best(Open::WellFloor) {
            board.add_well_floor(rig);
        }
        if best(Open::Deck) {
            board.hold_shoulders(Bond::Bonded);
        }
    }
}
