//! The panel under every load case of an outfit.

use super::board::Board;
use super::footing::{Footing, LoadCase};
use super::weakest::{strained_kinks, weakest};
use super::{Laden, NoStrength};
use crate::physics::strength::knockdown::KnockDown;
use crate::physics::strength::loads::Case as Kind;
use crate::physics::strength::panel::{Accuracy, Load, Panel, PanelError, PlyStress, Point, Solution, Solved, Wanted};
use crate::physics::strength::panel_loads;
use crate::quantity::{Dimensioned, inches, say};

/// Width of the strip along a face's edge that presses on the transom. Common practice, no source.
const STRIP_IN: f64 = 1.5;
/// What the case nearest to the panel's strength is solved to. Where the stress is read the mesh is as fine as the panel is
/// thick besides: so it moves by no more than about 4 % on meshes far finer.
const FOR_STRESS: Accuracy = Accuracy { relative: 0.1, fields: 0.3, most_unknowns: 30_000 };
/// Cases whose use of the strength is at least this part of the leading one's may turn out to lead on a finer mesh.
const CONTENDING: f64 = 0.9;
/// What the case of ordinary running that moves the panel most is solved to.
const FOR_DEFLECTION: Accuracy = Accuracy { relative: 0.1, fields: f64::INFINITY, most_unknowns: 30_000 };
/// What a panel is solved to that she does not have: with knees, without, with a sound core.
const FOR_COMPARISON: Accuracy = FOR_DEFLECTION;

/// The panel of an outfit.
#[derive(Clone, Debug)]
pub struct Bent {
    /// Each case.
    pub effects: Vec<Effect>,
    /// The case nearest to the panel's strength.
    pub stress: Governing,
    /// The case of ordinary running that moves it most.
    pub deflection: Governing,
}

/// What a case does to the panel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effect {
    /// Stress over strength.
    pub use_of_strength: f64,
    /// Largest deflection, m, forward positive.
    pub deflection: f64,
}

/// A case worked out.
#[derive(Clone, Debug)]
pub struct Governing {
    /// Which of the cases.
    pub case: usize,
    /// Strength over stress.
    pub factor: f64,
    /// Where it is least, and the stress there.
    pub at: Point,
    pub stress: PlyStress,
    /// The whole solution.
    pub solution: Solution,
    /// The panel that was solved.
    pub panel: Panel,
}

/// Cases that come with ordinary running, by which deflection is judged.
fn is_ordinary(case: &LoadCase) -> bool {
    !matches!(case.kind, Kind::Slamming | Kind::Trailer)
}

impl Laden {
    /// Puts faces with their loads on the transom: every case on one mesh.
    ///
    /// # Errors
    /// Why the panel cannot be solved.
    pub(super) fn of(
        board: &Board,
        left: KnockDown,
        cases: Vec<LoadCase>,
        footings: Vec<Footing>,
    ) -> Result<Laden, NoStrength> {
        let panel = board.panel(left, &board.knees).map_err(unfit)?;
        let sets: Vec<Vec<Load>> = (0..cases.len()).map(|case| loads(board, &footings, case)).collect();
        let shown = Shown { board, panel: &panel, sets: &sets };
        let solved = panel
            .solve_all(&sets, |solved| {
                shown
                    .leading(solved, &cases)
                    .map_or_else(|_| Wanted::default(), |leading| leading.wanted(&shown, solved))
            })
            .map_err(unfit)?;
        let leading = shown.leading(&solved, &cases)?;
        let effects = leading
            .worst
            .iter()
            .enumerate()
            .map(|(case, (_, stress))| Effect {
                use_of_strength: stress.utilisation,
                deflection: solved.largest_deflection(case),
            })
            .collect();
        let govern = |case: usize| {
            let (at, stress) = leading.worst[case];
            Governing {
                case,
                factor: 1.0 / stress.utilisation.max(f64::MIN_POSITIVE),
                at,
                stress,
                solution: solved.solution(case),
                panel: panel.clone(),
            }
        };
        let stress = govern(leading.stress);
        let deflection = if leading.deflection == leading.stress { stress.clone() } else { govern(leading.deflection) };
        Ok(Laden { cases, footings, bent: Bent { effects, stress, deflection } })
    }
}

/// A panel with its sets of loads.
struct Shown<'a> {
    board: &'a Board,
    panel: &'a Panel,
    sets: &'a [Vec<Load>],
}

/// The cases that matter most.
struct Leading {
    /// Where each case is nearest to the strength, and the stress there.
    worst: Vec<(Point, PlyStress)>,
    /// Which is nearest to it.
    stress: usize,
    /// Which of ordinary running moves the panel most.
    deflection: usize,
}

impl Leading {
    /// Where the cases are worst that come near to the leading one.
    fn near(&self) -> Vec<Point> {
        let least = CONTENDING * self.worst[self.stress].1.utilisation;
        let near = self.worst.iter().filter(|(_, stress)| stress.utilisation >= least);
        near.map(|(at, _)| *at).collect()
    }

    fn wanted(&self, shown: &Shown, solved: &Solved) -> Wanted {
        let leading = self.worst[self.stress].1.utilisation;
        let mut places = shown.places(solved, self.stress, leading);
        let thickness = shown.board.thickness();
        places.extend(self.near().into_iter().map(|at| (at, thickness)));
        Wanted { sets: vec![(self.stress, FOR_STRESS), (self.deflection, FOR_DEFLECTION)], places }
    }
}

impl Shown<'_> {
    fn leading(&self, solved: &Solved, cases: &[LoadCase]) -> Result<Leading, NoStrength> {
        let worst = (0..cases.len()).map(|case| self.worst(solved, case)).collect::<Result<Vec<_>, _>>()?;
        let pick =
            |value: &dyn Fn(usize) -> f64| (0..cases.len()).max_by(|a, b| value(*a).total_cmp(&value(*b))).unwrap_or(0);
        Ok(Leading {
            stress: pick(&|i| worst[i].1.utilisation),
            deflection: pick(&|i| {
                if is_ordinary(&cases[i]) { solved.largest_deflection(i).abs() } else { -1.0 }
            }),
            worst,
        })
    }

    /// Where the mesh must be fine about kinks.
    fn places(&self, solved: &Solved, set: usize, leading: f64) -> Vec<(Point, f64)> {
        let forces = solved.section_forces(set);
        strained_kinks(self.board, self.panel, forces, leading)
    }

    fn worst(&self, solved: &Solved, set: usize) -> Result<(Point, PlyStress), NoStrength> {
        let forces = solved.section_forces(set);
        weakest(self.board, self.panel, forces, &self.sets[set])
            .ok_or_else(|| NoStrength::Unfit(say!("The panel shows no stress to judge.")))
    }
}

/// The case nearest to the panel's strength on another panel of the same transom.
///
/// # Errors
/// Why that panel cannot be solved.
pub(super) fn on_another(board: &Board, panel: &Panel, after: &Laden) -> Result<Effect, NoStrength> {
    let sets = [loads(board, &after.footings, after.bent.stress.case)];
    let shown = Shown { board, panel, sets: &sets };
    let solved = panel
        .solve_all(&sets, |solved| {
            let mut places = Vec::new();
            if let Ok((at, stress)) = shown.worst(solved, 0) {
                places = shown.places(solved, 0, stress.utilisation);
                places.push((at, board.thickness()));
            }
            Wanted { sets: vec![(0, FOR_COMPARISON)], places }
        })
        .map_err(unfit)?;
    Ok(Effect { use_of_strength: shown.worst(&solved, 0)?.1.utilisation, deflection: solved.largest_deflection(0) })
}

pub(super) fn unfit(error: PanelError) -> NoStrength {
    NoStrength::Unfit(say!("The transom's panel cannot be solved: {}.", error.to_string()))
}

/// What the faces bring to the panel in a case.
fn loads(board: &Board, footings: &[Footing], case: usize) -> Vec<Load> {
    let strip = inches(STRIP_IN).si();
    footings
        .iter()
        .filter_map(|footing| {
            let forces = footing.forces.get(case)?;
            Some(panel_loads(&footing.bolts, footing.face, forces, &footing.spreads(board), strip))
        })
        .flatten()
        .collect()
}

#[cfg(test)]
mod finer;
