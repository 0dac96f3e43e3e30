//! The weights that come off and go on, item by item.

use super::Case;
use crate::quantity::{Measure, Text, say};
use crate::rig::Outfit;
use crate::working::{Part, Table};

impl Case<'_> {
    /// The ledger of what hangs aft before and after.
    pub fn weights(&self) -> Vec<Part> {
        let mut parts = vec![part("before", &self.rig.before), part("after", &self.rig.after)];
        match self.float() {
            Ok(float) => parts.extend(float.ledger_parts()),
            Err(no_float) if self.rig.floats() => {
                parts.push(Part::said("the whole boat", no_float.words()));
            }
            Err(_) => {}
        }
        parts
    }
}

fn part(title: &str, outfit: &Outfit) -> Part {
    let measure = |measure: Option<Measure>| measure.map_or(Text::from("not given"), Text::from);
    let mut rows = Vec::new();
    for (_, engine) in outfit.engines() {
        let weight = engine.weight.reading();
        rows.push(vec![
            say!("{}, {}", engine.label.as_str(), engine.class.as_str()),
            measure(weight.map(|weight| Measure::of(weight.value))),
            Text::from(Measure::tape(engine.y)),
            Text::from(weight.map_or("", |weight| weight.basis.word())),
        ]);
    }
    for bracket in outfit.groups.iter().filter_map(|group| group.bracket.as_ref()) {
        let weight = bracket.weight.reading();
        rows.push(vec![
            Text::from(bracket.name.as_str()),
            measure(weight.map(|weight| Measure::of(weight.value))),
            Text::default(),
            Text::from(weight.map_or("", |weight| weight.basis.word())),
        ]);
    }
    for entry in &outfit.items {
        let weight = entry.weight.reading();
        rows.push(vec![
            Text::from(entry.item.what.as_str()),
            measure(weight.map(|weight| Measure::of(weight.value))),
            entry.item.across.as_ref().map_or(Text::default(), |across| Text::from(Measure::tape(across.y()))),
            Text::from(weight.map_or("", |weight| weight.basis.word())),
        ]);
    }
    Part {
        title: title.to_owned(),
        tables: vec![Table::new(
            "engines, brackets and what goes with them",
            &["item", "weight", "to port of centre", "basis"],
            rows,
        )],
        ..Part::default()
    }
}
