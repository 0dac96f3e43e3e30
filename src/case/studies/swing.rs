//! A swing that a job gives outright: its own bodies and what stands round them.

use super::{Answered, figure, si};
use crate::case::swing::{Question, pose_words, swept_working, touch_words};
use crate::quantity::{Measure, Text, say};

/// As an answer to the question.
pub(super) fn answered(question: &Question) -> Answered {
    let swept = &question.swept;
    let clearance = &swept.clearance;
    let mut notes = vec![
        say!("With ")
            .then(pose_words(&clearance.pose, swept))
            .then(Text::from(": "))
            .then(touch_words(clearance, swept))
            .then(say!(".")),
    ];
    if let Some(margin) = question.margin {
        let kept = if swept.keeps() { "that is kept at every pose" } else { "that is not kept" };
        notes.push(say!("{} was to be kept: {}.", Measure::of(margin), kept));
    }
    let (corners, sheet) = swept_working(swept);
    let degrees =
        |key, meaning, angle: uom::si::f64::Angle| figure(key, meaning, angle, angle.get::<uom::si::angle::degree>());
    Answered {
        name: "swing_study",
        title: "the swing asked about",
        figures: vec![
            si("certified_least_m", "least distance at any pose, certified", clearance.lower),
            si("attained_m", "least distance that was found", clearance.upper),
            degrees("tilt_deg", "tilt there", clearance.pose.tilt),
            degrees("steering_deg", "steering there", clearance.pose.steer),
        ],
        in_full: true,
        notes,
        source: "Branch and bound over every pose, within the stated gap",
        tables: corners.into_iter().collect(),
        sheet,
    }
}
