//! The rigging list: what is to be bought, from which finding, and what comes out with the old engines.

use serde_json::{Value as Json, json};

use super::Report;
use crate::quantity::{Measure, Text, Units, say};
use crate::rules::{Judged, ToBuy, goes};

/// Something to buy, and what asks for it.
pub(super) struct Line<'r> {
    /// What, and of which size.
    pub buy: &'r ToBuy,
    /// The finding that asks for it.
    pub judged: &'r Judged,
}

impl Line<'_> {
    /// `fuel hose: 3/8 in inside (fuel suction)`
    pub(super) fn in_words(&self, units: Units) -> String {
        let from = self.judged.rule.full_name().replacen(": ", " ", 1).to_lowercase();
        format!("{}: {} ({from})", self.buy.what, self.buy.size.show(units))
    }
}

/// What is to be bought, in the order of the findings.
pub(super) fn to_buy<'r>(report: &'r Report) -> Vec<Line<'r>> {
    let lines = report.judged.iter().flat_map(|judged| judged.finding.buys.iter().map(move |buy| Line { buy, judged }));
    lines.collect()
}

/// What comes out with the old engines, and what stays of their rigging.
pub(super) fn comes_out(report: &Report) -> Vec<Text> {
    let rig = report.case.rig;
    let parts = rig.before.items.iter().filter(|entry| entry.item.part.is_some());
    let out = parts.map(|entry| {
        let count = usize::from(entry.item.count.unwrap_or(1));
        let weight = entry.weight.reading().map_or(Text::default(), |weight| say!(", {}", Measure::of(weight.value)));
        let what = entry.item.what.as_str();
        if count == 1 { say!("{}", what).then(weight) } else { say!("{} ({})", what, count).then(weight) }
    });
    let stays = rig.job.rigging.kept.iter().map(|kept| match goes(report.case, kept) {
        Some(why) => Text::from("goes too, ").then(why),
        None => say!("{} stays, after a look at it", kept.part.words()),
    });
    out.chain(stays).collect()
}

/// The list for another program.
pub(super) fn as_json(report: &Report) -> Json {
    let units = report.units;
    json!({
        "to_buy": to_buy(report).iter().map(|line| json!({
            "what": line.buy.what,
            "size": line.buy.size.show(units),
            "rule": line.judged.rule.id,
        })).collect::<Vec<_>>(),
        "comes_out": comes_out(report).iter().map(|text| text.show(units)).collect::<Vec<_>>(),
    })
}
