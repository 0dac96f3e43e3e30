//! All swing rules of the oyster skiff's twins, certified to half a millimetre, from the resolved rig to findings;
//! the same for the runabout, whose remedies are worked out too.

use divan::{Bencher, black_box};
use sternknee::case::Case;
use sternknee::catalog::Catalog;
use sternknee::job;
use sternknee::physics::swing::{Effort, least_distance};
use sternknee::rig::{self, Rig};
use sternknee::rules::{ALL, Family};

fn main() {
    divan::main();
}

fn rig_of(text: &str) -> Rig {
    let catalog = Catalog::built_in().expect("the built-in catalog reads");
    let (job, _) = job::load("job", text).expect("the demo reads");
    rig::resolve(&job, &catalog).expect("the demo resolves")
}

fn all_rules(bencher: Bencher, text: &str) {
    let rig = rig_of(text);
    bencher.bench_local(|| {
        let case = Case::new(black_box(&rig));
        ALL.iter().filter(|rule| rule.family == Family::Swing).map(|rule| (rule.judge)(&case)).collect::<Vec<_>>()
    });
}

#[divan::bench]
fn skiffs_twins_all_swing_rules(bencher: Bencher) {
    all_rules(bencher, include_str!("../../catalogs/jobs/oyster_skiff.ron"));
}

#[divan::bench]
fn runabout_with_remedies_all_swing_rules(bencher: Bencher) {
    all_rules(bencher, include_str!("../../catalogs/jobs/bay_runabout.ron"));
}

/// An engine, and a kicker on a lifting bracket over its whole travel.
#[divan::bench]
fn launch_with_kicker_all_swing_rules(bencher: Bencher) {
    all_rules(bencher, include_str!("../../catalogs/jobs/harbour_launch.ron"));
}

/// What each sweep of the skiff's twins costs by itself; the neighbours here over three angles, as the rule would
/// have to ask if their tilt tubes did not lie on one line.
#[divan::bench(args = ["full_tilt", "lock", "neighbours", "cylinder", "tie_bar", "ground"])]
fn skiffs_twins_least_distance(bencher: Bencher, what: &str) {
    let rig = rig_of(include_str!("../../catalogs/jobs/oyster_skiff.ron"));
    let case = Case::new(&rig);
    let swing = case.swing();
    let sweeps: Vec<_> = match what {
        "full_tilt" => swing.full_tilt.clone().unwrap_or_default(),
        "lock" => swing.lock.clone().unwrap_or_default(),
        "neighbours" => swing.neighbours.clone().unwrap_or_default(),
        "cylinder" => swing.cylinder.clone().unwrap_or_default(),
        "tie_bar" => swing.tie_bar.clone().unwrap_or_default(),
        _ => swing.ground.iter().flatten().map(|one| one.road.clone()).collect(),
    };
    let effort = Effort::default();
    bencher.bench_local(|| {
        sweeps.iter().map(|swept| least_distance(black_box(&swept.scene), &effort)).collect::<Vec<_>>()
    });
}
