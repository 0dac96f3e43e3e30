//! One loading: before and after side by side, how she lies, the formulas, righting arms.

use uom::si::f64::{Angle, Length, Ratio};

use super::super::{Float, Loaded, State};
use super::hydrostatics::{metacentric_height, moment_to_trim};
use super::{plain, row, sides};
use crate::job::EdgeKind;
use crate::physics::float::{Floating, hydrostatics_at};
use crate::quantity::{Dimensioned, Measure, Style, Text, degrees, say};
use crate::working::{Part, Sheet, Table, Term};

/// Heels of the righting arms, degrees.
const HEELS_DEG: [f64; 9] = [0.0, 5.0, 10.0, 15.0, 20.0, 30.0, 40.0, 50.0, 60.0];

impl Float {
    pub(super) fn loading_part(&self, loaded: &Loaded) -> Part {
        let mut tables = vec![self.side_by_side(loaded)];
        let mut sheet = Sheet::default();
        if let Some(state) = loaded.judged() {
            let upright = state.upright();
            if let Err(why) = &upright {
                sheet.remark(say!("With these weights ").then(why.clone()).then(Text::from(".")));
            }
            if let Some(floating) = state.floating() {
                tables.push(lies(floating, state));
            }
            if let Ok(floating) = upright {
                self.formulas(&mut sheet, state, floating);
                tables.extend(self.righting(state, &mut sheet));
            }
        }
        Part { title: loaded.name.clone(), tables, sheet }
    }

    /// Displacement, trim, draft, edges and GM before and after.
    pub fn side_by_side(&self, loaded: &Loaded) -> Table {
        let columns: Vec<(&str, &State)> = sides(loaded).collect();
        let mut heads = vec![""];
        heads.extend(columns.iter().map(|(word, _)| *word));
        if columns.len() == 2 {
            heads.push("change");
        }
        let mut rows = Vec::new();
        let mut add = |name: &str, of: &dyn Fn(&State) -> Option<Measure>| {
            let found: Vec<Option<Measure>> = columns.iter().map(|(_, state)| of(state)).collect();
            let mut cells = vec![Text::from(name)];
            cells.extend(found.iter().map(|one| one.map_or(Text::from("-"), Text::from)));
            if let [Some(before), Some(after)] = found.as_slice() {
                let si = after.si - before.si;
                cells.push(Measure { si, ..*after }.into());
            }
            rows.push(cells);
        };
        add("displacement", &|state| Some(Measure::of(state.total.mass)));
        add("centre forward of transom", &|state| Some(Measure::of(Length::from_si(state.total.centre.x))));
        let attitude = |state: &State| state.floating().map(Floating::attitude);
        add("trim, bow up", &|state| Some(Measure::of(attitude(state)?.trim)));
        add("draft at the transom", &|state| Some(Measure::of(attitude(state)?.sinkage)));
        add("heel to starboard", &|state| Some(Measure::of(attitude(state)?.heel)));
        for edge in self.edges.iter().filter(|e| e.kind != EdgeKind::Sheer) {
            add(&edge.name, &|state| Some(Measure::of(state.floating()?.height_above_water(&edge.point))));
        }
        add("lowest of the sheer", &|state| {
            let floating = state.floating()?;
            self.edges_of(&[EdgeKind::Sheer])
                .map(|edge| Measure::of(floating.height_above_water(&edge.point)))
                .min_by(|a, b| a.si.total_cmp(&b.si))
        });
        add("GM", &|state| Some(Measure::of(state.gm()?)));
        Table::new("side by side (edges: height above water)", &heads, rows)
    }

    fn formulas(&self, sheet: &mut Sheet, state: &State, floating: &Floating) {
        let hull = self.hull(state.side);
        let line = match hydrostatics_at(hull, self.water, &floating.plane) {
            Ok(line) => line,
            Err(error) => {
                sheet.remark(error.to_string().as_str());
                return;
            }
        };
        sheet.remark(say!(
            "Balance by Newton's method in sinkage, trim and heel, {} steps; weight and buoyancy agree to {} of the weight, their lines to {} fore and aft and {} athwart.",
            floating.steps,
            format!("{:.0e}", floating.residual.force.abs()),
            format!("{:.0e} m", floating.residual.trim_lever.si().abs()),
            format!("{:.0e} m", floating.residual.heel_lever.si().abs()),
        ));
        let weight = Term::new("W", state.total.mass);
        let density = Term::new("ρ", self.water);
        let volume = sheet.set_styled("∇", "volume displaced", &weight / &density, Style::Bulk);
        metacentric_height(sheet, &line, state, floating, &volume);
        let area = Term::new("Aw", line.waterplane.area);
        sheet.set("ρ·Aw", "to sink her, for each length", &density * &area);
        let normal = floating.plane.normal();
        let kg = normal.dot(&state.total.centre.coords);
        moment_to_trim(sheet, &line, kg);
    }

    fn righting(&self, state: &State, sheet: &mut Sheet) -> Option<Table> {
        let heels: Vec<Angle> = HEELS_DEG.iter().map(|heel| degrees(*heel)).collect();
        let side = self.worse_side(state);
        let arms = self.arms_at(state, &heels, side).ok()?;
        let rows = arms
            .iter()
            .map(|arm| {
                let lowest = self.lowest_edge(&arm.plane);
                vec![
                    Measure::of(arm.heel).into(),
                    Measure::of(arm.arm).into(),
                    Measure::of(arm.trim).into(),
                    lowest.map_or(Text::from("-"), |(height, _)| Measure::of(height).into()),
                    Text::from(match (arm.balanced, lowest) {
                        (false, _) => "not in balance",
                        (true, Some((height, _))) if height.si() <= 0.0 => "edge under water",
                        (true, Some((_, edge))) => edge.name.as_str(),
                        (true, None) => "",
                    }),
                ]
            })
            .collect();
        sheet.remark(say!(
            "Righting arms: heeled {}, where she has less of them or as many, free to sink and to trim, free surfaces counted; she is decked at the sheer here, so an arm counts only until an edge goes under.",
            side.word()
        ));
        Some(Table::new("righting arms", &["heel", "arm", "trim", "lowest edge", ""], rows))
    }
}

/// How she lies, in numbers that another program can use.
fn lies(floating: &Floating, state: &State) -> Table {
    let attitude = floating.attitude();
    let normal = floating.plane.normal();
    let ratio = |value: f64| Text::from(Measure::of(Ratio::from_si(value)));
    let immersed = &floating.immersed;
    let mut rows = vec![
        row("sinkage of the origin", Measure::of(attitude.sinkage).into()),
        row("trim, bow up", Measure::of(attitude.trim).into()),
        row("heel, to starboard", Measure::of(attitude.heel).into()),
        row("water plane: normal x", ratio(normal.x)),
        row("water plane: normal y", ratio(normal.y)),
        row("water plane: normal z", ratio(normal.z)),
        row("water plane: offset", Measure::of(floating.plane.offset()).into()),
        row("displaced mass", Measure::of(state.total.mass).into()),
        row("displaced volume", Measure::styled(immersed.volume, Style::Bulk).into()),
    ];
    for (name, point) in [
        ("centre of gravity", state.total.centre),
        ("centre of buoyancy", immersed.centre_of_buoyancy),
        ("centre of flotation", immersed.waterplane.centroid),
    ] {
        for (axis, value) in [("x", point.x), ("y", point.y), ("z", point.z)] {
            rows.push(row(&format!("{name} {axis}"), plain(value)));
        }
    }
    rows.extend([
        row("water plane area", Measure::of(immersed.waterplane.area).into()),
        row("GM without free surface", Measure::of(floating.gm_transverse).into()),
        row("GM for trim", Measure::of(floating.gm_longitudinal).into()),
        row("least GM about any axis", Measure::of(floating.gm_least).into()),
        row("free surface for heel", Measure::of(state.free_surface.transverse).into()),
    ]);
    Table::new("how she lies (boat axes: x forward, y to port, z up)", &["", ""], rows)
}
