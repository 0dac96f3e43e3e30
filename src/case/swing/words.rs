//! Poses and bodies in the words of the trade.

use uom::si::f64::{Angle, Length};

use super::FACE;
use super::swept::Swept;
use crate::physics::swing::{AngleRange, BodyName, Clearance, EngineChain, NeighbourTilt, Owner, Pose};
use crate::quantity::{Measure, Text, degrees, inches, say};

/// Angles nearer than this to an end of the range are that end. Common practice, no source: no stop is set
/// more closely.
const SAME_DEG: f64 = 0.5;

/// A range that ends beyond this is one of tilt, not of trim; one that begins under the other begins down.
const TILTED_DEG: f64 = 40.0;
const TRIM_DEG: f64 = 10.0;

fn same(a: Angle, b: Angle) -> bool {
    (a - b).abs() <= degrees(SAME_DEG)
}

/// Bodies that are made of several, whose names have the part behind a comma.
const IN_PARTS: [&str; 3] = ["powerhead cowl", "well", "cutout"];

/// `the forward edge of the powerhead cowl` for `powerhead cowl, forward edge`. What a person named keeps its name.
pub fn body_words(name: &str) -> String {
    match name.split_once(", ") {
        Some((whole, part)) if IN_PARTS.contains(&whole) => format!("the {part} of the {whole}"),
        _ if name.starts_with("the ") => name.to_owned(),
        _ => format!("the {name}"),
    }
}

fn owned(body: &BodyName, swept: &Swept) -> String {
    let words = body_words(&body.name);
    match (&swept.other, body.owner) {
        (Some(_), Owner::Engine(_)) => format!("{words} of the {}", swept.label),
        (Some(other), Owner::Neighbour(_) | Owner::Obstacle) if swept.scene.rods.is_empty() => {
            format!("{words} of the {other}")
        }
        _ => words,
    }
}

/// `full tilt (68.0 deg)`, `34.0 deg of tilt`.
fn tilt_words(tilt: Angle, range: AngleRange) -> Text {
    let shown = Measure::of(tilt);
    let up = range.high() > degrees(TILTED_DEG);
    if range.low() == range.high() && !up && tilt <= degrees(TRIM_DEG) {
        say!("down ({})", shown)
    } else if range.low() != range.high() && same(tilt, range.low()) && tilt <= degrees(TRIM_DEG) {
        say!("down and trimmed in ({})", shown)
    } else if same(tilt, range.high()) && up {
        say!("at full tilt ({})", shown)
    } else if same(tilt, range.high()) {
        say!("trimmed out as far as it goes ({})", shown)
    } else {
        say!("at {} of tilt", shown)
    }
}

/// `hard to port (30.0 deg)`, `amidships`.
fn steer_words(steer: Angle, range: AngleRange) -> Text {
    let hard = |end: Angle| range.low() != range.high() && same(steer, end);
    let side = if steer.value > 0.0 { "starboard" } else { "port" };
    if steer.abs() <= degrees(SAME_DEG) {
        Text::from("amidships")
    } else if hard(range.low()) || hard(range.high()) {
        say!("helm hard to {} ({})", side, Measure::of(steer.abs()))
    } else {
        say!("helm {} to {}", Measure::of(steer.abs()), side)
    }
}

/// Heights nearer than this to the bottom of a bracket's travel are the bottom. Common practice, no source.
const SAME_HEIGHT_IN: f64 = 0.0625;

/// `its bracket raised 8 in`, `its bracket down`.
pub fn raised_words(height: Length) -> Text {
    if height > inches(SAME_HEIGHT_IN) {
        say!("its bracket raised {}", Measure::tape(height))
    } else {
        Text::from("its bracket down")
    }
}

/// How high the bracket of an engine stands, behind a comma, where it lifts.
fn lift_words(chain: &EngineChain, pose: &Pose) -> Text {
    chain.lift().zip(pose.lift).map_or(Text::default(), |(_, height)| Text::from(", ").then(raised_words(height)))
}

/// Where the engines stand: `port engine at full tilt (68.0 deg), starboard engine at …, hard to port`.
pub fn pose_words(pose: &Pose, swept: &Swept) -> Text {
    let steer = steer_words(pose.steer, swept.scene.steer);
    let own = say!("the {} ", &swept.label)
        .then(tilt_words(pose.tilt, swept.scene.tilt))
        .then(lift_words(&swept.scene.engine, pose));
    let (Some(other), Some(neighbour), Some(tilt)) = (&swept.other, &swept.scene.neighbour, pose.neighbour_tilt) else {
        return own.then(Text::from(", ")).then(steer);
    };
    let range = match neighbour.tilt {
        NeighbourTilt::Independent(range) => range,
        NeighbourTilt::Together => swept.scene.tilt,
    };
    // A bracket's face stands, however its engine tilts.
    let face = neighbour.chain.bodies().iter().all(|(_, body)| body.name() == FACE);
    let theirs = match (face, pose.lift) {
        (true, Some(height)) => say!(", the bracket of the {} raised {}", other, Measure::tape(height)),
        (true, None) => say!(", the bracket of the {}", other),
        (false, _) => say!(", the {} ", other).then(tilt_words(tilt, range)).then(lift_words(&neighbour.chain, pose)),
    };
    let comma = Text::from(", ");
    if neighbour.chain.stands() {
        own.then(comma).then(steer).then(theirs)
    } else {
        own.then(theirs).then(comma).then(steer)
    }
}

/// What comes near what, and how near: `the forward edge of the powerhead cowl comes within 9/16 in of the
/// forward wall of the well`.
pub fn touch_words(clearance: &Clearance, swept: &Swept) -> Text {
    let (body, other) = (owned(&clearance.body, swept), owned(&clearance.other, swept));
    match clearance.contact_depth() {
        Some(depth) => say!("{} strikes {}, {} deep", body, other, Measure::tape(depth)),
        None => say!("{} comes within {} of {}", body, Measure::tape(clearance.lower.max(inches(0.0))), other),
    }
}
