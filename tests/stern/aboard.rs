//! Who and what is aboard: seats, tanks and their free surfaces, the bare boat where little of her was told.

use sternknee::case::Case;
use sternknee::case::float::{Crew, Float, Loaded, Movable};
use sternknee::quantity::{Dimensioned, Units};

use crate::{ledger, rig, skiff};

const INCH: f64 = 0.0254;
const POUND: f64 = 0.453_592_37;

fn float<R>(text: &str, look: impl FnOnce(&Float) -> R) -> R {
    let rig = rig(text);
    let case = Case::new(&rig);
    look(case.float().unwrap_or_else(|why| panic!("{why:?}")))
}

/// How many persons sit so many feet forward of the transom; each weighs 185 lb here.
fn persons_at(loaded: &Loaded, feet: f64) -> f64 {
    let entries = &loaded.judged().expect("a state").entries;
    let persons = entries.iter().filter(|entry| entry.movable == Movable::Persons);
    let here = persons.filter(|entry| (entry.weight.centre.x / (12.0 * INCH) - feet).abs() < 1e-6);
    here.map(|entry| entry.weight.mass.si() / (185.0 * POUND)).sum()
}

/// Two seats aft at 3 ft, two at the helm at 8 ft, and so many persons; live well and tank as told.
fn manned(crew: u32, tanks: &str) -> String {
    let seats = format!("crew: {crew}, person: \"185 lb\", tanks: [{tanks}]");
    skiff(300.0, 0.0, &ledger(20.0).replace("crew: 2", &seats))
}

const FUEL: &str = r#"(what: "fuel tank", holds: fuel, capacity: "20 gal", forward: "4 ft", above: "8 in")"#;
const WATER: &str = r#"(what: "water tank", holds: water, capacity: "10 gal", forward: "9 ft", above: "8 in")"#;
const WELL: &str = r#"(what: "live well", holds: live_well, capacity: "30 gal", forward: "2 ft", above: "20 in")"#;

/// As many as it seats sit at the aftmost place, and only whom it does not hold farther forward.
#[test]
fn the_crew_aft_fill_the_aftmost_seat_before_they_sit_farther_forward() {
    for (crew, aft, helm) in [(1, 1.0, 0.0), (2, 2.0, 0.0), (3, 2.0, 1.0)] {
        float(&manned(crew, FUEL), |float| {
            let loaded = float.loadings.iter().find(|loaded| loaded.crew == Crew::Aft).expect("the crew aft");
            let found = [persons_at(loaded, 3.0), persons_at(loaded, 8.0)];
            assert!((found[0] - aft).abs() < 1e-9 && (found[1] - helm).abs() < 1e-9, "{crew}: {found:?}");
        });
    }
}

/// Two have seats at the stern; a third crowds it, and all of them are there all the same.
#[test]
fn more_persons_at_the_stern_than_it_seats_are_a_crowd() {
    for (crew, is_crowd) in [(1, false), (2, false), (3, true), (5, true)] {
        float(&manned(crew, &format!("{FUEL}, {WELL}")), |float| {
            let last = float.loadings.iter().find(|loaded| loaded.name == "live well full, crew at the stern");
            let last = last.expect("the crew at the stern");
            assert_eq!(last.crew == Crew::CrowdedAft, is_crowd, "{crew}: {:?}", last.crew);
            assert!((persons_at(last, 3.0) - f64::from(crew)).abs() < 1e-9, "{crew}");
        });
    }
}

/// A loading is called full of what she has, and says so where no tank was told.
#[test]
fn a_loading_is_not_called_full_of_fuel_where_no_tank_was_told() {
    for (tanks, aft, worst) in [
        (format!("{FUEL}, {WELL}"), "full fuel, crew aft", "live well full, crew at the stern"),
        (format!("{FUEL}, {WATER}"), "full fuel, crew aft", "all full, crew at the stern"),
        (WELL.to_owned(), "crew aft, no fuel told", "live well full, no fuel told, crew at the stern"),
        (String::new(), "crew aft, no fuel told", "crew at the stern, no fuel told"),
    ] {
        float(&manned(3, &tanks), |float| {
            let names: Vec<&str> = float.loadings.iter().map(|loaded| loaded.name.as_str()).collect();
            assert!(names.contains(&aft) && names.contains(&worst), "{tanks}: {names:?}");
        });
    }
}

/// What a free surface takes off the metacentric height is ρ l b³ / 12 over all that she weighs (any text on ship stability).
/// A closed tank that is pressed up has none, a live well that is full has.
#[test]
fn a_free_surface_takes_its_own_inertia_off_the_metacentric_height() {
    let tank = FUEL.replace("forward", r#"length: "30 in", width: "20 in", forward"#);
    let well = WELL.replace("forward", r#"length: "24 in", width: "16 in", forward"#);
    let loading = |name: &str, fuel: &str, live_well: &str| {
        format!(r#"(name: "{name}", fuel: "{fuel}", live_well: "{live_well}", crew: [(at: "helm")])"#)
    };
    let fills = [
        ("half", "50 %", "0 %"),
        ("nearly", "97 %", "0 %"),
        ("pressed", "98 %", "0 %"),
        ("full", "100 %", "0 %"),
        ("well", "100 %", "100 %"),
        ("both", "50 %", "100 %"),
    ];
    let loadings = fills.map(|(name, fuel, live_well)| loading(name, fuel, live_well)).join(", ");
    let text = manned(2, &format!("{tank}, {well}")).replacen(
        "transom: (",
        &format!("conditions: [{loadings}],\n    transom: ("),
        1,
    );
    // Gasoline of 740 kg/m³, and the fresh water she lies in, 62.4 lb/ft³.
    let inertia = |length: f64, breadth: f64| length * INCH * (breadth * INCH).powi(3) / 12.0;
    let (slack, open) = (740.0 * inertia(30.0, 20.0), 62.4 * 16.018_463 * inertia(24.0, 16.0));
    let (along, open_along) = (740.0 * inertia(20.0, 30.0), 62.4 * 16.018_463 * inertia(16.0, 24.0));
    float(&text, |float| {
        for (name, moment, fore_and_aft) in [
            ("half", slack, along),
            ("nearly", slack, along),
            ("pressed", 0.0, 0.0),
            ("full", 0.0, 0.0),
            ("well", open, open_along),
            ("both", slack + open, along + open_along),
        ] {
            let loaded = float.loadings.iter().find(|loaded| loaded.name == name).expect("a loading");
            let state = loaded.judged().expect("a state");
            let found = state.free_surface.transverse.si() * state.total.mass.si();
            assert!((found - moment).abs() < 1e-4 * moment.max(1.0), "{name}: {found} and not {moment}");
            let found = state.free_surface.longitudinal.si() * state.total.mass.si();
            assert!((found - fore_and_aft).abs() < 1e-4 * fore_and_aft.max(1.0), "{name}: {found}");
            let gm = state.floating().expect("afloat").gm_transverse - state.free_surface.transverse;
            assert!((state.gm().expect("afloat") - gm).si().abs() < 1e-12);
        }
    });
}

/// 20 US gallons of 231 in³ of gasoline at 740 kg/m³, half of them, 4 ft forward and 8 in up.
#[test]
fn a_tank_weighs_what_it_holds_so_full() {
    float(&manned(2, FUEL), |float| {
        let of = |name: &str| {
            let loaded = float.loadings.iter().find(|loaded| loaded.name == name).expect("a loading");
            let entries = &loaded.judged().expect("a state").entries;
            entries.iter().find(|entry| entry.name == "fuel tank").map(|entry| entry.weight)
        };
        let full = 20.0 * 231.0 * INCH.powi(3) * 740.0;
        assert_eq!(of("light"), None);
        for (name, part) in [("at the mooring", 0.5), ("crew at their stations", 1.0)] {
            let weight = of(name).expect("fuel");
            assert!((weight.mass.si() - part * full).abs() < 1e-6 * full, "{name}: {:?}", weight.mass);
            assert!((weight.centre.x - 48.0 * INCH).abs() < 1e-9 && (weight.centre.z - 8.0 * INCH).abs() < 1e-9);
        }
    });
}

/// Half of the 36 in from keel to the highest sheer, and 38 hundredths of her length: 16 ft 9 in from the transom's foot, and
/// its top, 25 in up, leans 12 degrees aft. What is taken is taken of her own measures, and said.
#[test]
fn the_bare_boats_centre_is_taken_from_her_own_height_and_length() {
    let boat = |told: &str| {
        let whole = r#"boat: (weight: "900 lb", forward: "7 ft", above: "14 in")"#;
        skiff(300.0, 0.0, &ledger(20.0).replace(whole, &format!("boat: (weight: \"900 lb\"{told})")))
    };
    let of_length = 0.38 * (201.0 + 25.0 * 12_f64.to_radians().tan());
    for (told, forward, above, said) in [
        ("", of_length, 18.0, [true, true]),
        (r#", forward: "7 ft""#, 84.0, 18.0, [false, true]),
        (r#", above: "14 in""#, of_length, 14.0, [true, false]),
        (r#", forward: "7 ft", above: "14 in""#, 84.0, 14.0, [false, false]),
    ] {
        float(&boat(told), |float| {
            let centre = float.bare.weight.centre;
            assert!((centre.x / INCH - forward).abs() < 1e-6, "{told}: {} in forward", centre.x / INCH);
            assert!((centre.z / INCH - above).abs() < 1e-6, "{told}: {} in up", centre.z / INCH);
            let words: Vec<String> = float.assumed.iter().map(|text| text.show(Units::Us)).collect();
            let tells = |what: &str| words.iter().any(|text| text.contains(what));
            let taken = ["centre is taken 78-3/8 in forward of the transom", "centre is taken 18 in above the bottom"];
            assert_eq!(taken.map(tells), said, "{told}: {words:#?}");
        });
    }
}
