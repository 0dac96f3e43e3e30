//! One way in which main engines could hang, and the job that it makes.

use uom::si::f64::{Length, Power};

use super::Yard;
use super::yard::stays;
use crate::job::{Across, Bolting, EngineGroup, Hand, Hung, Job};
use crate::quantity::{Basis, Dimensioned, MILE, Measure, Reading, Text, inches, say};

/// A tape's finest mark, as a part of an inch.
pub(super) const MARK: f64 = 1.0 / 16.0;

/// Main engines of one class: how many, with which shaft, on what, how far apart, in which hole row.
#[derive(Clone, Debug, PartialEq)]
pub struct Hang {
    /// The class.
    pub class: String,
    /// Its rated power, each.
    pub power: Option<Power>,
    /// The shaft by the trade's name, where the class has several.
    pub shaft: Option<Length>,
    /// One, or two.
    pub count: usize,
    /// Distance of their centres, inches; nothing of one.
    pub apart: f64,
    /// The bracket's class; on the transom itself where there is none.
    pub bracket: Option<String>,
    /// How many holes up, where the class has rows.
    pub row: Option<u8>,
    /// What it costs, engines and bracket, where the price list says.
    pub price: Option<f64>,
}

/// What of the job's own engines goes over to an option.
#[derive(Clone, Copy)]
pub(super) struct Keeps {
    /// Weight on a scale, mounting sheet, propeller: of the very engine.
    pub engine: bool,
    /// Setback, drop, height: of the very bracket.
    pub bracket: bool,
    /// Where bolts stand, and the face.
    pub template: bool,
}

impl Hang {
    /// The job with these main engines in place of its own. Auxiliary engines stay. Bolts are the job's own as far as size, grade,
    /// washers and torque go, and wholly where they hold the same thing at the same place.
    ///
    /// Where the power is another, the greatest speed is that of the job's own engines by the root of the powers; a tie bar is made to
    /// fit the distance.
    pub fn job(&self, yard: &Yard) -> Job {
        let mut job = yard.job.clone();
        let others = job.engines_on.drain(..).filter(stays(yard.job)).collect::<Vec<_>>();
        job.engines_on.push(self.group(yard));
        job.engines_on.extend(others);
        if let (Some(speed), Some(operating)) = (self.speed(yard), &mut job.operating) {
            let note = "by the root of the powers from the job's own engines";
            operating.top_speed = Some(Reading::assumed(Dimensioned::from_si(speed * MPH), note));
        }
        let bar = job.rigging.steering.as_mut().and_then(|steering| steering.tie_bar.as_mut());
        if let (Some(length), Some(bar)) = (self.tie_bar(yard), bar) {
            bar.length = Some(plain(inches(length)));
        }
        job
    }

    pub(super) fn keeps(&self, yard: &Yard) -> Keeps {
        let own = yard.own().map(|(_, group)| group);
        let bracket = own.and_then(|own| own.bracket.as_ref());
        let same_bracket = match (&self.bracket, bracket) {
            (None, None) => own.is_some(),
            (Some(name), Some(hung)) => hung.class.as_ref() == Some(name),
            _ => false,
        };
        let same_places = own.is_some_and(|own| {
            let (mine, theirs) = (self.at(), own.places());
            mine.len() == theirs.len() && mine.iter().zip(&theirs).all(|(a, b)| a.y() == b.y())
        });
        Keeps {
            engine: own.is_some_and(|own| own.class.as_ref() == Some(&self.class)),
            bracket: same_bracket && self.bracket.is_some(),
            template: same_bracket && (self.bracket.is_some() || same_places),
        }
    }

    /// Greatest speed, whole miles an hour, where it is another than the job's.
    pub(super) fn speed(&self, yard: &Yard) -> Option<f64> {
        let told = yard.job.operating.as_ref()?.top_speed.as_ref()?;
        let (own, power) = (yard.power?.si(), self.power?.si() * self.count as f64);
        let speed = (told.value.si() * (power / own).sqrt() / MPH).round();
        (power != own && speed >= 1.0).then_some(speed)
    }

    /// Length of the tie bar, inches, where they stand farther apart or nearer than the job's own two: it is made to fit.
    pub(super) fn tie_bar(&self, yard: &Yard) -> Option<f64> {
        let told = yard.job.rigging.steering.as_ref()?.tie_bar.as_ref()?.length.as_ref()?;
        let own = own_distance(yard)?;
        (self.count == 2 && own != self.apart).then(|| nearest_mark(told.value + inches(self.apart - own)))
    }

    /// Where they stand, port first.
    pub(super) fn at(&self) -> Vec<Across> {
        let half = 0.5 * self.apart;
        let reading = || plain(inches(half));
        match self.count {
            1 => vec![Across::Centre],
            _ => vec![Across::Port(reading()), Across::Starboard(reading())],
        }
    }

    fn group(&self, yard: &Yard) -> EngineGroup {
        let own = yard.own().map(|(_, group)| group.clone()).unwrap_or_default();
        let keeps = self.keeps(yard);
        let mut group = EngineGroup {
            class: Some(self.class.clone()),
            shaft: self.shaft.map(plain),
            at: self.at(),
            propellers: if self.count == 2 { vec![Hand::Left, Hand::Right] } else { Vec::new() },
            holes_up: self.row,
            bracket: self.bracket.clone().map(|class| Hung { class: Some(class), ..Hung::default() }),
            bolts: own.bolts.as_ref().map(hardware),
            ..EngineGroup::default()
        };
        if keeps.engine {
            (group.weighed, group.sheet, group.propeller) = (own.weighed, own.sheet, own.propeller);
        }
        if keeps.bracket {
            (group.bracket, group.setback, group.drop) = (own.bracket, own.setback, own.drop);
        }
        if keeps.template {
            group.bolts = own.bolts;
        }
        group
    }

    /// In words: "two four-stroke 150 hp inline-4, 25 in shaft, 28 in apart, on a box bracket 30 in, twin, 2 holes up".
    pub fn words(&self) -> Text {
        let mut text = self.kind();
        if self.count > 1 {
            text = text.then(say!(", {} apart", Measure::tape(inches(self.apart))));
        }
        match self.row {
            Some(1) => text.then(Text::from(", 1 hole up")),
            Some(row) => text.then(say!(", {} holes up", u32::from(row))),
            None => text,
        }
    }

    /// The same without spacing and hole row.
    pub fn kind(&self) -> Text {
        let count = if self.count > 1 { "two " } else { "" };
        let mut text = say!("{}{}", count, self.class.as_str());
        if let Some(shaft) = self.shaft {
            text = text.then(say!(", {} shaft", Measure::tape(shaft)));
        }
        match &self.bracket {
            Some(bracket) => text.then(say!(", on {}", bracket.as_str())),
            None => text.then(Text::from(", on the transom")),
        }
    }

    /// Whether it differs from another in spacing and hole row alone.
    pub fn is_like(&self, other: &Hang) -> bool {
        self.class == other.class
            && self.count == other.count
            && self.shaft == other.shaft
            && self.bracket == other.bracket
    }
}

/// A mile an hour, m/s.
const MPH: f64 = MILE / crate::quantity::HOUR;

/// A reading as it is without a word said of it.
fn plain(value: Length) -> Reading<Length> {
    Reading { value, tolerance: None, written: None, basis: Basis::Measured, note: None }
}

/// Bolts as they are bought: what goes over to another place.
fn hardware(bolts: &Bolting) -> Bolting {
    Bolting { at: Vec::new(), face: None, backing_plate: None, ..bolts.clone() }
}

/// A length to a tape's finest mark, inches.
fn nearest_mark(length: Length) -> f64 {
    (length.si() / inches(1.0).si() / MARK).round() * MARK
}

/// Distance of the job's own two engines, where they stand alike to both sides, inches.
pub(super) fn own_distance(yard: &Yard) -> Option<f64> {
    let (_, group) = yard.own()?;
    match group.at.as_slice() {
        [Across::Port(a), Across::Starboard(b)] | [Across::Starboard(a), Across::Port(b)] if a.value == b.value => {
            Some(nearest_mark(2.0 * a.value))
        }
        _ => None,
    }
}
