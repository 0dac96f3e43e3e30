//! Facts of the trade that the rules bear out. Common practice, no source, for all of them.

use sternknee::quantity::Units;
use sternknee::rules::Verdict;

use crate::common::{CATALOG, finding, study};

/// What the catalog says of a class, as a job describes an engine in place.
fn described(name: &str) -> String {
    let entry = CATALOG.text_of(name).expect("a class");
    let spec = &entry[entry.find("spec: (").expect("a sheet") + "spec: ".len()..];
    let mut depth = 0;
    let end = spec.find(|c| {
        depth += i32::from(c == '(') - i32::from(c == ')');
        c == ')' && depth == 0
    });
    spec[..=end.expect("an end")].to_owned()
}

/// A transom of 25 in at 12 degrees, the water 6 in under its top, an engine that tilts so far.
fn tilted(class: &str, tilt: &str) -> sternknee::rules::Finding {
    let spec = described(class);
    let from = spec.find("full_tilt: \"").expect("a tilt") + "full_tilt: \"".len();
    let to = from + spec[from..].find('"').expect("an end");
    let engine = format!("{}{tilt}{}", &spec[..from], &spec[to..]);
    finding(
        "swing/lifts-clear",
        &study(&format!(
            "transom: (height: \"25 in\", angle: \"12 deg\", thickness: \"2 in\", cutout_width: \"36 in\", \
             splash_well: floor(\"12 in\")), waterline: \"6 in\", \
             engines_on: [(described: {engine}, shaft: \"25 in\", at: [centre], holes_up: 1)]"
        )),
    )
}

#[test]
fn eighty_one_degrees_of_tilt_bring_an_engine_out_of_the_water() {
    for class in ["four-stroke 90 hp inline-4", "four-stroke 150 hp inline-4", "four-stroke 250 hp V6"] {
        let out = tilted(class, "81 deg");
        let told = out.summary.show(Units::Us);
        assert_eq!(out.verdict, Verdict::Pass, "{class}: {told}");
        // All of it: not even the nose of the gearcase dips.
        assert!(!told.contains("nose"), "{class}: {told}");
        assert_eq!(tilted(class, "60 deg").verdict, Verdict::Warn, "{class}");
    }
}
