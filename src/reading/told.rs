//! Everything that a job tells, reading by reading, each with a name that a person understands.

use std::collections::HashMap;

use super::{Declared, Number, Part, Place, Value};
use crate::quantity::{Basis, Text, say};

/// What a job tells at one place.
#[derive(Clone, Debug)]
pub struct Told<'v> {
    /// Where it is written: `engines_on[0].setback`.
    pub path: String,
    /// What it is of: the field of the job, and which entry of it where it is a list of things.
    pub of: (&'static Declared, Option<String>),
    /// What is said of it where it is declared.
    pub declared: &'static Declared,
    /// Which of several in it: "section 3, chine".
    pub which: String,
    /// What is said behind its number: "to port".
    pub beside: Option<&'static str>,
    /// What it tells; never a list, what a thing is called, or what is said beside another.
    pub value: Value<'v>,
}

impl Told<'_> {
    /// Its name: "half-breadth (section 3, chine)".
    pub fn name(&self) -> String {
        self.named(self.of.1.as_deref())
    }

    /// Its name among the readings of the same entry: without what that is called.
    pub fn name_within(&self) -> String {
        self.named(None)
    }

    fn named(&self, entry: Option<&str>) -> String {
        let which = Some(self.which.as_str()).filter(|which| !which.is_empty());
        let which: Vec<&str> = which.into_iter().chain(entry).collect();
        let name = self.declared.words();
        if which.is_empty() { name } else { format!("{name} ({})", which.join(", ")) }
    }

    /// Where it is from; nothing for what was chosen or counted.
    pub fn basis(&self) -> Option<Basis> {
        self.number().map(|number| number.basis)
    }

    /// What was noted of it.
    pub fn notes(&self) -> Vec<&str> {
        match &self.value {
            Value::Number(number) => number.note.into_iter().collect(),
            Value::Range(from, to) => from.note.into_iter().chain(to.note).collect(),
            _ => Vec::new(),
        }
    }

    /// Its number; of a range, the lesser.
    pub fn number(&self) -> Option<&Number<'_>> {
        match &self.value {
            Value::Number(number) | Value::Range(number, _) => Some(number),
            _ => None,
        }
    }

    /// Whether nobody looked, of a range at either end.
    pub fn is_assumed(&self) -> bool {
        match &self.value {
            Value::Number(number) => number.basis == Basis::Assumed,
            Value::Range(from, to) => from.basis == Basis::Assumed || to.basis == Basis::Assumed,
            _ => false,
        }
    }
}

impl Told<'_> {
    /// What it says, in words and numbers; nothing where there is nothing to say.
    pub fn text(&self) -> Text {
        let text = match &self.value {
            Value::Number(number) => number.measure(self.declared).into(),
            Value::Range(from, to) => say!("{} to {}", from.measure(self.declared), to.measure(self.declared)),
            Value::Count(count) => Text::from(count.to_string().as_str()),
            Value::Word(words) | Value::Beside(words) => Text::from(*words),
            Value::Text(text) => Text::from(*text),
            Value::Flag(_) => Text::from("yes"),
            Value::List(_) => Text::default(),
        };
        match self.beside {
            Some(beside) => text.then(say!(" {}", beside)),
            None => text,
        }
    }
}

/// Everything that a part tells, in the order of its declaration.
pub fn told<'v>(part: &'v impl Part) -> Vec<Told<'v>> {
    let mut teller = Teller::default();
    part.visit(&Place::root(""), &mut |at, value| teller.see(at, value));
    teller.told
}

#[derive(Default)]
struct Teller<'v> {
    told: Vec<Told<'v>>,
    /// What shall be said behind the number that comes next.
    beside: Option<&'static str>,
    /// What entries of lists are called, by their paths.
    labels: HashMap<String, &'v str>,
    /// How many entries each list has.
    counts: HashMap<String, usize>,
}

impl<'v> Teller<'v> {
    fn see(&mut self, at: &Place<'_>, value: Value<'v>) {
        let path = at.path();
        let Some(declared) = at.declared() else { return };
        match value {
            Value::List(count) => {
                self.counts.insert(path, count);
                return;
            }
            Value::Text(text) if declared.is_label => {
                let of = path.rfind('.').map_or("", |end| &path[..end]);
                self.labels.insert(of.to_owned(), text);
                return;
            }
            Value::Flag(false) => return,
            Value::Beside(words) => {
                self.beside = Some(words);
                return;
            }
            // The ends of a range were told with it.
            Value::Number(_) if at.own().is_none() && matches!(self.told.last(), Some(last) if is_end(last, &path)) => {
                return;
            }
            _ => {}
        }
        let (of, which) = self.standing(at);
        let beside = self.beside.take();
        self.told.push(Told { path, of: of.unwrap_or((declared, None)), declared, which, beside, value });
    }

    /// The field of the job, with the entry of it, and which of several it is.
    fn standing(&self, at: &Place<'_>) -> (Option<(&'static Declared, Option<String>)>, String) {
        let mut chain: Vec<&Place> = at.chain().collect();
        chain.reverse();
        let mut names = Vec::new();
        let mut field: Option<&'static Declared> = None;
        let mut of: Option<(&'static Declared, Option<String>)> = None;
        for place in chain {
            if let Some(declared) = place.own() {
                field = Some(declared);
                of = of.or(Some((declared, None)));
                if declared.names_parts {
                    names.push(declared.words());
                }
            }
            if let (Some(index), Some(list)) = (place.index(), field) {
                let path = place.path();
                let several =
                    path.rfind('[').and_then(|end| self.counts.get(&path[..end])).is_none_or(|count| *count > 1);
                let label = self.labels.get(&path).map(|label| (*label).to_owned());
                let number = several.then(|| format!("{} {}", list.words(), index + 1));
                let name = label.or(number);
                match &mut of {
                    Some((top, entry @ None)) if *top == list => *entry = name,
                    _ => names.extend(name),
                }
            }
        }
        (of, names.join(", "))
    }
}

/// Whether this path is an end of the range that was told last.
fn is_end(last: &Told, path: &str) -> bool {
    matches!(last.value, Value::Range(..))
        && path.strip_prefix(last.path.as_str()).is_some_and(|end| matches!(end, ".from" | ".to"))
}
