//! The panel under every load case of an outfit, and the ways in which it gives way: bent, sheared at what holds it, torn off
//! its tabs.

use std::sync::Arc;

use uom::si::f64::Ratio;

use super::board::Board;
use super::footing::{Footing, LoadCase};
use super::{Laden, NoStrength};
use crate::physics::strength::loads::Case as Kind;
use crate::physics::strength::panel::{
    Factored, Layup, Load, Loaded, PanelError, PlyStress, Point, Push, Rect, SupportPart,
};
use crate::physics::strength::panel_loads;
use crate::quantity::{Dimensioned, inches, say};

/// Width of the strip along a face's edge that presses on the transom. Common practice, no source.
const STRIP_IN: f64 = 1.5;
/// Length of a tab over which its pull evens out. Common practice, no source: twice the usual width of a tab.
const ALONG_TAB_IN: f64 = 6.0;
/// Width and thickness of a tab where they were not told. Common practice, no source.
const TAB_IN: [f64; 2] = [3.0, 0.125];
/// What a tab's bond bears in shear and peel together, and its laminate in tension, Pa. Common practice, no source: about a
/// third of the shear strength between layers of a hand laminate, and half its tensile strength.
const BOND_STRENGTH: f64 = 3.0e6;
const TAB_STRENGTH: f64 = 60.0e6;

/// A way in which the panel gives way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// A skin or the core breaks in bending.
    Bending,
    /// The core shears beside what holds the transom.
    Shear,
    /// A tab tears off.
    Tabbing,
}

impl Way {
    /// All of them.
    pub const ALL: [Way; 3] = [Way::Bending, Way::Shear, Way::Tabbing];

    /// What gives way.
    pub fn words(self) -> &'static str {
        match self {
            Way::Bending => "transom, bent",
            Way::Shear => "core, sheared beside its supports",
            Way::Tabbing => "tabs to hull and knees, torn",
        }
    }
}

/// How much of what it bears one way is used, and where most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Used {
    /// 1 breaks.
    pub part: f64,
    pub at: Point,
    /// The stress, of bending.
    pub stress: Option<PlyStress>,
    /// The support and its push (N/m), of the others.
    pub push: Option<Push>,
}

impl Used {
    /// Strength over load.
    pub fn factor(&self) -> f64 {
        1.0 / self.part.max(f64::MIN_POSITIVE)
    }
}

/// What a case does to the panel.
#[derive(Clone, Debug)]
pub struct Effect {
    /// Of each [`Way`].
    pub used: [Used; Way::ALL.len()],
    /// All of it.
    pub loaded: Loaded,
}

/// The panel of an outfit.
#[derive(Clone, Debug)]
pub struct Bent {
    /// Each case.
    pub effects: Vec<Effect>,
    /// The panel that was solved.
    pub factored: Arc<Factored>,
    ordinary: Vec<bool>,
}

impl Bent {
    /// The case that uses most of what the panel bears one way.
    pub fn worst(&self, way: Way) -> (usize, &Used) {
        let used = |case: usize| &self.effects[case].used[way as usize];
        let case = (0..self.effects.len()).max_by(|a, b| used(*a).part.total_cmp(&used(*b).part)).unwrap_or(0);
        (case, used(case))
    }

    /// Strength over load in that case.
    pub fn factor(&self, way: Way) -> f64 {
        self.worst(way).1.factor()
    }

    /// The case of ordinary running that moves it most, and how far, m.
    pub fn deflection(&self) -> (usize, &Loaded) {
        let moved = |case: usize| self.effects[case].loaded.largest_deflection.abs();
        let ordinary = (0..self.effects.len()).filter(|case| self.ordinary[*case]);
        let case = ordinary.max_by(|a, b| moved(*a).total_cmp(&moved(*b))).unwrap_or(0);
        (case, &self.effects[case].loaded)
    }
}

/// What a tab bears, N/m.
pub(super) fn tab_strength(width: f64, thickness: f64) -> f64 {
    (BOND_STRENGTH * width).min(TAB_STRENGTH * thickness)
}

/// Width and thickness of a tab where they were not told, m.
pub(super) fn usual_tab() -> [f64; 2] {
    TAB_IN.map(|inch| inches(inch).si())
}

impl Laden {
    /// Puts faces with their loads on the transom.
    ///
    /// # Errors
    /// Why the panel cannot be solved.
    pub(super) fn of(
        board: &Board,
        factored: &Arc<Factored>,
        cases: Vec<LoadCase>,
        footings: Vec<Footing>,
    ) -> Result<Laden, NoStrength> {
        let bent = bent(board, factored, &cases, &footings)?;
        Ok(Laden { cases, footings, bent })
    }
}

/// The panel under faces with their loads.
///
/// # Errors
/// Why it cannot be solved.
pub(super) fn bent(
    board: &Board,
    factored: &Arc<Factored>,
    cases: &[LoadCase],
    footings: &[Footing],
) -> Result<Bent, NoStrength> {
    let sets: Vec<Vec<Load>> = (0..cases.len()).map(|case| loads(board, footings, case)).collect();
    let Some(layup) = factored.panel().section.layup.as_ref() else {
        return Err(NoStrength::Unfit(say!("The panel shows no stress to judge.")));
    };
    let judge = Judge { board, factored, layup };
    let effects = factored.bend(&sets).map_err(unfit)?;
    let effects = effects.into_iter().map(|loaded| judge.effect(loaded)).collect();
    // What comes with ordinary running: by it deflection is judged.
    let ordinary = cases.iter().map(|case| !matches!(case.kind, Kind::Slamming | Kind::Trailer)).collect();
    Ok(Bent { effects, factored: factored.clone(), ordinary })
}

struct Judge<'a> {
    board: &'a Board,
    factored: &'a Factored,
    layup: &'a Layup,
}

impl Judge<'_> {
    fn effect(&self, loaded: Loaded) -> Effect {
        let nothing = Used { part: 0.0, at: loaded.largest_at, stress: None, push: None };
        let mut bending = nothing;
        for mean in &loaded.moments {
            let stress = self.layup.bent(mean.moment);
            if stress.utilisation > bending.part {
                bending = Used { part: stress.utilisation, at: mean.at, stress: Some(stress), push: None };
            }
        }
        let most = |pushes: Vec<Push>, use_of: &dyn Fn(&Push) -> f64| {
            let mut worst = nothing;
            for push in pushes {
                let part = use_of(&push);
                if part > worst.part {
                    worst = Used { part, at: push.at, stress: None, push: Some(push) };
                }
            }
            worst
        };
        let unit = self.shear_uses();
        let sheared = |push: &Push| push.per_length.abs() * unit(push.part);
        let shear = most(self.factored.pushes(&loaded, self.board.width()), &sheared);
        let tab = self.board.tab;
        let torn = |push: &Push| push.per_length.abs() / tab;
        let tabbing = most(self.factored.pushes(&loaded, inches(ALONG_TAB_IN).si()), &torn);
        Effect { used: [bending, shear, tabbing], loaded }
    }

    /// Use of the shear strength through the thickness for a push of 1 N/m of each support: one side of an edge takes all of
    /// it, each side of an upright or a floor half.
    fn shear_uses(&self) -> impl Fn(SupportPart) -> f64 {
        let unit = |shear: [f64; 2]| self.layup.worst([0.0; 3], shear).map_or(0.0, |stress| stress.utilisation);
        let [across, up] = [unit([1.0, 0.0]), unit([0.0, 1.0])];
        let uprights = self.board.knees.len() + self.board.stringers.len();
        move |part| match part {
            SupportPart::Bed(i) if i < uprights => 0.5 * across,
            SupportPart::Bed(_) => 0.5 * up,
            SupportPart::Edge(_) | SupportPart::Line(_) => across.max(up),
        }
    }
}

pub(super) fn unfit(error: PanelError) -> NoStrength {
    NoStrength::Unfit(say!("The transom's panel cannot be solved: {}.", error.to_string()))
}

/// What the faces bring to the panel in a case: each force comes down to the middle of the thickness at 45 degrees, so that
/// it covers there half the thickness more on every side (EN 1995-2, 5.1.2, value from memory), as far as the panel goes.
fn loads(board: &Board, footings: &[Footing], case: usize) -> Vec<Load> {
    let strip = inches(STRIP_IN).si();
    footings
        .iter()
        .filter_map(|footing| {
            let forces = footing.forces.get(case)?;
            Some(panel_loads(&footing.bolts, footing.face, forces, &footing.spreads(board), strip))
        })
        .flatten()
        .map(|load| match load {
            Load::Patch { area, force } => Load::Patch { area: spread(board, area), force },
            other => other,
        })
        .collect()
}

fn spread(board: &Board, area: Rect) -> Rect {
    let more = 0.5 * board.thickness();
    let [y, z] = area.centre;
    // A hair within the edges, lest rounding put it off the panel.
    let out = 0.999 * (board.chine[0].min(board.half_top) - y.abs());
    let half_width = (0.5 * area.width + more).min(out).max(0.5 * area.width);
    let up = 0.999 * (board.top - z);
    let down = 0.999 * (z - board.rise * (y.abs() + half_width));
    let half_height = (0.5 * area.height + more).min(up).min(down).max(0.5 * area.height);
    Rect { centre: area.centre, width: 2.0 * half_width, height: 2.0 * half_height }
}

/// A ratio for showing.
pub(super) fn plain(value: f64) -> Ratio {
    Ratio::from_si(value)
}
