//! Between what and what each sort of reading can be: outside it, somebody slipped.
//!
//! Source of all of them: common practice, no source; wide of anything that floats with outboards. Those of questions at
//! the desk keep a solver's numbers within what it was made for.

use crate::reading::*;

pub(super) const BOAT_LENGTH: Bounds = between(foot(5.0), foot(80.0));
pub(super) const BEAM: Bounds = between(foot(2.0), foot(30.0));
pub(super) const WIDTH: Bounds = between(foot(1.0), foot(30.0));
pub(super) const DEPTH: Bounds = between(inch(6.0), foot(15.0));
pub(super) const DEADRISE: Bounds = between(deg(0.0), deg(60.0));
/// Ends, bends and valves of a fuel line; pieces of one sort.
pub(super) const FITTINGS: Bounds = count(0.0, 60.0);
pub(super) const PIECES: Bounds = count(1.0, 40.0);
/// Load equivalents of a device on the network: as many as its plate can give.
pub(super) const EQUIVALENTS: Bounds = count(0.0, 100.0);
/// Gauges of the American wire gauge: 4/0 to 40.
pub(super) const GAUGES: Bounds = count(-3.0, 40.0);
pub(super) const YEAR: Bounds = count(1900.0, 2100.0);
/// Persons that a plate may give.
pub(super) const PERSONS: Bounds = count(1.0, 200.0);
pub(super) const CREW: Bounds = count(1.0, 200.0);

pub(super) const TRANSOM_HEIGHT: Bounds = between(inch(6.0), inch(60.0));
pub(super) const TRANSOM_ANGLE: Bounds = between(deg(-10.0), deg(40.0));
pub(super) const THICKNESS: Bounds = between(inch(0.25), inch(8.0));
pub(super) const ON_TRANSOM: Bounds = between(inch(0.0), inch(60.0));
pub(super) const HOLE_DIAMETER: Bounds = between(inch(0.125), inch(4.0));
pub(super) const ACROSS: Bounds = between(inch(0.0), foot(15.0));

pub(super) const BOAT_POWER: Bounds = between(hp(1.0), hp(4000.0));
pub(super) const LOAD: Bounds = between(lb(50.0), lb(60_000.0));
pub(super) const ITEM_WEIGHT: Bounds = between(lb(0.0), lb(20_000.0));
pub(super) const ALONG: Bounds = between(foot(-10.0), foot(80.0));
pub(super) const HEIGHT: Bounds = between(foot(-10.0), foot(30.0));

pub(super) const ENGINE_POWER: Bounds = between(hp(0.2), hp(700.0));
pub(super) const ENGINE_WEIGHT: Bounds = between(lb(10.0), lb(1600.0));
pub(super) const SHAFT: Bounds = between(inch(10.0), inch(45.0));
pub(super) const SMALL_LENGTH: Bounds = between(inch(0.0), inch(80.0));
pub(super) const ON_BRACKET: Bounds = between(inch(-16.0), inch(16.0));
pub(super) const OFFSET: Bounds = between(inch(-60.0), inch(60.0));
pub(super) const BRACKET_FACE: Bounds = between(inch(4.0), inch(36.0));
pub(super) const ROTATION: Bounds = between(rpm(200.0), rpm(12_000.0));
pub(super) const GEAR: Bounds = between(plain(0.5), plain(10.0));
pub(super) const TRIM: Bounds = between(deg(-20.0), deg(40.0));
pub(super) const TILT: Bounds = between(deg(20.0), deg(110.0));
pub(super) const STEER: Bounds = between(deg(5.0), deg(180.0));
pub(super) const CURRENT: Bounds = between(ampere(0.0), ampere(2000.0));
pub(super) const FUEL_RATE: Bounds = between(gallon_per_hour(0.0), gallon_per_hour(100.0));
/// Rows of holes that an engine bracket may have.
pub(super) const HOLE_ROWS: Bounds = count(1.0, 12.0);
pub(super) const HOLES_UP: Bounds = count(0.0, 12.0);

pub(super) const PROPELLER: Bounds = between(inch(4.0), inch(36.0));
pub(super) const PITCH: Bounds = between(inch(2.0), inch(48.0));
/// Blades and their area: as far as the series of propellers goes that one is taken for.
pub(super) const BLADES: Bounds = count(2.0, 7.0);
pub(super) const BLADE_AREA: Bounds = between(plain(0.3), plain(1.05));

pub(super) const SETBACK: Bounds = between(inch(0.0), inch(72.0));
pub(super) const DROP: Bounds = between(inch(-24.0), inch(36.0));
/// Engines that a bracket may take.
pub(super) const ENGINES: Bounds = count(1.0, 8.0);
pub(super) const VOLUME: Bounds = between(litre(0.0), litre(5000.0));

pub(super) const WELL_LENGTH: Bounds = between(inch(4.0), inch(80.0));
pub(super) const RIM: Bounds = between(inch(-24.0), inch(48.0));
pub(super) const FORWARD: Bounds = between(foot(-12.0), foot(40.0));
pub(super) const OBSTACLE_UP: Bounds = between(foot(-12.0), foot(20.0));
pub(super) const WATERLINE: Bounds = between(inch(-12.0), inch(60.0));
pub(super) const DIAMETER: Bounds = between(inch(0.25), inch(8.0));
pub(super) const KEEL_HEIGHT: Bounds = between(inch(4.0), inch(60.0));
pub(super) const BOW_UP: Bounds = between(deg(-15.0), deg(15.0));
pub(super) const TOWING_TILT: Bounds = between(deg(0.0), deg(110.0));

pub(super) const STATION: Bounds = between(foot(-1.0), foot(80.0));
pub(super) const OUT: Bounds = between(inch(0.0), foot(15.0));
pub(super) const UP: Bounds = between(foot(-3.0), foot(20.0));
pub(super) const UNIT: Bounds = between(mm(0.01), metre(10.0));
pub(super) const FREEBOARD: Bounds = between(foot(-10.0), foot(20.0));
pub(super) const DENSITY: Bounds = between(kg_per_m3(900.0), kg_per_m3(1300.0));
pub(super) const BOAT_WEIGHT: Bounds = between(lb(1.0), lb(200_000.0));
pub(super) const TANK: Bounds = between(gallon(0.1), gallon(3000.0));
pub(super) const FILL: Bounds = between(percent(0.0), percent(100.0));
pub(super) const TANK_SIZE: Bounds = between(inch(1.0), foot(30.0));
pub(super) const PERSON: Bounds = between(lb(30.0), lb(500.0));

pub(super) const LAYER: Bounds = between(mm(0.1), inch(6.0));
pub(super) const UPRIGHT: Bounds = between(inch(2.0), inch(60.0));
pub(super) const BELOW: Bounds = between(inch(-12.0), inch(60.0));
pub(super) const FACE: Bounds = between(inch(2.0), foot(12.0));
pub(super) const PLATE: Bounds = between(inch(1.0), foot(30.0));
pub(super) const MEMBER: Bounds = between(inch(0.125), inch(12.0));
pub(super) const FILLET: Bounds = between(inch(0.0), inch(6.0));
pub(super) const CORNER: Bounds = between(inch(6.0), foot(8.0));
pub(super) const MOISTURE: Bounds = between(percent(0.0), percent(200.0));
pub(super) const SPEED: Bounds = between(mph(3.0), mph(120.0));
pub(super) const ACCELERATION: Bounds = between(gn(0.0), gn(12.0));
pub(super) const DISPLACEMENT: Bounds = between(lb(50.0), lb(60_000.0));
pub(super) const PULL: Bounds = between(lb(20.0), lb(1000.0));
pub(super) const ARM: Bounds = between(inch(6.0), foot(8.0));
pub(super) const MOVED: Bounds = between(mm(0.1), inch(3.0));
pub(super) const WASHER: Bounds = between(inch(0.25), inch(8.0));
pub(super) const WASHER_THICKNESS: Bounds = between(mm(0.2), inch(1.0));
pub(super) const TORQUE: Bounds = between(lbf_ft(0.1), lbf_ft(300.0));
/// Years of one set of engines, and hours: a workboat's, and to spare.
pub(super) const YEARS: Bounds = count(0.0, 60.0);
pub(super) const HOURS: Bounds = count(0.0, 50_000.0);

pub(super) const STUDY_LENGTH: Bounds = between(mm(1.0), metre(100.0));
pub(super) const STUDY_PLACE: Bounds = between(metre(-100.0), metre(100.0));
pub(super) const STUDY_THICKNESS: Bounds = between(mm(0.01), metre(1.0));
pub(super) const MODULUS: Bounds = between(mpa(0.01), gpa(2000.0));
pub(super) const POISSON: Bounds = between(plain(0.0), plain(0.499));
pub(super) const STRESS: Bounds = between(mpa(0.001), mpa(10_000.0));
pub(super) const ACCURACY: Bounds = between(percent(0.01), percent(50.0));
pub(super) const STUDY_PRESSURE: Bounds = between(gpa(-10_000.0), gpa(10_000.0));
pub(super) const STUDY_FORCE: Bounds = between(newton(-1e13), newton(1e13));
pub(super) const STUDY_MOMENT: Bounds = between(newton_metre(-1e13), newton_metre(1e13));
pub(super) const STIFFNESS: Bounds = between(newton_metre(0.0), newton_metre(1e13));
pub(super) const COUPLING: Bounds = between(newton_metre(-1e13), newton_metre(1e13));
pub(super) const SHEAR_STIFFNESS: Bounds = between(newton(0.0), newton(1e13));
pub(super) const SWING_PLACE: Bounds = between(metre(-1e6), metre(1e6));
pub(super) const SWING_RADIUS: Bounds = between(metre(-1e6), metre(1e6));
pub(super) const SWING_ANGLE: Bounds = between(deg(-1e6), deg(1e6));
pub(super) const STUDY_MARGIN: Bounds = between(mm(0.0), foot(10.0));
pub(super) const STUDY_GAP: Bounds = between(mm(0.001), inch(1.0));
