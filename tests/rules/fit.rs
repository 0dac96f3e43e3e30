//! Where the fit rules change their mind. Source of the pattern: the trade association's layout in general
//! use; of the distances to spare: common practice, no source.

use proptest::prelude::*;
use sternknee::quantity::Units;
use sternknee::rules::Finding;
use sternknee::rules::Verdict::{Fail, NotApplicable, Pass, Unmeasured, Warn};

use crate::common::{finding, near, study, verdict, with_engine};

const BOLTS: &str = "fit/bolt-pattern";

fn bolts(transom: &str, at: &str) -> Finding {
    let job = study(&format!("transom: ({transom}), engines_on: [(described: (power: \"100 hp\"), at: [{at}])]"));
    finding(BOLTS, &job)
}

/// 12-7/8 in across and an inch each side: 14-7/8 in for one on the centreline; 4 in off it, 22-7/8 in.
#[test]
fn the_upper_pair_needs_an_inch_to_the_cutouts_side() {
    for (cutout, at, expected) in [
        ("14-7/8 in", "centre", Pass),
        ("14-13/16 in", "centre", Fail),
        ("22-7/8 in", "port(\"4 in\")", Pass),
        ("22-13/16 in", "port(\"4 in\")", Fail),
        ("22-7/8 in", "starboard(\"4 in\")", Pass),
        ("22-13/16 in", "starboard(\"4 in\")", Fail),
    ] {
        let found = bolts(&format!("cutout_width: \"{cutout}\", splash_well: none"), at);
        assert_eq!(found.verdict, expected, "{cutout} {at}");
    }
}

/// An old hole within 1/16 in is used again; one nearer than three diameters of 1/2 in is in the way.
#[test]
fn an_old_hole_is_used_again_or_three_diameters_away() {
    let of = |y: &str, below: &str, diameter: &str| {
        bolts(
            &format!(
                "cutout_width: \"40 in\", splash_well: none, \
                 holes: [(at: port(\"{y}\"), below: \"{below}\"{diameter})]"
            ),
            "centre",
        )
    };
    let half = ", diameter: \"1/2 in\"";
    for (y, below, diameter, expected, reused) in [
        ("6.4375 in", "1.875 in", half, Pass, 1),
        ("6.4375 in", "1.875 in", "", Pass, 1),
        ("6.4375 in", "1.937 in", half, Pass, 1),
        ("6.4375 in", "1.938 in", half, Warn, 0),
        ("6.4375 in", "3.374 in", half, Warn, 0),
        ("6.4375 in", "3.376 in", half, Pass, 0),
        ("7.936 in", "1.875 in", half, Warn, 0),
        ("7.939 in", "1.875 in", half, Pass, 0),
        ("4.9375 in", "9.875 in", half, Pass, 1),
        ("6.4375 in", "1.875 in", ", diameter: \"0.562 in\"", Pass, 1),
        ("6.4375 in", "1.875 in", ", diameter: \"0.563 in\"", Warn, 0),
    ] {
        let found = of(y, below, diameter);
        assert_eq!(found.verdict, expected, "{y} {below} {diameter}");
        if expected == Pass {
            let text = found.summary.show(Units::Us);
            assert_eq!(text.contains("one old hole"), reused == 1, "{y} {below}: {text}");
        }
    }
}

/// The lower bolts stand 1-7/8 + 8 = 9-7/8 in below the top; their washers ask for an inch above the floor.
#[test]
fn lower_bolts_clear_the_wells_floor_by_their_washers() {
    for (floor, expected) in
        [("10.876 in", Pass), ("10.874 in", Fail), ("8.876 in", Fail), ("8.874 in", Warn), ("6 in", Warn)]
    {
        let transom = format!("cutout_width: \"40 in\", splash_well: floor(\"{floor}\")");
        assert_eq!(bolts(&transom, "centre").verdict, expected, "{floor}");
    }
}

/// The gravest complaint speaks, and says how many more there are.
#[test]
fn the_gravest_of_several_complaints_speaks() {
    let found = bolts(
        "cutout_width: \"40 in\", splash_well: floor(\"10 in\"), \
         holes: [(at: port(\"6 in\"), below: \"2-1/2 in\")]",
        "centre",
    );
    assert_eq!(found.verdict, Fail);
    assert!(found.summary.show(Units::Us).contains("1 more"));
}

/// Source: the layout in general use: 8 in between the pairs. Upper holes at 3 in put the lower bolts at 11 in.
#[test]
fn lower_bolts_stand_below_the_upper_holes_that_the_job_has() {
    let of = |upper: &str| {
        bolts(&format!("cutout_width: \"40 in\", splash_well: floor(\"11 in\"), upper_holes: \"{upper}\""), "centre")
    };
    assert_eq!(of("1.999 in").verdict, Pass);
    assert_eq!(of("2.001 in").verdict, Fail);
    let fails = of("3 in");
    assert_eq!(fails.verdict, Fail);
    near(fails.found.unwrap().in_unit(Units::Us).0, 11.0, 1e-9);
    assert_eq!(of("4.001 in").verdict, Warn);
}

/// Places that the job gives go before the pattern, for each engine its own.
#[test]
fn bolts_stand_where_the_job_says() {
    let of = |below: &str| {
        let row = |side: &str, off: &str| format!("(at: {side}(\"{off}\"), below: \"{below}\")");
        let bolted: Vec<String> =
            ["port", "starboard"].iter().flat_map(|side| [row(side, "8 in"), row(side, "20 in")]).collect();
        let job = study(&format!(
            "transom: (cutout_width: \"60 in\", splash_well: floor(\"12 in\")), engines_on: [(described: (power: \"100 hp\"), \
             at: [port(\"14 in\"), starboard(\"14 in\")], bolts: (at: [{}]))]",
            bolted.join(", ")
        ));
        (finding(BOLTS, &job), finding("fit/top-edge", &job))
    };
    let (pattern, edge) = of("2 in");
    assert_eq!((pattern.verdict, edge.verdict), (Pass, Pass));
    assert_eq!(pattern.tables[0].rows.len(), 4);
    let (pattern, edge) = of("1.5 in");
    assert_eq!((pattern.verdict, edge.verdict), (Pass, Fail));
    assert_eq!(of("11.5 in").0.verdict, Fail);
}

/// Of several old holes in the way the nearest one speaks.
#[test]
fn the_worst_of_equal_complaints_speaks() {
    let found = bolts(
        "cutout_width: \"40 in\", splash_well: none, \
         holes: [(at: port(\"5.625 in\"), below: \"1.875 in\"), (at: starboard(\"5.75 in\"), below: \"1.875 in\")]",
        "centre",
    );
    assert_eq!(found.verdict, Warn);
    near(found.found.unwrap().in_unit(Units::Us).0, 0.6875, 1e-9);
    let text = found.summary.show(Units::Us);
    assert!(text.contains("11/16 in") && text.contains("1 more"), "{text}");
}

/// Port for starboard.
fn mirrored(text: &str) -> String {
    text.replace("port", "\u{1}")
        .replace("starboard", "port")
        .replace('\u{1}', "starboard")
        .replace("starstarboard", "port")
}

#[test]
fn port_and_starboard_change_places_in_a_mirror() {
    assert_eq!(mirrored("port starboard"), "starboard port");
}

proptest! {
    #[test]
    fn mirrored_boats_give_mirrored_findings(
        places in (8.0_f64..30.0, 8.0_f64..30.0),
        holes in prop::collection::vec((0.0_f64..40.0, 1.0_f64..12.0, any::<bool>()), 0..5),
        cutout in 30.0_f64..90.0, floor in 8.0_f64..16.0, upper in 1.5_f64..4.0,
    ) {
        let holes: Vec<String> = holes
            .iter()
            .map(|(off, below, port)| {
                format!("(at: {}(\"{off} in\"), below: \"{below} in\")", if *port { "port" } else { "starboard" })
            })
            .collect();
        let job = study(&format!(
            "transom: (cutout_width: \"{cutout} in\", splash_well: floor(\"{floor} in\"), upper_holes: \"{upper} in\", \
             holes: [{}]), engines_on: [(described: (power: \"100 hp\", centre_distance: \"28 in\", \
             powerhead: (clearance_each_way: \"10 in\")), at: [port(\"{} in\"), starboard(\"{} in\")])]",
            holes.join(", "), places.0, places.1
        ));
        for id in [BOLTS, "fit/top-edge", "fit/centre-distance"] {
            let (one, other) = (finding(id, &job), finding(id, &mirrored(&job)));
            prop_assert_eq!(one.verdict, other.verdict, "{}", id);
            prop_assert_eq!(one.found, other.found, "{}", id);
            prop_assert_eq!(one.limit, other.limit, "{}", id);
            if id == BOLTS {
                prop_assert_eq!(mirrored(&one.summary.show(Units::Us)), other.summary.show(Units::Us));
            }
        }
    }
}

/// Where there is no cutout, the transom's own width bounds the bolts, and nothing stands beside a powerhead.
#[test]
fn a_job_may_say_that_there_is_no_cutout() {
    let of = |width: &str, engine: &str| {
        study(&format!(
            "boat: (transom_width: \"{width}\"), transom: (cutout: none, splash_well: none), \
             engines_on: [(described: (power: \"100 hp\", {engine}), at: [centre])]"
        ))
    };
    assert_eq!(verdict(BOLTS, &of("14-7/8 in", "")), Pass);
    assert_eq!(verdict(BOLTS, &of("14-13/16 in", "")), Fail);
    assert_eq!(verdict("fit/centre-distance", &of("50 in", "")), NotApplicable);
    // Both said is a fault with its place.
    let both = study("transom: (cutout: none, cutout_width: \"30 in\")");
    let faults = sternknee::job::load("job.ron", &both).unwrap_err().to_string();
    assert!(faults.contains("transom.cutout") && faults.contains("leave out one of the two"), "{faults}");
    let other = study("transom: (cutout: wide)");
    assert!(sternknee::job::load("job.ron", &other).is_err());
}

/// Before anything is drilled there are no holes to measure; a core that shows is told all the same.
#[test]
fn upper_holes_are_asked_for_where_they_are_there() {
    let of = |sitting: &str, transom: &str| {
        let job = with_engine("power: \"100 hp\"", &format!("transom: ({transom})"));
        verdict("fit/top-edge", &job.replace("sitting: study", &format!("sitting: {sitting}")))
    };
    assert_eq!(of("before_ordering", ""), NotApplicable);
    assert_eq!(of("as_fitted", ""), Unmeasured);
    assert_eq!(of("before_ordering", "top_edge: bare"), Warn);
}

/// Source: the layout in general use: 1-7/8 in below the top, never less than 1-3/4 in, to what a tape tells: half a sixteenth.
#[test]
fn upper_holes_are_never_less_than_an_inch_and_three_quarters_down() {
    let of = |upper: &str, edge: &str| {
        let fields = format!("transom: (upper_holes: \"{upper}\"{edge})");
        verdict("fit/top-edge", &with_engine("power: \"100 hp\"", &fields))
    };
    assert_eq!(of("1.718 in", ""), Fail);
    assert_eq!(of("1.719 in", ""), Warn);
    assert_eq!(of("1.75 in", ""), Warn);
    assert_eq!(of("1.843 in", ""), Warn);
    assert_eq!(of("1.844 in", ""), Pass);
    assert_eq!(of("1.875 in", ""), Pass);
    assert_eq!(of("1.875 in", ", top_edge: sealed"), Pass);
    assert_eq!(of("1.875 in", ", top_edge: capped"), Pass);
    assert_eq!(of("1.875 in", ", top_edge: bare"), Warn);
}

/// The engine's own range; a reading that its tolerance (1/16 in where none is given) takes over either end of it warns.
#[test]
fn a_transoms_thickness_keeps_its_tolerance_inside_the_range() {
    let of = |thickness: &str| {
        let job = with_engine(
            "transom_thickness: (from: \"1.5 in\", to: \"2.5 in\")",
            &format!("transom: (thickness: \"{thickness}\")"),
        );
        finding("fit/transom-thickness", &job)
    };
    for (thickness, expected) in [
        ("1.437 in", Fail),
        ("1.438 in", Warn),
        ("1.499 in", Warn),
        ("1.501 in", Warn),
        ("1.562 in", Warn),
        ("1.563 in", Pass),
        ("2.437 in", Pass),
        ("2.438 in", Warn),
        ("2.499 in", Warn),
        ("2.501 in", Warn),
        ("2.562 in", Warn),
        ("2.563 in", Fail),
        ("1.55 in ± 0.04 in", Pass),
        ("1.55 in ± 0.06 in", Warn),
        ("2.4 in ± 0.11 in", Warn),
    ] {
        assert_eq!(of(thickness).verdict, expected, "{thickness}");
    }
    let thin = of("1.25 in");
    assert!(thin.remedy.unwrap().show(Units::Us).contains("out by 3/8 in"));
    // ASME B18.2.2, B18.21.1: 2 in, 5/8, two of 0.095, 7/16 and 2/13: 3.406 in, so 3-1/2 in bolts.
    let text = of("2 in").summary.show(Units::Us);
    assert!(text.contains("Bolts 1/2-13 of 3-1/2 in"), "{text}");
    near(of("2 in").margin().unwrap().in_unit(Units::Us).0, 0.5, 1e-9);
}

#[test]
fn the_worst_fitting_engine_speaks_for_the_thickness() {
    let job = study(
        "transom: (thickness: \"2 in\"), engines_on: [\
           (described: (transom_thickness: (from: \"1 in\", to: \"3 in\")), at: [port(\"14 in\")]), \
           (described: (transom_thickness: (from: \"1 in\", to: \"1.9 in\")), at: [starboard(\"14 in\")])]",
    );
    let found = finding("fit/transom-thickness", &job);
    assert_eq!(found.verdict, Fail);
    assert!(found.summary.show(Units::Us).contains("starboard engine"));
}

/// The mounting sheets' least distance: half of each; the powerhead within half the cutout.
#[test]
fn neighbours_stand_as_far_apart_as_both_need() {
    let of = |port: &str, cutout: &str| {
        let job = study(&format!(
            "transom: (cutout_width: \"{cutout}\"), engines_on: [\
               (described: (centre_distance: \"30 in\", powerhead: (clearance_each_way: \"10 in\")), at: [port(\"{port}\")]), \
               (described: (centre_distance: \"20 in\", powerhead: (clearance_each_way: \"8 in\")), at: [starboard(\"12 in\")])]"
        ));
        finding("fit/centre-distance", &job)
    };
    assert_eq!(of("13.01 in", "60 in").verdict, Pass);
    assert_eq!(of("12.99 in", "60 in").verdict, Fail);
    near(of("14 in", "60 in").margin().unwrap().in_unit(Units::Us).0, 1.0, 1e-9);
    assert_eq!(of("14 in", "48.01 in").verdict, Pass);
    let tight = of("14 in", "47.99 in");
    assert_eq!(tight.verdict, Warn);
    assert!(tight.summary.show(Units::Us).contains("port engine reaches 24 in"));
}

/// Of three, the tightest pair speaks.
#[test]
fn the_tightest_pair_of_three_speaks() {
    let job = study(
        "transom: (cutout_width: \"9 ft\"), engines_on: [(described: (centre_distance: \"28 in\", \
           powerhead: (clearance_each_way: \"10 in\")), \
           at: [port(\"30 in\"), centre, starboard(\"29 in\")])]",
    );
    let found = finding("fit/centre-distance", &job);
    assert_eq!(found.verdict, Pass);
    near(found.margin().unwrap().in_unit(Units::Us).0, 1.0, 1e-9);
}

/// A bracket carries its own bolts; the transom's rules have nothing to judge there.
#[test]
fn engines_on_a_bracket_leave_the_transoms_own_bolts_out() {
    let job = study(
        "engines_on: [(described: (power: \"100 hp\"), at: [centre], bracket: (described: (setback: \"20 in\")))]",
    );
    for id in ["fit/bolt-pattern", "fit/top-edge", "fit/transom-thickness"] {
        assert_eq!(verdict(id, &job), NotApplicable, "{id}");
    }
}
