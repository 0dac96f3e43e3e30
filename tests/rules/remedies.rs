//! Remedies of what is rigged, taken at their word: the size that a finding names is written into the job, and the finding passes.

use sternknee::quantity::Units;
use sternknee::rules::{Finding, Verdict};

use crate::common::finding;

/// A job that is found wanting, and what is written in place of what by the finding's own words.
struct Mended {
    rule: &'static str,
    job: &'static str,
    /// The place in the job.
    place: &'static str,
    /// From the finding to what stands there then.
    by: fn(&Finding) -> String,
}

/// The size of the first thing to buy.
fn size(finding: &Finding) -> String {
    finding.buys.first().unwrap_or_else(|| panic!("nothing to buy: {finding:?}")).size.show(Units::Us)
}

fn remedy(finding: &Finding) -> String {
    finding.remedy.as_ref().expect("a remedy").show(Units::Us)
}

/// What stands between two marks.
fn between(words: &str, from: &str, to: &str) -> String {
    let start = words.find(from).unwrap_or_else(|| panic!("no `{from}` in `{words}`")) + from.len();
    let end = words[start..].find(to).unwrap_or_else(|| panic!("no `{to}` in `{words}`"));
    words[start..start + end].to_owned()
}

fn wire(finding: &Finding) -> String {
    format!("class: \"{}\"", between(&format!("{},", size(finding)), "", ","))
}

/// Feet and inches of a job, as feet.
fn feet(finding: &Finding, from: &str, to: &str) -> f64 {
    let inches = between(&remedy(finding), from, to);
    inches.trim_end_matches(" in").parse::<f64>().unwrap_or_else(|_| panic!("{inches}")) / 12.0
}

macro_rules! case {
    ($name:literal) => {
        include_str!(concat!("cases/", $name, ".ron"))
    };
}

const PAIR: &str = "engines_on: [(class: \"four-stroke 150 hp inline-4\", shaft: \"25 in\", at: [port(\"14 in\"), starboard(\"14 in\")])]";

#[rustfmt::skip]
const ALL: [Mended; 20] = [
    Mended {
        rule: "steering/turns",
        job: "(sitting: study, steering: remote_hydraulic, rigging: (steering: (helm: (class: \"hydraulic helm 2.0 in³\"), cylinder: (class: \"steering cylinder 1.5 in x 8 in\"), cylinders: 2)))",
        place: "class: \"hydraulic helm 2.0 in³\"",
        by: |f| format!("described: (displacement: \"{}\")", between(&size(f), "about ", " a turn")),
    },
    Mended {
        rule: "steering/effort",
        job: case!("steering-effort/warn"),
        place: "class: \"hydraulic helm 2.4 in³\"",
        by: |f| format!("described: (displacement: \"{}\", relief: \"1,000 psi\")", between(&size(f), "at most ", " a turn")),
    },
    Mended {
        rule: "steering/lines",
        job: case!("steering-lines/fail"),
        place: "600 psi",
        by: |f| between(&format!("{}.", size(f)), "at least ", "."),
    },
    Mended {
        rule: "steering/rating",
        job: case!("steering-rating/fail"),
        place: "class: \"steering cylinder 1.25 in x 7 in\"",
        by: |f| format!("described: (rated_power: \"{}\")", between(&format!("{}.", size(f)), "at least ", ".")),
    },
    Mended {
        rule: "steering/cable",
        job: case!("steering-cable/fail"),
        place: "length: \"12 ft\"",
        by: |f| format!("length: \"{}\"", size(f)),
    },
    Mended {
        rule: "steering/toe",
        job: case!("steering-toe/warn"),
        place: "28-1/2 in",
        by: |f| between(&remedy(f), "Set the bar to ", ", pin"),
    },
    Mended {
        rule: "steering/toe",
        job: case!("steering-toe/fail"),
        place: "50 in",
        by: |f| between(&size(f), "", ", pin"),
    },
    Mended {
        rule: "steering/actuator",
        job: case!("steering-actuator/warn"),
        place: "class: \"12 AWG\"",
        by: wire,
    },
    Mended {
        rule: "fuel/suction",
        job: case!("fuel-suction/warn"),
        place: "class: \"fuel hose 1/4 in\"",
        by: |f| format!("described: (bore: \"{}\")", between(&size(f), "", " inside")),
    },
    Mended {
        rule: "fuel/vent-and-fill",
        job: case!("fuel-vent-and-fill/warn"),
        place: "1/4 in",
        by: |f| between(&size(f), "at least ", " inside"),
    },
    Mended {
        rule: "fuel/endurance",
        job: case!("fuel-endurance/warn"),
        place: "60 gal",
        by: |f| between(&remedy(f), "tanks of ", " together"),
    },
    Mended {
        rule: "electrical/cranking",
        job: case!("electrical-cranking/warn"),
        place: "class: \"starting battery 300 A\"",
        by: |f| format!("described: (cranking: \"{}\")", between(&size(f), "at least ", " cold")),
    },
    Mended {
        rule: "electrical/starter-cable",
        job: case!("electrical-starter-cable/warn"),
        place: "class: \"8 AWG\"",
        by: wire,
    },
    Mended {
        rule: "electrical/voltage-drop",
        job: case!("electrical-voltage-drop/warn"),
        place: "class: \"12 AWG\"",
        by: wire,
    },
    Mended {
        rule: "electrical/ampacity",
        job: case!("electrical-ampacity/fail"),
        place: "class: \"10 AWG\"",
        by: wire,
    },
    Mended {
        rule: "electrical/fuse",
        job: case!("electrical-fuse/fail"),
        place: "class: \"bolted fuse 100 A\"",
        by: |f| format!("described: (rating: \"{}\")", between(&format!("{}.", size(f)), " to ", ".")),
    },
    Mended {
        rule: "controls/cables",
        job: case!("controls-cables/fail"),
        place: "length: \"12 ft\"",
        by: |f| format!("length: \"{}\"", between(&format!("{}.", size(f)), "of ", ".")),
    },
    Mended {
        rule: "controls/tube",
        job: case!("controls-tube/warn"),
        place: "inside: \"2 in\"",
        by: |f| format!("inside: \"{}\"", between(&size(f), "", " inside")),
    },
    Mended {
        rule: "trailer/coupling",
        job: case!("trailer-coupling/warn"),
        place: "axle: \"8 ft\", coupling: \"20 ft\"",
        by: |f| {
            let aft = feet(f, "Move the axle ", " aft");
            format!("axle: \"{} ft\", coupling: \"{} ft\"", 8.0 - aft, 20.0 + aft)
        },
    },
    Mended {
        rule: "trailer/coupling",
        job: case!("trailer-coupling/warn"),
        place: "axle: \"8 ft\"",
        by: |f| format!("axle: \"{} ft\"", 8.0 - feet(f, "and her with it, ", " forward")),
    },
];

#[test]
fn sizes_that_findings_name_make_them_pass() {
    for mended in ALL {
        let wanting = finding(mended.rule, mended.job);
        let told = wanting.summary.show(Units::Us);
        assert!(matches!(wanting.verdict, Verdict::Warn | Verdict::Fail), "{}: {told}", mended.rule);
        assert!(mended.job.contains(mended.place), "{}", mended.rule);
        let by = (mended.by)(&wanting);
        let after = finding(mended.rule, &mended.job.replace(mended.place, &by));
        let now = after.summary.show(Units::Us);
        println!("{}: {by}: {now}", mended.rule);
        assert_eq!(after.verdict, Verdict::Pass, "{}: {told} Then with {by}: {now}", mended.rule);
    }
}

/// A trailer's rating: the finding names what is to be rated for how much.
#[test]
fn a_trailer_of_the_rating_that_is_named_carries_her() {
    let job = case!("trailer-load/fail");
    let wanting = finding("trailer/load", job);
    let rated = between(&format!("{}.", size(&wanting)), "at least ", ".");
    let after = finding(
        "trailer/load",
        &job.replace(
            "class: \"tandem trailer 7,000 lb\"",
            &format!("described: (rated: \"{rated}\", weight: \"1,400 lb\", centre: \"2 ft 6 in\")"),
        ),
    );
    assert_eq!(after.verdict, Verdict::Pass, "{}", after.summary.show(Units::Us));
}

/// Two engines on one line: a line more, like the first, and nothing else is bought for it.
#[test]
fn a_line_for_each_engine_is_bought_once() {
    let job = |lines: &str| format!("(sitting: study, {PAIR}, rigging: (fuel: (lines: [{lines}])))");
    let line = |engines: u8| {
        format!(
            "(name: \"line {engines}\", engines: {engines}, hose: (class: \"fuel hose 3/8 in\"), length: \"12 ft\", \
             lift: \"22 in\", elbows: 2, barbs: 6, anti_siphon: true, bulb: true, separator: true, years: 4)"
        )
    };
    let one = job(&line(2));
    let (suction, feed) = (finding("fuel/suction", &one), finding("fuel/one-feed", &one));
    assert_eq!((suction.verdict, feed.verdict), (Verdict::Warn, Verdict::Warn));
    assert!(suction.buys.is_empty(), "{:?}", suction.buys);
    assert_eq!(size(&feed), "1 more, 12 ft");
    let two = job(&format!("{}, {}", line(1), line(1)));
    for rule in ["fuel/suction", "fuel/one-feed"] {
        assert_eq!(finding(rule, &two).verdict, Verdict::Pass, "{rule}");
    }
}
