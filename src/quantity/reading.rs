//! One number on a job: its value, how closely it was read, and where it is from.

use std::fmt;
use std::marker::PhantomData;

use serde::de::{self, Deserialize, Deserializer, MapAccess, Visitor, value::MapAccessDeserializer};

use super::{Dimensioned, Measure, Style, Written, parse};

/// Where a number is from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Basis {
    /// Taken on this boat.
    #[default]
    Measured,
    /// From the boat's or the engine's builder, for this very one.
    Builder,
    /// From a catalog of classes.
    Catalog,
    /// Nobody looked.
    Assumed,
}

impl Basis {
    /// Where a value is from, as a legend says it.
    pub const fn origin(self) -> &'static str {
        match self {
            Basis::Catalog => "catalog class",
            other => other.word(),
        }
    }

    /// The word used in a job and in a report.
    pub const fn word(self) -> &'static str {
        match self {
            Basis::Measured => "measured",
            Basis::Builder => "builder",
            Basis::Catalog => "catalog",
            Basis::Assumed => "assumed",
        }
    }
}

/// A number on a job. In the file a plain string means measured; the longer form sets the rest:
/// `(value: "25 in", tolerance: "1/8 in", basis: builder, note: "from the drawing")`.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading<Q> {
    /// The value, in SI inside.
    pub value: Q,
    /// How far off it may be, either way.
    pub tolerance: Option<Q>,
    /// How it is written, where somebody wrote it. Boxed: few ask for it, and a reading is held everywhere.
    pub written: Option<Box<Written>>,
    /// Where it is from.
    pub basis: Basis,
    /// Whatever the reader should know of it.
    pub note: Option<Box<str>>,
}

impl<Q: Dimensioned> Reading<Q> {
    /// A value from a catalog.
    pub fn catalog(value: Q) -> Self {
        Reading { value, tolerance: None, written: None, basis: Basis::Catalog, note: None }
    }

    /// A value that nobody took, with the reason for it.
    pub fn assumed(value: Q, note: impl Into<Box<str>>) -> Self {
        Reading { value, tolerance: None, written: None, basis: Basis::Assumed, note: Some(note.into()) }
    }

    /// The reading as one from this basis, unless it says another than measured for itself.
    #[must_use]
    pub fn from_basis(mut self, basis: Basis) -> Self {
        if self.basis == Basis::Measured {
            self.basis = basis;
        }
        self
    }

    /// Where a value is from, as a legend says it: its reading, or taken where there is none.
    pub fn origin(told: Option<&Self>) -> &'static str {
        told.map_or(Basis::Assumed, |told| told.basis).origin()
    }

    /// The value for showing.
    pub fn measure(&self, style: Style) -> Measure {
        Measure::styled(self.value, style)
    }
}

#[derive(serde::Deserialize)]
#[serde(deny_unknown_fields)]
struct LongForm {
    value: String,
    tolerance: Option<String>,
    #[serde(default)]
    basis: Basis,
    note: Option<Box<str>>,
}

impl<Q: Dimensioned> Reading<Q> {
    fn from_text<E: de::Error>(text: &str) -> Result<Self, E> {
        let parsed = parse(text, Q::KIND).map_err(E::custom)?;
        Ok(Reading {
            value: Q::from_si(parsed.si),
            tolerance: parsed.tolerance.map(|t| Q::from_si(t.half_width(parsed.si))),
            written: Some(Box::new(parsed.written)),
            basis: Basis::Measured,
            note: None,
        })
    }

    fn from_long_form<E: de::Error>(form: LongForm) -> Result<Self, E> {
        let tolerance = form.tolerance.map(|t| {
            let t = t.trim_start();
            let signed = if t.starts_with(['±', '+']) { t.to_owned() } else { format!("±{t}") };
            format!(" {signed}")
        });
        let text = form.value + tolerance.as_deref().unwrap_or("");
        Ok(Reading { basis: form.basis, note: form.note, ..Reading::from_text(&text)? })
    }
}

impl<'de, Q: Dimensioned> Deserialize<'de> for Reading<Q> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(ReadingVisitor(PhantomData))
    }
}

struct ReadingVisitor<Q>(PhantomData<Q>);

impl<'de, Q: Dimensioned> Visitor<'de> for ReadingVisitor<Q> {
    type Value = Reading<Q>;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        write!(f, "{} in quotes, such as {}", Q::KIND.name(), Q::KIND.example())
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<Self::Value, E> {
        Reading::from_text(text)
    }

    fn visit_f64<E: de::Error>(self, number: f64) -> Result<Self::Value, E> {
        Reading::from_text(&number.to_string())
    }

    fn visit_u64<E: de::Error>(self, number: u64) -> Result<Self::Value, E> {
        Reading::from_text(&number.to_string())
    }

    fn visit_i64<E: de::Error>(self, number: i64) -> Result<Self::Value, E> {
        Reading::from_text(&number.to_string())
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Self::Value, A::Error> {
        Reading::from_long_form(LongForm::deserialize(MapAccessDeserializer::new(map))?)
    }
}
