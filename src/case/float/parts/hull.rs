//! The hull and its measures, and what her marks told.

use super::super::{AsMeasured, Float, Side, heel_words, trim_words};
use super::ledger::{HEADS, entry_row, weights};
use super::{feet, row, tape};
use crate::quantity::{Measure, Style, Text, say};
use crate::working::{Part, Sheet, Table, Term};
use uom::si::f64::Mass;

impl Float {
    pub(super) fn hull_part(&self) -> Part {
        let mut sheet = Sheet::default();
        sheet.remark(say!("Made from {}.", self.built.how));
        for assumed in self.built.assumed.iter().chain(&self.assumed) {
            sheet.remark(assumed.clone());
        }
        let hull = self.hull(Side::After);
        let (low, high) = hull.bounds();
        let mut rows = vec![
            row("triangles", Text::from(self.built.mesh.faces().len().to_string().as_str())),
            row("length", feet(high.x - low.x)),
            row("beam", feet(high.y - low.y)),
            row("height", feet(high.z - low.z)),
            row("volume up to the sheer", Measure::styled(hull.volume(), Style::Bulk).into()),
        ];
        for body in self.boxes.iter().flatten() {
            rows.push(row(&format!("of it {}", body.name), Measure::styled(body.volume, Style::Bulk).into()));
        }
        rows.push(row("water", Measure::of(self.water).into()));
        Part { title: "the hull".to_owned(), tables: vec![Table::new("measures", &["", ""], rows)], sheet }
    }

    pub(super) fn measured_part(&self, measured: &AsMeasured) -> Part {
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
        sheet.origin::<Mass>("W", "what the hull displaces under the plane fitted");
        weights(&mut sheet, &measured.aboard)
            .into_iter()
            .reduce(|a, b| a + b)
            .map(|sum| sheet.set("Wa", "hung on her and aboard then", sum))
            .map(|aboard| sheet.set("Wb", "the bare boat", displaced - aboard));
        Part {
            title: "as she lay when her marks were taken".to_owned(),
            tables: vec![
                Table::new("marks", &["mark", "above water", "fitted", "misfit"], rows),
                Table::new("what they say", &["", ""], found),
                Table::new("taken off, and what is left", &HEADS, off),
            ],
            sheet,
        }
    }
}
