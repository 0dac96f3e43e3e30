//! Uncertainty against the Guide to the expression of uncertainty in measurement (JCGM 100:2008), its example H.1, and
//! against distributions whose spread is known in closed form, as JCGM 101:2008 wants a sample tried.

use proptest::prelude::*;
use sternknee::physics::uncertainty::{COVERAGE, RUNS, combined, sample, settles, shares, spread};

use crate::common::near;

/// Example H.1, calibration of an end gauge, in nm: the standard of 25 nm; the comparator of 9.7 nm; two that bear nothing, as
/// their sensitivities are nought at the expected temperature; 0.58e-6 /°C of expansion at 0.1 °C over 50 mm; 0.029 °C between
/// the gauges at 11.5e-6 /°C over 50 mm. The guide gives 1,002 nm² in all and 32 nm.
#[test]
fn the_end_gauge_of_the_guide_is_worth_32_nm() {
    let length = 50.000_623e6;
    let moves = [25.0, 9.7, 0.0, 0.0, 0.58e-6 * 0.1 * length, 0.029 * 11.5e-6 * length];
    near(moves[4], 2.9, 0.05);
    near(moves[5], 16.6, 0.1);
    // The guide adds parts that it rounded.
    near(combined(&moves).powi(2), 1002.0, 5.0);
    near(combined(&moves), 32.0, 0.5);
    let share = shares(&moves);
    near(share[0], 25.0 * 25.0 / 1002.0, 0.005);
    near(share.iter().sum::<f64>(), 1.0, 1e-12);
    assert_eq!(shares(&[0.0, 0.0]), [0.0, 0.0], "what moves nothing has no share");
}

/// The guide's end gauge again: to be worth 30 nm by the standard alone it would have to be known to 22.7 nm in place of 25,
/// by hand √(30² − 32² + 25²); the comparator alone could not do it.
#[test]
fn what_settles_it_leaves_just_the_room() {
    let moves = [25.0, 9.7, 2.9, 16.6];
    let part = settles(&moves, 0, 30.0).expect("the standard can");
    near(25.0 * part, (900.0 - combined(&moves).powi(2) + 625.0_f64).sqrt(), 1e-9);
    assert_eq!(settles(&moves, 1, 30.0), None);
}

/// The experimental standard deviation (JCGM 100:2008, 4.2.2): of 1, 2, 3, 4 the root of 5/3, of two values apart by 2 the root
/// of two; one value alone has none.
#[test]
fn the_spread_of_a_few_values_is_their_standard_deviation() {
    near(spread(&[1.0, 2.0, 3.0, 4.0]).expect("four"), COVERAGE * (5.0_f64 / 3.0).sqrt(), 1e-12);
    near(spread(&[4.0, 6.0]).expect("two"), COVERAGE * 2.0_f64.sqrt(), 1e-12);
    assert_eq!(spread(&[7.0]), None);
}

/// Every reading meets every stratum once: mean nought and, less what the outermost strata hide, the spread of one.
#[test]
fn a_reading_of_the_sample_is_a_normal_one() {
    for readings in [1, 2, 7, 40] {
        let runs = sample(readings);
        assert_eq!(runs.len(), RUNS);
        for reading in 0..readings {
            let values: Vec<f64> = runs.iter().map(|run| run[reading]).collect();
            near(values.iter().sum::<f64>(), 0.0, 1e-9);
            near(spread(&values).expect("many"), COVERAGE, 0.01 * COVERAGE);
        }
    }
}

/// JCGM 100, 5.1.2: what has nothing to do with each other adds by squares, n alike as √n. And in one run every reading stands where
/// it was taken.
#[test]
fn sums_of_many_readings_spread_as_the_root_of_their_number() {
    for readings in [2, 5, 8, 12, 20] {
        let runs = sample(readings);
        let sums: Vec<f64> = runs.iter().map(|run| run.iter().sum()).collect();
        let root = f64::sqrt(readings as f64);
        near(spread(&sums).expect("many") / COVERAGE, root, 0.05 * root);
        let as_taken = |run: &&Vec<f64>| run.iter().all(|reading| reading.abs() < 1e-12);
        assert_eq!(runs.iter().filter(as_taken).count(), 1);
    }
}

/// Closed forms of standard normal readings: the larger of two has the variance 1 − 1/π, the size of one 1 − 2/π, a square 2,
/// a sum of n squares 2 n, a product 1. Source: any table of the normal and chi-squared distributions.
#[test]
fn bent_results_have_the_spread_of_their_closed_form() {
    use std::f64::consts::PI;
    type Bent = fn(&[f64]) -> f64;
    let cases: [(&str, usize, Bent, f64); 6] = [
        ("size", 1, |x| x[0].abs(), 1.0 - 2.0 / PI),
        ("larger of two", 2, |x| x[0].max(x[1]), 1.0 - 1.0 / PI),
        ("square", 1, |x| x[0] * x[0], 2.0),
        ("three squares", 3, |x| x.iter().map(|x| x * x).sum(), 6.0),
        ("product", 2, |x| x[0] * x[1], 1.0),
        ("line of five", 5, |x| x[0] + 2.0 * x[1] - x[2] + 0.5 * x[3] - 3.0 * x[4], 15.25),
    ];
    for (name, readings, bent, variance) in cases {
        let results: Vec<f64> = sample(readings).iter().map(|run| bent(run)).collect();
        let found = spread(&results).expect("many") / COVERAGE;
        assert!((found / f64::sqrt(variance) - 1.0).abs() < 0.05, "{name}: {found} is not {}", variance.sqrt());
    }
}

/// The sample against 100,000 plain random runs of the same result, which bends in several readings at once.
#[test]
fn the_sample_agrees_with_a_hundred_thousand_random_runs() {
    let kinked = |x: &[f64]| {
        (3.0 + x[0] - 0.7 * x[1]).max(2.0 + 1.5 * x[2]).min(4.0) + 0.3 * (x[3] + x[4]).abs() - 0.2 * x[5] * x[0]
    };
    // A linear congruence (Knuth, MMIX) and the sum of twelve: plain, and nothing of the sample's.
    let mut state = 0x2545_f491_4f6c_dd1d_u64;
    let mut uniform = || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 11) as f64 / (1_u64 << 53) as f64
    };
    let plain: Vec<f64> = (0..100_000)
        .map(|_| {
            let x: Vec<f64> = (0..6).map(|_| (0..12).map(|_| uniform()).sum::<f64>() - 6.0).collect();
            kinked(&x)
        })
        .collect();
    let sampled: Vec<f64> = sample(6).iter().map(|run| kinked(run)).collect();
    let ratio = spread(&sampled).expect("many") / spread(&plain).expect("many");
    assert!((ratio - 1.0).abs() < 0.05, "{ratio}");
}

proptest! {
    #[test]
    fn a_closer_reading_never_makes_a_result_worth_less(
        moves in proptest::collection::vec(-10.0..10.0_f64, 1..9),
        part in 0.0..1.0_f64,
        which in any::<prop::sample::Index>(),
    ) {
        let mut closer = moves.clone();
        let at = which.index(moves.len());
        closer[at] *= part;
        prop_assert!(combined(&closer) <= combined(&moves) * (1.0 + 1e-12));
    }
}
