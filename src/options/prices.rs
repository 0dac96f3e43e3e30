//! A yard's price list: what it has, and what that costs. Money is a plain number, in one currency.

use serde::Deserialize;
use uom::si::f64::Length;

use crate::catalog::{Catalog, Entry, likely_names};
use crate::quantity::{Dimensioned, Kind, Reading, inches, parse};
use crate::written::{self, Fault, Faults, Page};

/// A price list.
#[derive(Clone, Debug, Default)]
pub struct Prices {
    lines: Vec<Line>,
}

/// A line of it.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Line {
    /// An engine class or a bracket of the catalog.
    class: String,
    /// The shaft that the price is for; for every shaft where it is left out.
    shaft: Option<Reading<Length>>,
    /// What one costs.
    price: f64,
}

/// A price list as RON: `(prices: [(class: "…", shaft: "25 in", price: 12400)])`.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct List {
    prices: Vec<Line>,
}

/// Shafts whose names differ by less are the same, inches. Common practice, no source: makers call a 20-1/2 in shaft a 20 in one.
const SAME_SHAFT_IN: f64 = 1.5;

impl Prices {
    /// Reads a list: RON, or with commas between columns `class,shaft,price` in any order, `shaft` left out where it does not
    /// matter. `name` is what faults call it.
    ///
    /// # Errors
    /// Everything that is wrong with it, each with its place.
    pub fn read(name: &str, text: &str, catalog: &Catalog) -> Result<Prices, Faults> {
        if text.trim_start().starts_with('(') || text.trim_start().starts_with("//") {
            let (list, page) = written::read::<List>(name, text).finish()?;
            let fault = |i: usize, why: String, help: String| page.fault(&format!("prices[{i}]"), why, help);
            return Prices { lines: list.prices }.checked(catalog, &page, fault);
        }
        let page = Page::new(name, text);
        let mut reader =
            csv::ReaderBuilder::new().trim(csv::Trim::All).comment(Some(b'#')).from_reader(text.as_bytes());
        let heads = reader.headers().cloned().unwrap_or_default();
        let (mut lines, mut starts, mut faults) = (Vec::new(), Vec::new(), Vec::new());
        for record in reader.records() {
            let start = |position: Option<&csv::Position>| position.map_or(0, |at| at.byte() as usize);
            let at = record.as_ref().map_or_else(|error| start(error.position()), |record| start(record.position()));
            let row = record.and_then(|record| record.deserialize::<Row>(Some(&heads)));
            match row.map_err(|error| error.to_string()).and_then(Row::line) {
                Ok(line) => {
                    lines.push(line);
                    starts.push(at);
                }
                Err(why) => faults.push(at_byte(at, why, "columns: class, shaft, price; the first line names them")),
            }
        }
        if !faults.is_empty() {
            return Err(Faults::new(&page, faults));
        }
        let fault = |i: usize, why: String, help: String| at_byte(starts.get(i).copied().unwrap_or(0), why, help);
        Prices { lines }.checked(catalog, &page, fault)
    }

    fn checked(
        self,
        catalog: &Catalog,
        page: &Page,
        fault: impl Fn(usize, String, String) -> Fault,
    ) -> Result<Prices, Faults> {
        let mut faults = Vec::new();
        for (i, line) in self.lines.iter().enumerate() {
            let known = has(&catalog.engines, &line.class) || has(&catalog.brackets, &line.class);
            if !known {
                let likely = likely_names(&catalog.engines, &line.class);
                let near = likely.first().map(|near| format!("did you mean `{near}`? ")).unwrap_or_default();
                faults.push(fault(
                    i,
                    format!("the catalog has no engine and no bracket called `{}`", line.class),
                    format!("{near}A class of your own goes into a folder for --catalog"),
                ));
            }
            if !line.price.is_finite() || line.price < 0.0 {
                faults.push(fault(i, format!("`{}`: no price can be {}", line.class, line.price), String::new()));
            }
        }
        if self.lines.is_empty() {
            let help = "a line for each engine class and bracket: class, shaft, price".to_owned();
            faults.push(fault(0, "the list holds no prices".to_owned(), help));
        }
        if faults.is_empty() { Ok(self) } else { Err(Faults::new(page, faults)) }
    }

    /// Whether it has a class, with whatever shaft.
    pub fn has(&self, class: &str) -> bool {
        self.lines.iter().any(|line| line.class == class)
    }

    /// What one of a class with this shaft costs; nothing where it does not have it. The line for this shaft comes before one for all.
    pub fn of(&self, class: &str, shaft: Option<Length>) -> Option<f64> {
        let same = |line: &&Line| match (&line.shaft, shaft) {
            (Some(told), Some(shaft)) => (told.value - shaft).abs() < inches(SAME_SHAFT_IN),
            _ => false,
        };
        let of_class = || self.lines.iter().filter(|line| line.class == class);
        of_class().find(same).or_else(|| of_class().find(|line| line.shaft.is_none())).map(|line| line.price)
    }
}

/// A fault of the line that begins at this byte.
fn at_byte(start: usize, message: String, help: impl Into<String>) -> Fault {
    Fault { path: String::new(), span: start..start, message, help: Some(help.into()).filter(|help| !help.is_empty()) }
}

fn has<T>(entries: &[Entry<T>], name: &str) -> bool {
    entries.iter().any(|entry| entry.name == name)
}

/// A row with commas.
#[derive(Deserialize)]
struct Row {
    class: String,
    shaft: Option<String>,
    price: String,
}

impl Row {
    fn line(self) -> Result<Line, String> {
        let price = self.price.replace([',', ' '], "");
        let price = price.parse::<f64>().map_err(|_| format!("`{}`: `{}` is no price", self.class, self.price))?;
        let shaft = match self.shaft.filter(|shaft| !shaft.is_empty()) {
            Some(shaft) => {
                let read = parse(&shaft, Kind::Length).map_err(|error| format!("`{}`: {error}", self.class))?;
                Some(Reading::catalog(Length::from_si(read.si)))
            }
            None => None,
        };
        Ok(Line { class: self.class, shaft, price })
    }
}
