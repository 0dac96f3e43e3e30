//! What carries and stiffens the transom behind: knees, stringers, a top stiffener, the well's floor, the deck.

use super::Board;
use crate::job::{Bond, SplashWell, Upright};
use crate::physics::strength::panel::{Bed, EdgeSupport, Line, LineKind};
use crate::quantity::{Dimensioned, Text, inches, say};
use crate::rig::Rig;

/// A knee or a stringer's end, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Knee {
    /// To port of the centreline.
    pub y: f64,
    /// Its foot, up along the transom from the bottom on the centreline.
    pub from: f64,
    /// Its head, likewise.
    pub to: f64,
    /// Its own width, and its fillets on both sides.
    pub width: f64,
    /// Force that pushes a metre of it in by a metre, N/m per metre.
    pub stiffness: f64,
}

/// How far up the transom a knee reaches where it was not taken. Common practice, no source.
const KNEE_REACH: f64 = 0.75;
/// How near to the chines a well's floor reaches. Common practice, no source.
const WITHIN: f64 = 0.95;
/// Widths of a knee, a stringer and a well's floor where they were not taken, and of the fillet on each side. Common
/// practice, no source.
const KNEE_WIDTH_IN: f64 = 1.5;
const STRINGER_WIDTH_IN: f64 = 2.0;
const FLOOR_WIDTH_IN: f64 = 0.5;
const FILLET_IN: f64 = 0.5;
/// What a knee of plywood and glass is stiff by in shear, Pa, and how far forward it hands its push to bottom and stringers, m:
/// a metre of it 1 m wide gives by the second over the first. Common practice, no source, for the length; the modulus as of
/// marine plywood in the catalog.
const KNEE_SHEAR: f64 = 0.6e9;
const KNEE_LENGTH: f64 = 0.5;
/// What a stringer or a well's floor of plywood is stiff by along itself, Pa, half its veneers along it, and the length of it that
/// gives, m: of a stringer a metre, and as much again for the plating to which it hands its push. Common practice, no source.
const ALONG: f64 = 4.0e9;
const STRINGER_LENGTH: f64 = 2.0;
const FLOOR_LENGTH: f64 = 0.6;
/// What the hull's plating gives at the transom's edge: a metre of a shell of 5 mm of glass (9 GPa) of which half a metre gives,
/// N/m per metre. Common practice, no source; the panel's moments follow the fourth root of it.
const SHELL: f64 = 9.0e9 * 0.005 / 0.5;
/// Moment with which a shell that is moulded or welded in one with the transom holds a metre of its edge from turning by one
/// radian, N·m per metre: `3 D / L` of a plate as stiff as 6 mm of aluminium or 12 mm of glass, D 1.4 kN·m, over a span of
/// 0.3 m. Common practice, no source.
const TURNING: f64 = 3.0 * 1.4e3 / 0.3;

/// How an edge is held by a bond.
pub(super) fn held(bond: Bond) -> EdgeSupport {
    match bond {
        Bond::Loose => EdgeSupport::Free,
        Bond::Bonded => EdgeSupport::Elastic { deflection: SHELL, turning: 0.0 },
        Bond::BuiltIn => EdgeSupport::Elastic { deflection: SHELL, turning: TURNING },
    }
}

/// What sort of an upright.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Sort {
    Knee,
    Stringer,
}

impl Board {
    pub(super) fn add_supports(&mut self, rig: &Rig) {
        let said = &rig.structure.said;
        let knees = rig.structure.knees.reading();
        self.knees = self.uprights(Sort::Knee, knees.map_or(&[], Vec::as_slice));
        if said.knees.iter().flatten().any(|knee| knee.height.is_none()) {
            self.assumed.push(Text::from("A knee without its height is taken to reach three quarters up the transom."));
        }
        self.stringers = self.uprights(Sort::Stringer, said.stringers.as_deref().unwrap_or_default());
        self.add_stiffener(rig);
        if let Some(Bond::Bonded | Bond::BuiltIn) = said.well_floor {
            self.add_well_floor(rig);
        }
        if let Some(bond @ (Bond::Bonded | Bond::BuiltIn)) = said.deck {
            self.hold_shoulders(bond);
        }
    }

    /// The knees or stringers of this list that stand on the transom.
    fn uprights(&mut self, sort: Sort, list: &[Upright]) -> Vec<Knee> {
        let all: Vec<Knee> = list
            .iter()
            .filter_map(|one| {
                let of = |reading: &Option<crate::quantity::Reading<uom::si::f64::Length>>| {
                    reading.as_ref().map(|reading| reading.value.si())
                };
                self.upright(sort, one.at.y().si(), of(&one.height), of(&one.width), of(&one.fillet))
            })
            .collect();
        if all.len() < list.len() {
            self.assumed.push(say!(
                "{} of the knees and stringers given would stand outside the chines or have no height there: not counted.",
                list.len() - all.len()
            ));
        }
        all
    }

    fn add_stiffener(&mut self, rig: &Rig) {
        let structure = &rig.structure;
        if let (Some(stiffener), Some(material)) = (&structure.said.top_stiffener, &structure.stiffener_material) {
            let (depth, height) = (stiffener.depth.value.si(), stiffener.height.value.si());
            let (long, short) = (depth.max(height), depth.min(height));
            // A rectangle's torsion constant, first terms (Timoshenko and Goodier).
            let torsion = long * short.powi(3) * (1.0 - 0.63 * short / long) / 3.0;
            self.lines.push(Line {
                from: [-self.half_top, self.top],
                to: [self.half_top, self.top],
                kind: LineKind::Beam {
                    bending: material.modulus_along.value.si() * height * depth.powi(3) / 12.0,
                    torsion: material.shear_modulus.value.si() * torsion,
                },
            });
        }
    }

    /// Puts in the well's floor, where its depth is told and it lies on the transom.
    pub(super) fn add_well_floor(&mut self, rig: &Rig) {
        let Some(SplashWell::Floor(floor)) = rig.job.transom.splash_well().reading() else { return };
        let z = self.top - floor.value.si();
        let reach = if self.rise > 1e-6 { WITHIN * z / self.rise } else { f64::INFINITY };
        let half = self.half_top.min(reach).min(WITHIN * self.chine[0]);
        let width = inches(FLOOR_WIDTH_IN).si();
        if z > 0.0 && half > 0.0 {
            self.floor = Some(Bed {
                from: [-half, z],
                to: [half, z],
                width: width + 2.0 * inches(FILLET_IN).si(),
                stiffness: ALONG * width / FLOOR_LENGTH,
            });
        }
    }

    /// Lets the deck hold the upper edges beside the cutout.
    pub(super) fn hold_shoulders(&mut self, bond: Bond) {
        let corner = self.outline.iter().map(|p| p[1]).fold(0.0, f64::max);
        let count = self.outline.len();
        for i in 0..count {
            let (a, b) = (self.outline[i], self.outline[(i + 1) % count]);
            let level = a[1] == corner && b[1] == corner && corner > self.top;
            if level {
                self.edges[i] = held(bond);
            }
        }
    }

    /// A knee at `y` of the usual width, cut off where the transom ends; `None` off the transom.
    pub fn knee(&self, y: f64, height: Option<f64>) -> Option<Knee> {
        self.upright(Sort::Knee, y, height, None, None)
    }

    /// The same of any sort and width.
    pub(super) fn upright(
        &self,
        sort: Sort,
        y: f64,
        height: Option<f64>,
        width: Option<f64>,
        fillet: Option<f64>,
    ) -> Option<Knee> {
        let from = self.bottom(y)?;
        let head = self.head(y)?;
        let reach = height.unwrap_or(KNEE_REACH * (self.top.min(head) - from));
        let to = (from + reach).min(head);
        let usual = match sort {
            Sort::Knee => KNEE_WIDTH_IN,
            Sort::Stringer => STRINGER_WIDTH_IN,
        };
        let own = width.unwrap_or(inches(usual).si());
        let stiffness = match sort {
            Sort::Knee => KNEE_SHEAR * own / KNEE_LENGTH,
            Sort::Stringer => ALONG * own / STRINGER_LENGTH,
        };
        let width = own + 2.0 * fillet.unwrap_or(inches(FILLET_IN).si());
        (to > from + 1e-3).then_some(Knee { y, from, to, width, stiffness })
    }

    /// Height of the top edge at `y`, m; `None` beyond the sides.
    pub(in crate::case::strength) fn head(&self, y: f64) -> Option<f64> {
        if y.abs() <= self.half_top { Some(self.top) } else { self.side_top(y) }
    }

    fn side_top(&self, y: f64) -> Option<f64> {
        let corner = self.outline.iter().map(|p| p[1]).fold(0.0, f64::max);
        let half = self.outline.iter().map(|p| p[0]).fold(0.0, f64::max);
        (y.abs() < half.min(self.chine[0])).then_some(corner)
    }
}

impl Knee {
    pub(super) fn bed(self) -> Bed {
        Bed { from: [self.y, self.from], to: [self.y, self.to], width: self.width, stiffness: self.stiffness }
    }
}
