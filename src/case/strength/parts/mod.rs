//! The whole working of strength, part by part.

mod footing;
mod panel;
mod sweep;

use uom::si::f64::Ratio;

use super::show::{layers, ratio, stiffness, times, write_stiffness};
use super::{Laden, Part as AtBolt, Strength, Way};
use crate::case::Case;
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::rig::Rig;
use crate::working::{Part, Sheet, Table};

pub use footing::FROM_WORK;
pub use panel::{ply, solved, support};
pub use sweep::sweep_part;

impl AtBolt {
    /// Every part, in the order of a report.
    pub const ALL: [AtBolt; 7] =
        [AtBolt::Tension, AtBolt::Shear, AtBolt::Combined, AtBolt::Bearing, AtBolt::Crush, AtBolt::Punch, AtBolt::Tear];

    /// What gives way.
    pub fn words(self) -> &'static str {
        match self {
            AtBolt::Tension => "bolts, pulled",
            AtBolt::Shear => "bolts, sheared",
            AtBolt::Combined => "bolts, pulled and sheared",
            AtBolt::Bearing => "core, pressed by the bolts' shanks",
            AtBolt::Crush => "core, pressed in under washers or plate",
            AtBolt::Punch => "transom, punched through by washers or plate",
            AtBolt::Tear => "transom, torn out to its top edge",
        }
    }
}

impl Strength {
    /// Every part's least factor, after and before, with its case: those of the panel last.
    pub fn factors(&self, rig: &Rig) -> Vec<(&'static str, f64, Option<f64>, &'static str)> {
        let before = self.before.as_ref().ok();
        let mut all: Vec<_> = AtBolt::ALL
            .into_iter()
            .filter_map(|way| {
                let worst = self.after.worst(way, rig, self)?;
                let old = before.and_then(|laden| laden.worst(way, rig, self)).map(|worst| worst.factor());
                Some((way.words(), worst.factor(), old, self.after.cases[worst.case].name()))
            })
            .collect();
        all.extend(Way::ALL.map(|way| {
            let (case, used) = self.after.bent.worst(way);
            let old = before.map(|laden| laden.bent.factor(way));
            (way.words(), used.factor(), old, self.after.cases[case].name())
        }));
        all
    }

    /// The part that gives way first. A washer that sinks in does not give way.
    pub fn governing(&self, rig: &Rig) -> Option<(&'static str, f64, Option<f64>, &'static str)> {
        let ways = self.factors(rig).into_iter().filter(|(words, ..)| *words != AtBolt::Crush.words());
        ways.into_iter().min_by(|a, b| a.1.total_cmp(&b.1))
    }
}

impl Case<'_> {
    /// The working of strength: studies, loads, bolts, panel, core.
    pub fn strength_parts(&self) -> Vec<Part> {
        let mut parts = self.strength_study_parts();
        match self.strength() {
            Ok(strength) => parts.extend(strength.parts(self.rig)),
            Err(_) if !parts.is_empty() => {}
            Err(no) => parts.push(Part::said("strength", no.words())),
        }
        parts
    }
}

impl Strength {
    fn parts(&self, rig: &Rig) -> Vec<Part> {
        let mut parts = vec![self.summary(rig)];
        if let Ok(before) = &self.before {
            parts.extend(outfit("before", before, self));
        }
        parts.extend(outfit("after", &self.after, self));
        parts.push(self.core_part());
        parts
    }

    fn summary(&self, rig: &Rig) -> Part {
        let mut sheet = self.sheet.clone();
        for text in &self.assumed {
            sheet.remark(say!("assumed: ").then(text.clone()));
        }
        if let Err(why) = &self.before {
            sheet.remark(say!("nothing stands beside it from before: ").then(why.clone()));
        }
        let rows = self
            .factors(rig)
            .into_iter()
            .map(|(words, after, before, case)| {
                vec![
                    Text::from(words),
                    before.map_or(Text::from("–"), ratio),
                    ratio(after),
                    before.map_or(Text::from("–"), |before| times(before, after)),
                    Text::from(case),
                ]
            })
            .collect();
        Part {
            title: "what gives way first".to_owned(),
            tables: vec![Table::new(
                "strength over load, before and after",
                &["part", "before", "after", "after / before", "governing case"],
                rows,
            )],
            sheet,
        }
    }

    fn core_part(&self) -> Part {
        let mut sheet = Sheet::default();
        for word in &self.core.words {
            sheet.remark(word.clone());
        }
        let left = self.core.left;
        let ratio = |value: f64| Measure::of(Ratio::from_si(value));
        sheet.remark(say!(
            "left of the core's stiffness: {}; of its strength: {}",
            ratio(left.stiffness),
            ratio(left.strength)
        ));
        let names: Vec<&str> = self.board.layers.iter().map(|layer| layer.material.name.as_str()).collect();
        let section = &self.after.bent.panels.braced().panel().section;
        let mut tables = section.layup.iter().flat_map(|layup| layers(&names, layup)).collect::<Vec<_>>();
        tables.push(stiffness("stiffness of a unit of width, core as read", &section.stiffness));
        write_stiffness(&mut sheet, section);
        Part { title: "the transom and its core".to_owned(), tables, sheet }
    }
}

fn outfit(when: &str, laden: &Laden, strength: &Strength) -> Vec<Part> {
    let mut parts: Vec<Part> =
        laden.footings.iter().flat_map(|footing| footing::parts(when, footing, laden, &strength.board)).collect();
    parts.push(panel::part(when, laden, strength));
    parts
}
