//! Patches off the middle of simply supported plates, from a washer to a third of the span, against Navier's series.

use sternknee::physics::strength::panel::{
    Accuracy, EdgeSupport, Load, Panel, PlateStiffness, Point, Rect, Section, Solution, Wanted,
};

use super::navier::Navier;

const SIDES: Point = [1.0, 0.7];

fn solid() -> PlateStiffness {
    PlateStiffness::isotropic(9e9, 0.3, 0.03)
}

/// Plywood of nine plies, about.
fn plywood() -> PlateStiffness {
    PlateStiffness { d11: 26e3, d12: 1.2e3, d22: 12e3, d66: 2.5e3, s1: 7e6, s2: 4.5e6 }
}

/// The nearest node to a place, and the moments there.
fn moment_near(s: &Solution, at: Point) -> (Point, [f64; 3]) {
    let off = |n: u32| (0..2).map(|k| (s.mesh.nodes[n as usize][k] - at[k]).powi(2)).sum::<f64>();
    let nearest = s.forces.iter().min_by(|a, b| off(a.node).total_cmp(&off(b.node))).unwrap();
    (s.mesh.nodes[nearest.node as usize], nearest.moment)
}

#[test]
fn patches_off_the_middle_bend_a_plate_as_naviers_series_says() {
    for (name, stiffness) in [("solid", solid()), ("plywood", plywood())] {
        for part in [1.0 / 500.0, 1.0 / 100.0, 1.0 / 20.0, 1.0 / 3.0] {
            let area = Rect { centre: [0.37, 0.43], width: part * SIDES[0], height: 0.8 * part * SIDES[1] };
            let plate = Navier { stiffness, sides: SIDES, area, force: 1000.0 };
            let panel = Panel::rectangle(SIDES[0], SIDES[1], [EdgeSupport::Simple; 4], Section::stiffness(stiffness));
            let loads = [Load::Patch { area, force: 1000.0 }];
            let middle = [0.5 * SIDES[0], 0.5 * SIDES[1]];
            let accuracy = Accuracy { relative: 1e-4, fields: 0.02, most_unknowns: 100_000 };
            // About the patch no triangle is larger than a part of it.
            let places = vec![(area.centre, 0.5 * area.height.min(0.1)), (middle, 0.02)];
            let solved =
                panel.solve_all(&[loads], |_| Wanted { sets: vec![(0, accuracy)], places: places.clone() }).unwrap();
            let s = solved.solution(0);
            let exact = plate.at(s.largest_at).deflection;
            let error = (s.largest_deflection / exact - 1.0).abs();
            println!(
                "{name} 1/{:.0}: deflection {error:.1e}, stated {:.1e}, {} unknowns",
                1.0 / part,
                s.error,
                s.levels.last().unwrap().unknowns
            );
            assert!(error < 1e-3 && error <= 2.0 * s.error, "{name} {part}: {error} {}", s.error);
            for at in [area.centre, middle] {
                let (at, found) = moment_near(&s, at);
                let exact = plate.at(at).moment;
                let scale = exact.iter().fold(0.0, |most: f64, m| most.max(m.abs()));
                for k in 0..3 {
                    let error = (found[k] - exact[k]).abs() / scale;
                    println!(
                        "  moment {k} at {at:.4?}: {:.4} exact {:.4}, {error:.1e} of the largest",
                        found[k], exact[k]
                    );
                    assert!(error < 5e-3, "{name} {part} {k}: {} {}", found[k], exact[k]);
                }
            }
            for k in 0..2 {
                let largest = s.forces.iter().max_by(|a, b| a.moment[k].abs().total_cmp(&b.moment[k].abs())).unwrap();
                let exact = plate.at(s.mesh.nodes[largest.node as usize]).moment[k];
                let error = (largest.moment[k] / exact - 1.0).abs();
                println!("  largest {k}: {error:.1e}, stated {:.1e}", s.moment_errors[k]);
                assert!(error < 2.0 * s.moment_errors[k], "{name} {part} {k}: {error} {}", s.moment_errors[k]);
            }
        }
    }
}
