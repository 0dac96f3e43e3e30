//! What is rigged, with every class looked up; and what of it weighs.

use uom::si::f64::Mass;

use super::super::engine::ItemOfOutfit;
use super::super::{Outfit, Slot};
use super::Resolver;
use crate::catalog::Entry;
use crate::job::rigging::{BatteryEntry, Chosen, OldPart, Rigging};
use crate::job::{self, Item, Job};
use crate::quantity::{Basis, Measure, Reading, pounds, say};
use crate::reading::{Part, reading};
use crate::written::Slip;

impl<'a> Resolver<'a> {
    /// What the job says is rigged, each class's figures put where the job could have described the part.
    pub(super) fn rigging(&mut self, job: &Job) -> Rigging {
        let mut rigging = job.rigging.clone();
        let catalog = self.catalog;
        if let Some(steering) = &mut rigging.steering {
            let path = "rigging.steering";
            self.choose(&format!("{path}.helm"), "hydraulic helm", &mut steering.helm, &catalog.helms);
            self.choose(&format!("{path}.cylinder"), "steering cylinder", &mut steering.cylinder, &catalog.cylinders);
            if let Some(actuator) = &mut steering.actuator {
                self.choose(&format!("{path}.actuator.wire"), "wire", &mut actuator.wire, &catalog.tables.wires);
            }
        }
        for (i, line) in rigging.fuel.iter_mut().flat_map(|fuel| &mut fuel.lines).enumerate() {
            self.choose(&format!("rigging.fuel.lines[{i}].hose"), "fuel hose", &mut line.hose, &catalog.hoses);
        }
        if let Some(electrical) = &mut rigging.electrical {
            let path = "rigging.electrical";
            for (i, entry) in electrical.batteries.iter_mut().enumerate() {
                let path = format!("{path}.batteries[{i}]");
                self.choose(&format!("{path}.battery"), "battery", &mut entry.battery, &catalog.batteries);
                if let Some(cable) = &mut entry.cable {
                    self.choose(&format!("{path}.cable.wire"), "wire", &mut cable.wire, &catalog.tables.wires);
                }
            }
            for (i, circuit) in electrical.circuits.iter_mut().enumerate() {
                let path = format!("{path}.circuits[{i}]");
                self.choose(&format!("{path}.wire"), "wire", &mut circuit.wire, &catalog.tables.wires);
                self.choose(&format!("{path}.fuse"), "fuse", &mut circuit.fuse, &catalog.fuses);
            }
        }
        if let Some(towed) = &mut rigging.towed {
            self.choose("rigging.towed.trailer", "trailer", &mut towed.trailer, &catalog.trailers);
        }
        rigging
    }

    fn choose<C: Chosen>(&mut self, path: &str, what: &str, chosen: &mut C, entries: &'a [Entry<C::Spec>])
    where
        C::Spec: Part,
    {
        let Some(class) = chosen.class().map(str::to_owned) else { return };
        if chosen.spec().is_some() && self.written_out {
            return;
        }
        if chosen.spec().is_some() {
            self.unresolved.push(Slip {
                path: path.to_owned(),
                message: format!("a class and a description of the same {what}"),
                help: "give one of the two".to_owned(),
            });
            return;
        }
        let spec = self.find(&format!("{path}.class"), &class, what, entries).map(|entry| entry.spec);
        chosen.describe(spec.map(|mut spec| {
            spec.set_basis(Basis::Catalog);
            spec
        }));
    }

    /// Gives what comes off of the old rigging the weight that such a thing usually has, where none was told.
    pub(super) fn old_rigging(&mut self, before: &mut Outfit) {
        for entry in &mut before.items {
            let Some(part) = entry.item.part.filter(|_| entry.weight.reading().is_none()) else { continue };
            let count = entry.item.count.unwrap_or(1);
            let weight = usual_weight(part) * f64::from(count);
            self.assumed.push(say!(
                "{} of the old rigging: taken to weigh {}, as is usual.",
                entry.item.what.as_str(),
                Measure::of(weight)
            ));
            let weight = Reading::assumed(weight, "as is usual");
            entry.weight = Slot::of(Some(weight), reading!(job::Item.weight), &entry.item.what);
        }
    }
}

/// Puts the batteries that go on with the new engines among what hangs or stands aft afterwards.
pub(super) fn batteries_go_on(rigging: &Rigging, after: &mut Outfit) {
    let batteries = rigging.electrical.iter().flat_map(|electrical| &electrical.batteries);
    after.items.extend(batteries.filter(|entry| entry.goes_on).map(as_item));
}

fn as_item(entry: &BatteryEntry) -> ItemOfOutfit {
    let what = entry.name.clone().unwrap_or_else(|| entry.battery.name("battery").to_owned());
    let weight = entry.battery.spec().and_then(|battery| battery.weight.clone());
    ItemOfOutfit {
        weight: Slot::of(weight.clone(), reading!(job::Item.weight), &what),
        item: Item {
            what,
            weight,
            forward: entry.forward.clone(),
            above: entry.above.clone(),
            across: entry.across.clone(),
            ..Item::default()
        },
    }
}

/// What a thing of the old rigging usually weighs. Common practice, no source: an oil tank of 3 gal full, a cable of 15 ft.
fn usual_weight(part: OldPart) -> Mass {
    pounds(match part {
        OldPart::OilTank => 25.0,
        OldPart::OilLine | OldPart::FuelLine => 3.0,
        OldPart::SteeringCable => 9.0,
        OldPart::SteeringHelm => 8.0,
        OldPart::SteeringCylinder => 14.0,
        OldPart::ControlCable => 4.0,
        OldPart::ControlBox => 5.0,
        OldPart::TieBar => 10.0,
        OldPart::Gauge | OldPart::KeySwitch => 0.5,
        OldPart::Harness => 6.0,
        OldPart::Battery => 50.0,
    })
}
