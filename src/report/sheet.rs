//! The measuring list: what is missing, where it is taken, how, and what waits for it.

use crate::job;
use crate::rig::Missing;
use crate::rules::Judged;

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

/// The list in text.
pub fn measuring_list(title: &str, judged: &[Judged]) -> String {
    let waiting = waiting(judged);
    if waiting.is_empty() {
        return format!("{}\nNo reading is missing.\n", wrap(title, ""));
    }
    let mut out = format!("{}\n", wrap(title, ""));
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
        out.push_str(&block("field", job::path(measurement)));
        out.push_str(&block("decides", &entry.rules.join(", ")));
    }
    out
}
