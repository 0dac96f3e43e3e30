//! A bolt group that a job gives outright, under its load.

use uom::si::f64::{Area, Force, Pressure};

use super::panel::place;
use super::{Answered, factor, si};
use crate::case::strength::show::{force, length};
use crate::job::BoltStudy;
use crate::physics::strength::bolts::{
    Bolt, BoltForces, Foot, GroupError, GroupForces, GroupLoad, WrittenGroup, WrittenLoad, bolt_forces, proof_load,
    shear_capacity, written_pull, written_shear,
};
use crate::quantity::{Basis, Dimensioned, Moment, Reading, Text, say};
use crate::rig::Rig;
use crate::working::{Sheet, Table, Term};
use crate::written::Slip;

/// A bolt group under its load.
#[derive(Clone, Debug)]
pub struct BoltAnswer {
    /// The bolts as the study places them: across to port and up, m; their areas, m².
    pub bolts: Vec<Bolt>,
    /// What the load does to them, N.
    pub forces: GroupForces,
    /// Tension and shear that a bolt of the grade bears, N.
    pub capacity: Option<[f64; 2]>,
    /// What works on the bolts pulled and sheared most, what a bolt bears, and one over the other.
    pub sheet: Sheet,
}

/// Where bolts and edges of a study are from.
const TOLD: &str = Basis::Measured.origin();

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
        let mut answer = BoltAnswer { bolts, forces, capacity: None, sheet: Sheet::default() };
        let sheet = &mut Sheet::default();
        let group = WrittenGroup { bolts: &answer.bolts, foot, bolts_from: TOLD, foot_from: TOLD };
        let load = written_load(sheet, study);
        sheet.remark(say!("The bolt pulled most, ").then(answer.place(|bolt| bolt.tension)).then(say!(":")));
        let pull = written_pull(sheet, &group, &load, answer.most(|bolt| bolt.tension));
        sheet.remark(say!("The bolt sheared most, ").then(answer.place(|bolt| bolt.shear)).then(say!(":")));
        let shear = written_shear(sheet, &group, &load, answer.most(|bolt| bolt.shear));
        answer.capacity = grade.as_ref().map(|grade| {
            let spec = &grade.spec;
            let proof = spec.proof.as_ref().map_or(spec.yield_strength.value, |proof| proof.value);
            sheet.origin::<Area>("As", Basis::Catalog.origin());
            sheet.origin::<Pressure>("Sp", Basis::Catalog.origin());
            sheet.origin::<Pressure>("Rm", Basis::Catalog.origin());
            let area = Term::new("As", area);
            let most = [proof_load(sheet, proof, &area), shear_capacity(sheet, spec.tensile.value, &area)];
            for (symbol, meaning, capacity, load) in
                [("fN", "proof load over pull", &most[0], pull), ("fV", "shear capacity over shear", &most[1], shear)]
            {
                if load.value() > Force::from_si(0.0) {
                    sheet.set(symbol, meaning, capacity / &load);
                }
            }
            most.map(|capacity| capacity.value().si())
        });
        answer.sheet = std::mem::take(sheet);
        Ok(Some(answer))
    }

    /// Which bolt carries most.
    fn most(&self, of: fn(&BoltForces) -> f64) -> usize {
        let all = self.forces.bolts.iter().enumerate();
        all.max_by(|a, b| of(a.1).total_cmp(&of(b.1))).map_or(0, |(bolt, _)| bolt)
    }

    /// Where it stands.
    fn place(&self, of: fn(&BoltForces) -> f64) -> Text {
        self.bolts
            .get(self.most(of))
            .map_or(Text::default(), |bolt| say!("{} across, {} up", length(bolt.y), length(bolt.z)))
    }

    /// The least of proof load over pull, capacity over shear, and the two together by their squares; `None` without a grade.
    pub fn factors(&self) -> Option<[f64; 3]> {
        let [tension, shear] = self.capacity?;
        let over = |load: f64, capacity: f64| capacity / load.max(f64::MIN_POSITIVE);
        let [pulled, sheared] = self.greatest();
        let used = |bolt: &BoltForces| (bolt.tension / tension).hypot(bolt.shear / shear);
        let together = self.forces.bolts.iter().map(used).fold(f64::MIN_POSITIVE, f64::max);
        Some([over(pulled, tension), over(sheared, shear), 1.0 / together])
    }

    /// Bolt by bolt.
    fn table(&self) -> Table {
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
    fn greatest(&self) -> [f64; 2] {
        let most = |value: fn(&BoltForces) -> f64| self.forces.bolts.iter().map(value).fold(0.0, f64::max);
        [most(|bolt| bolt.tension), most(|bolt| bolt.shear)]
    }

    /// As an answer to the question.
    pub(super) fn answered(self) -> Answered {
        let [across, up] = self.forces.centroid;
        let mut notes = vec![
            say!("Centre of the bolts: {} across, {} up.", length(across), length(up)),
            say!("Edge pressed on: {} at {} up.", force(self.forces.edge_pitch), length(self.forces.pivot_z)),
        ];
        let [pull, shear] = self.greatest();
        let newtons = |key, meaning, value| si(key, meaning, Force::from_si(value));
        let mut figures = vec![
            newtons("tension_n", "pull on the bolt pulled most", pull),
            newtons("shear_n", "shear on the bolt sheared most", shear),
        ];
        match self.factors() {
            None => notes.push(Text::from("No grade is told, so nothing is held against that.")),
            Some([pulled, sheared, together]) => {
                let loaded = pull.max(shear) > 0.0;
                for (key, meaning, times, there) in [
                    ("proof_over_pull", "proof load over pull", pulled, pull > 0.0),
                    ("capacity_over_shear", "shear capacity over shear", sheared, shear > 0.0),
                    ("times_together", "times pull and shear together that the bolts bear", together, loaded),
                ] {
                    figures.extend(there.then(|| factor(key, meaning, times)));
                }
            }
        }
        Answered {
            name: "bolt_study",
            title: "the bolt group asked about",
            figures,
            in_full: self.capacity.is_some(),
            notes,
            source: "Compression-edge model, common practice, no source; ISO 3506-1, ISO 898-1 and SAE J429 (proof and yield); elliptical interaction, commentary to AISC 360 J3.7, value from memory",
            tables: vec![self.table()],
            sheet: self.sheet,
        }
    }
}

fn group_load(study: &BoltStudy) -> GroupLoad {
    GroupLoad {
        at: place(&study.at),
        push: told(study.push.as_ref()),
        shear: [told(study.across.as_ref()), told(study.up.as_ref())],
        twist: told::<Moment>(study.twist.as_ref()),
        pitch: told::<Moment>(study.pitch.as_ref()),
        yaw: told::<Moment>(study.yaw.as_ref()),
    }
}

/// The load in terms, each where it is told from.
fn written_load(sheet: &mut Sheet, study: &BoltStudy) -> WrittenLoad {
    fn term<Q: Dimensioned>(sheet: &mut Sheet, symbol: &str, meaning: &str, told: Option<&Reading<Q>>) -> Term<Q> {
        match told {
            Some(told) => sheet.given(symbol, meaning, told.value, told.basis.origin()),
            None => sheet.given(symbol, meaning, Q::from_si(0.0), "none was told"),
        }
    }
    WrittenLoad {
        at: place(&study.at),
        at_from: study.at.up.basis.origin(),
        force: [
            term(sheet, "Fx", "push, square to the face", study.push.as_ref()),
            term(sheet, "Y", "force across the face", study.across.as_ref()),
            term(sheet, "U", "force up along the face", study.up.as_ref()),
        ],
        moment: [
            term(sheet, "Mx", "moment that twists the face", study.twist.as_ref()),
            term(sheet, "Mp", "moment about the line across", study.pitch.as_ref()),
            term(sheet, "Mz", "moment about the line up along the face", study.yaw.as_ref()),
        ],
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

fn told<Q: Dimensioned>(reading: Option<&Reading<Q>>) -> f64 {
    reading.map_or(0.0, |reading| reading.value.si())
}
