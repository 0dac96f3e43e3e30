//! From a job and a catalog to a rig.

use uom::si::f64::Mass;

use super::engine::ItemOfOutfit;
use super::float::Files;
use super::swing::{Surroundings, SwingSheet, with_sheet};
use super::{Boat, Bracket, Engine, Group, Outfit, Papers, Rig, ShaftChoice, Slot, Transom};
use crate::catalog::{Catalog, Entry, likely_names};
use crate::job::tape::Measurement;
use crate::job::{
    Across, BracketSpec, EngineGroup, EngineSpec, Hung, Item, Job, Role, ShaftOption, Span, tape,
};
use crate::quantity::{Basis, Dimensioned, Measure, Reading, Style, Text, Units, inches, say};

/// A reference that leads nowhere.
#[derive(Clone, Debug, PartialEq)]
pub struct Unresolved {
    /// The entry of the job.
    pub path: String,
    /// What is wrong.
    pub message: String,
    /// What would do.
    pub help: String,
}

/// Running weight over dry weight, fluids and propeller included. Source: ABYC S-30 table 1A, whose
/// running weights are 1.05 of the dry ones.
const RUNNING_OVER_DRY: f64 = 1.05;
/// How near a shaft's name must be to one of the class's. Common practice, no source: makers call a
/// 20-1/2 in shaft a 20 in one.
const SAME_SHAFT_IN: f64 = 1.5;

/// Resolves a job.
///
/// # Errors
/// Every class, bracket, material or shaft length that the catalog does not have.
pub fn resolve(job: &Job, catalog: &Catalog) -> Result<Rig, Vec<Unresolved>> {
    resolve_with_files(job, catalog, &Files::new())
}

/// Resolves a job that names files, whose bytes were read.
///
/// # Errors
/// As [`resolve`].
pub fn resolve_with_files(
    job: &Job,
    catalog: &Catalog,
    files: &Files,
) -> Result<Rig, Vec<Unresolved>> {
    let mut resolver = Resolver {
        catalog,
        unresolved: Vec::new(),
        assumed: Vec::new(),
    };
    let before = resolver.outfit(
        "engines_off",
        &job.engines_off,
        &job.comes_off,
        &tape::OLD_ENGINES,
    );
    let after = resolver.outfit(
        "engines_on",
        &job.engines_on,
        &job.goes_on,
        &tape::NEW_ENGINES,
    );
    let material = resolver.material(job.transom.material.as_deref());
    let structure = super::structure::resolve(&mut resolver, job, material.as_ref());
    if !resolver.unresolved.is_empty() {
        return Err(resolver.unresolved);
    }
    let boat = &job.boat;
    let transom = &job.transom;
    let mut rig = Rig {
        title: job
            .title
            .clone()
            .unwrap_or_else(|| "untitled job".to_owned()),
        made_up: job.made_up,
        sitting: job.sitting,
        boat: Boat {
            craft: Slot::new(boat.craft, &tape::CRAFT),
            bottom: Slot::new(boat.bottom, &tape::BOTTOM),
            length: Slot::new(boat.length.clone(), &tape::BOAT_LENGTH),
            beam: Slot::new(boat.beam.clone(), &tape::BEAM),
            transom_width: Slot::new(boat.transom_width.clone(), &tape::TRANSOM_WIDTH),
            aft_quarter_beam: Slot::new(boat.aft_quarter_beam.clone(), &tape::AFT_QUARTER_BEAM),
            deadrise: Slot::new(boat.deadrise.clone(), &tape::DEADRISE),
            chine_beam: Slot::new(boat.chine_beam.clone(), &tape::CHINE_BEAM),
            transom_rating: Slot::new(boat.transom_rating.clone(), &tape::TRANSOM_RATING),
            stability_test: Slot::new(boat.stability_test.clone(), &tape::STABILITY_TEST),
            power_rating: boat.power_rating.clone(),
            fuel: boat.fuel,
            year: boat.year,
            category: boat.category,
        },
        plate: Slot::new(job.plate.clone(), &tape::PLATE),
        transom: Transom {
            height: Slot::new(transom.height.clone(), &tape::TRANSOM_HEIGHT),
            heights: transom.heights.clone(),
            angle: Slot::new(transom.angle.clone(), &tape::TRANSOM_ANGLE),
            thickness: Slot::new(transom.thickness.clone(), &tape::TRANSOM_THICKNESS),
            material,
            core: transom.core,
            cutout_width: Slot::new(transom.cutout_width.clone(), &tape::CUTOUT_WIDTH),
            top_edge: transom.top_edge,
            splash_well: Slot::new(transom.splash_well.clone(), &tape::SPLASH_WELL),
            upper_holes: Slot::new(transom.upper_holes.clone(), &tape::UPPER_HOLES),
            holes: transom.holes.clone(),
        },
        steering: Slot::new(job.steering, &tape::STEERING),
        before,
        after,
        papers: Papers::of(job),
        afloat: super::float::resolve(job, files),
        surroundings: Surroundings::of(job),
        structure,
        tables: catalog.tables.clone(),
        assumed: resolver.assumed,
    };
    rig.assumed.extend(assumed_readings(job));
    Ok(rig)
}

pub(super) struct Resolver<'a> {
    pub(super) catalog: &'a Catalog,
    unresolved: Vec<Unresolved>,
    assumed: Vec<Text>,
}

impl Resolver<'_> {
    fn material(&mut self, name: Option<&str>) -> Option<Entry<crate::catalog::Material>> {
        let name = name?;
        let found = self.catalog.material(name).cloned();
        if found.is_none() {
            self.unknown(
                "transom.material",
                name,
                "material",
                &self.catalog.materials,
            );
        }
        found
    }

    pub(super) fn unknown<T>(&mut self, path: &str, name: &str, what: &str, entries: &[Entry<T>]) {
        let likely = likely_names(entries, name);
        self.unresolved.push(Unresolved {
            path: path.to_owned(),
            message: format!("no {what} of the catalog is called `{name}`"),
            help: match likely.as_slice() {
                [first, second, ..] => {
                    format!("did you mean `{first}` or `{second}`? `sternknee catalog` lists all")
                }
                [first] => format!("did you mean `{first}`?"),
                [] => "the catalog has none".to_owned(),
            },
        });
    }

    fn outfit(
        &mut self,
        side: &str,
        groups: &[EngineGroup],
        items: &[Item],
        measurement: &'static Measurement,
    ) -> Outfit {
        let age = if *measurement == tape::OLD_ENGINES {
            "old "
        } else {
            ""
        };
        let names = Names::of(groups, age);
        let groups = groups
            .iter()
            .enumerate()
            .filter_map(|(i, group)| self.group(&format!("{side}[{i}]"), group, i, &names))
            .collect();
        let items = items
            .iter()
            .map(|item| ItemOfOutfit {
                weight: Slot::of(item.weight.clone(), &tape::ITEM_WEIGHT, &item.what),
                item: item.clone(),
            })
            .collect();
        Outfit {
            measurement,
            groups,
            items,
        }
    }

    fn group(
        &mut self,
        path: &str,
        group: &EngineGroup,
        index: usize,
        names: &Names,
    ) -> Option<Group> {
        let (class, spec) = match (&group.class, &group.described) {
            (Some(class), _) => match self.catalog.engine(class) {
                Some(entry) => (
                    class.clone(),
                    engine_from(entry.spec.clone(), Basis::Catalog),
                ),
                None => {
                    self.unknown(
                        &format!("{path}.class"),
                        class,
                        "engine class",
                        &self.catalog.engines,
                    );
                    return None;
                }
            },
            (None, Some(spec)) => (
                described_name(spec),
                engine_from(spec.clone(), Basis::Builder),
            ),
            (None, None) => return None,
        };
        let spec = with_sheet(spec, group.sheet.as_ref());
        let shaft = self.shaft(path, group, &spec, &class);
        if group.at.is_empty() {
            self.assumed.push(say!(
                "The {} stands on the centreline: no place is given.",
                names.label(index, 0)
            ));
        }
        let weight = self.weight(group, &spec, shaft.as_ref(), names.label(index, 0));
        let engines = group
            .places()
            .iter()
            .enumerate()
            .map(|(j, at)| {
                let label = names.label(index, j);
                engine(
                    group,
                    &spec,
                    &class,
                    at,
                    j,
                    label,
                    shaft.as_ref(),
                    weight.clone(),
                )
            })
            .collect();
        let bracket = match &group.bracket {
            None => None,
            Some(hung) => Some(self.bracket(path, group, hung)?),
        };
        let bolts = super::structure::bolts(self, path, group);
        Some(Group {
            engines,
            bracket,
            bolts,
        })
    }

    /// The shaft that the group's engines have, where the job or the class leaves no choice.
    fn shaft(
        &mut self,
        path: &str,
        group: &EngineGroup,
        spec: &EngineSpec,
        class: &str,
    ) -> Option<ShaftOption> {
        let Some(wanted) = &group.shaft else {
            return match spec.shafts.as_slice() {
                [only] => Some(only.clone()),
                _ => None,
            };
        };
        if spec.shafts.is_empty() {
            return Some(ShaftOption {
                name: wanted.clone(),
                rest_to_plate: wanted.clone(),
                extra_weight: None,
            });
        }
        let distance = |option: &ShaftOption| (option.name.value - wanted.value).abs();
        let nearest = spec
            .shafts
            .iter()
            .min_by(|a, b| distance(a).si().total_cmp(&distance(b).si()))?;
        if distance(nearest) > inches(SAME_SHAFT_IN) {
            let offered: Vec<String> = spec
                .shafts
                .iter()
                .map(|option| option.name.measure(Style::Tape).show(Units::Us))
                .collect();
            self.unresolved.push(Unresolved {
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

    fn bracket(&mut self, path: &str, group: &EngineGroup, hung: &Hung) -> Option<Bracket> {
        let (name, spec) = match (&hung.class, &hung.described) {
            (Some(class), _) => match self.catalog.bracket(class) {
                Some(entry) => (
                    class.clone(),
                    bracket_from(entry.spec.clone(), Basis::Catalog),
                ),
                None => {
                    self.unknown(
                        &format!("{path}.bracket.class"),
                        class,
                        "bracket",
                        &self.catalog.brackets,
                    );
                    return None;
                }
            },
            (None, Some(spec)) => (
                "the bracket described".to_owned(),
                bracket_from(spec.clone(), Basis::Builder),
            ),
            (None, None) => return None,
        };
        let rated = |field| Slot::of(field, &tape::BRACKET_RATING, &name);
        Some(Bracket {
            setback: Slot::of(
                group.setback.clone().or_else(|| spec.setback.clone()),
                &tape::SETBACK,
                &name,
            ),
            drop: Slot::of(
                group.drop.clone().or_else(|| spec.drop.clone()),
                &tape::DROP,
                &name,
            ),
            rated_power: Slot::of(spec.rated_power.clone(), &tape::BRACKET_RATING, &name),
            rated_weight: rated(spec.rated_weight.clone()),
            weight: rated(spec.weight.clone()),
            bottom: Slot::of(hung.bottom.clone(), &tape::BRACKET_BOTTOM, &name),
            width: hung.width.clone(),
            name: name.clone(),
            spec,
        })
    }
}

#[expect(
    clippy::too_many_arguments,
    reason = "each is a different thing that the job says of one engine"
)]
fn engine(
    group: &EngineGroup,
    spec: &EngineSpec,
    class: &str,
    at: &Across,
    index: usize,
    label: &str,
    shaft: Option<&ShaftOption>,
    weight: Option<Reading<Mass>>,
) -> Engine {
    let head = spec.powerhead.clone().unwrap_or_default();
    Engine {
        tilt_stop: group.tilt_stop.as_ref().map(|stop| stop.value),
        sheet: mounting_sheet(spec, label),
        label: label.to_owned(),
        class: class.to_owned(),
        role: group.role,
        y: at.y(),
        power: Slot::of(spec.power.clone(), &tape::ENGINE_POWER, label),
        weight: Slot::of(weight, &tape::ENGINE_WEIGHT, label),
        hand: Slot::of(
            group.propellers.get(index).copied(),
            &tape::PROPELLERS,
            label,
        ),
        rest_to_plate: Slot::of(shaft.map(|s| s.rest_to_plate.clone()), &tape::SHAFT, label),
        shafts: spec
            .shafts
            .iter()
            .map(|s| ShaftChoice {
                name: s.name.value,
                rest_to_plate: s.rest_to_plate.value,
            })
            .collect(),
        holes_up: Slot::of(group.holes_up, &tape::HOLES_UP, label),
        hole_rows: Slot::of(spec.hole_rows, &tape::ENGINE_HOLE_ROWS, label),
        transom_thickness: Slot::of(
            spec.transom_thickness.clone(),
            &tape::ENGINE_THICKNESS,
            label,
        ),
        transom_angle: Slot::of(spec.transom_angle.clone(), &tape::ENGINE_ANGLE, label),
        trim: Slot::of(spec.trim.clone(), &tape::ENGINE_TRIM, label),
        centre_distance: Slot::of(spec.centre_distance.clone(), &tape::ENGINE_CENTRES, label),
        clearance_each_way: Slot::of(head.clearance_each_way, &tape::ENGINE_SWEEP, label),
        spec: spec.clone(),
    }
}

/// The numbers that the swing of the engine is worked out from, where all of them are known.
fn mounting_sheet(spec: &EngineSpec, label: &str) -> Slot<SwingSheet> {
    Slot::of(SwingSheet::of(spec), &tape::ENGINE_SWING, label)
}

fn described_name(spec: &EngineSpec) -> String {
    let power = spec
        .power
        .as_ref()
        .map(|power| format!(" of {}", power.measure(Style::Plain).show(Units::Us)));
    format!("the engine described{}", power.unwrap_or_default())
}

/// The spec with its plain numbers said to be from this basis.
fn engine_from(mut spec: EngineSpec, basis: Basis) -> EngineSpec {
    macro_rules! from {
        ($($field:expr),+ $(,)?) => {$(
            $field = $field.take().map(|reading| reading.from_basis(basis));
        )+};
    }
    macro_rules! spans {
        ($($field:expr),+ $(,)?) => {$(
            $field = $field.take().map(|span| Span {
                from: span.from.from_basis(basis),
                to: span.to.from_basis(basis),
            });
        )+};
    }
    from!(
        spec.power,
        spec.dry_weight,
        spec.running_weight,
        spec.centre_aft,
        spec.centre_above,
        spec.plate_to_propeller_shaft,
        spec.gear_ratio,
        spec.transom_angle,
        spec.full_tilt,
        spec.steering,
        spec.centre_distance,
        spec.alternator,
        spec.starting,
        spec.fuel_rate,
    );
    spans!(
        spec.full_throttle,
        spec.propeller_diameter,
        spec.transom_thickness,
        spec.trim
    );
    for shaft in &mut spec.shafts {
        shaft.rest_to_plate = shaft.rest_to_plate.clone().from_basis(basis);
        from!(shaft.extra_weight);
    }
    if let Some(head) = &mut spec.powerhead {
        from!(
            head.width,
            head.height,
            head.forward_at_full_tilt,
            head.height_at_full_tilt,
            head.clearance_each_way,
        );
    }
    spec
}

fn bracket_from(mut spec: BracketSpec, basis: Basis) -> BracketSpec {
    macro_rules! from {
        ($($field:ident),+ $(,)?) => {$(
            spec.$field = spec.$field.take().map(|reading| reading.from_basis(basis));
        )+};
    }
    from!(
        setback,
        drop,
        rated_power,
        rated_weight,
        weight,
        buoyant_volume
    );
    spec
}

/// What each engine of an outfit is called.
struct Names(Vec<Vec<String>>);

impl Names {
    fn of(groups: &[EngineGroup], age: &str) -> Self {
        let all: Vec<(Role, f64)> = groups
            .iter()
            .flat_map(|group| {
                group
                    .places()
                    .into_iter()
                    .map(|at| (group.role, at.y().si()))
            })
            .collect();
        let name = |role: Role, y: f64| {
            let peers: Vec<f64> = all
                .iter()
                .filter(|(r, _)| *r == role)
                .map(|(_, y)| *y)
                .collect();
            let noun = match role {
                Role::Main => "engine",
                Role::Auxiliary => "auxiliary engine",
            };
            let outer = peers
                .iter()
                .any(|other| other.signum() == y.signum() && other.abs() > y.abs() + 1e-9);
            let side = match (peers.len(), y) {
                (0 | 1, _) => "",
                (_, y) if y.abs() < 1e-9 => "centre ",
                (_, y) if y > 0.0 => {
                    if outer {
                        "inner port "
                    } else {
                        "port "
                    }
                }
                _ => {
                    if outer {
                        "inner starboard "
                    } else {
                        "starboard "
                    }
                }
            };
            format!("{age}{side}{noun}")
        };
        Names(
            groups
                .iter()
                .map(|group| {
                    group
                        .places()
                        .iter()
                        .map(|at| name(group.role, at.y().si()))
                        .collect()
                })
                .collect(),
        )
    }

    fn label(&self, group: usize, place: usize) -> &str {
        self.0
            .get(group)
            .and_then(|labels| labels.get(place))
            .map_or("engine", String::as_str)
    }
}

/// The readings that the job itself marks as assumed.
fn assumed_readings(job: &Job) -> Vec<Text> {
    let mut assumed = Vec::new();
    let mut note = |name: &str, measure: Option<Measure>, note: Option<&String>| {
        if let Some(measure) = measure {
            let why = note.map(|note| format!(" ({note})")).unwrap_or_default();
            assumed.push(say!(
                "{} is taken as {}{}.",
                capitalised(name),
                measure,
                why
            ));
        }
    };
    macro_rules! each {
        ($($reading:expr => $measurement:ident, $style:ident;)+) => {$(
            if let Some(reading) = &$reading && reading.basis == Basis::Assumed {
                note(tape::$measurement.name, Some(reading.measure(Style::$style)), reading.note.as_ref());
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
    assumed
}

fn capitalised(words: &str) -> String {
    let mut chars = words.chars();
    chars
        .next()
        .map(|first| first.to_uppercase().chain(chars).collect())
        .unwrap_or_default()
}
