//! `power/formula-limit`

use crate::rules::mend::{self, Mend, Remedy};
use uom::si::f64::{Length, Power};

use super::installed;
use crate::case::Case;
use crate::job::{self, Bottom, Craft, Plate};
use crate::physics::capacity::{self, Arrangement};
use crate::physics::power::{self, Against};
use crate::quantity::{Dimensioned, Measure, Reading, Style, Text, say};
use crate::reading::{All, reading};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::{Sheet, Term};

rule! {
    /// The horsepower capacity that the US formula gives for her length, transom and steering,
    /// against the plate and, without a plate, against the engines.
    ///
    /// **Why.** A plate can be lost, copied from another boat or changed; the formula says what the
    /// builder of a small outboard boat could have put on it.
    ///
    /// **Limit.** Factor = length in feet times greatest transom width in feet (the broadest beam in
    /// the aftermost quarter where there is no full transom). To 52.5 the table gives the power, one
    /// step less for a flat bottom with hard chines; above it 2 F − 90 with remote steering and a
    /// transom of at least 20 in, else 0.5 F − 15 for a flat bottom with hard chines and 0.8 F − 25
    /// for others, raised to the next multiple of five.
    ///
    /// **Source.** 33 CFR 183.53(a), with the definitions of 183.3; 33 CFR 183.53(b) for the
    /// performance test (its conditions from memory).
    ///
    /// **When it warns.** It warns where the plate says more than the formula, and the engines are not
    /// known to lie within both: ask the builder how the plate came about. Without a plate it fails above the formula. It does not apply from 20 ft
    /// on, nor to sailboats, canoes, kayaks, inflatables and multihulls: there the builder's rating
    /// holds, or ISO 11592.
    FORMULA_LIMIT = Power "power/formula-limit", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = case.rig;
    if rig.job.boat.craft().reading().is_none() || rig.job.boat.length().reading().is_none() {
        (
            rig.job.boat.craft().ask(),
            rig.job.boat.length().ask(),
            rig.job.boat.transom_width().ask(),
            rig.job.steering().ask(),
            rig.job.boat.bottom().ask(),
        )
            .all()?;
    }
    let (craft, length) = (rig.job.boat.craft().ask(), rig.job.boat.length().ask()).all()?;
    if *craft != Craft::Monohull {
        return Ok(Finding::not_applicable(say!(
            "33 CFR 183 subpart D does not cover a {}; the builder's rating holds, or ISO 11592.",
            craft.words()
        )));
    }
    if !capacity::regulated_length().exceeds(length.value) {
        return Ok(Finding::not_applicable(say!(
            "33 CFR 183.53 covers boats under 20 ft, and she is {}; the builder's rating holds, or ISO 11592.",
            length.measure(Style::FeetInches)
        )));
    }
    let Some(table) = &rig.tables.power_capacity else {
        return Ok(Finding::not_applicable(Text::from("The catalog holds no horsepower capacity table.")));
    };
    let (width, steering) = (rig.job.boat.transom_width().ask(), rig.job.steering().ask()).all()?;
    let mut sheet = Sheet::default();
    let full_transom = rig.job.boat.beam().reading().is_none_or(|beam| width.value.exceeds(beam.value / 2.0));
    let width = if full_transom {
        width
    } else {
        let aft_beam = rig.job.boat.aft_quarter_beam().ask()?;
        sheet.remark("no full transom (183.3): the broadest beam in the aftermost quarter counts");
        aft_beam
    };
    sheet.told("L", Some(length));
    sheet.told("W", Some(width));
    let factor = capacity::factor(&mut sheet, length.value, width.value);
    let in_table = capacity::in_table(table, &factor);
    let mut arrangement = Arrangement { remote_and_high: false, flat_hard_chine: false };
    if !in_table && steering.is_remote() {
        let height = rig.job.transom.height().ask()?;
        arrangement.remote_and_high = !capacity::high_transom().exceeds(height.value);
        sheet.remark(say!(
            "steering {}, transom {} at the centreline, against 20 in",
            steering.words(),
            height.measure(Style::Tape)
        ));
    }
    if !arrangement.remote_and_high {
        let bottom = rig.job.boat.bottom().ask()?;
        arrangement.flat_hard_chine = *bottom == Bottom::FlatHardChine;
    }
    let formula = capacity::power(&mut sheet, table, &factor, arrangement);
    let by_test = if steering.is_remote() && may_be_tested(case, length.value) {
        " A boat of 13 ft or less with a remote wheel, a transom of 19 in and two persons may instead be rated by the performance test of 183.53(b), to 40 hp at most; it is not computed here."
    } else {
        ""
    };
    Ok(compare(case, sheet, &formula, by_test))
}

/// Whether what else the performance test asks for is known of her, and met.
fn may_be_tested(case: &Case, length: Length) -> bool {
    let persons = match case.rig.job.plate().reading() {
        Some(Plate::Capacity { persons, .. } | Plate::Builders { persons, .. }) => *persons,
        Some(Plate::None | Plate::Illegible) | None => None,
    };
    let transom = case.rig.job.transom.height().reading();
    transom.zip(persons).is_some_and(|(height, persons)| capacity::performance_test(length, height.value, persons))
}

/// Holds the formula against the plate, or against the engines where there is no plate to read.
fn compare(case: &Case, mut sheet: Sheet, formula: &Term<Power>, by_test: &str) -> Finding {
    let rig = case.rig;
    let limit = formula.measure();
    let at_most = Limit::AtMost(limit);
    let plate = rig.job.plate().reading();
    if let Some(Plate::Capacity { power: Some(power), .. } | Plate::Builders { power: Some(power), .. }) = plate {
        let found = Measure::of(power.value);
        let over = is_over(&[("plate".to_owned(), power)], formula);
        // The plate may be another boat's; engines that the formula allows her are none the worse for it.
        let written = rig.after.main_power_written().unwrap_or_default();
        if over && !written.is_empty() && !is_over(&written, formula) {
            let engines: Vec<_> = written.iter().map(|(name, power)| (name.clone(), power.value)).collect();
            if let Some(installed) = installed(&mut sheet, &engines) {
                let installed = installed.measure();
                return Finding::new(
                    Verdict::Pass,
                    say!(
                        "The main engines make {}; the plate says {}, the US formula {}: before more is hung on her, ask the builder how the plate came about.{}",
                        installed,
                        found,
                        limit,
                        by_test
                    ),
                )
                .against(installed, at_most)
                .working(sheet);
            }
        }
        let finding = if over {
            Finding::new(Verdict::Warn, say!("The plate says {}, the US formula {}.{}", found, limit, by_test)).remedy(
                mend::ask(Text::from(
                    "Ask the builder, by the hull number, how the plate came about before relying on it.",
                )),
            )
        } else {
            Finding::new(
                Verdict::Pass,
                say!("The plate's {} lies within the {} of the US formula.{}", found, limit, by_test),
            )
        };
        return finding.against(found, at_most).working(sheet);
    }
    let written = match rig.after.main_power_written() {
        Ok(written) => written,
        Err(_) if rig.after.is_empty() => Vec::new(),
        Err(missing) => return Finding::unmeasured(missing).limit(at_most).working(sheet),
    };
    let engines: Vec<_> = written.iter().map(|(name, power)| (name.clone(), power.value)).collect();
    let Some(installed) = installed(&mut sheet, &engines) else {
        let mut finding = Finding::unmeasured(vec![rig.after.missing()]).limit(at_most).working(sheet);
        finding.summary = say!("The US formula allows {}; no engine is given to hold against it.{}", limit, by_test);
        return finding;
    };
    let found = installed.measure();
    let over = is_over(&written, formula);
    let remedy = Remedy::new(
        say!("{} main engines of at most {} together, or show the builder's own rating.", mend::choose(rig), limit),
        [Mend::Change(mend::weaker(rig, formula.value()).unwrap_or_default()), Mend::Ask],
    );
    let finding = match (over, plate) {
        (true, Some(Plate::None | Plate::Illegible)) => Finding::new(
            Verdict::Fail,
            say!(
                "The main engines make {}; without a plate to read, the US formula allows {}.{}",
                found,
                limit,
                by_test
            ),
        )
        .remedy(remedy),
        (true, _) => {
            let mut finding = Finding::new(
                Verdict::Warn,
                say!(
                    "The main engines make {}; the US formula allows {}, and the plate's power is not given.{}",
                    found,
                    limit,
                    by_test
                ),
            )
            .remedy(remedy);
            finding.missing.push(crate::rig::Missing::one(reading!(job::Plate.power)));
            finding
        }
        (false, _) => Finding::new(
            Verdict::Pass,
            say!("The main engines make {}; the US formula allows {}.{}", found, limit, by_test),
        ),
    };
    finding.against(found, at_most).working(sheet)
}

/// Whether powers exceed the formula's; where they are written in kilowatts, by more than their rounding.
fn is_over(powers: &[(String, &Reading<Power>)], formula: &Term<Power>) -> bool {
    let formula = power::in_horsepower(formula.value());
    matches!(power::against(&mut Sheet::default(), powers, &formula), Against::Over)
}
