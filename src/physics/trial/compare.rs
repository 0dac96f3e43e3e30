//! One trial against another: at equal engine speed, at equal speed, each at its best.

/// A run as a place on a curve, in any coherent units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// What the runs are ordered by.
    pub along: f64,
    /// What is compared.
    pub value: f64,
    /// How far off the value may be.
    pub doubt: f64,
}

/// From one trial to the other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// The value before, in the points' units.
    pub before: f64,
    /// The value after.
    pub after: f64,
    /// After over before, less 1.
    pub part: f64,
    /// How far off that may be.
    pub doubt: f64,
}

/// The value at a place within the runs, straight from one to the next; `None` beyond them. Points in any order; those that stand
/// at one place count as their mean.
pub fn at(points: &[Point], along: f64) -> Option<Point> {
    let mut sorted: Vec<Point> =
        points.iter().copied().filter(|p| p.along.is_finite() && p.value.is_finite()).collect();
    sorted.sort_by(|a, b| a.along.total_cmp(&b.along));
    let same: Vec<&Point> = sorted.iter().filter(|p| p.along == along).collect();
    if !same.is_empty() {
        let count = same.len() as f64;
        let mean = |of: fn(&Point) -> f64| same.iter().map(|p| of(p)).sum::<f64>() / count;
        return Some(Point { along, value: mean(|p| p.value), doubt: mean(|p| p.doubt) / count.sqrt() });
    }
    let next = sorted.iter().position(|p| p.along > along)?;
    let (a, b) = (sorted.get(next.checked_sub(1)?)?, sorted[next]);
    let part = (along - a.along) / (b.along - a.along);
    Some(Point {
        along,
        value: a.value + part * (b.value - a.value),
        // Both ends are read apart.
        doubt: ((1.0 - part) * a.doubt).hypot(part * b.doubt),
    })
}

/// Where both trials have runs on either side.
pub fn span(one: &[Point], other: &[Point]) -> Option<[f64; 2]> {
    let ends = |points: &[Point]| {
        let all = points.iter().map(|p| p.along);
        Some([all.clone().reduce(f64::min)?, all.reduce(f64::max)?])
    };
    let ([a, b], [c, d]) = (ends(one)?, ends(other)?);
    let (from, to) = (a.max(c), b.min(d));
    (from <= to).then_some([from, to])
}

/// From a value before to one after, in parts of the one before, with the doubts of both.
pub fn change(before: Point, after: Point) -> Option<Change> {
    if !(before.value > 0.0 && after.value.is_finite()) {
        return None;
    }
    let ratio = after.value / before.value;
    let doubt = (after.doubt / before.value).hypot(ratio * before.doubt / before.value);
    Some(Change { before: before.value, after: after.value, part: ratio - 1.0, doubt })
}
