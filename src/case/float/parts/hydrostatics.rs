//! Hydrostatics over a range of drafts, and the formulas of stability with their numbers.

use uom::si::f64::{Angle, Length, Volume};

use super::super::{Float, Loaded, Side, State};
use super::plain;
use crate::job::EdgeKind;
use crate::physics::float::{Floating, Hydrostatics, hydrostatics_table};
use crate::quantity::{Dimensioned, Measure, Moment, degrees, say, standard_gravity};
use crate::working::{Part, Sheet, Table, Term, tan};

/// Drafts of the hydrostatics table.
const DRAFTS: usize = 10;

impl Float {
    pub(super) fn hydrostatics_part(&self) -> Part {
        let hull = self.hull(Side::After);
        let (low, high) = hull.bounds();
        let top = self.edges_of(&[EdgeKind::Sheer]).map(|edge| edge.point.z).fold(high.z, f64::min);
        let drafts: Vec<Length> =
            (1..DRAFTS).map(|i| Length::from_si(low.z + (top - low.z) * i as f64 / DRAFTS as f64)).collect();
        let upright = Angle::from_si(0.0);
        let mut sheet = Sheet::default();
        let lines = match hydrostatics_table(hull, self.water, upright, &drafts) {
            Ok(lines) => lines,
            Err(error) => {
                sheet.remark(error.to_string().as_str());
                Vec::new()
            }
        };
        let kg = self.loadings.first().and_then(Loaded::judged).map_or(0.0, |state| state.total.centre.z);
        let heights = lines
            .iter()
            .map(|line| {
                vec![
                    Measure::of(line.draft).into(),
                    Measure::of(line.displacement).into(),
                    plain(line.centre_of_buoyancy.x),
                    Measure::of(line.kb).into(),
                    Measure::of(line.bm_transverse).into(),
                    Measure::of(line.km_transverse()).into(),
                ]
            })
            .collect();
        let planes = lines
            .iter()
            .map(|line| {
                let trimming = moment_to_trim(&mut Sheet::default(), line, kg);
                vec![
                    Measure::of(line.draft).into(),
                    Measure::of(line.waterplane.area).into(),
                    plain(line.waterplane.centroid.x),
                    Measure::of(line.bm_longitudinal).into(),
                    Measure::of(line.water * line.waterplane.area).into(),
                    trimming.measure().into(),
                ]
            })
            .collect();
        sheet.remark(
            "Level trim. LCB and LCF count forward of the transom; KB and KM from the bottom of the hull at the transom. Cut exactly, by the divergence theorem on the closed mesh.",
        );
        sheet.remark("The formulas stand with their numbers under each loading.");
        Part {
            title: "hydrostatics".to_owned(),
            tables: vec![
                Table::new("buoyancy", &["draft", "displacement", "LCB", "KB", "BM", "KM"], heights),
                Table::new(
                    "water plane",
                    &["draft", "area", "LCF", "BM long.", "to sink her", "to trim 1 deg"],
                    planes,
                ),
            ],
            sheet,
        }
    }
}

/// GM = KB + BM − KG less free surface, line by line.
pub(super) fn metacentric_height(
    sheet: &mut Sheet,
    line: &Hydrostatics,
    state: &State,
    floating: &Floating,
    volume: &Term<Volume>,
) {
    let area = Term::new("Aw", line.waterplane.area);
    let gyration = (line.waterplane.second_moment_transverse_m4 / line.waterplane.area.si()).max(0.0).sqrt();
    let k = Term::new("k", Length::from_si(gyration));
    sheet.remark("k: radius of gyration of the water plane about its fore-and-aft axis, k² = I/Aw");
    let bm = sheet.set("BM", "metacentric radius", &area * &k * &k / volume);
    let kb = Term::new("KB", line.kb);
    let normal = floating.plane.normal();
    let kg = Term::new("KG", Length::from_si(normal.dot(&state.total.centre.coords)));
    let free = Term::new("FS", state.free_surface.transverse);
    for entry in &state.entries {
        if let Some(tank) = &entry.tank {
            sheet.remark(say!(
                "free surface of {}: ρ·l·b³/12/W, l {}, b {}, ρ {}",
                entry.name.as_str(),
                Measure::tape(tank.length),
                Measure::tape(tank.breadth),
                Measure::of(tank.fluid)
            ));
        }
    }
    sheet.set("GM", "metacentric height", kb + &bm - kg - free);
}

/// M = W·g·GM_L·1 deg: for a small trim any will do.
pub(super) fn moment_to_trim(sheet: &mut Sheet, line: &Hydrostatics, kg: f64) -> Term<Moment> {
    let weight = Term::new("W", line.displacement);
    let gravity = Term::new("g", standard_gravity());
    let gm = sheet.set(
        "GML",
        "metacentric height for trim",
        Term::new("KB", line.kb) + Term::new("BML", line.bm_longitudinal) - Term::new("KG", Length::from_si(kg)),
    );
    let degree = tan(Term::constant(degrees(1.0)));
    sheet.set("M1", "moment to trim her a degree", weight * gravity * gm * degree)
}
