//! What stands round the engines, as bodies in boat axes.

use nalgebra::Point3;
use uom::si::f64::Length;

use super::hang::Hanging;
use crate::case::stern::Stern;
use crate::job::{BoxedObstacle, SplashWell};
use crate::physics::swing::{ConvexBody, Obstacle, SwingError};
use crate::quantity::{Measure, Text, inches, say};
use crate::rig::{Missing, Rig};

/// Transom thickness where it was not taken. Common practice, no source.
const TRANSOM_THICKNESS_IN: f64 = 2.0;
/// Depth of the well's floor below the transom's top where it was not taken. Common practice, no source.
const WELL_DEPTH_IN: f64 = 12.0;
/// How far the deck forward of the well, and the sides beside it, are followed. Common practice, no
/// source: farther than any cowl reaches.
const DECK_IN: f64 = 30.0;
const SIDE_IN: f64 = 12.0;
/// Half width of the transom where neither it nor the beam was taken. Common practice, no source.
const HALF_TRANSOM_IN: f64 = 48.0;
/// A setback bracket's mounting face: its height and thickness, how far it stands out beside the outer
/// engine's centre, and how far its body lies below its top. Common practice, no source.
const FACE_DEPTH_IN: f64 = 14.0;
const FACE_THICKNESS_IN: f64 = 1.0;
const FACE_HALF_WIDTH_IN: f64 = 7.0;
const TUB_BELOW_IN: f64 = 5.0;
/// How far all that is not known of the boat is taken to reach, up and forward, in metres: farther than any
/// engine.
const UNKNOWN_REACH: f64 = 6.0;

/// Name of the space that stands for all that was not measured.
pub(super) const UNMEASURED: &str = "boat forward of her transom";
/// Name of the transom itself.
pub(super) const TRANSOM: &str = "transom";
/// Name of what carries a bracket's face.
pub const TUB: &str = "bracket";
/// Name of a bracket's face.
pub const FACE: &str = "mounting face of the bracket";

/// Everything fixed.
#[derive(Clone, Debug)]
pub struct Around {
    /// The bodies that are known.
    pub known: Vec<Obstacle>,
    /// What is not known of the well, where something is not.
    pub missing: Vec<Missing>,
    /// All that could be there where something is not known.
    pub(super) unknown: Obstacle,
    /// What was taken for granted.
    pub assumed: Vec<Text>,
    /// Which of the known bodies are a bracket's face and what carries it, by setback and height of the top.
    of_brackets: Vec<((f64, f64), std::ops::Range<usize>)>,
}

impl Around {
    /// The known bodies without those of the bracket on which this engine hangs, and that bracket's face.
    pub(super) fn beside_bracket_of(&self, engine: &Hanging) -> (Vec<Obstacle>, Option<&Obstacle>) {
        let own = self.of_brackets.iter().find(|(place, _)| !engine.on_transom && *place == place_of(engine));
        let own = own.map_or(0..0, |(_, own)| own.clone());
        let face = self.known[own.clone()].iter().find(|body| body.name() == FACE);
        let others = self.known.iter().enumerate().filter(|(i, _)| !own.contains(i));
        (others.map(|(_, body)| body.clone()).collect(), face)
    }
}

/// What tells brackets apart.
fn place_of(engine: &Hanging) -> (f64, f64) {
    (engine.setback.value, engine.bracket_top)
}

/// The surroundings of the engines.
///
/// # Errors
/// Bodies that cannot be built: far-off readings only, and the job's bounds exclude those.
pub(super) fn around(rig: &Rig, stern: &Stern, engines: &[Hanging]) -> Result<Around, SwingError> {
    let mut around = Around {
        known: Vec::new(),
        missing: Vec::new(),
        unknown: unknown(stern)?,
        assumed: Vec::new(),
        of_brackets: Vec::new(),
    };
    let half_transom = half_transom(rig);
    let inside = transom(rig, stern, half_transom, &mut around)?;
    brackets(stern, engines, &mut around)?;
    well(rig, stern, half_transom, inside, &mut around)?;
    for entry in &rig.job.obstacles {
        around.known.push(boxed(stern, entry)?);
    }
    Ok(around)
}

fn half_transom(rig: &Rig) -> f64 {
    let width = rig.job.boat.transom_width().reading().or(rig.job.boat.beam().reading());
    width.map_or(inches(HALF_TRANSOM_IN).value, |width| width.value.value / 2.0)
}

/// A body between two corners, which may be given either way round.
fn block(name: &str, from: [f64; 3], to: [f64; 3]) -> Result<Obstacle, SwingError> {
    ConvexBody::cuboid(name, Point3::from(from), Point3::from(to)).map(Obstacle::Body)
}

/// A job's box, which counts from the outside top edge of the transom.
pub(super) fn boxed(stern: &Stern, entry: &BoxedObstacle) -> Result<Obstacle, SwingError> {
    let (x, z) = (stern.top.x, stern.top.z);
    block(
        &entry.name,
        [x + entry.forward.0.value.value, entry.across.0.y().value, z + entry.up.0.value.value],
        [x + entry.forward.1.value.value, entry.across.1.y().value, z + entry.up.1.value.value],
    )
}

/// All that lies forward of the transom's face and above its top edge.
fn unknown(stern: &Stern) -> Result<Obstacle, SwingError> {
    let top = stern.top;
    let far = top.x.max(0.0) + UNKNOWN_REACH;
    let mut points = Vec::new();
    for y in [-UNKNOWN_REACH, UNKNOWN_REACH] {
        for [x, z] in
            [[0.0, 0.0], [top.x, top.z], [top.x, top.z + UNKNOWN_REACH], [far, top.z + UNKNOWN_REACH], [far, 0.0]]
        {
            points.push(Point3::new(x, y, z));
        }
    }
    ConvexBody::hull(UNMEASURED, &points).map(Obstacle::Body)
}

/// The transom itself; returns where its inside is at the top.
fn transom(rig: &Rig, stern: &Stern, half: f64, around: &mut Around) -> Result<f64, SwingError> {
    let thickness = match rig.job.transom.thickness().reading() {
        Some(reading) => reading.value,
        None => {
            let thickness = inches(TRANSOM_THICKNESS_IN);
            around.assumed.push(say!("Swing: the transom is {} thick.", Measure::tape(thickness)));
            thickness
        }
    };
    let through = thickness.value / stern.angle.value.cos();
    let (x, z) = (stern.top.x, stern.top.z);
    let profile = [[0.0, 0.0], [x, z], [x + through, z], [through, 0.0]];
    around.known.push(Obstacle::Body(ConvexBody::prism(TRANSOM, &profile, metres(-half), metres(half))?));
    Ok(x + through)
}

/// The brackets that engines hang on, one for all that share setback and height.
fn brackets(stern: &Stern, engines: &[Hanging], around: &mut Around) -> Result<(), SwingError> {
    for engine in engines.iter().filter(|engine| !engine.on_transom) {
        let place = place_of(engine);
        if around.of_brackets.iter().any(|(done, _)| *done == place) || engine.setback.value <= 0.0 {
            continue;
        }
        let first = around.known.len();
        let sharing: Vec<f64> = engines
            .iter()
            .filter(|other| !other.on_transom && place_of(other) == place)
            .map(|other| other.rest.y)
            .collect();
        let beside = inches(FACE_HALF_WIDTH_IN).value;
        let low = sharing.iter().copied().fold(f64::INFINITY, f64::min) - beside;
        let high = sharing.iter().copied().fold(f64::NEG_INFINITY, f64::max) + beside;
        let tops = [
            (FACE, engine.bracket_top, engine.setback.value - inches(FACE_THICKNESS_IN).value),
            (TUB, engine.bracket_top - inches(TUB_BELOW_IN).value, 0.0),
        ];
        let foot = engine.bracket_top - inches(FACE_DEPTH_IN).value;
        for (name, top, from) in tops {
            let [aft, fore] = [engine.setback, metres(from.max(0.0))];
            let profile = [
                [stern.face(aft, top), top],
                [stern.face(fore, top), top],
                [stern.face(fore, foot), foot],
                [stern.face(aft, foot), foot],
            ];
            around.known.push(Obstacle::Body(ConvexBody::prism(name, &profile, metres(low), metres(high))?));
        }
        around.of_brackets.push((place, first..around.known.len()));
        around.assumed.push(say!(
            "Swing: the bracket's mounting face is {} high, and what carries it lies {} below its top.",
            Measure::tape(inches(FACE_DEPTH_IN)),
            Measure::tape(inches(TUB_BELOW_IN))
        ));
    }
    Ok(())
}

/// The well, from its few readings.
fn well(rig: &Rig, stern: &Stern, half_transom: f64, inside: f64, around: &mut Around) -> Result<(), SwingError> {
    let well = &rig.job.well;
    if rig.job.transom.splash_well().reading() == Some(&SplashWell::None) {
        around.assumed.push(Text::from(
            "Swing: nothing stands inside the transom but what is listed under obstacles: she has no well.",
        ));
        return Ok(());
    }
    let cutout = rig.job.transom.cutout_width().ask();
    let width = match (&well.width, &cutout) {
        (Some(width), _) => Ok(width.value),
        (None, Ok(cutout)) => Ok(cutout.value),
        (None, Err(_)) if rig.job.transom.cutout.is_some() => Ok(metres(2.0 * half_transom)),
        (None, Err(lacking)) => Err(lacking.clone()),
    };
    let (length, rim) = (well.length().ask(), well.rim_above().ask());
    let (Ok(length), Ok(rim), Ok(width)) = (&length, &rim, &width) else {
        around.missing = [length.err(), rim.err(), width.err()].into_iter().flatten().collect();
        return Ok(());
    };
    let depth = match rig.job.transom.splash_well().reading() {
        Some(SplashWell::Floor(depth)) => depth.value,
        _ => {
            let depth = inches(WELL_DEPTH_IN);
            around
                .assumed
                .push(say!("Swing: the floor of the well lies {} below the transom's top.", Measure::tape(depth)));
            depth
        }
    };
    let (x, z) = (stern.top.x, stern.top.z);
    let (wall, floor) = (x + length.value.value, z - depth.value);
    let rim = z + rim.value.value;
    let half = width.value / 2.0;
    let beside = half_transom.max(half + inches(SIDE_IN).value);
    let deck = wall + inches(DECK_IN).value;
    let thin = inches(1.0).value;
    // Over the transom the sides of the cutout stand, where it is known.
    let side = if cutout.is_ok() { inside } else { x };
    let bodies = [
        ("well, forward wall", [wall, -beside, floor], [deck, beside, rim]),
        ("well, floor", [inside, -half, floor - thin], [wall, half, floor]),
        ("well, port side", [side, half, floor], [wall, beside, rim]),
        ("well, starboard side", [side, -half, floor], [wall, -beside, rim]),
    ];
    for (name, from, to) in bodies {
        around.known.push(block(name, from, to)?);
    }
    if let (Ok(cutout), true) = (&cutout, rim > z) {
        let half = cutout.value.value / 2.0;
        for (name, side) in [("cutout, port side", 1.0), ("cutout, starboard side", -1.0)] {
            around.known.push(block(name, [x, side * half, z], [inside, side * half_transom.max(half + thin), rim])?);
        }
    }
    Ok(())
}

fn metres(value: f64) -> Length {
    use crate::quantity::Dimensioned;
    Length::from_si(value)
}
