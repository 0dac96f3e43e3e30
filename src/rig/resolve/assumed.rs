//! The readings that a job itself marks as assumed, in sentences.

use crate::job::rigging::Walk;
use crate::job::{Job, tape};
use crate::quantity::{Basis, Measure, Style, Text, capitalised, say};

/// The readings that the job itself marks as assumed.
pub(super) fn readings(job: &Job) -> Vec<Text> {
    let mut assumed = Vec::new();
    let mut note = |name: &str, measure: Option<Measure>, note: Option<&str>| {
        if let Some(measure) = measure {
            let why = note.map(|note| format!(" ({note})")).unwrap_or_default();
            assumed.push(say!("{} is taken as {}{}.", capitalised(name), measure, why));
        }
    };
    macro_rules! each {
        ($($reading:expr => $measurement:ident, $style:ident;)+) => {$(
            if let Some(reading) = &$reading && reading.basis == Basis::Assumed {
                note(tape::$measurement.name, Some(reading.measure(Style::$style)), reading.note.as_deref());
            }
        )+};
    }
    let (boat, transom) = (&job.boat, &job.transom);
    each!(
        boat.length => BOAT_LENGTH, FeetInches;
        boat.beam => BEAM, FeetInches;
        boat.transom_width => TRANSOM_WIDTH, FeetInches;
        boat.deadrise => DEADRISE, Plain;
        boat.chine_beam => CHINE_BEAM, FeetInches;
        boat.depth => DEPTH, FeetInches;
        boat.transom_rating => TRANSOM_RATING, Plain;
        transom.height => TRANSOM_HEIGHT, Tape;
        transom.angle => TRANSOM_ANGLE, Plain;
        transom.thickness => TRANSOM_THICKNESS, Tape;
        transom.cutout_width => CUTOUT_WIDTH, Tape;
        transom.upper_holes => UPPER_HOLES, Tape;
        job.well.length => WELL_LENGTH, Tape;
        job.well.rim_above => WELL_RIM, Tape;
        job.waterline => WATERLINE, Tape;
    );
    job.rigging.walk("rigging", &mut |visited| {
        if visited.basis == Basis::Assumed {
            note(visited.name, Some(visited.value), visited.note);
        }
    });
    assumed
}
