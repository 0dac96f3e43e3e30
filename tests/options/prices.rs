//! The yard's price list.

use sternknee::options::{Offer, Prices};
use sternknee::quantity::{Dimensioned, inches};

use super::{demo, opened};
use crate::common::CATALOG;

const WITH_COMMAS: &str = "class,shaft,price\n\
    # engines\n\
    four-stroke 200 hp V6,25 in,\"21,400\"\n\
    four-stroke 200 hp V6,,22000\n\
    setback plate 6 in,,480\n";
const RON: &str = "(prices: [
    (class: \"four-stroke 200 hp V6\", shaft: \"25 in\", price: 21400),
    (class: \"four-stroke 200 hp V6\", price: 22000),
    (class: \"setback plate 6 in\", price: 480),
])";

#[test]
fn a_list_with_commas_and_one_in_ron_say_the_same() {
    for (name, text) in [("prices.csv", WITH_COMMAS), ("prices.ron", RON)] {
        let prices = Prices::read(name, text, &CATALOG).unwrap_or_else(|faults| panic!("{faults}"));
        assert_eq!(prices.of("four-stroke 200 hp V6", Some(inches(25.0))), Some(21_400.0), "{name}");
        assert_eq!(prices.of("four-stroke 200 hp V6", Some(inches(20.0))), Some(22_000.0), "{name}");
        assert_eq!(prices.of("setback plate 6 in", None), Some(480.0), "{name}");
        assert_eq!(prices.of("four-stroke 250 hp V6", None), None, "{name}");
    }
}

#[test]
fn only_what_stands_in_the_list_is_tried_and_a_pair_costs_twice() {
    let text = demo("oyster_skiff");
    let job = opened(&text);
    let yard = job.yard(&CATALOG);
    let prices = Prices::read("prices.csv", WITH_COMMAS, &CATALOG).expect("a sound list");
    let hangs = Offer { prices: Some(&prices), ..Offer::default() }.hangs(&yard);
    assert!(hangs.iter().all(|hang| hang.class == "four-stroke 200 hp V6"));
    assert!(hangs.iter().all(|hang| hang.bracket.as_deref().is_none_or(|name| name == "setback plate 6 in")));
    let price = |count: usize, bracket: Option<&str>| {
        let one = hangs.iter().find(|hang| {
            hang.count == count
                && hang.bracket.as_deref() == bracket
                && hang.shaft.is_some_and(|shaft| (shaft.si() - inches(25.0).si()).abs() < 1e-9)
        });
        one.and_then(|hang| hang.price)
    };
    assert_eq!(price(1, None), Some(21_400.0));
    assert_eq!(price(1, Some("setback plate 6 in")), Some(21_880.0));
    assert_eq!(price(2, None), Some(42_800.0));
}

#[test]
fn what_is_wrong_with_a_list_is_told_with_its_line() {
    for (text, line, what) in [
        ("class,shaft,price\nfour-stroke 200 hp V6,25 in,dear\n", 2, "is no price"),
        ("class,shaft,price\nfour-stroke 200 hp V6,25 lb,1\n", 2, "four-stroke 200 hp V6"),
        ("class,shaft,price\nfour-stroke 200 hp V6,25 in,1\nfour-strike 200,,2\n", 3, "no engine and no bracket"),
        ("class,price\nfour-stroke 200 hp V6,-3\n", 2, "no price can be"),
        ("name,price\nfour-stroke 200 hp V6,3\n", 2, "class"),
        ("class,shaft,price\n", 1, "no prices"),
        ("(prices: [(class: \"four-strike\", price: 1)])", 1, "no engine and no bracket"),
        ("(prices: [(class: \"four-stroke 200 hp V6\", cost: 1)])", 1, "cost"),
        ("", 1, "no prices"),
    ] {
        let faults = Prices::read("prices", text, &CATALOG).expect_err(text);
        let first = &faults.faults[0];
        assert_eq!(faults.place(first).0, line, "{text:?}: {faults}");
        assert!(faults.to_string().contains(what), "{text:?}: {faults}");
    }
}
