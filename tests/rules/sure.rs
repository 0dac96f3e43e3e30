//! What findings are worth: against the textbook's root of squares, and what must hold of any job.

use std::sync::Arc;

use proptest::prelude::*;
use sternknee::case::Case;
use sternknee::quantity::Units;
use sternknee::report::{self, Report};
use sternknee::rules::{self, Decides, Doubt, Judged, Taken, Verdict, doubt_by_reading, measure_next};
use sternknee::sure;

use crate::common::{CATALOG, near, rig, study};

fn weighed(text: &str) -> Vec<Judged> {
    let rig = rig(text);
    let mut judged = rules::judge(&Case::new(&rig));
    sure::weigh(&rig, &CATALOG, &Default::default(), &mut judged);
    judged
}

fn of<'j>(judged: &'j [Judged], id: &str) -> &'j Judged {
    judged.iter().find(|judged| judged.rule.id == id).unwrap_or_else(|| panic!("no rule {id}"))
}

fn doubt<'j>(judged: &'j [Judged], id: &str) -> &'j Doubt {
    of(judged, id).doubt.as_ref().unwrap_or_else(|| panic!("{id} is not worth anything"))
}

fn us(measure: Option<sternknee::quantity::Measure>) -> f64 {
    measure.expect("a worth").in_unit(Units::Us).0
}

/// A pair of engines, a bracket and a tie bar against a rating, each known to so much.
fn hung(engine: &str, bracket: &str, bar: &str, rating: &str) -> String {
    study(&format!(
        "boat: (transom_rating: \"{rating}\"), \
         engines_on: [(described: (running_weight: \"300 lb {engine}\"), at: [port(\"14 in ± 0 in\"), starboard(\"14 in ± 0 in\")], \
           bracket: (described: (weight: \"90 lb {bracket}\")))], \
         goes_on: [(what: \"tie bar\", weight: \"10 lb {bar}\", on_transom: true)]"
    ))
}

/// JCGM 100, 5.1.2: two engines of one class are off together, so √((2·6)² + 5² + 1²) = 13.04 lb.
#[test]
fn a_sum_of_weights_is_worth_the_root_of_squares() {
    let judged = weighed(&hung("± 6 lb", "± 5 lb", "± 1 lb", "720 lb ± 0 lb"));
    let doubt = doubt(&judged, "weight/transom-rating");
    near(us(doubt.found), (12.0_f64.powi(2) + 26.0).sqrt(), 0.01);
    near(us(doubt.room), us(doubt.found), 1e-9);
    near(doubt.decides[0].share, 144.0 / 170.0, 1e-3);
    assert_eq!(doubt.otherwise, None, "20 lb of room");
}

#[test]
fn a_verdict_closer_to_its_limit_than_it_is_worth_is_not_firm() {
    let judged = weighed(&hung("± 6 lb", "± 5 lb", "± 1 lb", "710 lb ± 0 lb"));
    let close = doubt(&judged, "weight/transom-rating");
    assert_eq!(of(&judged, "weight/transom-rating").finding.verdict, Verdict::Pass);
    assert_eq!(close.otherwise, Some(Verdict::Fail));
    // Of 10 lb of room the others take √26, which leaves √74 to two engines.
    near(us(close.decides[0].settles), 74.0_f64.sqrt() / 2.0, 0.01);
    assert!(measure_next(&judged)[0].0.name.starts_with("weight of the engine"));
}

/// Trim by moment: each weight's part is what the same boat trims with that weight alone a little more, as a naval architect
/// finds it by hand; all of them together by the root of squares.
#[test]
fn trim_is_worth_the_root_of_squares_of_what_each_weight_trims_her() {
    let job = |engine: &str, tank: &str| {
        study(&format!(
            "boat: (bottom: vee, length: \"20 ft ± 0 in\", beam: \"8 ft ± 0 in\", transom_width: \"7 ft ± 0 in\", deadrise: \"18 deg ± 0 deg\", \
               chine_beam: \"6 ft 6 in ± 0 in\", depth: \"36 in ± 0 in\"), \
             transom: (height: \"25 in ± 0 in\", angle: \"13 deg ± 0 deg\"), afloat: (water: salt), \
             weights: (boat: (weight: \"2,400 lb ± 0 lb\", forward: \"8 ft ± 0 in\", above: \"20 in ± 0 in\"), \
               gear: [(what: \"chest\", weight: \"{tank}\", forward: \"3 ft ± 0 in\", above: \"20 in ± 0 in\")]), \
             engines_off: [(described: (running_weight: \"300 lb ± 0 lb\", centre_aft: \"8 in ± 0 in\", centre_above: \"6 in ± 0 in\"))], \
             engines_on: [(described: (running_weight: \"{engine}\", centre_aft: \"8 in ± 0 in\", centre_above: \"6 in ± 0 in\"))]"
        ))
    };
    let trim = |text: &str| {
        let judged = weighed(text);
        let found = of(&judged, "stern/trim-change").finding.found;
        found.unwrap_or_else(|| panic!("{:?}", of(&judged, "stern/trim-change").finding.summary)).si
    };
    let judged = weighed(&job("470 lb ± 25 lb", "150 lb ± 40 lb"));
    let base = trim(&job("470 lb ± 0 lb", "150 lb ± 0 lb"));
    let by = |text: String| trim(&text) - base;
    let parts = [by(job("495 lb ± 0 lb", "150 lb ± 0 lb")), by(job("470 lb ± 0 lb", "190 lb ± 0 lb"))];
    let textbook = parts[0].hypot(parts[1]);
    let found = doubt(&judged, "stern/trim-change").found.expect("a worth").si;
    assert!((found / textbook - 1.0).abs() < 0.01, "{found} is not {textbook}");
}

/// 33 CFR 183.53(a): 2 (L · B) - 90 raised to 5 hp, so the root of squares of 2 B δL = 30 hp and 2 L δB = 30 hp; 60, 90 and 120 hp
/// need no raising.
#[test]
fn the_power_formula_is_worth_the_root_of_squares_of_length_and_width() {
    let judged = weighed(&study(
        "boat: (craft: monohull, bottom: vee, length: \"15 ft ± 30 in\", transom_width: \"6 ft ± 1 ft\", \
           beam: \"7 ft ± 0 in\"), \
         transom: (height: \"25 in ± 0 in\"), steering: remote_hydraulic, \
         engines_on: [(described: (power: \"60 hp ± 0 hp\"), at: [centre])]",
    ));
    let doubt = doubt(&judged, "power/formula-limit");
    let textbook = 30.0 * 2.0_f64.sqrt();
    let found = us(doubt.room);
    assert!((found / textbook - 1.0).abs() < 0.01, "{found} is not {textbook}");
    assert!(doubt.decides.iter().all(|decides| (decides.share - 0.5).abs() < 0.005), "{:?}", doubt.decides);
}

/// The pull on a bolt group: each reading's part is what the same bolts are pulled with it alone a little more, as one finds it by
/// hand; all of them together by the root of squares.
#[test]
fn the_pull_on_a_bolt_group_is_worth_the_root_of_squares() {
    let pass = include_str!("cases/strength-bolts-tension/pass.ron");
    let with = |speed: &str, holes: &str| {
        let text = pass.replace("top_speed: \"30 mph\", old", &format!("top_speed: \"{speed}\", old"));
        text.replace("upper_holes: \"1-7/8 in\"", &format!("upper_holes: \"{holes}\""))
    };
    let judged = weighed(&with("30 mph ± 2 mph", "1-7/8 in ± 1/2 in"));
    let doubt = doubt(&judged, "strength/bolts-tension");
    let found = doubt.found.expect("a worth").si;
    let factor = |speed: &str, holes: &str| {
        let rig = rig(&with(speed, holes));
        let judged = rules::judge(&Case::new(&rig));
        of(&judged, "strength/bolts-tension").finding.found.expect("a factor").si
    };
    let by_speed = 0.5 * (factor("32 mph", "1-7/8 in") - factor("28 mph", "1-7/8 in"));
    let by_holes = 0.5 * (factor("30 mph", "2-3/8 in") - factor("30 mph", "1-3/8 in"));
    // The engine's own sizes have the rest of the square.
    let both: f64 = doubt
        .decides
        .iter()
        .filter(|decides| ["operating.top_speed", "transom.upper_holes"].contains(&decides.reading.path.as_str()))
        .map(|decides| decides.share)
        .sum();
    assert!(both > 0.3, "{both}");
    let textbook = by_speed.hypot(by_holes) / both.sqrt();
    assert!((found / textbook - 1.0).abs() < 0.01, "{found} is not {textbook}: {by_speed}, {by_holes}, {both}");
}

#[test]
fn readings_without_tolerance_give_todays_report() {
    let text = hung("± 0 lb", "± 0 lb", "± 0 lb", "700 lb ± 0 lb");
    let rig = rig(&text);
    let case = Case::new(&rig);
    let (judged, weighed) = (rules::judge(&case), weighed(&text));
    assert!(weighed.iter().filter_map(|judged| judged.doubt.as_ref()).all(Doubt::is_firm));
    let told = |judged: &[Judged]| {
        let report = Report { case: &case, judged, units: Units::Us, explain: true };
        report::text(&report)
    };
    assert_eq!(told(&judged), told(&weighed));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn a_closer_reading_never_makes_a_firm_verdict_less_firm(
        engine in 0.0..30.0_f64, bracket in 0.0..30.0_f64, bar in 0.0..9.0_f64, rating in 650.0..760.0_f64, part in 0.0..1.0_f64,
        which in 0..3_usize,
    ) {
        let job = |scale: [f64; 3]| {
            let tolerance = |lb: f64, i: usize| format!("± {:.3} lb", lb * scale[i]);
            hung(&tolerance(engine, 0), &tolerance(bracket, 1), &tolerance(bar, 2), &format!("{rating:.1} lb ± 0 lb"))
        };
        let mut closer = [1.0; 3];
        closer[which] = part;
        let (wide, close) = (weighed(&job([1.0; 3])), weighed(&job(closer)));
        for (wide, close) in wide.iter().zip(&close) {
            if let (Some(before), Some(after)) = (&wide.doubt, &close.doubt) {
                prop_assert!(!before.is_firm() || after.is_firm(), "{}", wide.rule.id);
            }
        }
    }
}

/// Each finding's doubt counts the same: two that lean on the engine's weight by 0.7 and 0.4, the bracket's by 0.26 and on the bar's by 0.04
/// and 0.6, are two doubts, of which (0.7 + 0.4) / 2 = 0.55 are the engine's, 0.32 the bar's and 0.13 the bracket's. Taken again is what
/// turns a verdict, but for what brings less than a twentieth.
#[test]
fn the_doubt_of_all_findings_is_shared_among_its_readings() {
    let mut judged = weighed(&hung("± 6 lb", "± 5 lb", "± 1 lb", "720 lb ± 0 lb"));
    let readings: Vec<_> =
        doubt(&judged, "weight/transom-rating").decides.iter().map(|decides| decides.reading.clone()).collect();
    let [engine, bracket, bar] = readings.try_into().expect("three weights");
    judged.truncate(3);
    let leans = |otherwise, shares: &[(&Arc<Taken>, f64)]| Doubt {
        found: None,
        room: None,
        otherwise,
        decides: shares
            .iter()
            .map(|(reading, share)| Decides { reading: (*reading).clone(), share: *share, settles: None })
            .collect(),
    };
    judged[0].doubt = Some(leans(Some(Verdict::Fail), &[(&engine, 0.7), (&bracket, 0.26), (&bar, 0.04)]));
    judged[1].doubt = Some(leans(None, &[(&bar, 0.6), (&engine, 0.4)]));
    judged[2].doubt = None;
    let told = |shares: Vec<(Arc<Taken>, f64)>| {
        shares.into_iter().map(|(reading, share)| (reading.name.clone(), share)).collect::<Vec<_>>()
    };
    let hold = |found: Vec<(String, f64)>, expected: &[(&Arc<Taken>, f64)]| {
        assert_eq!(found.len(), expected.len(), "{found:?}");
        for ((name, share), (reading, wanted)) in found.iter().zip(expected) {
            assert_eq!(*name, reading.name);
            near(*share, *wanted, 1e-12);
        }
    };
    hold(told(doubt_by_reading(&judged)), &[(&engine, 0.55), (&bar, 0.32), (&bracket, 0.13)]);
    hold(told(measure_next(&judged)), &[(&engine, 0.7), (&bracket, 0.26)]);
    // Where the other may turn as well, both count.
    judged[1].doubt = Some(leans(Some(Verdict::Fail), &[(&bar, 0.6), (&engine, 0.4)]));
    hold(told(measure_next(&judged)), &[(&engine, 1.1), (&bar, 0.64), (&bracket, 0.26)]);
}
