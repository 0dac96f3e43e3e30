//! Files are written whole or not at all, and never over anything that this program did not write.

use base64::Engine;
use image::{ImageFormat, RgbImage};
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

/// A picture of this kind, half as high as wide, its left half black and its right half white.
fn picture(wide: u32, format: ImageFormat) -> Vec<u8> {
    let picture = RgbImage::from_fn(wide, wide / 2, |x, _| image::Rgb([if x < wide / 2 { 0 } else { 255 }; 3]));
    let mut bytes = std::io::Cursor::new(Vec::new());
    picture.write_to(&mut bytes, format).expect("encoded");
    bytes.into_inner()
}

/// The JPEG with what a camera writes before the picture: that it was held on its right side (Exif 2.32, tag 0x0112, value 6), and
/// a word that stands for the place.
fn as_a_camera_writes(jpeg: &[u8]) -> Vec<u8> {
    let mut exif = b"Exif\0\0MM\0\x2a\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0".to_vec();
    exif.extend(b"54 degrees north");
    let length = (exif.len() as u16 + 2).to_be_bytes();
    [&jpeg[..2], &[0xff, 0xe1], &length, &exif, &jpeg[2..]].concat()
}

fn with_photograph(file: &str) -> String {
    format!("(title: \"t\", sitting: as_fitted, photographs: [(file: \"{file}\", caption: \"the stern\")])")
}

#[test]
fn photographs_go_in_on_request_only() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::create_dir(folder.path().join("pictures")).expect("a folder");
    fs::write(folder.path().join("pictures/a.png"), picture(40, ImageFormat::Png)).expect("written");
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
fn a_photograph_is_turned_upright_made_smaller_and_loses_its_place() {
    let folder = tempfile::tempdir().expect("a folder");
    let taken = as_a_camera_writes(&picture(4000, ImageFormat::Jpeg));
    fs::write(folder.path().join("a.jpg"), &taken).expect("written");
    let job = folder.path().join("job.ron");
    fs::write(&job, with_photograph("a.jpg")).expect("written");
    let out = folder.path().join("report.html");
    let shown = |more: &[&str]| {
        sternknee().arg("check").arg(&job).arg("--html").arg(&out).arg("--photographs").args(more).assert().code(0);
        let page = fs::read_to_string(&out).expect("a page");
        let lead = "data:image/jpeg;base64,";
        let start = page.find(lead).expect("a picture") + lead.len();
        let text = &page[start..start + page[start..].find('"').expect("an end")];
        base64::engine::general_purpose::STANDARD.decode(text).expect("base64")
    };
    let made = shown(&[]);
    assert!(!made.windows(16).any(|words| words == b"54 degrees north"));
    let picture = image::load_from_memory(&made).expect("a picture").into_rgb8();
    assert_eq!(picture.dimensions(), (800, 1600));
    assert!(picture.get_pixel(400, 100)[0] < 20 && picture.get_pixel(400, 1500)[0] > 235, "what was left is on top");
    assert!(made.len() < taken.len());
    assert_eq!(shown(&["--as-taken"]), taken);
}

#[test]
fn a_photograph_stands_beside_the_finding_it_names() {
    let folder = tempfile::tempdir().expect("a folder");
    let job = folder.path().join("job.ron");
    let text = "(title: \"t\", sitting: as_fitted, photographs: [(file: \"a.png\", caption: \"the edge\", finding: \"fit/top-edge\")])";
    fs::write(&job, text).expect("written");
    let out = folder.path().join("report.html");
    sternknee().arg("check").arg(&job).arg("--html").arg(&out).assert().code(0);
    let page = fs::read_to_string(&out).expect("a page");
    let start = page.find("data-rule=\"fit/top-edge\"").expect("the finding");
    let article = &page[start..start + page[start..].find("</article>").expect("its end")];
    assert!(article.contains("the edge"), "{article}");
    assert!(!page.contains("id=\"photographs\""));
}

#[test]
fn a_photograph_names_a_check_that_there_is() {
    let folder = tempfile::tempdir().expect("a folder");
    let job = folder.path().join("job.ron");
    let text = "(title: \"t\", sitting: as_fitted, photographs: [(file: \"a.png\", finding: \"fit/top-egde\")])";
    fs::write(&job, text).expect("written");
    let out = folder.path().join("report.html");
    let refused = sternknee().arg("check").arg(&job).arg("--html").arg(&out).assert().code(2);
    let words = said(&refused.get_output().stderr);
    assert!(words.contains("photographs[0].finding") && words.contains("fit/top-egde"), "{words}");
}

#[test]
fn a_photograph_that_cannot_go_in_is_told_at_its_place() {
    let folder = tempfile::tempdir().expect("a folder");
    let job = folder.path().join("job.ron");
    let out = folder.path().join("report.html");
    fs::write(folder.path().join("words.png"), "no picture").expect("written");
    let whole = picture(40, ImageFormat::Png);
    fs::write(folder.path().join("broken.png"), &whole[..whole.len() / 2]).expect("written");
    fs::write(folder.path().join("large.png"), [whole, vec![0; 41 << 20]].concat()).expect("written");
    for (file, expected) in [
        ("nowhere.png", "cannot be read"),
        ("words.png", "neither a PNG nor a JPEG"),
        ("large.png", "larger than 40 MB"),
        ("broken.png", "cannot be read as a picture"),
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
