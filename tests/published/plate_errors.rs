//! Nonsense panels: a clear error each, never a panic.

use sternknee::physics::strength::panel::{
    Accuracy, EdgeSupport, Layup, Line, LineKind, Load, Material, Panel, PanelError, PlateStiffness, Ply, Rect, Region,
    Section, Strength,
};
use uom::si::f64::{Length, Pressure};

use EdgeSupport::{Free, Simple};

fn section() -> Section {
    Section::stiffness(PlateStiffness::isotropic(9e9, 0.3, 0.02))
}

fn panel() -> Panel {
    Panel::rectangle(1.0, 0.5, [Simple; 4], section())
}

fn error(panel: &Panel, load: Load) -> PanelError {
    panel.solve(&[load], Accuracy::default()).unwrap_err()
}

const P: Load = Load::Pressure(1.0);

#[test]
fn no_support_and_a_mechanism_are_told_apart() {
    assert_eq!(error(&Panel::rectangle(1.0, 0.5, [Free; 4], section()), P), PanelError::NoSupport);
    // One simply supported edge: a door on its hinge.
    assert_eq!(error(&Panel::rectangle(1.0, 0.5, [Simple, Free, Free, Free], section()), P), PanelError::Mechanism);
}

#[test]
fn a_panel_without_thickness_is_an_error() {
    let thin = Panel { section: Section::stiffness(PlateStiffness::isotropic(9e9, 0.3, 0.0)), ..panel() };
    assert!(matches!(error(&thin, P), PanelError::NotPositive { what: "D11", .. }));
    let strength = Strength::VonMises { yield_stress: Pressure::new::<uom::si::pressure::megapascal>(200.0) };
    let metal = Material::isotropic(Pressure::new::<uom::si::pressure::gigapascal>(70.0), 0.33, strength);
    let ply = Ply { material: metal, thickness: Length::new::<uom::si::length::meter>(0.0) };
    assert!(matches!(Layup::new(vec![ply]), Err(PanelError::NotPositive { .. })));
    assert_eq!(Layup::new(vec![]), Err(PanelError::NoPlies));
}

#[test]
fn loads_and_lines_outside_the_panel_are_errors() {
    let patch = |y: f64, width: f64| Load::Patch { area: Rect { centre: [y, 0.25], width, height: 0.1 }, force: 1.0 };
    assert!(matches!(error(&panel(), patch(1.2, 0.1)), PanelError::LoadOutside { index: 0, .. }));
    assert!(matches!(error(&panel(), patch(0.98, 0.1)), PanelError::LoadOutside { index: 0, .. }));
    assert!(matches!(error(&panel(), patch(0.5, 0.0)), PanelError::NotPositive { .. }));
    assert!(matches!(error(&panel(), Load::Point { at: [0.5, 0.6], force: 1.0 }), PanelError::LoadOutside { .. }));
    let mut knee = panel();
    knee.lines.push(Line { from: [0.5, 0.1], to: [0.5, 0.7], kind: LineKind::Supported });
    assert!(matches!(error(&knee, P), PanelError::LineOutside { index: 0, .. }));
}

#[test]
fn unsound_outlines_are_errors() {
    let with = |outline: Vec<[f64; 2]>| Panel { edges: vec![Simple; outline.len()], outline, ..panel() };
    let bow = with(vec![[0.0, 0.0], [1.0, 1.0], [1.0, 0.0], [0.0, 1.0]]);
    assert!(matches!(error(&bow, P), PanelError::OutlineDegenerate { .. } | PanelError::OutlineCrosses { .. }));
    let crossed = with(vec![[0.0, 0.0], [2.0, 0.0], [2.0, 1.0], [1.0, -0.5], [0.0, 1.0]]);
    assert!(matches!(error(&crossed, P), PanelError::OutlineCrosses { .. }));
    let twice = with(vec![[0.0, 0.0], [0.0, 0.0], [1.0, 0.0], [1.0, 1.0]]);
    assert!(matches!(error(&twice, P), PanelError::OutlineDegenerate { corner: 0 }));
    let flat = with(vec![[0.0, 0.0], [1.0, 0.0], [2.0, 0.0]]);
    assert!(matches!(error(&flat, P), PanelError::OutlineDegenerate { .. } | PanelError::OutlineCrosses { .. }));
    let nan = with(vec![[0.0, 0.0], [f64::NAN, 0.0], [1.0, 1.0]]);
    assert!(matches!(error(&nan, P), PanelError::NotFinite { .. }));
    let short = Panel { edges: vec![Simple; 3], ..panel() };
    assert_eq!(error(&short, P), PanelError::Outline { corners: 4, supports: 3 });
}

/// A notch that comes just up to the edge across, and one that runs along it: wherever the corners are counted from and whichever way.
#[test]
fn an_outline_that_touches_itself_is_an_error_whichever_corner_is_the_first() {
    let tip = vec![[0.0, 0.0], [1.0, 1.0], [2.0, 0.0], [2.0, 1.0], [0.0, 1.0]];
    let flat = vec![[0.0, 0.0], [0.7, 1.0], [1.3, 1.0], [2.0, 0.0], [2.0, 1.0], [0.0, 1.0]];
    // The same a hair short of it is a sound panel.
    let mut short = tip.clone();
    short[1][1] = 0.9;
    for (name, outline, sound) in [("tip", tip, false), ("flat", flat, false), ("short", short, true)] {
        let n = outline.len();
        for first in 0..n {
            for backwards in [false, true] {
                let mut corners = outline.clone();
                corners.rotate_left(first);
                if backwards {
                    corners.reverse();
                }
                let with = Panel { edges: vec![Simple; n], outline: corners, ..panel() };
                let coarse = Accuracy { relative: f64::INFINITY, fields: f64::INFINITY, ..Accuracy::default() };
                let found = with.solve(&[P], coarse).map(|_| ());
                if sound {
                    assert_eq!(found, Ok(()), "{name} from {first}");
                } else {
                    assert!(matches!(found, Err(PanelError::OutlineCrosses { .. })), "{name} from {first}: {found:?}");
                }
            }
        }
    }
}

/// A ribbon five thousand times as long as wide, with 46 stringers along it: more nodes on its lines than a first mesh may have.
#[test]
fn features_far_smaller_than_the_panel_are_an_error_and_not_a_long_wait() {
    let (length, width) = (1000.0, 0.2);
    let mut ribbon = Panel::rectangle(length, width, [Simple; 4], section());
    for i in 1..47 {
        let z = f64::from(i) * width / 47.0;
        ribbon.lines.push(Line { from: [0.0, z], to: [length, z], kind: LineKind::Supported });
    }
    match error(&ribbon, P) {
        PanelError::Mesh { reason } => assert!(reason.contains("too many or too small"), "{reason}"),
        other => panic!("{other:?}"),
    }
}

#[test]
fn numbers_that_are_not_numbers_are_errors() {
    assert!(matches!(error(&panel(), Load::Pressure(f64::NAN)), PanelError::NotFinite { .. }));
    let mut soft = panel();
    soft.section.stiffness.d12 = f64::INFINITY;
    assert!(matches!(error(&soft, P), PanelError::NotFinite { .. }));
    soft.section.stiffness.d12 = 2.0 * soft.section.stiffness.d11;
    assert_eq!(error(&soft, P), PanelError::StiffnessIndefinite);
    let mut region = panel();
    region.regions.push(Region { outline: vec![[0.1, 0.1], [0.2, 0.2]], section: section() });
    assert_eq!(error(&region, P), PanelError::Region { index: 0 });
}

#[test]
fn strange_but_sound_panels_are_solved() {
    // Regions that overhang, overlap and share edges; lines that cross, meet and lie on edges.
    let mut strange = panel();
    strange
        .regions
        .push(Region { outline: vec![[-0.2, 0.1], [0.4, 0.1], [0.4, 0.3], [-0.2, 0.3]], section: section() });
    strange.regions.push(Region { outline: vec![[0.3, 0.2], [0.8, 0.2], [0.8, 0.5], [0.3, 0.5]], section: section() });
    for (from, to) in [([0.1, 0.4], [0.9, 0.05]), ([0.2, 0.0], [0.2, 0.5]), ([0.0, 0.5], [0.6, 0.5])] {
        strange.lines.push(Line { from, to, kind: LineKind::Beam { bending: 100.0, torsion: 10.0 } });
    }
    let solution = strange.solve(&[P], Accuracy::default()).unwrap();
    assert!(solution.largest_deflection > 0.0);
    // A long sliver, and a polygon of many short edges.
    let sliver = Panel::rectangle(5.0, 0.02, [Simple; 4], section());
    assert!(sliver.solve(&[P], Accuracy::default()).is_ok());
    let round: Vec<[f64; 2]> = (0..60).map(|k| (f64::from(k) * 6.0_f64.to_radians()).sin_cos().into()).collect();
    let disc = Panel { edges: vec![Simple; 60], outline: round, ..panel() };
    let solution = disc.solve(&[P], Accuracy::default()).unwrap();
    // Simply supported circular plate, Timoshenko article 16: w = (5 + ν) q a⁴ / 64 (1 + ν) D. A polygon whose edges may not
    // turn along themselves is stiffer, however many they are: down to 6/2 in place of 5.3/1.3 (I. Babuška's paradox).
    let part = solution.largest_deflection / (5.3 / (64.0 * 1.3 * disc.section.stiffness.d11));
    assert!((3.0 * 1.3 / 5.3..1.01).contains(&part), "{part}");
    let zero = panel().solve(&[Load::Pressure(0.0)], Accuracy::default()).unwrap();
    assert_eq!((zero.largest_deflection, zero.converged), (0.0, true));
}
