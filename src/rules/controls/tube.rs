//! `controls/tube`

use crate::case::Case;
use crate::job::rigging::{self, Tube};
use crate::physics::rigging::tube;
use crate::quantity::{Dimensioned, Measure, Style, Text, nth, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Limit, Verdict};
use crate::working::Sheet;
use uom::si::f64::{Length, Ratio};

rule! {
    /// How full each rigging tube is, its sharpest bend, its ends, and whether it drains.
    ///
    /// **Why.** A tube that is full will not let the next cable through, and wears the insulation off what is pulled; one that holds
    /// water rots it.
    ///
    /// **Limit.** Two fifths of its area, 53 % for one thing, 31 % for two; no bend tighter than four times its inside; ends smooth or
    /// bushed; drained.
    ///
    /// **Source.** NEC (NFPA 70) chapter 9, table 1, for conduit (from memory); common practice, no source, in boats.
    ///
    /// **When it warns.** It fails where something is thicker than the tube; else it warns, and names the smallest tube that does.
    TUBE = Controls "controls/tube", judge;
}

fn judge(case: &Case) -> Judgement {
    let tubes = &case.rig.job.rigging.tubes;
    if tubes.is_empty() {
        return Ok(Finding::not_applicable(Text::from(super::NOTHING_TOLD)));
    }
    let mut worst: Option<Finding> = None;
    for (i, tube) in tubes.iter().enumerate() {
        let name = tube.name.clone().unwrap_or_else(|| nth("rigging tube", i));
        let lacking = || {
            Finding::unmeasured(vec![Missing { measurement: reading!(rigging::Rigging.tubes), of: Some(name.clone()) }])
        };
        match (&tube.inside, through(tube)) {
            (Some(inside), Some(through)) if !through.is_empty() => {
                of_tube((&name, i), tube, inside.value, &through)
                    .into_iter()
                    .for_each(|finding| finding.keep_worse(&mut worst));
            }
            _ => return Ok(lacking()),
        }
    }
    Ok(worst.unwrap_or_else(|| Finding::unmeasured(vec![Missing::one(reading!(rigging::Rigging.tubes))])))
}

/// What passes through, each by itself; nothing where a diameter is missing.
fn through(tube: &Tube) -> Option<Vec<(String, Length)>> {
    let mut all = Vec::new();
    for (i, passing) in tube.through.iter().enumerate() {
        let name = passing.what.clone().unwrap_or_else(|| format!("thing {}", i + 1));
        for _ in 0..passing.count.unwrap_or(1) {
            all.push((name.clone(), passing.diameter.as_ref()?.value));
        }
    }
    Some(all)
}

fn of_tube((name, index): (&str, usize), tube: &Tube, inside: Length, through: &[(String, Length)]) -> Vec<Finding> {
    let mut sheet = Sheet::default();
    sheet.told("D", tube.inside.as_ref());
    let each = tube.through.iter();
    let each = each.flat_map(|passing| std::iter::repeat_n(&passing.diameter, usize::from(passing.count.unwrap_or(1))));
    for (i, diameter) in each.enumerate() {
        sheet.told(&format!("d{}", i + 1), diameter.as_ref());
    }
    let fill = tube::fill(&mut sheet, inside, through);
    let most = Ratio::from_si(tube::permitted(through.len()));
    let found = Measure::styled(fill.value(), Style::Share);
    let limit = Limit::AtMost(Measure::styled(most, Style::Share));
    let thick = through.iter().find(|(_, across)| across.exceeds(inside));
    let smallest = tube::smallest(&mut Sheet::default(), through);
    let entry = |field: &str| format!("rigging.tubes[{index}].{field}");
    let buy = |finding: Finding| match smallest {
        Some(smallest) => finding
            .remedy(mend::change(
                say!("Make the {} one of {} inside.", name, Measure::tape(smallest)),
                [Change::told(entry("inside"), Measure::tape(smallest))],
            ))
            .buys("rigging tube", say!("{} inside", Measure::tape(smallest))),
        None => finding
            .remedy(mend::yard(say!("No tube that is sold takes all of the {}: lay a second one.", name)))
            .buys("second rigging tube", Text::from("beside the first")),
    };
    let mut findings = Vec::new();
    if let Some((what, across)) = thick {
        findings.push(buy(Finding::new(
            Verdict::Fail,
            say!(
                "The {} is {} across and does not pass the {}, {} inside.",
                what.as_str(),
                Measure::tape(*across),
                name,
                Measure::tape(inside)
            ),
        )));
    } else if fill.value().exceeds(most) {
        findings.push(buy(Finding::new(Verdict::Warn, say!("The {} is filled to {} of its area.", name, found))));
    }
    // A wider tube that is laid in its place bends more widely too.
    let laid = if findings.is_empty() { inside } else { smallest.unwrap_or(inside) };
    let least = laid * tube::BEND_DIAMETERS;
    if let Some(bend) = tube.bend.as_ref().filter(|bend| least.exceeds(bend.value)) {
        findings.push(
            Finding::new(
                Verdict::Warn,
                say!(
                    "The {} bends at a radius of {}, too sharp for {} inside.",
                    name,
                    Measure::tape(bend.value),
                    Measure::tape(laid)
                ),
            )
            .remedy(mend::change(
                say!("Lay the {} with bends of at least {}.", name, Measure::tape(least)),
                [Change::told(entry("bend"), Measure::tape(least))],
            )),
        );
    }
    if tube.smooth_ends == Some(false) || tube.drains == Some(false) {
        let what = match (tube.drains, tube.smooth_ends) {
            (Some(false), Some(false)) => "holds water and has sharp ends",
            (Some(false), _) => "holds water",
            _ => "has sharp ends",
        };
        findings.push(
            Finding::new(Verdict::Warn, say!("The {} {}.", name, what))
                .remedy(mend::change(
                    say!("Bush both ends of the {}, and lay it so that it drains into the bilge.", name),
                    [Change::to(entry("smooth_ends"), "true"), Change::to(entry("drains"), "true")],
                ))
                .buys("tube bushings", Text::from("two")),
        );
    }
    if findings.is_empty() {
        findings.push(Finding::new(Verdict::Pass, say!("The {} is filled to {} of its area.", name, found)));
    }
    findings.into_iter().map(|finding| finding.against(found, limit).working(sheet.clone())).collect()
}
