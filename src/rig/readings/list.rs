//! A list of readings, each with its basis and tolerance.

use super::{Taken, TakenGroup, Value};
use crate::job::{Plate, Span};
use crate::quantity::{Dimensioned, Measure, Reading, Style, Text, say};
use crate::rig::Slot;

/// The readings of one thing, as they are gathered.
#[derive(Default)]
pub(super) struct List(Vec<Taken>);

impl List {
    pub fn push(&mut self, taken: Taken) {
        self.0.push(taken);
    }

    pub fn number<Q: Dimensioned>(&mut self, slot: &Slot<Reading<Q>>, style: Style) {
        self.reading(slot.measurement().name, slot.reading(), style);
    }

    pub fn reading<Q: Dimensioned>(&mut self, name: &str, reading: Option<&Reading<Q>>, style: Style) {
        if let Some(reading) = reading {
            self.reading_named(Text::from(name), reading, style);
        }
    }

    pub fn reading_named<Q: Dimensioned>(&mut self, name: Text, reading: &Reading<Q>, style: Style) {
        let tolerance = reading.tolerance.map(|off| Measure::styled(off, style));
        self.push(Taken {
            name,
            value: Value::Number(reading.measure(style), tolerance),
            basis: Some(reading.basis),
            note: reading.note.as_deref().map(str::to_owned),
        });
    }

    pub fn span<Q: Dimensioned>(&mut self, slot: &Slot<Span<Q>>, style: Style) {
        if let Some(span) = slot.reading() {
            self.push(Taken {
                name: Text::from(slot.measurement().name),
                value: Value::Range(span.from.measure(style), span.to.measure(style)),
                basis: Some(span.from.basis),
                note: None,
            });
        }
    }

    pub fn words<T>(&mut self, slot: &Slot<T>, words: impl Fn(&T) -> Text) {
        if let Some(value) = slot.reading() {
            self.said(slot.measurement().name, words(value));
        }
    }

    pub fn said(&mut self, name: &str, words: Text) {
        self.push(Taken { name: Text::from(name), value: Value::Words(words), basis: None, note: None });
    }

    pub fn plate(&mut self, plate: &Plate) {
        match plate {
            Plate::Capacity { persons, persons_weight, total_weight, power } => {
                self.said("plate", Text::from("US capacity plate"));
                self.persons(*persons);
                self.reading("persons' weight on the plate", persons_weight.as_ref(), Style::Plain);
                self.reading("total weight on the plate", total_weight.as_ref(), Style::Plain);
                self.reading("power on the plate", power.as_ref(), Style::Plain);
            }
            Plate::Builders { persons, load, power } => {
                self.said("plate", Text::from("builder's plate"));
                self.persons(*persons);
                self.reading("load on the plate", load.as_ref(), Style::Plain);
                self.reading("power on the plate", power.as_ref(), Style::Plain);
            }
            Plate::None => self.said("plate", Text::from("none")),
            Plate::Illegible => self.said("plate", Text::from("cannot be read")),
        }
    }

    fn persons(&mut self, persons: Option<u16>) {
        if let Some(persons) = persons {
            self.said("persons on the plate", say!("{}", u32::from(persons)));
        }
    }

    pub fn under(self, of: &str) -> TakenGroup {
        TakenGroup { of: of.to_owned(), readings: self.0 }
    }
}
