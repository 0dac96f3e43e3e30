//! What hangs aft at one time, resolved: engines, their brackets, and what goes with them.

use uom::si::f64::Mass;

use super::super::engine::ItemOfOutfit;
use super::super::sheet::{SwingSheet, with_sheet};
use super::super::{Bracket, Engine, Group, Outfit, Slot};
use super::Resolver;
use super::names::Names;
use super::structure;
use crate::job::{self, Across, BracketKind, BracketSpec, EngineGroup, EngineSpec, Hung, Item, Role, ShaftOption};
use crate::quantity::{Basis, Dimensioned, Measure, Reading, Style, Units, inches, say};
use crate::reading::{Declared, Part, reading};
use crate::written::Slip;

/// Running weight over dry weight, fluids and propeller included. Source: ABYC S-30 table 1A, whose
/// running weights are 1.05 of the dry ones.
const RUNNING_OVER_DRY: f64 = 1.05;
/// How near a shaft's name must be to one of the class's. Common practice, no source: makers call a
/// 20-1/2 in shaft a 20 in one.
const SAME_SHAFT_IN: f64 = 1.5;

/// What all engines of a group have alike.
struct Model {
    class: String,
    spec: EngineSpec,
    role: Role,
    /// The shaft, where job or class leave no choice.
    shaft: Option<ShaftOption>,
    /// What one weighs as it hangs.
    weight: Option<Reading<Mass>>,
}

impl Resolver<'_> {
    pub(super) fn outfit(
        &mut self,
        side: &str,
        groups: &[EngineGroup],
        items: &[Item],
        measurement: &'static Declared,
    ) -> Outfit {
        self.comes_off = measurement == reading!(job::Job.engines_off);
        let age = if self.comes_off { "old " } else { "" };
        let roles = super::roles::roles(self.catalog, groups);
        let names = Names::of(groups, &roles, age);
        let groups = groups
            .iter()
            .enumerate()
            .zip(roles)
            .filter_map(|((i, group), role)| self.group(&format!("{side}[{i}]"), group, (i, role), &names))
            .collect();
        let items = items
            .iter()
            .map(|item| ItemOfOutfit {
                weight: Slot::of(item.weight.clone(), reading!(job::Item.weight), &item.what),
                item: item.clone(),
            })
            .collect();
        Outfit { measurement, groups, items }
    }

    fn group(&mut self, path: &str, group: &EngineGroup, (index, role): (usize, Role), names: &Names) -> Option<Group> {
        self.tell_role(group, role, names.label(index, 0));
        // All are looked up before any is missed, so that every wrong name is told.
        let model = match (&group.class, &group.described) {
            (Some(class), Some(spec)) if self.written_out => Some((class.clone(), spec.clone())),
            (Some(class), _) => {
                let (path, engines) = (format!("{path}.class"), &self.catalog.engines);
                let entry = self.find(&path, class, "engine class", engines);
                entry.map(|entry| (entry.name, from(entry.spec, Basis::Catalog)))
            }
            (None, Some(spec)) => Some((described_name(spec), from(spec.clone(), Basis::Builder))),
            (None, None) => None,
        };
        let bracket = group.bracket.as_ref().map(|hung| self.bracket(path, group, hung));
        let bolts = structure::bolts(self, path, group);
        let (class, spec) = model?;
        let spec = with_sheet(spec, group.sheet.as_ref());
        let shaft = self.shaft(path, group, &spec, &class);
        if group.at.is_empty() {
            self.assumed.push(say!("The {} stands on the centreline: no place is given.", names.label(index, 0)));
        }
        let weight = self.weight(group, &spec, shaft.as_ref(), names.label(index, 0));
        let model = Model { class, spec, role, shaft, weight };
        let engines = group
            .places()
            .iter()
            .enumerate()
            .map(|(j, at)| engine(group, &model, at, j, names.label(index, j)))
            .collect();
        let bracket = match bracket {
            None => None,
            Some(found) => Some(found?),
        };
        Some(Group { entry: path.to_owned(), engines, bracket, bolts })
    }

    /// The shaft that the group's engines have, where the job or the class leaves no choice.
    fn shaft(&mut self, path: &str, group: &EngineGroup, spec: &EngineSpec, class: &str) -> Option<ShaftOption> {
        let Some(wanted) = &group.shaft else {
            return match spec.shafts.as_slice() {
                [only] => Some(only.clone()),
                _ => None,
            };
        };
        if spec.shafts.is_empty() {
            return Some(ShaftOption { name: wanted.clone(), rest_to_plate: wanted.clone(), extra_weight: None });
        }
        let distance = |option: &ShaftOption| (option.name.value - wanted.value).abs();
        let nearest = spec.shafts.iter().min_by(|a, b| distance(a).si().total_cmp(&distance(b).si()))?;
        // What hangs there has the shaft that it has, whatever its class is sold with.
        if distance(nearest) > inches(SAME_SHAFT_IN) && self.comes_off {
            let below = nearest.rest_to_plate.value - nearest.name.value;
            let rest_to_plate = Reading { value: wanted.value + below, written: None, ..wanted.clone() };
            return Some(ShaftOption {
                name: wanted.clone(),
                rest_to_plate,
                extra_weight: nearest.extra_weight.clone(),
            });
        }
        if distance(nearest) > inches(SAME_SHAFT_IN) {
            let offered: Vec<String> =
                spec.shafts.iter().map(|option| option.name.measure(Style::Tape).show(Units::Us)).collect();
            self.unresolved.push(Slip {
                path: format!("{path}.shaft"),
                message: format!(
                    "`{class}` does not come with a shaft of {}",
                    wanted.measure(Style::Tape).show(Units::Us)
                ),
                help: format!("it comes in {}", offered.join(", ")),
            });
            return None;
        }
        Some(nearest.clone())
    }

    /// What one engine weighs as it hangs: on the scale, else running and shaft, else dry and fluids.
    fn weight(
        &mut self,
        group: &EngineGroup,
        spec: &EngineSpec,
        shaft: Option<&ShaftOption>,
        label: &str,
    ) -> Option<Reading<Mass>> {
        if let Some(weighed) = &group.weighed {
            return Some(weighed.clone());
        }
        let mut reading = match (&spec.running_weight, &spec.dry_weight) {
            (Some(running), _) => running.clone(),
            (None, Some(dry)) => {
                let running = dry.value * RUNNING_OVER_DRY;
                self.assumed.push(say!(
                    "The {} weighs {} as it hangs: 1.05 of its dry {} (ABYC S-30).",
                    label,
                    Measure::of(running),
                    Measure::of(dry.value)
                ));
                Reading::assumed(running, "1.05 of the dry weight")
            }
            (None, None) => return None,
        };
        if let Some(extra) = shaft.and_then(|shaft| shaft.extra_weight.as_ref()) {
            reading.value += extra.value;
        }
        Some(reading)
    }

    /// What a job tells of a lift that its bracket cannot have.
    fn check_lift(&mut self, path: &str, hung: &Hung, spec: &BracketSpec) {
        let moved = self.written_out;
        let mut slip = |field: &str, message: String, help: &str| {
            let path = format!("{path}.bracket.{field}");
            self.unresolved.push(Slip { path, message, help: help.to_owned() });
        };
        let told = [("travel", hung.travel.is_some()), ("raised", hung.raised.is_some())];
        if spec.kind != Some(BracketKind::Auxiliary) {
            for (field, _) in told.into_iter().filter(|(_, told)| *told) {
                slip(
                    field,
                    format!("{field} is told of a bracket that lifts no small engine"),
                    "a lifting bracket is of `kind: auxiliary`; else leave the field out",
                );
            }
            return;
        }
        match (&hung.raised, hung.travel.as_ref().or(spec.travel.as_ref())) {
            // Readings that are moved a little may cross each other.
            (Some(raised), Some(travel)) if raised.value > travel.value && !moved => slip(
                "raised",
                format!(
                    "it is raised to {}, but its travel is {}",
                    raised.measure(Style::Tape).show(Units::Us),
                    travel.measure(Style::Tape).show(Units::Us)
                ),
                "raised counts from the bottom of the travel; tell the travel as measured beside it",
            ),
            _ => {}
        }
    }

    fn bracket(&mut self, path: &str, group: &EngineGroup, hung: &Hung) -> Option<Bracket> {
        let (name, spec) = match (&hung.class, &hung.described) {
            (Some(class), Some(spec)) if self.written_out => (class.clone(), spec.clone()),
            (Some(class), _) => {
                let (path, brackets) = (format!("{path}.bracket.class"), &self.catalog.brackets);
                let entry = self.find(&path, class, "bracket", brackets)?;
                (entry.name, from(entry.spec, Basis::Catalog))
            }
            (None, Some(spec)) => ("described bracket".to_owned(), from(spec.clone(), Basis::Builder)),
            (None, None) => return None,
        };
        self.check_lift(path, hung, &spec);
        Some(Bracket {
            travel: Slot::of(hung.travel.clone().or_else(|| spec.travel.clone()), reading!(job::Hung.travel), &name),
            raised: hung.raised.clone(),
            setback: Slot::of(
                group.setback.clone().or_else(|| spec.setback.clone()),
                reading!(job::EngineGroup.setback),
                &name,
            ),
            drop: Slot::of(group.drop.clone().or_else(|| spec.drop.clone()), reading!(job::EngineGroup.drop), &name),
            rated_power: Slot::of(spec.rated_power.clone(), reading!(job::BracketSpec.rated_power), &name),
            rated_weight: Slot::of(spec.rated_weight.clone(), reading!(job::BracketSpec.rated_weight), &name),
            weight: Slot::of(spec.weight.clone(), reading!(job::BracketSpec.weight), &name),
            bottom: Slot::of(hung.bottom.clone(), reading!(job::Hung.bottom), &name),
            width: hung.width.clone(),
            name: name.clone(),
            spec,
        })
    }
}

/// The engine of a group that stands at its place number `index`.
fn engine(group: &EngineGroup, model: &Model, at: &Across, index: usize, label: &str) -> Engine {
    let Model { class, spec, role, shaft, weight } = model;
    let head = spec.powerhead.clone().unwrap_or_default();
    Engine {
        tilt_stop: group.tilt_stop.as_ref().map(|stop| stop.value),
        sheet: Slot::of(SwingSheet::of(spec), reading!(job::EngineGroup.sheet), label),
        label: label.to_owned(),
        class: class.clone(),
        role: *role,
        y: at.y(),
        power: Slot::of(spec.power.clone(), reading!(job::EngineSpec.power), label),
        weight: Slot::of(weight.clone(), reading!(job::EngineSpec.running_weight), label),
        hand: Slot::of(group.propellers.get(index).copied(), reading!(job::EngineGroup.propellers), label),
        propeller: Slot::of(group.propeller.clone(), reading!(job::EngineGroup.propeller), label),
        rest_to_plate: Slot::of(
            shaft.as_ref().map(|s| s.rest_to_plate.clone()),
            reading!(job::EngineGroup.shaft),
            label,
        ),
        shaft_name: shaft.as_ref().map(|s| s.name.value),
        holes_up: Slot::of(group.holes_up, reading!(job::EngineGroup.holes_up), label),
        hole_rows: Slot::of(spec.hole_rows, reading!(job::EngineSpec.hole_rows), label),
        transom_thickness: Slot::of(spec.transom_thickness.clone(), reading!(job::EngineSpec.transom_thickness), label),
        transom_angle: Slot::of(spec.transom_angle.clone(), reading!(job::EngineSpec.transom_angle), label),
        trim: Slot::of(spec.trim.clone(), reading!(job::EngineSpec.trim), label),
        centre_distance: Slot::of(spec.centre_distance.clone(), reading!(job::EngineSpec.centre_distance), label),
        clearance_each_way: Slot::of(head.clearance_each_way, reading!(job::Powerhead.clearance_each_way), label),
        spec: spec.clone(),
    }
}

/// The spec with its plain numbers said to be from this basis.
fn from<T: Part>(mut spec: T, basis: Basis) -> T {
    spec.set_basis(basis);
    spec
}

fn described_name(spec: &EngineSpec) -> String {
    let power = spec.power.as_ref().map(|power| format!(" of {}", power.measure(Style::Plain).show(Units::Us)));
    format!("described engine{}", power.unwrap_or_default())
}
