//! An option as somebody would write it into the job.

use super::yard::stays;
use super::{Hang, Yard};
use crate::job::Bolting;
use crate::quantity::{Measure, Units, inches};
use crate::written::Page;

impl Hang {
    /// The entries of the job that make it this option, each with its value as it is written. What goes over from the job's own
    /// engines is copied from its page.
    pub fn entries(&self, yard: &Yard, page: &Page) -> Vec<(String, String)> {
        let main = format!("({})", self.fields(yard, page).join(", "));
        let stays = stays(yard.job);
        let others = yard.job.engines_on.iter().enumerate().filter(|(_, group)| stays(group));
        let others = others.map(|(i, _)| page.slice(&format!("engines_on[{i}]")).to_owned());
        let groups: Vec<String> = std::iter::once(main).chain(others).collect();
        let mut entries = vec![("engines_on".to_owned(), format!("[{}]", groups.join(", ")))];
        if let Some(speed) = self.speed(yard) {
            let value = format!(
                "(value: \"{speed} mph\", basis: assumed, note: \"by the root of the powers from the job's own engines\")"
            );
            entries.push(("operating.top_speed".to_owned(), value));
        }
        if let Some(length) = self.tie_bar(yard) {
            let length = Measure::of(inches(length)).show_exact(Units::Us);
            entries.push(("rigging.steering.tie_bar.length".to_owned(), format!("\"{length}\"")));
        }
        entries
    }

    fn fields(&self, yard: &Yard, page: &Page) -> Vec<String> {
        let own = yard.own();
        let keeps = self.keeps(yard);
        let copied =
            |field: &str| own.map(|(i, _)| format!("{field}: {}", page.slice(&format!("engines_on[{i}].{field}"))));
        let mut fields = vec![format!("class: {:?}", self.class)];
        if let Some(shaft) = self.shaft {
            fields.push(format!("shaft: \"{}\"", Measure::of(shaft).show_exact(Units::Us)));
        }
        let half = Measure::of(inches(0.5 * self.apart)).show_exact(Units::Us);
        fields.push(match self.count {
            1 => "at: [centre]".to_owned(),
            _ => format!("at: [port(\"{half}\"), starboard(\"{half}\")], propellers: [left, right]"),
        });
        if let Some(row) = self.row {
            fields.push(format!("holes_up: {row}"));
        }
        if let (Some((_, group)), true) = (own, keeps.engine) {
            let there = [
                ("weighed", group.weighed.is_some()),
                ("sheet", group.sheet.is_some()),
                ("propeller", group.propeller.is_some()),
            ];
            fields.extend(there.iter().filter(|(_, there)| *there).filter_map(|(field, _)| copied(field)));
        }
        match (own, &self.bracket) {
            (Some((_, group)), Some(_)) if keeps.bracket => {
                let there = [("bracket", true), ("setback", group.setback.is_some()), ("drop", group.drop.is_some())];
                fields.extend(there.iter().filter(|(_, there)| *there).filter_map(|(field, _)| copied(field)));
            }
            (_, Some(bracket)) => fields.push(format!("bracket: (class: {bracket:?})")),
            (_, None) => {}
        }
        if let Some((i, bolts)) = own.and_then(|(i, group)| Some((i, group.bolts.as_ref()?))) {
            fields.extend(if keeps.template { copied("bolts") } else { hardware(i, bolts, page) });
        }
        fields
    }
}

/// Bolts as they are bought.
fn hardware(i: usize, bolts: &Bolting, page: &Page) -> Option<String> {
    let there = [
        ("size", bolts.size.is_some()),
        ("grade", bolts.grade.is_some()),
        ("washer", bolts.washer.is_some()),
        ("washer_thickness", bolts.washer_thickness.is_some()),
        ("torque", bolts.torque.is_some()),
        ("thread", bolts.thread.is_some()),
        ("inserts", bolts.inserts.is_some()),
    ];
    let there = there.iter().filter(|(_, there)| *there);
    let all: Vec<String> =
        there.map(|(field, _)| format!("{field}: {}", page.slice(&format!("engines_on[{i}].bolts.{field}")))).collect();
    // An empty one says that the bolts were thought of: it is not the same as none.
    Some(format!("bolts: ({})", all.join(", ")))
}
