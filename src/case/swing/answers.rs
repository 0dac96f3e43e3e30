//! Every answer about the swing of a case, worked out in turn.

use super::around::{Around, around};
use super::hang::{Hanging, engines, lacking};
use super::sweep::{against, boat_scene, each, head_of};
use super::swept::refused;
use super::{Swing, beside, from_boat, gear, ground, hang, lifted, study, water};
use crate::case::Case;
use crate::case::stern::Stern;
use crate::physics::swing::AngleRange;
use crate::quantity::Text;
use crate::reading::Absent;
use crate::rig::Rig;

/// Everything about the swing of the case.
pub(super) fn swing(case: &Case) -> Swing {
    let mut swing = of_engines(case);
    swing.study = case.rig.job.swing_study.as_ref().map(study::answer);
    swing
}

fn of_engines(case: &Case) -> Swing {
    let rig = case.rig;
    let stern = match Stern::of(rig) {
        Ok(stern) => stern,
        Err(mut missing) => {
            missing.splice(0..0, lacking(rig));
            return Swing::nothing(Absent::Waits(missing));
        }
    };
    if rig.after.is_empty() {
        return Swing::nothing(Absent::Waits(lacking(rig)));
    }
    let hanging = match engines(rig, &stern) {
        Ok(hanging) => hanging,
        Err(open) => return Swing::nothing(open),
    };
    let around = match around(rig, &stern, &hanging) {
        Ok(around) => around,
        Err(error) => return Swing::nothing(refused(&error)),
    };
    let against_boat = |range: fn(&Hanging) -> AngleRange, curable: bool| {
        each(&hanging, |engine| {
            let scene = boat_scene(&head_of(engine)?, range(engine), around.known.clone());
            against(&engine.label, scene, &around, from_boat(), curable)
        })
    };
    let mut swing = Swing {
        full_tilt: against_boat(|engine| engine.fitted.tilt, true),
        raised: lifted::raised(&hanging, &around),
        lock: against_boat(|engine| engine.running, true),
        neighbours: beside::neighbours(&hanging),
        cylinder: gear::cylinders(rig, &hanging, &around),
        tie_bar: gear::tie_bars(rig, &hanging, &around),
        water: water::above(case, &hanging),
        ground: ground::over(rig, &stern, &hanging),
        study: None,
        assumed: Vec::new(),
        engines: Ok(Vec::new()),
        around: Err(Absent::Waits(Vec::new())),
    };
    swing.assumed = assumed(&swing, &hanging, &around, rig);
    swing.engines = Ok(hanging);
    swing.around = Ok(around);
    swing
}

fn assumed(swing: &Swing, hanging: &[Hanging], around: &Around, rig: &Rig) -> Vec<Text> {
    let mut assumed = hang::assumed(hanging);
    if swing.full_tilt.is_ok() || swing.cylinder.is_ok() || swing.tie_bar.is_ok() {
        assumed.extend(around.assumed.clone());
    }
    assumed.extend(gear::assumed(swing, rig));
    assumed.extend(water::assumed(swing));
    assumed
}
