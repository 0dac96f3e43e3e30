//! The load cases, each with its forces and moments at the mounting face, in boat axes.
//!
//! Boat axes: x forward, y to port, z up; the mounting face is the transom's outside (or the setback bracket's own face on
//! it). All places are relative to the middle of the bolt pattern there: an engine's weight lies at negative x, its
//! propeller at negative z. [`FaceLoad::leaning`] turns what comes out to the axes of a face that leans. Forces N, moments N·m, places m: `f64` from here on, for the bolt group and the panel take them so.

use uom::si::f64::{Angle, Force, Length, Mass, Ratio, Velocity};

use super::thrust::{
    ASTERN_OF_AHEAD, TRAILER_ACCELERATION, heavy_weight, static_thrust, thrust_at_speed, thrust_in_turn, turn_force,
};
use crate::physics::propeller::{Drive, PropellerError, Screw, pitches, rated_turning};
use crate::quantity::Dimensioned;
use crate::working::{Sheet, Term, cos};

/// One engine on the transom, as the loads see it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Engine {
    /// Engine with propeller, oil and rigging, and the setback device where it hangs on the same bolts.
    pub mass: Mass,
    /// What turns its propeller.
    pub drive: Drive,
    /// Its propeller.
    pub screw: Screw,
    /// Whether it drives her at full speed: a small one beside the main engines does not.
    pub runs: bool,
    /// Anti-ventilation plate to propeller shaft.
    pub plate_to_shaft: Length,
    /// Centre of gravity aft of the middle of the bolt pattern, level.
    pub weight_aft: Length,
    /// The same at full tilt.
    pub tilted_aft: Length,
    /// Centre of gravity above the middle of the bolt pattern (negative below).
    pub weight_up: Length,
    /// Propeller shaft below the middle of the bolt pattern.
    pub shaft_down: Length,
    /// Propeller aft of the middle of the bolt pattern, level.
    pub propeller_aft: Length,
    /// Steering angle at hard over.
    pub steering: Angle,
}

/// How the engine is driven, and how rough it gets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outfit {
    /// Her full speed.
    pub speed: Velocity,
    /// Acceleration in a seaway on top of gravity, in g.
    pub slamming: Ratio,
    /// Power of the thrust over power at the shaft, at speed.
    pub overall_efficiency: f64,
}

/// What happens.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Case {
    /// The engine hangs; boat at rest.
    Static,
    /// Full throttle ahead with the boat held fast.
    StaticThrust,
    /// Full throttle astern with the boat held fast.
    Astern,
    /// The same without the weight, which holds against it: a lighter engine is then never worse.
    AsternUnweighted,
    /// Full throttle ahead at full speed.
    FullSpeed,
    /// A wave's acceleration. Thrust is left out: she is in the air, or just out of it.
    Slamming,
    /// Hard over at full speed: she turns to starboard, for her stern is pushed to port.
    HardOverStarboard,
    /// The same to port.
    HardOverPort,
    /// [`Case::HardOverStarboard`] without the weight, which holds down the bolts that the turn lifts.
    HardOverStarboardUnweighted,
    /// The same to port.
    HardOverPortUnweighted,
    /// Tilted up on the trailer, rough road.
    Trailer,
}

impl Case {
    /// All of them, in the order of [`cases`].
    pub const ALL: [Case; 11] = [
        Case::Static,
        Case::StaticThrust,
        Case::Astern,
        Case::AsternUnweighted,
        Case::FullSpeed,
        Case::Slamming,
        Case::HardOverStarboard,
        Case::HardOverPort,
        Case::HardOverStarboardUnweighted,
        Case::HardOverPortUnweighted,
        Case::Trailer,
    ];

    /// Its name as a report shows it.
    pub fn name(self) -> &'static str {
        match self {
            Case::Static => "weight at rest",
            Case::StaticThrust => "full throttle ahead at rest",
            Case::Astern => "full throttle astern",
            Case::AsternUnweighted => "full throttle astern, weight not counted",
            Case::FullSpeed => "full speed ahead",
            Case::Slamming => "slamming in waves",
            Case::HardOverStarboard => "hard turn to starboard at full speed",
            Case::HardOverPort => "hard turn to port at full speed",
            Case::HardOverStarboardUnweighted => "hard turn to starboard at full speed, weight not counted",
            Case::HardOverPortUnweighted => "hard turn to port at full speed, weight not counted",
            Case::Trailer => "tilted up on the trailer",
        }
    }

    /// Whether what hangs there counts.
    pub fn counts_weight(self) -> bool {
        !matches!(self, Case::AsternUnweighted | Case::HardOverStarboardUnweighted | Case::HardOverPortUnweighted)
    }
}

/// Force on the mounting face and moment about the middle of its bolt pattern, in boat axes or the face's own.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct FaceLoad {
    /// `[x, y, z]`, N.
    pub force: [f64; 3],
    /// About x, y and z, right-handed, N·m.
    pub moment: [f64; 3],
}

impl FaceLoad {
    /// One force at one place: `M = r × F`.
    pub fn at(place: [f64; 3], force: [f64; 3]) -> Self {
        let ([x, y, z], [fx, fy, fz]) = (place, force);
        Self { force, moment: [y * fz - z * fy, z * fx - x * fz, x * fy - y * fx] }
    }

    /// The same force and moment along the axes of a face whose top leans aft by `lean` from vertical: square
    /// to it (forward), to port, up along it.
    pub fn leaning(self, lean: Angle) -> Self {
        let (sin, cos) = lean.si().sin_cos();
        let turn = |[x, y, z]: [f64; 3]| [x * cos + z * sin, y, z * cos - x * sin];
        Self { force: turn(self.force), moment: turn(self.moment) }
    }

    /// Both together.
    pub fn plus(self, other: Self) -> Self {
        Self {
            force: std::array::from_fn(|k| self.force[k] + other.force[k]),
            moment: std::array::from_fn(|k| self.moment[k] + other.moment[k]),
        }
    }
}

/// A force, and where it acts, in boat axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Acting {
    /// `[x, y, z]` from the middle of the bolts, m.
    pub place: [f64; 3],
    /// `[x, y, z]`, N.
    pub force: [f64; 3],
}

impl Acting {
    /// The same of an engine so far to port of where it was reckoned, m.
    #[must_use]
    pub fn moved(self, to_port: f64) -> Self {
        let [x, y, z] = self.place;
        Acting { place: [x, y + to_port, z], ..self }
    }
}

/// Why loads cannot be worked out.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum LoadError {
    /// A number must be above zero and is not.
    #[error("{what} must be a finite number greater than zero")]
    NotPositive {
        /// Which number, in words.
        what: &'static str,
    },
    /// A number is infinite or not a number.
    #[error("{what} is not a finite number")]
    NotFinite {
        /// Which number, in words.
        what: &'static str,
    },
    /// The series does not reach an engine's propeller.
    #[error("the propeller: {0}")]
    Propeller(#[from] PropellerError),
}

/// What acts in every case on one engine. The lines of the working go to `sheet`.
///
/// # Errors
/// What is no number, or outside the propeller's series.
pub fn cases(sheet: &mut Sheet, engine: &Engine, outfit: &Outfit) -> Result<Vec<(Case, Vec<Acting>)>, LoadError> {
    check(engine, outfit)?;
    let weight = heavy_weight(sheet, engine.mass, Ratio::from_si(0.0), "at rest");
    let turning = rated_turning(sheet, &engine.drive);
    let pitch = pitches(sheet, &engine.drive, &turning, engine.screw.pitch);
    let ahead = static_thrust(sheet, &engine.drive, &turning, &engine.screw.with(&pitch.own)?);
    let astern = sheet.set("Ta", "static thrust astern", Term::new("ka", Ratio::from_si(ASTERN_OF_AHEAD)) * &ahead);
    let (run, turn) = if engine.runs {
        let (power, efficiency) = (engine.drive.power, outfit.overall_efficiency);
        let run = thrust_at_speed(sheet, power, outfit.speed, efficiency, &ahead);
        let turned = thrust_in_turn(sheet, power, &turning, &pitch.usual, efficiency);
        let side = turn_force(sheet, &turned, engine.steering, engine.plate_to_shaft, outfit.speed);
        let along = turned * cos(Term::new("δ", engine.steering));
        let along = sheet.set("Tx", "thrust forward in a hard turn", along);
        ([run.value().si(), 0.0, 0.0], [along.value().si(), side.value().si(), 0.0])
    } else {
        sheet.remark("It does not drive her at full speed.");
        ([0.0; 3], [0.0; 3])
    };
    let slam = heavy_weight(sheet, engine.mass, outfit.slamming, "her slamming, worked out first of all");
    let road = heavy_weight(sheet, engine.mass, Ratio::from_si(TRAILER_ACCELERATION), "practice: a rough road");

    let centre = [-engine.weight_aft.si(), 0.0, engine.weight_up.si()];
    let tilted = [-engine.tilted_aft.si(), 0.0, engine.weight_up.si()];
    let propeller = [-engine.propeller_aft.si(), 0.0, -engine.shaft_down.si()];
    let hang = |f: &Term<Force>, place| Acting { place, force: [0.0, 0.0, -f.value().si()] };
    let drive = |force| Acting { place: propeller, force };
    let other_way = [turn[0], -turn[1], turn[2]];
    let ahead = [ahead.value().si(), 0.0, 0.0];
    let astern = [-astern.value().si(), 0.0, 0.0];
    Ok(Case::ALL
        .into_iter()
        .map(|case| {
            let acting = match case {
                Case::Static => vec![hang(&weight, centre)],
                Case::StaticThrust => vec![hang(&weight, centre), drive(ahead)],
                Case::Astern => vec![hang(&weight, centre), drive(astern)],
                Case::AsternUnweighted => vec![drive(astern)],
                Case::FullSpeed => vec![hang(&weight, centre), drive(run)],
                Case::Slamming => vec![hang(&slam, centre)],
                Case::HardOverStarboard => vec![hang(&weight, centre), drive(turn)],
                Case::HardOverPort => vec![hang(&weight, centre), drive(other_way)],
                Case::HardOverStarboardUnweighted => vec![drive(turn)],
                Case::HardOverPortUnweighted => vec![drive(other_way)],
                Case::Trailer => vec![hang(&road, tilted)],
            };
            (case, acting)
        })
        .collect())
}

fn check(engine: &Engine, outfit: &Outfit) -> Result<(), LoadError> {
    let positive = [
        ("the engine's weight", engine.mass.si()),
        ("the engine's power", engine.drive.power.si()),
        ("the engine's rated speed", engine.drive.rated_speed.si()),
        ("the gear ratio", engine.drive.gear_ratio.si()),
        ("the propeller's diameter", engine.drive.diameter.si()),
        ("the lower unit's size", engine.plate_to_shaft.si()),
        ("the speed", outfit.speed.si()),
        ("the overall efficiency", outfit.overall_efficiency),
    ];
    for (what, value) in positive {
        if !(value.is_finite() && value > 0.0) {
            return Err(LoadError::NotPositive { what });
        }
    }
    let finite = [
        ("the weight's place", engine.weight_aft.si()),
        ("the tilted weight's place", engine.tilted_aft.si()),
        ("the weight's height", engine.weight_up.si()),
        ("the shaft's depth", engine.shaft_down.si()),
        ("the propeller's place", engine.propeller_aft.si()),
        ("the steering angle", engine.steering.si()),
        ("the slamming acceleration", outfit.slamming.si()),
    ];
    match finite.into_iter().find(|(_, value)| !value.is_finite()) {
        Some((what, _)) => Err(LoadError::NotFinite { what }),
        None => Ok(()),
    }
}
