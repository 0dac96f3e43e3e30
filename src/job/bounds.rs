//! Between what and what each sort of reading can be: outside it, somebody slipped.
//!
//! Source of all of them: common practice, no source; wide of anything that floats with outboards. Those of questions at
//! the desk keep a solver's numbers within what it was made for.

use crate::reading::*;

pub(crate) const BOAT_LENGTH: Bounds = between(foot(5.0), foot(80.0));
pub(crate) const BEAM: Bounds = between(foot(2.0), foot(30.0));
pub(crate) const WIDTH: Bounds = between(foot(1.0), foot(30.0));
pub(crate) const DEPTH: Bounds = between(inch(6.0), foot(15.0));
pub(crate) const DEADRISE: Bounds = between(deg(0.0), deg(60.0));
/// Ends, bends and valves of a fuel line; pieces of one sort.
pub(crate) const FITTINGS: Bounds = count(0.0, 60.0);
pub(crate) const PIECES: Bounds = count(1.0, 40.0);
/// Load equivalents of a device on the network: as many as its plate can give.
pub(crate) const EQUIVALENTS: Bounds = count(0.0, 100.0);
/// Gauges of the American wire gauge: 4/0 to 40.
pub(crate) const GAUGES: Bounds = count(-3.0, 40.0);
pub(crate) const YEAR: Bounds = count(1900.0, 2100.0);
/// Persons that a plate may give.
pub(crate) const PERSONS: Bounds = count(1.0, 200.0);
pub(crate) const CREW: Bounds = count(1.0, 200.0);

pub(crate) const TRANSOM_HEIGHT: Bounds = between(inch(6.0), inch(60.0));
pub(crate) const TRANSOM_ANGLE: Bounds = between(deg(-10.0), deg(40.0));
pub(crate) const THICKNESS: Bounds = between(inch(0.25), inch(8.0));
pub(crate) const ON_TRANSOM: Bounds = between(inch(0.0), inch(60.0));
pub(crate) const HOLE_DIAMETER: Bounds = between(inch(0.125), inch(4.0));
pub(crate) const ACROSS: Bounds = between(inch(0.0), foot(15.0));

pub(crate) const BOAT_POWER: Bounds = between(hp(1.0), hp(4000.0));
pub(crate) const LOAD: Bounds = between(lb(50.0), lb(60_000.0));
pub(crate) const ITEM_WEIGHT: Bounds = between(lb(0.0), lb(20_000.0));
pub(crate) const ALONG: Bounds = between(foot(-10.0), foot(80.0));
pub(crate) const HEIGHT: Bounds = between(foot(-10.0), foot(30.0));

pub(crate) const ENGINE_POWER: Bounds = between(hp(0.2), hp(700.0));
pub(crate) const ENGINE_WEIGHT: Bounds = between(lb(10.0), lb(1600.0));
pub(crate) const SHAFT: Bounds = between(inch(10.0), inch(45.0));
pub(crate) const SMALL_LENGTH: Bounds = between(inch(0.0), inch(80.0));
pub(crate) const ON_BRACKET: Bounds = between(inch(-16.0), inch(16.0));
pub(crate) const OFFSET: Bounds = between(inch(-60.0), inch(60.0));
pub(crate) const BRACKET_FACE: Bounds = between(inch(4.0), inch(36.0));
pub(crate) const ROTATION: Bounds = between(rpm(200.0), rpm(12_000.0));
pub(crate) const GEAR: Bounds = between(plain(0.5), plain(10.0));
pub(crate) const TRIM: Bounds = between(deg(-20.0), deg(40.0));
pub(crate) const TILT: Bounds = between(deg(20.0), deg(110.0));
pub(crate) const STEER: Bounds = between(deg(5.0), deg(180.0));
pub(crate) const CURRENT: Bounds = between(ampere(0.0), ampere(2000.0));
pub(crate) const FUEL_RATE: Bounds = between(gallon_per_hour(0.0), gallon_per_hour(100.0));
/// Rows of holes that an engine bracket may have.
pub(crate) const HOLE_ROWS: Bounds = count(1.0, 12.0);
pub(crate) const HOLES_UP: Bounds = count(0.0, 12.0);

pub(crate) const PROPELLER: Bounds = between(inch(4.0), inch(36.0));
pub(crate) const PITCH: Bounds = between(inch(2.0), inch(48.0));
/// Blades and their area: as far as the series of propellers goes that one is taken for.
pub(crate) const BLADES: Bounds = count(2.0, 7.0);
pub(crate) const BLADE_AREA: Bounds = between(plain(0.3), plain(1.05));

pub(crate) const SETBACK: Bounds = between(inch(0.0), inch(72.0));
pub(crate) const DROP: Bounds = between(inch(-24.0), inch(36.0));
/// How far a lifting bracket goes up, and its arms.
pub(crate) const TRAVEL: Bounds = between(inch(0.0), inch(36.0));
pub(crate) const LIFT_ARM: Bounds = between(inch(1.0), inch(36.0));
pub(crate) const LIFT_HANG: Bounds = between(inch(-36.0), inch(36.0));
/// Engines that a bracket may take.
pub(crate) const ENGINES: Bounds = count(1.0, 8.0);
pub(crate) const VOLUME: Bounds = between(litre(0.0), litre(5000.0));

pub(crate) const WELL_LENGTH: Bounds = between(inch(4.0), inch(80.0));
pub(crate) const RIM: Bounds = between(inch(-24.0), inch(48.0));
pub(crate) const FORWARD: Bounds = between(foot(-12.0), foot(40.0));
pub(crate) const OBSTACLE_UP: Bounds = between(foot(-12.0), foot(20.0));
pub(crate) const WATERLINE: Bounds = between(inch(-12.0), inch(60.0));
pub(crate) const DIAMETER: Bounds = between(inch(0.25), inch(8.0));
pub(crate) const KEEL_HEIGHT: Bounds = between(inch(4.0), inch(60.0));
pub(crate) const BOW_UP: Bounds = between(deg(-15.0), deg(15.0));
pub(crate) const TOWING_TILT: Bounds = between(deg(0.0), deg(110.0));

pub(crate) const STATION: Bounds = between(foot(-1.0), foot(80.0));
pub(crate) const OUT: Bounds = between(inch(0.0), foot(15.0));
pub(crate) const UP: Bounds = between(foot(-3.0), foot(20.0));
pub(crate) const UNIT: Bounds = between(mm(0.01), metre(10.0));
pub(crate) const FREEBOARD: Bounds = between(foot(-10.0), foot(20.0));
pub(crate) const DENSITY: Bounds = between(kg_per_m3(900.0), kg_per_m3(1300.0));
pub(crate) const BOAT_WEIGHT: Bounds = between(lb(1.0), lb(200_000.0));
pub(crate) const TANK: Bounds = between(gallon(0.1), gallon(3000.0));
pub(crate) const FILL: Bounds = between(percent(0.0), percent(100.0));
pub(crate) const TANK_SIZE: Bounds = between(inch(1.0), foot(30.0));
pub(crate) const PERSON: Bounds = between(lb(30.0), lb(500.0));

pub(crate) const LAYER: Bounds = between(mm(0.1), inch(6.0));
pub(crate) const UPRIGHT: Bounds = between(inch(2.0), inch(60.0));
pub(crate) const BELOW: Bounds = between(inch(-12.0), inch(60.0));
pub(crate) const FACE: Bounds = between(inch(2.0), foot(12.0));
pub(crate) const PLATE: Bounds = between(inch(1.0), foot(30.0));
pub(crate) const MEMBER: Bounds = between(inch(0.125), inch(12.0));
pub(crate) const FILLET: Bounds = between(inch(0.0), inch(6.0));
pub(crate) const CORNER: Bounds = between(inch(6.0), foot(8.0));
pub(crate) const MOISTURE: Bounds = between(percent(0.0), percent(200.0));
pub(crate) const SPEED: Bounds = between(mph(3.0), mph(120.0));
pub(crate) const ACCELERATION: Bounds = between(gn(0.0), gn(12.0));
/// Laden: no boat with an outboard and somebody in it weighs less.
pub(crate) const DISPLACEMENT: Bounds = between(lb(100.0), lb(60_000.0));
pub(crate) const PULL: Bounds = between(lb(20.0), lb(1000.0));
pub(crate) const ARM: Bounds = between(inch(6.0), foot(8.0));
pub(crate) const MOVED: Bounds = between(mm(0.1), inch(3.0));
pub(crate) const WASHER: Bounds = between(inch(0.25), inch(8.0));
pub(crate) const WASHER_THICKNESS: Bounds = between(mm(0.2), inch(1.0));
pub(crate) const TORQUE: Bounds = between(lbf_ft(0.1), lbf_ft(300.0));
/// Years of one set of engines, and hours: a workboat's, and to spare.
pub(crate) const YEARS: Bounds = count(0.0, 60.0);
pub(crate) const HOURS: Bounds = count(0.0, 50_000.0);

pub(crate) const STUDY_LENGTH: Bounds = between(mm(1.0), metre(100.0));
pub(crate) const STUDY_PLACE: Bounds = between(metre(-100.0), metre(100.0));
pub(crate) const STUDY_THICKNESS: Bounds = between(mm(0.01), metre(1.0));
pub(crate) const MODULUS: Bounds = between(mpa(0.01), gpa(2000.0));
pub(crate) const POISSON: Bounds = between(plain(0.0), plain(0.499));
pub(crate) const STRESS: Bounds = between(mpa(0.001), mpa(10_000.0));
pub(crate) const ACCURACY: Bounds = between(percent(0.01), percent(50.0));
pub(crate) const STUDY_PRESSURE: Bounds = between(gpa(-10_000.0), gpa(10_000.0));
pub(crate) const STUDY_FORCE: Bounds = between(newton(-1e13), newton(1e13));
pub(crate) const STUDY_MOMENT: Bounds = between(newton_metre(-1e13), newton_metre(1e13));
pub(crate) const STIFFNESS: Bounds = between(newton_metre(0.0), newton_metre(1e13));
pub(crate) const COUPLING: Bounds = between(newton_metre(-1e13), newton_metre(1e13));
pub(crate) const SHEAR_STIFFNESS: Bounds = between(newton(0.0), newton(1e13));
pub(crate) const SWING_PLACE: Bounds = between(metre(-1e6), metre(1e6));
pub(crate) const SWING_RADIUS: Bounds = between(metre(-1e6), metre(1e6));
pub(crate) const SWING_ANGLE: Bounds = between(deg(-1e6), deg(1e6));
pub(crate) const STUDY_MARGIN: Bounds = between(mm(0.0), foot(10.0));
pub(crate) const STUDY_GAP: Bounds = between(mm(0.001), inch(1.0));

pub(crate) const ENGINE_TRIM: Bounds = between(deg(-15.0), deg(30.0));
pub(crate) const TAB_SPAN: Bounds = between(inch(3.0), foot(10.0));
pub(crate) const TAB_CHORD: Bounds = between(inch(2.0), inch(36.0));
pub(crate) const TAB_DOWN: Bounds = between(deg(0.0), deg(30.0));
pub(crate) const TABS: Bounds = count(1.0, 4.0);
pub(crate) const FRONT: Bounds = between(square_foot(1.0), square_foot(600.0));
pub(crate) const COMPRESSION: Bounds = between(percent(30.0), percent(110.0));

pub(crate) const FUEL_ABOARD: Bounds = between(gallon(0.1), gallon(5000.0));
pub(crate) const WIND: Bounds = between(mph(0.0), mph(80.0));
pub(crate) const SECONDS: Bounds = between(second(0.5), second(300.0));
pub(crate) const TURNS: Bounds = count(0.5, 30.0);
pub(crate) const TRIAL_ROTATION: Bounds = between(rpm(200.0), rpm(12_000.0));
pub(crate) const TRIAL_SPEED: Bounds = between(mph(0.5), mph(120.0));
pub(crate) const FUEL_FLOW: Bounds = between(gallon_per_hour(0.0), gallon_per_hour(800.0));
pub(crate) const ECONOMY: Bounds = between(mile_per_gallon(0.05), mile_per_gallon(200.0));
pub(crate) const RANGE: Bounds = between(mile(1.0), mile(5000.0));

pub(crate) const MONEY: Bounds = count(-10_000_000.0, 10_000_000.0);
pub(crate) const SEASONS: Bounds = count(1.0, 50.0);
pub(crate) const LABOUR: Bounds = between(second(0.0), second(3_600_000.0));
/// Hours of a season: the whole year at most.
pub(crate) const USED: Bounds = between(second(0.0), second(31_622_400.0));

pub(crate) const STUDY_WEIGHT: Bounds = between(lb(1.0), lb(2_000_000.0));
pub(crate) const STUDY_DEADRISE: Bounds = between(deg(0.0), deg(60.0));
pub(crate) const STUDY_ANGLE: Bounds = between(deg(-30.0), deg(30.0));
pub(crate) const STUDY_SPEED: Bounds = between(mph(0.1), mph(200.0));
pub(crate) const STUDY_SPEED_OR_REST: Bounds = between(mph(0.0), mph(200.0));
pub(crate) const STUDY_ROTATION: Bounds = between(rpm(1.0), rpm(20_000.0));
pub(crate) const ADVANCE: Bounds = between(plain(0.0), plain(2.0));
pub(crate) const REYNOLDS: Bounds = count(100_000.0, 2_000_000_000.0);
