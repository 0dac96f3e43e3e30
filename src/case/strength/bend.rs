//! The panel under every load case of an outfit.

use super::board::{Board, Knee};
use super::footing::{Footing, LoadCase};
use super::{Knees, Laden, NoStrength};
use crate::physics::strength::knockdown::KnockDown;
use crate::physics::strength::loads::Case as Kind;
use crate::physics::strength::panel::{
    Accuracy, LineKind, Load, Look, Panel, PanelError, PlyStress, Point, Ready, SectionForces,
    Solution,
};
use crate::physics::strength::panel_loads;
use crate::quantity::{Dimensioned, inches, say};

/// Width of the strip along a face's edge that presses on the transom. Common practice, no source.
const STRIP_IN: f64 = 1.5;
/// Error of the largest deflection that the governing cases are solved to.
const ACCURACY: Accuracy = Accuracy {
    relative: 0.05,
    fields: f64::INFINITY,
    most_unknowns: 12_000,
};
/// Distance between knees and faces. Common practice, no source.
const BESIDE_IN: f64 = 1.0;

/// The panel of an outfit.
#[derive(Clone, Debug)]
pub struct Bent {
    /// A first look at each case, on the first mesh.
    pub glances: Vec<Glance>,
    /// The case nearest to the panel's strength, solved to a stated error.
    pub stress: Governing,
    /// The case of ordinary running that moves it most.
    pub deflection: Governing,
}

/// What a case does to the panel.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Glance {
    /// Stress over strength.
    pub use_of_strength: f64,
    /// Largest deflection, m, forward positive.
    pub deflection: f64,
}

/// A case worked out.
#[derive(Clone, Debug)]
pub struct Governing {
    /// Which of the cases.
    pub case: usize,
    /// Strength over stress.
    pub factor: f64,
    /// Where it is least, and the stress there.
    pub at: Point,
    pub stress: PlyStress,
    /// The whole solution.
    pub solution: Solution,
    /// The panel that was solved.
    pub panel: Panel,
}

/// Cases that come with ordinary running, by which deflection is judged.
fn is_ordinary(case: &LoadCase) -> bool {
    !matches!(case.kind, Kind::Slamming | Kind::Trailer)
}

impl Laden {
    /// Puts faces with their loads on the transom.
    ///
    /// # Errors
    /// Why the panel cannot be solved.
    pub fn of(
        board: &Board,
        left: KnockDown,
        cases: Vec<LoadCase>,
        footings: Vec<Footing>,
    ) -> Result<Laden, NoStrength> {
        let panel = board.panel(left, &board.knees).map_err(unfit)?;
        let sets: Vec<Vec<Load>> = (0..cases.len())
            .map(|case| loads(board, &footings, case))
            .collect();
        let ready = panel.ready().map_err(unfit)?;
        let glances = sets
            .iter()
            .map(|loads| {
                let look = ready.look(loads).map_err(unfit)?;
                Ok(glance(board, &panel, &look, loads))
            })
            .collect::<Result<Vec<Glance>, NoStrength>>()?;
        let pick = |value: &dyn Fn(usize) -> f64| {
            (0..cases.len())
                .max_by(|a, b| value(*a).total_cmp(&value(*b)))
                .unwrap_or(0)
        };
        let by_stress = pick(&|i| glances[i].use_of_strength);
        let by_deflection = pick(&|i| {
            if is_ordinary(&cases[i]) {
                glances[i].deflection.abs()
            } else {
                -1.0
            }
        });
        let govern = |case| govern(board, &panel, &ready, &sets, case);
        let stress = govern(by_stress)?;
        let deflection = if by_deflection == by_stress {
            stress.clone()
        } else {
            govern(by_deflection)?
        };
        Ok(Laden {
            cases,
            footings,
            bent: Bent {
                glances,
                stress,
                deflection,
            },
        })
    }
}

fn govern(
    board: &Board,
    panel: &Panel,
    ready: &Ready,
    sets: &[Vec<Load>],
    case: usize,
) -> Result<Governing, NoStrength> {
    let loads = &sets[case];
    let solution = ready.solve(loads, ACCURACY).map_err(unfit)?;
    let nothing = || NoStrength::Unfit(say!("The panel shows no stress to judge."));
    let (at, stress) = weakest(board, panel, at_nodes(&solution), loads).ok_or_else(nothing)?;
    Ok(Governing {
        case,
        factor: 1.0 / stress.utilisation.max(f64::MIN_POSITIVE),
        at,
        stress,
        solution,
        panel: panel.clone(),
    })
}

pub(super) fn unfit(error: PanelError) -> NoStrength {
    NoStrength::Unfit(say!(
        "The transom's panel cannot be solved: {}.",
        error.to_string()
    ))
}

/// What the faces bring to the panel in a case.
pub(super) fn loads(board: &Board, footings: &[Footing], case: usize) -> Vec<Load> {
    let strip = inches(STRIP_IN).si();
    footings
        .iter()
        .filter_map(|footing| {
            let forces = footing.forces.get(case)?;
            Some(panel_loads(
                &footing.bolts,
                footing.face,
                forces,
                &footing.spreads(board),
                strip,
            ))
        })
        .flatten()
        .collect()
}

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
    let kinks: Vec<Point> = panel
        .outline
        .iter()
        .copied()
        .chain(panel.lines.iter().flat_map(|line| [line.from, line.to]))
        .collect();
    let clear = |p: Point| {
        kinks
            .iter()
            .all(|k| (k[0] - p[0]).hypot(k[1] - p[1]) > near)
    };
    let supports: Vec<[Point; 2]> = panel
        .lines
        .iter()
        .filter(|line| !matches!(line.kind, LineKind::Beam { .. }))
        .map(|line| [line.from, line.to])
        .chain((0..panel.outline.len()).map(|i| {
            [
                panel.outline[i],
                panel.outline[(i + 1) % panel.outline.len()],
            ]
        }))
        .collect();
    let sheared = |p: Point| {
        supports.iter().all(|[a, b]| from_segment(p, *a, *b) > near)
            && loads.iter().all(|load| from_load(p, load) > near)
    };
    let mut worst: Option<(Point, PlyStress)> = None;
    for (at, force) in places {
        let leads = |stress: &PlyStress| {
            worst
                .as_ref()
                .is_none_or(|(_, w)| stress.utilisation >= w.utilisation)
        };
        // Where even the whole shear does not lead, the distances need not be measured.
        let Some(stress) = layup.worst(force.moment, force.shear).filter(leads) else {
            continue;
        };
        if !clear(at) {
            continue;
        }
        let stress = if sheared(at) {
            Some(stress)
        } else {
            layup.worst(force.moment, [0.0; 2]).filter(leads)
        };
        if let Some(stress) = stress {
            worst = Some((at, stress));
        }
    }
    worst
}

/// A solution's section forces with their places.
fn at_nodes(solution: &Solution) -> impl Iterator<Item = (Point, SectionForces)> {
    let place = |force: &SectionForces| (solution.mesh.nodes[force.node as usize], *force);
    solution.forces.iter().map(place)
}

/// What a look shows.
fn glance(board: &Board, panel: &Panel, look: &Look, loads: &[Load]) -> Glance {
    let worst = weakest(board, panel, look.forces.iter().copied(), loads);
    Glance {
        use_of_strength: worst.map_or(0.0, |(_, stress)| stress.utilisation),
        deflection: look.largest_deflection,
    }
}

/// What the first mesh shows of one set of loads.
pub(super) fn first_look(
    board: &Board,
    panel: &Panel,
    loads: &[Load],
) -> Result<Glance, NoStrength> {
    let look = panel.ready().and_then(|ready| ready.look(loads));
    Ok(glance(board, panel, &look.map_err(unfit)?, loads))
}

fn from_segment(p: Point, a: Point, b: Point) -> f64 {
    let along = [b[0] - a[0], b[1] - a[1]];
    let square = along[0] * along[0] + along[1] * along[1];
    let t = if square > 0.0 {
        ((p[0] - a[0]) * along[0] + (p[1] - a[1]) * along[1]) / square
    } else {
        0.0
    };
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

impl Knees {
    /// Takes the knees away, or puts a pair where there is none.
    ///
    /// # Errors
    /// Why the panel cannot be solved as it is.
    pub fn of(board: &Board, left: KnockDown, after: &Laden) -> Result<Knees, NoStrength> {
        let there = !board.knees.is_empty();
        let beside = inches(BESIDE_IN).si();
        let edge = after
            .footings
            .iter()
            .filter(|footing| !footing.is_small())
            .map(|footing| footing.face.port.abs().max(footing.face.starboard.abs()))
            .fold(0.0, f64::max);
        let places: Vec<Knee> = [edge + beside, -edge - beside]
            .into_iter()
            .filter_map(|y| board.knee(y, None))
            .collect();
        let case = after.bent.stress.case;
        let look = |knees: &[Knee]| -> Result<(f64, f64), NoStrength> {
            let panel = board.panel(left, knees).map_err(unfit)?;
            let loads = loads(board, &after.footings, case);
            let seen = first_look(board, &panel, &loads)?;
            Ok((
                1.0 / seen.use_of_strength.max(f64::MIN_POSITIVE),
                seen.deflection,
            ))
        };
        let glance = &after.bent.glances[case];
        let now = (
            1.0 / glance.use_of_strength.max(f64::MIN_POSITIVE),
            glance.deflection,
        );
        let other = if there {
            look(&[]).ok()
        } else if places.is_empty() {
            None
        } else {
            look(&places).ok()
        };
        Ok(Knees {
            there,
            places,
            now,
            other,
        })
    }
}
