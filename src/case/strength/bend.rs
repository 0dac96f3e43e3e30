//! The panel under every load case of an outfit, and the ways in which it gives way: bent, sheared at what holds it, torn off
//! its tabs.

use std::sync::Arc;

use super::Laden;
use super::board::Board;
use super::brought::{load_sets, resultants};
use super::footing::{Footing, LoadCase};
use super::state::{State, Stood, Used, shear_uses, unfit};
use super::store::Store;
use crate::physics::strength::knockdown::KnockDown;
use crate::physics::strength::loads::Case as Kind;
use crate::physics::strength::panel::{Factored, Layup, Load, Loaded, PanelError, Point, SupportPart};
use crate::physics::strength::seam::{self, Seam, SeamPush};
use crate::reading::Absent;

/// A way in which the panel gives way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// A skin or the core breaks in bending, or what carries it behind lets go and leaves it to the hull alone.
    Bending,
    /// The core shears beside what holds it.
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
            Way::Shear => "core, sheared beside what holds it",
            Way::Tabbing => "tabs, torn",
        }
    }
}

/// What a case does to the panel.
#[derive(Clone, Debug)]
pub struct Effect {
    /// Of each [`Way`].
    pub used: [Used; Way::ALL.len()],
    /// On each of the panels, all that stands behind it first.
    pub stood: Vec<Stood>,
    /// Which of them tells its bending.
    pub told: usize,
    /// What hull, knees and stringers hand over, as lines.
    pub seam: Option<SeamPush>,
}

impl Effect {
    /// A knee more cannot harm: where what stands behind would let go, or gathers bending beside it, the transom still bears what
    /// it bears without (the static theorem of limit analysis: D. C. Drucker, W. Prager, H. J. Greenberg, 1952).
    fn of(stood: Vec<Stood>, seam: Option<SeamPush>, edges: [Used; 2]) -> Effect {
        let part = |state: &usize| stood[*state].worst().part;
        let told = (0..stood.len()).min_by(|a, b| part(a).total_cmp(&part(b))).unwrap_or(0);
        let [shear, tabbing] = edges;
        Effect { used: [stood[told].worst(), shear, tabbing], stood, told, seam }
    }

    /// With all that stands behind it.
    pub fn braced(&self) -> &Stood {
        &self.stood[0]
    }

    /// The state in which bending is told.
    pub fn told(&self) -> &Stood {
        &self.stood[self.told]
    }
}

/// The panel factored: with all that stands behind it, with less of that, and with the hull alone.
#[derive(Clone, Debug)]
pub struct Panels {
    /// Never empty.
    states: Vec<Arc<State>>,
}

impl Panels {
    /// Of a transom with its core knocked down.
    ///
    /// # Errors
    /// Why it cannot be solved.
    pub fn of(board: &Board, left: KnockDown, store: &Store) -> Result<Panels, Absent> {
        let less = board.with_less();
        let boards: Vec<&Board> = std::iter::once(board).chain(&less).collect();
        let mut made = store.each(boards.len(), |i| store.state(boards[i], left)).into_iter();
        let whole = made.next().unwrap_or(Err(PanelError::NoSupport)).map_err(unfit)?;
        // With less behind it nothing may hold it at all: then that does not count.
        Ok(Panels { states: std::iter::once(whole).chain(made.flatten()).collect() })
    }

    /// Has several hands make a transom's panels, and what each of these outfits' loads does on a panel as soon as it is there, so
    /// that nobody waits while the last is made. What cannot be is told when it is asked for.
    pub(super) fn ahead(board: &Board, left: KnockDown, store: &Store, outfits: &[Vec<Vec<Load>>]) {
        let less = board.with_less();
        let boards: Vec<&Board> = std::iter::once(board).chain(&less).collect();
        enum Task<'a> {
            State(usize),
            Means,
            Laden(usize, &'a [Vec<Load>]),
        }
        let states = 0..boards.len();
        let laden = states.clone().flat_map(|state| outfits.iter().map(move |sets| Task::Laden(state, sets)));
        let tasks: Vec<Task> = states.map(Task::State).chain([Task::Means]).chain(laden).collect();
        store.each(tasks.len(), |i| match tasks[i] {
            Task::State(state) => drop(store.state(boards[state], left)),
            Task::Means => store.begin_means(board),
            Task::Laden(state, sets) => {
                if let Ok(state) = store.state(boards[state], left) {
                    let _ = store.stood(board, &state, sets);
                }
            }
        });
    }

    /// With all that stands behind it.
    pub fn braced(&self) -> &Factored {
        &self.states[0].factored
    }
}

/// The panel of an outfit.
#[derive(Clone, Debug)]
pub struct Bent {
    /// Each case.
    pub effects: Arc<Vec<Effect>>,
    /// The panels that were solved.
    pub panels: Panels,
    ordinary: Vec<bool>,
}

impl Bent {
    /// The case that uses most of what the panel bears one way.
    pub fn worst(&self, way: Way) -> (usize, &Used) {
        let used = |case: usize| &self.effects[case].used[way as usize];
        let case = worst_of(0..self.effects.len(), |case| used(case).part);
        (case, used(case))
    }

    /// Strength over load in that case.
    pub fn factor(&self, way: Way) -> f64 {
        self.worst(way).1.factor()
    }

    /// The case of ordinary running that moves it most, and how far, m.
    pub fn deflection(&self) -> (usize, &Loaded) {
        let moved = |case: usize| self.effects[case].braced().loaded.largest_deflection.abs();
        let ordinary = (0..self.effects.len()).filter(|case| self.ordinary[*case]);
        let case = worst_of(ordinary, moved);
        (case, &self.effects[case].braced().loaded)
    }

    /// The panel in the state in which a case's bending is told, and what is in it.
    pub fn told(&self, case: usize) -> Option<(&Factored, &Stood)> {
        let effect = self.effects.get(case)?;
        Some((&self.panels.states.get(effect.told)?.factored, effect.told()))
    }
}

/// Two cases are alike that differ by less, as a part: turns to port and starboard of a boat whose sides are alike.
const ALIKE: f64 = 1e-6;

/// The first of the cases that are worst: rounding has no say in which of two turns is told.
fn worst_of(cases: impl Iterator<Item = usize> + Clone, of: impl Fn(usize) -> f64) -> usize {
    let most = cases.clone().map(&of).fold(0.0, f64::max);
    cases.into_iter().find(|case| of(*case) >= (1.0 - ALIKE) * most).unwrap_or(0)
}

impl Laden {
    /// Puts faces with their loads on the transom.
    ///
    /// # Errors
    /// Why the panel cannot be solved.
    pub(super) fn of(
        store: &Store,
        board: &Board,
        panels: &Panels,
        cases: Vec<LoadCase>,
        footings: Vec<Footing>,
    ) -> Result<Laden, Absent> {
        let bent = bent(store, board, panels, &cases, &footings)?;
        Ok(Laden { cases, footings, bent })
    }

    /// The same faces and loads on other panels.
    ///
    /// # Errors
    /// As [`Panels::of`].
    pub fn on(&self, store: &Store, board: &Board, panels: &Panels) -> Result<Bent, Absent> {
        bent(store, board, panels, &self.cases, &self.footings)
    }
}

fn bent(
    store: &Store,
    board: &Board,
    panels: &Panels,
    cases: &[LoadCase],
    footings: &[Footing],
) -> Result<Bent, Absent> {
    let sets = load_sets(board, footings, cases.len());
    let mut stood: Vec<Vec<Stood>> = vec![Vec::new(); cases.len()];
    for state in &panels.states {
        stood.iter_mut().zip(store.stood(board, state, &sets)?).for_each(|(stood, one)| stood.push(one));
    }
    let mut boards = vec![board.clone()];
    boards.extend(board.with_less());
    let layup = panels.braced().panel().section.layup.as_ref();
    let effects = stood.into_iter().enumerate().filter_map(|(case, stood)| {
        let (seam, edges) = along_seams(&boards, layup?, &resultants(footings, case));
        Some(Effect::of(stood, seam, edges))
    });
    let effects = Arc::new(effects.collect());
    // What comes with ordinary running: by it deflection is judged.
    let ordinary = cases.iter().map(|case| !matches!(case.kind, Kind::Slamming | Kind::Trailer)).collect();
    Ok(Bent { effects, panels: panels.clone(), ordinary })
}

/// What the hull's edge and what stands behind hand over, and how much of the core's shear and of the tabs that uses; with as
/// much let go of what stands behind as is kindest to them.
fn along_seams(boards: &[Board], layup: &Layup, forces: &[(Point, f64)]) -> (Option<SeamPush>, [Used; 2]) {
    let [across, up] = shear_uses(layup);
    let mut best: Option<(SeamPush, [Used; 2])> = None;
    for board in boards {
        let seams = board.seams();
        let lines: Vec<Seam> = seams.iter().map(|(_, seam)| *seam).collect();
        let Some(seam) = seam::push(&lines, forces) else { continue };
        // One side of an edge takes all of its push through the core, each side of an upright or a floor half.
        let mut used = [Used { part: 0.0, at: seam.at, stress: None, push: None }; 2];
        for (part, line) in &seams {
            for at in *line {
                let push = seam.at_place(at);
                let shear = match part {
                    SupportPart::Bed(_) => 0.5 * across.max(up),
                    SupportPart::Edge(_) | SupportPart::Line(_) => across.max(up),
                };
                for (used, unit) in used.iter_mut().zip([shear, 1.0 / board.tab]) {
                    if push.abs() * unit > used.part {
                        *used = Used { part: push.abs() * unit, at, stress: None, push: Some((*part, push)) };
                    }
                }
            }
        }
        if best.as_ref().is_none_or(|(_, best)| used[0].part < best[0].part) {
            best = Some((seam, used));
        }
    }
    match best {
        Some((seam, used)) => (Some(seam), used),
        None => {
            let top = boards.first().map_or(0.0, |board| board.top);
            (None, [Used { part: 0.0, at: [0.0, top], stress: None, push: None }; 2])
        }
    }
}
