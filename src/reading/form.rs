//! The shape of a job, by its types: what each field takes.

use serde_json::{Map, Value as Json, json};

use super::{Amount, Bounds, Declared, Part};
use crate::quantity::{Kind, Style, Unit, units_of};

/// What can be written at one place.
#[derive(Clone, Debug)]
pub enum Form {
    /// A number with a unit of this kind.
    Number(Kind),
    /// A number without a unit.
    Count {
        /// Whether it must be a whole one.
        whole: bool,
    },
    /// Words.
    Text,
    /// `true` or `false`.
    Flag,
    /// One of several words, some of which have more behind them.
    Choice(Vec<Choice>),
    /// Fields, each by its name.
    Fields(Vec<Field>),
    /// Any number of entries.
    List(Box<Form>),
    /// From one number to another, both with a unit of this kind: `(from: …, to: …)`.
    Span(Kind),
    /// So many entries, in order.
    Several(Vec<Form>),
    /// It may be left out.
    Optional(Box<Form>),
}

impl Form {
    /// The kind of its number, where it is one.
    fn kind(&self) -> Option<Kind> {
        match self {
            Form::Number(kind) | Form::Span(kind) => Some(*kind),
            Form::Optional(form) => form.kind(),
            _ => None,
        }
    }
}

/// A word that can be chosen.
#[derive(Clone, Debug)]
pub struct Choice {
    /// As it is written.
    pub word: &'static str,
    /// As a report says it.
    pub words: &'static str,
    /// What it means.
    pub doc: &'static [&'static str],
    /// What stands behind it in parentheses.
    pub with: Option<Form>,
    /// Whether it is the one that counts where nothing is written.
    pub is_default: bool,
}

/// A field with what it takes.
#[derive(Clone, Debug)]
pub struct Field {
    /// What is said of it.
    pub declared: &'static Declared,
    /// What it takes.
    pub form: Form,
    /// Whether it may be left out though it is no optional one: then it is `false`, an empty list, or the choice that says so.
    pub has_default: bool,
}

/// A declaration with the path at which it stands in a job, `[]` for any entry of a list.
#[derive(Clone, Debug)]
pub struct Standing {
    /// `engines_on[].described.power`
    pub path: String,
    /// What is said of it.
    pub declared: &'static Declared,
    /// What it takes.
    pub form: Form,
    /// What it stands in, outermost first.
    pub within: Vec<&'static Declared>,
}

/// Every declared field of a part, outer before inner, in the order of declaration.
pub fn standing<T: Part>() -> Vec<Standing> {
    let mut all = Vec::new();
    walk(&T::form(), "", &[], &mut all);
    all
}

fn walk(form: &Form, path: &str, within: &[&'static Declared], all: &mut Vec<Standing>) {
    match form {
        Form::Number(_) | Form::Span(_) | Form::Count { .. } | Form::Text | Form::Flag => {}
        Form::Optional(inner) => walk(inner, path, within, all),
        Form::List(inner) => walk(inner, &format!("{path}[]"), within, all),
        Form::Several(parts) => parts.iter().for_each(|part| walk(part, &format!("{path}[]"), within, all)),
        Form::Choice(choices) => {
            choices.iter().filter_map(|choice| choice.with.as_ref()).for_each(|with| walk(with, path, within, all));
        }
        Form::Fields(fields) => {
            for field in fields {
                let declared = field.declared;
                let path = join(path, declared.field);
                all.push(Standing { path: path.clone(), declared, form: field.form.clone(), within: within.to_vec() });
                let within: Vec<_> = within.iter().copied().chain([declared]).collect();
                walk(&field.form, &path, &within, all);
            }
        }
    }
}

fn join(path: &str, field: &str) -> String {
    if path.is_empty() { field.to_owned() } else { format!("{path}.{field}") }
}

/// The form as data, for a page with a box for each field; `taken_to` is the unit that what it stands in is taken to.
pub(super) fn describe(form: &Form, taken_to: Option<Unit>) -> Json {
    let inner = |form: &Form| describe(form, taken_to);
    match form {
        Form::Number(kind) => json!({ "takes": "number", "kind": kind.word(), "units": units(*kind) }),
        Form::Span(kind) => json!({ "takes": "range", "kind": kind.word(), "units": units(*kind) }),
        Form::Count { whole } => json!({ "takes": if *whole { "count" } else { "plain number" } }),
        Form::Text => json!({ "takes": "text" }),
        Form::Flag => json!({ "takes": "flag" }),
        Form::Choice(choices) => {
            let all: Vec<Json> = choices.iter().map(|one| choice(one, taken_to)).collect();
            json!({ "takes": "choice", "choices": all })
        }
        Form::Fields(fields) => {
            let all: Vec<Json> = fields.iter().map(|one| field(one, taken_to)).collect();
            json!({ "takes": "fields", "fields": all })
        }
        Form::List(of) => json!({ "takes": "list", "of": inner(of) }),
        Form::Several(parts) => json!({ "takes": "several", "of": parts.iter().map(inner).collect::<Vec<_>>() }),
        Form::Optional(form) => inner(form),
    }
}

fn units(kind: Kind) -> Vec<&'static str> {
    units_of(kind).map(|unit| unit.name).collect()
}

fn choice(choice: &Choice, taken_to: Option<Unit>) -> Json {
    json!({
        "word": choice.word,
        "words": choice.words,
        "about": choice.doc.iter().map(|line| line.trim()).collect::<Vec<_>>().join(" "),
        "with": choice.with.as_ref().map(|with| describe(with, taken_to)),
    })
}

fn field(field: &Field, taken_to: Option<Unit>) -> Json {
    let declared = field.declared;
    let taken_to = declared.closely.map(|closely| closely.unit).or(taken_to);
    let mut out = Map::new();
    out.insert("field".into(), declared.field.into());
    out.insert("name".into(), declared.words().into());
    out.insert("about".into(), declared.about().into());
    out.insert("optional".into(), (matches!(field.form, Form::Optional(_)) || field.has_default).into());
    // What it is where it is left out.
    let default = match &field.form {
        Form::Choice(choices) => choices.iter().find(|choice| choice.is_default).map(|choice| choice.word),
        Form::Flag => Some("false"),
        _ => None,
    };
    if let Some(default) = default.filter(|_| field.has_default) {
        out.insert("default".into(), default.into());
    }
    if let Form::Optional(inner) = &field.form
        && matches!(**inner, Form::List(_))
    {
        // An empty list says that there is none; one that is left out says nothing.
        out.insert("empty_is_none".into(), true.into());
    }
    if let Json::Object(form) = describe(&field.form, taken_to) {
        out.extend(form);
    }
    if let Some(bounds) = &declared.bounds {
        out.insert("bounds".into(), self::bounds(bounds));
    }
    if let Some(unit) = usual_unit(&field.form, declared, taken_to) {
        out.insert("unit".into(), unit.into());
    }
    if let Some(taking) = &declared.taking {
        out.insert("stop".into(), taking.stop.words().into());
        out.insert("where".into(), taking.place.into());
        out.insert("how".into(), taking.how.into());
    }
    if let Some(closely) = &declared.closely {
        out.insert("closely".into(), amount(closely));
    }
    if let Some((left, top)) = declared.spot {
        out.insert("spot".into(), json!([left, top]));
    }
    if !declared.files.is_empty() {
        out.insert("files".into(), declared.files.into());
    }
    if declared.is_label {
        out.insert("label".into(), true.into());
    }
    Json::Object(out)
}

/// The unit that counts where somebody types none: feet where a report tells feet, else the one that it, or what it stands
/// in, is taken to, else the one that its bounds begin in; nothing for a plain number.
fn usual_unit(form: &Form, declared: &Declared, taken_to: Option<Unit>) -> Option<&'static str> {
    if matches!(declared.style, Style::FeetInches | Style::Feet) {
        return Some("ft");
    }
    let bound = declared.bounds.and_then(|bounds| match bounds {
        Bounds::Between(least, _) => Some(least.unit),
        Bounds::Count(..) => None,
    });
    let fits = |unit: &Unit| form.kind().is_none_or(|kind| kind == unit.kind);
    taken_to.filter(fits).or(bound).map(|unit| unit.name).filter(|name| !name.is_empty())
}

fn bounds(bounds: &Bounds) -> Json {
    match bounds {
        Bounds::Between(least, most) => json!({ "least": amount(least), "most": amount(most) }),
        Bounds::Count(least, most) => json!({ "least": least, "most": most }),
    }
}

fn amount(amount: &Amount) -> Json {
    json!({ "text": amount.to_string(), "si": amount.si() })
}
