//! What a job must not say: values that no boat has, engines in impossible places, things that
//! contradict each other. Every finding is noted, none stops the search.

mod float;
mod papers;
mod strength;
mod swing;

use uom::si::f64::{Angle, Length};

use super::engines::{EngineGroup, Hung};
use super::specs::{BracketSpec, EngineSpec, Span};
use super::{Across, Boat, Item, Job, Plate, SplashWell, TiltTube, Transom};
use crate::quantity::{Dimensioned, Measure, Reading, Style, Units, parse};
use crate::written::{Fault, Page};

/// The range in which a value of this sort can be: outside it, somebody slipped.
/// Source of all of them: common practice, no source; wide of anything that floats with outboards.
#[derive(Clone, Copy)]
pub struct Bounds {
    least: &'static str,
    most: &'static str,
}

const fn bounds(least: &'static str, most: &'static str) -> Bounds {
    Bounds { least, most }
}

const BOAT_LENGTH: Bounds = bounds("5 ft", "80 ft");
const BEAM: Bounds = bounds("2 ft", "30 ft");
const WIDTH: Bounds = bounds("1 ft", "30 ft");
const DEADRISE: Bounds = bounds("0 deg", "60 deg");
const TRANSOM_HEIGHT: Bounds = bounds("6 in", "60 in");
const TRANSOM_ANGLE: Bounds = bounds("-10 deg", "40 deg");
const THICKNESS: Bounds = bounds("1/4 in", "8 in");
const ON_TRANSOM: Bounds = bounds("0 in", "60 in");
const HOLE_DIAMETER: Bounds = bounds("1/8 in", "4 in");
const SETBACK: Bounds = bounds("0 in", "72 in");
const DROP: Bounds = bounds("-24 in", "36 in");
const ACROSS: Bounds = bounds("0 in", "15 ft");
const ENGINE_POWER: Bounds = bounds("0.2 hp", "700 hp");
const BOAT_POWER: Bounds = bounds("1 hp", "4,000 hp");
const ENGINE_WEIGHT: Bounds = bounds("10 lb", "1,600 lb");
const LOAD: Bounds = bounds("50 lb", "60,000 lb");
const ITEM_WEIGHT: Bounds = bounds("0 lb", "20,000 lb");
const ALONG: Bounds = bounds("-10 ft", "80 ft");
const HEIGHT: Bounds = bounds("-10 ft", "30 ft");
const SHAFT: Bounds = bounds("10 in", "45 in");
const SMALL_LENGTH: Bounds = bounds("0 in", "80 in");
const ON_BRACKET: Bounds = bounds("-16 in", "16 in");
const OFFSET: Bounds = bounds("-60 in", "60 in");
const ROTATION: Bounds = bounds("200 rpm", "12,000 rpm");
const GEAR: Bounds = bounds("0.5", "10");
const TRIM: Bounds = bounds("-20 deg", "40 deg");
const TILT: Bounds = bounds("20 deg", "110 deg");
const STEER: Bounds = bounds("5 deg", "180 deg");
const CURRENT: Bounds = bounds("0 A", "2,000 A");
const FUEL_RATE: Bounds = bounds("0 gal/h", "100 gal/h");
const VOLUME: Bounds = bounds("0 L", "5,000 L");
/// Years in which a boat may have been built.
const YEARS: std::ops::RangeInclusive<u16> = 1900..=2100;
/// Persons that a plate may give.
const PERSONS: std::ops::RangeInclusive<u16> = 1..=200;
/// Rows of holes that an engine bracket may have.
const HOLE_ROWS: std::ops::RangeInclusive<u8> = 1..=12;
/// Two engines closer than this are written at one place. Common practice, no source: the smallest
/// outboards are about 10 in wide.
const ONE_PLACE: &str = "8 in";
/// Share of the transom's half width that a centre of an engine may reach, and a little for a
/// bracket that overhangs.
const OVERHANG: &str = "2 in";

fn si<Q: Dimensioned>(text: &str) -> f64 {
    parse(text, Q::KIND).map_or(f64::NAN, |parsed| parsed.si)
}

/// Collects faults against a page.
pub struct Checker<'a> {
    page: &'a Page,
    /// The faults so far.
    pub faults: Vec<Fault>,
}

impl<'a> Checker<'a> {
    /// A checker for the page.
    pub fn new(page: &'a Page) -> Self {
        Checker {
            page,
            faults: Vec::new(),
        }
    }

    /// Notes a fault at the path.
    pub fn fault(&mut self, path: &str, message: impl Into<String>, help: impl Into<String>) {
        self.faults.push(self.page.fault(path, message, help));
    }

    /// The reading, where there is one, must lie within the bounds.
    pub fn within<Q: Dimensioned>(
        &mut self,
        path: &str,
        reading: Option<&Reading<Q>>,
        bounds: Bounds,
    ) {
        let Some(reading) = reading else { return };
        let value = reading.value.si();
        if !(si::<Q>(bounds.least)..=si::<Q>(bounds.most)).contains(&value) {
            let style = Style::Tape;
            let shown = Measure::styled(reading.value, style).show(Units::Both);
            let name = path.rsplit('.').next().unwrap_or(path).replace('_', " ");
            self.fault(
                path,
                format!("{shown} cannot be right for `{name}`"),
                format!("between {} and {} is expected", bounds.least, bounds.most),
            );
        }
    }

    /// The reading, where there is one and nothing is wrong with it so far: what cross-checks use, so
    /// that one slip is told once.
    fn sound<'r, Q>(&self, path: &str, reading: &'r Option<Reading<Q>>) -> Option<&'r Reading<Q>> {
        let faulty = self.faults.iter().any(|fault| fault.path == path);
        reading.as_ref().filter(|_| !faulty)
    }

    fn span<Q: Dimensioned>(&mut self, path: &str, span: Option<&Span<Q>>, bounds: Bounds) {
        let Some(span) = span else { return };
        self.within(&format!("{path}.from"), Some(&span.from), bounds);
        self.within(&format!("{path}.to"), Some(&span.to), bounds);
        if span.from.value.si() > span.to.value.si() {
            self.fault(
                path,
                "the range runs backwards",
                "the lesser value is `from`, the greater `to`",
            );
        }
    }

    fn count<N: PartialOrd + std::fmt::Display>(
        &mut self,
        path: &str,
        count: Option<N>,
        range: std::ops::RangeInclusive<N>,
    ) {
        if let Some(count) = count
            && !range.contains(&count)
        {
            let name = path.rsplit('.').next().unwrap_or(path).replace('_', " ");
            self.fault(
                path,
                format!("{count} cannot be right for `{name}`"),
                format!("between {} and {} is expected", range.start(), range.end()),
            );
        }
    }
}

/// Everything about the job that cannot be.
pub(super) fn job(job: &Job, page: &Page) -> Vec<Fault> {
    let mut checker = Checker::new(page);
    boat(&mut checker, &job.boat);
    plate(&mut checker, job.plate.as_ref());
    transom(&mut checker, &job.transom, &job.boat);
    for (side, groups) in [
        ("engines_off", &job.engines_off),
        ("engines_on", &job.engines_on),
    ] {
        for (i, group) in groups.iter().enumerate() {
            engine_group(&mut checker, &format!("{side}[{i}]"), group);
        }
        places(&mut checker, side, groups, &job.boat);
    }
    for (side, items) in [("comes_off", &job.comes_off), ("goes_on", &job.goes_on)] {
        for (i, entry) in items.iter().enumerate() {
            item(&mut checker, &format!("{side}[{i}]"), entry);
        }
    }
    if let Some(planned) = &job.planned {
        papers::planned(&mut checker, planned);
    }
    papers::photographs(&mut checker, &job.photographs);
    float::float(&mut checker, job);
    swing::surroundings(&mut checker, job);
    strength::strength(&mut checker, job);
    checker.faults
}

fn boat(checker: &mut Checker, boat: &Boat) {
    checker.within("boat.length", boat.length.as_ref(), BOAT_LENGTH);
    checker.within("boat.beam", boat.beam.as_ref(), BEAM);
    checker.within("boat.transom_width", boat.transom_width.as_ref(), WIDTH);
    checker.within(
        "boat.aft_quarter_beam",
        boat.aft_quarter_beam.as_ref(),
        WIDTH,
    );
    checker.within("boat.chine_beam", boat.chine_beam.as_ref(), WIDTH);
    checker.within("boat.deadrise", boat.deadrise.as_ref(), DEADRISE);
    checker.within("boat.transom_rating", boat.transom_rating.as_ref(), LOAD);
    checker.within("boat.stability_test", boat.stability_test.as_ref(), LOAD);
    checker.within("boat.power_rating", boat.power_rating.as_ref(), BOAT_POWER);
    checker.count("boat.year", boat.year, YEARS);
    for (path, part) in [
        ("boat.transom_width", &boat.transom_width),
        ("boat.aft_quarter_beam", &boat.aft_quarter_beam),
        ("boat.chine_beam", &boat.chine_beam),
    ] {
        if let (Some(beam), Some(part)) = (
            checker.sound("boat.beam", &boat.beam),
            checker.sound(path, part),
        ) && part.value > beam.value
        {
            checker.fault(
                path,
                "wider than the boat's greatest beam",
                "check this and `beam`",
            );
        }
    }
    if let (Some(length), Some(beam)) = (
        checker.sound("boat.length", &boat.length),
        checker.sound("boat.beam", &boat.beam),
    ) && beam.value > length.value
    {
        checker.fault(
            "boat.beam",
            "the boat is wider than long",
            "check `beam` and `length`",
        );
    }
}

fn plate(checker: &mut Checker, plate: Option<&Plate>) {
    match plate {
        Some(Plate::Capacity {
            persons,
            persons_weight,
            total_weight,
            power,
        }) => {
            checker.count("plate.persons", *persons, PERSONS);
            checker.within("plate.persons_weight", persons_weight.as_ref(), LOAD);
            checker.within("plate.total_weight", total_weight.as_ref(), LOAD);
            checker.within("plate.power", power.as_ref(), BOAT_POWER);
            if let (Some(persons), Some(total)) = (persons_weight, total_weight)
                && persons.value > total.value
            {
                checker.fault(
                    "plate.persons_weight",
                    "the persons weigh more than persons, motor and gear together",
                    "check both against the plate",
                );
            }
        }
        Some(Plate::Builders {
            persons,
            load,
            power,
        }) => {
            checker.count("plate.persons", *persons, PERSONS);
            checker.within("plate.load", load.as_ref(), LOAD);
            checker.within("plate.power", power.as_ref(), BOAT_POWER);
        }
        Some(Plate::None | Plate::Illegible) | None => {}
    }
}

fn transom(checker: &mut Checker, transom: &Transom, boat: &Boat) {
    checker.within("transom.height", transom.height.as_ref(), TRANSOM_HEIGHT);
    checker.within("transom.angle", transom.angle.as_ref(), TRANSOM_ANGLE);
    checker.within("transom.thickness", transom.thickness.as_ref(), THICKNESS);
    checker.within("transom.cutout_width", transom.cutout_width.as_ref(), WIDTH);
    if let Some(SplashWell::Floor(floor)) = &transom.splash_well {
        checker.within("transom.splash_well", Some(floor), ON_TRANSOM);
    }
    checker.within(
        "transom.upper_holes",
        transom.upper_holes.as_ref(),
        ON_TRANSOM,
    );
    for (i, height) in transom.heights.iter().enumerate() {
        let path = format!("transom.heights[{i}]");
        across(checker, &format!("{path}.at"), &height.at, boat);
        checker.within(
            &format!("{path}.height"),
            Some(&height.height),
            TRANSOM_HEIGHT,
        );
    }
    for (i, hole) in transom.holes.iter().enumerate() {
        let path = format!("transom.holes[{i}]");
        across(checker, &format!("{path}.at"), &hole.at, boat);
        checker.within(&format!("{path}.below"), Some(&hole.below), ON_TRANSOM);
        checker.within(
            &format!("{path}.diameter"),
            hole.diameter.as_ref(),
            HOLE_DIAMETER,
        );
    }
    if let (Some(cutout), Some(width)) = (
        checker.sound("transom.cutout_width", &transom.cutout_width),
        checker.sound("boat.transom_width", &boat.transom_width),
    ) && cutout.value > width.value
    {
        checker.fault(
            "transom.cutout_width",
            "wider than the transom",
            "check both widths",
        );
    }
}

/// A place must lie on the transom, as far as its width is known.
fn across(checker: &mut Checker, path: &str, at: &Across, boat: &Boat) {
    checker.within(path, at.reading(), ACROSS);
    let width = checker.sound("boat.transom_width", &boat.transom_width);
    let Some(width) = width.or(checker.sound("boat.beam", &boat.beam)) else {
        return;
    };
    let reach = width.value / 2.0 + Length::from_si(si::<Length>(OVERHANG));
    if at.y().abs() > reach && at.y().si().abs() <= si::<Length>(ACROSS.most) {
        checker.fault(
            path,
            format!(
                "{} off the centreline is outside the transom",
                Measure::tape(at.y().abs()).show(Units::Both)
            ),
            format!(
                "the transom is {} wide: half of it each way",
                Measure::tape(width.value).show(Units::Both)
            ),
        );
    }
}

fn engine_group(checker: &mut Checker, path: &str, group: &EngineGroup) {
    one_of(
        checker,
        path,
        group.class.is_some(),
        group.described.is_some(),
        "an engine",
    );
    if let Some(spec) = &group.described {
        check_engine(checker, &format!("{path}.described"), spec);
    }
    checker.within(&format!("{path}.shaft"), group.shaft.as_ref(), SHAFT);
    checker.within(
        &format!("{path}.weighed"),
        group.weighed.as_ref(),
        ENGINE_WEIGHT,
    );
    checker.within(&format!("{path}.tilt_stop"), group.tilt_stop.as_ref(), TILT);
    if let Some(sheet) = &group.sheet {
        swing::sheet(checker, &format!("{path}.sheet"), sheet);
    }
    checker.within(&format!("{path}.setback"), group.setback.as_ref(), SETBACK);
    checker.within(&format!("{path}.drop"), group.drop.as_ref(), DROP);
    checker.count(
        &format!("{path}.holes_up"),
        group.holes_up,
        0..=*HOLE_ROWS.end(),
    );
    match &group.bracket {
        Some(hung) => bracket(checker, &format!("{path}.bracket"), hung),
        None => {
            for (field, given) in [
                ("setback", group.setback.is_some_and_positive()),
                ("drop", group.drop.is_some()),
            ] {
                if given {
                    checker.fault(
                        &format!("{path}.{field}"),
                        format!("a {field} is given, but no bracket that makes it"),
                        "name it: bracket: (class: \"setback plate 6 in\"), or leave the field out",
                    );
                }
            }
        }
    }
    if !group.propellers.is_empty() && group.propellers.len() != group.places().len() {
        checker.fault(
            &format!("{path}.propellers"),
            format!(
                "as many propellers as engines expected: {} for {}",
                group.propellers.len(),
                group.places().len()
            ),
            "one hand for each place in `at`, in the same order",
        );
    }
}

trait Positive {
    fn is_some_and_positive(&self) -> bool;
}

impl Positive for Option<Reading<Length>> {
    fn is_some_and_positive(&self) -> bool {
        self.as_ref()
            .is_some_and(|reading| reading.value.si() > 0.0)
    }
}

fn one_of(checker: &mut Checker, path: &str, class: bool, described: bool, what: &str) {
    if class == described {
        let message = if class {
            format!("{what} is both named and described")
        } else {
            format!("{what} is neither named nor described")
        };
        checker.fault(
            path,
            message,
            "give `class: \"…\"` (see `sternknee catalog`) or `described: (…)`, one of the two",
        );
    }
}

fn bracket(checker: &mut Checker, path: &str, hung: &Hung) {
    one_of(
        checker,
        path,
        hung.class.is_some(),
        hung.described.is_some(),
        "a bracket",
    );
    if let Some(spec) = &hung.described {
        check_bracket(checker, &format!("{path}.described"), spec);
    }
}

/// No two engines of a list at one place, and none outside the transom.
fn places(checker: &mut Checker, side: &str, groups: &[EngineGroup], boat: &Boat) {
    let one_place = Length::from_si(si::<Length>(ONE_PLACE));
    let mut taken: Vec<Length> = Vec::new();
    for (i, group) in groups.iter().enumerate() {
        for (j, at) in group.places().iter().enumerate() {
            let path = format!("{side}[{i}].at[{j}]");
            across(checker, &path, at, boat);
            if taken.iter().any(|y| (*y - at.y()).abs() < one_place) {
                checker.fault(
                    &path,
                    "another engine stands at this place",
                    format!("centres of two engines are {ONE_PLACE} apart at the very least"),
                );
            }
            taken.push(at.y());
        }
    }
}

fn item(checker: &mut Checker, path: &str, item: &Item) {
    if item.what.trim().is_empty() {
        checker.fault(
            path,
            "an item without a name",
            "say what it is: what: \"oil tank\"",
        );
    }
    checker.within(&format!("{path}.weight"), item.weight.as_ref(), ITEM_WEIGHT);
    checker.within(&format!("{path}.forward"), item.forward.as_ref(), ALONG);
    checker.within(&format!("{path}.above"), item.above.as_ref(), HEIGHT);
    let across = item.across.as_ref().and_then(Across::reading);
    checker.within(&format!("{path}.across"), across, ACROSS);
}

/// Everything about an engine's figures that cannot be; for catalogs too.
pub fn check_engine(checker: &mut Checker, path: &str, spec: &EngineSpec) {
    let at = |field: &str| format!("{path}.{field}");
    checker.within(&at("power"), spec.power.as_ref(), ENGINE_POWER);
    checker.span(&at("full_throttle"), spec.full_throttle.as_ref(), ROTATION);
    checker.within(&at("dry_weight"), spec.dry_weight.as_ref(), ENGINE_WEIGHT);
    checker.within(
        &at("running_weight"),
        spec.running_weight.as_ref(),
        ENGINE_WEIGHT,
    );
    if let (Some(dry), Some(running)) = (&spec.dry_weight, &spec.running_weight)
        && running.value < dry.value
    {
        checker.fault(
            &at("running_weight"),
            "lighter running than dry",
            "check both weights",
        );
    }
    checker.within(&at("centre_aft"), spec.centre_aft.as_ref(), OFFSET);
    checker.within(&at("centre_above"), spec.centre_above.as_ref(), OFFSET);
    for (i, shaft) in spec.shafts.iter().enumerate() {
        let path = at(&format!("shafts[{i}]"));
        checker.within(&format!("{path}.name"), Some(&shaft.name), SHAFT);
        checker.within(
            &format!("{path}.rest_to_plate"),
            Some(&shaft.rest_to_plate),
            SHAFT,
        );
        checker.within(
            &format!("{path}.extra_weight"),
            shaft.extra_weight.as_ref(),
            ITEM_WEIGHT,
        );
    }
    checker.within(
        &at("plate_to_propeller_shaft"),
        spec.plate_to_propeller_shaft.as_ref(),
        SMALL_LENGTH,
    );
    checker.within(&at("gear_ratio"), spec.gear_ratio.as_ref(), GEAR);
    checker.span(
        &at("propeller_diameter"),
        spec.propeller_diameter.as_ref(),
        SMALL_LENGTH,
    );
    checker.count(&at("hole_rows"), spec.hole_rows, HOLE_ROWS);
    checker.span(
        &at("transom_thickness"),
        spec.transom_thickness.as_ref(),
        THICKNESS,
    );
    checker.within(
        &at("transom_angle"),
        spec.transom_angle.as_ref(),
        TRANSOM_ANGLE,
    );
    checker.span::<Angle>(&at("trim"), spec.trim.as_ref(), TRIM);
    checker.within(&at("full_tilt"), spec.full_tilt.as_ref(), TILT);
    checker.within(&at("steering"), spec.steering.as_ref(), STEER);
    checker.within(
        &at("centre_distance"),
        spec.centre_distance.as_ref(),
        SMALL_LENGTH,
    );
    tilt_tube(checker, &at("tilt_tube"), spec.tilt_tube.as_ref());
    if let Some(head) = &spec.powerhead {
        let at = |field: &str| format!("{path}.powerhead.{field}");
        checker.within(&at("width"), head.width.as_ref(), SMALL_LENGTH);
        checker.within(&at("height"), head.height.as_ref(), SMALL_LENGTH);
        checker.within(
            &at("forward_at_full_tilt"),
            head.forward_at_full_tilt.as_ref(),
            OFFSET,
        );
        checker.within(
            &at("height_at_full_tilt"),
            head.height_at_full_tilt.as_ref(),
            SMALL_LENGTH,
        );
        checker.within(
            &at("clearance_each_way"),
            head.clearance_each_way.as_ref(),
            SMALL_LENGTH,
        );
    }
    checker.within(&at("alternator"), spec.alternator.as_ref(), CURRENT);
    checker.within(&at("starting"), spec.starting.as_ref(), CURRENT);
    checker.within(&at("fuel_rate"), spec.fuel_rate.as_ref(), FUEL_RATE);
}

/// Everything about a bracket's figures that cannot be; for catalogs too.
pub fn check_bracket(checker: &mut Checker, path: &str, spec: &BracketSpec) {
    let at = |field: &str| format!("{path}.{field}");
    checker.within(&at("setback"), spec.setback.as_ref(), SETBACK);
    checker.within(&at("drop"), spec.drop.as_ref(), DROP);
    checker.within(&at("rated_power"), spec.rated_power.as_ref(), BOAT_POWER);
    checker.within(&at("rated_weight"), spec.rated_weight.as_ref(), LOAD);
    checker.count(&at("engines"), spec.engines, 1..=8);
    checker.within(&at("weight"), spec.weight.as_ref(), ITEM_WEIGHT);
    checker.within(&at("buoyant_volume"), spec.buoyant_volume.as_ref(), VOLUME);
}

fn tilt_tube(checker: &mut Checker, path: &str, tube: Option<&TiltTube>) {
    let Some(tube) = tube else { return };
    checker.within(&format!("{path}.forward"), Some(&tube.forward), ON_BRACKET);
    checker.within(&format!("{path}.above"), Some(&tube.above), ON_BRACKET);
}
