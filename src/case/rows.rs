//! Where the plate stands for every row of holes of one engine: what height rules and drawings need.

use uom::si::f64::Length;

use super::stern::{lean, step_up};
use crate::job::{Craft, Role, Sitting, Transom};
use crate::physics::{fit, height};
use crate::quantity::{Basis, Dimensioned, Measure, Text, horsepower, inches, say};
use crate::reading::reading;
use crate::rig::{Engine, Group, Missing, Rig};
use crate::working::{Sheet, Table, Term};

/// One engine's plate heights against its window.
pub(crate) struct Rows {
    /// The calculation up to the lowest row and the window.
    pub sheet: Sheet,
    /// Plate above the bottom in the lowest row.
    pub lowest: Term<Length>,
    /// Lower and upper edge of the window.
    pub window: (Length, Length),
    /// Plate above the bottom, a row an element, the lowest first.
    pub heights: Vec<Length>,
    /// Whether it hangs on its clamp screws.
    clamps: bool,
    /// Whether it may hang below its window: what brings her home does, and is tilted up else.
    pub deep: bool,
}

/// Slack of the window: a plate at its very edge is in it. Common practice, no source: the width of
/// a pencil line.
const EDGE_SLACK_IN: f64 = 1.0 / 32.0;

/// How far below the bottom the plate of an engine on clamp screws may stand: nothing sets it closer than the transom's top.
/// Common practice, no source.
const CLAMPED_BELOW_IN: f64 = 1.0;

impl Rows {
    /// Works out the rows of one engine.
    ///
    /// # Errors
    /// The readings that are missing.
    pub(crate) fn of(rig: &Rig, group: &Group, engine: &Engine) -> Result<Rows, Vec<Missing>> {
        let (setback, drop) = (group.setback(), group.drop());
        let mut missing: Vec<Missing> =
            [setback.ask().err(), drop.ask().err(), engine.rest_to_plate.ask().err(), engine.hole_rows.ask().err()]
                .into_iter()
                .flatten()
                .collect();
        let mut sheet = Sheet::default();
        let transom = match height_at(rig, (group, engine), &mut sheet) {
            Ok(height) => Some(height),
            Err(lacking) => {
                missing.extend(lacking);
                None
            }
        };
        let (Some(transom), Some(setback), Some(drop), Some(shaft), Some(rows)) =
            (transom, setback.reading(), drop.reading(), engine.rest_to_plate.reading(), engine.hole_rows.reading())
        else {
            return Err(missing);
        };
        sheet.told("S", Some(shaft));
        sheet.told("d", Some(drop));
        sheet.told("s", Some(setback));
        sheet.told("θ", rig.job.transom.angle.as_ref());
        let lowest = height::plate_height_lowest(&mut sheet, &transom, drop.value, lean(rig), shaft.value);
        let level = drop.value.value != 0.0 || rig.job.transom.height_at(engine.y).is_none();
        if level && rig.job.transom.angle().reading().is_none() {
            sheet.remark("the transom is taken to stand upright: its angle is not given");
        }
        let clamps = is_clamped(group, engine);
        let window = window(&mut sheet, setback.value, clamps);
        let heights = (0..*rows).map(|row| height::plate_height(&mut Sheet::default(), &lowest, row).value()).collect();
        let deep = engine.role == Role::Auxiliary;
        if deep {
            sheet.remark(say!("an auxiliary engine may hang lower: it pushes her slowly, and is tilted up else"));
        }
        Ok(Rows { sheet, lowest, window, heights, clamps, deep })
    }

    /// How far a plate at this height is outside the window; negative is below it, zero within.
    pub(crate) fn outside(&self, height: Length) -> Length {
        let slack = inches(EDGE_SLACK_IN);
        let (low, high) = self.window;
        if !self.deep && (low - slack).exceeds(height) {
            height - low
        } else if height.exceeds(high + slack) {
            height - high
        } else {
            Length::default()
        }
    }

    /// The row to use: of those within the window the one nearest its middle, if any is.
    pub(crate) fn best(&self) -> Option<usize> {
        self.best_shifted(Length::default())
    }

    /// The same with a shaft shorter by so much.
    pub(crate) fn best_shifted(&self, up: Length) -> Option<usize> {
        let middle = (self.window.0 + self.window.1) / 2.0;
        (0..self.heights.len()).filter(|row| self.outside(self.heights[*row] + up).value == 0.0).min_by(|a, b| {
            let off = |row: &usize| (self.heights[*row] + up - middle).abs().value;
            off(a).total_cmp(&off(b))
        })
    }

    /// The same engine so far aft of the transom.
    pub(crate) fn behind(mut self, setback: Length) -> Rows {
        self.window = window(&mut Sheet::default(), setback, self.clamps);
        self
    }

    /// Whether an engine hung in this row has its plate in the window.
    pub(crate) fn allows(&self, row: usize) -> bool {
        self.heights.get(row).is_some_and(|height| self.outside(*height).value == 0.0)
    }

    /// The row whose plate comes nearest to the window, where none is in it.
    pub(crate) fn nearest(&self) -> usize {
        let off = |row: &usize| self.outside(self.heights[*row]).abs().value;
        (0..self.heights.len()).min_by(|a, b| off(a).total_cmp(&off(b))).unwrap_or(0)
    }

    /// All rows, with where the plate stands in each.
    pub(crate) fn table(&self, label: &str) -> Table {
        let rows = self
            .heights
            .iter()
            .enumerate()
            .map(|(row, height)| {
                let outside = self.outside(*height);
                let word = if outside.value < 0.0 {
                    "too low"
                } else if outside.value > 0.0 {
                    "too high"
                } else {
                    "in the window"
                };
                vec![say!("{}", row), say!("{}", Measure::tape(*height)), Text::from(word)]
            })
            .collect();
        Table::new(&format!("hole rows of the {label}"), &["holes up", "plate above the bottom", ""], rows)
    }
}

/// The engines whose height the holes decide: not those on a lifting bracket, whose travel does.
pub(crate) fn fixed_engines(rig: &Rig) -> impl Iterator<Item = (&Group, &Engine)> {
    rig.after.engines().filter(|(group, _)| !group.is_lifted())
}

/// The row in which an engine hangs: as it is told; where it is still to be hung, the one that brings its plate into its window or
/// nearest to it, else the lowest. And whether it was told.
pub(crate) fn row_of(rig: &Rig, group: &Group, engine: &Engine) -> (usize, bool) {
    if let Some(row) = engine.holes_up.reading() {
        return (usize::from(*row), true);
    }
    let still_to_hang = rig.job.sitting != Sitting::AsFitted && !group.is_lifted();
    let rows = Rows::of(rig, group, engine).ok().filter(|_| still_to_hang);
    (rows.map_or(0, |rows| rows.best().unwrap_or_else(|| rows.nearest())), false)
}

/// Whether an engine hangs on its clamp screws: a small one with a single row of holes, of whose bolts nobody says
/// where they stand.
pub(crate) fn is_clamped(group: &Group, engine: &Engine) -> bool {
    let small = engine.power.reading().is_some_and(|power| horsepower(fit::BOLTED_FROM_HP).exceeds(power.value));
    small && engine.hole_rows.reading() == Some(&1) && group.bolts.said.at.is_empty()
}

/// The window of an engine so far aft of the transom. One on clamp screws hangs well an inch lower.
fn window(sheet: &mut Sheet, setback: Length, clamps: bool) -> (Length, Length) {
    let (low, high) = height::plate_window(sheet, setback);
    if !clamps {
        return (low.value(), high.value());
    }
    let below = inches(CLAMPED_BELOW_IN);
    sheet.remark(say!("on clamp screws it may hang {} lower", Measure::tape(below)));
    (low.value() - below, high.value())
}

/// "0 holes up", "1 hole up", "2 holes up".
pub(crate) fn holes_up(row: usize) -> String {
    format!("{row} {} up", if row == 1 { "hole" } else { "holes" })
}

/// Transom height at the engine's own centreline: as taken there, else from the boat's centreline and
/// the deadrise.
fn height_at(rig: &Rig, (group, engine): (&Group, &Engine), sheet: &mut Sheet) -> Result<Term<Length>, Vec<Missing>> {
    if let Some(taken) = rig.job.transom.height_at(engine.y) {
        sheet.remark(say!("transom height taken at the {}'s own centreline", engine.label.as_str()));
        sheet.told("H", Some(taken));
        return Ok(Term::new("H", taken.value));
    }
    let corner = step_up(rig, group, engine) / lean(rig).cos();
    // A hull of several has its keels beside the centreline: no deadrise tells how high its bottom is there.
    if engine.y.value != 0.0 && rig.job.boat.craft == Some(Craft::Multihull) {
        return Err(vec![Missing::one(reading!(Transom.heights))]);
    }
    let (height, deadrise) = (rig.job.transom.height().ask(), rig.job.boat.deadrise().ask());
    let (Ok(height), Ok(deadrise)) = (&height, &deadrise) else {
        let on_centre = engine.y.value == 0.0;
        let lacking = [height.err(), deadrise.err().filter(|_| !on_centre)];
        return Err(lacking.into_iter().flatten().collect());
    };
    sheet.told("H0", Some(*height));
    sheet.told("β", Some(*deadrise));
    sheet.told("θ", rig.job.transom.angle.as_ref());
    sheet.origin::<Length>("y", Basis::Measured.origin());
    let rise = height::bottom_rise(sheet, engine.y, deadrise.value, lean(rig));
    if corner.value > 0.0 {
        sheet.remark(say!(
            "beside the cutout the transom stands {} higher, as the rim of the well does: its height there is not given",
            Measure::tape(corner)
        ));
    }
    Ok(height::height_off_centre(sheet, height.value + corner, &rise))
}
