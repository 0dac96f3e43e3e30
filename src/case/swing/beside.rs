//! Two neighbouring engines against each other.

use nalgebra::{Point3, Unit, Vector3};
use uom::si::f64::{Angle, Length};

use super::cures::{limits, spacing};
use super::hang::Hanging;
use super::swept::{Spacing, Swept, refused};
use super::{Answer, effort, from_neighbour};
use crate::job::Role;
use crate::physics::swing::{
    AngleRange, Clearance, Effort, EngineChain, Neighbour, NeighbourTilt, Obstacle, Owner, Part, Pose, Scene,
    SwingError, least_distance, least_distance_below,
};
use crate::quantity::{Dimensioned, Text, degrees};
use crate::reading::Absent;

/// Tilt tubes nearer than this to one line are on one line, in metres: far below the gap of any answer.
const ONE_LINE: f64 = 1e-9;

/// Boxes of poses looked at for a limit of two engines against each other: what grazes its margin over a whole range of tilts would
/// take a hundred times as many, for a limit that is certified either way.
const BOXES: usize = 20_000;

/// Each two neighbours.
pub(super) fn neighbours(hanging: &[Hanging]) -> Answer<Vec<Swept>> {
    if hanging.len() < 2 {
        return Err(Absent::NotApplicable(Text::from("A single engine has no neighbour.")));
    }
    let mut across: Vec<&Hanging> = hanging.iter().collect();
    across.sort_by(|a, b| b.rest.y.total_cmp(&a.rest.y));
    let mut found = Vec::new();
    for pair in across.windows(2) {
        let (one, other) = (pair[0], pair[1]);
        if one.role == other.role {
            found.push(together(one, other).map_err(|error| refused(&error))??);
        } else {
            found.extend(apart(one, other).map_err(|error| refused(&error))?);
        }
    }
    Ok(found)
}

fn swept(one: &Hanging, other: &Hanging, scene: Scene, clearance: Clearance) -> Swept {
    Swept { other: Some(other.label.clone()), ..Swept::new(&one.label, scene, clearance, from_neighbour()) }
}

/// Two engines steered alike, as tie bar or helm makes them, each anywhere in its own range of tilt.
fn together(one: &Hanging, other: &Hanging) -> Result<Answer<Swept>, SwingError> {
    let mut scene = Scene::new(one.fitted.chain.clone(), one.fitted.tilt, one.fitted.steer);
    scene.neighbour =
        Some(Neighbour { chain: other.fitted.chain.clone(), tilt: NeighbourTilt::Independent(other.fitted.tilt) });
    let asked = match on_one_line(one, other) {
        true => by_difference(one, other)?,
        false => vec![Asked { scene: scene.clone(), who: Who::Both }],
    };
    let clearance = nearest(&asked, one, other, Vector3::zeros())?;
    let mut found = swept(one, other, scene, clearance);
    if !found.keeps() {
        // Only steering is limited in the remedy, and every scene steers both alike.
        let mut least = None;
        for part in &asked {
            let mut alone = found.clone();
            alone.scene = part.scene.clone();
            match limits(&alone, &Effort { boxes: BOXES, ..effort() }) {
                Ok(cure) => {
                    let reach = cure.steer.up_to.map_or(-1.0, |angle| angle.value);
                    if least.as_ref().is_none_or(|(at, _)| reach < *at) {
                        least = Some((reach, cure));
                    }
                }
                Err(open) => return Ok(Err(open)),
            }
        }
        found.cure = least.map(|(_, cure)| cure);
        let moved = |shift| nearest(&asked, one, other, shift);
        found.spacing = Some(spread(one, other, &found.clearance, moved)?);
    }
    Ok(Ok(found))
}

fn spread(
    one: &Hanging,
    other: &Hanging,
    clearance: &Clearance,
    moved: impl Fn(Vector3<f64>) -> Result<Clearance, SwingError>,
) -> Result<Spacing, SwingError> {
    let now = one.rest.y - other.rest.y;
    spacing(clearance, from_neighbour(), now.abs(), |by| moved(Vector3::new(0.0, now.signum() * by, 0.0)))
}

/// Which of the two engines a scene takes for the one that moves.
#[derive(Clone, Copy, PartialEq)]
enum Who {
    /// Both, each with its own tilt.
    Both,
    /// Both, by the difference of their tilts.
    Difference,
    /// The one, against what stands still of the other.
    One,
    /// The other, against what stands still of the one.
    Other,
}

struct Asked {
    scene: Scene,
    who: Who,
}

fn on_one_line(one: &Hanging, other: &Hanging) -> bool {
    let (a, b) = (one.fitted.chain.tilt_axis(), other.fitted.chain.tilt_axis());
    let between = b.point() - a.point();
    let along = a.direction().into_inner();
    a.direction().cross(&b.direction()).norm() <= ONE_LINE
        && a.direction().dot(&b.direction()) > 0.0
        && (between - along * between.dot(&along)).norm() <= ONE_LINE
}

/// Two engines that tilt about one line: turned together about it they keep their distance, so that it depends
/// on the difference of their tilts and on the steering alone, and every difference that the two ranges allow is
/// looked at. What stands still of either is looked at by itself.
fn by_difference(one: &Hanging, other: &Hanging) -> Result<Vec<Asked>, SwingError> {
    let moving = |part: Part, _: &str| part != Part::Bracket;
    let (a, b) = (one.fitted.tilt, other.fitted.tilt);
    let range = AngleRange::new("the difference of tilts", a.low() - b.high(), a.high() - b.low())?;
    let mut scene = Scene::new(one.fitted.chain.keeping(moving)?, range, one.fitted.steer);
    scene.neighbour = Some(Neighbour {
        chain: other.fitted.chain.keeping(moving)?,
        tilt: NeighbourTilt::Independent(AngleRange::only("upright", degrees(0.0))?),
    });
    let mut asked = vec![Asked { scene, who: Who::Difference }];
    for (who, mover, still) in [(Who::One, one, other), (Who::Other, other, one)] {
        let mut scene = Scene::new(mover.fitted.chain.keeping(moving)?, mover.fitted.tilt, mover.fitted.steer);
        for (part, body) in still.fitted.chain.bodies() {
            if *part == Part::Bracket {
                scene.obstacles.push(Obstacle::Body(body.clone()));
            }
        }
        if !scene.obstacles.is_empty() {
            asked.push(Asked { scene, who });
        }
    }
    Ok(asked)
}

/// The nearest of several scenes, the one engine moved by `shift`, told as a pose of both.
fn nearest(asked: &[Asked], one: &Hanging, other: &Hanging, shift: Vector3<f64>) -> Result<Clearance, SwingError> {
    let mut least: Option<Clearance> = None;
    for part in asked {
        let mut scene = part.scene.clone();
        if part.who == Who::Other {
            for obstacle in &mut scene.obstacles {
                if let Obstacle::Body(body) = obstacle {
                    *body = body.shifted(shift);
                }
            }
        } else {
            scene.engine = scene.engine.shifted(shift);
        }
        let found = told(part.who, one, other, least_distance(&scene, &effort())?);
        least = Some(match least {
            None => found,
            Some(so_far) => {
                let lower = Length::from_si(so_far.lower.value.min(found.lower.value));
                let boxes = so_far.boxes + found.boxes;
                let pairs = so_far.pairs + found.pairs;
                let mut nearer = if found.upper < so_far.upper { found } else { so_far };
                nearer.lower = lower;
                nearer.boxes = boxes;
                nearer.pairs = pairs;
                nearer
            }
        });
    }
    least.ok_or(SwingError::NoObstacles)
}

/// A clearance of one scene as one of both engines.
fn told(who: Who, one: &Hanging, other: &Hanging, mut found: Clearance) -> Clearance {
    match who {
        Who::Both => {}
        Who::Difference => {
            let low = (one.fitted.tilt.low() - found.pose.tilt).value;
            let second = Angle::from_si(low.max(other.fitted.tilt.low().value));
            let axis = one.fitted.chain.tilt_axis();
            let turn = nalgebra::Rotation3::from_axis_angle(&axis.direction(), second.value);
            let carry = |point: Point3<f64>| axis.point() + turn * (point - axis.point());
            found.on_body = carry(found.on_body);
            found.on_other = carry(found.on_other);
            found.direction = Unit::new_unchecked(turn * found.direction.into_inner());
            found.pose = Pose { tilt: found.pose.tilt + second, neighbour_tilt: Some(second), ..found.pose };
        }
        Who::One => {
            found.other.owner = Owner::Neighbour(Part::Bracket);
            found.pose.neighbour_tilt = Some(other.fitted.tilt.low());
        }
        Who::Other => {
            std::mem::swap(&mut found.body, &mut found.other);
            std::mem::swap(&mut found.on_body, &mut found.on_other);
            found.direction = -found.direction;
            found.body.owner = Owner::Engine(Part::Bracket);
            if let Owner::Engine(part) = found.other.owner {
                found.other.owner = Owner::Neighbour(part);
            }
            found.pose.neighbour_tilt = Some(found.pose.tilt);
            found.pose.tilt = one.fitted.tilt.low();
        }
    }
    found
}

/// The engine as it hangs; one that is for getting home on what lifts it.
fn on_its_lift(engine: &Hanging) -> EngineChain {
    let chain = engine.fitted.chain.clone();
    match engine.lift.filter(|_| engine.role == Role::Auxiliary) {
        Some(lift) => chain.lifted(lift),
        None => chain,
    }
}

/// An engine that is for getting home is not steered with the others: each is looked at with the other
/// amidships, down and at full tilt; at every height of the bracket that lifts it.
fn apart(one: &Hanging, other: &Hanging) -> Result<Vec<Swept>, SwingError> {
    let mut found = Vec::new();
    let upright = degrees(0.0);
    for (moving, still) in [(one, other), (other, one)] {
        // How near it keeps off the other as that stood before: what comes no nearer than that is hidden by it.
        let mut kept = None;
        for tilt in [upright, still.fitted.tilt.high()] {
            let mut scene = Scene::new(on_its_lift(moving), moving.fitted.tilt, moving.fitted.steer);
            let only = AngleRange::only("where the other stands", tilt)?;
            scene.neighbour = Some(Neighbour {
                chain: on_its_lift(still).standing(tilt, upright),
                tilt: NeighbourTilt::Independent(only),
            });
            let clearance = match kept {
                None => Some(least_distance(&scene, &effort())?),
                Some(bound) => least_distance_below(&scene, bound, &effort())?,
            };
            let Some(clearance) = clearance else { continue };
            let mut swept = swept(moving, still, scene, clearance);
            kept = swept.keeps().then_some(swept.clearance.upper);
            swept.limit_lift()?;
            if !swept.keeps() {
                let scene = &swept.scene;
                swept.spacing = Some(spread(moving, still, &swept.clearance, |shift| {
                    let mut moved = scene.clone();
                    moved.engine = moved.engine.shifted(shift);
                    least_distance(&moved, &effort())
                })?);
            }
            found.push(swept);
        }
    }
    Ok(found)
}
