//! The bottom that she planes on: beam over chines and deadrise, as a prism.

use uom::si::f64::{Angle, Length};

use crate::job::{self, HullShape, Section};
use crate::physics::running::Bottom;
use crate::quantity::{Dimensioned, Measure, Text, say};
use crate::reading::Absent;
use crate::rig::{Rig, Shape};

/// Places between transom and centre of gravity at which sections are looked at.
const PLACES: u32 = 8;

/// The prism that stands for her: of her sections, where they are given, the mean from the transom to her centre of gravity
/// (metres forward), where the pressure is; else chine beam and deadrise at the transom. Common practice, no source, for the mean.
pub(super) fn of(rig: &Rig, centre: f64, assumed: &mut Vec<Text>) -> Result<Bottom, Absent> {
    match rig.job.boat.bottom().reading() {
        Some(job::Bottom::Round) => {
            return Err(Absent::NotApplicable(Text::from("Her bottom is round: the planing prism does not tell it.")));
        }
        Some(job::Bottom::Cathedral) => {
            return Err(Absent::NotApplicable(Text::from(
                "Her bottom has several vees: the planing prism does not tell it.",
            )));
        }
        _ => {}
    }
    if let Some(Shape::Lines(HullShape::Tape { sections, .. })) = rig.shape.reading()
        && let Some((bottom, warp)) = of_sections(sections, centre)
    {
        if warp.abs() >= LEAST_WARP {
            assumed.push(say!(
                "Her bottom twists by {} of deadrise from the transom to her centre of gravity; she is taken as a prism of {} and {} over the chines, the mean between them.",
                Measure::of(Angle::from_si(warp)),
                Measure::of(bottom.deadrise),
                Measure::tape(bottom.beam)
            ));
        }
        return Ok(bottom);
    }
    match (rig.job.boat.chine_beam().ask(), rig.job.boat.deadrise().ask()) {
        (Ok(beam), Ok(deadrise)) => Ok(Bottom { beam: beam.value, deadrise: deadrise.value }),
        (beam, deadrise) => Err(Absent::Waits([beam.err(), deadrise.err()].into_iter().flatten().collect())),
    }
}

/// A twist that is told, radians: half a degree.
const LEAST_WARP: f64 = 0.0087;

/// Half beam at the chine and its rise above the keel at this place, straight between sections.
fn at(sections: &[Section], x: f64) -> Option<[f64; 2]> {
    let of = |section: &Section| {
        let rise = section.chine.up.value.si() - section.keel.value.si();
        [section.forward.value.si(), section.chine.out.value.si(), rise]
    };
    let mut all: Vec<[f64; 3]> = sections.iter().map(of).collect();
    all.sort_by(|a, b| a[0].total_cmp(&b[0]));
    let (first, last) = (all.first()?, all.last()?);
    let x = x.clamp(first[0], last[0]);
    let next = all.iter().position(|one| one[0] >= x)?;
    if next == 0 {
        return Some([first[1], first[2]]);
    }
    let (a, b) = (all[next - 1], all[next]);
    let part = (x - a[0]) / (b[0] - a[0]);
    Some([a[1] + part * (b[1] - a[1]), a[2] + part * (b[2] - a[2])])
}

/// The prism, and by how much her deadrise grows from the transom to her centre, radians.
fn of_sections(sections: &[Section], centre: f64) -> Option<(Bottom, f64)> {
    if sections.len() < 2 || !centre.is_finite() {
        return None;
    }
    let mut mean = [0.0; 2];
    for i in 0..=PLACES {
        let weight = if i == 0 || i == PLACES { 0.5 } else { 1.0 } / f64::from(PLACES);
        let place = at(sections, centre.max(0.0) * f64::from(i) / f64::from(PLACES))?;
        mean = [mean[0] + weight * place[0], mean[1] + weight * place[1]];
    }
    let angle = |[out, rise]: [f64; 2]| f64::atan2(rise.max(0.0), out);
    let warp = angle(at(sections, centre)?) - angle(at(sections, 0.0)?);
    let bottom = Bottom { beam: Length::from_si(2.0 * mean[0]), deadrise: Angle::from_si(angle(mean)) };
    (mean[0] > 0.0).then_some((bottom, warp))
}
