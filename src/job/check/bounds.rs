//! What no reading can be: outside its bounds, a range that runs backwards, a list without end.

use super::Checker;
use crate::quantity::{Measure, Style, Units};
use crate::reading::{Bounds, Part, Place, Value};

/// Entries that a list may hold: more is a drawing or a table, not a reading.
pub(super) const MOST_ENTRIES: usize = 400;

/// Every value of the part against what is declared of it.
pub(super) fn within(checker: &mut Checker, path: &str, part: &impl Part) {
    part.visit(&Place::root(path), &mut |at, value| {
        if at.chain().any(|place| place.index().is_some_and(|index| index >= MOST_ENTRIES)) {
            return;
        }
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
            Value::List(count) if count > MOST_ENTRIES => {
                checker.fault(&at.path(), format!("{count} entries"), format!("at most {MOST_ENTRIES} are taken"));
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
