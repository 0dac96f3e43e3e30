//! What instruments wrote down on a trial: a log of NMEA 0183 sentences, or rows with commas between them.

mod nmea;
mod rows;

use crate::quantity::{Text, say};

pub use nmea::read_nmea;
pub use rows::{Row, read_rows};

/// What a log held besides what could be used.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Damage {
    /// Lines in all.
    pub lines: usize,
    /// Lines whose sum does not agree with what they say.
    pub bad_sums: usize,
    /// Lines cut short, or with something unreadable in them.
    pub unreadable: usize,
    /// Fixes that the receiver itself called void.
    pub void: usize,
    /// Times when nothing came for longer than a few seconds.
    pub gaps: usize,
}

/// What instruments said at one time.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Sample {
    /// Seconds from any beginning.
    pub time: f64,
    /// m/s over the ground.
    pub speed: f64,
    /// Course over the ground, degrees.
    pub course: Option<f64>,
    /// Engine speed, rad/s: the mean of her engines.
    pub engine: Option<f64>,
    /// Fuel, m³/s: of all her engines.
    pub fuel: Option<f64>,
}

/// A log that was read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Log {
    /// What instruments said, in the order in which it was written.
    pub samples: Vec<Sample>,
    /// What else was in it.
    pub damage: Damage,
}

/// What is in a file.
#[derive(Clone, Debug, PartialEq)]
pub enum Logged {
    /// Instruments, second by second.
    Log(Log),
    /// Runs, a row each.
    Rows(Vec<Row>),
}

/// Why a file cannot be used.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum LoggedError {
    /// A log in which the receiver gave no place with time and speed.
    #[error("no line holds a sentence with time and speed ($..RMC)")]
    NoFix,
    /// Rows without a column of speed or engine speed.
    #[error("the first row names no column that is known; {EXPECTED}")]
    NoColumns,
    /// Rows of which none below the first can be used.
    #[error("no row below the first")]
    NoRows,
    /// A row of runs with a cell that cannot be read.
    #[error("row {row}: {what}")]
    Row {
        /// Its number, the row of names being 1.
        row: usize,
        /// What is wrong with the cell.
        what: String,
    },
    /// A file of more lines than [`MOST_LINES`].
    #[error("it has more than {MOST_LINES} lines")]
    TooLong,
}

/// What the first row of a file of rows may name.
pub const EXPECTED: &str =
    "known are time, rpm, speed, back, course, fuel, trim, tabs, each with its unit in brackets: `speed (mph)`";

/// The longest log: two days of ten sentences a second.
pub const MOST_LINES: usize = 2_000_000;

/// A gap that is told, seconds. Common practice, no source.
const GAP_SECONDS: f64 = 5.0;

/// Reads a file by what is in it: sentences begin with a dollar sign.
///
/// # Errors
/// Why nothing of it can be used.
pub fn read(bytes: &[u8]) -> Result<Logged, LoggedError> {
    let text = String::from_utf8_lossy(bytes);
    let text = text.trim_start_matches('\u{feff}');
    if text.lines().take(MOST_LINES + 1).count() > MOST_LINES {
        return Err(LoggedError::TooLong);
    }
    let sentences = text.lines().take(FIRST_LINES).filter(|line| line.trim_start().starts_with(['$', '!'])).count();
    if sentences > 0 { read_nmea(text).map(Logged::Log) } else { read_rows(text) }
}

/// Lines among which a sentence must stand.
const FIRST_LINES: usize = 50;

impl Damage {
    /// What was damaged, in a sentence; none where nothing was.
    pub fn told(&self) -> Option<Text> {
        let mut parts = Vec::new();
        for (count, one, many) in [
            (self.bad_sums, "line with a wrong sum", "lines with wrong sums"),
            (self.unreadable, "unreadable line", "unreadable lines"),
            (self.void, "fix called void", "fixes called void"),
            (self.gaps, "gap", "gaps"),
        ] {
            if count > 0 {
                parts.push(say!("{} {}", count, if count == 1 { one } else { many }));
            }
        }
        (!parts.is_empty())
            .then(|| say!("Of {} lines of the log: ", self.lines).then(Text::join(parts, ", ")).then(Text::from(".")))
    }
}

/// Counts the gaps between samples.
fn gaps(samples: &[Sample]) -> usize {
    samples.windows(2).filter(|pair| pair[1].time - pair[0].time > GAP_SECONDS).count()
}
