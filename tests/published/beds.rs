//! Plates on beds and on edges that give: M. Hetényi, Beams on Elastic Foundation, 1946 (values from memory), a stiff plate's
//! sinking, a beam on two springs.

use std::sync::Arc;

use sternknee::physics::strength::panel::{
    Accuracy, Bed, EdgeSupport, Factored, Fineness, Load, Loaded, Meshed, Panel, PlateStiffness, Rect, Resultant,
    Section, Shape, Solution,
};

use super::plate_theory::agrees;
use EdgeSupport::{Elastic, Free};

/// A strip of 1 kN·m² in bending without Poisson's ratio, so stiff in shear and across that neither counts.
fn beam() -> Section {
    let d = BENDING / WIDTH;
    Section::stiffness(PlateStiffness { d11: d, d12: 0.0, d22: 200.0 * d, d66: 0.5 * d, s1: 1e10, s2: 1e10 })
}

const WIDTH: f64 = 0.1;
const BENDING: f64 = 1000.0;

fn strip(length: f64, edges: [EdgeSupport; 4]) -> Panel {
    Panel::rectangle(length, WIDTH, edges, beam())
}

/// Over all of a strip.
fn bed(length: f64, stiffness: f64) -> Bed {
    Bed { from: [0.0, 0.5 * WIDTH], to: [length, 0.5 * WIDTH], width: WIDTH, stiffness }
}

/// A force (N) on all the width of a strip.
fn band(at: f64, force: f64) -> Load {
    Load::Patch { area: Rect { centre: [at, 0.5 * WIDTH], width: 0.004, height: WIDTH }, force }
}

fn fine() -> Accuracy {
    Accuracy { relative: 2e-4, fields: 0.01, ..Accuracy::default() }
}

#[track_caller]
fn balances(s: &Solution) {
    let push = Resultant::total(s.reactions.iter().map(|r| r.push));
    let sum = Resultant::total([push, s.load]);
    for (what, sum, of) in [("force", sum.force, s.load.force), ("moment", sum.moment_z, s.load.moment_z)] {
        assert!(sum.abs() < 1e-8 * of.abs().max(1.0), "{what} {sum} of {of}");
    }
}

#[test]
fn a_strip_on_a_uniform_bed_sinks_by_its_load_over_the_beds_stiffness() {
    let mut panel = strip(1.0, [Free; 4]);
    panel.beds.push(bed(1.0, 2e6));
    let s = panel.solve(&[Load::Pressure(5e4)], fine()).unwrap();
    agrees("sinks", s.largest_deflection, 5e4 * WIDTH / 2e6, 1e-7);
    let least = s.deflection.iter().copied().fold(f64::INFINITY, f64::min);
    agrees("everywhere", least, 5e4 * WIDTH / 2e6, 1e-7);
    balances(&s);
    // Half the bed, half the load: where a bed ends within triangles, its force is still whole.
    let mut half = strip(1.0, [Free; 4]);
    half.beds.push(Bed { width: 0.5 * WIDTH, ..bed(1.0, 2e6) });
    let s = half.solve(&[Load::Pressure(5e4)], fine()).unwrap();
    balances(&s);
    agrees("on a narrow bed", s.largest_deflection, 5e4 * WIDTH / 2e6, 0.01);
}

#[test]
fn a_long_beam_on_a_bed_is_hetenyis() {
    // λ⁴ = k / 4 EI; ends at 8/λ from the load are as good as none.
    let lambda: f64 = 5.0;
    let k = 4.0 * BENDING * lambda.powi(4);
    let (length, force) = (16.0 / lambda, 1000.0);
    let edge = Elastic { deflection: 0.5 * k, turning: 0.0 };
    let mut on_bed = strip(length, [Free; 4]);
    on_bed.beds.push(bed(length, k));
    let on_edges = strip(length, [edge, Free, edge, Free]);
    for (name, panel) in [("bed", on_bed), ("edges", on_edges)] {
        let s = panel.solve(&[band(0.5 * length, force)], fine()).unwrap();
        agrees(name, s.largest_deflection, force * lambda / (2.0 * k), 2e-3);
        for off in [0.5, 1.0, 2.0_f64] {
            let exact = force * lambda / (2.0 * k) * (-off).exp() * (off.cos() + off.sin());
            let found = s.deflection_at([0.5 * length + off / lambda, 0.5 * WIDTH]).unwrap();
            agrees(&format!("{name}, {off}/λ away"), found, exact, 5e-3);
        }
        let moment = s.forces.iter().map(|f| f.moment[0]).fold(0.0, |m: f64, v| if v.abs() > m.abs() { v } else { m });
        agrees(&format!("{name}, moment"), moment.abs() * WIDTH, force / (4.0 * lambda), 0.02);
        balances(&s);
    }
}

#[test]
fn a_beam_on_two_springs_sags_and_sinks() {
    let (length, force, k) = (2.0, 300.0, 40e3);
    let edge = Elastic { deflection: k / WIDTH, turning: 0.0 };
    let s = strip(length, [Free, edge, Free, edge]).solve(&[band(0.5 * length, force)], fine()).unwrap();
    agrees("free to turn", s.largest_deflection, force * length.powi(3) / (48.0 * BENDING) + force / (2.0 * k), 1e-3);
    balances(&s);
    // Ends that turn stiffly: M = P l / 8 over 1 + 2 EI / (c l), from the turning that both sides of an end share.
    let c = 3000.0;
    let edge = Elastic { deflection: k / WIDTH, turning: c / WIDTH };
    let s = strip(length, [Free, edge, Free, edge]).solve(&[band(0.5 * length, force)], fine()).unwrap();
    let end = force * length / 8.0 / (1.0 + 2.0 * BENDING / (c * length));
    let sag = force * length.powi(3) / (48.0 * BENDING) - end * length * length / (8.0 * BENDING);
    agrees("held against turning", s.largest_deflection, sag + force / (2.0 * k), 1e-3);
    balances(&s);
}

/// A rectangle on springs and on one slanting bed, pressed beside that; the bed given from either end.
fn on_a_slanting_bed(backwards: bool) -> (Factored, Loaded, f64) {
    let shape = Shape { chine: [0.5, 0.0], corner: [0.5, 0.4], cutout: None };
    let edge = Elastic { deflection: 5e7, turning: 2e4 };
    let (from, to) = ([-0.3, 0.1], [0.35, 0.3]);
    let [from, to] = if backwards { [to, from] } else { [from, to] };
    let stiffness = 3e7;
    let panel = Panel {
        outline: shape.outline(),
        edges: vec![edge, Free, edge, edge],
        section: Section::stiffness(PlateStiffness::isotropic(9e9, 0.3, 0.04)),
        regions: Vec::new(),
        lines: Vec::new(),
        beds: vec![Bed { from, to, width: 0.06, stiffness }],
    };
    let factored = panel.factored(&Arc::new(Meshed::of(shape, Fineness { size: 0.05, width: 0.05 }))).unwrap();
    let press = Load::Patch { area: Rect { centre: [0.2, 0.3], width: 0.1, height: 0.05 }, force: 9000.0 };
    let loaded = factored.bend(&[[press]]).unwrap().swap_remove(0);
    (factored, loaded, stiffness)
}

/// Winkler's bed: it pushes back at each place by its stiffness times how far that is pushed in.
#[test]
fn told_over_no_width_a_bed_pushes_by_its_stiffness_times_the_deflection_there() {
    let (factored, loaded, stiffness) = on_a_slanting_bed(false);
    let pushes = factored.pushes(&loaded, 1e-6);
    let most = pushes.iter().map(|push| push.per_length.abs()).fold(0.0, f64::max);
    assert!(pushes.len() > 10 && most > 0.0);
    for push in pushes {
        let exact = -stiffness * factored.deflection_at(&loaded, push.at).expect("on the panel");
        assert!((push.per_length - exact).abs() < 1e-9 * most, "{} {exact}", push.per_length);
    }
}

#[test]
fn a_bed_pushes_the_same_from_whichever_end_it_is_given() {
    let pushes = [false, true].map(|backwards| {
        let (factored, loaded, _) = on_a_slanting_bed(backwards);
        factored.pushes(&loaded, 0.1)
    });
    let most = pushes[0].iter().map(|push| push.per_length.abs()).fold(0.0, f64::max);
    assert_eq!(pushes[0].len(), pushes[1].len());
    for (one, other) in pushes[0].iter().zip(pushes[1].iter().rev()) {
        assert!((0..2).all(|k| (one.at[k] - other.at[k]).abs() < 1e-12));
        assert!((one.per_length - other.per_length).abs() < 1e-7 * most, "{one:?} {other:?}");
    }
}

#[test]
fn a_transom_on_springs_hands_over_all_of_its_load() {
    let shape = Shape { chine: [0.9, 0.3], corner: [1.1, 0.8], cutout: Some([0.4, 0.55]) };
    let outline = shape.outline();
    let edges = outline
        .iter()
        .enumerate()
        .map(|(i, p)| if i < 2 || p[0] < -0.8 { Elastic { deflection: 5e7, turning: 2e4 } } else { Free })
        .collect();
    let beds = [-0.5, 0.5].map(|y| Bed { from: [y, 0.2], to: [y, 0.5], width: 0.06, stiffness: 3e7 }).to_vec();
    let section = Section::stiffness(PlateStiffness::isotropic(9e9, 0.3, 0.04));
    let panel = Panel { outline, edges, section, regions: vec![], lines: vec![], beds };
    let factored = panel.factored(&Arc::new(Meshed::of(shape, Fineness { size: 0.05, width: 0.05 }))).unwrap();
    let loads = [vec![
        Load::Patch { area: Rect { centre: [0.1, 0.5], width: 0.03, height: 0.03 }, force: -9000.0 },
        Load::Patch { area: Rect { centre: [-0.2, 0.3], width: 0.3, height: 0.05 }, force: 12_000.0 },
    ]];
    let loaded = factored.bend(&loads).unwrap();
    let (reactions, load) = factored.reactions(&loaded[0]);
    let sum = Resultant::total(reactions.iter().map(|r| r.push).chain([load]));
    let scale: f64 = reactions.iter().map(|r| r.push.force.abs()).sum();
    println!("left over {:.1e} N of {scale:.0}", sum.force);
    assert!((load.force - 3000.0).abs() < 1e-8 * scale);
    assert!(sum.force.abs().max(sum.moment_y.abs()).max(sum.moment_z.abs()) < 1e-9 * scale, "{sum:?}");
}
