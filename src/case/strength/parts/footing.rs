//! One face: what hangs on it, its loads, and each of its bolts in every case.

use uom::si::f64::Force;

use super::super::show::{force, length, moment};
use super::super::{Board, Footing, Laden, Part};
use crate::physics::strength::bolts::{BoltForces, MIDDLE, WrittenGroup, WrittenLoad, written_pull, written_shear};
use crate::physics::strength::loads::{Acting, written_face_load};
use crate::quantity::{Dimensioned, Measure, Moment, Text, say};
use crate::working::{Part as Working, Sheet, Table};

pub(super) fn parts(when: &str, footing: &Footing, laden: &Laden, board: &Board) -> Vec<Working> {
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
    let title = format!("{when}: {}", footing.name);
    let all = Working { title: title.clone(), tables, sheet: footing.sheet.clone() };
    std::iter::once(all).chain(governing(&title, footing, laden, board)).collect()
}

/// The cases that pull and that shear a bolt most, line by line: what they bring to the face, and what that bolt carries of it.
fn governing(title: &str, footing: &Footing, laden: &Laden, board: &Board) -> Vec<Working> {
    let most = |of: fn(&BoltForces) -> f64| -> Option<(usize, usize)> {
        let all = footing.forces.iter().enumerate();
        let all = all.flat_map(|(case, group)| group.bolts.iter().enumerate().map(move |(i, one)| (case, i, of(one))));
        let most = all.max_by(|a, b| a.2.total_cmp(&b.2)).filter(|(.., force)| *force > 0.0);
        most.map(|(case, bolt, _)| (case, bolt))
    };
    let (pulled, sheared) = (most(|bolt| bolt.tension), most(|bolt| bolt.shear));
    let mut cases: Vec<usize> = [pulled, sheared].into_iter().flatten().map(|(case, _)| case).collect();
    cases.dedup();
    let part = |case: usize| {
        let mut sheet = Sheet::default();
        let load = footing.written_load(&mut sheet, case, board);
        let group = footing.written_group();
        if let Some((_, bolt)) = pulled.filter(|(of, _)| *of == case) {
            sheet.remark(say!("The bolt pulled most, ").then(footing.bolt(bolt)).then(say!(":")));
            written_pull(&mut sheet, &group, &load, bolt);
        }
        if let Some((_, bolt)) = sheared.filter(|(of, _)| *of == case) {
            sheet.remark(say!("The bolt sheared most, ").then(footing.bolt(bolt)).then(say!(":")));
            written_shear(&mut sheet, &group, &load, bolt);
        }
        Working { title: format!("{title}: {}, line by line", laden.cases[case].name()), tables: Vec::new(), sheet }
    };
    cases.into_iter().map(part).collect()
}

impl Footing {
    /// Its bolts and edges, for writing.
    pub(in crate::case::strength) fn written_group(&self) -> WrittenGroup<'_> {
        let (bolts_from, foot_from) = (self.bolts_from, self.face_from);
        WrittenGroup { bolts: &self.bolts, foot: self.face, bolts_from, foot_from }
    }

    /// What comes to it in a case, line by line.
    fn written_load(&self, sheet: &mut Sheet, case: usize, board: &Board) -> WrittenLoad {
        let acting = self.acting.get(case).map_or(&[][..], Vec::as_slice);
        let acting: Vec<(&str, Acting)> = acting.iter().map(|(name, acting)| (name.as_str(), *acting)).collect();
        written_face_load(sheet, &acting, board.lean(), board.lean_from, self.middle)
    }

    /// What pulls on one bolt in a case or shears it, of what comes to the face, line by line; for other parts, where its force is
    /// written. The load is that of `work strength`.
    pub fn written(&self, sheet: &mut Sheet, case: usize, bolt: usize, what: Part) {
        let Some(load) = self.loads.get(case).filter(|_| matches!(what, Part::Tension | Part::Shear)) else {
            sheet.origin::<Force>("N", FROM_WORK);
            sheet.origin::<Force>("V", FROM_WORK);
            return;
        };
        let words = ["square to the transom, forward", "to port", "up along the transom"];
        let turns = ["the line square to the transom", "port", "the line up along the transom"];
        let force = |sheet: &mut Sheet, symbol, k: usize| {
            let meaning = format!("force on the face {}", words[k]);
            sheet.given(symbol, &meaning, Force::from_si(load.force[k]), FROM_WORK)
        };
        let moment = |sheet: &mut Sheet, symbol, k: usize| {
            let meaning = format!("moment about {}", turns[k]);
            sheet.given(symbol, &meaning, Moment::from_si(load.moment[k]), FROM_WORK)
        };
        let load = WrittenLoad {
            at: self.middle,
            at_from: MIDDLE,
            force: [force(sheet, "Fx", 0), force(sheet, "Y", 1), force(sheet, "U", 2)],
            moment: [moment(sheet, "Mx", 0), moment(sheet, "Mp", 1), moment(sheet, "Mz", 2)],
        };
        let group = self.written_group();
        if what == Part::Shear {
            written_shear(sheet, &group, &load, bolt);
        } else {
            written_pull(sheet, &group, &load, bolt);
        }
    }
}

/// Where the load on a face is worked out.
pub const FROM_WORK: &str = "`sternknee work JOB strength`";
