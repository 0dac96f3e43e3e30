//! What findings are worth, in words: figures with what they are worth, what a verdict hangs on, what to take again first.

use super::{Report, counted};
use crate::quantity::{Compared, Measure, Style, Text, Units, capitalised, say};
use crate::rules::{Decides, Judged, Limit, Verdict, measure_next};

/// How many readings are named that a verdict hangs on.
const NAMED: usize = 2;
/// How many readings are named that are to be taken again.
const NEXT: usize = 6;
/// A reading with less of a finding's doubt than this is not counted among those that decide it.
const PART: f64 = 0.1;

/// Found, limit and margin of a finding, each with its name, with what they are worth where that was asked. The printed
/// margin is what is left between the printed figures.
pub(super) fn figures(judged: &Judged, units: Units) -> Vec<(&'static str, String)> {
    let (finding, doubt) = (&judged.finding, judged.doubt.as_ref());
    let (least, most) = match finding.limit {
        Some(Limit::AtMost(most)) => (None, Some(most)),
        Some(Limit::AtLeast(least)) => (Some(least), None),
        Some(Limit::Within(least, most)) => (Some(least), Some(most)),
        None => (None, None),
    };
    let Some((found, limit)) = finding.found.zip(finding.limit) else {
        let found = finding.found.map(|found| ("found", found.show(units)));
        return [found, finding.limit.map(|limit| ("limit", limit.show(units)))].into_iter().flatten().collect();
    };
    let told = Compared::of(found, least, most, units);
    let worth = |figure: String, true_figure: Measure, worth: Option<Measure>| match worth {
        Some(worth) if true_figure.style == Style::Factor => true_figure.show_with(worth, units),
        Some(worth) => format!("{figure} ± {}", worth.show(units)),
        None => figure,
    };
    let limit_words = match (told.least, told.most) {
        (Some(least), Some(most)) => format!("{least} to {most}"),
        (Some(least), None) => format!("at least {least}"),
        (None, most) => format!("at most {}", most.unwrap_or_default()),
    };
    vec![
        ("found", worth(told.found, found, doubt.and_then(|doubt| doubt.found))),
        ("limit", limit_words),
        ("margin", worth(told.room, limit.margin(found), doubt.and_then(|doubt| doubt.room))),
    ]
}

/// One of these figures.
pub(super) fn figure(judged: &Judged, name: &str, units: Units) -> Option<String> {
    figures(judged, units).into_iter().find(|(known, _)| *known == name).map(|(_, figure)| figure)
}

/// How firm a verdict is, behind its word: `pass, firm`. Nothing where that was not asked.
pub(super) fn firmness(judged: &Judged) -> &'static str {
    match &judged.doubt {
        Some(doubt) if !judged_outright(judged) || doubt.is_firm() && doubt.decides.is_empty() => "",
        Some(doubt) if doubt.is_firm() => ", firm",
        Some(_) => ", not firm",
        None => "",
    }
}

fn judged_outright(judged: &Judged) -> bool {
    matches!(judged.finding.verdict, Verdict::Fail | Verdict::Warn | Verdict::Pass)
}

/// What a verdict hangs on that does not hold within what its readings are worth; nothing where it holds.
pub(super) fn hangs_on(judged: &Judged) -> Option<Text> {
    let doubt = judged.doubt.as_ref()?;
    let otherwise = doubt.otherwise?;
    let lead = say!("As closely as its readings were taken, this may also be {}.", otherwise.word());
    let most: Vec<&Decides> = doubt.decides.iter().filter(|decides| decides.share >= PART).take(NAMED).collect();
    Some(most.into_iter().fold(lead, |text, decides| text.then(say!(" ")).then(decided(decides))))
}

fn decided(decides: &Decides) -> Text {
    let reading = &decides.reading;
    let text = say!(
        "{}, ± {}, brings {} % of the doubt",
        capitalised(&reading.name),
        reading.tolerance,
        format!("{:.0}", 100.0 * decides.share)
    );
    match decides.settles {
        Some(closely) => text.then(say!("; taken to ± {} it settles it.", closely)),
        None => text.then(say!(".")),
    }
}

/// What to take again first, a line a reading.
pub(super) fn next(report: &Report) -> Vec<Text> {
    let lines = measure_next(report.judged).into_iter().take(NEXT).map(|(taken, _)| {
        let decided = report.judged.iter().filter_map(|judged| judged.doubt.as_ref()).filter(|doubt| {
            !doubt.is_firm()
                && doubt.decides.iter().any(|decides| decides.reading.path == taken.path && decides.share >= PART)
        });
        let many = counted(decided.count(), "verdict hangs", "verdicts hang");
        say!("{}: {} ± {} now; {} on it", taken.name.as_str(), taken.value, taken.tolerance, many)
    });
    lines.collect()
}

/// How many findings pass as read, but not within what their readings are worth.
pub(super) fn undecided<'r>(report: &'r Report) -> impl Iterator<Item = &'r Judged> {
    report.with(Verdict::Pass).filter(|judged| judged.doubt.as_ref().is_some_and(|doubt| !doubt.is_firm()))
}
