//! Before against after: at equal engine speed, at equal speed, each at its best.

use super::measured::{Curve, Measured};
use crate::physics::trial::{Change, Point, at, change, span};

/// One line of the comparison.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// Where both are compared: engine speed, rad/s, or speed, m/s.
    pub along: f64,
    /// Speed, m/s; nothing where both are compared at equal speeds.
    pub speed: Option<Change>,
    /// Fuel flow of all engines, m³/s.
    pub fuel: Option<Change>,
    /// Distance that a volume of fuel takes her, m/m³.
    pub economy: Option<Change>,
}

/// The comparison.
#[derive(Clone, Debug, PartialEq)]
pub struct Compared {
    /// At equal speeds of the engines, rad/s.
    pub at_equal_engine: Vec<Row>,
    /// At equal speeds, m/s.
    pub at_equal_speed: Vec<Row>,
    /// Greatest speed of each.
    pub top: Option<Change>,
    /// Farthest on a gallon of each.
    pub best: Option<Change>,
}

/// Places at which both are compared.
const PLACES: u32 = 4;

impl Compared {
    /// Of two trials.
    pub fn of(before: &Measured, after: &Measured) -> Compared {
        let rows = |along: Curve| {
            let points = |trial: &Measured, value| trial.points(along, value);
            let both = |value| (points(before, value), points(after, value));
            let measure = if along == Curve::Engine { Curve::Speed } else { Curve::Fuel };
            let (one, other) = both(measure);
            let Some([from, to]) = span(&one, &other) else { return Vec::new() };
            (0..=PLACES)
                .map(|i| from + (to - from) * f64::from(i) / f64::from(PLACES))
                .map(|place| {
                    let of = |value| {
                        let (one, other) = both(value);
                        change(at(&one, place)?, at(&other, place)?)
                    };
                    // Speed over fuel there, as the row's other figures have it: between two runs it is no straight line.
                    let economy = |trial: &Measured| {
                        let at = |value| at(&points(trial, value), place);
                        let speed = if along == Curve::Speed { place } else { at(Curve::Speed)?.value };
                        Some(Point { value: speed / at(Curve::Fuel)?.value, ..at(Curve::Economy)? })
                    };
                    let speed = (along == Curve::Engine).then(|| of(Curve::Speed)).flatten();
                    let economy = economy(before).zip(economy(after)).and_then(|(one, other)| change(one, other));
                    Row { along: place, speed, fuel: of(Curve::Fuel), economy }
                })
                .filter(|row| row.speed.is_some() || row.fuel.is_some())
                .collect()
        };
        let best = |trial: &Measured, value: Curve| {
            let all = trial.points(value, value);
            all.into_iter().max_by(|a: &Point, b: &Point| a.value.total_cmp(&b.value))
        };
        let changed = |value| change(best(before, value)?, best(after, value)?);
        Compared {
            at_equal_engine: rows(Curve::Engine),
            at_equal_speed: rows(Curve::Speed),
            top: changed(Curve::Speed),
            best: changed(Curve::Economy),
        }
    }
}
