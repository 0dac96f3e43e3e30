//! The whole working of how she floats, for reports.

use nalgebra::{Point3, Vector3};
use uom::si::f64::{Acceleration, Angle, Length, Ratio};

use super::{AsMeasured, Float, Loaded, NoFloat, Side, State, heel_words, trim_words};
use crate::case::Case;
use crate::job::EdgeKind;
use crate::physics::float::{
    Floating, Hydrostatics, Load, STANDARD_GRAVITY_M_S2, hydrostatics_at, hydrostatics_table,
    righting_arms,
};
use crate::quantity::{Dimensioned, Measure, Style, Text, degrees, inches, say};
use crate::working::{Part, Sheet, Table, Term};

/// Heels of the righting arms, degrees.
const HEELS_DEG: [f64; 9] = [0.0, 5.0, 10.0, 15.0, 20.0, 30.0, 40.0, 50.0, 60.0];
/// Drafts of the hydrostatics table.
const DRAFTS: usize = 10;

impl Case<'_> {
    /// Hydrostatics, the fit to the marks, and every loading before and after.
    pub fn float_parts(&self) -> Vec<Part> {
        match self.float() {
            Ok(float) => float.parts(),
            Err(no_float) => vec![no_float.part("how she floats")],
        }
    }
}

impl NoFloat {
    /// Why not, as a part of a working.
    pub fn part(&self, title: &str) -> Part {
        let mut sheet = Sheet::default();
        sheet.remark(self.words());
        Part {
            title: title.to_owned(),
            tables: Vec::new(),
            sheet,
        }
    }

    /// Why not, in a sentence.
    pub fn words(&self) -> Text {
        match self {
            NoFloat::Missing(missing) => {
                let names: Vec<String> = missing.iter().map(|one| one.name()).collect();
                say!("Waits for: {}.", names.join("; "))
            }
            NoFloat::Cannot(why) => why.clone(),
        }
    }
}

impl Float {
    /// Everything, part by part.
    pub fn parts(&self) -> Vec<Part> {
        let mut parts = vec![self.hull_part()];
        if let Some(measured) = &self.as_measured {
            parts.push(self.measured_part(measured));
        }
        parts.push(self.hydrostatics_part());
        for loaded in &self.loadings {
            parts.push(self.loading_part(loaded));
        }
        parts
    }

    /// The ledger of every loading.
    pub fn ledger_parts(&self) -> Vec<Part> {
        let mut parts = Vec::new();
        for loaded in &self.loadings {
            for (word, state) in sides(loaded) {
                parts.push(ledger_part(&format!("{}, {word}", loaded.name), state));
            }
        }
        parts
    }

    fn hull_part(&self) -> Part {
        let mut sheet = Sheet::default();
        sheet.remark(say!("Made from {}.", self.built.how));
        for assumed in self.built.assumed.iter().chain(&self.assumed) {
            sheet.remark(assumed.clone());
        }
        let hull = self.hull(Side::After);
        let (low, high) = hull.bounds();
        let mut rows = vec![
            row(
                "triangles",
                Text::from(self.built.mesh.faces().len().to_string().as_str()),
            ),
            row("length", feet(high.x - low.x)),
            row("beam", feet(high.y - low.y)),
            row("height", feet(high.z - low.z)),
            row(
                "volume up to the sheer",
                Measure::styled(hull.volume(), Style::Bulk).into(),
            ),
        ];
        for body in self.boxes.iter().flatten() {
            rows.push(row(
                &format!("of it {}", body.name),
                Measure::styled(body.volume, Style::Bulk).into(),
            ));
        }
        rows.push(row("water", Measure::of(self.water).into()));
        Part {
            title: "the hull".to_owned(),
            tables: vec![table("measures", &["", ""], rows)],
            sheet,
        }
    }

    fn measured_part(&self, measured: &AsMeasured) -> Part {
        let fit = &measured.fit;
        let rows = measured
            .names
            .iter()
            .zip(&measured.marks)
            .zip(&fit.misfits)
            .map(|((name, mark), misfit)| {
                vec![
                    Text::from(name.as_str()),
                    Measure::tape(mark.height).into(),
                    Measure::of(mark.height + *misfit).into(),
                    Measure::of(*misfit).into(),
                ]
            })
            .collect();
        let attitude = fit.plane.attitude();
        let found = vec![
            row("draft at the transom", Measure::of(attitude.sinkage).into()),
            row("trim", trim_words(attitude.trim)),
            row("heel", heel_words(attitude.heel)),
            row("displacement", Measure::of(fit.load.mass).into()),
            row("centre, forward of the transom", tape(fit.load.centre.x)),
            row("centre, to port", tape(fit.load.centre.y)),
        ];
        let mut off: Vec<Vec<Text>> = measured.aboard.iter().map(entry_row).collect();
        off.push(entry_row(&self.bare));
        let mut sheet = Sheet::default();
        sheet.remark(
            "The water plane is fitted to the marks by least squares; what the hull displaces under it is her weight, and the centre of buoyancy lies plumb under her centre.",
        );
        let displaced = Term::new("W", fit.load.mass);
        measured
            .aboard
            .iter()
            .enumerate()
            .map(|(i, entry)| Term::new(format!("w{}", i + 1), entry.weight.mass))
            .reduce(|a, b| a + b)
            .map(|sum| sheet.set("Wa", "hung on her and aboard then", sum))
            .map(|aboard| sheet.set("Wb", "the bare boat", displaced - aboard));
        Part {
            title: "as she lay when her marks were taken".to_owned(),
            tables: vec![
                table("marks", &["mark", "above water", "fitted", "misfit"], rows),
                table("what they say", &["", ""], found),
                table("taken off, and what is left", &LEDGER_HEADS, off),
            ],
            sheet,
        }
    }

    fn hydrostatics_part(&self) -> Part {
        let hull = self.hull(Side::After);
        let (low, high) = hull.bounds();
        let top = self
            .edges_of(&[EdgeKind::Sheer])
            .map(|edge| edge.point.z)
            .fold(high.z, f64::min);
        let drafts: Vec<Length> = (1..DRAFTS)
            .map(|i| Length::from_si(low.z + (top - low.z) * i as f64 / DRAFTS as f64))
            .collect();
        let upright = Angle::from_si(0.0);
        let mut sheet = Sheet::default();
        let lines = match hydrostatics_table(hull, self.water, upright, &drafts) {
            Ok(lines) => lines,
            Err(error) => {
                sheet.remark(error.to_string().as_str());
                Vec::new()
            }
        };
        let kg = self
            .loadings
            .first()
            .and_then(Loaded::judged)
            .map_or(0.0, |state| state.total.centre.z);
        let length = high.x - low.x;
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
                let trimming = moment_to_trim(&mut Sheet::default(), line, kg, length);
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
                table(
                    "buoyancy",
                    &["draft", "displacement", "LCB", "KB", "BM", "KM"],
                    heights,
                ),
                table(
                    "water plane",
                    &[
                        "draft",
                        "area",
                        "LCF",
                        "BM long.",
                        "to sink 1 in",
                        "to trim 1 in",
                    ],
                    planes,
                ),
            ],
            sheet,
        }
    }

    fn loading_part(&self, loaded: &Loaded) -> Part {
        let mut tables = vec![self.side_by_side(loaded)];
        let mut sheet = Sheet::default();
        if let Some(state) = loaded.judged() {
            let upright = state.upright();
            if let Err(why) = &upright {
                sheet.remark(
                    say!("With these weights ")
                        .then(why.clone())
                        .then(Text::from(".")),
                );
            }
            if let Some(floating) = state.floating() {
                tables.push(lies(floating, state));
            }
            if let Ok(floating) = upright {
                self.formulas(&mut sheet, state, floating);
                tables.extend(self.righting(state, &mut sheet));
            }
        }
        Part {
            title: loaded.name.clone(),
            tables,
            sheet,
        }
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
            cells.extend(
                found
                    .iter()
                    .map(|one| one.map_or(Text::from("-"), Text::from)),
            );
            if let [Some(before), Some(after)] = found.as_slice() {
                let si = after.si - before.si;
                cells.push(Measure { si, ..*after }.into());
            }
            rows.push(cells);
        };
        add("displacement", &|state| Some(Measure::of(state.total.mass)));
        add("centre forward of transom", &|state| {
            Some(Measure::of(Length::from_si(state.total.centre.x)))
        });
        let attitude = |state: &State| state.floating().map(Floating::attitude);
        add("trim, bow up", &|state| {
            Some(Measure::of(attitude(state)?.trim))
        });
        add("draft at the transom", &|state| {
            Some(Measure::of(attitude(state)?.sinkage))
        });
        add("heel to starboard", &|state| {
            Some(Measure::of(attitude(state)?.heel))
        });
        for edge in self.edges.iter().filter(|e| e.kind != EdgeKind::Sheer) {
            add(&edge.name, &|state| {
                Some(Measure::of(
                    state.floating()?.height_above_water(&edge.point),
                ))
            });
        }
        add("lowest of the sheer", &|state| {
            let floating = state.floating()?;
            self.edges_of(&[EdgeKind::Sheer])
                .map(|edge| Measure::of(floating.height_above_water(&edge.point)))
                .min_by(|a, b| a.si.total_cmp(&b.si))
        });
        add("GM", &|state| Some(Measure::of(state.gm()?)));
        table("side by side (edges: height above water)", &heads, rows)
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
        sheet.set("ρ·Aw", "to sink her an inch", &density * &area);
        let (low, high) = hull.bounds();
        let normal = floating.plane.normal();
        let kg = normal.dot(&state.total.centre.coords);
        moment_to_trim(sheet, &line, kg, high.x - low.x);
    }

    fn righting(&self, state: &State, sheet: &mut Sheet) -> Option<Table> {
        let up = Vector3::z() * state.free_surface.transverse.si();
        let load = Load {
            mass: state.total.mass,
            centre: state.total.centre + up,
            water: self.water,
        };
        let heels: Vec<Angle> = HEELS_DEG.iter().map(|heel| degrees(*heel)).collect();
        let arms = righting_arms(self.hull(state.side), &load, &heels).ok()?;
        let rows = arms
            .iter()
            .map(|arm| {
                let lowest = self
                    .edges_of(&[EdgeKind::Well, EdgeKind::Sheer, EdgeKind::Other])
                    .map(|edge| (arm.plane.height_above(&edge.point), edge.name.as_str()))
                    .min_by(|a, b| a.0.si().total_cmp(&b.0.si()));
                vec![
                    Measure::of(arm.heel).into(),
                    Measure::of(arm.arm).into(),
                    Measure::of(arm.trim).into(),
                    lowest.map_or(Text::from("-"), |(height, _)| Measure::of(height).into()),
                    Text::from(match (arm.balanced, lowest) {
                        (false, _) => "not in balance",
                        (true, Some((height, _))) if height.si() <= 0.0 => "edge under water",
                        (true, Some((_, name))) => name,
                        (true, None) => "",
                    }),
                ]
            })
            .collect();
        sheet.remark(
            "Righting arms: heeled to starboard, free to sink and to trim, free surfaces counted; she is decked at the sheer here, so an arm counts only until an edge goes under.",
        );
        Some(table(
            "righting arms",
            &["heel", "arm", "trim", "lowest edge", ""],
            rows,
        ))
    }
}

/// GM = KB + BM − KG less free surface, line by line.
fn metacentric_height(
    sheet: &mut Sheet,
    line: &Hydrostatics,
    state: &State,
    floating: &Floating,
    volume: &Term<uom::si::f64::Volume>,
) {
    let area = Term::new("Aw", line.waterplane.area);
    let gyration = (line.waterplane.second_moment_transverse_m4 / line.waterplane.area.si())
        .max(0.0)
        .sqrt();
    let k = Term::new("k", Length::from_si(gyration));
    sheet.remark("k: radius of gyration of the water plane about its fore-and-aft axis, k² = I/Aw");
    let bm = sheet.set("BM", "metacentric radius", &area * &k * &k / volume);
    let kb = Term::new("KB", line.kb);
    let normal = floating.plane.normal();
    let kg = Term::new(
        "KG",
        Length::from_si(normal.dot(&state.total.centre.coords)),
    );
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

/// M = W·g·GM_L·(1 in / L).
fn moment_to_trim(
    sheet: &mut Sheet,
    line: &Hydrostatics,
    kg: f64,
    length: f64,
) -> Term<crate::quantity::Moment> {
    let weight = Term::new("W", line.displacement);
    let gravity = Term::new("g", Acceleration::from_si(STANDARD_GRAVITY_M_S2));
    let gm = sheet.set(
        "GML",
        "metacentric height for trim",
        Term::new("KB", line.kb) + Term::new("BML", line.bm_longitudinal)
            - Term::new("KG", Length::from_si(kg)),
    );
    let inch = Term::constant(inches(1.0));
    let length = Term::styled("L", Length::from_si(length), Style::FeetInches);
    sheet.set(
        "M1",
        "moment to trim her an inch over her length",
        weight * gravity * gm * (inch / length),
    )
}

/// How she lies, in numbers that another program can use.
fn lies(floating: &Floating, state: &State) -> Table {
    let attitude = floating.attitude();
    let normal = floating.plane.normal();
    let ratio = |value: f64| Text::from(Measure::of(Ratio::from_si(value)));
    let immersed = &floating.immersed;
    let mut rows = vec![
        row(
            "sinkage of the origin",
            Measure::of(attitude.sinkage).into(),
        ),
        row("trim, bow up", Measure::of(attitude.trim).into()),
        row("heel, to starboard", Measure::of(attitude.heel).into()),
        row("water plane: normal x", ratio(normal.x)),
        row("water plane: normal y", ratio(normal.y)),
        row("water plane: normal z", ratio(normal.z)),
        row(
            "water plane: offset",
            Measure::of(floating.plane.offset()).into(),
        ),
        row("displaced mass", Measure::of(state.total.mass).into()),
        row(
            "displaced volume",
            Measure::styled(immersed.volume, Style::Bulk).into(),
        ),
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
        row(
            "water plane area",
            Measure::of(immersed.waterplane.area).into(),
        ),
        row(
            "GM without free surface",
            Measure::of(floating.gm_transverse).into(),
        ),
        row("GM for trim", Measure::of(floating.gm_longitudinal).into()),
        row(
            "least GM about any axis",
            Measure::of(floating.gm_least).into(),
        ),
        row(
            "free surface for heel",
            Measure::of(state.free_surface.transverse).into(),
        ),
    ]);
    table(
        "how she lies (boat axes: x forward, y to port, z up)",
        &["", ""],
        rows,
    )
}

const LEDGER_HEADS: [&str; 5] = ["item", "weight", "forward", "to port", "above"];

fn entry_row(entry: &super::Entry) -> Vec<Text> {
    point_row(&entry.name, entry.weight.mass, &entry.weight.centre)
}

fn point_row(name: &str, mass: uom::si::f64::Mass, centre: &Point3<f64>) -> Vec<Text> {
    vec![
        Text::from(name),
        Measure::of(mass).into(),
        tape(centre.x),
        tape(centre.y),
        tape(centre.z),
    ]
}

fn ledger_part(title: &str, state: &State) -> Part {
    let mut rows: Vec<Vec<Text>> = state.entries.iter().map(entry_row).collect();
    rows.push(point_row("together", state.total.mass, &state.total.centre));
    let mut sheet = Sheet::default();
    let masses: Vec<_> = state
        .entries
        .iter()
        .enumerate()
        .map(|(i, entry)| Term::new(format!("w{}", i + 1), entry.weight.mass))
        .collect();
    if let Some(total) = masses.iter().cloned().reduce(|a, b| a + b) {
        let total = sheet.set("W", "all of it together", total);
        type Along = fn(&Point3<f64>) -> f64;
        let axes: [(&str, &str, Along); 3] = [
            ("x", "centre forward of the transom", |p| p.x),
            ("y", "centre to port", |p| p.y),
            ("z", "centre above the bottom", |p| p.z),
        ];
        for (symbol, meaning, along) in axes {
            let moment = state
                .entries
                .iter()
                .zip(&masses)
                .enumerate()
                .map(|(i, (entry, mass))| {
                    let at = Length::from_si(along(&entry.weight.centre));
                    mass * Term::new(format!("{symbol}{}", i + 1), at)
                })
                .reduce(|a, b| a + b);
            if let Some(moment) = moment {
                sheet.set(symbol, meaning, moment / &total);
            }
        }
    }
    Part {
        title: title.to_owned(),
        tables: vec![table("ledger", &LEDGER_HEADS, rows)],
        sheet,
    }
}

/// The states of a loading that there are, each with what it is called.
fn sides(loaded: &Loaded) -> impl Iterator<Item = (&'static str, &State)> {
    let word = if loaded.alone { "as she is" } else { "after" };
    loaded
        .before
        .iter()
        .map(|state| ("before", state))
        .chain(loaded.after.iter().map(move |state| (word, state)))
}

fn row(name: &str, value: Text) -> Vec<Text> {
    vec![Text::from(name), value]
}

fn table(title: &str, heads: &[&str], rows: Vec<Vec<Text>>) -> Table {
    Table {
        title: title.to_owned(),
        heads: heads.iter().map(|head| (*head).to_owned()).collect(),
        rows,
    }
}

fn plain(metres: f64) -> Text {
    Measure::of(Length::from_si(metres)).into()
}

fn tape(metres: f64) -> Text {
    Measure::tape(Length::from_si(metres)).into()
}

fn feet(metres: f64) -> Text {
    Measure::styled(Length::from_si(metres), Style::FeetInches).into()
}
