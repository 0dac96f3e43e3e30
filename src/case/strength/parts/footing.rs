//! One face: what hangs on it, its loads, and each of its bolts in every case.

use super::super::show::{force, length, moment};
use super::super::{Footing, Laden};
use crate::quantity::{Measure, Text, say};
use crate::working::{Part, Table};

pub(super) fn part(when: &str, footing: &Footing, laden: &Laden) -> Part {
    let loads = laden
        .cases
        .iter()
        .zip(&footing.loads)
        .map(|(case, load)| {
            let mut row = vec![Text::from(case.name())];
            row.extend(load.force.map(|f| Text::from(force(f))));
            row.extend(load.moment.map(|m| Text::from(moment(m))));
            row
        })
        .collect();
    let hung = footing
        .hung
        .iter()
        .map(|hung| {
            vec![Text::from(hung.name.as_str()), Text::from(Measure::of(hung.mass)), Text::from(length(hung.aft))]
        })
        .collect();
    let mut tables = vec![
        Table::new("weights, and their centres aft of the transom, level", &["", "weight", "aft"], hung),
        Table::new(
            "forces and moments about the middle of the bolts (square to the transom, to port, up along it)",
            &["case", "square to it", "to port", "up along it", "about square", "about port", "about along"],
            loads,
        ),
    ];
    for (case, group) in laden.cases.iter().zip(&footing.forces) {
        let rows = group
            .bolts
            .iter()
            .enumerate()
            .map(|(i, bolt)| vec![footing.bolt(i), Text::from(force(bolt.shear)), Text::from(force(bolt.tension))])
            .chain(std::iter::once(vec![
                say!("edge pressed on, {} up the transom", length(group.pivot_z)),
                Text::default(),
                Text::from(force(-group.edge_pitch)),
            ]))
            .collect();
        tables.push(Table::new(&format!("bolt by bolt: {}", case.name()), &["bolt", "shear", "tension"], rows));
    }
    Part { title: format!("{when}: {}", footing.name), tables, sheet: footing.sheet.clone() }
}
