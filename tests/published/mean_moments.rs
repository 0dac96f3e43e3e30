//! Means of moments over a width, as a transom's are told: against a field that is uniform, against Navier's series summed over
//! the same tent, and against a mesh twice as fine.

use std::sync::{Arc, LazyLock};

use proptest::prelude::*;
use sternknee::physics::strength::panel::{
    EdgeSupport, Factored, Fineness, Layup, Load, Material, Meshed, Panel, PlateStiffness, Ply, Rect, Section, Shape,
    Strength,
    meshed::{Means, means},
};
use uom::si::f64::{Length, Pressure};
use uom::si::{length::millimeter, pressure::megapascal};

use super::navier::Navier;
use EdgeSupport::{Clamped, Free, Simple};

/// One ply of 9 GPa that bears 40 MPa along and 20 MPa in shear, so many millimetres thick. Invented, of usual size.
pub fn one_ply(poisson: f64, thickness: f64) -> Layup {
    let mpa = Pressure::new::<megapascal>;
    let strength = Strength::MaxStress {
        along_y: mpa(40.0),
        along_z: mpa(40.0),
        plane_shear: mpa(20.0),
        shear_y: mpa(20.0),
        shear_z: mpa(20.0),
    };
    let material = Material::isotropic(mpa(9e3), poisson, strength);
    Layup::new(vec![Ply { material, thickness: Length::new::<millimeter>(thickness) }]).expect("one ply")
}

/// A rectangle as a transom is, its bottom's middle at the origin; edges in the order port, top, starboard, bottom.
fn rectangle(
    [width, height]: [f64; 2],
    edges: [EdgeSupport; 4],
    stiffness: PlateStiffness,
    fineness: Fineness,
) -> Factored {
    let shape = Shape { chine: [0.5 * width, 0.0], corner: [0.5 * width, height], cutout: None };
    let panel = Panel {
        outline: shape.outline(),
        edges: edges.to_vec(),
        section: Section::stiffness(stiffness),
        regions: Vec::new(),
        lines: Vec::new(),
        beds: Vec::new(),
    };
    panel.factored(&Arc::new(Meshed::of(shape, fineness))).unwrap()
}

#[test]
fn the_mean_of_a_uniform_moment_is_that_moment() {
    // A cantilever without Poisson's ratio, turned at its end by a couple.
    let stiffness = PlateStiffness::isotropic(9e9, 0.0, 0.03);
    let factored = rectangle([1.0, 0.3], [Free, Free, Clamped, Free], stiffness, Fineness { size: 0.05, width: 0.05 });
    let band = |y: f64, force: f64| Load::Patch { area: Rect { centre: [y, 0.15], width: 0.02, height: 0.3 }, force };
    let loaded = factored.bend(&[[band(0.44, 3000.0), band(0.47, -3000.0)]]).unwrap();
    let exact = 3000.0 * 0.03 / 0.3;
    let mut worst: f64 = 0.0;
    for mean in factored.moments_at_nodes(&loaded[0]).iter().filter(|mean| mean.at[0] < -0.25) {
        worst = worst.max((mean.moment[0].abs() / exact - 1.0).abs());
        worst = worst.max(mean.moment[1].abs().max(mean.moment[2].abs()) / exact);
    }
    println!("furthest from {exact}: {worst:.1e}");
    assert!(worst < 1e-5, "{worst}");
}

/// A cantilever of 0.3 m without Poisson's ratio under a force at its end: the moment grows with the way from it. A nick of a third of
/// a millimetre in its upper edge makes columns of triangles nine times narrower than those beside them.
#[test]
fn the_mean_of_a_moment_that_grows_evenly_is_the_moment_there_whatever_triangles_lie_about() {
    let shape = Shape { chine: [0.5, 0.0], corner: [0.5, 0.3], cutout: Some([0.011, 0.2997]) };
    let outline = shape.outline();
    let starboard = |i: usize| outline[i % outline.len()][0] < -0.4;
    let panel = Panel {
        edges: (0..outline.len()).map(|i| if starboard(i) && starboard(i + 1) { Clamped } else { Free }).collect(),
        outline: outline.clone(),
        section: Section::stiffness(PlateStiffness::isotropic(9e9, 0.0, 0.03)),
        regions: Vec::new(),
        lines: Vec::new(),
        beds: Vec::new(),
    };
    let factored = panel.factored(&Arc::new(Meshed::of(shape, Fineness { size: 0.05, width: 0.1 }))).unwrap();
    let end = Rect { centre: [0.46, 0.14985], width: 0.02, height: 0.2997 };
    let loaded = factored.bend(&[[Load::Patch { area: end, force: 3000.0 }]]).unwrap();
    let middle = |at: [f64; 2]| at[0].abs() < 0.25 && at[1] > 0.11 && at[1] < 0.19;
    let means = factored.moments_at_nodes(&loaded[0]);
    let seen: Vec<_> = means.iter().filter(|mean| middle(mean.at)).collect();
    assert!(seen.len() > 10);
    for mean in seen {
        let exact = 3000.0 * (0.46 - mean.at[0]) / 0.3;
        let off = mean.moment[0].abs() / exact - 1.0;
        assert!(off.abs() < 5e-3, "{off} at {:?}", mean.at);
    }
}

/// Any handbook's 6 M / t² at the faces of one ply of 30 mm under 300 N·m per metre: 2.0 MPa, a twentieth of what it bears.
#[test]
fn what_is_most_bent_uses_its_moment_over_the_section_of_what_it_bears() {
    let layup = one_ply(0.0, 30.0);
    let stiffness = layup.stiffness().unwrap();
    let factored = rectangle([1.0, 0.3], [Free, Free, Clamped, Free], stiffness, Fineness { size: 0.05, width: 0.05 });
    let band = |y: f64, force: f64| Load::Patch { area: Rect { centre: [y, 0.15], width: 0.02, height: 0.3 }, force };
    let sets = [[band(0.44, 3000.0), band(0.47, -3000.0)], [band(0.44, 0.0), band(0.47, 0.0)]];
    let most = factored.most_bent(&layup, &factored.bend(&sets).unwrap());
    let (mean, stress) = most[0].as_ref().expect("it is bent");
    // Beside a band narrower than a triangle a mean is off by a hundredth or two.
    assert!((mean.moment[0].abs() / 300.0 - 1.0).abs() < 0.02, "{}", mean.moment[0]);
    let face = 6.0 * mean.moment[0].abs() / 0.03_f64.powi(2);
    assert!((stress.plane[0].abs() / face - 1.0).abs() < 1e-9, "{} {face}", stress.plane[0]);
    assert!((stress.utilisation / (face / 40e6) - 1.0).abs() < 1e-3, "{}", stress.utilisation);
    assert!(most[1].is_none(), "nothing bends it");
}

#[test]
fn means_on_a_simply_supported_plate_are_naviers_over_the_same_tent() {
    let sides = [1.2, 0.8];
    for stiffness in [
        PlateStiffness::isotropic(9e9, 0.3, 0.04),
        PlateStiffness { d11: 52e3, d12: 2.5e3, d22: 24e3, d66: 5e3, s1: 9e6, s2: 6e6 },
    ] {
        for [width, height] in [[0.03, 0.03], [0.25, 0.06], [0.4, 0.2]] {
            // As the series counts: from a corner.
            let area = Rect { centre: [0.51, 0.47], width, height };
            let plate = Navier { stiffness, sides, area, force: 10_000.0 };
            let moved = Rect { centre: [area.centre[0] - 0.5 * sides[0], area.centre[1]], ..area };
            let over = 0.05;
            let meshes = [1.0, 0.5].map(|times| {
                let factored = rectangle(sides, [Simple; 4], stiffness, Fineness { size: times * over, width: over });
                factored.moments_at_nodes(&factored.bend(&[[Load::Patch { area: moved, force: 10_000.0 }]]).unwrap()[0])
            });
            let peak = [0, 1].map(|k| meshes[0].iter().map(|m| m.moment[k].abs()).fold(0.0, f64::max));
            let scale = peak[0].max(peak[1]);
            let mut worst = [0.0_f64; 2];
            let far = |at: [f64; 2]| at[0].abs() < 0.5 * sides[0] - over && at[1] > over && at[1] < sides[1] - over;
            // A few places, and the greatest of each kind.
            let inner: Vec<_> = meshes[0].iter().filter(|m| far(m.at)).collect();
            let mut seen: Vec<_> = inner.iter().step_by(inner.len() / 6).copied().collect();
            for k in 0..3 {
                seen.extend(inner.iter().max_by(|a, b| a.moment[k].abs().total_cmp(&b.moment[k].abs())).copied());
            }
            for mean in seen {
                let exact = plate.mean([mean.at[0] + 0.5 * sides[0], mean.at[1]], over).moment;
                let near = |p: [f64; 2]| (p[0] - mean.at[0]).abs() < 1e-9 && (p[1] - mean.at[1]).abs() < 1e-9;
                let finer = meshes[1].iter().find(|m| near(m.at)).unwrap();
                for (worst, found) in worst.iter_mut().zip([mean.moment, finer.moment]) {
                    let off = found.iter().zip(exact).map(|(found, exact)| (found - exact).abs() / scale);
                    *worst = off.fold(*worst, f64::max);
                }
            }
            println!("{width} x {height}: furthest from the series {:.1e}, twice as fine {:.1e}", worst[0], worst[1]);
            // Triangles as wide as the tent feel a patch narrower than they are.
            assert!(worst[0] < if width < over { 0.02 } else { 0.005 } && worst[1] < 0.005, "{worst:?}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(12) })]

    #[test]
    fn a_mesh_twice_as_fine_moves_means_by_less_than_two_parts_in_a_hundred_of_the_greatest(
        y in -0.24..0.24_f64, z in 0.35..0.48_f64, width in 0.02..0.3_f64, height in 0.02..0.1_f64,
        lower in 0.2..0.3_f64, arm in 0.0..1.0_f64,
    ) {
        let shape = Shape { chine: [0.95, 0.15], corner: [1.05, 0.75], cutout: Some([0.4, 0.55]) };
        let outline = shape.outline();
        let edges: Vec<EdgeSupport> = (0..outline.len())
            .map(|i| {
                let [a, b] = [outline[i], outline[(i + 1) % outline.len()]];
                // Bottom and sides.
                if a[1].min(b[1]) < 0.2 { EdgeSupport::Elastic { deflection: 5e7, turning: 2e4 } } else { Free }
            })
            .collect();
        let panel = Panel {
            outline,
            edges,
            section: Section::stiffness(PlateStiffness::isotropic(9e9, 0.3, 0.05)),
            regions: Vec::new(),
            lines: Vec::new(),
            beds: Vec::new(),
        };
        let loads = [[
            Load::Patch { area: Rect { centre: [y, z], width, height }, force: -9000.0 },
            Load::Patch { area: Rect { centre: [y, lower], width: 0.2, height: 0.04 }, force: 9000.0 * (1.0 + arm) },
        ]];
        let over = 0.05;
        let [usual, fine] = [1.0, 0.5].map(|times| {
            let fineness = Fineness { size: times * over, width: over };
            let factored = panel.clone().factored(&Arc::new(Meshed::of(shape, fineness))).unwrap();
            factored.moments_at_nodes(&factored.bend(&loads).unwrap()[0])
        });
        // Every place of the usual mesh is one of the finer.
        let scale = fine.iter().flat_map(|m| m.moment).fold(0.0, |most: f64, m| most.max(m.abs()));
        // Beside the cutout's corners, and about a patch narrower than a triangle, the mesh is felt more.
        let hard = |at: [f64; 2]| {
            let near = |p: [f64; 2]| (p[0] - at[0]).abs() < 2.0 * over && (p[1] - at[1]).abs() < 2.0 * over;
            near([0.4, 0.55]) || near([-0.4, 0.55]) || (width.min(height) < over && near([y, z])) || near([y, lower])
        };
        let mut worst = [0.0_f64; 2];
        for mean in &usual {
            let off = |p: [f64; 2]| (p[0] - mean.at[0]).hypot(p[1] - mean.at[1]);
            let finer = fine.iter().min_by(|a, b| off(a.at).total_cmp(&off(b.at))).unwrap();
            if off(finer.at) < 1e-6 {
                let kind = usize::from(hard(mean.at));
                for k in 0..3 {
                    worst[kind] = worst[kind].max((mean.moment[k] - finer.moment[k]).abs() / scale);
                }
            }
        }
        println!("{width:.3} x {height:.3} at {y:.2} {z:.2}: {:.4}, in hard places {:.4}", worst[0], worst[1]);
        prop_assert!(worst[0] < 0.02 && worst[1] < 0.04, "{worst:?}");
    }
}

/// A transom's mesh, how many triangles it has, and the means about all places where moments are told.
static TOLD: LazyLock<(Arc<Meshed>, usize, Means)> = LazyLock::new(|| {
    let shape = Shape { chine: [1.0, 0.3], corner: [1.1, 0.7], cutout: Some([0.4, 0.5]) };
    let outline = shape.outline();
    let panel = Panel {
        edges: vec![Simple; outline.len()],
        outline,
        section: Section::stiffness(PlateStiffness::isotropic(9e9, 0.3, 0.04)),
        regions: Vec::new(),
        lines: Vec::new(),
        beds: Vec::new(),
    };
    let meshed = Arc::new(Meshed::of(shape, Fineness { size: 0.1, width: 0.1 }));
    let factored = panel.factored(&meshed).expect("a plate");
    let all = means(factored.mesh(), &shape.lattice(), 0.1);
    (meshed, factored.mesh().triangles.len(), all)
});

proptest! {
    #[test]
    fn what_is_not_looked_at_is_never_more(
        seed in proptest::collection::vec(-1.0..1.0_f64, 60),
        units in [0.1..2.0_f64, 0.1..2.0_f64, 0.1..2.0_f64],
    ) {
        let (meshed, triangles, means) = &*TOLD;
        let sampled: Vec<[[f64; 3]; 3]> = (0..*triangles)
            .map(|t| [0, 1, 2].map(|i| [0, 1, 2].map(|k| seed[(7 * t + 3 * i + k) % seed.len()] * (t % 11) as f64)))
            .collect();
        let norm = |m: [f64; 3]| (0..3).map(|k| (units[k] * m[k]).powi(2)).sum::<f64>().sqrt();
        let all = (0..means.count()).map(|i| norm(means.of(i, &sampled).moment)).fold(0.0, f64::max);
        let (mean, found) = meshed.most(&sampled, units, |m| (norm(m), norm(m))).unwrap();
        prop_assert_eq!(found, all);
        prop_assert_eq!(norm(mean.moment), all);
    }
}
