//! How she runs: cures that were named are applied, and what the method does not tell is not told.

use sternknee::case::Case;
use sternknee::case::running::{Held, Nearest, Predicted, Screw};
use sternknee::quantity::{Dimensioned, Units};
use sternknee::rules::Verdict;
use uom::si::angle::degree;

use crate::common::{finding, near, rig};

const DIVE_TENDER: &str = include_str!("../../catalogs/jobs/dive_tender.ron");
const GUIDE_BOAT: &str = include_str!("../../catalogs/jobs/guide_boat.ron");

/// What is asked of the case as it runs with the new engines.
fn after<T>(job: &str, ask: impl Fn(&Predicted) -> T) -> T {
    let rig = rig(job);
    let case = Case::new(&rig);
    let runs = case.running().expect("asked");
    ask(runs.after.as_ref().expect("told"))
}

fn asked(job: &str, fields: &str) -> String {
    assert!(job.contains("running: ("));
    job.replacen("running: (", &format!("running: ({fields}, "), 1)
}

/// The dive tender porpoised with the old engine and stands nearer to it with the new one: tabs are named, and they are enough.
#[test]
fn the_cure_that_the_dive_tender_is_told_makes_her_pass() {
    let before = finding("running/porpoising", DIVE_TENDER);
    assert_eq!(before.verdict, Verdict::Warn, "{}", before.summary.show(Units::Us));
    let enough = after(DIVE_TENDER, |after| after.cures(Held::Strictly).tabs).expect("tabs are enough");
    assert!(!enough.trimmed_in);
    let tabs = enough.by;
    let told = before.remedy.as_ref().expect("a remedy").show(Units::Us);
    let down = tabs.deflection.get::<degree>();
    assert!(told.contains("fit a pair of tabs") && told.contains(&format!("{down:.1} deg down")), "{told}");
    let fitted = |down: f64| {
        let tabs = format!(
            "tabs: (count: 2, span: \"{} m\", chord: \"{} m\", down: \"{down} deg\")",
            0.5 * tabs.span.si(),
            tabs.chord.si()
        );
        finding("running/porpoising", &asked(DIVE_TENDER, &tabs))
    };
    let cured = fitted(down);
    assert_eq!(cured.verdict, Verdict::Pass, "{}", cured.summary.show(Units::Us));
    // And it is the least that is: two degrees less are not enough.
    assert_eq!(fitted(down - 2.0).verdict, Verdict::Warn);
}

/// What the trade knows besides, four more inches of setback and a larger fourth blade: their lift is reckoned and does not suffice, so
/// it is named as something to try, with what it changes; and it does change that when the job is changed so.
#[test]
fn setback_with_a_fourth_blade_is_named_to_be_tried_with_what_it_changes() {
    let told = finding("running/porpoising", DIVE_TENDER).remedy.expect("a remedy").show(Units::Us);
    assert!(told.contains("A fourth blade") && told.contains("setback") && told.contains("try one on loan"), "{told}");
    let blade = after(DIVE_TENDER, |after| after.cures(Held::Strictly).fourth_blade).expect("she has three");
    assert!(!blade.enough);
    let changed = |setback: &str, screw: &str| {
        DIVE_TENDER
            .replace("holes_up: 2,", &format!("holes_up: 2, {setback}"))
            .replace("propeller: (blades: 3, diameter: \"15-1/4 in\", pitch: \"18 in\")", screw)
    };
    // A plate that weighs as good as nothing, its top as much higher as the water has come up behind it.
    let plate = "bracket: (described: (kind: setback_plate, setback: \"4 in\", drop: \"-0.4 in\", face_height: \"12 in\", engines: 1, rated_power: \"300 hp\", rated_weight: \"700 lb\", weight: \"1 lb\")),";
    let screw = |screw: Screw| {
        format!(
            "propeller: (blades: {}, area_ratio: {}, diameter: \"15-1/4 in\", pitch: \"{} in\")",
            screw.blades,
            screw.area_ratio,
            (screw.pitch.si() / 0.0254).round()
        )
    };
    let at = |job: &str| after(job, |after| after.nearest_porpoising(Held::Strictly).expect("told"));
    let (plain, bladed) = (at(DIVE_TENDER), at(&changed("", &screw(blade.screw))));
    let both = at(&changed(plate, &screw(blade.screw)));
    let trims = |job: &Nearest| job.trim.get::<degree>();
    println!(
        "fourth blade alone {:+.3} deg, with 4 in of setback {:+.3} deg, {:+.3} as told",
        trims(&bladed) - trims(&plain),
        trims(&both) - trims(&plain),
        blade.trims.get::<degree>()
    );
    assert!(trims(&bladed) < trims(&plain), "a fourth blade lifts the stern");
    let off = trims(&both) - trims(&plain) - blade.trims.get::<degree>();
    assert!(off.abs() < 0.02, "{off} deg from what was told");
    let changes = blade.trims.get::<degree>();
    let says =
        if changes.abs() < 0.05 { "hardly changes her trim" } else { &format!("trims her {:.1} deg more", changes) };
    assert!(told.contains(says), "{told}");
}

/// Other propellers are tried on the range that she runs with her own; where they hold her is sought with their own blades, so that put on
/// her for good they give the same speed.
#[test]
fn other_propellers_run_on_her_as_they_were_tried() {
    for job in [DIVE_TENDER, GUIDE_BOAT] {
        after(job, |after| {
            for rung in after.ladder() {
                let own = after.built.with_screw(&rung.screw).range().top.expect("told");
                let off = own.speed.si() / rung.speed.si() - 1.0;
                println!("{} blades, {:.3} m: {:+.2e}", rung.screw.blades, rung.screw.pitch.si(), off);
                assert!(off.abs() < 1e-9, "{off}");
            }
        });
    }
}

/// Weight forward, tabs and trim in each take trim off her; what is named passes when the craft is changed by it.
#[test]
fn each_cure_takes_her_farther_below_the_limit() {
    let excess = |fields: &str| {
        let job = if fields.is_empty() { DIVE_TENDER.to_owned() } else { asked(DIVE_TENDER, fields) };
        after(&job, |after| after.nearest_porpoising(Held::Strictly).expect("told").excess().get::<degree>())
    };
    let plain = excess("");
    let tabs = |down: f64| format!("tabs: (count: 2, span: \"12 in\", chord: \"9 in\", down: \"{down} deg\")");
    let mut last = plain;
    for down in [2.0, 4.0, 6.0] {
        let now = excess(&tabs(down));
        assert!(now < last, "{now} with tabs {down} deg down, {last} with less");
        last = now;
    }
    let forward = |feet: u32| DIVE_TENDER.replace("forward: \"9 ft 8 in\"", &format!("forward: \"{feet} ft\""));
    let at = |job: &str| after(job, |after| after.nearest_porpoising(Held::Strictly).expect("told").excess().si());
    assert!(at(&forward(11)) < at(&forward(10)) && at(&forward(10)) < at(DIVE_TENDER));
}

/// Below the speed at which she begins to plane nothing is told; her trim, and a limit to it, only on plane and within the curves.
#[test]
fn nothing_is_told_where_the_method_does_not_reach() {
    for job in [DIVE_TENDER, GUIDE_BOAT] {
        after(job, |after| {
            assert!(after.range.points.len() > 10);
            for point in &after.range.points {
                assert!(point.froude.si() >= 1.0);
                assert_eq!(point.trim().is_some(), point.froude.si() >= 2.0);
                if let Some(between) = point.porpoises {
                    let [from, to] = [between.from, between.to].map(|trim| trim.get::<degree>());
                    assert!(point.trim().is_some() && from <= to && to < 11.0, "{from} to {to}");
                }
            }
        });
    }
}

/// With tabs down she runs flatter at full speed than the method tells: then no other pitch is named because its speed is told.
#[test]
fn no_pitch_is_named_where_her_greatest_speed_is_not_told() {
    let job = asked(DIVE_TENDER, "tabs: (count: 2, span: \"12-5/8 in\", chord: \"9 in\", down: \"7 deg\")");
    let judged = finding("running/pitch", &job);
    assert_eq!(judged.verdict, Verdict::Unmeasured, "{}", judged.summary.show(Units::Us));
    assert!(judged.remedy.is_none());
}

/// A prism told by sections is the prism told by beam and deadrise: 36 in out and 15 in up are 72 in over the chines and 22.6 degrees.
#[test]
fn the_bottom_of_a_prism_is_its_own_section() {
    let section = |forward: &str| {
        format!(
            "(forward: \"{forward}\", keel: \"0 in\", chine: (out: \"36 in\", up: \"15 in\"), sheer: (out: \"42 in\", up: \"36 in\"))"
        )
    };
    let sections: Vec<String> = ["0 in", "6 ft", "12 ft", "18 ft"].iter().map(|forward| section(forward)).collect();
    let job = format!(
        "(boat: (bottom: vee, length: \"18 ft\", transom_width: \"7 ft\"), hull: tape(sections: [{}]), \
         transom: (height: \"25 in\", angle: \"13 deg\"), steering: remote_hydraulic, afloat: (water: salt), \
         weights: (boat: (weight: \"2,300 lb\", forward: \"8 ft\", above: \"20 in\"), crew: 2, \
           places: [(what: \"helm\", holds: 3, forward: \"9 ft\", above: \"40 in\")]), \
         engines_on: [(class: \"four-stroke 150 hp inline-4\", shaft: \"25 in\", at: [centre], holes_up: 1, \
           propeller: (blades: 3, diameter: \"15 in\", pitch: \"17 in\"))], \
         running: ())",
        sections.join(", ")
    );
    let bottom = after(&job, |after| after.built.craft.planing.bottom);
    near(bottom.beam.si() / 0.0254, 72.0, 1e-6);
    near(bottom.deadrise.get::<degree>(), (15.0_f64 / 36.0).atan().to_degrees(), 1e-6);
}
