//! The least distance over a whole range of poses, by branch and bound, best first.

use std::collections::BinaryHeap;

use nalgebra::{Point3, Unit, Vector3};
use uom::si::f64::Length;
use uom::si::length::millimeter;

use super::body::{metres, radians};
use super::bound::{Bounder, ROUNDING};
use super::cell::{LIFT, STEER, TILT, VARIABLES};
use super::distance::Separation;
use super::error::{SwingError, finite};
use super::kernel::Kernel;
use super::scene::{BodyName, Owner, Pose, Scene};
use super::waiting::Waiting;

/// How close the answer must come, and how long it may take.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Effort {
    /// Greatest distance allowed between the certified bound and the distance attained.
    pub gap: Length,
    /// Most boxes of poses to look at before giving up honestly.
    pub boxes: usize,
}

impl Default for Effort {
    /// Half a millimetre, and enough boxes for a second or two.
    fn default() -> Self {
        Self { gap: Length::new::<millimeter>(0.5), boxes: 500_000 }
    }
}

impl Effort {
    pub(super) fn checked(&self) -> Result<f64, SwingError> {
        let gap = finite("the gap", self.gap.value)?;
        if gap <= 2.0 * ROUNDING {
            return Err(SwingError::NotPositive { what: "the gap".to_owned(), value: gap });
        }
        Ok(gap)
    }
}

/// Whether a search came as close as it was asked to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// The certified bound and the distance attained are within the gap.
    Certified,
    /// The boxes ran out first: both figures hold, but lie farther apart than asked.
    GapNotReached,
}

/// The least signed distance over a range, with the pose and points where it is attained.
///
/// Signed: how far apart two bodies are; when they overlap, minus the least distance that one must be
/// moved to part them.
#[derive(Debug, Clone, PartialEq)]
pub struct Clearance {
    /// Certified: at no pose of the range is any pair nearer (or, negative, more deeply overlapped).
    pub lower: Length,
    /// Attained at `pose` between `body` and `other`. Negative: contact is certain there, and moving
    /// `body` by this much against `direction` parts the two.
    pub upper: Length,
    /// Where it is attained.
    pub pose: Pose,
    /// The body of the engine or the rod.
    pub body: BodyName,
    /// What it comes near.
    pub other: BodyName,
    /// Point of `body`'s surface, boat axes, metres. Under contact, its deepest point in `other`.
    pub on_body: Point3<f64>,
    /// Point of `other`'s surface, boat axes, metres.
    pub on_other: Point3<f64>,
    /// From `body` to `other`.
    pub direction: Unit<Vector3<f64>>,
    /// Whether the gap was reached.
    pub outcome: Outcome,
    /// Boxes of poses looked at.
    pub boxes: usize,
    /// Distances measured.
    pub measured: usize,
    /// Pairs of bodies looked at.
    pub pairs: usize,
}

impl Clearance {
    /// How deep the bodies overlap at `pose`, if they touch there.
    pub fn contact_depth(&self) -> Option<Length> {
        (self.upper.value <= 0.0).then_some(-self.upper)
    }

    /// `upper` less `lower`.
    pub fn gap(&self) -> Length {
        self.upper - self.lower
    }
}

/// Least signed distance between anything that moves and anything that it must keep clear of, at every
/// pose of the scene's ranges. The neighbour's own obstacles are a question of their own.
///
/// # Errors
/// Nothing to keep clear of, a rod without its engine, a gap that is not positive.
pub fn least_distance(scene: &Scene, effort: &Effort) -> Result<Clearance, SwingError> {
    let gap = effort.checked()?;
    let kernel = Kernel::new(scene)?;
    let mut search = Search::new(&kernel, effort.boxes);
    search.run(&Goal::Least { gap });
    search.clearance(gap).ok_or(SwingError::NoObstacles)
}

/// The same, where anything comes nearer than `bound` by more than the gap; nothing where none does, which is found out sooner.
///
/// # Errors
/// As [`least_distance`]; a bound that is not finite.
pub fn least_distance_below(scene: &Scene, bound: Length, effort: &Effort) -> Result<Option<Clearance>, SwingError> {
    let gap = effort.checked()?;
    let margin = finite("the bound", bound.value)? - gap;
    let kernel = Kernel::new(scene)?;
    let mut search = Search::new(&kernel, effort.boxes);
    search.run(&Goal::AtLeast { margin, gap });
    if search.certified() >= margin {
        return Ok(None);
    }
    search.run(&Goal::Least { gap });
    Ok(search.clearance(gap))
}

/// The same against each obstacle, and the neighbour, on its own: in the order of the scene, the neighbour last.
/// What may touch everything that moves is left out.
///
/// # Errors
/// As [`least_distance`].
pub fn least_distance_to_each(scene: &Scene, effort: &Effort) -> Result<Vec<Clearance>, SwingError> {
    let gap = effort.checked()?;
    let mut kernel = Kernel::new(scene)?;
    let mut found = Vec::new();
    for pairs in by_other(&mut kernel) {
        kernel.pairs = pairs;
        let mut search = Search::new(&kernel, effort.boxes);
        search.run(&Goal::Least { gap });
        found.extend(search.clearance(gap));
    }
    Ok(found)
}

/// Every obstacle, and the neighbour, that comes nearer than `margin`, each with its own least distance: in the order of the
/// scene, the neighbour last. What keeps clear is not closed in on.
///
/// # Errors
/// As [`least_distance`]; a margin that is not finite.
pub fn nearer_than(scene: &Scene, margin: Length, effort: &Effort) -> Result<Vec<Clearance>, SwingError> {
    let gap = effort.checked()?;
    let margin = finite("the margin", margin.value)?;
    let mut kernel = Kernel::new(scene)?;
    let mut found = Vec::new();
    for pairs in by_other(&mut kernel) {
        kernel.pairs = pairs;
        let mut search = Search::new(&kernel, effort.boxes);
        search.run(&Goal::AtLeast { margin, gap });
        if search.certified() < margin {
            search.run(&Goal::Least { gap });
            found.extend(search.clearance(gap).filter(|nearest| nearest.upper.value < margin));
        }
    }
    Ok(found)
}

/// The pairs by what they keep clear of: each obstacle, and the neighbour last.
fn by_other(kernel: &mut Kernel) -> Vec<Vec<(usize, usize)>> {
    let pairs = std::mem::take(&mut kernel.pairs);
    let obstacles = kernel.bodies.len();
    let group = |body: usize| match kernel.bodies[body].name.owner {
        Owner::Obstacle => body,
        Owner::Engine(_) | Owner::Neighbour(_) | Owner::Rod => obstacles,
    };
    let mut groups: Vec<usize> = pairs.iter().map(|pair| group(pair.1)).collect();
    groups.sort_unstable();
    groups.dedup();
    groups.into_iter().map(|other| pairs.iter().filter(|pair| group(pair.1) == other).copied().collect()).collect()
}

/// When to leave a box alone, and when to stop.
pub(super) enum Goal {
    /// Close in on the least distance.
    Least { gap: f64 },
    /// Find out whether the least distance is at least `margin`; within `gap` of it counts as not.
    AtLeast { margin: f64, gap: f64 },
}

impl Goal {
    fn enough(&self, best: f64) -> f64 {
        match self {
            Goal::Least { gap } => best - gap,
            Goal::AtLeast { margin, .. } => *margin,
        }
    }

    fn refuted(&self, best: f64) -> bool {
        match self {
            Goal::Least { .. } => false,
            Goal::AtLeast { margin, gap } => best < margin + gap,
        }
    }
}

/// The nearest found so far.
pub(super) struct Best {
    pub separation: Separation,
    pub pair: usize,
    pub pose: [f64; VARIABLES],
}

pub(super) struct Search<'k> {
    pub kernel: &'k Kernel,
    bounder: Bounder<'k>,
    heap: BinaryHeap<Waiting>,
    pub best: Option<Best>,
    settled: f64,
    budget: usize,
    boxes: usize,
}

impl<'k> Search<'k> {
    pub(super) fn new(kernel: &'k Kernel, budget: usize) -> Self {
        let heap = (0..kernel.pairs.len())
            .map(|pair| Waiting { rank: f64::NEG_INFINITY, pair, cell: kernel.root, guess: None })
            .collect();
        Self { kernel, bounder: Bounder::new(kernel), heap, best: None, settled: f64::INFINITY, budget, boxes: 0 }
    }

    pub(super) fn nearest(&self) -> f64 {
        self.best.as_ref().map_or(f64::INFINITY, |best| best.separation.upper)
    }

    /// What nothing is below, so far.
    pub(super) fn certified(&self) -> f64 {
        let open = self.heap.peek().map_or(f64::INFINITY, |node| node.rank);
        open.min(self.settled).min(self.nearest())
    }

    pub(super) fn run(&mut self, goal: &Goal) {
        while let Some(node) = self.heap.pop() {
            let enough = goal.enough(self.nearest());
            let done = node.rank >= enough || goal.refuted(self.nearest());
            if done || self.boxes >= self.budget {
                self.heap.push(node);
                return;
            }
            self.boxes += 1;
            self.branch(node, goal);
        }
    }

    fn branch(&mut self, node: Waiting, goal: &Goal) {
        let pair = self.kernel.pairs[node.pair];
        let enough = goal.enough(self.nearest());
        let look = self.bounder.look(pair, &node.cell, node.guess.as_ref(), enough);
        // A box never knows less than the box that it was cut from.
        let lower = look.lower.max(node.rank);
        if let Some(middle) = look.middle {
            self.offer(middle, node.pair, node.cell.middle);
        }
        if lower < goal.enough(self.nearest()) && look.worst != node.cell.middle {
            let corner = self.bounder.measure(pair, &look.worst, &look.direction);
            self.offer(corner, node.pair, look.worst);
        }
        let across = self.bounder.widest(pair, &node.cell);
        let Some(across) = across.filter(|_| lower < goal.enough(self.nearest())) else {
            self.settled = self.settled.min(lower);
            return;
        };
        for cell in node.cell.halves(across) {
            self.heap.push(Waiting { rank: lower, pair: node.pair, cell, guess: Some(look.direction) });
        }
    }

    fn offer(&mut self, separation: Separation, pair: usize, pose: [f64; VARIABLES]) {
        if separation.upper < self.nearest() {
            self.best = Some(Best { separation, pair, pose });
        }
    }

    pub(super) fn clearance(&self, gap: f64) -> Option<Clearance> {
        let best = self.best.as_ref()?;
        let (a, b) = self.kernel.pairs[best.pair];
        let lower = self.certified();
        let upper = best.separation.upper;
        Some(Clearance {
            lower: metres(lower),
            upper: metres(upper),
            pose: pose(self.kernel, &best.pose),
            body: self.kernel.bodies[a].name.clone(),
            other: self.kernel.bodies[b].name.clone(),
            on_body: Point3::from(best.separation.first),
            on_other: Point3::from(best.separation.second),
            direction: Unit::new_unchecked(best.separation.direction),
            outcome: if upper - lower <= gap { Outcome::Certified } else { Outcome::GapNotReached },
            boxes: self.boxes,
            measured: self.bounder.measured,
            pairs: self.kernel.pairs.len(),
        })
    }
}

pub(super) fn pose(kernel: &Kernel, at: &[f64; VARIABLES]) -> Pose {
    let neighbour = kernel.movers.get(1).map(|mover| radians(at[mover.tilt_variable]));
    let lift = kernel.movers.iter().find_map(|mover| mover.lift.as_ref());
    let lift = lift.map(|lift| metres(lift.height(at[LIFT]).max(0.0)));
    Pose { tilt: radians(at[TILT]), neighbour_tilt: neighbour, steer: radians(at[STEER]), lift }
}
