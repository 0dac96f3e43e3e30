//! `electrical/day-balance`

use super::told;
use crate::case::Case;
use crate::case::rigging::asked;
use crate::job;
use crate::job::rigging::{self, Chosen, Electrical};
use crate::physics::rigging::battery::{self, Day};
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::reading::{All, reading};
use crate::rig::Missing;
use crate::rules::mend;
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Table};
use uom::si::f64::{ElectricCharge, ElectricCurrent, Time};

rule! {
    /// A day's current: what the alternators put back against what the loads take.
    ///
    /// **Why.** Hours of trolling with sounders, pumps and a live well running empty the battery that shall start the engine at
    /// dusk.
    ///
    /// **Limit.** No more taken than put back; else no more lacking than half of the batteries. Alternators give 0.8 of their
    /// rating at cruise and 0.3 at idle; 0.85 of it comes back out.
    ///
    /// **Source.** Common practice, no source (the shares); the engines' sheets (the ratings).
    ///
    /// **When it warns.** It warns where the day takes more than it gives and half of the batteries does not cover it.
    DAY_BALANCE = Electrical "electrical/day-balance", judge;
}

fn judge(case: &Case) -> Judgement {
    let electrical = told(case)?;
    if electrical.loads.is_empty() {
        return Ok(Finding::not_applicable(Text::from("The job tells of nothing that draws current in a day.")));
    }
    let mains = case.rig.after.mains();
    let ratings = mains.iter().filter_map(|engine| engine.spec.alternator.as_ref());
    let rated = ratings.clone().fold(ElectricCurrent::from_si(0.0), |sum, one| sum + one.value);
    let alternators = (rated.si() > 0.0).then_some(rated);
    let (rated, cruising) =
        (asked(alternators.as_ref(), reading!(job::EngineSpec.alternator)).ask(), electrical.cruising().ask()).all()?;
    let mut sheet = Sheet::default();
    sheet.told("Ig", ratings.clone().next());
    sheet.told("tc", Some(cruising));
    sheet.told("ti", electrical.idling.as_ref());
    let idling = electrical.idling.as_ref().map_or(Time::from_si(0.0), |idling| idling.value);
    let day = Day { alternators: *rated, cruising: cruising.value, idling };
    let back = battery::put_back(&mut sheet, &day);
    let mut sum = ElectricCharge::from_si(0.0);
    let mut rows = Vec::new();
    for (i, load) in electrical.loads.iter().enumerate() {
        let name = load.name.clone().unwrap_or_else(|| format!("load {}", i + 1));
        let (Some(current), Some(hours)) = (&load.current, &load.hours) else {
            return Ok(Finding::unmeasured(vec![Missing {
                measurement: reading!(rigging::Electrical.loads),
                of: Some(name),
            }]));
        };
        sheet.told("I", Some(current));
        sheet.told("t", Some(hours));
        let symbol = format!("Ql{}", i + 1);
        let taken = battery::taken(&mut sheet, &symbol, &format!("taken by the {name}"), current.value, hours.value);
        sum += taken.value();
        rows.push(vec![
            Text::from(name.as_str()),
            Measure::of(current.value).into(),
            Measure::of(hours.value).into(),
            taken.measure().into(),
        ]);
    }
    let table = Table::new("a day's loads", &["load", "current", "hours", "taken"], rows);
    let lacking = sum - back.value();
    let (takes, gives) = (Measure::of(sum), back.measure());
    let reserve = reserve(electrical);
    let summary = say!("A day takes {} and gives {}.", takes, gives);
    let verdict = match reserve {
        _ if !lacking.exceeds(ElectricCharge::from_si(0.0)) => Verdict::Pass,
        Some(reserve) if !lacking.exceeds(reserve) => Verdict::Pass,
        _ => Verdict::Warn,
    };
    let limit = back.value() + reserve.unwrap_or(ElectricCharge::from_si(0.0));
    let finding = if verdict == Verdict::Warn {
        let more = Measure::of((sum - limit) / battery::USABLE);
        Finding::new(verdict, summary)
            .remedy(mend::yard(say!(
                "Charge ashore after each day, run longer at cruise, or add {} of house battery.",
                more
            )))
            .buys("house battery", say!("{} more, or charging ashore", more))
    } else if lacking.exceeds(ElectricCharge::from_si(0.0)) {
        Finding::new(verdict, summary.then(say!(" Half of the batteries covers the rest; charge ashore.")))
    } else {
        Finding::new(verdict, summary)
    };
    Ok(finding.against(takes, Limit::AtMost(Measure::of(limit))).working(sheet).table(table))
}

/// Half of what all batteries hold, where that is told.
fn reserve(electrical: &Electrical) -> Option<ElectricCharge> {
    let hold = electrical.batteries.iter().filter_map(|entry| Some(entry.battery.spec()?.capacity.as_ref()?.value));
    let sum = hold.fold(ElectricCharge::from_si(0.0), |sum, one| sum + one);
    (sum.si() > 0.0).then_some(sum * battery::USABLE)
}
