//! Files are written whole or not at all, and never over anything that this program did not write.

use std::fs;

use super::{demo, sternknee};

/// What a command said.
fn said(output: &[u8]) -> String {
    String::from_utf8_lossy(output).into_owned()
}

#[test]
fn a_page_is_written_over_an_own_page_and_over_nothing_else() {
    let folder = tempfile::tempdir().expect("a folder");
    let job = folder.path().join("job.ron");
    fs::write(&job, demo("tiller_skiff")).expect("written");
    let out = folder.path().join("report.html");
    for _ in 0..2 {
        sternknee().arg("check").arg(&job).arg("--html").arg(&out).assert().code(0);
    }
    // A slip of the hand must not cost the job.
    let refused = sternknee().arg("check").arg(&job).arg("--html").arg(&job).assert().code(2);
    assert!(said(&refused.get_output().stderr).contains("not a file that this program wrote"));
    assert_eq!(fs::read_to_string(&job).expect("the job"), demo("tiller_skiff"));
    // Nothing is left lying about.
    assert_eq!(fs::read_dir(folder.path()).expect("a folder").count(), 2);
}

#[test]
fn a_faulty_job_writes_no_page() {
    let folder = tempfile::tempdir().expect("a folder");
    let job = folder.path().join("job.ron");
    fs::write(&job, "(boat: (beam: \"-3 ft\"))").expect("written");
    let out = folder.path().join("report.html");
    sternknee().arg("check").arg(&job).arg("--html").arg(&out).assert().code(2);
    assert!(!out.exists());
}

#[test]
fn a_page_names_the_hash_of_its_job_and_its_catalogs() {
    use sha2::{Digest, Sha256};
    let folder = tempfile::tempdir().expect("a folder");
    let job = folder.path().join("job.ron");
    fs::write(&job, demo("oyster_skiff")).expect("written");
    let out = folder.path().join("report.html");
    sternknee().arg("check").arg(&job).arg("--html").arg(&out).assert().code(1);
    let page = fs::read_to_string(&out).expect("a page");
    let hash: String =
        Sha256::digest(fs::read(&job).expect("the job")).iter().map(|byte| format!("{byte:02x}")).collect();
    assert!(page.contains(&hash));
    assert!(page.contains("built in, SHA-256 "));
    assert!(page.contains(concat!("sternknee ", env!("CARGO_PKG_VERSION"))));
}

#[test]
fn drawings_are_files_of_their_own() {
    let folder = tempfile::tempdir().expect("a folder");
    let job = folder.path().join("job.ron");
    fs::write(&job, demo("oyster_skiff")).expect("written");
    let out = folder.path().join("drawings");
    for _ in 0..2 {
        sternknee().arg("check").arg(&job).arg("--drawings").arg(&out).assert().code(1);
    }
    for name in ["margins.svg", "transom.svg", "side-before.svg", "side-after.svg"] {
        let text = fs::read_to_string(out.join(name)).expect(name);
        let document = roxmltree::Document::parse(&text).expect(name);
        assert_eq!(document.root_element().tag_name().namespace(), Some("http://www.w3.org/2000/svg"));
    }
    fs::write(out.join("margins.svg"), "<svg/>").expect("written");
    sternknee().arg("check").arg(&job).arg("--drawings").arg(&out).assert().code(2);
}

/// The least picture of each kind that tells itself by its first bytes.
const PNG: &[u8] = b"\x89PNG\r\n\x1a\n rest";

fn with_photograph(file: &str) -> String {
    format!("(title: \"t\", sitting: as_fitted, photographs: [(file: \"{file}\", caption: \"the stern\")])")
}

#[test]
fn photographs_go_in_on_request_only() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::create_dir(folder.path().join("pictures")).expect("a folder");
    fs::write(folder.path().join("pictures/a.png"), PNG).expect("written");
    let job = folder.path().join("job.ron");
    fs::write(&job, with_photograph("pictures/a.png")).expect("written");
    let out = folder.path().join("report.html");
    let run = |more: &[&str]| {
        sternknee().arg("check").arg(&job).arg("--html").arg(&out).args(more).assert().code(0);
        fs::read_to_string(&out).expect("a page")
    };
    let named = run(&[]);
    assert!(!named.contains("<img") && named.contains("the stern") && named.contains("pictures/a.png"));
    let embedded = run(&["--photographs"]);
    assert!(embedded.contains("<img src=\"data:image/png;base64,") && embedded.contains("alt=\"the stern\""));
}

#[test]
fn a_photograph_that_cannot_go_in_is_told_at_its_place() {
    let folder = tempfile::tempdir().expect("a folder");
    let job = folder.path().join("job.ron");
    let out = folder.path().join("report.html");
    fs::write(folder.path().join("words.png"), "no picture").expect("written");
    fs::write(folder.path().join("large.png"), [PNG, &vec![0; 4 << 20]].concat()).expect("written");
    for (file, expected) in [
        ("nowhere.png", "cannot be read"),
        ("words.png", "neither a PNG nor a JPEG"),
        ("large.png", "larger than 3 MB"),
        ("../secret.png", "leads out of the job's folder"),
        ("/etc/secret.png", "leads out of the job's folder"),
        ("drawing.svg", "neither a .png nor a .jpg"),
        ("", "a photograph without a file"),
    ] {
        fs::write(&job, with_photograph(file)).expect("written");
        let refused = sternknee().arg("check").arg(&job).arg("--html").arg(&out).arg("--photographs").assert().code(2);
        let words = said(&refused.get_output().stderr);
        let flat = words.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains(expected), "{file}: {words}");
        assert!(words.contains("photographs[0]"), "{file}: {words}");
        assert!(!out.exists(), "{file}");
    }
}
