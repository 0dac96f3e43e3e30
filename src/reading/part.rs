//! What a job is made of, walked over by machine: by its types, and value by value.

use crate::quantity::{Basis, Dimensioned, Kind, Measure, Reading, Style};

use super::{Declared, Form};

/// Anything that a job is made of.
pub trait Part {
    /// The kind of its numbers, where they are of one kind; nothing where it is a count, words, or a thing.
    const KIND: Option<Kind> = None;

    /// What there is of it, where it is there.
    type Held;

    /// Its shape, whatever stands in it.
    fn form() -> Form;

    /// What there is of it; nothing where it was left out.
    fn held(&self) -> Option<&Self::Held>;

    /// Shows every value in it, in the order of its declaration.
    fn visit<'v>(&'v self, at: &Place<'_>, see: &mut See<'_, 'v>);

    /// Lets every reading in it be changed, in the order in which [`Part::visit`] shows them.
    fn change(&mut self, _change: &mut Change<'_>) {}

    /// Says of its plain numbers that they are from this basis.
    fn set_basis(&mut self, basis: Basis) {
        self.change(&mut |reading| {
            if reading.basis == Basis::Measured {
                reading.basis = basis;
            }
        });
    }
}

/// A part with fields.
pub trait Thing: Part {
    /// What is said of each of its fields.
    const FIELDS: &'static [Declared];
}

/// What looks at values: where each stands, and what it is.
pub type See<'s, 'v> = dyn FnMut(&Place<'_>, Value<'v>) + 's;

/// What changes readings, one by one.
pub type Change<'c> = dyn FnMut(&mut Loose) + 'c;

/// What may be changed of a reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loose {
    /// Its value in the coherent SI unit.
    pub si: f64,
    /// Where it is from.
    pub basis: Basis,
}

/// One value of a job.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Value<'v> {
    /// A reading.
    Number(Number<'v>),
    /// From one reading to another; both are shown by themselves too, behind it.
    Range(Number<'v>, Number<'v>),
    /// A count, or a number that has no unit.
    Count(f64),
    /// One of several words, as a report says it.
    Word(&'static str),
    /// What is said behind the number that follows: "to port".
    Beside(&'static str),
    /// What somebody wrote.
    Text(&'v str),
    /// Yes or no.
    Flag(bool),
    /// A list of so many entries; they follow.
    List(usize),
}

/// A reading, whatever its dimension.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Number<'v> {
    /// What sort of quantity it is.
    pub kind: Kind,
    /// Its value in the coherent SI unit.
    pub si: f64,
    /// How far off it may be, either way, in the same unit.
    pub tolerance: Option<f64>,
    /// Where it is from.
    pub basis: Basis,
    /// What was noted of it.
    pub note: Option<&'v str>,
}

impl Number<'_> {
    /// Its value as this field is shown.
    pub fn measure(&self, declared: &Declared) -> Measure {
        Measure { si: self.si, kind: self.kind, style: declared.style }
    }

    /// How far off it may be, as this field is shown.
    pub fn tolerance(&self, declared: &Declared) -> Option<Measure> {
        // Of a temperature it is a difference, which counts from no zero.
        let style = if self.kind == Kind::Temperature { Style::Difference } else { declared.style };
        self.tolerance.map(|si| Measure { si, kind: self.kind, style })
    }
}

/// Where in a job a value stands.
#[derive(Clone, Copy, Debug)]
pub struct Place<'p> {
    outer: Option<&'p Place<'p>>,
    step: Step<'p>,
    declared: Option<&'static Declared>,
}

#[derive(Clone, Copy, Debug)]
enum Step<'p> {
    Root(&'p str),
    Field(&'static str),
    Entry(usize),
}

impl<'p> Place<'p> {
    /// The outermost place: of a whole job, or of an entry that has this path in its file.
    pub fn root(path: &'p str) -> Self {
        Place { outer: None, step: Step::Root(path), declared: None }
    }

    /// The place of a declared field in it.
    pub fn field<'i>(&'i self, declared: &'static Declared) -> Place<'i> {
        Place { outer: Some(self), step: Step::Field(declared.field), declared: Some(declared) }
    }

    /// The place of a field in it of which nothing else is said than of itself.
    pub fn part<'i>(&'i self, name: &'static str) -> Place<'i> {
        Place { outer: Some(self), step: Step::Field(name), declared: None }
    }

    /// The place of its entry number `index`.
    pub fn entry<'i>(&'i self, index: usize) -> Place<'i> {
        Place { outer: Some(self), step: Step::Entry(index), declared: None }
    }

    /// `engines_on[0].described.power`
    pub fn path(&self) -> String {
        let outer = self.outer.map(Place::path).unwrap_or_default();
        match self.step {
            Step::Root(path) => path.to_owned(),
            Step::Field(name) if outer.is_empty() => name.to_owned(),
            Step::Field(name) => format!("{outer}.{name}"),
            Step::Entry(index) => format!("{outer}[{index}]"),
        }
    }

    /// What is said of the field that it stands in.
    pub fn declared(&self) -> Option<&'static Declared> {
        self.chain().find_map(|place| place.declared)
    }

    /// What it stands in, from itself outward.
    pub fn chain(&self) -> impl Iterator<Item = &Place<'p>> {
        std::iter::successors(Some(self), |place| place.outer)
    }

    /// The declaration that it stands at itself.
    pub fn own(&self) -> Option<&'static Declared> {
        self.declared
    }

    /// Which entry of its list it is.
    pub fn index(&self) -> Option<usize> {
        match self.step {
            Step::Entry(index) => Some(index),
            Step::Root(_) | Step::Field(_) => None,
        }
    }
}

/// A reading as a number.
pub(crate) fn number<Q: Dimensioned>(reading: &Reading<Q>) -> Number<'_> {
    Number {
        kind: Q::KIND,
        si: reading.value.si(),
        tolerance: reading.tolerance.map(Q::si),
        basis: reading.basis,
        note: reading.note.as_deref(),
    }
}

impl<Q: Dimensioned> Part for Reading<Q> {
    const KIND: Option<Kind> = Some(Q::KIND);

    type Held = Self;

    fn held(&self) -> Option<&Self::Held> {
        Some(self)
    }

    fn form() -> Form {
        Form::Number(Q::KIND)
    }

    fn visit<'v>(&'v self, at: &Place<'_>, see: &mut See<'_, 'v>) {
        see(at, Value::Number(number(self)));
    }

    fn change(&mut self, change: &mut Change<'_>) {
        let held = Loose { si: self.value.si(), basis: self.basis };
        let mut loose = held;
        change(&mut loose);
        if loose.si != held.si {
            self.value = Q::from_si(loose.si);
        }
        self.basis = loose.basis;
    }
}

impl<T: Part> Part for Option<T> {
    const KIND: Option<Kind> = T::KIND;

    type Held = T;

    fn held(&self) -> Option<&Self::Held> {
        self.as_ref()
    }

    fn form() -> Form {
        Form::Optional(Box::new(T::form()))
    }

    fn visit<'v>(&'v self, at: &Place<'_>, see: &mut See<'_, 'v>) {
        if let Some(part) = self {
            part.visit(at, see);
        }
    }

    fn change(&mut self, change: &mut Change<'_>) {
        if let Some(part) = self {
            part.change(change);
        }
    }
}

impl<T: Part> Part for Vec<T> {
    const KIND: Option<Kind> = T::KIND;

    type Held = Self;

    fn held(&self) -> Option<&Self::Held> {
        Some(self).filter(|list| !list.is_empty())
    }

    fn form() -> Form {
        Form::List(Box::new(T::form()))
    }

    fn visit<'v>(&'v self, at: &Place<'_>, see: &mut See<'_, 'v>) {
        see(at, Value::List(self.len()));
        for (i, part) in self.iter().enumerate() {
            part.visit(&at.entry(i), see);
        }
    }

    fn change(&mut self, change: &mut Change<'_>) {
        self.iter_mut().for_each(|part| part.change(change));
    }
}

macro_rules! tuple {
    ($($part:ident $index:tt),+) => {
        impl<$($part: Part),+> Part for ($($part,)+) {
            const KIND: Option<Kind> = A::KIND;

            type Held = Self;

    fn held(&self) -> Option<&Self::Held> {
        Some(self)
    }

    fn form() -> Form {
                Form::Several(vec![$($part::form()),+])
            }

            fn visit<'v>(&'v self, at: &Place<'_>, see: &mut See<'_, 'v>) {
                $(self.$index.visit(&at.entry($index), see);)+
            }

            fn change(&mut self, change: &mut Change<'_>) {
                $(self.$index.change(change);)+
            }
        }
    };
}
tuple!(A 0, B 1);
tuple!(A 0, B 1, C 2);

macro_rules! leaf {
    ($($type:ty, $form:expr, |$value:ident| $shown:expr;)+) => {$(
        impl Part for $type {
            type Held = Self;

    fn held(&self) -> Option<&Self::Held> {
        Some(self)
    }

    fn form() -> Form {
                $form
            }

            fn visit<'v>(&'v self, at: &Place<'_>, see: &mut See<'_, 'v>) {
                let $value = self;
                see(at, $shown);
            }
        }
    )+};
}
leaf! {
    u8, Form::Count { whole: true }, |count| Value::Count((*count).into());
    i8, Form::Count { whole: true }, |count| Value::Count((*count).into());
    u16, Form::Count { whole: true }, |count| Value::Count((*count).into());
    f64, Form::Count { whole: false }, |count| Value::Count(*count);
    bool, Form::Flag, |flag| Value::Flag(*flag);
    String, Form::Text, |text| Value::Text(text);
}
