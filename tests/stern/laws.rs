//! What must hold of any boat.

use proptest::prelude::*;
use sternknee::case::Case;
use sternknee::case::float::Float;
use sternknee::rules;

use crate::{ledger, rig, skiff};

fn float<R>(text: &str, look: impl FnOnce(&Float) -> R) -> R {
    let rig = rig(text);
    let case = Case::new(&rig);
    look(case.float().unwrap_or_else(|why| panic!("{why:?}")))
}

/// Heights of the well's lip in every loading, metres.
fn lip(text: &str) -> Vec<f64> {
    float(text, |float| {
        let edge = &float.edges[0];
        let height =
            |state: &sternknee::case::float::State| state.floating().unwrap().height_above_water(&edge.point).value;
        float.loadings.iter().map(|l| height(l.judged().unwrap())).collect()
    })
}

#[test]
fn a_heavier_engine_never_raises_the_well_edge() {
    let heights: Vec<Vec<f64>> = (1..=20).map(|i| lip(&skiff(60.0 * f64::from(i), 0.0, &ledger(20.0)))).collect();
    for pair in heights.windows(2) {
        for (lighter, heavier) in pair[0].iter().zip(&pair[1]) {
            assert!(heavier < lighter, "{heavier} {lighter}");
        }
    }
}

#[test]
fn an_engine_on_the_other_side_heels_her_as_far_the_other_way() {
    let heels = |port: f64| {
        float(&skiff(300.0, port, &ledger(20.0)), |float| {
            let state = float.loadings[0].judged().unwrap();
            let attitude = state.floating().unwrap().attitude();
            (attitude.heel.value, attitude.trim.value, attitude.sinkage.value)
        })
    };
    let (port, starboard) = (heels(10.0), heels(-10.0));
    assert!(port.0 < -1e-3, "{port:?}");
    assert!((port.0 + starboard.0).abs() < 1e-12);
    assert!((port.1 - starboard.1).abs() < 1e-12 && (port.2 - starboard.2).abs() < 1e-12);
}

/// Freeboards computed from a ledger and written back as readings give the ledger's bare boat again.
#[test]
fn freeboards_tell_the_weight_and_centre_that_made_them() {
    let points = [(0.0, 0.6, 0.5), (0.0, -0.6, 0.5), (4.8, 0.0, 0.9), (2.0, 0.8, 0.7)];
    let (marks, weight, centre) = float(&skiff(300.0, 6.0, &ledger(20.0)), |float| {
        let loaded = float.loadings.iter().find(|l| l.name == "light").unwrap();
        let lies = *loaded.before.as_ref().unwrap().floating().unwrap();
        let marks: Vec<String> = points
            .iter()
            .map(|&(x, y, z)| {
                let height = lies.height_above_water(&nalgebra::Point3::new(x, y, z)).value;
                let side = if y < 0.0 { "starboard" } else { "port" };
                format!(
                    r#"(forward: "{x} m", across: {side}("{} m"), up: "{z} m", above_water: "{height:.15} m")"#,
                    y.abs()
                )
            })
            .collect();
        (marks.join(", "), float.bare.weight.mass.value, float.bare.weight.centre)
    });
    let more = format!(r#"weights: (boat: (above: "14 in")), afloat: (water: fresh, engines: old, marks: [{marks}]),"#);
    float(&skiff(300.0, 6.0, &more), |float| {
        let bare = float.bare.weight;
        let measured = float.as_measured.as_ref().unwrap();
        for misfit in &measured.fit.misfits {
            assert!(misfit.value.abs() < 1e-9, "{misfit:?}");
        }
        let off = (bare.mass.value / weight - 1.0).abs();
        let apart = (bare.centre - centre).norm();
        println!("as she floats, through the job: mass {off:.1e} relative, centre {apart:.1e} m");
        assert!(off < 1e-9 && apart < 1e-8, "{off} {apart}");
    });
}

/// A flooded well carries nothing: she sits deeper, by the water that it takes and no more.
#[test]
fn a_flooded_well_lowers_her_stern() {
    let draft = |more: &str| {
        float(&skiff(300.0, 0.0, &format!("{} {more}", ledger(20.0))), |float| {
            let state = float.loadings[0].judged().unwrap();
            let lies = state.floating().unwrap();
            (lies.attitude().sinkage.value, lies.immersed.volume.value * float.water.value / state.total.mass.value)
        })
    };
    let dry = draft("");
    let wet = draft(r#"flooded: [(what: "motorwell", length: "18 in", width: "30 in", floor: "7 in")],"#);
    assert!(wet.0 > dry.0 + 0.005, "{wet:?} {dry:?}");
    assert!((wet.1 - 1.0).abs() < 1e-12, "{wet:?}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever sections, marks and weights within their bounds a job gives, every rule answers.
    #[test]
    fn no_boat_stops_the_rules(
        up in -30.0f64..60.0, out in 0.0f64..80.0, above in -60.0f64..90.0, engine in 12.0f64..1500.0,
        boat in 1.0f64..30_000.0, forward in -8.0f64..30.0, use_marks: bool,
    ) {
        let marks = if use_marks {
            format!(r#"marks: [(forward: "0 in", across: port("30 in"), up: "{up:.3} in", above_water: "{above:.3} in"),
                (forward: "0 in", across: starboard("{out:.3} in"), up: "{up:.3} in", above_water: "{above:.3} in"),
                (forward: "10 ft", up: "30 in", above_water: "20 in")]"#)
        } else {
            String::new()
        };
        let weight = format!(r#"weight: "{boat:.3} lb", forward: "{forward:.3} ft","#);
        let more = format!(
            r#"weights: (boat: ({weight} above: "{:.3} in"), tanks: [(what: "fuel", capacity: "40 gal", forward: "5 ft", length: "4 ft", width: "2 ft")]),
            edges: [(name: "sole", kind: sole, up: "{up:.3} in"), (name: "scupper", kind: scupper, across: port("{out:.3} in"), both_sides: true, up: "12 in")],
            afloat: ({marks}),"#,
            above.abs()
        );
        let rig = rig(&skiff(engine.round(), out.min(30.0).round(), &more));
        let case = Case::new(&rig);
        let judged = rules::judge(&case);
        prop_assert_eq!(judged.len(), rules::ALL.len());
        prop_assert!(!case.float_parts().is_empty() && !case.weights().is_empty());
    }
}
