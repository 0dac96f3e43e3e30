//! What the pages say, kept as text; and that they are what a page must be.

use scraper::{Html, Node, Selector};
use sternknee::job::Sitting;
use sternknee::report;

use super::{DEMOS, common, demo, page, stamp, with_report};

/// Elements that end a line.
const BLOCKS: [&str; 22] = [
    "p",
    "h1",
    "h2",
    "h3",
    "h4",
    "li",
    "tr",
    "caption",
    "summary",
    "dt",
    "dd",
    "figcaption",
    "text",
    "title",
    "desc",
    "section",
    "article",
    "div",
    "ul",
    "table",
    "footer",
    "header",
];

/// The page as a reader reads it, a block a line; cells apart.
fn text_of(page: &str) -> String {
    let document = Html::parse_document(page);
    let body = Selector::parse("body").expect("a selector");
    let mut out = String::new();
    for node in document.select(&body).next().expect("a body").traverse() {
        use ego_tree::iter::Edge;
        match node {
            Edge::Open(node) => {
                if let Node::Text(words) = node.value() {
                    out.push_str(words);
                }
            }
            Edge::Close(node) => {
                if let Node::Element(element) = node.value() {
                    match element.name() {
                        "td" | "th" => out.push_str(" | "),
                        name if BLOCKS.contains(&name) => out.push('\n'),
                        _ => {}
                    }
                }
            }
        }
    }
    let lines: Vec<String> = out
        .lines()
        .map(|line| line.split_whitespace().collect::<Vec<_>>().join(" "))
        .filter(|line| !line.is_empty())
        .collect();
    lines.join("\n")
}

fn kept(name: &str, page: &str) {
    insta::with_settings!({ snapshot_path => "../../snapshots", prepend_module_to_snapshot => false, omit_expression => true }, {
        insta::assert_snapshot!(name, text_of(page));
    });
}

#[test]
fn the_pages_of_the_demos_say_what_is_kept() {
    for name in DEMOS {
        kept(&format!("page-{name}"), &page(&demo(name)));
    }
}

#[test]
fn the_measuring_sheets_say_what_is_kept() {
    with_report(&demo("tiller_skiff"), |report| {
        kept("page-tape-tiller_skiff", &report::measuring_sheet(report.case.rig.title(), report.judged));
    });
    kept("page-tape-blank", &report::blank_sheet(Sitting::BeforeOrdering, &common::CATALOG));
}

#[test]
fn the_typeset_working_says_what_is_kept() {
    with_report(&demo("oyster_skiff"), |report| {
        let parts = report.case.weights();
        let page = report::work_page(report.case.rig.title(), "weights", &parts, &[], report.units, &stamp());
        kept("page-work-weights", &page);
    });
}

#[test]
fn the_answer_comes_first_then_what_stops_it_then_what_is_next() {
    let text = text_of(&page(&demo("oyster_skiff")));
    // What the contents name stands last where it is told.
    let end = text.find("\nContents").expect("contents");
    let place = |words: &str| {
        let head = format!("\n{words}");
        let found = text[..end + 9].find(&head).or_else(|| text.rfind(&head));
        found.unwrap_or_else(|| panic!("no `{words}`"))
    };
    let order = [
        "No, not as written.",
        "What stops it",
        "Next: ",
        "To mind besides: ",
        "What was not seen",
        "Signature",
        "Contents",
        "Drawings",
        "Findings",
        "What fails",
        "What warns",
        "What passes",
        "Cautions",
        "Before and after",
        "Working",
        "Readings used",
        "Assumed",
        "Sources",
        "Words",
        "Who decides",
        "Made with",
    ];
    for pair in order.windows(2) {
        assert!(place(pair[0]) < place(pair[1]), "{} before {}", pair[0], pair[1]);
    }
}

#[test]
fn a_survey_sets_what_was_planned_beside_what_was_found_and_leaves_room_to_sign() {
    let text = text_of(&page(&demo("harbour_launch")));
    for words in [
        "Planned and fitted",
        "power of the main engines | 115 hp | 150 hp | 35 hp",
        "holes up | 1 | 3 | 2",
        "upper bolt holes below the top | 1-7/8 in | 1-5/8 in | -1/4 in",
        "Signature",
        "The program signs nothing",
        "Put right before she goes out again",
    ] {
        assert!(text.contains(words), "no `{words}` in\n{text}");
    }
}

#[test]
fn a_page_is_one_small_file_without_script() {
    for name in DEMOS {
        let page = page(&demo(name));
        assert!(page.len() < 600_000, "{name}: {} bytes", page.len());
        assert!(!page.contains("<script"), "{name}");
        let document = Html::parse_document(&page);
        for (what, attribute) in [("[src]", "src"), ("link", "href"), ("a", "href")] {
            for element in document.select(&Selector::parse(what).expect("a selector")) {
                let address = element.attr(attribute).unwrap_or_default();
                assert!(address.starts_with('#') || address.starts_with("data:"), "{name}: {address}");
            }
        }
    }
}

#[test]
fn every_link_leads_somewhere_and_no_name_is_given_twice() {
    for name in DEMOS {
        let page = page(&demo(name));
        let document = Html::parse_document(&page);
        let every = |selector: &str, attribute: &str| -> Vec<String> {
            document
                .select(&Selector::parse(selector).expect("a selector"))
                .filter_map(|element| element.attr(attribute).map(str::to_owned))
                .collect()
        };
        let mut ids = every("[id]", "id");
        for link in every("a", "href") {
            assert!(ids.contains(&link[1..].to_owned()), "{name}: {link}");
        }
        let count = ids.len();
        ids.sort();
        ids.dedup();
        assert_eq!(ids.len(), count, "{name}: a name is given twice");
    }
}

#[test]
fn every_reading_of_a_job_is_on_its_page_with_basis_and_tolerance() {
    let text = text_of(&page(&demo("oyster_skiff")));
    for words in [
        "transom height at the centreline | 25-1/4 in ± 1/8 in | measured",
        "weight that the builder lets the transom carry | 1,150 lb | builder: letter from the builder",
        "overall length | 24 ft 3 in ± 1 in | measured",
        "shaft length | 25 in | measured",
        "rated power of the engine | 150 hp | catalog",
        "existing bolt holes 1 | off the centreline 6-7/16 in to port; below the top 1-7/8 in; diameter 1/2 in | measured",
    ] {
        assert!(text.contains(words), "no `{words}` in\n{text}");
    }
}
