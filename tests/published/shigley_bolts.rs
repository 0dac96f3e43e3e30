//! J. E. Shigley, Mechanical Engineering Design: bolt group in eccentric shear (example 8-7), preload and torque (section 8-9 and
//! its example with a 3/4 in-16 grade 5 bolt). Values from memory, derived again below.

use sternknee::physics::strength::bolts::{
    Bolt, Foot, GroupError, GroupLoad, PRELOAD_OF_PROOF, Thread, bolt_forces, preload, proof_load, row_shares,
    stress_area_unified, tightening_torque,
};
use sternknee::quantity::{Dimensioned, Units};
use sternknee::working::{Sheet, Term};
use uom::si::f64::{Force, Length, Pressure};
use uom::si::{area::square_inch, force::pound_force, length::inch, pressure::psi};

const FOOT: Foot = Foot { bottom: -0.2, top: 0.2, starboard: -0.2, port: 0.2 };
const NO_LOAD: GroupLoad = GroupLoad { at: [0.0, 0.0], push: 0.0, shear: [0.0, 0.0], twist: 0.0, pitch: 0.0, yaw: 0.0 };

fn group() -> Vec<Bolt> {
    [(0.075, 0.06), (0.075, -0.06), (-0.075, -0.06), (-0.075, 0.06)].map(|(y, z)| Bolt { y, z, area: 144e-6 }).to_vec()
}

#[track_caller]
fn near(found: f64, printed: f64, relative: f64) {
    assert!((found / printed - 1.0).abs() <= relative, "{found} against {printed}");
}

#[test]
fn example_8_7_has_its_primary_secondary_and_resultant_shears() {
    // 16 kN down at 425 mm from the centroid.
    let load = GroupLoad { at: [0.425, 0.0], shear: [0.0, -16e3], ..NO_LOAD };
    let forces = bolt_forces(&group(), FOOT, load).unwrap();
    for f in &forces.bolts {
        near(f.primary[1], -4000.0, 1e-12);
        // Printed 17.7 kN; 6800 N·m over four bolts at 96.05 mm.
        near(f.secondary[0].hypot(f.secondary[1]), 6800.0 / (4.0 * 0.075_f64.hypot(0.06)), 1e-12);
        near(f.secondary[0].hypot(f.secondary[1]), 17.7e3, 2e-3);
        assert_eq!(f.tension, 0.0);
    }
    // Printed 21.0 and 14.8 kN to three figures.
    near(forces.bolts[0].shear, 21.0e3, 2e-3);
    near(forces.bolts[1].shear, 21.0e3, 2e-3);
    near(forces.bolts[2].shear, 14.8e3, 2e-3);
    near(forces.bolts[3].shear, 14.8e3, 2e-3);
}

#[test]
fn a_three_quarter_inch_grade_5_bolt_has_the_printed_area_preload_and_torque() {
    let mut sheet = Sheet::default();
    let thread = Thread { diameter: Length::new::<inch>(0.75), pitch: Length::new::<inch>(1.0 / 16.0) };
    let area = stress_area_unified(&mut sheet, thread);
    // Printed At = 0.373 in², table 8-2.
    near(area.value().get::<square_inch>(), 0.373, 2e-3);
    let proof = proof_load(&mut sheet, Pressure::new::<psi>(85_000.0), &area);
    near(proof.value().get::<pound_force>(), 85_000.0 * 0.373, 2e-3);
    let fi = preload(&mut sheet, PRELOAD_OF_PROOF, &proof);
    // 0.75 · 85 ksi · 0.373 in² = 23.8 kip.
    near(fi.value().get::<pound_force>(), 23.8e3, 2e-3);
    // The book's 25 kip with K = 0.2 wants 3750 lbf·in.
    let given = Term::new("Fi", Force::new::<pound_force>(25_000.0));
    let torque = tightening_torque(&mut sheet, 0.2, thread.diameter, &given);
    near(torque.value().si() / (4.448_221_615 * 0.0254), 3750.0, 1e-6);
    let last = sheet.lines().last().unwrap().show(Units::Us);
    assert!(last.starts_with("T = K · d · Fi = "), "{last}");
}

#[test]
fn bolts_balance_every_load_and_grow_with_it() {
    let bolts: Vec<Bolt> = [(0.16, 0.1), (-0.17, 0.11), (0.12, -0.1), (-0.13, -0.12)]
        .iter()
        .enumerate()
        .map(|(i, &(y, z))| Bolt { y, z, area: 1e-4 * (1.0 + 0.2 * i as f64) })
        .collect();
    // The push stands over the centroid, so that it does not tilt the foot sideways.
    let area: f64 = bolts.iter().map(|b| b.area).sum();
    let across = bolts.iter().map(|b| b.area * b.y).sum::<f64>() / area;
    let sum = |load: GroupLoad| {
        let forces = bolt_forces(&bolts, FOOT, load).unwrap();
        let mut total = [0.0; 5];
        for (b, f) in bolts.iter().zip(&forces.bolts) {
            let shear = [0, 1].map(|k| f.primary[k] + f.secondary[k]);
            total[0] += shear[0];
            total[1] += shear[1];
            total[2] += (b.y - load.at[0]) * shear[1] - (b.z - load.at[1]) * shear[0];
            total[3] += f.tension;
            total[4] += f.tension * b.z;
        }
        (total, forces)
    };
    for (push, pitch) in [(0.0, -4000.0), (9000.0, -4000.0), (-5000.0, -4000.0), (2000.0, 3000.0), (9000.0, -10.0)] {
        let load = GroupLoad { at: [across, -0.05], push, shear: [700.0, -3000.0], twist: 250.0, pitch, yaw: 0.0 };
        let (total, forces) = sum(load);
        near(total[0], 700.0, 1e-12);
        near(total[1], -3000.0, 1e-12);
        near(total[2], 250.0, 1e-9);
        // Along x the edge and the push balance the bolts; about y they do too.
        let edge = forces.edge_pitch;
        assert!((push + total[3] - edge).abs() < 1e-9 * 1e4, "{push} {edge} {}", total[3]);
        let about = pitch + push * load.at[1] + total[4] - edge * forces.pivot_z;
        assert!(about.abs() < 1e-9 * 1e4, "{about}");
        let twice = GroupLoad { push: 2.0 * push, shear: [1400.0, -6000.0], twist: 500.0, pitch: 2.0 * pitch, ..load };
        for (a, b) in forces.bolts.iter().zip(&sum(twice).1.bolts) {
            assert!((2.0 * a.shear - b.shear).abs() < 1e-9 && (2.0 * a.tension - b.tension).abs() < 1e-9);
        }
    }
}

#[test]
fn an_engines_weight_pulls_the_upper_bolts_harder_than_the_lower() {
    let forces = bolt_forces(&group(), FOOT, GroupLoad { pitch: -1000.0, ..NO_LOAD }).unwrap();
    let [upper, lower] = row_shares(&group(), &forces);
    assert!(upper.1 > lower.1 && lower.1 > 0.0);
    assert_eq!(forces.pivot_z, FOOT.bottom);
}

#[test]
fn nonsense_is_an_error() {
    assert_eq!(bolt_forces(&[], FOOT, NO_LOAD), Err(GroupError::NoBolts));
    let off = Bolt { y: 0.5, z: 0.0, area: 1e-4 };
    assert_eq!(bolt_forces(&[off], FOOT, NO_LOAD), Err(GroupError::OutsideFoot { index: 0 }));
    let one = Bolt { y: 0.0, z: 0.0, area: 1e-4 };
    assert_eq!(bolt_forces(&[one], FOOT, GroupLoad { twist: 5.0, ..NO_LOAD }), Err(GroupError::CannotTwist));
    let bad = GroupLoad { pitch: f64::NAN, ..NO_LOAD };
    assert_eq!(bolt_forces(&[one], FOOT, bad), Err(GroupError::NotFinite { what: "a moment" }));
    let none = Bolt { area: 0.0, ..one };
    assert_eq!(bolt_forces(&[none], FOOT, NO_LOAD), Err(GroupError::NoArea { index: 0 }));
}
