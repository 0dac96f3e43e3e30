//! Nothing that stands in a job becomes part of the page's own markup, style or script.

use scraper::{Html, Selector};
use sternknee::report;

use super::{page, stamp, sternknee, with_report};

/// Words that try to break out of an element, an attribute, a style sheet, a drawing, a formula, a comment.
const HOSTILE: [&str; 7] = [
    "</title></style></head><script>steal()</script>",
    "\\\" onmouseover=steal() x=\\\"",
    "</svg></math></td></table></details><img src=x onerror=steal()>",
    "<!-- --><![CDATA[<script>steal()</script>]]>",
    "\\\"}body{background:url(//steal)}@import \\\"//steal\\\";",
    "&lt;script&gt;steal()&lt;/script&gt; &#60;script>",
    "<a href='javascript:steal()'>steal</a><iframe srcdoc='<script>steal()</script>'>",
];

/// A job in which every field that takes words holds the same ones.
fn job(words: &str) -> String {
    format!(
        r#"(
            title: "{words}", date: "{words}", by: "{words}", for_whom: "{words}", notes: "{words}",
            sitting: as_fitted,
            boat: (name: "{words}", craft: monohull, bottom: vee, length: "18 ft", beam: "7 ft 6 in",
                transom_width: (value: "6 ft 10 in", basis: assumed, note: "{words}"), deadrise: "17 deg",
                transom_rating: (value: "520 lb", basis: builder, note: "{words}")),
            transom: (height: (value: "20-3/8 in", note: "{words}"), angle: "14 deg",
                heights: [(at: port("22 in"), height: (value: "15 in", note: "{words}"))],
                cutout_width: (value: "30 in", basis: assumed, note: "{words}"),
                holes: [(at: port("7 in"), below: (value: "2 in", note: "{words}"), diameter: "1/2 in")]),
            engines_on: [(described: (
                    power: (value: "115 hp", note: "{words}"), cylinders: "{words}", running_weight: "400 lb",
                    shafts: [(name: "20 in", rest_to_plate: "20-1/2 in")], hole_rows: 4,
                ), shaft: "20 in", at: [centre],
                bracket: (described: (setback: (value: "6 in", note: "{words}"), drop: "0 in", weight: "20 lb")))],
            comes_off: [(what: "{words}", weight: (value: "20 lb", note: "{words}"), on_transom: true)],
            goes_on: [(what: "{words}", weight: "20 lb", on_transom: true)],
            planned: (from: "{words}", power: (value: "90 hp", note: "{words}")),
            photographs: [(file: "transom.jpg", caption: "{words}")],
        )"#
    )
}

/// What a parser of the HTML standard makes of the page, checked for anything that is not ours.
fn nothing_of_it_is_markup(page: &str, what: &str) {
    let document = Html::parse_document(page);
    let count = |selector: &str| document.select(&Selector::parse(selector).expect("a selector")).count();
    for foreign in [
        "script",
        "iframe",
        "img",
        "object",
        "embed",
        "base",
        "form",
        "link:not([rel=icon])",
        "[onmouseover]",
        "[onerror]",
        "[srcdoc]",
        ":not(svg *)[x]",
        "a:not([href^='#'])",
    ] {
        assert_eq!(count(foreign), 0, "{what}: {foreign}");
    }
    assert_eq!(count("style"), 1, "{what}");
    assert_eq!(count("title:not(svg title)"), 1, "{what}");
    assert_eq!(count("html"), 1, "{what}");
    assert_eq!(count("body"), 1, "{what}");
    let style = document
        .select(&Selector::parse("style").expect("a selector"))
        .next()
        .map(|style| style.text().collect::<String>())
        .unwrap_or_default();
    assert!(!style.contains("steal") || style.contains("content:\""), "{what}");
    for piece in ["url(", "@import", "</", "<!--"] {
        assert!(!style.contains(piece), "{what}: {piece} in the style sheet");
    }
}

#[test]
fn every_field_of_a_job_is_shown_as_words_and_nothing_else() {
    for words in HOSTILE {
        let text = job(words);
        let whole = page(&text);
        nothing_of_it_is_markup(&whole, words);
        let document = Html::parse_document(&whole);
        let shown: String = document.root_element().text().collect();
        let plain = words.replace("\\\"", "\"");
        assert!(shown.matches(&plain).count() >= 12, "{words} is not shown");
        with_report(&text, |report| {
            let parts = report.case.weights();
            let working = report::work_page(report.case.rig.title(), "weights", &parts, &[], report.units, &stamp());
            nothing_of_it_is_markup(&working, words);
            let sheet = report::measuring_sheet(report.case.rig.title(), report.judged);
            nothing_of_it_is_markup(&sheet, words);
            for (name, drawing) in report::drawing_files(report) {
                roxmltree::Document::parse(&drawing).unwrap_or_else(|error| panic!("{name} with {words}: {error}"));
                assert!(!drawing.contains("<script"), "{name}");
            }
        });
    }
}

#[test]
fn signs_that_turn_or_control_the_words_after_them_are_taken_out() {
    let page = page("(title: \"a\u{202e}b\u{7}c\u{0085}d\", sitting: study)");
    for sign in ['\u{202e}', '\u{7}', '\u{85}', '\0'] {
        assert!(!page.contains(sign), "{sign:?}");
    }
}

#[test]
fn a_name_of_a_file_is_words_too() {
    let folder = tempfile::tempdir().expect("a folder");
    let job = folder.path().join("a&b<c>.ron");
    std::fs::write(&job, "(sitting: study)").expect("written");
    let out = folder.path().join("out.html");
    sternknee().arg("check").arg(&job).arg("--html").arg(&out).assert().success();
    let page = std::fs::read_to_string(&out).expect("a page");
    assert!(page.contains("a&amp;b&lt;c&gt;.ron"));
}

/// The string that the running head of a sheet with this title is in its style.
fn running_head(title: &str) -> String {
    let sheet = report::measuring_sheet(title, &[]);
    let (_, rest) = sheet.split_once("@top-left{content:").expect("a running head");
    let (string, _) = rest.split_once(";font:").expect("its end");
    assert!(string.len() > 1 && string.starts_with('"') && string.ends_with('"'), "{string}");
    string[1..string.len() - 1].to_owned()
}

#[test]
fn nothing_ends_a_string_of_the_style_sheet() {
    let inner = running_head("</style><script>\"\\'\n}");
    assert!(!inner.contains(['"', '<', '>', '\n', '}', '\'']));
    assert!(inner.starts_with("Measuring sheet\\00003a  \\00003c \\00002f style\\00003e "), "{inner}");
}

/// What a browser makes of it: up to six digits are a number, and one blank behind them belongs to it.
#[test]
fn no_blank_is_lost_behind_a_sign_written_by_its_number() {
    let head = running_head("a - b, c");
    let mut rest = head.as_str();
    let mut shown = String::new();
    while let Some((before, number)) = rest.split_once('\\') {
        shown.push_str(before);
        let (digits, after) = number.split_at(6);
        shown.extend(char::from_u32(u32::from_str_radix(digits, 16).expect("six digits")));
        rest = after.strip_prefix(' ').unwrap_or(after);
    }
    assert_eq!(shown + rest, "Measuring sheet: a - b, c");
}
