//! The drawings are to scale: dimensions measured in the SVG equal the job's numbers.

use sternknee::job::Sitting;
use sternknee::report;
use sternknee::report::drawings::kit::lettering::Rect;

use super::common::{CATALOG, near};
use super::{DEMOS, demo, with_report};

/// The drawings of a job, by file name.
fn drawings(job: &str) -> Vec<(String, String)> {
    with_report(job, report::drawing_files)
}

fn drawing(job: &str, name: &str) -> String {
    drawings(job).into_iter().find(|(file, _)| file == name).unwrap_or_else(|| panic!("no {name}")).1
}

fn number(node: roxmltree::Node, attribute: &str) -> f64 {
    node.attribute(attribute).and_then(|value| value.parse().ok()).unwrap_or_else(|| panic!("no number {attribute}"))
}

/// Length in millimetres of a dimension as it is drawn: from the first end of its line to the last,
/// whatever was broken out for its words, times the drawing's scale.
fn length(dimension: roxmltree::Node, scale: f64) -> f64 {
    let strokes: Vec<_> = dimension
        .descendants()
        .filter(|node| node.tag_name().name() == "line" && node.attribute("stroke-width") == Some("1"))
        .collect();
    let (first, last) = (strokes.first().expect("a line"), strokes.last().expect("a line"));
    let across = number(*last, "x2") - number(*first, "x1");
    let down = number(*last, "y2") - number(*first, "y1");
    across.hypot(down) * scale
}

fn dimensions<'a>(document: &'a roxmltree::Document) -> impl Iterator<Item = (&'a str, f64, roxmltree::Node<'a, 'a>)> {
    let scale = document
        .root_element()
        .attribute("data-mm-per-unit")
        .map_or(f64::NAN, |scale| scale.parse().expect("a number"));
    document.descendants().filter_map(move |node| Some((node.attribute("data-dimension")?, scale, node)))
}

fn measured(svg: &str, name: &str) -> f64 {
    let document = roxmltree::Document::parse(svg).expect("an SVG");
    dimensions(&document)
        .find(|(found, ..)| *found == name)
        .map(|(_, scale, node)| length(node, scale))
        .unwrap_or_else(|| panic!("no dimension {name}"))
}

/// A hundredth of a unit is rounded off at each end; at the scales of the demos that is a few hundredths
/// of a millimetre.
const ROUNDED_MM: f64 = 0.12;

#[track_caller]
fn measures(svg: &str, name: &str, millimetres: f64) {
    near(measured(svg, name), millimetres, ROUNDED_MM);
}

const INCH: f64 = 25.4;

#[test]
fn the_transom_is_drawn_to_the_jobs_numbers() {
    let svg = drawing(&demo("oyster_skiff"), "transom.svg");
    measures(&svg, "centre-distance", 28.0 * INCH);
    measures(&svg, "cutout-width", 34.0 * INCH);
    measures(&svg, "transom-width", 92.0 * INCH);
    measures(&svg, "chine-beam", 82.0 * INCH);
    measures(&svg, "transom-height", 25.25 * INCH);
    measures(&svg, "sweep", 30.0 * INCH);
    let svg = drawing(&demo("harbour_launch"), "transom.svg");
    measures(&svg, "centre-distance", 22.0 * INCH);
    measures(&svg, "cutout-width", 30.0 * INCH);
}

#[test]
fn the_side_views_are_drawn_to_the_jobs_numbers() {
    let svg = drawing(&demo("oyster_skiff"), "side-after.svg");
    measures(&svg, "transom-height", 25.25 * INCH);
    measures(&svg, "setback", 30.0 * INCH);
    // Four holes up on a transom that leans by 14°: 25.25 − (14 tan 21° − 2) / cos 14° − 25.5 + 3 inches, as
    // height/shaft-match works it out.
    let plate = 25.25 - (14.0 * 21f64.to_radians().tan() - 2.0) / 14f64.to_radians().cos() - 25.5 + 3.0;
    measures(&svg, "plate-above-bottom", plate.abs() * INCH);
    // The old engine, one hole up on the transom itself.
    let svg = drawing(&demo("oyster_skiff"), "side-before.svg");
    measures(&svg, "transom-height", 25.25 * INCH);
    measures(&svg, "plate-above-bottom", (25.25 - 25.625 + 0.75) * INCH);
    let svg = drawing(&demo("harbour_launch"), "side-after.svg");
    measures(&svg, "transom-height", 20.375 * INCH);
    measures(&svg, "plate-above-bottom", (20.375 - 20.5 + 3.0 * 0.75) * INCH);
}

#[test]
fn the_worst_swing_is_drawn_to_the_jobs_numbers() {
    let svg = drawing(&demo("oyster_skiff"), "swing-side.svg");
    measures(&svg, "transom-height", 25.25 * INCH);
    measures(&svg, "setback", 30.0 * INCH);
    let svg = drawing(&demo("oyster_skiff"), "swing-plan.svg");
    measures(&svg, "centre-distance", 28.0 * INCH);
    measures(&svg, "cutout-width", 34.0 * INCH);
}

#[test]
fn the_hull_is_drawn_to_the_jobs_numbers() {
    // Her tape lines: from the sheer of the raked transom, 35 in up at 14 degrees, to the stem 23 ft 2 in
    // forward; 4 ft up there, and 4 ft 3 in out at the widest.
    let svg = drawing(&demo("oyster_skiff"), "hull-profile.svg");
    measures(&svg, "length", (23.0 * 12.0 + 2.0 + 35.0 * 14f64.to_radians().tan()) * INCH);
    measures(&svg, "height", 48.0 * INCH);
    let svg = drawing(&demo("oyster_skiff"), "hull-sections.svg");
    measures(&svg, "beam", 102.0 * INCH);
    measures(&svg, "height", 48.0 * INCH);
}

#[test]
fn the_loads_and_the_panel_are_drawn_to_the_jobs_numbers() {
    let svg = drawing(&demo("oyster_skiff"), "free-body.svg");
    measures(&svg, "transom-height", 25.25 * INCH);
    // The bracket's setback, square to a transom of 14 degrees, taken level, and the engine's centre aft of its face.
    measures(&svg, "weight-aft", (30.0 / 14f64.to_radians().cos() + 13.0) * INCH);
    for name in ["panel-deflection.svg", "panel-stress.svg"] {
        let svg = drawing(&demo("oyster_skiff"), name);
        measures(&svg, "transom-height", 25.25 * INCH);
        measures(&svg, "cutout-width", 34.0 * INCH);
        measures(&svg, "transom-width", 92.0 * INCH);
    }
}

/// Drawings with tests of their own above and below; a new one wants two of the job's numbers measured.
const MEASURED: [&str; 21] = [
    "free-body.svg",
    "hull-profile.svg",
    "hull-sections.svg",
    "margins.svg",
    "panel-deflection.svg",
    "panel-stress.svg",
    "rigging.svg",
    "righting-arms.svg",
    "running-economy.svg",
    "running-fuel.svg",
    "running-range.svg",
    "running-slip.svg",
    "running-speed.svg",
    "running-thrust.svg",
    "running-trim.svg",
    "side-after.svg",
    "side-before.svg",
    "swing-plan.svg",
    "swing-side.svg",
    "transom.svg",
    "worth-seasons.svg",
];

#[test]
fn every_kind_of_drawing_is_made_and_measured() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/catalogs/jobs");
    let jobs = std::fs::read_dir(folder).expect("the demos").count();
    assert_eq!(jobs, DEMOS.len(), "a demo is left out");
    let mut made: Vec<String> = DEMOS.iter().flat_map(|name| drawings(&demo(name))).map(|(file, _)| file).collect();
    made.sort();
    made.dedup();
    assert_eq!(made, MEASURED);
}

/// Words of the schematic stand in lines under their symbols, each in its own part of the row, and none is cut.
#[test]
fn no_label_of_the_schematic_is_cut() {
    for name in DEMOS {
        for (_, svg) in drawings(&demo(name)).into_iter().filter(|(file, _)| file == "rigging.svg") {
            assert!(!svg.contains('…'), "{name}");
            let document = roxmltree::Document::parse(&svg).expect("an SVG");
            let texts = document.descendants().filter(|node| node.has_tag_name("text"));
            assert!(texts.count() > 6, "{name}");
        }
    }
}

#[test]
fn every_dimension_of_every_drawing_is_as_long_as_what_it_measures_wide_and_narrow() {
    for name in DEMOS {
        let page = super::page(&demo(name));
        let mut seen = 0;
        for svg in page.split("<svg ").skip(1) {
            let svg = format!("<svg {}</svg>", svg.split("</svg>").next().unwrap_or_default());
            let document = roxmltree::Document::parse(&svg).expect("an SVG");
            for (_, scale, node) in dimensions(&document) {
                near(length(node, scale), number(node, "data-mm"), 0.015 * scale);
                seen += 1;
            }
        }
        assert!(seen >= 4, "{name}: {seen} dimensions");
    }
}

#[test]
fn righting_arms_stand_at_their_heights() {
    let svg = drawing(&demo("oyster_skiff"), "righting-arms.svg");
    let document = roxmltree::Document::parse(&svg).expect("an SVG");
    let mut curves = 0;
    for curve in document.descendants().filter(|node| node.has_attribute("data-curve")) {
        let scale = number(curve, "data-mm-per-unit");
        let arms: Vec<f64> = curve
            .attribute("data-arms-mm")
            .expect("arms")
            .split(' ')
            .map(|arm| arm.parse().expect("a number"))
            .collect();
        let heights: Vec<f64> = curve
            .attribute("points")
            .expect("points")
            .split(' ')
            .map(|point| point.split(',').nth(1).and_then(|y| y.parse().ok()).expect("a height"))
            .collect();
        assert_eq!(arms.len(), heights.len());
        for (arm, height) in arms.iter().zip(&heights) {
            near((heights[0] - height) * scale, arm - arms[0], 2.0 * 0.01 * scale + 0.01);
        }
        curves += 1;
    }
    assert_eq!(curves, 2);
}

#[test]
fn scale_bars_are_as_long_as_they_say() {
    for name in DEMOS {
        for (file, svg) in drawings(&demo(name)) {
            let document = roxmltree::Document::parse(&svg).expect("an SVG");
            let Some(scale) = document.root_element().attribute("data-mm-per-unit") else {
                continue;
            };
            let scale: f64 = scale.parse().expect("a number");
            let bar = document
                .descendants()
                .find(|node| node.has_attribute("data-scale-bar"))
                .unwrap_or_else(|| panic!("{name} {file}: no scale bar"));
            let drawn =
                bar.children().find(|node| node.has_tag_name(("http://www.w3.org/2000/svg", "rect"))).expect("a bar");
            near(number(drawn, "width") * scale, number(bar, "data-scale-bar"), 0.05 * scale);
        }
    }
}

#[test]
fn the_bars_of_the_margins_are_as_long_as_their_findings_use_of_their_limits() {
    let svg = drawing(&demo("oyster_skiff"), "margins.svg");
    let document = roxmltree::Document::parse(&svg).expect("an SVG");
    let bars: Vec<(&str, f64, f64)> = document
        .descendants()
        .filter_map(|node| {
            let rule = node.attribute("data-rule")?;
            node.attribute("data-share")?;
            let bar = node.children().find(|child| child.attribute("height") == Some("8"))?;
            Some((rule, number(node, "data-share"), number(bar, "width")))
        })
        .collect();
    let bar =
        |wanted: &str| *bars.iter().find(|(rule, ..)| *rule == wanted).unwrap_or_else(|| panic!("no bar {wanted}"));
    let (_, rating, rating_wide) = bar("weight/transom-rating");
    let (_, plate, plate_wide) = bar("power/plate-limit");
    near(plate, 1.0, 1e-3);
    // 1,216 lb on 1,150 lb.
    near(rating, 1216.0 / 1150.0, 1e-3);
    near(rating_wide / plate_wide, rating / plate, 1e-3);
}

#[test]
fn a_drawing_that_lacks_its_readings_is_not_made() {
    let files = drawings("(title: \"nothing\", sitting: study)");
    assert!(files.is_empty(), "{files:?}");
}

/// Two numbers are kept apart as two pieces of lettering are.
#[test]
fn no_number_of_the_whole_list_stands_on_another() {
    let sheet = report::blank_sheet(Sitting::BeforeOrdering, &CATALOG);
    let from = sheet.find("<svg role=\"img\" aria-labelledby=\"drawing-places-title\"").expect("a sketch");
    let sketch = sheet[from..].split_inclusive("</svg>").next().expect("its end");
    let document = roxmltree::Document::parse(sketch).expect("an SVG");
    let view: Vec<f64> = document
        .root_element()
        .attribute("viewBox")
        .expect("a paper")
        .split(' ')
        .map(|size| size.parse().expect("a number"))
        .collect();
    let mut boxes: Vec<Rect> = Vec::new();
    for badge in document.descendants().filter(|node| node.attribute("rx") == Some("11")) {
        let (left, top) = (number(badge, "x"), number(badge, "y"));
        let rect = Rect { left, top, right: left + number(badge, "width"), bottom: top + number(badge, "height") };
        assert!(!boxes.iter().any(|other| rect.overlaps(other)), "{rect:?}");
        assert!(rect.left >= 0.0 && rect.right <= view[2] && rect.bottom <= view[3], "{rect:?}");
        boxes.push(rect);
    }
    assert!(boxes.len() > 20);
}
