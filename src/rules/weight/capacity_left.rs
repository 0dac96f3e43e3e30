//! `weight/capacity-left`

use super::outside_small_boats;
use crate::case::Case;
use crate::job::Sitting;
use crate::job::{self, Fuel, Liquid, Plate, Steering, TankEntry};
use crate::physics::{capacity, weight};
use crate::quantity::{Dimensioned, Measure, Text, gallons, horsepower, say};
use crate::reading::{All, reading};
use crate::rig::{Missing, Rig};
use crate::rules::mend::{self, Mend, Remedy};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Term};
use uom::si::f64::Mass;

rule! {
    /// What the plate's total weight leaves for persons once the new engines, their controls,
    /// batteries and portable fuel are taken off it, against the persons on the plate. A tiller has no
    /// controls, and under 25 hp no battery.
    ///
    /// **Why.** The plate's total holds for persons, motor and gear together. Heavier engines leave
    /// less for people, and nobody changes the plate.
    ///
    /// **Limit.** At least the persons' weight on the plate, and, by (lb + 32) / 141 to the nearest
    /// whole, at least the number of persons on it; short by no more than the engines' weight is known to
    /// (its tolerance; else 1 % from a scale or a sheet, 5 % for a class) passes.
    ///
    /// **Source.** 33 CFR 183.41 (persons capacity); ABYC S-30 table 1A as incorporated by 33 CFR
    /// 183.75 (controls, battery, portable tank); common practice, no source (what a tiller goes without).
    ///
    /// **When it warns.** It warns when less is left than the plate promises, and fails when fewer
    /// persons fit than the plate says: mark the boat for fewer, and say so to the owner.
    CAPACITY_LEFT = Weight "weight/capacity-left", judge;
}

/// Power below which an engine with a tiller is commonly pulled by hand. Common practice, no source.
const PULLED_BELOW_HP: f64 = 25.0;

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    match outside_small_boats(rig) {
        Ok(None) => {}
        Ok(Some(why)) => return Ok(Finding::not_applicable(why)),
        Err(missing) => return Ok(Finding::unmeasured(missing)),
    }
    (rig.after.ask(), rig.job.plate().ask()).all()?;
    let (persons, persons_weight, total_weight) = match rig.job.plate().ask() {
        Ok(Plate::Capacity { persons, persons_weight, total_weight, .. }) => (*persons, persons_weight, total_weight),
        Ok(Plate::Builders { .. } | Plate::None) => {
            return Ok(Finding::not_applicable(Text::from(
                "No US capacity plate: the builder's figures hold for what she may carry.",
            )));
        }
        Ok(Plate::Illegible) => {
            return Ok(Finding::unmeasured(vec![Missing::one(reading!(job::Plate.total_weight))]));
        }
        Err(missing) => return Ok(Finding::unmeasured(vec![missing])),
    };
    let (Some(persons), Some(total_weight)) = (persons, total_weight) else {
        let lacking = [
            persons.is_none().then_some(Missing::one(reading!(job::Plate.persons))),
            total_weight.is_none().then_some(Missing::one(reading!(job::Plate.total_weight))),
        ];
        return Ok(Finding::unmeasured(lacking.into_iter().flatten().collect()));
    };
    let engines = match rig.after.engine_weights() {
        Ok(engines) => engines,
        Err(missing) => return Ok(Finding::unmeasured(missing)),
    };
    let mut sheet = Sheet::default();
    let motors = weight::total(&mut sheet, "Wm", "running weight of the engines", &engines);
    let gear = gear(case, &mut sheet)?;
    sheet.told("Wc", Some(total_weight));
    let left = sheet.set("Wp", "left for persons", Term::new("Wc", total_weight.value) - &motors - gear);
    let fits = capacity::persons(&mut sheet, &left).value().si();
    let closeness = weight::closeness(&mut sheet, &rig.after.engine_readings());
    let at_best = &left + &closeness;
    let at_best_fits = capacity::persons(&mut Sheet::default(), &at_best).value().si();
    let found = left.measure();
    let promised = persons_weight.as_ref().map(|weight| weight.value);
    let limit = Measure::of(promised.unwrap_or(Mass::from_si(0.0)));
    let count = format!("{:.0}", fits.max(0.0));
    let short = fits < f64::from(persons) || promised.is_some_and(|promised| promised.exceeds(left.value()));
    let finding = if at_best_fits < f64::from(persons) {
        Finding::new(
            Verdict::Fail,
            say!("{} is left for persons: enough for {}, and the plate says {}.", found, count, u32::from(persons)),
        )
        .remedy({
            let wanted = capacity::weight_of(f64::from(persons));
            let wanted = promised.filter(|promised| promised.exceeds(wanted)).unwrap_or(wanted);
            let over = mend::pounds_up(wanted - left.value());
            let care = say!(
                "Carry no more than {} persons with these engines, and tell whoever runs her",
                format!("{:.0}", fits.max(0.0))
            );
            match mend::lighter(rig, over).filter(|_| rig.job.sitting != Sitting::AsFitted) {
                Some(lighter) => Remedy::new(
                    care.then(say!("; or take engines that are {} lighter.", Measure::of(over))),
                    [Mend::Care, Mend::Change(lighter)],
                ),
                None => mend::care(care.then(Text::from("."))),
            }
        })
    } else if promised.is_some_and(|promised| promised.exceeds(at_best.value())) {
        Finding::new(
            Verdict::Warn,
            say!(
                "{} is left for persons where the plate promises {}; {} still fit by the formula.",
                found,
                limit,
                count
            ),
        )
        .remedy(mend::care("Leave gear ashore when she is full, and see that whoever runs her knows it."))
    } else if short {
        Finding::new(
            Verdict::Pass,
            say!(
                "{} is left for persons: short of the plate by no more than the engines' weight is known to, {}.",
                found,
                closeness.measure()
            ),
        )
    } else {
        Finding::new(
            Verdict::Pass,
            say!("{} is left for persons: enough for the {} of the plate.", found, u32::from(persons)),
        )
    };
    let mut finding = finding.working(sheet);
    if rig.job.boat.fuel.is_none() {
        finding.summary = finding.summary.then(Text::from(if counts_portable_fuel(rig) {
            " Full portable fuel tanks are taken off: how she carries her fuel is not given (boat.fuel)."
        } else {
            " Her fuel is taken to be in tanks built in, as large as they are told."
        }));
    }
    Ok(match promised {
        Some(_) => finding.against(found, Limit::AtLeast(limit)),
        None => finding,
    })
}

/// The largest tank that is carried ashore to be filled. Common practice, no source.
const PORTABLE_GAL: f64 = 13.0;

/// Whether her fuel counts against what she may carry: where nobody says, unless a larger tank is told than anybody carries.
fn counts_portable_fuel(rig: &Rig) -> bool {
    let built_in = |tank: &TankEntry| {
        let capacity = tank.capacity.as_ref().map(|capacity| capacity.value);
        tank.holds == Liquid::Fuel && capacity.is_some_and(|capacity| capacity > gallons(PORTABLE_GAL))
    };
    match rig.job.boat.fuel {
        Some(fuel) => fuel == Fuel::PortableTanks,
        None => !rig.job.weights.tanks.iter().any(built_in),
    }
}

/// Controls, batteries and portable fuel of the new engines, by the table.
fn gear(case: &Case, sheet: &mut Sheet) -> Result<Term<Mass>, Finding> {
    let rig = case.rig;
    let none = |why| Finding::not_applicable(why);
    let Some(table) = &rig.tables.engine_weights else {
        return Err(none(Text::from("The catalog holds no engine weight table.")));
    };
    let mut parts = Vec::new();
    let by_tiller = rig.job.steering().reading() == Some(&Steering::Tiller);
    if by_tiller {
        sheet.remark(Text::from("steered by a tiller: no controls, and under 25 hp, pulled by hand, no battery"));
    }
    for engine in rig.after.mains() {
        let power = engine.power.ask().map_err(|missing| Finding::unmeasured(vec![missing]))?;
        let Some(row) = weight::table_row(table, power.value) else {
            return Err(none(say!("The engine weight table ends below {}.", Measure::of(power.value))));
        };
        if !by_tiller {
            parts.push((format!("controls of the {}", engine.label), row.controls.value));
        }
        if !(by_tiller && horsepower(PULLED_BELOW_HP).exceeds(power.value)) {
            parts.push((format!("battery of the {}", engine.label), row.battery_dry.value));
        }
        if counts_portable_fuel(rig) {
            parts.push((format!("portable fuel of the {}", engine.label), row.portable_fuel.value));
        }
    }
    Ok(weight::total(sheet, "Wg", "controls, dry batteries and portable fuel by the table", &parts))
}
