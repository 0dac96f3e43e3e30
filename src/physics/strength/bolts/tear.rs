//! How much wood stands above a bolt, between it and the edge, with old holes in it.

/// A hole that is there already, by the square round it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OldHole {
    /// From and to, to port of the middle of the bolt's own hole, m.
    pub across: [f64; 2],
    /// From and to, above the upper rim of the bolt's own hole, m.
    pub up: [f64; 2],
}

/// Wood that a bolt must shear to tear out, m: the mean, over the width of its hole, of the longest run of whole wood
/// between it and the edge. A bolt that has torn into an old hole must still tear out of it, so of the runs below and
/// above a hole the longer counts. `half` is half the hole's width, `to_edge` the distance from its upper rim to the
/// edge. Common practice, no source. Moves by no more than a hole moves, times its share of the width.
pub fn clear_wood(half: f64, to_edge: f64, holes: &[OldHole]) -> f64 {
    let inside = |at: f64| at.clamp(-half, half);
    let mut cuts: Vec<f64> = holes.iter().flat_map(|hole| hole.across.map(inside)).chain([-half, half]).collect();
    cuts.sort_by(f64::total_cmp);
    let sum: f64 = cuts
        .windows(2)
        .map(|pair| {
            let middle = 0.5 * (pair[0] + pair[1]);
            let here = holes.iter().filter(|hole| hole.across[0] < middle && middle < hole.across[1]);
            (pair[1] - pair[0]) * longest_run(to_edge, here)
        })
        .sum();
    if half > 0.0 { sum / (2.0 * half) } else { to_edge.max(0.0) }
}

/// The longest whole stretch from 0 to the edge.
fn longest_run<'h>(to_edge: f64, holes: impl Iterator<Item = &'h OldHole>) -> f64 {
    let mut spans: Vec<[f64; 2]> = holes.map(|hole| hole.up).collect();
    spans.sort_by(|a, b| a[0].total_cmp(&b[0]));
    let (mut from, mut longest) = (0.0_f64, 0.0_f64);
    for [low, high] in spans {
        longest = longest.max(low.min(to_edge) - from);
        from = from.max(high);
    }
    longest.max(to_edge - from)
}
