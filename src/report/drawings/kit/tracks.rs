//! Tracks beside a drawing, in which dimensions stand without touching each other.

/// Room between two dimensions in one track, in units of the paper.
const GAP: f64 = 6.0;

/// The track of each interval: the nearest to the drawing that is free there. Short dimensions go
/// nearest, so that no extension line crosses a dimension line.
pub fn assign(intervals: &[(f64, f64)]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..intervals.len()).collect();
    let length = |i: &usize| intervals[*i].1 - intervals[*i].0;
    order.sort_by(|a, b| length(a).total_cmp(&length(b)).then(a.cmp(b)));
    let mut tracks: Vec<Vec<(f64, f64)>> = Vec::new();
    let mut places = vec![0; intervals.len()];
    for i in order {
        let (from, to) = intervals[i];
        let free = |track: &Vec<(f64, f64)>| track.iter().all(|(a, b)| to + GAP <= *a || *b + GAP <= from);
        let place = tracks.iter().position(free).unwrap_or_else(|| {
            tracks.push(Vec::new());
            tracks.len() - 1
        });
        tracks[place].push((from, to));
        places[i] = place;
    }
    places
}
