//! What carries and stiffens the transom behind: knees, stringers, a top stiffener, the well's floor.

use super::Board;
use crate::job::{Bond, SplashWell, Upright};
use crate::physics::strength::panel::{Line, LineKind};
use crate::quantity::{Dimensioned, Text, say};
use crate::rig::Rig;

/// A knee, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Knee {
    /// To port of the centreline.
    pub y: f64,
    /// Its foot and its head.
    pub from: f64,
    pub to: f64,
}

/// How far up the transom a knee reaches where it was not taken. Common practice, no source.
const KNEE_REACH: f64 = 0.75;
/// How near to the transom's edges a support is taken to reach: short of them, so that the mesh keeps its corners.
const WITHIN: f64 = 0.95;

impl Board {
    pub(super) fn add_lines(&mut self, rig: &Rig) {
        let said = &rig.structure.said;
        let knees = rig.structure.knees.reading();
        self.knees = self.uprights(knees.map_or(&[], Vec::as_slice));
        if knees.is_none() {
            self.assumed.push(Text::from("No knee is counted behind the transom: none is given."));
        } else if said.knees.iter().flatten().any(|knee| knee.height.is_none()) {
            self.assumed.push(Text::from("A knee without its height is taken to reach three quarters up the transom."));
        }
        let stringers = self.uprights(&said.stringers);
        self.lines.extend(stringers.into_iter().map(Knee::line));
        self.add_stiffener(rig);
        self.add_well_floor(rig);
    }

    /// The knees or stringers of this list that stand on the transom.
    fn uprights(&mut self, list: &[Upright]) -> Vec<Knee> {
        let all: Vec<Knee> = list
            .iter()
            .filter_map(|one| self.knee(one.at.y().si(), one.height.as_ref().map(|h| h.value.si())))
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

    fn add_well_floor(&mut self, rig: &Rig) {
        let said = &rig.structure.said;
        if let (Some(Bond::Bonded | Bond::BuiltIn), Some(SplashWell::Floor(floor))) =
            (said.well_floor, rig.transom.splash_well.reading())
        {
            let z = self.top - floor.value.si();
            let reach = if self.rise > 1e-6 { WITHIN * z / self.rise } else { f64::INFINITY };
            let half = self.half_top.min(reach).min(WITHIN * self.chine[0]);
            if z > 0.0 && half > 0.0 {
                self.lines.push(Line { from: [-half, z], to: [half, z], kind: LineKind::Supported });
            }
        } else if rig.transom.splash_well.reading().is_some() && said.well_floor.is_none() {
            self.assumed.push(Text::from(
                "The splash-well's floor is not counted as a support of the transom (structure.well_floor says otherwise).",
            ));
        }
    }

    /// A knee at `y`, cut off where the transom ends; `None` off the transom.
    pub fn knee(&self, y: f64, height: Option<f64>) -> Option<Knee> {
        let from = self.bottom(y)?;
        let head = if y.abs() <= self.half_top { self.top } else { self.side_top(y)? };
        let reach = height.unwrap_or(KNEE_REACH * (self.top.min(head) - from));
        let to = (from + reach).min(head);
        (to > from + 1e-3).then_some(Knee { y, from, to })
    }

    fn side_top(&self, y: f64) -> Option<f64> {
        let corner = self.outline.iter().map(|p| p[1]).fold(0.0, f64::max);
        let half = self.outline.iter().map(|p| p[0]).fold(0.0, f64::max);
        (y.abs() < half.min(self.chine[0])).then_some(corner)
    }
}

impl Knee {
    pub(super) fn line(self) -> Line {
        Line { from: [self.y, self.from], to: [self.y, self.to], kind: LineKind::Supported }
    }
}
