//! What no reading can be: outside its bounds, a range that runs backwards; and what is more than a job needs.

use super::Checker;
use crate::quantity::{Measure, Style, Units};
use crate::reading::{Bounds, Part, Place, Value};

/// Letters of a name, and of notes: more is a file put into the wrong place, and a report cannot be read with it.
const LONGEST_NAME: usize = 300;
const LONGEST_NOTES: usize = 10_000;
/// Fields that hold a text rather than a name.
const TEXTS: [&str; 3] = ["notes", "caption", "source"];

/// What is more than any job needs: entries of lists, letters of words. Whoever has so much is told that alone.
pub(super) fn limits(checker: &mut Checker, path: &str, part: &impl Part) {
    part.visit(&Place::root(path), &mut |at, value| match value {
        Value::List(count) => {
            let most = at.declared().map_or(usize::MAX, |declared| declared.most_entries);
            if count > most {
                checker.fault(&at.path(), format!("{count} entries"), format!("at most {most} are taken"));
            }
        }
        Value::Text(text) => {
            let is_text = at.own().is_some_and(|declared| TEXTS.contains(&declared.field));
            let most = if is_text { LONGEST_NOTES } else { LONGEST_NAME };
            too_long(checker, at, text, most);
        }
        Value::Number(number) => too_long(checker, at, number.note.unwrap_or_default(), LONGEST_NOTES),
        _ => {}
    });
}

fn too_long(checker: &mut Checker, at: &Place, text: &str, most: usize) {
    let letters = text.chars().count();
    if letters > most {
        checker.fault(&at.path(), format!("{letters} letters"), format!("at most {most} are taken here"));
    }
}

/// Every value of the part against what is declared of it.
pub(super) fn within(checker: &mut Checker, path: &str, part: &impl Part) {
    part.visit(&Place::root(path), &mut |at, value| {
        let bounds = at.declared().and_then(|declared| declared.bounds);
        match value {
            Value::Number(number) => {
                let measure = Measure { si: number.si, kind: number.kind, style: Style::Tape };
                hold(checker, at, bounds, number.si, || measure.show(Units::Both));
            }
            Value::Count(count) => hold(checker, at, bounds, count, || count.to_string()),
            Value::Range(from, to) if from.si > to.si => {
                checker.fault(&at.path(), "the range runs backwards", "the lesser value is `from`, the greater `to`");
            }
            _ => {}
        }
    });
}

fn hold(checker: &mut Checker, at: &Place, bounds: Option<Bounds>, value: f64, shown: impl FnOnce() -> String) {
    let Some(bounds) = bounds.filter(|bounds| !bounds.hold(value)) else {
        return;
    };
    let path = at.path();
    let name = path.rsplit('.').next().unwrap_or(&path).replace('_', " ");
    checker.fault(&path, format!("{} cannot be right for `{name}`", shown()), format!("between {bounds} is expected"));
}
