//! What is to be done about a finding: its words, and what they mean for the job.

use uom::si::f64::{Length, Mass, Power};

use crate::job::{Role, Sitting};
use crate::quantity::{Dimensioned, Measure, Text, Units, inches, pounds};
use crate::reading::{Part, Place, Value};
use crate::rig::{Engine, Group, Rig};
use crate::written::Draught;

/// What to do about a finding, in words, and each way that the words name.
#[derive(Clone, Debug, PartialEq)]
pub struct Remedy {
    /// What a person reads.
    pub words: Text,
    /// The ways; each is enough by itself.
    pub ways: Vec<Mend>,
}

/// One way of putting right what was found.
#[derive(Clone, Debug, PartialEq)]
pub enum Mend {
    /// These entries of the job become something else, all together; the finding then passes.
    Change(Vec<Change>),
    /// The remedy of the finding of this rule, which comes first and does this too.
    First(&'static str),
    /// Something is looked at, tried or measured once more.
    Look,
    /// Somebody has to say: a builder, a maker, a surveyor, the owner.
    Ask,
    /// Work at the boat for which no reading of the job stands.
    Yard,
    /// How she is handled: what is closed, drained, trimmed or left ashore for a while.
    Care,
}

/// An entry of the job, and what it becomes.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// `engines_on[0].setback`
    pub entry: String,
    /// As it is written in the job; nothing where the entry is taken out.
    pub value: Option<String>,
}

impl Mend {
    /// What kind of way it is, in a word.
    pub fn word(&self) -> &'static str {
        match self {
            Mend::Change(_) => "change",
            Mend::First(_) => "first",
            Mend::Look => "look",
            Mend::Ask => "ask",
            Mend::Yard => "yard",
            Mend::Care => "care",
        }
    }
}

impl Change {
    /// The entry becomes this.
    pub fn to(entry: impl Into<String>, value: impl Into<String>) -> Self {
        Change { entry: entry.into(), value: Some(value.into()) }
    }

    /// The entry becomes this number, as it is told.
    pub fn told(entry: impl Into<String>, measure: Measure) -> Self {
        Change::to(entry, quoted(measure))
    }

    /// The entry is taken out.
    pub fn out(entry: impl Into<String>) -> Self {
        Change { entry: entry.into(), value: None }
    }

    /// The thing at this entry, whether of a class or described, becomes one like it with these fields changed.
    pub fn like(entry: &str, thing: &impl Part, fields: &[(&str, String)]) -> [Change; 2] {
        [Change::out(format!("{entry}.class")), Change::to(format!("{entry}.described"), described(thing, fields))]
    }

    /// The thing at this entry becomes one of this class.
    pub fn class(entry: &str, class: &str) -> [Change; 2] {
        [Change::out(format!("{entry}.described")), Change::to(format!("{entry}.class"), format!("{class:?}"))]
    }
}

/// A thing as it would be described in a job, with these fields changed.
pub fn described(thing: &impl Part, fields: &[(&str, String)]) -> String {
    let mut draught = Draught::new("()");
    let mut classes: Vec<String> = Vec::new();
    let mut put = |path: &str, value: &str| {
        // A value that finds no place is left out: what then is missing is told.
        if let Ok(text) = draught.put(path, value) {
            draught = Draught::new(&text);
        }
    };
    thing.visit(&Place::root(""), &mut |place, value| {
        let written = match value {
            Value::Number(number) => place.declared().map(|declared| quoted(number.measure(declared))),
            Value::Count(count) => Some(count.to_string()),
            Value::Word(word) => Some(word.replace([' ', '-'], "_")),
            Value::Text(text) => Some(format!("{text:?}")),
            Value::Flag(flag) => Some(flag.to_string()),
            Value::Range(..) | Value::Beside(_) | Value::List(_) => None,
        };
        let path = place.path();
        // A class speaks for itself: what it stands for was put beside it when it was looked up.
        if let Some(thing) = path.strip_suffix(".class") {
            classes.push(format!("{thing}.described"));
        }
        if let Some(written) = written.filter(|_| !classes.iter().any(|described| path.starts_with(described))) {
            put(&path, &written);
        }
    });
    for (field, value) in fields {
        put(field, value);
    }
    draught.text().to_owned()
}

impl Remedy {
    /// These words with these ways.
    pub fn new(words: impl Into<Text>, ways: impl IntoIterator<Item = Mend>) -> Self {
        Remedy { words: words.into(), ways: ways.into_iter().collect() }
    }

    /// This, or the other.
    #[must_use]
    pub fn and_else(self, other: Remedy) -> Self {
        let words = Text::join([self.words, other.words], " ");
        Remedy { words, ways: self.ways.into_iter().chain(other.ways).collect() }
    }

    /// This and the other together: neither is enough by itself. Where they would make different things of one entry of the job,
    /// this one alone; it will tell the rest once it was done.
    #[must_use]
    pub fn and_too(self, other: Remedy) -> Self {
        let mut ways = Vec::new();
        for one in &self.ways {
            for two in &other.ways {
                let both = match (one, two) {
                    (Mend::Change(these), Mend::Change(those)) => {
                        let parted = |a: &Change| those.iter().any(|b| a.entry == b.entry && a.value != b.value);
                        if these.iter().any(parted) {
                            return self;
                        }
                        let more = those.iter().filter(|change| !these.contains(change));
                        Mend::Change(these.iter().chain(more).cloned().collect())
                    }
                    (Mend::Change(_), other) => other.clone(),
                    (one, _) => one.clone(),
                };
                if !ways.contains(&both) {
                    ways.push(both);
                }
            }
        }
        let said = self.words.show(Units::Both);
        let words = if said.contains(&other.words.show(Units::Both)) {
            self.words
        } else {
            Text::join([self.words, other.words], " ")
        };
        Remedy { words, ways }
    }
}

/// Something is looked at, tried or measured once more.
pub fn look(words: impl Into<Text>) -> Remedy {
    Remedy::new(words, [Mend::Look])
}

/// Somebody has to say.
pub fn ask(words: impl Into<Text>) -> Remedy {
    Remedy::new(words, [Mend::Ask])
}

/// Work for which no reading stands.
pub fn yard(words: impl Into<Text>) -> Remedy {
    Remedy::new(words, [Mend::Yard])
}

/// How she is handled.
pub fn care(words: impl Into<Text>) -> Remedy {
    Remedy::new(words, [Mend::Care])
}

/// What another finding asks for comes first.
pub fn first(words: impl Into<Text>, rule: &'static str) -> Remedy {
    Remedy::new(words, [Mend::First(rule)])
}

/// The job is changed so.
pub fn change(words: impl Into<Text>, changes: impl IntoIterator<Item = Change>) -> Remedy {
    Remedy::new(words, [Mend::Change(changes.into_iter().collect())])
}

/// A number as it stands in a job, as it is told: what somebody reads is what he will write.
pub fn quoted(measure: Measure) -> String {
    format!("\"{}\"", measure.show(Units::Us))
}

/// A length that is the sum of a reading and of what is told, to be written in a job.
pub fn exactly(length: Length) -> String {
    format!("\"{:.4} mm\"", length.si() * 1e3)
}

/// A place across the boat, to be written in a job.
pub fn across(y: Length) -> String {
    if y.si() == 0.0 {
        return "centre".to_owned();
    }
    let side = if y.si() > 0.0 { "port" } else { "starboard" };
    format!("{side}({})", exactly(y.abs()))
}

/// A mass, to be written in a job.
pub fn weighing(mass: Mass) -> String {
    format!("\"{:.4} kg\"", mass.si())
}

/// Main engines that are lighter by so much together; nothing where a weight is not known or none would be left.
pub fn lighter(rig: &Rig, by: Mass) -> Option<Vec<Change>> {
    let count: usize = rig.after.mains().len();
    let mut changes = Vec::new();
    for group in &rig.after.groups {
        let mains = group.engines.iter().find(|engine| engine.role == Role::Main);
        if let Some(engine) = mains {
            let left = engine.weight.reading()?.value - by / count as f64;
            if left.si() <= 0.0 {
                return None;
            }
            // Down to the digits that are written: together they are lighter by no less.
            let left = Mass::from_si((left.si() * 1e4).floor() / 1e4);
            changes.push(Change::to(format!("{}.weighed", group.entry), weighing(left)));
        }
    }
    (!changes.is_empty()).then_some(changes)
}

/// What is still to be ordered is chosen; what is fitted is changed.
pub fn choose(rig: &Rig) -> &'static str {
    if rig.job.sitting == Sitting::AsFitted { "Change to" } else { "Choose" }
}

/// Main engines like these of at most this power together; nothing where a power is not known.
pub fn weaker(rig: &Rig, most: Power) -> Option<Vec<Change>> {
    let powers: Option<Vec<Power>> =
        rig.after.mains().iter().map(|engine| Some(engine.power.reading()?.value)).collect();
    let all: Power = powers?.into_iter().fold(Power::from_si(0.0), |sum, one| sum + one);
    let mut changes = Vec::new();
    for (group, written) in rig.after.groups.iter().zip(&rig.job.engines_on) {
        let Some(main) = group.engines.iter().find(|engine| engine.role == Role::Main) else { continue };
        let power = main.power.reading()?.value * (most / all);
        let power = format!("\"{:.3} kW\"", power.si() / 1e3);
        changes.extend(Change::like(&group.entry, written.described.as_ref()?, &[("power", power)]));
    }
    (!changes.is_empty()).then_some(changes)
}

/// Rounded up to the next step of so many inches, with a little to spare: what is told is enough.
pub fn well_up(length: Length, step_in: f64) -> Length {
    up(length + inches(SPARE_IN), step_in)
}

/// What a boat that floats a little otherwise once something was changed may ask for besides. Common practice, no source.
const SPARE_IN: f64 = 0.125;

/// Rounded up to the next step of so many inches: what is told is enough.
pub fn up(length: Length, step_in: f64) -> Length {
    let step = inches(step_in);
    step * ((length / step).si() - HAIR).ceil()
}

/// Rounded down to the step of so many inches below: what is told is no more than allowed.
pub fn down(length: Length, step_in: f64) -> Length {
    let step = inches(step_in);
    step * ((length / step).si() + HAIR).floor()
}

/// Rounded up to the next whole pound: what is told is enough.
pub fn pounds_up(mass: Mass) -> Mass {
    let step = pounds(1.0);
    step * ((mass / step).si() - HAIR).ceil()
}

/// Part of a step that is rounding. Common practice, no source.
const HAIR: f64 = 1e-6;

/// The transom thicker by so much, in its thickest layer.
pub fn thicker(rig: &Rig, more: Length) -> Vec<Change> {
    let mut changes = Vec::new();
    if let Some(thickness) = &rig.job.transom.thickness {
        changes.push(Change::to("transom.thickness", exactly(thickness.value + more)));
    }
    let layers = rig.job.structure.as_ref().map_or(&[][..], |structure| &structure.lay_up);
    let thickest =
        layers.iter().enumerate().max_by(|a, b| a.1.thickness.value.si().total_cmp(&b.1.thickness.value.si()));
    if let Some((i, layer)) = thickest {
        changes.push(Change::to(format!("structure.lay_up[{i}].thickness"), exactly(layer.thickness.value + more)));
    }
    changes
}

/// Two engines set so far apart: an auxiliary away from the main engine, a pair both ways.
pub fn apart(rig: &Rig, one: (&Group, &Engine), other: (&Group, &Engine), needed: Length) -> Vec<Change> {
    let more = needed - (one.1.y - other.1.y).abs();
    let outward = if one.1.y > other.1.y { 1.0 } else { -1.0 };
    let share = |engine: &Engine, beside: &Engine| match (engine.role, beside.role) {
        (Role::Auxiliary, Role::Main) => 1.0,
        (Role::Main, Role::Auxiliary) => 0.0,
        _ => 0.5,
    };
    let at = |(group, engine): (&Group, &Engine), way: f64| {
        let place = group.engines.iter().position(|known| known.label == engine.label)?;
        let written = rig.job.engines_on.iter().zip(&rig.after.groups).find(|(_, known)| known.entry == group.entry)?.0;
        let entry = if written.at.is_empty() { "at".to_owned() } else { format!("at[{place}]") };
        let place = across(engine.y + more * way);
        let place = if written.at.is_empty() { format!("[{place}]") } else { place };
        (way != 0.0).then(|| Change::to(format!("{}.{entry}", group.entry), place))
    };
    let moved = [at(one, outward * share(one.1, other.1)), at(other, -outward * share(other.1, one.1))];
    moved.into_iter().flatten().collect()
}
