//! How far the engine may swing before something comes nearer than a margin.

use std::collections::BinaryHeap;

use uom::si::f64::{Angle, Length};

use super::body::{metres, radians};
use super::bound::Bounder;
use super::cell::{Cell, LIFT, STEER, TILT, VARIABLES};
use super::distance::Separation;
use super::error::{SwingError, finite};
use super::kernel::Kernel;
use super::scene::{BodyName, Pose, Scene};
use super::search::{Effort, Outcome, pose};
use super::waiting::Waiting;

/// Closest that a limit comes to the first angle that fails, in radians: 0.05 degrees, far finer than
/// a tilt stop can be set.
const RESOLUTION: f64 = 0.05 / 180.0 * std::f64::consts::PI;

/// Angles nearer than this are one angle, in radians: halving a range rounds its ends by less.
const SAME_ANGLE: f64 = 1e-12;

/// Which swing is to be limited; the other variables keep their whole range.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Swing {
    /// Tilt, from the low end of its range upward.
    Tilt,
    /// Steering, from amidships both ways alike.
    SteerBothWays,
    /// Steering from amidships toward positive angles.
    SteerPositive,
    /// Steering from amidships toward negative angles; limits are given as positive sizes.
    SteerNegative,
}

/// Something that comes too near.
#[derive(Debug, Clone, PartialEq)]
pub struct Obstruction {
    /// Where.
    pub pose: Pose,
    /// The body of the engine or the rod.
    pub body: BodyName,
    /// What it comes too near.
    pub other: BodyName,
    /// How near; negative under contact. Below the margin, or above it by less than the gap.
    pub distance: Length,
}

/// How far a swing may go.
#[derive(Debug, Clone, PartialEq)]
pub struct SwingLimit {
    /// Certified: from the start of the swing to here, at every pose of the other variables, nothing is nearer than
    /// the margin. `None` when not even the start is clear.
    pub up_to: Option<Angle>,
    /// Whether `up_to` is the end of the range.
    pub whole_range: bool,
    /// What stops it there: within 0.05 degrees beyond `up_to`, unless boxes ran out.
    pub stopped_by: Option<Obstruction>,
    /// Whether boxes ran out; `up_to` still holds, but more may be clear.
    pub outcome: Outcome,
    /// Boxes of poses looked at.
    pub boxes: usize,
}

/// How high a lifting bracket may go.
#[derive(Debug, Clone, PartialEq)]
pub struct LiftLimit {
    /// Certified: from the bottom of the travel to here, at every tilt and steering, nothing is nearer than the margin. `None`
    /// when not even the bottom is clear.
    pub up_to: Option<Length>,
    /// Whether `up_to` is the whole travel.
    pub whole_travel: bool,
    /// What stops it there.
    pub stopped_by: Option<Obstruction>,
}

/// What is limited: a swing, or the lift.
#[derive(Clone, Copy)]
enum Way {
    Swing(Swing),
    Lift,
}

impl Way {
    fn variable(self) -> usize {
        match self {
            Way::Swing(Swing::Tilt) => TILT,
            Way::Swing(Swing::SteerBothWays | Swing::SteerPositive | Swing::SteerNegative) => STEER,
            Way::Lift => LIFT,
        }
    }

    /// How far out a pose is on this way.
    fn travel(self, at: f64) -> f64 {
        match self {
            Way::Swing(Swing::Tilt | Swing::SteerPositive) | Way::Lift => at,
            Way::Swing(Swing::SteerBothWays) => at.abs(),
            Way::Swing(Swing::SteerNegative) => -at,
        }
    }

    fn start(self, cell: &Cell) -> f64 {
        let v = self.variable();
        let (low, high) = (cell.middle[v] - cell.half[v], cell.middle[v] + cell.half[v]);
        match self {
            Way::Swing(Swing::SteerBothWays) if low < 0.0 && high > 0.0 => 0.0,
            _ => self.travel(low).min(self.travel(high)),
        }
    }

    /// The part of the range that is travelled.
    fn root(self, whole: &Cell) -> Cell {
        let (low, high) = (whole.middle[STEER] - whole.half[STEER], whole.middle[STEER] + whole.half[STEER]);
        let (low, high) = match self {
            Way::Swing(Swing::Tilt | Swing::SteerBothWays) | Way::Lift => (low, high),
            Way::Swing(Swing::SteerPositive) => (low.max(0.0).min(high), high),
            Way::Swing(Swing::SteerNegative) => (low, high.min(0.0).max(low)),
        };
        let mut root = *whole;
        root.middle[STEER] = 0.5 * (low + high);
        root.half[STEER] = 0.5 * (high - low);
        root
    }
}

/// The farthest that `swing` may go with everything at least `margin` away, whatever the other variables do. An
/// early obstruction ends it even if more is clear behind it.
///
/// # Errors
/// As [`super::least_distance`]; a margin that is not finite.
pub fn permitted_range(scene: &Scene, swing: Swing, margin: Length, effort: &Effort) -> Result<SwingLimit, SwingError> {
    let gap = effort.checked()?;
    let margin = finite("the margin", margin.value)?;
    let kernel = Kernel::new(scene)?;
    let limit = limit(&kernel, Way::Swing(swing), margin, gap, effort.boxes);
    Ok(SwingLimit {
        up_to: limit.up_to.map(radians),
        whole_range: limit.whole,
        stopped_by: limit.stopped_by,
        outcome: limit.outcome,
        boxes: limit.boxes,
    })
}

/// How high the lift may carry its engine from the bottom of its travel with everything at least `margin` away, whatever the
/// other variables do.
///
/// # Errors
/// As [`super::least_distance`]; a margin that is not finite; a scene without a lift.
pub fn permitted_lift(scene: &Scene, margin: Length, effort: &Effort) -> Result<LiftLimit, SwingError> {
    let gap = effort.checked()?;
    let margin = finite("the margin", margin.value)?;
    let kernel = Kernel::new(scene)?;
    let lift = kernel.movers.iter().find_map(|mover| mover.lift).ok_or(SwingError::NoLift)?;
    let limit = limit(&kernel, Way::Lift, margin, gap, effort.boxes);
    Ok(LiftLimit {
        up_to: limit.up_to.map(|at| metres(lift.height(at).max(0.0))),
        whole_travel: limit.whole,
        stopped_by: limit.stopped_by,
    })
}

struct Limit {
    up_to: Option<f64>,
    whole: bool,
    stopped_by: Option<Obstruction>,
    outcome: Outcome,
    boxes: usize,
}

fn limit(kernel: &Kernel, swing: Way, margin: f64, gap: f64, most: usize) -> Limit {
    let root = swing.root(&kernel.root);
    let (begin, v) = (swing.start(&root), swing.variable());
    let end = swing.travel(root.middle[v] - root.half[v]).max(swing.travel(root.middle[v] + root.half[v]));
    let mut bounder = Bounder::new(kernel);
    let mut heap: BinaryHeap<Waiting> =
        (0..kernel.pairs.len()).map(|pair| Waiting { rank: begin, pair, cell: root, guess: None }).collect();
    let mut stop: Option<(f64, Obstruction)> = None;
    let mut outcome = Outcome::Certified;
    let mut boxes = 0;
    let mut reached = end;
    while let Some(node) = heap.pop() {
        if stop.as_ref().is_some_and(|(at, _)| node.rank >= at - RESOLUTION) {
            reached = node.rank;
            break;
        }
        if boxes >= most {
            outcome = Outcome::GapNotReached;
            reached = node.rank;
            break;
        }
        boxes += 1;
        let pair = kernel.pairs[node.pair];
        let look = bounder.look(pair, &node.cell, node.guess.as_ref(), margin);
        if look.lower >= margin {
            continue;
        }
        let mut note = |found: &Separation, at: &[f64; VARIABLES]| {
            let travel = swing.travel(at[v]);
            let earlier = stop.as_ref().is_none_or(|(first, _)| travel < *first);
            if found.upper < margin + gap && earlier {
                let obstruction = Obstruction {
                    pose: pose(kernel, at),
                    body: kernel.bodies[pair.0].name.clone(),
                    other: kernel.bodies[pair.1].name.clone(),
                    distance: metres(found.upper),
                };
                stop = Some((travel, obstruction));
            }
        };
        if let Some(middle) = look.middle {
            note(&middle, &node.cell.middle);
        }
        let corner = bounder.measure(pair, &look.worst, &look.direction);
        note(&corner, &look.worst);
        let Some(across) = bounder.widest(pair, &node.cell) else {
            if stop.is_none() {
                outcome = Outcome::GapNotReached;
            }
            reached = node.rank;
            break;
        };
        for cell in node.cell.halves(across) {
            heap.push(Waiting { rank: swing.start(&cell), pair: node.pair, cell, guess: Some(look.direction) });
        }
    }
    let whole_range = reached >= end && stop.is_none() && outcome == Outcome::Certified;
    let stopped = !whole_range && reached <= begin + SAME_ANGLE;
    Limit {
        up_to: (!stopped).then(|| reached.min(end)),
        whole: whole_range,
        stopped_by: stop.map(|(_, obstruction)| obstruction),
        outcome,
        boxes,
    }
}
