//! One engine on its face: what its entry says, and the usual figure where it says nothing.

use uom::si::angular_velocity::revolution_per_minute;
use uom::si::f64::{Angle, AngularVelocity, Length, Mass, Power, Ratio, Velocity};
use uom::si::power::horsepower;

use super::super::board::Board;
use crate::job::{Cycle, Role};
use crate::physics::propeller::{Drive, Pitch, Screw, USUAL_AREA_RATIO, USUAL_BLADES, pitches, rated_turning};
use crate::physics::strength::loads::Hang;
use crate::quantity::{Basis, Dimensioned, Measure, Reading, Text, degrees, inches, say};
use crate::rig::{Engine, Group};
use crate::working::Sheet;

/// What the job leaves open of an engine. Common practice, no source, for all of them.
const CENTRE_AFT_IN: f64 = 12.0;
const CENTRE_ABOVE_IN: f64 = 5.0;
const PLATE_TO_SHAFT_IN: f64 = 8.0;
/// Diameter of a propeller by its engine's power: inches at 1 hp, and the exponent of the horsepower.
const PROPELLER: (f64, f64) = (6.7, 0.16);
/// Rated speed of a gasoline and of an electric engine, rpm, and its turns for one of the propeller: on the side of more
/// torque.
const GASOLINE_RPM: f64 = 5_500.0;
const ELECTRIC_RPM: f64 = 2_500.0;
const GEAR_RATIO: f64 = 2.1;
const STEERING_DEG: f64 = 30.0;
const TILT_DEG: f64 = 70.0;
/// What a legend calls a figure that nobody gave.
pub(super) const ASSUMED: &str = Basis::Assumed.origin();

/// What the loads of an engine are reckoned from.
pub(super) struct Figures<'a> {
    pub engine: &'a Engine,
    /// With its share of what else hangs on the transom.
    pub mass: Mass,
    /// That share.
    pub beside: Mass,
    /// Its own mounting face aft of the transom's, level.
    pub setback: Length,
    /// How it hangs on its face, the middle of the bolts left out.
    pub hang: Hang,
    /// What turns its propeller.
    pub drive: Drive,
    pub steering: Angle,
    /// What usual figures were taken for.
    pub usual: Vec<&'static str>,
    /// Where each figure is from, by the symbol under which it goes in.
    origins: Vec<Origin>,
}

/// A symbol of the working for values of a kind, and where its figure is from.
type Origin = (&'static str, fn(&mut Sheet, &str, &str), &'static str);

impl<'a> Figures<'a> {
    /// Of an engine of the group; a main engine bears a `share` of what else hangs there.
    pub(super) fn of(group: &Group, engine: &'a Engine, board: &Board, share: Mass) -> Self {
        let spec = &engine.spec;
        let mut usual = Vec::new();
        let (centre_aft, centre_above) = (given(&spec.centre_aft), given(&spec.centre_above));
        if centre_aft.is_none() || centre_above.is_none() {
            usual.push("its centre of gravity");
        }
        let mut or = |given: Option<Length>, what, inch| {
            given.unwrap_or_else(|| {
                usual.push(what);
                inches(inch)
            })
        };
        let gearcase = or(given(&spec.plate_to_propeller_shaft), "its gearcase", PLATE_TO_SHAFT_IN);
        let power = engine.power.reading().map(|power| power.value).unwrap_or_default();
        let told = engine.propeller.reading().and_then(|propeller| given(&propeller.diameter));
        let greatest = spec.propeller_diameter.as_ref().map(|diameter| diameter.to.value);
        let (inch, exponent) = PROPELLER;
        let diameter = or(told.or(greatest), "its propeller", inch * power.get::<horsepower>().powf(exponent));
        let mut or = |given: Option<Angle>, what, degree| {
            given.unwrap_or_else(|| {
                usual.push(what);
                degrees(degree)
            })
        };
        let steering = or(given(&spec.steering), "its steering", STEERING_DEG);
        let tilt = or(given(&spec.full_tilt), "its tilt", TILT_DEG);
        let range = spec.full_throttle.as_ref();
        let rated_speed = range.map(|range| 0.5 * (range.from.value + range.to.value)).unwrap_or_else(|| {
            usual.push("its rated speed");
            AngularVelocity::new::<revolution_per_minute>(match spec.cycle {
                Some(Cycle::Electric) => ELECTRIC_RPM,
                _ => GASOLINE_RPM,
            })
        });
        let by_screw =
            engine.propeller.reading().and_then(|propeller| propeller.diameter.as_ref()).map(|told| told.basis);
        let by_class = spec.propeller_diameter.as_ref().map(|diameter| diameter.to.basis);
        let propeller_from = by_screw.or(by_class).map_or(ASSUMED, Basis::origin);
        let rated_from = range.map_or(ASSUMED, |range| range.from.basis.origin());
        let gear_ratio = given(&spec.gear_ratio).unwrap_or_else(|| {
            usual.push("its gears");
            Ratio::from_si(GEAR_RATIO)
        });
        let weight = engine.weight.reading().map(|weight| weight.value);
        let leg = engine.rest_to_plate.reading().map(|leg| leg.value);
        let drop = group.drop().reading().map(|drop| drop.value);
        let rows = engine.holes_up.reading().copied().unwrap_or_default();
        let beside = match engine.role {
            Role::Main => share,
            Role::Auxiliary => Mass::default(),
        };
        Figures {
            engine,
            mass: weight.unwrap_or_default() + beside,
            beside,
            setback: board.level(setback(group)),
            hang: Hang {
                height: Length::from_si(board.top),
                lean: board.lean(),
                middle: Length::default(),
                setback: setback(group),
                drop: drop.unwrap_or_default(),
                holes_up: rows,
                centre_aft: centre_aft.unwrap_or(inches(CENTRE_AFT_IN)),
                centre_above: centre_above.unwrap_or(inches(CENTRE_ABOVE_IN)),
                tilt,
                leg: leg.unwrap_or_default(),
                gearcase,
            },
            drive: Drive { power, rated_speed, gear_ratio, diameter },
            steering,
            usual,
            origins: vec![
                ("m", Sheet::origin::<Mass>, from(engine.weight.reading())),
                ("P", Sheet::origin::<Power>, from(engine.power.reading())),
                ("n", Sheet::origin::<AngularVelocity>, rated_from),
                ("i", Sheet::origin::<Ratio>, from(spec.gear_ratio.as_ref())),
                ("D", Sheet::origin::<Length>, propeller_from),
                ("p", Sheet::origin::<Length>, "measured"),
                ("δ", Sheet::origin::<Angle>, from(spec.steering.as_ref())),
                ("φ", Sheet::origin::<Angle>, from(spec.full_tilt.as_ref())),
                ("ca", Sheet::origin::<Length>, from(spec.centre_aft.as_ref())),
                ("cu", Sheet::origin::<Length>, from(spec.centre_above.as_ref())),
                ("S", Sheet::origin::<Length>, from(engine.rest_to_plate.reading())),
                ("gc", Sheet::origin::<Length>, from(spec.plate_to_propeller_shaft.as_ref())),
                ("s", Sheet::origin::<Length>, from(group.setback().reading())),
                ("dr", Sheet::origin::<Length>, from(group.drop().reading())),
                ("nr", Sheet::origin::<Ratio>, if engine.holes_up.reading().is_some() { "measured" } else { ASSUMED }),
            ],
        }
    }

    /// Says on a sheet where each figure is from.
    pub(super) fn say_origins(&self, sheet: &mut Sheet) {
        for (symbol, say, from) in &self.origins {
            say(sheet, symbol, from);
        }
    }

    /// Whether it drives her at full speed.
    pub(super) fn runs(&self) -> bool {
        self.engine.role == Role::Main
    }

    /// Its propeller, for this full speed.
    pub(super) fn screw(&self, speed: Velocity) -> Screw {
        let told = self.engine.propeller.reading().cloned().unwrap_or_default();
        Screw {
            blades: told.blades.unwrap_or(USUAL_BLADES),
            area_ratio: told.area_ratio.map_or(USUAL_AREA_RATIO, |area| area.value.si()),
            pitch: match told.pitch {
                Some(pitch) => Pitch::Told(pitch.value),
                None if self.runs() => Pitch::ForSpeed(speed),
                None => Pitch::Usual,
            },
        }
    }

    /// What is taken of its propeller, where not all of it is given.
    pub(super) fn propeller(&self, speed: Velocity) -> Option<Text> {
        let told = self.engine.propeller.reading().cloned().unwrap_or_default();
        if told.blades.is_some() && told.area_ratio.is_some() && told.pitch.is_some() && told.diameter.is_some() {
            return None;
        }
        let (screw, sheet) = (self.screw(speed), &mut Sheet::default());
        let turning = rated_turning(sheet, &self.drive);
        let ratio = pitches(sheet, &self.drive, &turning, screw.pitch).own.value();
        Some(say!(
            "The propeller of the {} is taken with {} blades, {} in diameter, {} in pitch, its blades {} of the disc: where not given, as usual for the engine and her speed.",
            self.engine.label.as_str(),
            u32::from(screw.blades),
            Measure::tape(self.drive.diameter),
            Measure::tape(self.drive.diameter * ratio),
            Measure::of(Ratio::from_si(screw.area_ratio))
        ))
    }

    /// Centre of gravity aft of the transom's face, level.
    pub(super) fn weight_aft(&self) -> Length {
        self.setback + self.hang.centre_aft
    }
}

/// How far the engines' faces stand off the transom's, square to it.
pub(super) fn setback(group: &Group) -> Length {
    let setback = group.setback();
    setback.reading().map_or(Length::default(), |setback| setback.value)
}

/// Where a reading is from, as a legend says it.
pub(super) fn from<Q>(reading: Option<&Reading<Q>>) -> &'static str {
    reading.map_or(ASSUMED, |reading| reading.basis.origin())
}

fn given<Q: Dimensioned>(reading: &Option<Reading<Q>>) -> Option<Q> {
    reading.as_ref().map(|reading| reading.value)
}
