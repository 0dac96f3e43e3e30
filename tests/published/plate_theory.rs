//! Closed forms of plate theory, worked out here: Navier's double series for a simply supported orthotropic plate with
//! transverse shear (Timoshenko and Woinowsky-Krieger, articles 28 and 39; the shear terms are Reissner's and Mindlin's),
//! the thin limit, a sandwich, plies, beams.

use std::f64::consts::PI;

use sternknee::physics::strength::panel::{
    Accuracy, EdgeSupport, Layup, Line, LineKind, Load, Material, Panel, PlateStiffness, Ply, Rect, Section, Strength,
    couple, written_layers,
};
use sternknee::working::Sheet;
use uom::si::f64::{Length, Pressure};
use uom::si::{length::millimeter, pressure::megapascal};

use EdgeSupport::{Clamped, Free, Simple};

/// Central deflection (m) of an a × b plate, simply supported all round (hard), under uniform pressure.
fn navier(d: &PlateStiffness, a: f64, b: f64, pressure: f64) -> f64 {
    let mut sum = 0.0;
    for m in (1..160).step_by(2) {
        for n in (1..160).step_by(2) {
            let (m, n) = (f64::from(m), f64::from(n));
            let (p, r) = (m * PI / a, n * PI / b);
            let matrix = nalgebra::Matrix3::new(
                d.s1 * p * p + d.s2 * r * r,
                d.s1 * p,
                d.s2 * r,
                d.s1 * p,
                d.d11 * p * p + d.d66 * r * r + d.s1,
                (d.d12 + d.d66) * p * r,
                d.s2 * r,
                (d.d12 + d.d66) * p * r,
                d.d66 * p * p + d.d22 * r * r + d.s2,
            );
            let load = 16.0 * pressure / (PI * PI * m * n);
            let w = matrix.lu().solve(&nalgebra::Vector3::new(load, 0.0, 0.0)).unwrap()[0];
            sum += w * (m * PI / 2.0).sin() * (n * PI / 2.0).sin();
        }
    }
    sum
}

fn tight() -> Accuracy {
    Accuracy { relative: 0.001, ..Accuracy::default() }
}

fn simple(d: PlateStiffness, a: f64, b: f64) -> Panel {
    Panel::rectangle(a, b, [Simple; 4], Section::stiffness(d))
}

#[track_caller]
pub(crate) fn agrees(what: &str, found: f64, exact: f64, tolerance: f64) {
    let error = found / exact - 1.0;
    println!("{what}: {found:.6e} exact {exact:.6e} error {:+.4} %", 100.0 * error);
    assert!(error.abs() <= tolerance, "{what}: {found} against {exact}");
}

/// A plate that is alike in all directions does not know which way it lies: turned and moved, held hard along slanting edges, it sags
/// and hands over as much. Timoshenko and Woinowsky-Krieger, article 30, has its sag: 0.00772 q a⁴ / D for sides as 3 to 2
/// (from memory).
#[test]
fn a_plate_turned_in_its_plane_sags_as_before() {
    let stiffness = PlateStiffness::isotropic(70e9, 0.3, 0.005);
    for (degrees, away) in [(0.0_f64, [0.0, 0.0]), (30.0, [0.0, 0.0]), (45.0, [2.0, -3.0]), (117.0, [-40.0, 25.0])] {
        let (sin, cos) = degrees.to_radians().sin_cos();
        let mut panel = simple(stiffness, 1.5, 1.0);
        for corner in &mut panel.outline {
            let [y, z] = *corner;
            *corner = [away[0] + cos * y - sin * z, away[1] + sin * y + cos * z];
        }
        let solved = panel.solve(&[Load::Pressure(1000.0)], tight()).unwrap();
        agrees("turned", solved.largest_deflection * stiffness.d11 / 1000.0, 0.00772, 0.004);
        let handed: f64 = solved.reactions.iter().map(|one| one.push.force).sum();
        agrees("handed over", handed.abs(), 1.5 * 1000.0, 1e-6);
    }
}

#[test]
fn a_plate_neither_locks_when_thin_nor_loses_its_shear_when_thick() {
    for ratio in [2e-1, 1e-1, 1e-2, 1e-3, 1e-4] {
        let d = PlateStiffness::isotropic(70e9, 0.3, ratio);
        let pressure = 1e4 * ratio.powi(3);
        let s = simple(d, 1.0, 1.0).solve(&[Load::Pressure(pressure)], tight()).unwrap();
        agrees(&format!("t/L {ratio:e}"), s.largest_deflection, navier(&d, 1.0, 1.0, pressure), 0.002);
        // The same mesh for every thickness: the error may not grow as the plate thins.
        let coarse = Accuracy { relative: f64::INFINITY, fields: f64::INFINITY, ..tight() };
        let s = simple(d, 1.0, 1.0).solve(&[Load::Pressure(pressure)], coarse).unwrap();
        agrees(&format!("t/L {ratio:e} coarse"), s.largest_deflection, navier(&d, 1.0, 1.0, pressure), 0.001);
    }
}

#[test]
fn an_orthotropic_plate_sags_as_naviers_series_says() {
    for (a, b) in [(1.0, 1.0), (1.5, 1.0), (0.6, 1.2)] {
        let d = PlateStiffness { d11: 12000.0, d12: 400.0, d22: 3000.0, d66: 700.0, s1: 8e6, s2: 3e6 };
        let s = simple(d, a, b).solve(&[Load::Pressure(1000.0)], tight()).unwrap();
        agrees(&format!("orthotropic {a} x {b}"), s.largest_deflection, navier(&d, a, b, 1000.0), 0.002);
    }
}

fn mpa(value: f64) -> Pressure {
    Pressure::new::<megapascal>(value)
}

fn ply(material: Material, thickness: f64) -> Ply {
    Ply { material, thickness: Length::new::<millimeter>(thickness) }
}

fn skin() -> Material {
    let strength = Strength::MaxStress {
        along_y: mpa(120.0),
        along_z: mpa(120.0),
        plane_shear: mpa(60.0),
        shear_y: mpa(20.0),
        shear_z: mpa(20.0),
    };
    Material::isotropic(mpa(12_000.0), 0.3, strength)
}

#[test]
fn a_sandwich_has_the_stiffness_and_stress_of_its_closed_form_and_sags_by_bending_and_shear() {
    let (t, c, e, nu, g) = (3e-3_f64, 40e-3_f64, 12e9, 0.3, 25e6);
    let layup = Layup::sandwich(ply(skin(), 3.0), ply(Material::core(mpa(25.0), mpa(0.8), mpa(1.5)), 40.0)).unwrap();
    let d = layup.stiffness().unwrap();
    let bending = e / (1.0 - nu * nu) * ((c + 2.0 * t).powi(3) - c.powi(3)) / 12.0;
    agrees("sandwich D", d.d11, bending, 1e-5);
    // Allen, Analysis and Design of Structural Sandwich Panels, 1969: S = G d²/c with d = c + t, skins thin and stiff in shear.
    agrees("sandwich S", d.s1, g * (c + t).powi(2) / c, 0.01);
    let s = Panel::rectangle(1.2, 0.8, [Simple; 4], Section::layup(layup.clone()).unwrap())
        .solve(&[Load::Pressure(5000.0)], tight())
        .unwrap();
    agrees("sandwich sag", s.largest_deflection, navier(&d, 1.2, 0.8, 5000.0), 0.002);
    let stresses: Vec<_> = layup.stresses([1000.0, 0.0, 0.0], [500.0, 0.0]).collect();
    let outer = stresses.last().unwrap();
    let section = ((c + 2.0 * t).powi(3) - c.powi(3)) / 12.0;
    agrees("skin stress", outer.plane[0], 1000.0 * (0.5 * c + t) / section, 1e-4);
    let core = stresses.iter().filter(|s| s.ply == 1).map(|s| s.through[0]).fold(0.0, f64::max);
    agrees("core shear", core, 500.0 / (c + t), 0.01);
}

#[test]
fn one_ply_has_the_textbook_stiffness_and_shear_peak() {
    let layup = Layup::new(vec![ply(skin(), 18.0)]).unwrap();
    let book = PlateStiffness::isotropic(12e9, 0.3, 0.018);
    let d = layup.stiffness().unwrap();
    for (found, exact) in [(d.d11, book.d11), (d.d12, book.d12), (d.d66, book.d66), (d.s1, book.s1), (d.s2, book.s2)] {
        agrees("one ply", found, exact, 1e-12);
    }
    let peak = layup.stresses([0.0; 3], [300.0, 0.0]).map(|s| s.through[0]).fold(0.0, f64::max);
    agrees("shear peak 3Q/2t", peak, 1.5 * 300.0 / 0.018, 1e-12);
    let face = layup.worst([150.0, 0.0, 0.0], [0.0; 2]).unwrap();
    agrees("bending stress 6M/t²", face.plane[0].abs(), 6.0 * 150.0 / 0.018_f64.powi(2), 1e-12);
}

#[test]
fn plywood_stiffness_follows_its_plies() {
    // Three plies of t/3, grain along y outside: D11 (1 − 1/27) E1 + E2/27, D22 the other way round (ν neglected).
    let strength = Strength::MaxStress {
        along_y: mpa(40.0),
        along_z: mpa(3.0),
        plane_shear: mpa(7.0),
        shear_y: mpa(7.0),
        shear_z: mpa(2.0),
    };
    let wood = Material {
        modulus_y: mpa(12_000.0),
        modulus_z: mpa(600.0),
        poisson: 0.0,
        shear_plane: mpa(700.0),
        shear_y: mpa(700.0),
        shear_z: mpa(60.0),
        strength,
    };
    let layup = Layup::new(vec![ply(wood, 6.0), ply(wood.turned(), 6.0), ply(wood, 6.0)]).unwrap();
    let d = layup.stiffness().unwrap();
    let inertia = 0.018_f64.powi(3) / 12.0;
    agrees("plywood D11", d.d11, inertia * (12e9 * 26.0 / 27.0 + 0.6e9 / 27.0), 1e-12);
    agrees("plywood D22", d.d22, inertia * (0.6e9 * 26.0 / 27.0 + 12e9 / 27.0), 1e-12);
    agrees("plywood D66", d.d66, inertia * 0.7e9, 1e-12);
    assert!(d.s1 < 700e6 * 0.018 * 5.0 / 6.0, "rolling shear of the cross ply must count");
}

#[test]
fn a_cantilever_strip_bends_like_a_beam() {
    // ν = 0 makes the strip a beam: tip P l³/3EI + P l/S; the patch is a narrow band at the tip.
    let d = PlateStiffness::isotropic(10e9, 0.0, 0.02);
    let (l, b) = (1.0, 0.1);
    let panel = Panel::rectangle(l, b, [Free, Free, Free, Clamped], Section::stiffness(d));
    let tip = Rect { centre: [l - 0.001, 0.5 * b], width: 0.002, height: b };
    let s = panel.solve(&[Load::Patch { area: tip, force: 20.0 }], tight()).unwrap();
    let exact = 20.0 * (l - 0.001_f64).powi(3) / (3.0 * d.d11 * b) * (1.0 + 1.5 * 0.001 / l) + 20.0 * l / (d.s1 * b);
    agrees("cantilever", s.largest_deflection, exact, 0.002);
}

#[test]
fn an_edge_beam_carries_its_share_of_a_strip() {
    // Plate strip (ν = 0) simply supported at both ends with beams of equal stiffness on both long edges: half the load each.
    let d = PlateStiffness::isotropic(10e9, 0.0, 0.02);
    let (l, b) = (2.0, 0.1);
    let mut panel = Panel::rectangle(l, b, [Free, Simple, Free, Simple], Section::stiffness(d));
    let bending = 0.5 * d.d11 * b;
    for z in [0.0, b] {
        panel.lines.push(Line { from: [0.0, z], to: [l, z], kind: LineKind::Beam { bending, torsion: 0.0 } });
    }
    let s = panel.solve(&[Load::Pressure(100.0)], tight()).unwrap();
    let exact = 5.0 * 100.0 * b * l.powi(4) / (384.0 * 2.0 * d.d11 * b);
    agrees("edge beams", s.largest_deflection, exact, 0.003);
}

/// Two forces, one up and one down on either side of a beam along the middle, leave it straight; where it can't twist either, each half is
/// a plate clamped along it. However the panel lies: the plate is alike in all directions.
#[test]
fn a_beam_that_can_not_twist_clamps_both_halves_of_a_plate() {
    let stiffness = PlateStiffness::isotropic(70e9, 0.3, 0.005);
    let half = Panel::rectangle(1.0, 0.4, [Clamped, Simple, Simple, Simple], Section::stiffness(stiffness));
    let read = |panel: &Panel, loads: &[Load], at: [f64; 2]| {
        panel.solve(loads, tight()).unwrap().deflection_at(at).expect("on the panel")
    };
    let clamped = read(&half, &[Load::Point { at: [0.5, 0.2], force: 100.0 }], [0.3, 0.25]);
    for degrees in [0.0_f64, 45.0, 117.0] {
        let (sin, cos) = degrees.to_radians().sin_cos();
        let turned = |[y, z]: [f64; 2]| [cos * y - sin * z, sin * y + cos * z];
        let mut panel = simple(stiffness, 1.0, 0.8);
        panel.outline.iter_mut().for_each(|corner| *corner = turned(*corner));
        let loads = [(0.6, 100.0), (0.2, -100.0)].map(|(z, force)| Load::Point { at: turned([0.5, z]), force });
        let mut with = |torsion: f64| {
            let kind = LineKind::Beam { bending: 0.1 * stiffness.d11, torsion };
            panel.lines = vec![Line { from: turned([0.0, 0.4]), to: turned([1.0, 0.4]), kind }];
            read(&panel, &loads, turned([0.3, 0.65]))
        };
        agrees(&format!("at {degrees} degrees"), with(1e5 * stiffness.d11), clamped, 0.01);
        assert!(with(0.0) > 1.2 * clamped, "free to twist");
    }
}

/// A bar held at both ends under an even torque turns in the middle by t l² / 8 GJ (St Venant; any handbook). Its arms are a strip
/// across it that hardly bends upwards and else is limp: 4 D66 of its own for each metre of width.
#[test]
fn a_beam_along_a_limp_strip_twists_as_saint_venants_bar() {
    let (length, width, torsion, force) = (2.0, 0.2, 100.0, 10.0);
    let limp = PlateStiffness { d11: 1.0, d12: 0.0, d22: 1e4, d66: 0.5, s1: 1e8, s2: 1e8 };
    let mut panel = Panel::rectangle(length, width, [Free, Simple, Free, Simple], Section::stiffness(limp));
    let kind = LineKind::Beam { bending: 50.0, torsion };
    panel.lines.push(Line { from: [0.0, 0.5 * width], to: [length, 0.5 * width], kind });
    let arm = |part: f64, force: f64| {
        let area = Rect { centre: [0.5 * length, part * width], width: length, height: 0.5 * width };
        Load::Patch { area, force }
    };
    let s = panel.solve(&[arm(0.75, force), arm(0.25, -force)], tight()).unwrap();
    let torque = force * 0.5 * width / length;
    let turned = torque * length * length / (8.0 * (torsion + 4.0 * limp.d66 * width));
    agrees("twisted", s.deflection_at([0.5 * length, 0.95 * width]).unwrap(), turned * 0.45 * width, 0.005);
}

/// Stiffness is in proportion to the modulus, whatever the direction.
#[test]
fn a_plate_of_a_quarter_of_the_modulus_has_a_quarter_of_every_stiffness() {
    let (whole, quarter) = (PlateStiffness::isotropic(8e9, 0.3, 0.03), PlateStiffness::isotropic(2e9, 0.3, 0.03));
    let scaled = whole.scaled(0.25);
    for (found, exact) in [
        (scaled.d11, quarter.d11),
        (scaled.d12, quarter.d12),
        (scaled.d22, quarter.d22),
        (scaled.d66, quarter.d66),
        (scaled.s1, quarter.s1),
        (scaled.s2, quarter.s2),
    ] {
        agrees("a quarter", found, exact, 1e-12);
    }
}

/// Of a lay-up alike on both sides, and of one that is not: what is printed layer by layer is what the plate runs on.
#[test]
fn the_shares_that_are_written_layer_by_layer_sum_up_to_the_stiffness_that_runs() {
    let core = || ply(Material::core(mpa(25.0), mpa(0.8), mpa(1.5)), 40.0);
    for plies in [
        vec![ply(skin(), 18.0)],
        vec![ply(skin(), 3.0), core(), ply(skin(), 3.0)],
        vec![ply(skin(), 6.0), core(), ply(skin().turned(), 2.0)],
    ] {
        let layup = Layup::new(plies).unwrap();
        let runs = layup.stiffness().unwrap();
        let written = written_layers(&mut Sheet::default(), &layup).map(|term| term.value().value);
        for (what, written, runs) in
            [("D11", written[0], runs.d11), ("D22", written[1], runs.d22), ("D12", written[2], runs.d12)]
        {
            agrees(what, written, runs, 1e-12);
        }
        for (what, at, runs) in [("D11", [0, 0], runs.d11), ("D66", [2, 2], runs.d66)] {
            let shares: f64 = layup.layers().map(|layer| layer.share[at[0]][at[1]]).sum();
            agrees(what, shares, runs, 1e-12);
        }
    }
}

/// Von Mises' criterion, `√(σy² − σy σz + σz² + 3 τ²)` over yield, in a plate that is alike in all directions: moments stretch its faces
/// by 6 M / t², shear forces push its middle by 3/2 Q / t. Any book on the strength of materials.
#[test]
fn a_metal_plate_yields_by_von_mises() {
    let (thick, yields) = (0.006, 125e6);
    let strength = Strength::VonMises { yield_stress: Pressure::new::<megapascal>(125.0) };
    let material = Material::isotropic(Pressure::new::<megapascal>(70e3), 0.33, strength);
    let layup = Layup::new(vec![Ply { material, thickness: Length::new::<millimeter>(6.0) }]).unwrap();
    for [across, up, twist] in
        [[300.0, 0.0, 0.0], [300.0, 300.0, 0.0], [300.0, -200.0, 0.0], [0.0, 0.0, 250.0], [120.0, 340.0, -90.0]]
    {
        let [y, z, t] = [across, up, twist].map(|moment: f64| 6.0 * moment / (thick * thick));
        let exact = (y * y - y * z + z * z + 3.0 * t * t).sqrt() / yields;
        agrees("moments", layup.worst([across, up, twist], [0.0; 2]).unwrap().utilisation, exact, 1e-9);
    }
    for [across, up] in [[40e3, 0.0], [0.0, 40e3], [30e3, -20e3_f64]] {
        let exact = 3.0_f64.sqrt() * 1.5 * across.hypot(up) / thick / yields;
        agrees("shear", layup.worst([0.0; 3], [across, up]).unwrap().utilisation, exact, 1e-9);
    }
}

/// A moment as two forces: equal and opposite, their lever times either of them.
#[test]
fn a_couple_is_two_opposite_forces_on_their_lever() {
    let at = |centre| Rect { centre, width: 0.1, height: 0.05 };
    let (push, pull) = (at([0.3, 0.1]), at([0.6, 0.5]));
    let Some([Load::Patch { area, force }, Load::Patch { area: other, force: back }]) = couple(push, pull, 250.0)
    else {
        panic!("two patches");
    };
    assert!(area == push && other == pull);
    agrees("force", force, 250.0 / 0.5, 1e-12);
    agrees("the other", back, -250.0 / 0.5, 1e-12);
    assert!(couple(push, push, 250.0).is_none());
}
