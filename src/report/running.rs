//! How she runs, her trials, what it is worth, and questions put outright, as JSON: in SI, unrounded.

use serde_json::{Map, Value, json as value};
use uom::si::angle::degree;

use crate::case::Case;
use crate::case::running::Predicted;
use crate::case::studies::Answered;
use crate::case::trial::{Compared, Done, Measured, Row};
use crate::case::worth::Reckoned;
use crate::physics::matched::Steady;
use crate::physics::trial::Change;
use crate::physics::worth::Amount;
use crate::quantity::{Dimensioned, Units};
use crate::reading::Absent;

/// The questions that the job puts outright, by the field that asks; null where it puts none.
pub(super) fn studies(case: &Case, units: Units) -> Value {
    let answers = case.studies();
    if answers.is_empty() {
        return Value::Null;
    }
    let one = |answer: &Answered| {
        let mut figures: Map<String, Value> =
            answer.figures.iter().map(|figure| (figure.key.to_owned(), value!(figure.value))).collect();
        figures.insert("notes".to_owned(), answer.notes.iter().map(|note| note.show(units)).collect::<Vec<_>>().into());
        (answer.name.to_owned(), Value::Object(figures))
    };
    Value::Object(answers.iter().map(one).collect())
}

/// How she runs before and after; null where the job does not ask.
pub(super) fn running(case: &Case, units: Units) -> Value {
    let Some(runs) = case.running() else { return Value::Null };
    let side = |side: &Result<Predicted, Absent>| match side {
        Ok(predicted) => predicted_of(predicted),
        Err(no) => value!({ "open": no.words().show(units) }),
    };
    let fit = runs.fit.as_ref().map(|fit| {
        value!({
            "drag": fit.factors.drag,
            "pitch": fit.factors.pitch,
            "doubts": fit.doubts,
            "together": fit.together,
            "runs": fit.used,
            "misfit": fit.misfit,
        })
    });
    value!({ "before": side(&runs.before), "after": side(&runs.after), "fit": fit })
}

fn predicted_of(predicted: &Predicted) -> Value {
    let built = &predicted.built;
    let top = predicted.top.map(|top| {
        value!({
            "speed_m_s": top.speed.si(),
            "speed_doubt_m_s": top.speed_doubt.si(),
            "engine_rad_s": top.engine.si(),
            "engine_doubt_rad_s": top.engine_doubt.si(),
        })
    });
    let up = predicted.getting_up.map(|up| {
        let seconds = |time: Option<[uom::si::f64::Time; 2]>| time.map(|time| time.map(Dimensioned::si));
        value!({ "planes_m_s": up.planes.si(), "to_plane_s": seconds(up.to_plane), "to_20_mph_s": seconds(up.to_speed) })
    });
    value!({
        "loading": built.loading,
        "weight_n": built.craft.planing.weight.si(),
        "centre_m": built.centre,
        "beam_m": built.craft.planing.bottom.beam.si(),
        "deadrise_deg": built.craft.planing.bottom.deadrise.get::<degree>(),
        "propeller": {
            "blades": built.screw.blades,
            "diameter_m": built.screw.diameter.si(),
            "pitch_m": built.screw.pitch.si(),
            "told": built.screw.told,
        },
        "top": top,
        "getting_up": up,
        "range": predicted.range.points.iter().map(steady).collect::<Vec<_>>(),
    })
}

fn steady(point: &Steady) -> Value {
    value!({
        "speed_m_s": point.speed.si(),
        "trim_deg": point.trim().map(|trim| trim.get::<degree>()),
        "porpoises_deg": point.porpoises.map(|limit| [limit.from, limit.to].map(|trim| trim.get::<degree>())),
        "wetted_over_beam": point.running.wetted.si(),
        "thrust_n": point.thrust.si(),
        "blades_n": point.running.blades.si(),
        "available_n": point.available.si(),
        "engine_rad_s": point.engine.si(),
        "slip": point.slip.si(),
        "efficiency": point.efficiency.si(),
        "power_w": point.power.si(),
        "fuel_m3_s": point.fuel.si(),
        "held": point.is_held(),
    })
}

/// The trials, run by run, and one against the other; null where the job tells none.
pub(super) fn trial(case: &Case) -> Value {
    let Some(trials) = case.trial() else { return Value::Null };
    let compared = trials.both().map(|(before, after)| compared_of(&Compared::of(before, after)));
    value!({
        "before": trials.before.as_ref().map(measured),
        "after": trials.after.as_ref().map(measured),
        "compared": compared,
        "tank_m3": trials.tank.map(Dimensioned::si),
    })
}

fn measured(trial: &Measured) -> Value {
    let damage = trial.damage.map(|damage| {
        value!({
            "lines": damage.lines,
            "bad_sums": damage.bad_sums,
            "unreadable": damage.unreadable,
            "void": damage.void,
            "gaps": damage.gaps,
        })
    });
    value!({ "runs": trial.runs.iter().map(run).collect::<Vec<_>>(), "log": damage })
}

fn run(run: &Done) -> Value {
    value!({
        "engine_rad_s": run.engine.map(Dimensioned::si),
        "speed_m_s": run.speed.map(|speed| speed.value.si()),
        "speed_doubt_m_s": run.speed.map(|speed| speed.doubt.si()),
        "current_m_s": run.current.map(Dimensioned::si),
        "fuel_m3_s": run.fuel.map(Dimensioned::si),
        "m_per_m3": run.economy.map(Dimensioned::si),
        "range_m": run.range.map(Dimensioned::si),
        "slip": run.slip.map(Dimensioned::si),
        "full_throttle": run.full_throttle,
    })
}

fn change(change: &Option<Change>) -> Value {
    change.map_or(
        Value::Null,
        |change| value!({ "before": change.before, "after": change.after, "part": change.part, "doubt": change.doubt }),
    )
}

fn compared_of(compared: &Compared) -> Value {
    let row = |row: &Row| {
        value!({
            "at": row.along,
            "speed_m_s": change(&row.speed),
            "fuel_m3_s": change(&row.fuel),
            "m_per_m3": change(&row.economy),
        })
    };
    value!({
        "at_equal_engine_rad_s": compared.at_equal_engine.iter().map(row).collect::<Vec<_>>(),
        "at_equal_speed_m_s": compared.at_equal_speed.iter().map(row).collect::<Vec<_>>(),
        "top_m_s": change(&compared.top),
        "best_m_per_m3": change(&compared.best),
    })
}

/// What it is worth; null where the job tells no costs and no use.
pub(super) fn worth(case: &Case) -> Value {
    let Some(reckoned) = case.worth() else { return Value::Null };
    let amount =
        |amount: &Option<Amount>| amount.map(|amount| value!({ "value": amount.value, "doubt": amount.doubt }));
    let Reckoned { currency, cost, season, payback, not_priced, .. } = &reckoned;
    value!({
        "currency": currency,
        "cost": amount(cost),
        "season_before": amount(&season[0]),
        "season_after": amount(&season[1]),
        "seasons_until_even": payback.map(|payback| value!({
            "soonest": payback.soonest,
            "reckoned": payback.seasons,
            "latest": payback.latest,
        })),
        "not_priced": not_priced,
    })
}
