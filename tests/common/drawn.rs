//! Jobs drawn at random from the boats of `tests/boats`.

use std::sync::LazyLock;

use proptest::prelude::*;
use proptest::sample::Index;
use proptest::test_runner::RngSeed;
use sternknee::front_door;
use sternknee::written::Draught;

use super::common::CATALOG;
use super::corpus::{Boat, LEVELS};

static BOATS: LazyLock<Vec<Boat>> = LazyLock::new(|| ["sound", "unsound"].into_iter().flat_map(Boat::all).collect());

/// What draws the jobs where no other count of them is asked for: the same ones on every machine, so that what was pushed is
/// what was tried. `LAWS=400` draws others each time, or those of `PROPTEST_RNG_SEED`.
const SEED: u64 = 1;

/// A job drawn from the corpus: which boat, to which level, and which readings become so much of themselves.
#[derive(Clone, Debug)]
pub struct Drawn {
    boat: Index,
    level: u8,
    altered: Vec<(Index, f64)>,
}

pub fn drawn() -> impl Strategy<Value = Drawn> {
    drawn_to(*LEVELS.end())
}

/// A job told to this level at most.
pub fn drawn_to(level: u8) -> impl Strategy<Value = Drawn> {
    (any::<Index>(), *LEVELS.start()..=level, prop::collection::vec((any::<Index>(), 0.6_f64..1.5), 0..5))
        .prop_map(|(boat, level, altered)| Drawn { boat, level, altered })
}

impl Drawn {
    /// Its text.
    ///
    /// Errors: altered readings that make no job, which is none to judge.
    pub fn job(&self) -> Result<String, TestCaseError> {
        let mut text = self.boat.get(&BOATS).at(self.level);
        for (which, times) in &self.altered {
            let draught = Draught::new(&text);
            let readings = readings(&draught);
            let (path, number, unit) = which.get(&readings);
            text = draught.put(path, &format!("\"{:.3} {unit}\"", number * times)).expect("the reading is there");
        }
        opens(&text).then_some(text).ok_or_else(|| TestCaseError::reject("no job"))
    }
}

/// The plain readings of a job: path, number, unit.
pub fn readings(draught: &Draught) -> Vec<(String, f64, String)> {
    draught
        .entries()
        .filter_map(|said| {
            let (number, unit) = said.value.strip_prefix('"')?.strip_suffix('"')?.split_once(' ')?;
            let known = ["in", "ft", "lb", "deg", "mph", "hp", "mm", "kg", "kW", "kn"].contains(&unit);
            known.then_some((said.path.to_owned(), number.parse().ok()?, unit.to_owned()))
        })
        .collect()
}

/// Whether the text is a job.
fn opens(text: &str) -> bool {
    front_door::open("job.ron", text, &CATALOG, |_| Err("no files".to_owned())).is_ok()
}

/// How many jobs a law is asked of, and which: so many in `cargo test`.
pub fn config(usually: u32) -> ProptestConfig {
    config_by(usually, SEED)
}

/// The same, drawn by this seed where no other is asked for.
pub fn config_by(usually: u32, seed: u64) -> ProptestConfig {
    let asked = std::env::var("LAWS").ok().and_then(|count| count.parse().ok());
    let usual = ProptestConfig { max_global_rejects: 100_000, ..ProptestConfig::default() };
    match asked {
        Some(cases) => ProptestConfig { cases, ..usual },
        None => ProptestConfig { cases: usually, rng_seed: RngSeed::Fixed(seed), ..usual },
    }
}
