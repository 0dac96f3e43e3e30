//! Where the stress on a panel is read, and where it is nearest to its strength.

use super::board::Board;
use crate::physics::strength::panel::{LineKind, Load, Panel, PlyStress, Point, SectionForces};

/// Reach of the fine mesh about a kink, in thicknesses of the panel: stress is read from one outwards.
const ABOUT_KINKS: f64 = 2.0;
/// Part of the leading use of the strength that makes a kink worth a finer mesh: beside it the true stress may be twice what
/// a coarse mesh shows.
const STRAINED: f64 = 0.5;

/// The place nearest to its strength, a thickness away from the corners of the outline and the ends of lines: nearer by, a
/// plate's theory knows no stress, and real corners are rounded. Shear through the thickness counts a thickness away from
/// loads and supports, as timber design takes it (NDS 3.4.3.1, value from memory), and from free edges, where the plate
/// turns its twisting moment round in a layer of that width; what bolts punch through is a part of its own.
pub(super) fn weakest(
    board: &Board,
    panel: &Panel,
    places: impl Iterator<Item = (Point, SectionForces)>,
    loads: &[Load],
) -> Option<(Point, PlyStress)> {
    let layup = panel.section.layup.as_ref()?;
    let near = board.thickness();
    let kinks = kinks(panel);
    let clear = |p: Point| kinks.iter().all(|k| (k[0] - p[0]).hypot(k[1] - p[1]) > near);
    let supports: Vec<[Point; 2]> = panel
        .lines
        .iter()
        .filter(|line| !matches!(line.kind, LineKind::Beam { .. }))
        .map(|line| [line.from, line.to])
        .chain((0..panel.outline.len()).map(|i| [panel.outline[i], panel.outline[(i + 1) % panel.outline.len()]]))
        .collect();
    let sheared = |p: Point| {
        supports.iter().all(|[a, b]| from_segment(p, *a, *b) > near)
            && loads.iter().all(|load| from_load(p, load) > near)
    };
    let mut worst: Option<(Point, PlyStress)> = None;
    for (at, force) in places {
        let leads = |stress: &PlyStress| worst.as_ref().is_none_or(|(_, w)| stress.utilisation >= w.utilisation);
        // Where even the whole shear does not lead, the distances need not be measured.
        let Some(stress) = layup.worst(force.moment, force.shear).filter(leads) else {
            continue;
        };
        if !clear(at) {
            continue;
        }
        let stress = if sheared(at) { Some(stress) } else { layup.worst(force.moment, [0.0; 2]).filter(leads) };
        if let Some(stress) = stress {
            worst = Some((at, stress));
        }
    }
    worst
}

/// Corners of the outline and ends of lines.
fn kinks(panel: &Panel) -> Vec<Point> {
    let ends = panel.lines.iter().flat_map(|line| [line.from, line.to]);
    panel.outline.iter().copied().chain(ends).collect()
}

/// Kinks about which the mesh must be about as fine as the panel is thick, with the reach of that: those near which bending
/// already uses a good part of what the leading stress uses. A coarse triangle does not show the stress beside them.
pub(super) fn strained_kinks(
    board: &Board,
    panel: &Panel,
    forces: impl Iterator<Item = (Point, SectionForces)>,
    leading: f64,
) -> Vec<(Point, f64)> {
    let Some(layup) = panel.section.layup.as_ref() else {
        return Vec::new();
    };
    let reach = ABOUT_KINKS * board.thickness();
    let mut kinks: Vec<(Point, bool)> = kinks(panel).into_iter().map(|k| (k, false)).collect();
    for (at, force) in forces {
        let near = |k: &Point| (k[0] - at[0]).hypot(k[1] - at[1]) <= 1.5 * reach;
        if !kinks.iter().any(|(kink, strained)| !strained && near(kink)) {
            continue;
        }
        let used = layup.worst(force.moment, [0.0; 2]).map_or(0.0, |s| s.utilisation);
        if used >= STRAINED * leading {
            for (kink, strained) in &mut kinks {
                *strained = *strained || near(kink);
            }
        }
    }
    let strained = kinks.into_iter().filter(|(_, strained)| *strained);
    strained.map(|(kink, _)| (kink, reach)).collect()
}

fn from_segment(p: Point, a: Point, b: Point) -> f64 {
    let along = [b[0] - a[0], b[1] - a[1]];
    let square = along[0] * along[0] + along[1] * along[1];
    let t = if square > 0.0 { ((p[0] - a[0]) * along[0] + (p[1] - a[1]) * along[1]) / square } else { 0.0 };
    let t = t.clamp(0.0, 1.0);
    (p[0] - a[0] - t * along[0]).hypot(p[1] - a[1] - t * along[1])
}

fn from_load(p: Point, load: &Load) -> f64 {
    match load {
        Load::Pressure(_) => f64::INFINITY,
        Load::Point { at, .. } => (p[0] - at[0]).hypot(p[1] - at[1]),
        Load::Patch { area, .. } => {
            let out = |k: usize, side: f64| ((p[k] - area.centre[k]).abs() - 0.5 * side).max(0.0);
            out(0, area.width).hypot(out(1, area.height))
        }
    }
}
