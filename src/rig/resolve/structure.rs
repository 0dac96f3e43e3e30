//! The transom's structure, the bolts and the driving looked up in the catalog.

use super::Resolver;
use crate::catalog::{BoltGrade, BoltSize, Entry, Material};
use crate::job::{self, BoltStudy, EngineGroup, Job, PanelStiffness, PanelStudy};
use crate::reading::reading;
use crate::rig::{Bolts, Layer, Slot, Structure};

/// What skins are of in a moulded boat, and in one of plate, where they were not told. Common practice, no source.
const USUAL_SKINS: [&str; 2] = ["glass/polyester laminate, mat and woven", "aluminium 5086-H32 plate"];

pub(super) fn resolve(resolver: &mut Resolver, job: &Job, material: Option<&Entry<Material>>) -> Structure {
    let said = job.structure.clone().unwrap_or_default();
    let operating = job.operating.clone().unwrap_or_default();
    let layers = layers(resolver, "structure.lay_up", &said.lay_up);
    let lay_up = match (material, &job.transom.thickness) {
        _ if !said.lay_up.is_empty() => Slot::new(layers, reading!(job::Structure.lay_up)),
        (Some(material), Some(thickness)) => {
            let layer = Layer { material: material.clone(), thickness: thickness.value };
            Slot::new(Some(vec![layer]), reading!(job::Structure.lay_up))
        }
        (Some(_), None) => Slot::new(None, reading!(job::Transom.thickness)),
        (None, _) => Slot::new(None, reading!(job::Structure.lay_up)),
    };
    let bolted = [&job.engines_off, &job.engines_on];
    let bolted = bolted.into_iter().flatten().any(|group| group.bolts.is_some());
    let stiffener = said.top_stiffener.as_ref().map(|stiffener| stiffener.material.clone());
    Structure {
        asked: job.structure.is_some() || job.operating.is_some() || bolted,
        lay_up,
        layers_told: !said.lay_up.is_empty(),
        knees: Slot::new(said.knees.clone(), reading!(job::Structure.knees)),
        stringers: Slot::new(said.stringers.clone(), reading!(job::Structure.stringers)),
        sides: Slot::new(said.sides, reading!(job::Structure.sides)),
        bottom: Slot::new(said.bottom, reading!(job::Structure.sides)),
        well_floor: Slot::new(said.well_floor, reading!(job::Structure.well_floor)),
        usual_skin: USUAL_SKINS.map(|name| resolver.catalog.materials.iter().find(|entry| entry.name == name).cloned()),
        stiffener_material: stiffener
            .and_then(|name| resolver.material("structure.top_stiffener.material", &name))
            .map(|entry| entry.spec),
        said,
        top_speed: Slot::new(operating.top_speed.clone(), reading!(job::Operating.top_speed)),
        operating,
        panel_study: panel_study(resolver, job),
        bolt_study: bolt_study(resolver, job),
    }
}

/// The bolts of a group of engines.
pub(super) fn bolts(resolver: &mut Resolver, path: &str, group: &EngineGroup) -> Bolts {
    let Some(said) = group.bolts.clone() else {
        return Bolts::default();
    };
    let (size, grade) = (said.size.clone(), said.grade.clone());
    let plate = said.backing_plate.as_ref().map(|plate| plate.material.clone());
    Bolts {
        size: size.and_then(|name| find_size(resolver, &format!("{path}.bolts.size"), &name)),
        grade: grade.and_then(|name| find_grade(resolver, &format!("{path}.bolts.grade"), &name)),
        plate: plate.and_then(|name| resolver.material(&format!("{path}.bolts.backing_plate.material"), &name)),
        said,
    }
}

fn find_size(resolver: &mut Resolver, path: &str, name: &str) -> Option<Entry<BoltSize>> {
    let sizes = &resolver.catalog.tables.bolt_sizes;
    resolver.find(path, name, "bolt size", sizes)
}

fn find_grade(resolver: &mut Resolver, path: &str, name: &str) -> Option<Entry<BoltGrade>> {
    let grades = &resolver.catalog.tables.bolt_grades;
    resolver.find(path, name, "bolt grade", grades)
}

fn layers(resolver: &mut Resolver, path: &str, said: &[job::Layer]) -> Option<Vec<Layer>> {
    let found: Vec<Layer> = said
        .iter()
        .enumerate()
        .filter_map(|(i, layer)| {
            let material = resolver.material(&format!("{path}[{i}].material"), &layer.material)?;
            Some(Layer { material, thickness: layer.thickness.value })
        })
        .collect();
    (found.len() == said.len()).then_some(found)
}

fn panel_study(resolver: &mut Resolver, job: &Job) -> Option<(PanelStudy, Vec<Layer>)> {
    let study = job.panel_study.clone()?;
    let layers = match &study.stiffness {
        PanelStiffness::Layers(said) => layers(resolver, "panel_study.stiffness", said)?,
        PanelStiffness::Plate { .. } | PanelStiffness::Outright { .. } => Vec::new(),
    };
    Some((study, layers))
}

type ResolvedBoltStudy = (BoltStudy, Entry<BoltSize>, Option<Entry<BoltGrade>>);

fn bolt_study(resolver: &mut Resolver, job: &Job) -> Option<ResolvedBoltStudy> {
    let study = job.bolt_study.clone()?;
    let size = find_size(resolver, "bolt_study.size", &study.size)?;
    let grade = match &study.grade {
        Some(name) => Some(find_grade(resolver, "bolt_study.grade", name)?),
        None => None,
    };
    Some((study, size, grade))
}
