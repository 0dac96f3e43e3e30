//! A bolt group that a study gives outright, under its load.

use uom::si::f64::{Area, Force};

use super::super::show::{force, length};
use super::panel::place;
use crate::job::BoltStudy;
use crate::physics::strength::bolts::{
    Bolt, BoltForces, Foot, GroupError, GroupForces, GroupLoad, bolt_forces, proof_load, shear_capacity,
};
use crate::quantity::{Dimensioned, Moment, Reading, Text, say};
use crate::rig::Rig;
use crate::working::{Part, Sheet, Table, Term};
use crate::written::Slip;

/// A bolt group under its load.
#[derive(Clone, Debug)]
pub struct BoltAnswer {
    pub bolts: Vec<Bolt>,
    pub forces: GroupForces,
    /// Tension and shear that a bolt of the grade bears, N.
    pub capacity: Option<[f64; 2]>,
    /// How the capacities came about.
    pub sheet: Sheet,
}

impl BoltAnswer {
    pub(super) fn of(rig: &Rig) -> Result<Option<BoltAnswer>, Slip> {
        let Some((study, size, grade)) = &rig.structure.bolt_study else {
            return Ok(None);
        };
        let area: Area = size.spec.stress_area.value;
        let bolts: Vec<Bolt> = study
            .bolts
            .iter()
            .map(|bolt| Bolt { y: bolt.across.value.si(), z: bolt.up.value.si(), area: area.si() })
            .collect();
        let foot = Foot {
            bottom: study.face.bottom.value.si(),
            top: study.face.top.value.si(),
            starboard: study.face.starboard.value.si(),
            port: study.face.port.value.si(),
        };
        let forces = bolt_forces(&bolts, foot, group_load(study)).map_err(bolt_fault)?;
        let mut sheet = Sheet::default();
        let capacity = grade.as_ref().map(|grade| {
            let spec = &grade.spec;
            let proof = spec.proof.as_ref().map_or(spec.yield_strength.value, |proof| proof.value);
            let area = Term::new("As", area);
            let tension: Force = proof_load(&mut sheet, proof, &area).value();
            let shear: Force = shear_capacity(&mut sheet, spec.tensile.value, &area).value();
            [tension.si(), shear.si()]
        });
        Ok(Some(BoltAnswer { bolts, forces, capacity, sheet }))
    }

    /// Bolt by bolt.
    pub fn table(&self) -> Table {
        let rows = self
            .bolts
            .iter()
            .zip(&self.forces.bolts)
            .map(|(bolt, forces)| {
                let mut row = vec![Text::from(length(bolt.y)), Text::from(length(bolt.z))];
                row.extend(forces.primary.iter().chain(&forces.secondary).map(|f| Text::from(force(*f))));
                row.extend([Text::from(force(forces.shear)), Text::from(force(forces.tension))]);
                row
            })
            .collect();
        Table::new(
            "bolt by bolt",
            &["across", "up", "primary across", "primary up", "secondary across", "secondary up", "shear", "tension"],
            rows,
        )
    }

    /// Greatest tension and greatest shear, N.
    pub fn greatest(&self) -> [f64; 2] {
        let most = |value: fn(&BoltForces) -> f64| self.forces.bolts.iter().map(value).fold(0.0, f64::max);
        [most(|bolt| bolt.tension), most(|bolt| bolt.shear)]
    }

    /// The working of it.
    pub(super) fn part(&self) -> Part {
        let mut sheet = self.sheet.clone();
        let [across, up] = self.forces.centroid;
        sheet.remark(say!("centre of the bolts: {} across, {} up", length(across), length(up)));
        sheet.remark(say!("edge pressed on: {} at {} up", force(self.forces.edge_pitch), length(self.forces.pivot_z)));
        Part { title: "the bolt group asked about".to_owned(), tables: vec![self.table()], sheet }
    }
}

fn group_load(study: &BoltStudy) -> GroupLoad {
    GroupLoad {
        at: place(&study.at),
        push: si(study.push.as_ref()),
        shear: [si(study.across.as_ref()), si(study.up.as_ref())],
        twist: si::<Moment>(study.twist.as_ref()),
        pitch: si::<Moment>(study.pitch.as_ref()),
        yaw: si::<Moment>(study.yaw.as_ref()),
    }
}

fn bolt_fault(error: GroupError) -> Slip {
    let path = match error {
        GroupError::OutsideFoot { index } | GroupError::NoArea { index } => {
            format!("bolt_study.bolts[{index}]")
        }
        GroupError::NoBolts | GroupError::CannotTwist | GroupError::NoArm => "bolt_study.bolts".to_owned(),
        GroupError::NotFinite { .. } => "bolt_study".to_owned(),
    };
    Slip { path, message: error.to_string(), help: "check the bolts against the face and the load".to_owned() }
}

fn si<Q: Dimensioned>(reading: Option<&Reading<Q>>) -> f64 {
    reading.map_or(0.0, |reading| reading.value.si())
}
