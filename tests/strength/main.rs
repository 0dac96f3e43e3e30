//! Strength from a job to its findings: remedies that cure, laws that hold, nonsense that is told.

mod board;
mod cures;
mod driven;
mod grip;
mod kept;
mod laws;
mod nonsense;
mod outright;
mod put_together;
mod ranges;
mod remarks;
mod remedies;
mod signs;
mod studies;
mod sweeps;
mod transoms;
mod written;

use std::sync::LazyLock;

use sternknee::case::Case;
use sternknee::case::strength::FlexRead;
use sternknee::catalog::Catalog;
use sternknee::job;
use sternknee::quantity::Units;
use sternknee::rig::{self, Rig};
use sternknee::rules::{self, Finding};

static CATALOG: LazyLock<Catalog> = LazyLock::new(|| Catalog::built_in().expect("the built-in catalog is sound"));

/// A small boat with a sound transom. Invented.
const SOUND: &str = r#"(
    boat: (craft: monohull, construction: plywood_on_frames, length: "18 ft", transom_width: "7 ft", deadrise: "12 deg", chine_beam: "6 ft 4 in"),
    transom: (
        height: "20-1/2 in", angle: "14 deg", cutout_width: "36 in", upper_holes: "1-7/8 in",
        thickness: "2 in", material: "Douglas-fir marine plywood", core: sound,
    ),
    structure: (sides: bonded, bottom: bonded, corner_height: "30 in", knees: [KNEES], MORE),
    operating: (top_speed: "30 mph", old_top_speed: "30 mph", acceleration: "2 gn"),
    engines_off: [(class: "two-stroke 40 hp inline-3", shaft: "20 in", at: [centre], holes_up: 0)],
    engines_on: [(class: "ENGINE", shaft: "20 in", at: [centre], holes_up: 0, bolts: (BOLTS))],
)"#;

const KNEES: &str = r#"(at: port("9 in"), height: "20 in"), (at: starboard("9 in"), height: "20 in")"#;

/// The sound boat with this engine, these bolts, knees and readings.
fn boat(engine: &str, bolts: &str, knees: &str, more: &str) -> String {
    let text = SOUND.replace("ENGINE", engine).replace("BOLTS", bolts).replace("KNEES", knees);
    if more.is_empty() { text.replace(", MORE", "") } else { text.replace("MORE", more) }
}

fn rig(text: &str) -> Rig {
    let (job, _) = job::load("job.ron", text).unwrap_or_else(|faults| panic!("{faults}\n{text}"));
    rig::resolve(&job, &CATALOG).unwrap_or_else(|unresolved| panic!("{unresolved:?}\n{text}"))
}

fn finding(id: &str, text: &str) -> Finding {
    let rule = rules::find(id).unwrap_or_else(|| panic!("no rule {id}"));
    (rule.judge)(&Case::new(&rig(text)))
}

/// What a measured flex of a job leaves of the core.
fn flex(text: &str) -> FlexRead {
    let rig = rig(text);
    let case = Case::new(&rig);
    case.strength().expect("strength").core.flex.expect("a flex")
}

fn remedy(finding: &Finding) -> String {
    finding.remedy.as_ref().map(|remedy| remedy.show(Units::Us)).unwrap_or_else(|| panic!("no remedy: {finding:?}"))
}

/// What stands between two words of a text.
fn between<'t>(text: &'t str, before: &str, after: &str) -> &'t str {
    let from = text.find(before).unwrap_or_else(|| panic!("no `{before}` in {text}")) + before.len();
    let rest = &text[from..];
    &rest[..rest.find(after).unwrap_or_else(|| panic!("no `{after}` in {rest}"))]
}

/// An engine's weight is its own; a tie bar, a cylinder and the like stand beside it in the same list.
#[test]
fn what_hangs_beside_an_engine_is_told_beside_it() {
    let with = r#"goes_on: [(what: "cylinder", weight: "20 lb", on_transom: true)], engines_on:"#;
    let rig = rig(&boat("four-stroke 40 hp inline-3", "", KNEES, "").replace("engines_on:", with));
    let case = Case::new(&rig);
    let hung = &case.strength().expect("strength").after.footings[0].hung;
    let own = rig.after.mains()[0].weight.reading().unwrap().value;
    let told: Vec<_> = hung.iter().map(|hung| (hung.name.as_str(), hung.mass)).collect();
    assert_eq!(told.len(), 2);
    assert_eq!(told[0].0, "engine");
    assert!((told[0].1 - own).abs().value < 1e-9);
    assert_eq!(told[1].0, "cylinder");
    assert!((told[1].1.value - 20.0 * 0.453_592_37).abs() < 1e-9);
}
