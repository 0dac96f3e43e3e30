//! Readings moved by little steps: the told factors follow in little steps too.

use sternknee::case::Case;
use sternknee::case::strength::{SWEPT_WAYS, Swept};
use sternknee::quantity::Units;
use sternknee::report::{self, Stamp};

use super::rig;

const JOBS: [(&str, &str); 5] = [
    ("oyster_skiff", include_str!("../../catalogs/jobs/oyster_skiff.ron")),
    ("harbour_launch", include_str!("../../catalogs/jobs/harbour_launch.ron")),
    ("15ft_plywood_skiff_20hp", include_str!("../boats/sound/15ft_plywood_skiff_20hp.ron")),
    ("20ft_dual_console_200hp", include_str!("../boats/sound/20ft_dual_console_200hp.ron")),
    ("24ft_twin_115hp_frame_bracket", include_str!("../boats/sound/24ft_twin_115hp_frame_bracket.ron")),
];
/// Greatest change of a factor from one point to the next, as a part of it: 0.01 in of height, a hundredth of thickness, which
/// bending follows by its square and more.
const HEIGHT_STEP: f64 = 0.01;
const THICKNESS_STEP: f64 = 0.04;

#[test]
fn a_reading_moved_a_little_moves_the_told_factors_a_little() {
    for (name, text) in JOBS {
        let rig = rig(text);
        let case = Case::new(&rig);
        let strength = case.strength().expect(name);
        let start = std::time::Instant::now();
        let sweeps = case.strength_sweeps();
        let took = start.elapsed();
        for sweep in &sweeps {
            let told = sweep.points.iter().find(|point| point.change == 0.0).expect("the told point");
            let now = SWEPT_WAYS.map(|way| strength.after.bent.factor(way));
            assert_eq!(told.factors, now, "{name}: {:?} as told", sweep.swept);
            for way in 0..SWEPT_WAYS.len() {
                let factors: Vec<f64> = sweep.points.iter().map(|point| point.factors[way]).collect();
                let steps = factors.windows(2).map(|pair| pair[1] / pair[0] - 1.0);
                let (least, most) = steps.fold((0.0_f64, 0.0_f64), |(a, b), step| (a.min(step), b.max(step)));
                println!(
                    "{name}: {:?}, {:?}: {} points, factor {:.3}, steps {:.3} % to {:.3} %",
                    sweep.swept,
                    SWEPT_WAYS[way],
                    factors.len(),
                    now[way],
                    100.0 * least,
                    100.0 * most
                );
                match sweep.swept {
                    Swept::Height => assert!(most.max(-least) < HEIGHT_STEP, "{name}: {factors:?}"),
                    Swept::Thickness => {
                        assert!(most < THICKNESS_STEP, "{name}: {factors:?}");
                        assert!(least >= 0.0, "{name}: thicker is weaker: {factors:?}");
                    }
                    Swept::Knees => {}
                }
            }
        }
        println!("{name}: {} sweeps in {took:.2?}", sweeps.len());
        assert!(sweeps.len() >= 2, "{name}");
        let page = report::work_page(name, "strength", &[], &sweeps, Units::Us, &Stamp::default());
        for sweep in &sweeps {
            let wide = format!("data-drawing=\"sweep-{}\"", format!("{:?}", sweep.swept).to_lowercase());
            assert!(page.contains(&wide), "{name}: no {wide}");
        }
    }
}
