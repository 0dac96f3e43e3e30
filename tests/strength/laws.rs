//! Laws that hold for any job.

use sternknee::case::Case;
use sternknee::case::strength::{FlexRead, FlexTest, Part};
use sternknee::physics::strength::knockdown::KnockDown;
use sternknee::physics::strength::panel::Resultant;
use sternknee::quantity::Units;
use sternknee::rules::{self, Verdict};

use super::{KNEES, boat, finding, rig};

const BOLTS: &str = r#"size: "1/2-13", grade: "A4-70", washer: "2 in""#;
const DEMOS: [&str; 2] =
    [include_str!("../../catalogs/jobs/oyster_skiff.ron"), include_str!("../../catalogs/jobs/harbour_launch.ron")];

#[test]
fn supports_balance_the_loads_of_every_demo() {
    for demo in DEMOS {
        let rig = rig(demo);
        let case = Case::new(&rig);
        let strength = case.strength().expect("a demo with strength");
        let before = strength.before.as_ref().expect("old engines");
        for laden in [&strength.after, before] {
            for effect in laden.bent.effects.iter() {
                let (reactions, load) = laden.bent.panels.braced().reactions(&effect.braced().loaded);
                let held = Resultant::total(reactions.iter().map(|reaction| reaction.push));
                let size = reactions.iter().map(|reaction| reaction.push.force.abs()).fold(0.0, f64::max);
                for off in [held.force + load.force, held.moment_y + load.moment_y, held.moment_z + load.moment_z] {
                    assert!(off.abs() < 1e-9 * size, "{off} of {size}");
                }
            }
        }
    }
}

#[test]
fn bolts_and_the_pressed_edges_balance_the_pull_on_every_face() {
    for demo in DEMOS {
        let rig = rig(demo);
        let case = Case::new(&rig);
        let strength = case.strength().expect("a demo with strength");
        for footing in &strength.after.footings {
            for (load, forces) in footing.loads.iter().zip(&footing.forces) {
                let shear: f64 = forces.bolts.iter().map(|bolt| bolt.primary[1] + bolt.secondary[1]).sum();
                assert!((shear - load.force[2]).abs() < 1e-9 * load.force[2].abs().max(1.0), "{shear} {load:?}");
            }
        }
    }
}

#[test]
fn a_softer_core_never_makes_a_part_stronger() {
    let rig = rig(&boat("four-stroke 115 hp inline-4", BOLTS, KNEES, ""));
    let case = Case::new(&rig);
    let strength = case.strength().expect("strength");
    for part in Part::ALL {
        let mut last = f64::INFINITY;
        for left in [1.0, 0.8, 0.5, 0.2] {
            let knock = KnockDown { stiffness: left, strength: left };
            let Some(worst) = strength.after.worst_with(part, &rig, strength, knock) else {
                continue;
            };
            assert!(worst.factor() <= last * (1.0 + 1e-12), "{part:?} {left}");
            last = worst.factor();
        }
    }
}

#[test]
fn a_heavier_engine_never_raises_a_bolts_factor() {
    let factor = |weighed: &str| {
        let text = boat("four-stroke 115 hp inline-4", BOLTS, KNEES, "").replace(
            "at: [centre], holes_up: 0, bolts",
            &format!("weighed: \"{weighed}\", at: [centre], holes_up: 0, bolts"),
        );
        let rig = rig(&text);
        let case = Case::new(&rig);
        let strength = case.strength().expect("strength");
        strength.after.worst(Part::Tension, &rig, strength).expect("bolts").factor()
    };
    assert!(factor("600 lb") <= factor("500 lb"));
    assert!(factor("500 lb") <= factor("400 lb"));
}

/// Skins that carry more than the core: only the core is soft where a reading says so.
const SKINS: &str = r#"lay_up: [
    (material: "glass/polyester laminate, mat and woven", thickness: "3/16 in"),
    (material: "Douglas-fir marine plywood", thickness: "1-3/8 in"),
    (material: "glass/polyester laminate, mat and woven", thickness: "3/16 in"),
],"#;

#[test]
fn the_flex_of_a_sound_transom_reads_as_sound() {
    for skins in ["", SKINS] {
        flex_reads_back(skins);
    }
}

/// What the springs of its edges and a coarser mesh take off that.
const FLEX_OFF: f64 = 0.02;

fn flex_reads_back(layers: &str) {
    let damp = boat("four-stroke 60 hp inline-4", BOLTS, "", &format!("{layers} moisture: \"20 %\""));
    let rig = rig(&damp);
    let case = Case::new(&rig);
    let test = case.strength().expect("strength").core.test.clone().expect("a test to make");
    let read =
        |moved: f64| super::flex(&boat("four-stroke 60 hp inline-4", BOLTS, "", &flexed(layers, test.arm, moved)));
    let (once, twice) = (read(test.moves), read(bent(&test, 2.0)));
    assert!((once.as_read - 1.0).abs() < 0.05, "{once:?}");
    if layers.is_empty() {
        // Twice as far is half as stiff where all of the transom is core; what holds it gives a little of its own.
        let off = 2.0 * twice.as_read / once.as_read - 1.0;
        assert!(off.abs() < FLEX_OFF, "{off} {once:?} {twice:?}");
    }
}

/// How far the top edge moves where the transom bends so many times as far as a sound one, m.
fn bent(test: &FlexTest, times: f64) -> f64 {
    FlexRead::SEAT + times * (test.moves - FlexRead::SEAT)
}

/// A flex of so many metres, read to next to nothing.
fn flexed(layers: &str, arm: f64, moved: f64) -> String {
    let weight = FlexTest::WEIGHT;
    format!(r#"{layers} flex: (weight: "{weight} kg", arm: "{arm} m", moved: "{} mm ± 0.0001 mm")"#, 1e3 * moved)
}

#[test]
fn what_a_flex_takes_off_the_core_moves_the_panel_as_far_as_it_was_read() {
    for skins in ["", SKINS] {
        let damp = rig(&boat("four-stroke 60 hp inline-4", BOLTS, "", &format!("{skins} moisture: \"20 %\"")));
        let test = Case::new(&damp).strength().expect("strength").core.test.clone().expect("a test to make");
        let under_weight = |moved: f64| {
            let rig = rig(&boat("four-stroke 60 hp inline-4", BOLTS, "", &flexed(skins, test.arm, moved)));
            let case = Case::new(&rig);
            case.strength().expect("strength").after.bent.effects[0].braced().loaded.largest_deflection.abs()
        };
        // Only what is beyond every doubt counts: so this one moves twice as far for certain.
        let (sound, soft) = (under_weight(test.moves), under_weight(bent(&test, 2.0 * FlexRead::MODEL)));
        // What moves twice as far under a pull moves about twice as far under the weight, skins and all: the two loads differ.
        assert!((soft / sound - 2.0).abs() < 0.2, "{sound} {soft}");
    }
}

#[test]
fn a_job_that_says_nothing_of_strength_is_asked_for_little() {
    let text = r#"(boat: (craft: monohull, length: "18 ft"), engines_on: [(class: "four-stroke 60 hp inline-4")])"#;
    let mut asked: Vec<String> = Vec::new();
    for rule in rules::ALL.iter().filter(|rule| rule.id.starts_with("strength/")) {
        let finding = finding(rule.id, text);
        assert!(matches!(finding.verdict, Verdict::Unmeasured | Verdict::NotApplicable), "{}", rule.id);
        asked.extend(finding.missing.iter().map(|missing| missing.name()));
    }
    asked.sort();
    asked.dedup();
    assert_eq!(asked.len(), 2, "{asked:?}");
}

#[test]
fn the_skiff_is_told_what_gives_way_first_and_how_much_of_it_is_new() {
    let rig = rig(DEMOS[0]);
    let case = Case::new(&rig);
    let judged = rules::judge(&case);
    let first: Vec<String> = judged
        .iter()
        .map(|judged| judged.finding.summary.show(Units::Us))
        .filter(|summary| summary.contains("gives way first"))
        .collect();
    assert_eq!(first.len(), 1, "{first:?}");
    assert!(first[0].contains("With what hung there before"), "{first:?}");
}

#[test]
fn the_launchs_soft_core_lowers_its_factor_and_refers_on() {
    let finding = finding("strength/soft-core", DEMOS[1]);
    assert!(matches!(finding.verdict, Verdict::Warn | Verdict::Fail));
    let words = super::remedy(&finding);
    assert!(
        words.contains("Run no engine on it") && words.contains("core sample") && words.contains("licensed"),
        "{words}"
    );
}

const ON_A_BRACKET: &str = r#"at: [centre], holes_up: 0, bracket: (class: "setback plate 6 in")"#;

#[test]
fn the_same_engine_on_the_same_bracket_turns_it_once_as_hard_as_before() {
    let text = boat("two-stroke 40 hp inline-3", BOLTS, KNEES, "").replace("at: [centre], holes_up: 0", ON_A_BRACKET);
    let finding = finding("strength/bracket-moment", &text);
    let table = finding.tables.last().expect("a table");
    let last = table.rows.last().expect("rows").last().expect("a ratio");
    assert_eq!(last.show(Units::Us), "1", "{table:?}");
}

#[test]
fn of_two_brackets_of_one_name_each_is_held_against_its_own_rating() {
    let bracket = |rating: &str| {
        format!(
            r#"bracket: (described: (kind: setback_plate, setback: "6 in", drop: "0 in", weight: "20 lb", rated_weight: "{rating}"))"#
        )
    };
    let group = |side: &str, rating: &str| {
        format!(
            r#"(class: "four-stroke 60 hp inline-4", shaft: "20 in", at: [{side}("15 in")], holes_up: 0, {}, bolts: ({BOLTS}))"#,
            bracket(rating)
        )
    };
    let (strong, weak) = (group("port", "900 lb"), group("starboard", "90 lb"));
    for groups in [format!("{strong}, {weak}"), format!("{weak}, {strong}")] {
        let text = boat("four-stroke 60 hp inline-4", BOLTS, KNEES, "");
        let from = text.find("engines_on: [").expect("engines");
        let text = format!("{}engines_on: [{groups}],\n)", &text[..from]);
        let finding = finding("strength/bracket-moment", &text);
        assert_eq!(finding.verdict, Verdict::Warn, "{finding:?}");
        assert!(finding.summary.show(Units::Us).contains("90 lb"));
    }
}
