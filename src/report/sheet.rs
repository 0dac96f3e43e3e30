//! The measuring list: what is missing, where it is taken, how, and what waits for it.

use std::sync::Arc;

use crate::job;
use crate::quantity::{Measure, Units};
use crate::rig::Missing;
use crate::rules::{Judged, Taken, measure_next};

use super::plain;
use super::text::{block, one_line, wrap};

/// A missing reading and the rules that wait for it.
pub struct Waiting<'a> {
    /// The reading.
    pub missing: &'a Missing,
    /// The rules' ids.
    pub rules: Vec<&'static str>,
}

/// The missing readings, those that most rules wait for first; among equals in the order of one walk
/// round the boat.
pub fn waiting(judged: &[Judged]) -> Vec<Waiting<'_>> {
    let mut all: Vec<Waiting> = Vec::new();
    for one in judged {
        for missing in &one.finding.missing {
            match all.iter_mut().find(|waiting| waiting.missing == missing) {
                Some(waiting) => waiting.rules.push(one.rule.id),
                None => all.push(Waiting { missing, rules: vec![one.rule.id] }),
            }
        }
    }
    all.sort_by_key(|waiting| (std::cmp::Reverse(waiting.rules.len()), job::order(waiting.missing.measurement)));
    all
}

/// A reading that was taken, and on whose closeness verdicts hang.
pub(super) struct Again {
    /// The reading.
    pub taken: Arc<Taken>,
    /// How closely it has to be taken for one verdict at least, where it alone can do that.
    pub closely: Option<Measure>,
    /// The rules' ids.
    pub rules: Vec<&'static str>,
}

/// The readings to take again, those that remove most doubt of verdicts first; none where it was not asked how sure they are.
pub(super) fn again(judged: &[Judged]) -> Vec<Again> {
    let all = measure_next(judged).into_iter().map(|(taken, _)| {
        let mut again = Again { taken, closely: None, rules: Vec::new() };
        for one in judged {
            let Some(doubt) = one.doubt.as_ref().filter(|doubt| !doubt.is_firm()) else { continue };
            for decides in doubt.decides.iter().filter(|decides| Arc::ptr_eq(&decides.reading, &again.taken)) {
                let wider = |known: Measure| decides.settles.is_none_or(|other| other.si > known.si);
                if again.closely.is_none_or(wider) {
                    again.closely = decides.settles;
                }
                again.rules.push(one.rule.id);
            }
        }
        again
    });
    all.filter(|again| !again.rules.is_empty()).collect()
}

/// The list in text.
pub fn measuring_list(title: &str, judged: &[Judged], units: Units) -> String {
    let waiting = waiting(judged);
    let mut out = format!("{}\n", wrap(title, ""));
    if waiting.is_empty() {
        out.push_str("No reading is missing.\n");
    } else {
        list_waiting(&mut out, &waiting);
    }
    let again = again(judged);
    if !again.is_empty() {
        out.push_str(&wrap(
            "\nReadings to take again, more closely: those that remove most doubt of what this boat is told come first.",
            "",
        ));
    }
    for (i, Again { taken, closely, rules }) in again.iter().enumerate() {
        out.push_str(&format!("\n{:>3}. {}\n", i + 1, one_line(&taken.name)));
        out.push_str(&block("now", &format!("{} ± {}", taken.value.show(units), taken.tolerance.show(units))));
        out.push_str(&block("where", taken.declared.place()));
        out.push_str(&block("how", taken.declared.how()));
        match closely {
            Some(closely) => out.push_str(&block("to", &format!("within {}", closely.show(units)))),
            None => out.push_str(&block("to", "as closely as can be: alone it settles nothing")),
        }
        out.push_str(&block("field", &format!("`{}`", taken.path)));
        out.push_str(&block("decides", &plain::names(rules)));
    }
    out
}

fn list_waiting(out: &mut String, waiting: &[Waiting]) {
    out.push_str(&wrap(
        "Readings still missing, those that most checks wait for first. Write each into the job with its unit; a tolerance may stand behind it.",
        "",
    ));
    for (i, entry) in waiting.iter().enumerate() {
        let measurement = entry.missing.measurement;
        let name = one_line(&entry.missing.name());
        out.push_str(&format!("\n{:>3}. {name}\n", i + 1));
        out.push_str(&block("where", measurement.place()));
        out.push_str(&block("how", measurement.how()));
        if let Some(closely) = measurement.closely {
            out.push_str(&block("to", &format!("within {closely}")));
        }
        out.push_str(&block("field", &format!("`{}`", job::path(measurement))));
        out.push_str(&block("decides", &plain::names(&entry.rules)));
    }
}
