//! A box afloat, of which every figure is had by hand: what `work float` tells of her in tables and lines.

use std::sync::{Arc, LazyLock};

use sternknee::catalog::Catalog;
use sternknee::front_door;
use sternknee::quantity::Units;
use sternknee::working::{Line, Part, Table};

static CATALOG: LazyLock<Catalog> = LazyLock::new(|| Catalog::built_in().expect("the built-in catalog is sound"));

/// A box of 4 m × 2 m × 1 m, keel on the baseline, as a binary file of triangles.
fn barge() -> Vec<u8> {
    let corner = |i: usize| {
        let pick = |bit: usize, low: f32, high: f32| if i & bit == 0 { low } else { high };
        [pick(1, 0.0, 4.0), pick(2, -1.0, 1.0), pick(4, 0.0, 1.0)]
    };
    let quads: [[usize; 4]; 6] = [[0, 2, 3, 1], [4, 5, 7, 6], [0, 1, 5, 4], [2, 6, 7, 3], [0, 4, 6, 2], [1, 3, 7, 5]];
    let triangles: Vec<[usize; 3]> = quads.iter().flat_map(|&[a, b, c, d]| [[a, b, c], [a, c, d]]).collect();
    let mut bytes = vec![b' '; 80];
    bytes.extend((triangles.len() as u32).to_le_bytes());
    for triangle in triangles {
        bytes.extend([0; 12]);
        bytes.extend(triangle.iter().flat_map(|i| corner(*i)).flat_map(f32::to_le_bytes));
        bytes.extend([0; 2]);
    }
    bytes
}

/// What `work float` tells of her with 2 t at this height, so far to port, in water of 1,000 kg/m³.
fn parts(above: &str, port: &str) -> Vec<Part> {
    let text = format!(
        r#"(sitting: study, hull: mesh(file: "barge.stl", unit: "1 m"),
        weights: (boat: (weight: "2,000 kg", forward: "2 m", across: port("{port}"), above: "{above}")),
        afloat: (water: density("1000 kg/m³")))"#
    );
    let opened = front_door::open("job.ron", &text, &CATALOG, |_| Ok(Arc::from(barge())));
    let opened = opened.unwrap_or_else(|faults| panic!("{faults}"));
    opened.case().float_parts()
}

fn table<'p>(parts: &'p [Part], title: &str) -> &'p Table {
    let mut tables = parts.iter().flat_map(|part| &part.tables);
    tables.find(|table| table.title.starts_with(title)).unwrap_or_else(|| panic!("no {title}"))
}

/// The figures of a table, row by row; of a cell that has none, nothing.
fn figures(table: &Table) -> Vec<Vec<Option<f64>>> {
    let figure = |cell: String| cell.split(' ').next().and_then(|number| number.replace(',', "").parse().ok());
    table.rows.iter().map(|row| row.iter().map(|cell| figure(cell.show(Units::Si))).collect()).collect()
}

/// What a sheet gives this symbol, in coherent SI units.
fn step(part: &Part, wanted: &str) -> f64 {
    let mut lines = part.sheet.lines().iter();
    let found = lines.find_map(|line| match line {
        Line::Step { symbol, result, .. } if symbol == wanted => Some(result.si),
        _ => None,
    });
    found.unwrap_or_else(|| panic!("no step {wanted}"))
}

#[track_caller]
fn near(found: Option<f64>, expected: f64, tolerance: f64) {
    let found = found.expect("a figure");
    assert!((found - expected).abs() <= tolerance, "{found} is not {expected} ± {tolerance}");
}

const GRAVITY: f64 = 9.806_65;

/// Of a box KB = T / 2, BM = B² / 12 T and L² / 12 T, a metre of draft takes ρ L B; a degree of trim W g GM_L tan 1° (any text on
/// ship stability).
#[test]
fn the_hydrostatics_of_a_box_are_told_draft_by_draft() {
    let parts = parts("0.5 m", "0 mm");
    let (buoyancy, plane) = (figures(table(&parts, "buoyancy")), figures(table(&parts, "water plane")));
    assert_eq!([buoyancy.len(), plane.len()], [9; 2]);
    for (i, (buoyancy, plane)) in buoyancy.iter().zip(&plane).enumerate() {
        let draft = 0.1 * (i + 1) as f64;
        let (kb, bm, bm_long) = (0.5 * draft, 4.0 / 12.0 / draft, 16.0 / 12.0 / draft);
        let by_hand = [draft, 8.0 * draft, 2.0, kb, bm, kb + bm].map(|metres| 1e3 * metres);
        for (told, by_hand) in buoyancy.iter().zip(by_hand) {
            near(*told, by_hand, 0.06);
        }
        let moment = 8000.0 * draft * GRAVITY * (kb + bm_long - 0.5) * 1_f64.to_radians().tan();
        for (told, by_hand) in plane.iter().zip([1e3 * draft, 8.0, 2000.0, 1e3 * bm_long, 80.0, moment]) {
            near(*told, by_hand, 5e-4 * by_hand);
        }
    }
}

/// 2 t draw a quarter of a metre: GM = 1/8 + 4/3 − 1/2 m for heel and 1/8 + 16/3 − 1/2 m for trim.
#[test]
fn the_formulas_of_a_box_afloat_are_told_with_their_numbers() {
    let parts = parts("0.5 m", "0 mm");
    let loading = parts.iter().find(|part| part.title == "as given").expect("a loading");
    let by_hand = [
        ("∇", 2.0),
        ("BM", 4.0 / 3.0),
        ("GM", 0.125 + 4.0 / 3.0 - 0.5),
        ("ρ·Aw", 8000.0),
        ("GML", 0.125 + 16.0 / 3.0 - 0.5),
        ("M1", 2000.0 * GRAVITY * (0.125 + 16.0 / 3.0 - 0.5) * 1_f64.to_radians().tan()),
    ];
    for (symbol, by_hand) in by_hand {
        near(Some(step(loading, symbol)), by_hand, 1e-9 * by_hand);
    }
    let lies = table(&parts, "how she lies");
    let told = |name: &str| {
        let row = lies.rows.iter().position(|row| row[0].show(Units::Si) == name).expect("a row");
        figures(lies)[row][1]
    };
    for (name, by_hand) in [
        ("sinkage of the origin", 250.0),
        ("trim, bow up", 0.0),
        ("heel, to starboard", 0.0),
        ("water plane: normal z", 1.0),
        ("displaced mass", 2000.0),
        ("displaced volume", 2000.0),
        ("centre of gravity x", 2000.0),
        ("centre of gravity z", 500.0),
        ("centre of buoyancy x", 2000.0),
        ("centre of buoyancy y", 0.0),
        ("centre of buoyancy z", 125.0),
        ("centre of flotation x", 2000.0),
        ("centre of flotation z", 250.0),
        ("water plane area", 8.0),
        ("GM without free surface", 958.3),
        ("GM for trim", 4958.3),
        ("least GM about any axis", 958.3),
        ("free surface for heel", 0.0),
    ] {
        near(told(name), by_hand, 0.06);
    }
}

/// As long as her sides alone cut the water, a box's righting arm is sin φ (GM + ½ BM tan² φ), less y cos φ where her centre
/// stands off the middle (the wall-sided formula; any text on ship stability); her bottom comes out at 14 degrees here.
#[test]
fn righting_arms_of_a_box_follow_the_wall_sided_formula_on_the_worse_side() {
    for (above, port, off) in [("0.5 m", "0 mm", 0.0), ("0.5 m", "30 mm", 0.03), ("0.8 m", "50 mm", 0.05)] {
        let height: f64 = above.trim_end_matches(" m").parse().expect("metres");
        let (bm, gm) = (4.0 / 3.0, 0.125 + 4.0 / 3.0 - height);
        let parts = parts(above, port);
        let arms = figures(table(&parts, "righting arms"));
        let heels: Vec<f64> = arms.iter().filter_map(|row| row[0]).collect();
        assert_eq!(heels, [0.0, 5.0, 10.0, 15.0, 20.0, 30.0, 40.0, 50.0, 60.0]);
        for row in &arms[..3] {
            let (sin, cos) = row[0].expect("a heel").to_radians().sin_cos();
            let by_hand = sin * (gm + 0.5 * bm * (sin / cos).powi(2)) - off * cos;
            near(row[1], 1e3 * by_hand, 0.06);
        }
        let loading = parts.iter().find(|part| part.title == "as given").expect("a loading");
        let side = if off > 0.0 { "heeled to port" } else { "heeled to starboard" };
        assert!(loading.sheet.lines().iter().any(|line| line.show(Units::Si).contains(side)), "{side}");
        // At rest there is no arm: tan φ (GM + ½ BM tan² φ) = y.
        let heel = figures(table(&parts, "side by side"))[4][1].expect("a heel").abs().to_radians();
        let rest = heel.tan() * (gm + 0.5 * bm * heel.tan().powi(2));
        assert!((rest - off).abs() < 0.0012, "{rest} {off}");
    }
}
