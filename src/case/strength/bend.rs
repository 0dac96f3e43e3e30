//! The panel under every load case of an outfit, and the ways in which it gives way: bent, sheared at what holds it, torn off
//! its tabs.

use std::f64::consts::PI;
use std::sync::Arc;

use super::Laden;
use super::board::Board;
use super::footing::{Footing, LoadCase};
use super::grip::STRIP_IN;
use super::store::Store;
use crate::physics::strength::knockdown::KnockDown;
use crate::physics::strength::loads::Case as Kind;
use crate::physics::strength::panel::{
    Factored, Layup, Load, Loaded, MeanMoment, PanelError, PlyStress, Point, Pressed, Push, Rect, SupportPart,
};
use crate::physics::strength::panel_loads;
use crate::physics::strength::seam::{self, Seam, SeamPush};
use crate::quantity::{Dimensioned, inches, say};
use crate::reading::Absent;

/// Thicknesses over which a support's push spreads on its way through the core: two to each side, as a slab is judged on a
/// perimeter two depths away (EN 1992-1-1, 6.4.2, value from memory); common practice, no source, for wood.
const SPREADS: f64 = 4.0;
/// Length of a tab over which its pull evens out. Common practice, no source: twice the usual width of a tab.
const ALONG_TAB_IN: f64 = 6.0;
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

/// How much of what it bears one way is used, and where most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Used {
    /// 1 breaks.
    pub part: f64,
    pub at: Point,
    /// The stress, of bending.
    pub stress: Option<PlyStress>,
    /// The support and its push (N/m), of the others, and of bending where what lets go there decides.
    pub push: Option<(SupportPart, f64)>,
}

impl Used {
    /// Strength over load.
    pub fn factor(&self) -> f64 {
        1.0 / self.part.max(f64::MIN_POSITIVE)
    }
}

/// What a case does to the panel on one set of supports.
#[derive(Clone, Debug)]
pub struct Stood {
    /// Bending.
    pub bending: Used,
    /// The mean moments there, N·m per metre.
    pub moment: [f64; 3],
    /// What knees, stringers and the well's floor hand over, by the core's shear or their tabs; nothing where there are none.
    pub held: Used,
    /// All of it.
    pub loaded: Arc<Loaded>,
}

impl Stood {
    /// The worse of both.
    fn worst(&self) -> Used {
        if self.held.part > self.bending.part { self.held } else { self.bending }
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

/// One of them.
#[derive(Debug)]
pub(super) struct State {
    pub factored: Factored,
    /// How many of its beds stand upright: those behind are level.
    pub uprights: usize,
}

impl State {
    /// What these loads do.
    ///
    /// # Errors
    /// As the kernel's; a panel without plies.
    pub(super) fn stood(&self, board: &Board, pressed: &[Pressed]) -> Result<Vec<Stood>, Absent> {
        let State { factored, uprights } = self;
        let Some(layup) = factored.panel().section.layup.as_ref() else {
            return Err(Absent::CannotBe(say!("The panel shows no stress to judge.")));
        };
        let judge = Judge { board, factored, layup, uprights: *uprights };
        let loaded = factored.bend_pressed(pressed).map_err(unfit)?;
        let most = factored.most_bent(layup, &loaded);
        Ok(loaded.into_iter().zip(most).map(|(loaded, most)| judge.stood(loaded, most)).collect())
    }
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

/// Loads on a panel: all that what they do there is made of.
pub(super) struct Laid {
    pub state: Arc<State>,
    pub tab: f64,
    pub sets: Vec<Vec<Load>>,
}

impl PartialEq for Laid {
    fn eq(&self, other: &Laid) -> bool {
        Arc::ptr_eq(&self.state, &other.state) && self.tab == other.tab && self.sets == other.sets
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

struct Judge<'a> {
    board: &'a Board,
    factored: &'a Factored,
    layup: &'a Layup,
    uprights: usize,
}

impl Judge<'_> {
    fn stood(&self, loaded: Loaded, most: Option<(MeanMoment, PlyStress)>) -> Stood {
        let nothing = Used { part: 0.0, at: loaded.largest_at, stress: None, push: None };
        let moment = most.map_or([0.0; 3], |(mean, _)| mean.moment);
        let bending = most.map_or(nothing, |(mean, stress)| Used {
            part: stress.utilisation,
            at: mean.at,
            stress: Some(stress),
            push: None,
        });
        let mut held = nothing;
        let mut most = |push: Push, used: f64| {
            if used > held.part {
                held = Used { part: used, at: push.at, stress: None, push: Some((push.part, push.per_length)) };
            }
        };
        let [across, up] = shear_uses(self.layup);
        // Each side of an upright or a floor takes half.
        let unit =
            |part| if matches!(part, SupportPart::Bed(i) if i < self.uprights) { 0.5 * across } else { 0.5 * up };
        for push in self.factored.pushes(&loaded, SPREADS * self.board.width()) {
            most(push, push.per_length.abs() * unit(push.part));
        }
        for push in self.factored.pushes(&loaded, inches(ALONG_TAB_IN).si()) {
            most(push, push.per_length.abs() / self.board.tab);
        }
        Stood { bending, moment, held, loaded: Arc::new(loaded) }
    }
}

/// Use of the shear strength through the thickness for a shear of 1 N/m, across and up.
fn shear_uses(layup: &Layup) -> [f64; 2] {
    [[1.0, 0.0], [0.0, 1.0]].map(|shear| layup.worst([0.0; 3], shear).map_or(0.0, |stress| stress.utilisation))
}

/// What the faces bring across the transom in a case, `(place, N)`: each force at the middle of its bolts, each moment as a pair of
/// forces a metre apart; what holds the transom gives them back.
fn resultants(footings: &[Footing], case: usize) -> Vec<(Point, f64)> {
    footings
        .iter()
        .filter_map(|footing| Some((footing.middle, footing.loads.get(case)?)))
        .flat_map(|([y, z], load)| {
            let [_, pitch, yaw] = load.moment;
            let pairs = [([y, z + 0.5], -pitch), ([y, z - 0.5], pitch), ([y + 0.5, z], yaw), ([y - 0.5, z], -yaw)];
            std::iter::once(([y, z], -load.force[0])).chain(pairs)
        })
        .collect()
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

pub(super) fn unfit(error: PanelError) -> Absent {
    if matches!(error, PanelError::NoSupport) {
        return Absent::CannotBe(say!("Nothing is said to hold the transom: what works on it cannot be reckoned."));
    }
    Absent::CannotBe(say!("The transom's panel cannot be solved: {}.", error.to_string()))
}

/// What the faces bring to the panel in a case: each force comes down to the middle of the thickness at 45 degrees, so that
/// it covers there half the thickness more on every side (EN 1995-2, 5.1.2, value from memory), as far as the panel goes.
///
/// The face presses from arm to arm. A bolt's pull is taken to come over its table's washer whatever lies under its nut: what spreads it more spares the core there,
/// and hardly the panel.
fn loads(board: &Board, footings: &[Footing], case: usize) -> Vec<Load> {
    let strip = inches(STRIP_IN).si();
    footings
        .iter()
        .filter_map(|footing| {
            let forces = footing.pressed.get(case)?;
            let side = 0.5 * PI.sqrt() * footing.size.spec.washer_diameter.value.si();
            let pads = vec![[side, side]; footing.bolts.len()];
            Some(panel_loads(&footing.bolts, footing.arms(), forces, &pads, strip))
        })
        .flatten()
        .map(|load| match load {
            Load::Patch { area, force } => Load::Patch { area: spread(board, area), force },
            other => other,
        })
        .collect()
}

/// The same in each of so many cases.
pub(super) fn load_sets(board: &Board, footings: &[Footing], cases: usize) -> Vec<Vec<Load>> {
    (0..cases).map(|case| loads(board, footings, case)).collect()
}

/// An area enlarged by half the thickness on every side, as far as the panel goes.
fn spread(board: &Board, area: Rect) -> Rect {
    let more = 0.5 * board.thickness();
    let [y, z] = area.centre;
    let within = |half: f64, room: f64| half.min(WITHIN * room.max(SMALLEST));
    let out = board.chine[0].min(board.half_top) - y.abs();
    let half_width = within(0.5 * area.width + more, out);
    let (up, down) = (board.top - z, z - board.rise * (y.abs() + half_width));
    let half_height = within(0.5 * area.height + more, up.min(down));
    Rect { centre: area.centre, width: 2.0 * half_width, height: 2.0 * half_height }
}

/// A hair within the edges, lest rounding put an area off the panel, and an area that is still one, m.
const WITHIN: f64 = 0.999;
const SMALLEST: f64 = 1e-3;
