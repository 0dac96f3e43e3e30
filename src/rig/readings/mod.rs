//! Every reading that a rig holds, with its basis and tolerance: the list at the end of a report.

mod hung;
mod list;

use uom::si::f64::Length;

use super::{OnTrailer, Rig, Shape};
use crate::job::rigging::Walk;
use crate::job::{HullShape, Signs, SplashWell};
use crate::quantity::{Basis, Measure, Style, Text, say};

use list::List;

/// Readings of one thing: the boat, her transom, one engine.
#[derive(Clone, Debug, PartialEq)]
pub struct TakenGroup {
    /// What they are of.
    pub of: String,
    /// The readings, in the order of the rig.
    pub readings: Vec<Taken>,
}

/// One reading as a report lists it.
#[derive(Clone, Debug, PartialEq)]
pub struct Taken {
    /// What was read.
    pub name: Text,
    /// What it said.
    pub value: Value,
    /// Where it is from; nothing for what was chosen or looked at.
    pub basis: Option<Basis>,
    /// Whatever was noted of it.
    pub note: Option<String>,
}

/// What a reading said.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A number, and how far off it may be either way.
    Number(Measure, Option<Measure>),
    /// From one number to another.
    Range(Measure, Measure),
    /// A choice or a count, in words.
    Words(Text),
}

impl Rig {
    /// Every reading that the rig holds, thing by thing. What is missing is not in it.
    pub fn readings(&self) -> Vec<TakenGroup> {
        let mut groups = vec![self.of_boat(), self.of_transom(), self.of_afloat(), self.of_surroundings()];
        for (outfit, lead) in [(&self.before, "coming off"), (&self.after, "going on")] {
            groups.extend(hung::of_outfit(outfit, lead));
        }
        groups.push(self.of_ran());
        groups.push(self.of_rigging());
        groups.retain(|group| !group.readings.is_empty());
        groups
    }

    fn of_boat(&self) -> TakenGroup {
        let boat = &self.boat;
        let mut list = List::default();
        list.words(&boat.craft, |craft| Text::from(craft.words()));
        list.words(&boat.bottom, |bottom| Text::from(bottom.words()));
        list.number(&boat.length, Style::FeetInches);
        list.number(&boat.beam, Style::FeetInches);
        list.number(&boat.transom_width, Style::FeetInches);
        list.number(&boat.aft_quarter_beam, Style::FeetInches);
        list.number(&boat.deadrise, Style::Plain);
        list.number(&boat.chine_beam, Style::FeetInches);
        list.number(&boat.transom_rating, Style::Plain);
        list.reading("power that her builder rates her for", boat.power_rating.as_ref(), Style::Plain);
        list.words(&self.steering, |steering| Text::from(steering.words()));
        if let Some(year) = boat.year {
            list.said("year", say!("{}", u32::from(year)));
        }
        if let Some(plate) = self.plate.reading() {
            list.plate(plate);
        }
        list.under("the boat")
    }

    fn of_transom(&self) -> TakenGroup {
        let transom = &self.transom;
        let mut list = List::default();
        list.number(&transom.height, Style::Tape);
        for taken in &transom.heights {
            let name = Text::join([Text::from("transom height"), across(taken.at.y())], ", ");
            list.reading_named(name, &taken.height, Style::Tape);
        }
        list.number(&transom.angle, Style::Plain);
        list.number(&transom.thickness, Style::Tape);
        if let Some(material) = &transom.material {
            list.said("material", Text::from(material.name.as_str()));
        }
        if let Some(core) = transom.core {
            list.said("core", Text::from(core.words()));
        }
        if let Some(signs) = &self.structure.said.signs {
            list.said("what is seen of it", signs_in_words(signs));
        }
        list.number(&transom.cutout_width, Style::Tape);
        if transom.cutout.is_some() {
            list.said("cutout", Text::from("none: the top is level all across"));
        }
        if let Some(edge) = transom.top_edge {
            list.said("finish of its top", Text::from(edge.words()));
        }
        match transom.splash_well.reading() {
            Some(SplashWell::Floor(floor)) => {
                list.reading(transom.splash_well.measurement().name, Some(floor), Style::Tape);
            }
            Some(SplashWell::None) => list.said("splash-well", Text::from("none")),
            None => {}
        }
        list.number(&transom.upper_holes, Style::Tape);
        for hole in &transom.holes {
            let mut said = say!("{} below the top", Measure::tape(hole.below.value));
            if let Some(diameter) = &hole.diameter {
                said = said.then(say!(", {} across", Measure::tape(diameter.value)));
            }
            if hole.filled {
                said = said.then(Text::from(", plugged and glassed over"));
            }
            let name = Text::join([Text::from("old hole"), across(hole.at.y())], ", ");
            list.push(Taken {
                name,
                value: Value::Words(said),
                basis: Some(hole.below.basis),
                note: hole.below.note.as_deref().map(str::to_owned),
            });
        }
        list.under("the transom")
    }

    fn of_rigging(&self) -> TakenGroup {
        let mut list = List::default();
        self.rigging.walk("rigging", &mut |visited| {
            list.push(Taken {
                name: Text::from(visited.name),
                value: Value::Number(visited.value, visited.tolerance),
                basis: Some(visited.basis),
                note: visited.note.map(str::to_owned),
            });
        });
        list.under("what is rigged")
    }

    fn of_ran(&self) -> TakenGroup {
        let mut list = List::default();
        if let Some(ran) = &self.ran {
            if let Some(years) = ran.years {
                list.said("years", say!("{}", years.to_string()));
            }
            if let Some(hours) = ran.hours {
                list.said("hours", say!("{}", hours.to_string()));
            }
            if let Some(signs) = &ran.then {
                list.said("what the transom shows of it", signs_in_words(signs));
            }
        }
        list.under("how she has run with the engines coming off")
    }

    fn of_afloat(&self) -> TakenGroup {
        let afloat = &self.afloat;
        let mut list = List::default();
        if let Some(shape) = afloat.shape.reading() {
            let words = match shape {
                Shape::Lines(HullShape::Tape { sections, .. }) => {
                    say!("{} sections, taped", sections.len())
                }
                Shape::Lines(HullShape::Offsets { stations, .. }) => {
                    say!("a table of {} stations", stations.len())
                }
                Shape::Lines(HullShape::Mesh { .. }) | Shape::Mesh { .. } => Text::from("a mesh from a file"),
                Shape::Least { .. } => Text::from("length, chine beam, deadrise and depth alone"),
            };
            list.said(afloat.shape.measurement().name, words);
        }
        for (i, mark) in afloat.marks.reading().into_iter().flatten().enumerate() {
            let name = mark.what.clone().unwrap_or_else(|| format!("mark {}", i + 1));
            list.reading(&format!("{name}, above water"), mark.above_water.as_ref(), Style::Tape);
        }
        list.number(&afloat.boat_weight, Style::Plain);
        list.reading("her centre, forward of the transom", afloat.boat.forward.as_ref(), Style::Tape);
        list.reading("weight of a person", afloat.person.as_ref(), Style::Plain);
        for tank in &afloat.tanks {
            list.reading(&tank.what, tank.capacity.as_ref(), Style::Plain);
        }
        for item in &afloat.gear {
            list.reading(&item.what, item.weight.as_ref(), Style::Plain);
        }
        list.under("afloat")
    }

    fn of_surroundings(&self) -> TakenGroup {
        let around = &self.surroundings;
        let mut list = List::default();
        list.number(&around.well_length, Style::Tape);
        list.reading("width of the motorwell", around.well_width.as_ref(), Style::Tape);
        list.number(&around.rim_above, Style::Tape);
        list.number(&around.waterline, Style::Tape);
        if let Some(OnTrailer::Stands { keel_above_ground, bow_up, towing_tilt, .. }) = around.trailer.reading() {
            list.number(keel_above_ground, Style::Tape);
            list.reading("bow up on the trailer", bow_up.as_ref(), Style::Plain);
            list.reading("tilt at which she is towed", towing_tilt.as_ref(), Style::Plain);
        }
        for obstacle in &around.obstacles {
            list.said("what else stands there", say!("{}", obstacle.name.as_str()));
        }
        list.under("round the engines")
    }
}

fn signs_in_words(signs: &Signs) -> Text {
    if signs.seen().is_empty() {
        return Text::from("no sign of work");
    }
    Text::join(signs.seen().iter().map(|sign| Text::from(sign.words())), ", ")
}

/// A place across the boat: "14 in to port".
fn across(y: Length) -> Text {
    if y.value == 0.0 {
        return Text::from("on the centreline");
    }
    let side = if y.value > 0.0 { "port" } else { "starboard" };
    say!("{} to {}", Measure::tape(y.abs()), side)
}
