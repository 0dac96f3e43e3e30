//! `catalog` and `--catalog`.

use std::path::Path;

use crate::{project, same_as_kept, shown, sternknee};

fn call(folder: &Path, arguments: &[&str]) -> std::process::Output {
    sternknee(folder).args(arguments).output().unwrap()
}

/// A folder of a catalog with this text in it, and a job beside it.
fn folder(catalog: &str, job: &str) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    std::fs::create_dir(folder.path().join("own")).unwrap();
    std::fs::write(folder.path().join("own/own.ron"), catalog).unwrap();
    std::fs::write(folder.path().join("job.ron"), job).unwrap();
    folder
}

#[test]
fn the_catalog_is_listed() {
    let output = call(&project(), &["catalog"]);
    same_as_kept("catalog", "sternknee catalog", &shown(&output));
}

#[test]
fn an_entry_of_each_sort_is_shown() {
    for name in ["four-stroke 150 hp inline-4", "box bracket 30 in, twin", "1/2-13", "Douglas-fir marine plywood"] {
        let output = call(&project(), &["catalog", "show", name]);
        assert_eq!(output.status.code(), Some(0));
        let plain: String = name.chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' }).collect();
        let about = format!("sternknee catalog show \"{name}\"");
        same_as_kept(&format!("catalog-show-{plain}"), &about, &shown(&output));
    }
    let output = call(&project(), &["catalog", "show", "four-stroke 155"]);
    same_as_kept("catalog-show-unknown", "an entry that is not there", &shown(&output));
}

#[test]
fn the_built_in_folders_are_sound() {
    for folder in ["catalogs", "catalogs/engines", "catalogs/tables"] {
        let output = call(&project(), &["catalog", "check", folder]);
        assert_eq!(output.status.code(), Some(0), "{}", shown(&output));
        assert!(String::from_utf8_lossy(&output.stdout).contains("sound"));
    }
}

/// A cowl that at full tilt stands lower than it is high when down, on a tube that turns it by 75 deg: no cowl.
#[test]
fn a_class_that_its_own_sheet_contradicts_is_refused() {
    let sound = std::fs::read_to_string(project().join("catalogs/engines/four_stroke_below_75_hp.ron")).unwrap();
    let told = "forward_at_full_tilt: \"14 in\", height_at_full_tilt: \"15-1/2 in\"";
    assert!(sound.contains(told));
    let folder =
        folder(&sound.replacen(told, "forward_at_full_tilt: \"14 in\", height_at_full_tilt: \"1 in\"", 1), "()");
    let output = call(folder.path(), &["catalog", "check", "own"]);
    assert_eq!(output.status.code(), Some(2), "{}", shown(&output));
    same_as_kept("catalog-check-misfit", "a class whose cowl cannot be as its sheet has it", &shown(&output));
}

#[test]
fn there_are_as_many_classes_as_a_yard_needs() {
    let catalog = sternknee::catalog::Catalog::built_in().unwrap();
    assert!(catalog.engines.len() >= 30, "{}", catalog.engines.len());
    assert!(catalog.brackets.len() >= 8, "{}", catalog.brackets.len());
}

const MINE: &str = "(engines: [(name: \"mine\", spec: (power: \"80 hp\", running_weight: \"350 lb\"))])";
const JOB: &str = "(sitting: study, plate: builders(power: \"90 hp\"), engines_on: [(class: \"mine\")])";

#[test]
fn a_folder_adds_to_the_catalog() {
    let folder = folder(MINE, JOB);
    let without = call(folder.path(), &["check", "job.ron"]);
    assert_eq!(without.status.code(), Some(2));
    let with = call(folder.path(), &["check", "job.ron", "--catalog", "own"]);
    assert_eq!(with.status.code(), Some(0), "{}", shown(&with));
    let report = String::from_utf8_lossy(&with.stdout).into_owned();
    assert!(report.contains("80 hp of the 90 hp"), "{report}");
    let listed = call(folder.path(), &["catalog", "--catalog", "own"]);
    assert!(String::from_utf8_lossy(&listed.stdout).contains("mine"));
}

#[test]
fn an_entry_of_the_same_name_takes_its_place() {
    let name = "four-stroke 150 hp inline-4";
    // Its power is near what its name says: anything else is a slip, and told.
    let mine = MINE.replace("mine", name).replace("80 hp", "145 hp");
    let folder = folder(&mine, &JOB.replace("mine", name));
    let report = |arguments: &[&str]| {
        let output = call(folder.path(), arguments);
        String::from_utf8(output.stdout).unwrap()
    };
    assert!(report(&["check", "job.ron"]).contains("make 150 hp"));
    assert!(report(&["check", "job.ron", "--catalog", "own"]).contains("make 145 hp"));
    let listed = report(&["catalog", "--catalog", "own"]);
    assert_eq!(listed.matches(name).count(), 1);
}

/// Figures that no part has are faults at their place, and a file that is no text hides none of the others.
#[test]
fn figures_that_no_part_has_are_told_beside_a_file_that_is_no_text() {
    let faulty = "(\n engines: [\n  (name: \"four-stroke 150 hp\", spec: (power: \"150 kW\", running_weight: \"500 lb\")),\n  \
        (name: \"heavy\", spec: (power: \"10 hp\", running_weight: \"1,100 lb\")),\n ],\n \
        bolt_sizes: [(name: \"s\", spec: (diameter: \"1/2 in\", pitch: \"2 mm\", stress_area: \"-0.14 in²\", nut_height: \"1/2 in\", \
        washer_thickness: \"1/8 in\", washer_diameter: \"2 in\", source: \"x\"))],\n \
        materials: [(name: \"m\", spec: (density: \"500 kg/m³\", modulus_along: \"-10 GPa\", modulus_across: \"5 GPa\", shear_modulus: \"1 GPa\", \
        transverse_shear_modulus: \"1 GPa\", bending_strength: \"-30 MPa\", shear_strength: \"3 MPa\", crushing_strength: \"3 MPa\", \
        bearing_strength: \"20 MPa\", source: \"x\"))],\n \
        power_capacity: (citation: \"x\", edition: \"y\", steps: [(factor_to: 35, power: \"-5 hp\")], steps_end: NaN),\n)\n";
    let folder = folder(faulty, JOB);
    std::fs::write(folder.path().join("own/picture.ron"), [0x89, 0x50, 0xff, 0xfe]).unwrap();
    std::fs::write(folder.path().join("own/third.ron"), "(engines: [(name: \"x\", spec: (powr: 3))])").unwrap();
    let checked = shown(&call(folder.path(), &["catalog", "check", "own"]));
    for entry in [
        "engines[0].spec.power",
        "engines[1].spec.running_weight",
        "bolt_sizes[0].spec.stress_area",
        "materials[0].spec.modulus_along",
        "materials[0].spec.bending_strength",
        "power_capacity.steps[0].power",
        "power_capacity.steps_end",
        "not UTF-8 text",
        "powr",
    ] {
        assert!(checked.contains(entry), "{entry}: {checked}");
    }
}

/// Faults of a catalog are told as a job's are: all of them, each at its place, exit 2.
#[test]
fn a_faulty_catalog_is_told_whole() {
    let faulty = "(\n  engines: [\n    (name: \"a\", spec: (powr: \"80 hp\")),\n    \
        (name: \"b\", spec: (power: \"80 hp\", running_weight: \"35 hp\")),\n    \
        (name: \"b\", spec: (power: \"900 hp\")),\n    (name: \"\", spec: ()),\n  ],\n  \
        brackets: [(name: \"c\", spec: (setback: \"-3 in\", kind: shelf))],\n)\n";
    let folder = folder(faulty, JOB);
    std::fs::write(folder.path().join("own/second.ron"), "(engines: 3)").unwrap();
    let checked = call(folder.path(), &["catalog", "check", "own"]);
    same_as_kept("catalog-check-faulty", "sternknee catalog check own", &shown(&checked));
    let used = call(folder.path(), &["check", "job.ron", "--catalog", "own"]);
    assert_eq!(used.status.code(), Some(2));
    assert_eq!(used.stderr, checked.stderr);
}

#[test]
fn tables_that_do_not_rise_are_told() {
    let folder = folder(
        "(power_capacity: (citation: \"x\", edition: \"y\", steps_end: 52.5, steps: [\n  \
         (factor_to: 39, power: \"5 hp\"),\n  (factor_to: 35, power: \"3 hp\")]))",
        JOB,
    );
    let output = call(folder.path(), &["catalog", "check", "own"]);
    same_as_kept("catalog-check-table", "a table that does not rise", &shown(&output));
}

/// What is checked is what is used: sub-folders too, but not jobs, hidden folders, or links that lead back up.
#[test]
fn folders_inside_the_folder_are_read() {
    let folder = folder("(engines: [(name: \"outer\", spec: (power: \"80 hp\"))])", JOB);
    for (inner, text) in
        [("deep/er", "(engines: [(name: \"inner\", spec: (power: \"9 hp\"))])"), ("jobs", JOB), (".kept", "no catalog")]
    {
        let inner = folder.path().join("own").join(inner);
        std::fs::create_dir_all(&inner).unwrap();
        std::fs::write(inner.join("one.ron"), text).unwrap();
    }
    #[cfg(unix)]
    std::os::unix::fs::symlink("..", folder.path().join("own/deep/up")).unwrap();
    let checked = call(folder.path(), &["catalog", "check", "own"]);
    assert_eq!(checked.status.code(), Some(0), "{}", shown(&checked));
    let told = String::from_utf8_lossy(&checked.stdout).into_owned();
    assert_eq!(told.lines().count(), 2, "{told}");
    let listed = call(folder.path(), &["catalog", "--catalog", "own"]);
    let listed = String::from_utf8_lossy(&listed.stdout).into_owned();
    assert!(listed.contains("outer") && listed.contains("inner"));
}

#[test]
fn folders_without_a_catalog_are_told() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::create_dir(folder.path().join("bare")).unwrap();
    let bare = call(folder.path(), &["catalog", "check", "bare"]);
    same_as_kept("catalog-check-empty", "a folder without a catalog file", &shown(&bare));
    let missing = call(folder.path(), &["catalog", "check", "nowhere"]);
    same_as_kept("catalog-check-missing", "a folder that is not there", &shown(&missing));
}
