//! The job's own engines and its candidates side by side.

use uom::si::f64::{Mass, Power};

use super::{Said, Yard, firmness};
use crate::job::Job;
use crate::quantity::{Dimensioned, Measure};
use crate::rules::{self, Family, Verdict};
use crate::written::Slip;

/// One set of engines, judged.
pub struct Compared {
    /// What it is called.
    pub name: String,
    /// The job with it.
    pub job: Job,
    /// What the rules say of it, in the order of the report.
    pub said: Vec<Said>,
    /// Rated power of its main engines.
    pub power: Option<Power>,
    /// All that hangs on the transom.
    pub hung: Option<Mass>,
}

/// What the job's own engines are called beside its candidates.
const OWN: &str = "as the job has it";

/// The figures that are put side by side, each what a rule finds: in words, and the rule.
pub const FIGURES: [(&str, &str); 10] = [
    ("change of trim", "stern/trim-change"),
    ("lowest edge of the well above water", "stern/well-edge"),
    ("scuppers above water", "stern/scuppers"),
    ("freeboard", "stern/freeboard"),
    ("plate above the bottom", "height/plate-window"),
    ("factor of the transom, bent", "strength/bending"),
    ("factor of the core, sheared", "strength/core-shear"),
    ("factor of the bolts, pulled", "strength/bolts-tension"),
    ("factor of the bolts, together", "strength/bolts-combined"),
    ("top speed", "running/top-speed"),
];

/// Judges the job's own engines, where it has some, and each of its candidates.
///
/// # Errors
/// Names that the catalog does not have, each with its place in the job.
pub fn compare(yard: &Yard) -> Result<Vec<Compared>, Vec<Slip>> {
    let own = (!yard.job.engines_on.is_empty()).then(|| (OWN.to_owned(), yard.job.clone()));
    let candidates = yard.job.candidates.iter().map(|candidate| (candidate.name.clone(), candidate.job(yard.job)));
    let mut all = Vec::new();
    let mut slips = Vec::new();
    let first = usize::from(own.is_some());
    for (i, (name, job)) in own.into_iter().chain(candidates).enumerate() {
        let looked = yard.look(&job, |case| {
            let power = case.rig.after.main_power().ok();
            let hung = case.rig.after.hung().ok();
            Compared {
                name: name.clone(),
                job: job.clone(),
                said: rules::judge(case).into_iter().map(Said::of).collect(),
                power: power.map(|all| Power::from_si(all.iter().map(|(_, one)| one.si()).sum())),
                hung: hung.map(|all| Mass::from_si(all.iter().map(|(_, one)| one.si()).sum())),
            }
        });
        match looked {
            Ok(compared) => all.push(compared),
            Err(found) => slips.extend(found.into_iter().map(|slip| in_candidate(slip, i - first))),
        }
    }
    if slips.is_empty() { Ok(all) } else { Err(slips) }
}

/// A slip in the engines of a candidate at its own place.
fn in_candidate(slip: Slip, index: usize) -> Slip {
    let of_it = slip.path.starts_with("engines_on") || slip.path.starts_with("goes_on");
    if of_it { Slip { path: format!("candidates[{index}].{}", slip.path), ..slip } } else { slip }
}

impl Compared {
    /// What governs in a family: of its gravest findings the one with least room; nothing where no rule of it applies.
    pub fn governs(&self, family: Family) -> Option<&Said> {
        let of_family = self.said.iter().filter(|said| said.rule.family == family);
        let applies = of_family.filter(|said| said.verdict != Verdict::NotApplicable);
        let room = |said: &Said| firmness(said).unwrap_or(f64::INFINITY);
        applies.min_by(|a, b| a.verdict.cmp(&b.verdict).then(room(a).total_cmp(&room(b))))
    }

    /// What a rule found.
    pub fn found(&self, id: &str) -> Option<Measure> {
        self.said.iter().find(|said| said.rule.id == id)?.found
    }

    /// How many findings have this verdict.
    pub fn count(&self, verdict: Verdict) -> usize {
        self.said.iter().filter(|said| said.verdict == verdict).count()
    }
}
