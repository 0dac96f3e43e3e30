//! Every reading that a rig holds, with its basis and tolerance: the list at the end of a report.

use uom::si::f64::Length;

use super::{Bracket, Group, OnTrailer, Outfit, Rig, Shape, Slot};
use crate::job::{Across, Bottom, Core, Hand, HullShape, Plate, Span, SplashWell, TopEdge};
use crate::quantity::{Basis, Dimensioned, Measure, Reading, Style, Text, say};

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
        let mut groups = vec![self.of_boat(), self.of_transom()];
        groups.push(self.of_afloat());
        groups.push(self.of_surroundings());
        for (outfit, lead) in [(&self.before, "coming off"), (&self.after, "going on")] {
            groups.extend(of_outfit(outfit, lead));
        }
        groups.retain(|group| !group.readings.is_empty());
        groups
    }

    fn of_boat(&self) -> TakenGroup {
        let boat = &self.boat;
        let mut list = List::default();
        list.words(&boat.craft, |craft| Text::from(craft.words()));
        list.words(&boat.bottom, |bottom| Text::from(bottom_words(*bottom)));
        list.number(&boat.length, Style::FeetInches);
        list.number(&boat.beam, Style::FeetInches);
        list.number(&boat.transom_width, Style::FeetInches);
        list.number(&boat.aft_quarter_beam, Style::FeetInches);
        list.number(&boat.deadrise, Style::Plain);
        list.number(&boat.chine_beam, Style::FeetInches);
        list.number(&boat.transom_rating, Style::Plain);
        list.reading(
            "power that her builder rates her for",
            boat.power_rating.as_ref(),
            Style::Plain,
        );
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
            let name = Text::join([Text::from("transom height"), place(&taken.at)], ", ");
            list.reading_named(name, &taken.height, Style::Tape);
        }
        list.number(&transom.angle, Style::Plain);
        list.number(&transom.thickness, Style::Tape);
        if let Some(material) = &transom.material {
            list.said("material", Text::from(material.name.as_str()));
        }
        if let Some(core) = transom.core {
            list.said("core", Text::from(core_words(core)));
        }
        list.number(&transom.cutout_width, Style::Tape);
        if let Some(edge) = transom.top_edge {
            list.said("finish of its top", Text::from(edge_words(edge)));
        }
        match transom.splash_well.reading() {
            Some(SplashWell::Floor(floor)) => {
                list.reading(
                    transom.splash_well.measurement().name,
                    Some(floor),
                    Style::Tape,
                );
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
            let name = Text::join([Text::from("old hole"), place(&hole.at)], ", ");
            list.0.push(Taken {
                name,
                value: Value::Words(said),
                basis: Some(hole.below.basis),
                note: hole.below.note.clone(),
            });
        }
        list.under("the transom")
    }
}

impl Rig {
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
                Shape::Lines(HullShape::Mesh { .. }) | Shape::Mesh { .. } => {
                    Text::from("a mesh from a file")
                }
                Shape::Least { .. } => Text::from("length, chine beam, deadrise and depth alone"),
            };
            list.said(afloat.shape.measurement().name, words);
        }
        for (i, mark) in afloat.marks.reading().into_iter().flatten().enumerate() {
            let name = mark
                .what
                .clone()
                .unwrap_or_else(|| format!("mark {}", i + 1));
            list.reading(
                &format!("{name}, above water"),
                mark.above_water.as_ref(),
                Style::Tape,
            );
        }
        list.number(&afloat.boat_weight, Style::Plain);
        list.reading(
            "her centre, forward of the transom",
            afloat.boat.forward.as_ref(),
            Style::Tape,
        );
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
        list.reading(
            "width of the motorwell",
            around.well_width.as_ref(),
            Style::Tape,
        );
        list.number(&around.rim_above, Style::Tape);
        list.number(&around.waterline, Style::Tape);
        if let Some(OnTrailer::Stands {
            keel_above_ground,
            bow_up,
            towing_tilt,
            ..
        }) = around.trailer.reading()
        {
            list.number(keel_above_ground, Style::Tape);
            list.reading("bow up on the trailer", bow_up.as_ref(), Style::Plain);
            list.reading(
                "tilt at which she is towed",
                towing_tilt.as_ref(),
                Style::Plain,
            );
        }
        for obstacle in &around.obstacles {
            list.said("what else stands there", say!("{}", obstacle.name.as_str()));
        }
        list.under("round the engines")
    }
}

fn of_outfit(outfit: &Outfit, lead: &str) -> Vec<TakenGroup> {
    let mut groups = Vec::new();
    groups.extend(
        outfit
            .groups
            .iter()
            .filter_map(|group| of_engines(group, lead)),
    );
    for bracket in outfit
        .groups
        .iter()
        .filter_map(|group| group.bracket.as_ref())
    {
        groups.push(of_bracket(bracket, lead));
    }
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
            said = said.then(say!(", propeller {}", hand_words(*hand)));
        }
        list.said(&format!("place of the {}", engine.label), said);
    }
    list.number(&first.power, Style::Plain);
    list.number(&first.weight, Style::Plain);
    list.number(&first.rest_to_plate, Style::Tape);
    list.words(&first.holes_up, |holes| say!("{}", u32::from(*holes)));
    list.words(&first.hole_rows, |rows| say!("{}", u32::from(*rows)));
    list.span(&first.transom_thickness, Style::Tape);
    list.number(&first.transom_angle, Style::Plain);
    list.span(&first.trim, Style::Plain);
    list.number(&first.centre_distance, Style::Tape);
    list.number(&first.clearance_each_way, Style::Tape);
    let labels: Vec<&str> = group
        .engines
        .iter()
        .map(|engine| engine.label.as_str())
        .collect();
    Some(list.under(&format!("{}, {lead}", labels.join(" and "))))
}

fn of_bracket(bracket: &Bracket, lead: &str) -> TakenGroup {
    let mut list = List::default();
    list.number(&bracket.setback, Style::Tape);
    list.number(&bracket.drop, Style::Tape);
    list.reading("rated power", bracket.rated_power.reading(), Style::Plain);
    list.reading("rated weight", bracket.rated_weight.reading(), Style::Plain);
    list.reading("its own weight", bracket.weight.reading(), Style::Plain);
    list.under(&format!("{}, {lead}", bracket.name))
}

#[derive(Default)]
struct List(Vec<Taken>);

impl List {
    fn number<Q: Dimensioned>(&mut self, slot: &Slot<Reading<Q>>, style: Style) {
        self.reading(slot.measurement().name, slot.reading(), style);
    }

    fn reading<Q: Dimensioned>(&mut self, name: &str, reading: Option<&Reading<Q>>, style: Style) {
        if let Some(reading) = reading {
            self.reading_named(Text::from(name), reading, style);
        }
    }

    fn reading_named<Q: Dimensioned>(&mut self, name: Text, reading: &Reading<Q>, style: Style) {
        let tolerance = reading.tolerance.map(|off| Measure::styled(off, style));
        self.0.push(Taken {
            name,
            value: Value::Number(reading.measure(style), tolerance),
            basis: Some(reading.basis),
            note: reading.note.clone(),
        });
    }

    fn span<Q: Dimensioned>(&mut self, slot: &Slot<Span<Q>>, style: Style) {
        if let Some(span) = slot.reading() {
            self.0.push(Taken {
                name: Text::from(slot.measurement().name),
                value: Value::Range(span.from.measure(style), span.to.measure(style)),
                basis: Some(span.from.basis),
                note: None,
            });
        }
    }

    fn words<T>(&mut self, slot: &Slot<T>, words: impl Fn(&T) -> Text) {
        if let Some(value) = slot.reading() {
            self.said(slot.measurement().name, words(value));
        }
    }

    fn said(&mut self, name: &str, words: Text) {
        self.0.push(Taken {
            name: Text::from(name),
            value: Value::Words(words),
            basis: None,
            note: None,
        });
    }

    fn plate(&mut self, plate: &Plate) {
        match plate {
            Plate::Capacity {
                persons,
                persons_weight,
                total_weight,
                power,
            } => {
                self.said("plate", Text::from("US capacity plate"));
                self.persons(*persons);
                self.reading(
                    "persons' weight on the plate",
                    persons_weight.as_ref(),
                    Style::Plain,
                );
                self.reading(
                    "total weight on the plate",
                    total_weight.as_ref(),
                    Style::Plain,
                );
                self.reading("power on the plate", power.as_ref(), Style::Plain);
            }
            Plate::Builders {
                persons,
                load,
                power,
            } => {
                self.said("plate", Text::from("builder's plate"));
                self.persons(*persons);
                self.reading("load on the plate", load.as_ref(), Style::Plain);
                self.reading("power on the plate", power.as_ref(), Style::Plain);
            }
            Plate::None => self.said("plate", Text::from("none")),
            Plate::Illegible => self.said("plate", Text::from("cannot be read")),
        }
    }

    fn persons(&mut self, persons: Option<u16>) {
        if let Some(persons) = persons {
            self.said("persons on the plate", say!("{}", u32::from(persons)));
        }
    }

    fn under(self, of: &str) -> TakenGroup {
        TakenGroup {
            of: of.to_owned(),
            readings: self.0,
        }
    }
}

/// A place across the boat: "14 in to port".
fn across(y: Length) -> Text {
    if y.value == 0.0 {
        return Text::from("on the centreline");
    }
    let side = if y.value > 0.0 { "port" } else { "starboard" };
    say!("{} to {}", Measure::tape(y.abs()), side)
}

fn place(at: &Across) -> Text {
    across(at.y())
}

fn bottom_words(bottom: Bottom) -> &'static str {
    match bottom {
        Bottom::FlatHardChine => "flat with hard chines",
        Bottom::Vee => "vee",
        Bottom::Round => "round",
        Bottom::Cathedral => "cathedral",
    }
}

fn core_words(core: Core) -> &'static str {
    match core {
        Core::Sound => "sound",
        Core::Suspect => "suspect",
        Core::Soft => "soft",
    }
}

fn edge_words(edge: TopEdge) -> &'static str {
    match edge {
        TopEdge::Sealed => "sealed",
        TopEdge::Capped => "capped",
        TopEdge::Bare => "bare",
    }
}

fn hand_words(hand: Hand) -> &'static str {
    match hand {
        Hand::Right => "right",
        Hand::Left => "left",
        Hand::Counter => "two, turning against each other",
    }
}
