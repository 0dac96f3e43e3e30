//! Equilibrium and linearity of plates: reactions balance loads, doubled loads double everything, and a measured deflection
//! gives back its stiffness. These are laws, not figures from a book.

use std::sync::Arc;

use sternknee::physics::strength::panel::{
    Accuracy, EdgeSupport, Fineness, Line, LineKind, Load, Meshed, Panel, PanelError, PlateStiffness, Rect, Region,
    Resultant, Section, Shape, Solution, couple, scale_of_part, scales_of_part,
};

use super::plate_theory::agrees;
use EdgeSupport::{Clamped, Free, Simple};

/// A transom with a V bottom (22°), a cutout, knees, a stringer on springs, a stiffened top edge and a thicker middle.
fn transom() -> Panel {
    let rise = 22.0_f64.to_radians().tan();
    let section = Section::stiffness(PlateStiffness::isotropic(9e9, 0.3, 0.038));
    Panel {
        outline: vec![
            [0.0, 0.0],
            [0.9, 0.9 * rise],
            [1.1, 0.75],
            [1.0, 0.95],
            [0.35, 0.95],
            [0.35, 0.6],
            [-0.35, 0.6],
            [-0.35, 0.95],
            [-1.0, 0.95],
            [-1.1, 0.75],
            [-0.9, 0.9 * rise],
        ],
        edges: vec![Simple, Clamped, Simple, Free, Free, Free, Free, Free, Simple, Clamped, Simple],
        regions: vec![Region {
            outline: vec![[-0.3, 0.2], [0.3, 0.2], [0.3, 0.55], [-0.3, 0.55]],
            section: Section::stiffness(section.stiffness.scaled(2.0)),
        }],
        section,
        lines: vec![
            Line { from: [0.45, 0.45 * rise], to: [0.45, 0.6], kind: LineKind::Supported },
            Line { from: [-0.6, 0.6], to: [-0.4, 0.6], kind: LineKind::Elastic { stiffness: 2e6 } },
            Line { from: [-0.35, 0.6], to: [0.35, 0.6], kind: LineKind::Beam { bending: 4000.0, torsion: 1500.0 } },
        ],
        beds: Vec::new(),
    }
}

fn transom_loads() -> Vec<Load> {
    let upper = Rect { centre: [0.0, 0.54], width: 0.33, height: 0.06 };
    let heel = Rect { centre: [0.0, 0.25], width: 0.30, height: 0.08 };
    let mut loads = couple(heel, upper, 5000.0).unwrap().to_vec();
    loads.push(Load::Patch { area: heel, force: 6000.0 });
    loads.push(Load::Point { at: [-0.8, 0.7], force: -700.0 });
    loads.push(Load::Pressure(800.0));
    loads
}

#[track_caller]
fn balances(name: &str, s: &Solution) -> f64 {
    let push = Resultant::total(s.reactions.iter().map(|r| r.push));
    let sum = Resultant::total([push, s.load]);
    // Single reactions may be far larger than the loads' resultant: the scale is the sum of their sizes.
    let force: f64 = s.reactions.iter().map(|r| r.push.force.abs()).sum::<f64>() + s.load.force.abs();
    let moment: f64 =
        s.reactions.iter().map(|r| r.push.moment_y.abs() + r.push.moment_z.abs()).sum::<f64>() + s.load.moment_y.abs();
    let worst = (sum.force / force).abs().max((sum.moment_y / moment).abs()).max((sum.moment_z / moment).abs());
    println!("{name}: imbalance {worst:.1e}");
    assert!(worst <= 1e-9, "{name}: {worst}");
    worst
}

#[test]
fn reactions_balance_the_loads_in_every_case() {
    let s = transom().solve(&transom_loads(), Accuracy::default()).unwrap();
    println!("transom levels {:?} error {} largest {:?}", s.levels, s.error, (s.largest_deflection, s.largest_at));
    balances("transom", &s);
    let load: f64 = 6000.0 - 700.0 + 800.0 * area(&transom().outline);
    assert!((s.load.force / load - 1.0).abs() < 1e-12, "{} {load}", s.load.force);
    for edges in [[Simple; 4], [Clamped; 4], [Clamped, Free, Free, Free], [Simple, Free, Simple, Free]] {
        for thickness in [0.1, 0.02, 0.002] {
            let section = Section::stiffness(PlateStiffness::isotropic(70e9, 0.33, thickness));
            let loads = [Load::Pressure(10.0), Load::Point { at: [0.3, 0.2], force: 50.0 }];
            let s = Panel::rectangle(1.3, 0.7, edges, section).solve(&loads, Accuracy::default()).unwrap();
            balances(&format!("{edges:?} {thickness}"), &s);
        }
    }
}

fn area(outline: &[[f64; 2]]) -> f64 {
    let n = outline.len();
    (0..n)
        .map(|i| (i, (i + 1) % n))
        .map(|(i, j)| 0.5 * (outline[i][0] * outline[j][1] - outline[j][0] * outline[i][1]))
        .sum()
}

#[test]
fn twice_the_load_gives_twice_of_everything() {
    let once = transom().solve(&transom_loads(), Accuracy::default()).unwrap();
    let doubled: Vec<Load> = transom_loads()
        .into_iter()
        .map(|l| match l {
            Load::Pressure(p) => Load::Pressure(2.0 * p),
            Load::Patch { area, force } => Load::Patch { area, force: 2.0 * force },
            Load::Point { at, force } => Load::Point { at, force: 2.0 * force },
        })
        .collect();
    let twice = transom().solve(&doubled, Accuracy::default()).unwrap();
    for (a, b) in once.deflection.iter().zip(&twice.deflection) {
        assert!((2.0 * a - b).abs() <= 1e-12 * twice.largest_deflection.abs());
    }
    for (a, b) in once.reactions.iter().zip(&twice.reactions) {
        assert!((2.0 * a.push.force - b.push.force).abs() <= 1e-9 * b.push.force.abs().max(1.0));
    }
    for (a, b) in once.forces.iter().zip(&twice.forces) {
        for k in 0..3 {
            assert!(
                (2.0 * a.moment[k] - b.moment[k]).abs()
                    <= 1e-9 * b.moment.iter().map(|m| m.abs()).sum::<f64>().max(1.0)
            );
        }
    }
}

/// A part of what it belongs to, the stated error knows no newtons: on the same meshes it is the same under any load.
#[test]
fn the_stated_errors_are_the_same_under_a_thousandth_and_a_thousand_times_the_load() {
    let few = Accuracy { most_unknowns: 6000, ..Accuracy::default() };
    let under = |times: f64| {
        let loads = [Load::Pressure(times), Load::Point { at: [0.3, 0.2], force: times }];
        let section = Section::stiffness(PlateStiffness::isotropic(9e9, 0.3, 0.02));
        Panel::rectangle(1.0, 0.6, [Simple, Free, Simple, Clamped], section).solve(&loads, few).unwrap()
    };
    let one = under(1.0);
    assert!(one.error > 0.0 && one.error < 0.1 && one.levels.len() > 1, "{}", one.error);
    for times in [1e-3, 1e3] {
        let other = under(times);
        assert_eq!(other.levels.len(), one.levels.len());
        for (found, exact) in [(other.error, one.error), (other.field_error, one.field_error)] {
            assert!((found / exact - 1.0).abs() < 1e-6, "{found} {exact}");
        }
    }
}

/// Statics: a force at `[y, z]` turns about y by its height, about z by minus its y.
#[test]
fn the_resultant_of_a_load_is_its_force_at_its_place() {
    let patch = Rect { centre: [0.4, 0.3], width: 0.1, height: 0.06 };
    let [first, second] = [700.0, -250.0];
    let loads = [Load::Point { at: [0.7, 0.1], force: first }, Load::Patch { area: patch, force: second }];
    let section = Section::stiffness(PlateStiffness::isotropic(9e9, 0.3, 0.02));
    let coarse = Accuracy { relative: f64::INFINITY, fields: f64::INFINITY, ..Accuracy::default() };
    let s = Panel::rectangle(1.0, 0.5, [Simple; 4], section).solve(&loads, coarse).unwrap();
    agrees("force", s.load.force, first + second, 1e-9);
    agrees("about y", s.load.moment_y, first * 0.1 + second * 0.3, 1e-9);
    agrees("about z", s.load.moment_z, -first * 0.7 - second * 0.4, 1e-9);
    balances("a point and a patch", &s);
}

/// A square alike in both directions is its own image in its diagonal: what bends it across bends it up at the mirrored place.
#[test]
fn a_square_does_not_know_its_sides_apart() {
    let shape = Shape { chine: [0.5, 0.0], corner: [0.5, 1.0], cutout: None };
    let panel = Panel {
        outline: shape.outline(),
        edges: vec![Simple; 4],
        section: Section::stiffness(PlateStiffness::isotropic(9e9, 0.3, 0.1)),
        regions: Vec::new(),
        lines: Vec::new(),
        beds: Vec::new(),
    };
    let factored = panel.factored(&Arc::new(Meshed::of(shape, Fineness { size: 0.1, width: 0.1 }))).unwrap();
    // The patch lies on the diagonal.
    let patch = Rect { centre: [-0.2, 0.3], width: 0.13, height: 0.13 };
    let loads = [[Load::Pressure(1000.0), Load::Patch { area: patch, force: 800.0 }]];
    let loaded = factored.bend(&loads).unwrap();
    let nodes = &factored.mesh().nodes;
    let forces = factored.section_forces(&loaded[0]);
    let means = factored.moments_at_nodes(&loaded[0]);
    let mirrored = |[y, z]: [f64; 2]| [z - 0.5, y + 0.5];
    let same = |p: [f64; 2], q: [f64; 2]| (p[0] - q[0]).abs() < 1e-9 && (p[1] - q[1]).abs() < 1e-9;
    let most = forces.iter().flat_map(|f| f.moment).fold(0.0, |most: f64, m| most.max(m.abs()));
    let shear = forces.iter().flat_map(|f| f.shear).fold(0.0, |most: f64, q| most.max(q.abs()));
    for own in &forces {
        let at = mirrored(nodes[own.node as usize]);
        let other = forces.iter().find(|f| same(nodes[f.node as usize], at)).expect("a node");
        let off = |a: f64, b: f64, of: f64| (a - b).abs() / of;
        assert!(off(own.moment[0], other.moment[1], most) < 1e-8, "{own:?} {other:?}");
        assert!(off(own.moment[2], other.moment[2], most) < 1e-8, "{own:?} {other:?}");
        assert!(off(own.shear[0], other.shear[1], shear) < 1e-8, "{own:?} {other:?}");
    }
    for own in &means {
        let other = means.iter().find(|f| same(f.at, mirrored(own.at))).expect("a place");
        assert!((own.moment[0] - other.moment[1]).abs() < 1e-8 * most, "{own:?} {other:?}");
    }
}

#[test]
fn a_strip_on_springs_sinks_by_load_over_stiffness() {
    let d = PlateStiffness::isotropic(10e9, 0.0, 0.05);
    let mut panel = Panel::rectangle(1.0, 0.2, [Free; 4], Section::stiffness(d));
    for z in [0.0, 0.2] {
        panel.lines.push(Line { from: [0.0, z], to: [1.0, z], kind: LineKind::Elastic { stiffness: 1e4 } });
    }
    let s = panel.solve(&[Load::Pressure(500.0)], Accuracy::default()).unwrap();
    agrees("springs", s.largest_deflection, 500.0 * 0.2 / 2e4, 1e-3);
    balances("springs", &s);
}

/// A part that lets go at once where it is softer than so much: a deflection between both is read as that stiffness, to the last digit.
#[test]
fn a_deflection_within_a_jump_is_read_as_the_stiffness_at_which_it_jumps() {
    for at in [0.003, 0.4, 0.97, 30.0] {
        // It moves 2 mm where it is softer, 1/2 mm where it is stiffer.
        let deflection = |scale: f64| Ok(if scale < at { 2e-3 } else { 0.5e-3 });
        for measured in [0.6e-3, 1e-3, 1.9e-3] {
            agrees("jumps", scale_of_part(deflection, measured).unwrap(), at, 1e-6);
        }
    }
}

/// What sags by the inverse of its stiffness and what all but ignores it, read back.
#[test]
fn a_deflection_that_follows_a_power_of_stiffness_is_read_back_by_that_power() {
    for power in [1.0, 0.5, 0.05] {
        let deflection = |scale: f64| Ok(3e-3 * scale.powf(-power));
        for scale in [0.0011, 0.2, 1.0, 7.0, 99.0_f64] {
            let measured = 3e-3 * scale.powf(-power);
            agrees("a power", scale_of_part(deflection, measured).unwrap(), scale, 1e-6);
        }
        for (beyond, told) in [(0.9e-3_f64, 0.0), (110.0, f64::INFINITY)] {
            let found = scales_of_part(deflection, [3e-3, 3e-3 * beyond.powf(-power)]).unwrap();
            agrees("sound", found[0], 1.0, 1e-6);
            assert_eq!(found[1], told, "{power}");
        }
    }
}

#[test]
fn a_measured_deflection_gives_back_the_stiffness_it_came_from() {
    let pull = [Load::Patch { area: Rect { centre: [0.0, 0.4], width: 0.2, height: 0.1 }, force: 900.0 }];
    let at = [0.0, 0.42];
    let whole = |scale: f64| {
        let mut soft = transom();
        soft.section.stiffness = soft.section.stiffness.scaled(scale);
        soft.regions[0].section.stiffness = soft.regions[0].section.stiffness.scaled(scale);
        for line in &mut soft.lines {
            line.kind = match line.kind {
                LineKind::Elastic { stiffness } => LineKind::Elastic { stiffness: scale * stiffness },
                LineKind::Beam { bending, torsion } => {
                    LineKind::Beam { bending: scale * bending, torsion: scale * torsion }
                }
                other => other,
            };
        }
        soft
    };
    let patch = |scale: f64| {
        let mut soft = transom();
        soft.regions[0].section.stiffness = soft.regions[0].section.stiffness.scaled(scale);
        soft
    };
    let moved = |panel: Panel, accuracy| -> Result<f64, PanelError> {
        let solution = panel.solve(&pull, accuracy)?;
        solution.deflection_at(at).ok_or(PanelError::NotFinite { what: "the place" })
    };
    let coarse = Accuracy { relative: f64::INFINITY, fields: f64::INFINITY, ..Accuracy::default() };
    let read = |part: &dyn Fn(f64) -> Panel, measured: f64| scale_of_part(|scale| moved(part(scale), coarse), measured);
    let seen = moved(whole(0.6), coarse).unwrap();
    agrees("whole panel", read(&whole, seen).unwrap(), 0.6, 1e-6);
    let seen = moved(patch(0.35), coarse).unwrap();
    agrees("soft patch, on the mesh that it was seen on", read(&patch, seen).unwrap(), 0.35, 1e-6);
    let fine = Accuracy { relative: 5e-4, ..Accuracy::default() };
    let seen = moved(patch(0.35), fine).unwrap();
    let found = scale_of_part(|scale| moved(patch(scale), fine), seen).unwrap();
    agrees("soft patch, on meshes of its own", found, 0.35, 0.01);
    // The other way than the pull, or not at all.
    for wrong in [-seen, 0.0, f64::NAN] {
        assert!(read(&patch, wrong).is_err());
    }
    let beyond = moved(patch(1e-3), coarse).unwrap() * 1.1;
    assert!(matches!(read(&patch, beyond), Err(PanelError::NoScale { .. })));
}
