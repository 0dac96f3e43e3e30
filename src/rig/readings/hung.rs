//! The readings of engines, brackets and what goes with them.

use super::list::List;
use super::{TakenGroup, across};
use crate::quantity::{Style, Text, say};
use crate::rig::{Bracket, Group, Outfit};

pub(super) fn of_outfit(outfit: &Outfit, lead: &str) -> Vec<TakenGroup> {
    let engines = outfit.groups.iter();
    let engines = engines.filter_map(|group| of_engines(group, lead));
    let brackets = outfit.groups.iter();
    let brackets = brackets.filter_map(|group| Some(of_bracket(group, group.bracket.as_ref()?, lead)));
    let mut groups: Vec<TakenGroup> = engines.chain(brackets).collect();
    let mut list = List::default();
    for entry in &outfit.items {
        if let Some(weight) = entry.weight.reading() {
            list.reading(&entry.item.what, Some(weight), Style::Plain);
        }
    }
    groups.push(list.under(&format!("other weights {lead}")));
    groups
}

/// Engines of one sort in one table: what each has for itself first, then what all have.
fn of_engines(group: &Group, lead: &str) -> Option<TakenGroup> {
    let first = group.engines.first()?;
    let mut list = List::default();
    list.said("class", Text::from(first.class.as_str()));
    for engine in &group.engines {
        let mut said = across(engine.y);
        if let Some(hand) = engine.hand.reading() {
            said = said.then(say!(", propeller {}", hand.words()));
        }
        list.said(&format!("place of the {}", engine.label), said);
    }
    list.number(&first.power, Style::Plain);
    list.number(&first.weight, Style::Plain);
    if let Some(propeller) = first.propeller.reading() {
        if let Some(blades) = propeller.blades {
            list.said("blades of its propeller", say!("{}", u32::from(blades)));
        }
        list.reading("diameter of its propeller", propeller.diameter.as_ref(), Style::Tape);
        list.reading("pitch of its propeller", propeller.pitch.as_ref(), Style::Tape);
        list.reading("blade area of its propeller, of the disc's", propeller.area_ratio.as_ref(), Style::Plain);
    }
    list.number(&first.rest_to_plate, Style::Tape);
    list.words(&first.holes_up, |holes| say!("{}", u32::from(*holes)));
    list.words(&first.hole_rows, |rows| say!("{}", u32::from(*rows)));
    list.span(&first.transom_thickness, Style::Tape);
    list.number(&first.transom_angle, Style::Plain);
    list.span(&first.trim, Style::Plain);
    list.number(&first.centre_distance, Style::Tape);
    list.number(&first.clearance_each_way, Style::Tape);
    if let Some(inserts) = group.bolts.said.inserts {
        list.said("what fills the core at the bolts", Text::from(inserts.words()));
    }
    list.reading("torque on its mounting sheet", first.spec.torque.as_ref(), Style::Plain);
    if group.bracket.is_none() {
        bolts(&mut list, group);
    }
    let labels: Vec<&str> = group.engines.iter().map(|engine| engine.label.as_str()).collect();
    Some(list.under(&format!("{}, {lead}", labels.join(" and "))))
}

/// The bolts that go through the transom.
fn bolts(list: &mut List, group: &Group) {
    let said = &group.bolts.said;
    for (name, entry) in [("bolts", &said.size), ("their grade", &said.grade)] {
        if let Some(entry) = entry {
            list.said(name, Text::from(entry.as_str()));
        }
    }
    list.reading("washers under the nuts", said.washer.as_ref(), Style::Tape);
    list.reading("thickness of the washers", said.washer_thickness.as_ref(), Style::Tape);
    if let Some(plate) = &said.backing_plate {
        list.reading("backing plate, across", Some(&plate.width), Style::Tape);
        list.reading("backing plate, up and down", Some(&plate.height), Style::Tape);
        list.reading("thickness of the backing plate", Some(&plate.thickness), Style::Tape);
    }
    list.reading("torque of the bolts", said.torque.as_ref(), Style::Plain);
}

fn of_bracket(group: &Group, bracket: &Bracket, lead: &str) -> TakenGroup {
    let mut list = List::default();
    list.number(&bracket.setback, Style::Tape);
    list.number(&bracket.drop, Style::Tape);
    list.reading("rated power", bracket.rated_power.reading(), Style::Plain);
    list.reading("rated weight", bracket.rated_weight.reading(), Style::Plain);
    list.reading("its own weight", bracket.weight.reading(), Style::Plain);
    list.reading("torque in its papers", bracket.spec.torque.as_ref(), Style::Plain);
    bolts(&mut list, group);
    list.under(&format!("{}, {lead}", bracket.name))
}
