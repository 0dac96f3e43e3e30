//! What the command says of hulls from files, good and bad.

use std::path::Path;

use assert_cmd::Command;
use serde_json::Value;

type Corner = [f32; 3];

/// A box of 4 m × 2 m × 1 m from this height up, as the triangles of a binary file.
fn box_at(z: f32) -> Vec<[Corner; 3]> {
    let corner = |i: usize| {
        let pick = |bit: usize, low: f32, high: f32| if i & bit == 0 { low } else { high };
        [pick(1, 0.0, 4.0), pick(2, -1.0, 1.0), pick(4, z, z + 1.0)]
    };
    let quads: [[usize; 4]; 6] = [[0, 2, 3, 1], [4, 5, 7, 6], [0, 1, 5, 4], [2, 6, 7, 3], [0, 4, 6, 2], [1, 3, 7, 5]];
    quads.iter().flat_map(|&[a, b, c, d]| [[a, b, c], [a, c, d]]).map(|triangle| triangle.map(corner)).collect()
}

fn write(path: &Path, triangles: &[[Corner; 3]]) {
    let mut bytes = vec![b' '; 80];
    bytes.extend((triangles.len() as u32).to_le_bytes());
    for triangle in triangles {
        bytes.extend([0; 12]);
        for value in triangle.iter().flatten() {
            bytes.extend(value.to_le_bytes());
        }
        bytes.extend([0; 2]);
    }
    std::fs::write(path, bytes).unwrap();
}

/// Exit code, standard output and standard error of a command on a study of this mesh.
fn study(triangles: Option<&[[Corner; 3]]>, mass: &str, verb: &[&str]) -> (i32, String, String) {
    let folder = tempfile::tempdir().unwrap();
    if let Some(triangles) = triangles {
        write(&folder.path().join("hull.stl"), triangles);
    }
    let job = folder.path().join("job.ron");
    let text = format!(
        r#"(sitting: study, hull: mesh(file: "hull.stl", unit: "1 m"),
    weights: (boat: (weight: "{mass}", forward: "2.1 m", across: port("50 mm"), above: "0.5 m")),
    afloat: (water: density("1000 kg/m³")))"#
    );
    std::fs::write(&job, text).unwrap();
    let output = Command::cargo_bin("sternknee").unwrap().arg(verb[0]).arg(&job).args(&verb[1..]).output().unwrap();
    let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).unwrap();
    (output.status.code().unwrap(), text(&output.stdout), text(&output.stderr))
}

/// The value of a row of a table of a whole working.
fn value(parts: &Value, name: &str) -> f64 {
    for part in parts.as_array().unwrap() {
        for table in part["tables"].as_array().unwrap() {
            for row in table["rows"].as_array().unwrap() {
                if row[0] == name && row[1]["value"].is_number() {
                    return row[1]["value"].as_f64().unwrap();
                }
            }
        }
    }
    panic!("no row `{name}`")
}

/// A box of 4 m × 2 m at 2 t in fresh water: draft 0.25 m, GM = T/2 + B²/(12 T) − KG; the small list
/// and trim follow from its centre by the wall-sided formulas, which a box obeys exactly.
#[test]
fn a_study_of_mesh_mass_and_centre_gives_the_equilibrium_to_full_precision() {
    let shape = box_at(0.0);
    for verb in [
        &["work", "float", "--format", "json", "--units", "si"][..],
        &["check", "--format", "json", "--units", "si"][..],
    ] {
        let (code, out, err) = study(Some(&shape), "2,000 kg", verb);
        assert_eq!(code, 0, "{err}");
        let json: Value = serde_json::from_str(&out).unwrap();
        let parts = if json["parts"].is_array() { &json["parts"] } else { &json["float"] };
        let of = |name: &str| value(parts, name);
        let (nx, ny, nz) = (of("water plane: normal x"), of("water plane: normal y"), of("water plane: normal z"));
        assert!((nx * nx + ny * ny + nz * nz - 1.0).abs() < 1e-14);
        // The displaced volume under a plane that cuts only the sides: area times the depth at its middle.
        let depth = (of("water plane: offset") / 1000.0 - nx * 2.0) / nz;
        assert!((depth - 0.25).abs() < 1e-12, "{depth}");
        // Wall-sided: the centre of buoyancy moves by I/V times the slope of the plane.
        let (slope_x, slope_y) = (nx / nz, ny / nz);
        let (bx, by) = (of("centre of buoyancy x") / 1000.0, of("centre of buoyancy y") / 1000.0);
        let (il, it) = (4f64.powi(2) / 12.0 / 0.25, 2f64.powi(2) / 12.0 / 0.25);
        assert!((bx - (2.0 - il * slope_x)).abs() < 1e-12, "{bx}");
        assert!((by - (0.0 - it * slope_y)).abs() < 1e-12, "{by}");
        // And it lies plumb under the centre of gravity.
        let bz = of("centre of buoyancy z") / 1000.0;
        assert!(((2.1 - bx) * nz - (0.5 - bz) * nx).abs() < 1e-12);
        assert!(((0.05 - by) * nz - (0.5 - bz) * ny).abs() < 1e-12);
    }
}

#[test]
fn a_study_answers_in_words_under_answers() {
    let (code, out, _) = study(Some(&box_at(0.0)), "2,000 kg", &["check", "--units", "si"]);
    assert_eq!(code, 0);
    let answers = out.split("ANSWERS").nth(1).unwrap();
    for word in ["2,000 kg", "centre of buoyancy", "GM is"] {
        assert!(answers.contains(word), "{word} in {out}");
    }
}

#[test]
fn an_open_hull_is_told_with_the_place_of_its_hole() {
    let shape = box_at(0.0);
    let (code, _, err) = study(Some(&shape[..11]), "2,000 kg", &["check"]);
    assert_eq!(code, 2);
    assert!(err.contains("the surface is open: 3 edge(s)"), "{err}");
    assert!(err.contains("hull.file") && err.contains("job.ron:1"), "{err}");
}

#[test]
fn a_hull_that_is_inside_out_is_told() {
    let turned: Vec<_> = box_at(0.0).iter().map(|&[a, b, c]| [a, c, b]).collect();
    let (code, _, err) = study(Some(&turned), "2,000 kg", &["check"]);
    assert_eq!(code, 2);
    assert!(err.contains("inside out"), "{err}");
}

#[test]
fn a_hull_that_is_not_there_is_told() {
    let (code, _, err) = study(None, "2,000 kg", &["check"]);
    assert_eq!(code, 2);
    assert!(err.contains("cannot be read") && err.contains("hull.file"), "{err}");
}

#[test]
fn a_boat_heavier_than_her_whole_hull_carries_sinks_and_says_so() {
    let (code, out, _) = study(Some(&box_at(0.0)), "9,000 kg", &["check", "--units", "si"]);
    assert_eq!(code, 1);
    assert!(out.contains("she sinks: 9,000 kg is more than the 8,000 kg"), "{out}");
}

#[test]
fn a_mesh_below_its_own_baseline_is_told_to_be_upside_down() {
    let (_, out, _) = study(Some(&box_at(-1.0)), "2,000 kg", &["check", "--all"]);
    let words = out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(words.contains("it may be upside down"), "{out}");
}

#[test]
fn a_section_written_from_the_sheer_down_is_told_to_be_upside_down() {
    let folder = tempfile::tempdir().unwrap();
    let job = folder.path().join("job.ron");
    std::fs::write(
        &job,
        r#"(hull: tape(sections: [
            (forward: "0 in", keel: "25 in", chine: (out: "32 in", up: "18 in"), sheer: (out: "37 in", up: "0 in")),
            (forward: "10 ft", keel: "0 in", chine: (out: "32 in", up: "7 in"), sheer: (out: "37 in", up: "25 in")),
        ]))"#,
    )
    .unwrap();
    let output = Command::cargo_bin("sternknee").unwrap().arg("check").arg(&job).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    let err = String::from_utf8(output.stderr).unwrap();
    assert!(err.contains("upside down") && err.contains("hull.sections[0]"), "{err}");
}

fn demo(name: &str, verb: &[&str]) -> (i32, String) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("catalogs/jobs").join(name);
    let output = Command::cargo_bin("sternknee").unwrap().arg(verb[0]).arg(path).args(&verb[1..]).output().unwrap();
    (output.status.code().unwrap(), String::from_utf8(output.stdout).unwrap())
}

#[test]
fn five_sections_and_three_freeboards_tell_what_she_weighs_and_where() {
    let (code, out) = demo("creek_boat.ron", &["check"]);
    assert_eq!(code, 0);
    assert!(out.contains("she weighs 1,235 lb"), "{out}");
    let (_, out) = demo("creek_boat.ron", &["work", "float", "--format", "json"]);
    let json: Value = serde_json::from_str(&out).unwrap();
    let weight = value(&json["parts"], "displacement");
    assert!((weight - 1235.0).abs() < 1.0, "{weight}");
}

#[test]
fn the_skiff_says_how_much_lower_whether_the_edge_is_high_enough_and_what_puts_her_back() {
    let (_, out) = demo("oyster_skiff.ron", &["check", "--format", "json"]);
    let report: Value = serde_json::from_str(&out).unwrap();
    let of = |id: &str| {
        let findings = report["findings"].as_array().unwrap();
        let finding = findings.iter().find(|finding| finding["rule"] == id).unwrap();
        format!("{} {}", finding["summary"], finding["remedy"])
    };
    let trim = of("stern/trim-change");
    assert!(trim.contains("her transom sits") && trim.contains("in lower"), "{trim}");
    // The pair trims her by more than ballast or lighter engines of that class make good.
    assert!(trim.contains("gives the trim back: lighter engines or less setback would"), "{trim}");
    let edge = of("stern/well-edge");
    assert!(edge.contains("live well full, crew at the stern"), "{edge}");
    let old_to_new = of("weight/old-to-new");
    assert!(old_to_new.contains("She is floated with both: see “trim change”"), "{old_to_new}");
}
