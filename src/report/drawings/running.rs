//! How she runs: drag and thrust with the hump, trim against the porpoising limit, speed, fuel, distance and slip over engine
//! speed, before and after in one picture, and costs over the seasons.

use uom::si::angle::degree;

use super::kit::{Drawing, ink};
use super::plot::{Curve, Measured, Plot};
use crate::case::Case;
use crate::case::running::Predicted;
use crate::case::trial::Done;
use crate::physics::matched::Steady;
use crate::quantity::{Dimensioned, DistancePerVolume, Measure, Units};

const DASHES: &str = "8 4";
const DOTS: &str = "3 4";

/// A value in the unit that a report shows it in, and that unit.
fn shown<Q: Dimensioned>(value: Q, units: Units) -> (f64, &'static str) {
    Measure::of(value).in_unit(units)
}

fn unit<Q: Dimensioned>(units: Units) -> &'static str {
    shown(Q::from_si(1.0), units).1
}

/// Both sides, as far as they are told: name, prediction, colour, dashes.
fn sides<'c>(case: &'c Case) -> Vec<(&'static str, &'c Predicted, &'static str, &'static str)> {
    let Some(runs) = case.running() else { return Vec::new() };
    let before = runs.before.as_ref().ok().map(|one| ("before", one, ink::OLD, DASHES));
    let after = runs.after.as_ref().ok().map(|one| ("after", one, ink::NEW, ""));
    before.into_iter().chain(after).filter(|(_, one, ..)| one.range.points.len() > 1).collect()
}

/// Both trials, as far as they were sailed.
fn trials<'c>(case: &'c Case) -> Vec<(&'c [Done], &'static str)> {
    let Some(trials) = case.trial() else { return Vec::new() };
    let before = trials.before.as_ref().map(|trial| (trial.runs.as_slice(), ink::OLD));
    let after = trials.after.as_ref().map(|trial| (trial.runs.as_slice(), ink::NEW));
    before.into_iter().chain(after).collect()
}

/// Drag and thrust at full throttle over speed.
pub(super) fn thrust(case: &Case, units: Units) -> Option<Drawing> {
    let mut curves = Vec::new();
    for (name, one, colour, dashes) in sides(case) {
        let over = |of: &dyn Fn(&Steady) -> uom::si::f64::Force| {
            one.range.points.iter().map(|point| [shown(point.speed, units).0, shown(of(point), units).0]).collect()
        };
        curves.push(Curve { name: format!("drag {name}"), points: over(&|point| point.thrust), colour, dashes });
        let dashes = if dashes.is_empty() { DOTS } else { "2 3" };
        let points = over(&|point| point.available);
        curves.push(Curve { name: format!("thrust {name}"), points, colour, dashes });
    }
    Plot {
        name: "running-thrust",
        title: "Drag, and thrust at full throttle".to_owned(),
        description: "Drag and thrust at full throttle over speed, before and after: where they cross is her greatest speed, where drag heaps up is the hump.".to_owned(),
        notes: vec!["By Savitsky's prism and the Wageningen B-series; only as far as the method tells.".to_owned()],
        along: format!("speed, {}", unit::<uom::si::f64::Velocity>(units)),
        up: format!("force, {}", unit::<uom::si::f64::Force>(units)),
        curves,
        measured: Vec::new(),
        from_zero: true,
    }
    .drawing()
}

/// Trim against the porpoising limit, over speed on plane.
pub(super) fn trim(case: &Case, units: Units) -> Option<Drawing> {
    let mut curves = Vec::new();
    let on_plane = |one: &'_ Predicted| -> Vec<Steady> {
        one.range.points.iter().filter(|point| point.trim().is_some() && point.is_held()).copied().collect()
    };
    for (name, one, colour, dashes) in sides(case) {
        let at = |point: &Steady| Some([shown(point.speed, units).0, point.trim()?.get::<degree>()]);
        let points = on_plane(one).iter().filter_map(at).collect();
        curves.push(Curve { name: format!("trim {name}"), points, colour, dashes });
    }
    // Both sides have nearly the same limits: those of the later are drawn.
    if let Some((_, one, ..)) = sides(case).last() {
        let points = on_plane(one);
        let limits = [("porpoises: lower limit", DOTS), ("higher limit", "2 3")];
        for (i, (name, dashes)) in limits.into_iter().enumerate() {
            let at = |point: &Steady| {
                let between = point.porpoises?;
                let limit = if i == 0 { between.from } else { between.to };
                Some([shown(point.speed, units).0, limit.get::<degree>()])
            };
            let points: Vec<[f64; 2]> = points.iter().filter_map(at).collect();
            if points.len() > 1 {
                curves.push(Curve { name: name.to_owned(), points, colour: ink::ALERT, dashes });
            }
        }
    }
    Plot {
        name: "running-trim",
        title: "Trim against porpoising".to_owned(),
        description:
            "Her trim over speed on plane, before and after, with the two published trims at which she begins to porpoise."
                .to_owned(),
        notes: vec!["Her trim is worth about a degree. Below both limits she does not porpoise, above both she does.".to_owned()],
        along: format!("speed, {}", unit::<uom::si::f64::Velocity>(units)),
        up: "trim, deg".to_owned(),
        curves,
        measured: Vec::new(),
        from_zero: true,
    }
    .drawing()
}

/// What is drawn over engine speed.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Over {
    Speed,
    Fuel,
    Economy,
    Range,
    Slip,
}

impl Over {
    fn reckoned(self, point: &Steady, tank: Option<f64>, units: Units) -> Option<f64> {
        let economy = DistancePerVolume::from_si(point.speed.si() / point.fuel.si());
        let burns = point.fuel.si() > 0.0;
        match self {
            Over::Speed => Some(shown(point.speed, units).0),
            Over::Fuel => burns.then(|| shown(point.fuel, units).0),
            Over::Economy => burns.then(|| shown(economy, units).0),
            Over::Range => burns
                .then_some(())
                .and(tank)
                .map(|tank| miles(economy.si() * tank * (1.0 - crate::physics::trial::KEPT_BACK), units)),
            Over::Slip => Some(100.0 * point.slip.si()),
        }
    }

    fn measured(self, run: &Done, units: Units) -> Option<f64> {
        match self {
            Over::Speed => run.speed.map(|speed| shown(speed.value, units).0),
            Over::Fuel => run.fuel.map(|fuel| shown(fuel, units).0),
            Over::Economy => run.economy.map(|economy| shown(economy, units).0),
            Over::Range => run.range.map(|range| miles(range.si(), units)),
            Over::Slip => run.slip.map(|slip| 100.0 * slip.si()),
        }
    }

    fn doubt(self, run: &Done, units: Units) -> f64 {
        match self {
            Over::Speed => run.speed.map_or(0.0, |speed| shown(speed.doubt, units).0),
            _ => 0.0,
        }
    }
}

/// Metres as miles, or nautical miles.
fn miles(metres: f64, units: Units) -> f64 {
    Measure::styled(uom::si::f64::Length::from_si(metres), crate::quantity::Style::Distance).in_unit(units).0
}

fn over_engine(case: &Case, units: Units, over: Over, name: &'static str, what: &str, up: String) -> Option<Drawing> {
    let tank = case.trial().and_then(|trials| trials.tank).map(Dimensioned::si);
    let rpm = |engine: uom::si::f64::AngularVelocity| shown(engine, units).0;
    let mut curves = Vec::new();
    for (side, one, colour, dashes) in sides(case) {
        let planes = one.getting_up.map_or(0.0, |up| up.planes.si());
        let held = one.range.points.iter().filter(|point| point.is_held() && point.speed.si() >= planes);
        let points: Vec<[f64; 2]> =
            held.filter_map(|point| Some([rpm(point.engine), over.reckoned(point, tank, units)?])).collect();
        if points.len() > 1 {
            curves.push(Curve { name: format!("{side}, reckoned"), points, colour, dashes });
        }
    }
    let measured: Vec<Measured> = trials(case)
        .into_iter()
        .map(|(runs, colour)| Measured {
            points: runs
                .iter()
                .filter_map(|run| Some([rpm(run.engine?), over.measured(run, units)?, over.doubt(run, units)]))
                .collect(),
            colour,
        })
        .filter(|measured| !measured.points.is_empty())
        .collect();
    if curves.is_empty() {
        // No reckoning: the runs themselves are joined.
        for (measured, name) in measured.iter().zip(["first trial", "second trial"]) {
            let points = measured.points.iter().map(|[x, y, _]| [*x, *y]).collect();
            curves.push(Curve { name: name.to_owned(), points, colour: measured.colour, dashes: "" });
        }
    }
    Plot {
        name,
        title: format!("{what} over engine speed"),
        description: format!(
            "{what} over engine speed, before and after: lines are reckoned, rings are runs of the trials."
        ),
        notes: if measured.is_empty() {
            Vec::new()
        } else {
            vec!["Rings are runs of the trials; the stroke through one is how far off it may be.".to_owned()]
        },
        along: "engine speed, rpm".to_owned(),
        up,
        curves,
        measured,
        from_zero: true,
    }
    .drawing()
}

/// Speed, fuel, distance for fuel, range and slip over engine speed.
pub(super) fn over_engine_speed(case: &Case, units: Units) -> Vec<Drawing> {
    let speed = format!("speed, {}", unit::<uom::si::f64::Velocity>(units));
    let fuel = format!("fuel, {}", unit::<uom::si::f64::VolumeRate>(units));
    let economy = format!("distance for fuel, {}", unit::<DistancePerVolume>(units));
    let range = format!("range, a tenth kept back, {}", if units == Units::Si { "nmi" } else { "mi" });
    [
        over_engine(case, units, Over::Speed, "running-speed", "Speed", speed),
        over_engine(case, units, Over::Fuel, "running-fuel", "Fuel", fuel),
        over_engine(case, units, Over::Economy, "running-economy", "Distance for fuel", economy),
        over_engine(case, units, Over::Range, "running-range", "Range", range),
        over_engine(case, units, Over::Slip, "running-slip", "Slip", "slip, %".to_owned()),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Money spent over the seasons, before and after.
pub(super) fn costs(case: &Case) -> Option<Drawing> {
    let reckoned = case.worth()?;
    let [Some(before), Some(after)] = reckoned.season else { return None };
    let cost = reckoned.cost?;
    let line = |name: &str, start: f64, season: f64, colour, dashes| Curve {
        name: name.to_owned(),
        points: (0..=reckoned.seasons).map(|n| [f64::from(n), start + f64::from(n) * season]).collect(),
        colour,
        dashes,
    };
    Plot {
        name: "worth-seasons",
        title: "Money over the seasons".to_owned(),
        description: "Money spent over the seasons: with the old engines fuel and upkeep alone, with the new ones their cost first. Where the lines cross both are even.".to_owned(),
        notes: vec![format!("Not priced: {}.", reckoned.not_priced.join("; "))],
        along: "seasons".to_owned(),
        up: reckoned.currency.clone(),
        curves: vec![
            line("kept as she is", 0.0, before.value, ink::OLD, DASHES),
            line("repowered", cost.value, after.value, ink::NEW, ""),
        ],
        measured: Vec::new(),
        from_zero: true,
    }
    .drawing()
}
