//! Whatever a file holds, nothing panics: from the text to every form of the report.

use proptest::prelude::*;
use std::sync::LazyLock;
use sternknee::case::Case;
use sternknee::catalog::{self, Catalog};
use sternknee::quantity::{Kind, Units, parse};
use sternknee::report::{self, Report};
use sternknee::{job, rig, rules};

static CATALOG: LazyLock<Catalog> = LazyLock::new(|| Catalog::built_in().expect("sound"));

const SEEDS: [&str; 7] = [
    include_str!("../../catalogs/jobs/oyster_skiff.ron"),
    include_str!("../../catalogs/jobs/tiller_skiff.ron"),
    include_str!("../../catalogs/jobs/harbour_launch.ron"),
    include_str!("../../src/job/start/before_ordering.ron"),
    include_str!("../../src/job/start/as_fitted.ron"),
    include_str!("../../src/job/start/study.ron"),
    "(plate: capacity(persons: 4), steering: tiller, transom: (splash_well: floor(\"9 in\")))",
];

/// Bits of notation that a random byte seldom hits.
const PIECES: [&str; 16] =
    ["(", ")", "[", "]", "\"", ",", "/*", "//", "±", "'", "-", "1e308 in", "0/0", "\u{0}", "½", "r#\""];

/// One change to a text: where (a share of its length), how many bytes go, what comes.
#[derive(Clone, Debug)]
struct Edit {
    at: f64,
    take: usize,
    put: Vec<u8>,
}

fn edit() -> impl Strategy<Value = Edit> {
    let put = prop_oneof![
        proptest::collection::vec(any::<u8>(), 0..4),
        proptest::sample::select(&PIECES[..]).prop_map(|piece| piece.as_bytes().to_vec()),
        "[0-9./ -]{1,6}( in| ft| lb| hp| deg)?".prop_map(String::into_bytes),
    ];
    (0.0..1.0_f64, 0_usize..12, put).prop_map(|(at, take, put)| Edit { at, take, put })
}

fn edited(seed: &str, edits: &[Edit]) -> String {
    let mut bytes = seed.as_bytes().to_vec();
    for edit in edits {
        let at = (edit.at * bytes.len() as f64) as usize;
        let end = (at + edit.take).min(bytes.len());
        bytes.splice(at..end, edit.put.iter().copied());
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

/// The whole way that `check` and `tape` go.
fn all_the_way(text: &str) {
    let page = match job::load("job.ron", text) {
        Err(faults) => {
            let told = faults.render(true) + &faults.to_string();
            assert!(!faults.faults.is_empty(), "refused without a reason");
            assert!(!told.is_empty());
            return;
        }
        Ok(loaded) => loaded,
    };
    let (job, page) = page;
    let rig = match rig::resolve(&job, &CATALOG) {
        Err(unresolved) => {
            for one in unresolved {
                let fault = page.fault(&one.path, one.message, one.help);
                assert!(text.get(fault.span).is_some(), "a place outside the text");
            }
            return;
        }
        Ok(rig) => rig,
    };
    let case = Case::new(&rig);
    let judged = rules::judge(&case);
    assert_eq!(judged.len(), rules::ALL.len());
    for units in [Units::Us, Units::Si, Units::Both] {
        for explain in [false, true] {
            let report = Report { case: &case, judged: &judged, units, explain };
            assert!(!report::text(&report).is_empty());
            let json = report::json(&report).to_string();
            assert!(!json.contains("NaN") && !json.contains(":inf"));
        }
    }
    assert!(!report::measuring_list(rig.title(), &judged, Units::Us).is_empty());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn an_edited_job_never_panics(
        seed in 0..SEEDS.len(), edits in proptest::collection::vec(edit(), 1..5),
    ) {
        all_the_way(&edited(SEEDS[seed], &edits));
    }

    #[test]
    fn an_edited_catalog_never_panics(edits in proptest::collection::vec(edit(), 1..5)) {
        let text = edited(include_str!("../../catalogs/brackets.ron"), &edits);
        if let Err(faults) = catalog::load("catalog.ron", &text) {
            prop_assert!(!faults.faults.is_empty());
            prop_assert!(!faults.render(false).is_empty());
        }
    }

    #[test]
    fn no_text_panics_as_a_reading(text in ".{0,40}", kind in 0..Kind::ALL.len()) {
        let _ = parse(&text, Kind::ALL[kind]);
    }

    #[test]
    fn no_text_panics_as_a_job(text in "(?s).{0,200}") {
        all_the_way(&text);
    }

    /// A fault's place is a piece of the text, so that it can be quoted.
    #[test]
    fn every_fault_has_a_place_in_the_text(
        seed in 0..SEEDS.len(), edits in proptest::collection::vec(edit(), 1..5),
    ) {
        let text = edited(SEEDS[seed], &edits);
        if let Err(faults) = job::load("job.ron", &text) {
            for fault in faults.faults {
                prop_assert!(text.get(fault.span.clone()).is_some(), "{:?}", fault);
            }
        }
    }
}

#[test]
fn the_seeds_themselves_go_all_the_way() {
    for seed in SEEDS {
        all_the_way(seed);
    }
}
