//! Tracks beside a drawing, in which dimensions stand without touching each other.

/// Room between two dimensions in one track, in units of the paper.
const GAP: f64 = 6.0;

/// The track of each interval: the nearest to the drawing that is free there. Short dimensions go
/// nearest, so that no extension line crosses a dimension line.
pub(super) fn assign(intervals: &[(f64, f64)]) -> Vec<usize> {
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

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn dimensions_of_one_track_never_touch(
            starts in prop::collection::vec((0.0f64..500.0, 1.0f64..200.0), 1..15),
        ) {
            let intervals: Vec<(f64, f64)> = starts.iter().map(|(a, l)| (*a, a + l)).collect();
            let tracks = assign(&intervals);
            for i in 0..intervals.len() {
                for j in 0..i {
                    let apart = intervals[i].1 <= intervals[j].0 || intervals[j].1 <= intervals[i].0;
                    prop_assert!(tracks[i] != tracks[j] || apart);
                }
            }
        }
    }
}
