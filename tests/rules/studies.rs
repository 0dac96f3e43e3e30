//! A propeller asked about outright: what cannot be asked, and what is said beside the figures.

use sternknee::case::Case;
use sternknee::case::studies::Answered;
use sternknee::quantity::Units;
use sternknee::working::Line;

use crate::common::rig;

/// A study of a propeller of 14 in by 19 in that asks this.
fn asked(asks: &str) -> String {
    format!(
        "(sitting: study, propeller_study: (blades: 3, diameter: \"14 in\", pitch: \"19 in\", area_ratio: \"0.65\", {asks}))"
    )
}

/// Any two of speed, turns and advance tell the third.
#[test]
fn all_three_of_speed_turns_and_advance_are_one_too_many_and_one_of_the_first_two_too_few() {
    let fault = |asks: &str| {
        let rig = rig(&asked(asks));
        let faults = Case::new(&rig).study_faults();
        assert!(faults.len() <= 1);
        faults.into_iter().next().map(|fault| fault.message)
    };
    let [speed, turns, advance] = ["speed: \"30 mph\", ", "rpm: \"2,800 rpm\", ", "advance: \"0.8\", "];
    for enough in [format!("{speed}{turns}"), format!("{speed}{advance}"), format!("{turns}{advance}"), advance.into()]
    {
        assert_eq!(fault(&enough), None, "{enough}");
    }
    let all = fault(&format!("{speed}{turns}{advance}")).expect("a fault");
    assert!(all.contains("one thing too many"), "{all}");
    for lacking in [speed, turns] {
        let few = fault(lacking).expect("a fault");
        assert!(few.contains("missing"), "{few}");
    }
}

/// Oosterveld and van Oossanen 1975, from memory: the correction of the series begins at its own Reynolds number, two million.
#[test]
fn below_two_million_it_is_said_that_the_correction_is_not_told() {
    let notes = |reynolds: &str| {
        let rig = rig(&asked(&format!("advance: \"0.8\", reynolds: {reynolds}")));
        let parts = Case::new(&rig).studies().into_iter().map(Answered::part).collect::<Vec<_>>();
        let lines = parts.iter().flat_map(|part| part.sheet.lines());
        let remarks = lines.filter(|line| matches!(line, Line::Remark(_)));
        remarks.map(|line| line.show(Units::Us)).collect::<Vec<_>>().join("\n")
    };
    let said = "Below a Reynolds number of two million the correction is not told";
    for (reynolds, expected) in [("500000.0", true), ("1999000.0", true), ("2000000.0", false), ("5000000.0", false)] {
        assert_eq!(notes(reynolds).contains(said), expected, "{reynolds}");
    }
}
