//! `fuel/one-feed`

use super::told;
use crate::case::Case;
use crate::case::rigging::fuel::{burning, line_name};
use crate::job::{Role, rigging};
use crate::quantity::{Measure, Style, Text, capitalised, say};
use crate::reading::reading;
use crate::rig::Missing;
use crate::rules::mend::{self, Change};
use crate::rules::rule::rule;
use crate::rules::{Finding, Judgement, Verdict};

rule! {
    /// One fuel line for each engine, with its own pick-up, water separator, bulb, and a valve against siphoning at the tank.
    ///
    /// **Why.** Two engines on one line starve each other, and one leak or one clog stops both; a hose that leaks below the
    /// tank's level empties the tank into the bilge.
    ///
    /// **Limit.** As many lines as main engines, each feeding one; a separator in each; a bulb or an electric primer; an anti-siphon
    /// valve wherever the hose runs below the top of the tank.
    ///
    /// **Source.** Common practice, no source; ABYC H-24 and ISO 10088 treat siphoning (from memory).
    ///
    /// **When it warns.** It warns of what is missing.
    ONE_FEED = Fuel "fuel/one-feed", judge;
}

fn judge(case: &Case) -> Judgement {
    let rig = told(case)?;
    let mut missing = Vec::new();
    if rig.lines.is_empty() {
        missing.push(Missing::one(reading!(rigging::FuelRig.lines)));
    }
    if case.rig.after.mains().is_empty() {
        missing.push(case.rig.after.missing());
    }
    if !missing.is_empty() {
        return Ok(Finding::unmeasured(missing));
    }
    let engines = burning(case).len();
    let mut wrong: Vec<Text> = Vec::new();
    // An auxiliary engine's own line feeds no main one.
    let to_mains = rig.lines.iter().filter(|line| line.to != Some(Role::Auxiliary));
    let fed: usize = to_mains.map(|line| usize::from(line.engines.unwrap_or(1))).sum();
    if fed < engines {
        wrong.push(say!("{} of {} engines have a line", fed, engines));
    }
    let mut buy: Vec<(&str, Text)> = Vec::new();
    for (i, line) in rig.lines.iter().enumerate() {
        let name = line_name(line, i);
        // The first one begins the sentence.
        let head = |first: bool| if first { capitalised(&name) } else { name.clone() };
        if line.engines.unwrap_or(1) > 1 {
            let name = head(wrong.is_empty());
            wrong.push(say!("{} feeds {} engines", name.as_str(), u32::from(line.engines.unwrap_or(1))));
            let more = line.engines.unwrap_or(1) - 1;
            let long = line
                .length
                .as_ref()
                .map_or(Text::default(), |length| say!(", {}", Measure::styled(length.value, Style::FeetInches)));
            buy.push((
                "fuel line with its own pick-up, valve, separator and bulb",
                say!("{} more", u32::from(more)).then(long),
            ));
        }
        for (there, what, size) in [
            (line.separator, "water separator", "for the engine's flow, 10 micron where its manual says no other"),
            (line.bulb, "primer bulb", "for the hose's inside"),
            (line.anti_siphon, "anti-siphon valve", "for the engine's flow, at the tank"),
        ] {
            if there == Some(false) {
                let name = head(wrong.is_empty());
                wrong.push(say!("{} has no {}", name.as_str(), what));
                buy.push((what, Text::from(size)));
            }
        }
    }
    if wrong.is_empty() {
        return Ok(Finding::new(
            Verdict::Pass,
            if engines == 1 {
                Text::from("The engine has a line of its own.")
            } else {
                say!("Each of {} engines has a line of its own.", engines)
            },
        ));
    }
    let shared = fed < engines || rig.lines.iter().any(|line| line.engines.unwrap_or(1) > 1);
    let words = if shared {
        Text::from("Give each engine its own line from its own pick-up, with valve, separator and bulb.")
    } else {
        let what: Vec<Text> = buy.iter().map(|(what, _)| Text::from(*what)).collect();
        Text::from("Fit what is missing: ").then(Text::join(what, ", ")).then(Text::from("."))
    };
    let finding = Finding::new(Verdict::Warn, Text::join(wrong, "; ").then(Text::from(".")))
        .remedy(mend::change(words, fed_alone(rig, engines)));
    Ok(buy.into_iter().fold(finding, |finding, (what, size)| finding.buys(what, size)))
}

/// Every line for one engine, with all that belongs to it, and a line more like the last for each engine that has none.
fn fed_alone(rig: &rigging::FuelRig, engines: usize) -> Vec<Change> {
    let mut changes = Vec::new();
    let to_mains = |line: &rigging::FuelLine| line.to != Some(Role::Auxiliary);
    for i in 0..rig.lines.len() {
        let entry = |field: &str| format!("rigging.fuel.lines[{i}].{field}");
        changes.push(Change::to(entry("engines"), "1"));
        for (there, field) in [
            (rig.lines[i].separator, "separator"),
            (rig.lines[i].bulb, "bulb"),
            (rig.lines[i].anti_siphon, "anti_siphon"),
        ] {
            if there == Some(false) {
                changes.push(Change::to(entry(field), "true"));
            }
        }
    }
    if let Some(last) = rig.lines.iter().rfind(|line| to_mains(line)) {
        let like = [("engines", "1"), ("separator", "true"), ("bulb", "true"), ("anti_siphon", "true")];
        let like = like.map(|(field, value)| (field, value.to_owned()));
        let own = rig.lines.iter().filter(|line| !to_mains(line)).count();
        for i in rig.lines.len()..engines + own {
            changes.push(Change::to(format!("rigging.fuel.lines[{i}]"), mend::described(last, &like)));
        }
    }
    changes
}
