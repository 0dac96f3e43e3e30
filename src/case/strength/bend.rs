//! The panel under every load case of an outfit.

use super::board::{Board, Knee};
use super::footing::{Footing, LoadCase};
use super::{Knees, Laden, NoStrength};
use crate::physics::strength::knockdown::KnockDown;
use crate::physics::strength::loads::Case as Kind;
use crate::physics::strength::panel::{
    Accuracy, LineKind, Load, Panel, PanelError, PlyStress, Point, SectionForces, Solution, Solved,
    Wanted,
};
use crate::physics::strength::panel_loads;
use crate::quantity::{Dimensioned, inches, say};

/// Width of the strip along a face's edge that presses on the transom. Common practice, no source.
const STRIP_IN: f64 = 1.5;
/// What the case nearest to the panel's strength is solved to. Where the stress is read the mesh is as fine as the panel is
/// thick besides: so it moves by no more than about 3 % on meshes far finer.
const FOR_STRESS: Accuracy = Accuracy {
    relative: 0.05,
    fields: 0.25,
    most_unknowns: 30_000,
};
/// What the case of ordinary running that moves the panel most is solved to.
const FOR_DEFLECTION: Accuracy = Accuracy {
    relative: 0.05,
    fields: f64::INFINITY,
    most_unknowns: 30_000,
};
/// What a panel is solved to that she does not have: with knees, without, with a sound core.
const FOR_COMPARISON: Accuracy = Accuracy {
    relative: 0.1,
    ..FOR_DEFLECTION
};
/// Distance between knees and faces. Common practice, no source.
const BESIDE_IN: f64 = 1.0;

/// The panel of an outfit.
#[derive(Clone, Debug)]
pub struct Bent {
    /// Each case.
    pub effects: Vec<Effect>,
    /// The case nearest to the panel's strength.
    pub stress: Governing,
    /// The case of ordinary running that moves it most.
    pub deflection: Governing,
}

/// What a case does to the panel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effect {
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
    /// Puts faces with their loads on the transom: every case on one mesh.
    ///
    /// # Errors
    /// Why the panel cannot be solved.
    pub(super) fn of(
        board: &Board,
        left: KnockDown,
        cases: Vec<LoadCase>,
        footings: Vec<Footing>,
    ) -> Result<Laden, NoStrength> {
        let panel = board.panel(left, &board.knees).map_err(unfit)?;
        let sets: Vec<Vec<Load>> = (0..cases.len())
            .map(|case| loads(board, &footings, case))
            .collect();
        let shown = Shown {
            board,
            panel: &panel,
            sets: &sets,
        };
        let solved = panel
            .solve_all(&sets, |solved| {
                shown
                    .leading(solved, &cases)
                    .map_or_else(|_| Wanted::default(), |leading| leading.wanted(board))
            })
            .map_err(unfit)?;
        let leading = shown.leading(&solved, &cases)?;
        let effects = leading
            .worst
            .iter()
            .enumerate()
            .map(|(case, (_, stress))| Effect {
                use_of_strength: stress.utilisation,
                deflection: solved.largest_deflection(case),
            })
            .collect();
        let govern = |case: usize| {
            let (at, stress) = leading.worst[case];
            Governing {
                case,
                factor: 1.0 / stress.utilisation.max(f64::MIN_POSITIVE),
                at,
                stress,
                solution: solved.solution(case),
                panel: panel.clone(),
            }
        };
        let stress = govern(leading.stress);
        let deflection = if leading.deflection == leading.stress {
            stress.clone()
        } else {
            govern(leading.deflection)
        };
        Ok(Laden {
            cases,
            footings,
            bent: Bent {
                effects,
                stress,
                deflection,
            },
        })
    }
}

/// A panel with its sets of loads.
struct Shown<'a> {
    board: &'a Board,
    panel: &'a Panel,
    sets: &'a [Vec<Load>],
}

/// The cases that matter most.
struct Leading {
    /// Where each case is nearest to the strength, and the stress there.
    worst: Vec<(Point, PlyStress)>,
    /// Which is nearest to it.
    stress: usize,
    /// Which of ordinary running moves the panel most.
    deflection: usize,
}

impl Leading {
    fn wanted(&self, board: &Board) -> Wanted {
        Wanted {
            sets: vec![(self.stress, FOR_STRESS), (self.deflection, FOR_DEFLECTION)],
            places: vec![(self.worst[self.stress].0, board.thickness())],
        }
    }
}

impl Shown<'_> {
    fn leading(&self, solved: &Solved, cases: &[LoadCase]) -> Result<Leading, NoStrength> {
        let worst = (0..cases.len())
            .map(|case| self.worst(solved, case))
            .collect::<Result<Vec<_>, _>>()?;
        let pick = |value: &dyn Fn(usize) -> f64| {
            (0..cases.len())
                .max_by(|a, b| value(*a).total_cmp(&value(*b)))
                .unwrap_or(0)
        };
        Ok(Leading {
            stress: pick(&|i| worst[i].1.utilisation),
            deflection: pick(&|i| {
                if is_ordinary(&cases[i]) {
                    solved.largest_deflection(i).abs()
                } else {
                    -1.0
                }
            }),
            worst,
        })
    }

    fn worst(&self, solved: &Solved, set: usize) -> Result<(Point, PlyStress), NoStrength> {
        let places = solved.section_forces(set);
        weakest(self.board, self.panel, places, &self.sets[set])
            .ok_or_else(|| NoStrength::Unfit(say!("The panel shows no stress to judge.")))
    }
}

/// The case nearest to the panel's strength on another panel of the same transom.
///
/// # Errors
/// Why that panel cannot be solved.
pub(super) fn on_another(
    board: &Board,
    panel: &Panel,
    after: &Laden,
) -> Result<Effect, NoStrength> {
    let sets = [loads(board, &after.footings, after.bent.stress.case)];
    let shown = Shown {
        board,
        panel,
        sets: &sets,
    };
    let solved = panel
        .solve_all(&sets, |solved| Wanted {
            sets: vec![(0, FOR_COMPARISON)],
            places: shown
                .worst(solved, 0)
                .map(|(at, _)| (at, board.thickness()))
                .into_iter()
                .collect(),
        })
        .map_err(unfit)?;
    Ok(Effect {
        use_of_strength: shown.worst(&solved, 0)?.1.utilisation,
        deflection: solved.largest_deflection(0),
    })
}

pub(super) fn unfit(error: PanelError) -> NoStrength {
    NoStrength::Unfit(say!(
        "The transom's panel cannot be solved: {}.",
        error.to_string()
    ))
}

/// What the faces bring to the panel in a case.
fn loads(board: &Board, footings: &[Footing], case: usize) -> Vec<Load> {
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
fn weakest(
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
        let factor = |effect: &Effect| 1.0 / effect.use_of_strength.max(f64::MIN_POSITIVE);
        let with = |knees: &[Knee]| {
            let panel = board.panel(left, knees).map_err(unfit)?;
            on_another(board, &panel, after)
        };
        let now = &after.bent.effects[after.bent.stress.case];
        let other = if there {
            with(&[]).ok()
        } else if places.is_empty() {
            None
        } else {
            with(&places).ok()
        };
        let of = |effect: &Effect| (factor(effect), effect.deflection);
        let now = of(now);
        let other = other.as_ref().map(of);
        Ok(Knees {
            there,
            places,
            now,
            other,
        })
    }
}
