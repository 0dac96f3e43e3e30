//! Rows with commas between them: runs, a row each, or a log, a second each.

use uom::si::f64::{Angle, AngularVelocity, Time, Velocity, VolumeRate};

use super::{Damage, Log, Logged, LoggedError, Sample, gaps};
use crate::quantity::{Dimensioned, parse};

/// A run as a row has it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Row {
    /// Engine speed, the mean of her engines.
    pub engine: Option<AngularVelocity>,
    /// Speed one way.
    pub speed: Option<Velocity>,
    /// Speed the other way, over the same water.
    pub back: Option<Velocity>,
    /// Fuel flow of all engines.
    pub fuel: Option<VolumeRate>,
    /// Trim of the engines, out positive.
    pub trim: Option<Angle>,
    /// Tabs down.
    pub tabs: Option<Angle>,
}

/// A column that is known.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Column {
    Time,
    Engine,
    Speed,
    Back,
    Course,
    Fuel,
    Trim,
    Tabs,
}

const COLUMNS: [(&str, Column); 8] = [
    ("time", Column::Time),
    ("rpm", Column::Engine),
    ("speed", Column::Speed),
    ("back", Column::Back),
    ("course", Column::Course),
    ("fuel", Column::Fuel),
    ("trim", Column::Trim),
    ("tabs", Column::Tabs),
];

struct Head {
    column: Column,
    /// The unit for cells that have none.
    unit: Option<String>,
}

/// Reads rows. With a column of times they are a log, else runs.
///
/// # Errors
/// Where no column is known, no row is there, or a cell cannot be read.
pub fn read_rows(text: &str) -> Result<Logged, LoggedError> {
    let mut reader =
        csv::ReaderBuilder::new().flexible(true).trim(csv::Trim::All).comment(Some(b'#')).from_reader(text.as_bytes());
    let heads: Vec<Option<Head>> = match reader.headers() {
        Ok(names) => names.iter().map(head).collect(),
        Err(_) => return Err(LoggedError::NoColumns),
    };
    let of = |column: Column| heads.iter().flatten().any(|head| head.column == column);
    if !of(Column::Speed) && !of(Column::Engine) {
        return Err(LoggedError::NoColumns);
    }
    let is_log = of(Column::Time);
    let (mut rows, mut samples) = (Vec::new(), Vec::new());
    let mut damage = Damage::default();
    for (i, record) in reader.records().enumerate() {
        let number = i + 2;
        damage.lines += 1;
        let Ok(record) = record else {
            damage.unreadable += 1;
            continue;
        };
        let cells = heads.iter().zip(record.iter()).filter_map(|(head, cell)| Some((head.as_ref()?, cell)));
        let cells: Vec<(&Head, &str)> = cells.filter(|(_, cell)| !cell.is_empty()).collect();
        let told = |what: String| LoggedError::Row { row: number, what };
        if is_log {
            // A log is damaged by the line; a table of runs was written by a person, who is told.
            match sample(&cells) {
                Ok(sample) => samples.push(sample),
                Err(_) => damage.unreadable += 1,
            }
        } else if !cells.is_empty() {
            rows.push(row(&cells).map_err(told)?);
        }
    }
    if is_log {
        if samples.is_empty() {
            return Err(LoggedError::NoRows);
        }
        damage.gaps = gaps(&samples);
        return Ok(Logged::Log(Log { samples, damage }));
    }
    if rows.is_empty() { Err(LoggedError::NoRows) } else { Ok(Logged::Rows(rows)) }
}

/// `speed (mph)`: a known name, and a unit in brackets.
fn head(name: &str) -> Option<Head> {
    let name = name.trim().to_ascii_lowercase();
    let (word, unit) = match name.split_once('(') {
        Some((word, unit)) => (word.trim(), Some(unit.trim_end_matches(')').trim().to_owned())),
        None => (name.as_str(), None),
    };
    let (_, column) = COLUMNS.iter().find(|(known, _)| *known == word)?;
    Some(Head { column: *column, unit })
}

fn read<Q: Dimensioned>(head: &Head, cell: &str) -> Result<Q, String> {
    let bare = cell.replace(',', "").parse::<f64>().is_ok();
    let text = match &head.unit {
        Some(unit) if bare => format!("{cell} {unit}"),
        _ => cell.to_owned(),
    };
    match parse(&text, Q::KIND) {
        Ok(parsed) if parsed.si.is_finite() => Ok(Q::from_si(parsed.si)),
        Ok(_) => Err(format!("{cell} is no number")),
        Err(error) => Err(error.to_string()),
    }
}

/// Engine speed: a bare number is turns a minute, as the column's name says.
fn engine(head: &Head, cell: &str) -> Result<AngularVelocity, String> {
    let rpm = Head { column: head.column, unit: head.unit.clone().or_else(|| Some("rpm".to_owned())) };
    read(&rpm, cell)
}

fn row(cells: &[(&Head, &str)]) -> Result<Row, String> {
    let mut row = Row::default();
    for (head, cell) in cells {
        match head.column {
            Column::Engine => row.engine = Some(engine(head, cell)?),
            Column::Speed => row.speed = Some(read(head, cell)?),
            Column::Back => row.back = Some(read(head, cell)?),
            Column::Fuel => row.fuel = Some(read(head, cell)?),
            Column::Trim => row.trim = Some(read(head, cell)?),
            Column::Tabs => row.tabs = Some(read(head, cell)?),
            Column::Time | Column::Course => {}
        }
    }
    Ok(row)
}

fn sample(cells: &[(&Head, &str)]) -> Result<Sample, String> {
    let mut sample = Sample::default();
    let mut seen = [false; 2];
    for (head, cell) in cells {
        match head.column {
            Column::Time => {
                let seconds = Head { column: head.column, unit: head.unit.clone().or_else(|| Some("s".to_owned())) };
                sample.time = read::<Time>(&seconds, cell)?.si();
                seen[0] = true;
            }
            Column::Speed => {
                sample.speed = read::<Velocity>(head, cell)?.si();
                seen[1] = true;
            }
            Column::Course => {
                let degrees = Head { column: head.column, unit: Some("deg".to_owned()) };
                sample.course = Some(read::<Angle>(&degrees, cell)?.si().to_degrees());
            }
            Column::Engine => sample.engine = Some(engine(head, cell)?.si()),
            Column::Fuel => sample.fuel = Some(read::<VolumeRate>(head, cell)?.si()),
            Column::Back | Column::Trim | Column::Tabs => {}
        }
    }
    if seen == [true; 2] { Ok(sample) } else { Err("time or speed is missing".to_owned()) }
}
