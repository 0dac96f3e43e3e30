//! Seams treated as lines: J. E. Shigley, Mechanical Engineering Design, section 9-4, table 9-2 and example 9-4 (from memory),
//! and what must hold of any group.

use proptest::prelude::*;
use sternknee::physics::strength::seam::{Place, Seam, push};

#[track_caller]
fn near(found: f64, printed: f64, relative: f64) {
    assert!((found / printed - 1.0).abs() <= relative, "{found} against {printed}");
}

#[test]
fn example_9_4_has_its_bending_stress_in_the_throat() {
    // 500 lbf at 6 in from two upright 3/8 in fillets, 2 in long: Iu = d³/6 a seam, 8.5 kpsi printed to two figures.
    let seams: [Seam; 2] = [[[-0.5, 0.0], [-0.5, 2.0]], [[0.5, 0.0], [0.5, 2.0]]];
    // Its moment of 3,000 lbf·in as two forces an inch apart.
    let found = push(&seams, &[([0.0, 1.5], 3000.0), ([0.0, 0.5], -3000.0)]).unwrap();
    near(found.most.abs(), 3000.0 * 1.0 / (2.0 * 8.0 / 12.0), 1e-12);
    near(found.most.abs() / (0.707 * 0.375), 8500.0, 3e-3);
    assert!(found.mean.abs() < 1e-9 && found.slope[0].abs() < 1e-9);
    assert!((found.at[1] - 1.0).abs() == 1.0, "{:?}", found.at);
}

#[test]
fn a_rectangle_of_seams_under_a_force_off_its_middle_pushes_as_table_9_2_says() {
    // Iu = d² (3 b + d) / 6 about each axis.
    let (b, d, force, off) = (0.6, 0.4, 9000.0, [0.11, -0.07]);
    let corners: [Place; 4] = [[-0.3, -0.2], [0.3, -0.2], [0.3, 0.2], [-0.3, 0.2]];
    let seams: Vec<Seam> = (0..4).map(|i| [corners[i], corners[(i + 1) % 4]]).collect();
    let found = push(&seams, &[(off, force)]).unwrap();
    let about_across = d * d * (3.0 * b + d) / 6.0;
    let about_up = b * b * (3.0 * d + b) / 6.0;
    let slope = [force * off[0] / about_up, force * off[1] / about_across];
    near(found.length, 2.0 * (b + d), 1e-12);
    near(found.slope[0], slope[0], 1e-12);
    near(found.slope[1], slope[1], 1e-12);
    near(found.most, force / (2.0 * (b + d)) + 0.3 * slope[0] - 0.2 * slope[1], 1e-12);
    assert_eq!(found.at, [0.3, -0.2]);
}

/// Where most is handed over lies off the middle by its arm: there the mean and both slopes come to the most.
#[test]
fn the_greatest_push_stands_at_its_arm_from_the_middle() {
    let seams: [Seam; 2] = [[[0.2, 0.1], [0.2, 0.9]], [[1.0, 0.1], [1.0, 0.9]]];
    let found = push(&seams, &[([0.7, 0.6], 100.0)]).unwrap();
    let arm = found.arm().map(|length| length.get::<uom::si::length::meter>());
    near(arm[0], 0.4, 1e-12);
    near(arm[1], 0.4, 1e-12);
    near(found.mean + found.slope[0] * arm[0] + found.slope[1] * arm[1], found.most, 1e-12);
}

#[test]
fn seams_on_one_line_hold_nothing_that_turns_the_plate_about_it() {
    let seams: [Seam; 2] = [[[0.0, 0.0], [1.0, 0.0]], [[2.0, 0.0], [3.0, 0.0]]];
    assert!(push(&seams, &[([1.5, 0.2], 100.0)]).is_none());
    near(push(&seams, &[([1.5, 0.0], 100.0)]).unwrap().most, 50.0, 1e-12);
    assert!(push(&[], &[([0.0, 0.0], 1.0)]).is_none());
}

fn place() -> impl Strategy<Value = Place> {
    [-1.0..1.0_f64, -1.0..1.0_f64]
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(300) })]

    #[test]
    fn any_group_balances_its_load_and_doubles_with_it(
        seams in prop::collection::vec([place(), place()], 2..8),
        forces in prop::collection::vec((place(), -1e4..1e4_f64), 1..6),
    ) {
        let found = push(&seams, &forces).unwrap();
        // A linear push is summed up exactly by Simpson's rule, times an arm too.
        let mut sums = [0.0; 3];
        for [a, b] in &seams {
            let middle = [0, 1].map(|k| 0.5 * (a[k] + b[k]));
            let length = (a[0] - b[0]).hypot(a[1] - b[1]);
            for (p, part) in [(a, 1.0 / 6.0), (&middle, 4.0 / 6.0), (b, 1.0 / 6.0)] {
                let q = found.mean + (0..2).map(|k| found.slope[k] * (p[k] - found.middle[k])).sum::<f64>();
                prop_assert!(q.abs() <= found.most.abs() * (1.0 + 1e-9));
                sums[0] += part * length * q;
                (0..2).for_each(|k| sums[k + 1] += part * length * q * p[k]);
            }
        }
        let scale: f64 = found.most.abs() * found.length + forces.iter().map(|(_, f)| f.abs()).sum::<f64>();
        for (k, sum) in sums.iter().enumerate() {
            let load: f64 = forces.iter().map(|(p, f)| if k == 0 { *f } else { f * p[k - 1] }).sum();
            prop_assert!((sum - load).abs() < 1e-8 * scale, "{k}: {sum} against {load}");
        }
        let twice: Vec<_> = forces.iter().map(|(p, f)| (*p, 2.0 * f)).collect();
        let doubled = push(&seams, &twice).unwrap();
        prop_assert!((doubled.most.abs() - 2.0 * found.most.abs()).abs() <= 1e-9 * scale);
    }
}
