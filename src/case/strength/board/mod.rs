//! The transom as a plate: its outline, what it is made of, what holds it.

mod guessed;
mod material;
mod outline;
mod supports;

use std::sync::Arc;

use uom::si::f64::{Angle, Length};

use crate::case::stern::Stern;
use crate::catalog;
use crate::job::Craft;
use crate::physics::strength::knockdown::KnockDown;
use crate::physics::strength::panel::{
    Bed, EdgeSupport, Factored, Fineness, Layup, Line, Meshed, Panel, PanelError, Ply, Point, Section, Shape,
    SupportPart,
};
use crate::quantity::{Basis, Dimensioned, Text, inches, say};
use crate::reading::Absent;
use crate::rig::{Layer, Rig};

pub use guessed::{Guessed, Open};
pub(in crate::case) use material::ply_material;
use material::{has_grain, weakened};
use outline::Outline;
pub use supports::Knee;

/// The transom, in its own plane: `[y, z]` in m, to port and up from the bottom on the centreline.
#[derive(Clone, Debug)]
pub struct Board {
    /// Where it stands in boat axes.
    pub(in crate::case) stern: Stern,
    /// Its outline as the mesh follows it.
    pub shape: Shape,
    /// Its corners, anticlockwise.
    pub outline: Vec<Point>,
    /// How the edge from each corner to the next is held.
    pub edges: Vec<EdgeSupport>,
    /// Height of the top edge where the engines hang, m.
    pub top: f64,
    /// Half the width of that edge, m.
    pub half_top: f64,
    /// Rise of the bottom for a metre off the centreline, along the transom.
    pub rise: f64,
    /// Where the bottom ends, m.
    pub chine: Point,
    /// Its layers from the outside in.
    pub layers: Vec<Layer>,
    /// Index of the thickest layer: the core, or the whole of it.
    pub core: usize,
    /// What stiffens its top edge.
    pub lines: Vec<Line>,
    /// Its knees.
    pub knees: Vec<Knee>,
    /// The ends of stringers on it.
    pub stringers: Vec<Knee>,
    /// The splash-well's floor.
    pub floor: Option<Bed>,
    /// What its tabs bear, N/m.
    pub tab: f64,
    /// Where its height is from, as a legend says it.
    pub height_from: &'static str,
    /// Where its lean is from, likewise.
    pub lean_from: &'static str,
    /// What was taken for granted.
    pub assumed: Vec<Text>,
}

impl Board {
    /// The transom of a rig; what was not told of it as `guessed`.
    ///
    /// # Errors
    /// What is missing, or why no plate can be made of it.
    pub fn of(rig: &Rig, guessed: Guessed) -> Result<Board, Absent> {
        let (boat, transom) = (&rig.job.boat, &rig.job.transom);
        if boat.craft == Some(Craft::Multihull) {
            return Err(Absent::CannotBe(say!(
                "What a boat of several hulls hangs her engines on is no transom from chine to chine, as it is reckoned here: ask her builder."
            )));
        }
        let (layers, height, width, deadrise) =
            (guessed.layers(rig), transom.height().ask(), boat.transom_width().ask(), boat.deadrise().ask());
        let (Ok(layers), Ok(height), Ok(width), Ok(deadrise)) = (&layers, &height, &width, &deadrise) else {
            let missing = [layers.err(), height.err(), width.err(), deadrise.err()];
            return Err(Absent::Waits(missing.into_iter().flatten().collect()));
        };
        let mut assumed = Vec::new();
        let lean = transom.angle.as_ref().map(|angle| angle.value);
        if lean.is_none() {
            assumed.push(Text::from("The transom is taken to stand upright under its loads: its angle is not given."));
        }
        let stern = Stern::new(height.value, lean.unwrap_or_default());
        let outline =
            Outline::of(rig, height.value, width.value, deadrise.value, stern.angle, guessed.bonds(rig), &mut assumed)?;
        let core = (0..layers.len())
            .max_by(|a, b| layers[*a].thickness.si().total_cmp(&layers[*b].thickness.si()))
            .unwrap_or(0);
        let mut board = Board {
            stern,
            shape: outline.shape,
            outline: outline.corners,
            edges: outline.edges,
            top: height.value.si(),
            half_top: outline.half_top,
            rise: outline.rise,
            chine: outline.chine,
            layers: layers.to_vec(),
            core,
            lines: Vec::new(),
            knees: Vec::new(),
            stringers: Vec::new(),
            floor: None,
            tab: tab(rig),
            height_from: height.basis.origin(),
            lean_from: transom.angle.as_ref().map_or(Basis::Assumed, |angle| angle.basis).origin(),
            assumed,
        };
        board.add_supports(rig);
        guessed.support(rig, &mut board);
        Ok(board)
    }

    /// How far it leans from vertical, top aft.
    pub fn lean(&self) -> Angle {
        self.stern.angle
    }

    /// How far a face stands aft, level, that stands so far off the transom square to it.
    pub fn level(&self, setback: Length) -> Length {
        setback / self.stern.angle.cos()
    }

    /// Height of the bottom edge at `y`, m; `None` beyond the chine.
    pub fn bottom(&self, y: f64) -> Option<f64> {
        (y.abs() < self.chine[0]).then(|| self.rise * y.abs())
    }

    /// Its thickness, m.
    pub fn thickness(&self) -> f64 {
        self.layers.iter().map(|layer| layer.thickness.si()).sum()
    }

    /// Where its layers are from, as a legend says it: told one by one, its whole thickness alone, or the skins guessed at.
    pub fn layers_from(&self, rig: &Rig) -> &'static str {
        let told = rig.job.structure.as_ref().and_then(|structure| structure.lay_up.get(self.core));
        match (told, &rig.job.transom.thickness) {
            (Some(layer), _) => layer.thickness.basis.origin(),
            (None, Some(thickness)) if self.layers.len() == 1 => thickness.basis.origin(),
            _ => Basis::Assumed.origin(),
        }
    }

    /// The core's material.
    pub fn core_material(&self) -> &catalog::Material {
        &self.layers[self.core].material.spec
    }

    /// Whether the core is wood that a washer presses across its grain.
    pub fn core_has_grain(&self) -> bool {
        has_grain(self.core_material())
    }

    /// A strength, averaged over the layers by thickness, with the core's share knocked down; Pa.
    pub fn mean(&self, knock: KnockDown, of: impl Fn(&catalog::Material) -> f64) -> f64 {
        let sum: f64 = self
            .layers
            .iter()
            .enumerate()
            .map(|(i, layer)| {
                let left = if i == self.core { knock.strength } else { 1.0 };
                left * layer.thickness.si() * of(&layer.material.spec)
            })
            .sum();
        sum / self.thickness()
    }

    /// What it rests on inside, in this order: knees, stringers, the well's floor.
    pub fn beds(&self) -> Vec<Bed> {
        let uprights = self.knees.iter().chain(&self.stringers);
        uprights.map(|knee| knee.bed()).chain(self.floor).collect()
    }

    /// Width over which its moments are told, m: its own thickness, below which a plate's theory says nothing, and no less
    /// than 2 in.
    pub fn width(&self) -> f64 {
        self.thickness().max(inches(NARROWEST_IN).si())
    }

    /// Its mesh, so many times as fine as what is told needs.
    pub fn meshed(&self, times: f64) -> Arc<Meshed> {
        Arc::new(Meshed::of(self.shape, self.fineness(times)))
    }

    /// The panel with its core knocked down, factored.
    ///
    /// # Errors
    /// As the kernel's.
    pub fn factored(&self, knock: KnockDown, meshed: &Arc<Meshed>) -> Result<Factored, PanelError> {
        self.panel(knock)?.factored(meshed)
    }

    /// How fine its mesh is: so many times as fine as what is told needs.
    pub fn fineness(&self, times: f64) -> Fineness {
        Fineness { size: MESH_OF_WIDTH * self.width() / times, width: self.width() }
    }

    /// The lines along which it is held: the hull's edges that hold, and what it rests on inside.
    pub fn seams(&self) -> Vec<(SupportPart, [Point; 2])> {
        let count = self.outline.len();
        let edges = (0..count)
            .filter(|i| self.edges[*i] != EdgeSupport::Free)
            .map(|i| (SupportPart::Edge(i), [self.outline[i], self.outline[(i + 1) % count]]));
        let beds = self.beds().into_iter().enumerate();
        edges.chain(beds.map(|(i, bed)| (SupportPart::Bed(i), [bed.from, bed.to]))).collect()
    }

    /// The same transom with less behind it: each part of its knees left out, taken by their distance from the centreline, and
    /// everything but the well's floor and the hull, and everything but the hull.
    pub fn with_less(&self) -> Vec<Board> {
        if self.beds().is_empty() {
            return Vec::new();
        }
        let mut apart: Vec<f64> = self.knees.iter().map(|knee| knee.y.abs()).collect();
        apart.sort_by(f64::total_cmp);
        apart.dedup_by(|a, b| (*a - *b).abs() < SAME_PLACE);
        // Of more pairs only all or none.
        let parts = if apart.len() > MOST_PARTS { vec![0] } else { (0..(1usize << apart.len()) - 1).collect() };
        let stays = |part: usize, knee: &Knee| {
            apart
                .iter()
                .enumerate()
                .any(|(i, y)| i < MOST_PARTS && part >> i & 1 == 1 && (knee.y.abs() - y).abs() < SAME_PLACE)
        };
        let less = |part: usize| {
            let knees = self.knees.iter().copied().filter(|knee| stays(part, knee)).collect();
            Board { knees, ..self.clone() }
        };
        let with_knees_less = parts.into_iter().filter(|_| !apart.is_empty()).map(less);
        let floor_alone = Board { knees: Vec::new(), stringers: Vec::new(), ..self.clone() };
        let bare = Board { floor: None, ..floor_alone.clone() };
        let mut all: Vec<Board> = with_knees_less.collect();
        for less in [floor_alone, bare] {
            let is_whole = less.beds().len() == self.beds().len();
            if !is_whole && all.iter().all(|board| board.beds().len() != less.beds().len()) {
                all.push(less);
            }
        }
        all
    }

    /// The panel with its core knocked down.
    ///
    /// # Errors
    /// As the kernel's layup.
    pub fn panel(&self, knock: KnockDown) -> Result<Panel, PanelError> {
        let plies = self
            .layers
            .iter()
            .enumerate()
            .map(|(i, layer)| {
                let material = ply_material(&layer.material.spec, layer.thickness);
                Ply {
                    material: if i == self.core { weakened(material, knock) } else { material },
                    thickness: layer.thickness,
                }
            })
            .collect();
        Ok(Panel {
            outline: self.outline.clone(),
            edges: self.edges.clone(),
            section: Section::layup(Layup::new(plies)?)?,
            regions: Vec::new(),
            lines: self.lines.clone(),
            beds: self.beds(),
        })
    }
}

/// Width and thickness of a tab where they were not told. Common practice, no source.
const TAB_IN: [f64; 2] = [3.0, 0.125];
/// What a tab's bond bears in shear and peel together, and its laminate in tension, Pa. Common practice, no source: about a
/// third of the shear strength between layers of a hand laminate, and half its tensile strength.
const BOND_STRENGTH: f64 = 3.0e6;
const TAB_STRENGTH: f64 = 60.0e6;

/// What the tabs bear, N/m: as told, or the usual ones.
fn tab(rig: &Rig) -> f64 {
    let [width, thickness] = match &rig.structure.said.tabbing {
        Some(tabbing) => [tabbing.width.value.si(), tabbing.thickness.value.si()],
        None => TAB_IN.map(|inch| inches(inch).si()),
    };
    (BOND_STRENGTH * width).min(TAB_STRENGTH * thickness)
}

/// Knees whose distances from the centreline differ by less are a pair, m. Common practice, no source: a saw's breadth or two.
const SAME_PLACE: f64 = 0.006;
/// Pairs of knees of which every part is tried.
const MOST_PARTS: usize = 3;

/// Least width over which moments are told. Common practice, no source: about the pad of an engine's bracket at a bolt.
const NARROWEST_IN: f64 = 2.0;
/// Sides of the mesh's triangles over that width: with more, factors move by more than 2 % on meshes twice as fine.
const MESH_OF_WIDTH: f64 = 1.0;
