//! Every page in a real browser, where there is one. Without Chromium, Node and the packages of
//! `tests/browser/package-lock.json` the checks are skipped, and say so; `tests/browser/run.sh` installs
//! all of it and lets nothing be skipped.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Command;

const HERE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/browser");

/// What is missing of the tools.
fn missing() -> Vec<&'static str> {
    let runs = |program: &str, argument: &str| Command::new(program).arg(argument).output().is_ok();
    let mut missing = Vec::new();
    if !runs("node", "--version") {
        missing.push("node");
    }
    if !Path::new("/usr/bin/chromium").exists() && std::env::var_os("CHROMIUM").is_none() {
        missing.push("chromium");
    }
    if !runs("pdftotext", "-v") {
        missing.push("pdftotext");
    }
    if !runs("xmllint", "--version") {
        missing.push("xmllint");
    }
    if !Path::new(HERE).join("node_modules/puppeteer-core").exists() {
        missing.push("tests/browser/node_modules");
    }
    missing
}

/// Whether the tools are there and wanted; where they must be there and are not, the test fails.
/// `STERNKNEE_BROWSER` says so: `required`, or `no` where the check is run on its own.
fn equipped(what: &str) -> bool {
    let wish = std::env::var("STERNKNEE_BROWSER").unwrap_or_default();
    let missing = missing();
    let why = if wish == "no" {
        "not wanted in this run".to_owned()
    } else if missing.is_empty() {
        return true;
    } else {
        format!("no {}", missing.join(", "))
    };
    assert!(wish != "required", "{what}: {why}");
    // Written past the test harness, which keeps what a passing test prints to itself.
    let said = writeln!(std::io::stderr(), "skipped: {what}: {why} (tests/browser/run.sh installs all and checks)");
    said.expect("a standard error");
    false
}

fn run(command: &mut Command) -> String {
    let output = command.output().unwrap_or_else(|error| panic!("{command:?}: {error}"));
    String::from_utf8_lossy(&output.stdout).into_owned() + &String::from_utf8_lossy(&output.stderr)
}

/// Writes every kind of page of every demo into the folder, and the drawings beside them.
fn write_pages(folder: &Path) {
    let program = assert_cmd::cargo::cargo_bin("sternknee");
    let jobs = concat!(env!("CARGO_MANIFEST_DIR"), "/catalogs/jobs");
    let demos = std::fs::read_dir(jobs).expect("the demos");
    for entry in demos {
        let job = entry.expect("a demo").path();
        if job.extension().is_none_or(|extension| extension != "ron") {
            continue;
        }
        let name = job.file_stem().expect("a name").to_string_lossy().into_owned();
        let page = |kind: &str| folder.join(format!("{name}{kind}.html"));
        for (units, kind) in [("us", ""), ("both", "-both")] {
            run(Command::new(&program).args(["check", "--units", units, "--html"]).args([page(kind), job.clone()]));
        }
        run(Command::new(&program).args(["tape", "--html"]).args([page("-tape"), job.clone()]));
        for topic in ["weights", "float", "swing", "strength"] {
            let out = page(&format!("-work-{topic}"));
            run(Command::new(&program).arg("work").arg(&job).arg(topic).arg("--html").arg(out));
        }
        run(Command::new(&program).args(["check", "--drawings"]).args([folder.join(&name), job.clone()]));
        assert!(page("").exists() && page("-tape").exists(), "{name}");
    }
    for sitting in ["before-ordering", "as-fitted"] {
        let job = folder.join(format!("{sitting}.ron"));
        run(Command::new(&program)
            .args(["start", "--for", sitting, "--sheet"])
            .args([folder.join(format!("blank-{sitting}.html")), job]));
    }
}

/// What makes the first sheet look as it does: style, heading and answer.
fn first_sheet(page: &str) -> String {
    let document = scraper::Html::parse_document(page);
    let parts = ["style", "body > header", "main > .first"].map(|words| {
        let selector = scraper::Selector::parse(words).expect("a selector");
        document.select(&selector).next().unwrap_or_else(|| panic!("no {words}")).html()
    });
    parts.concat()
}

/// The picture in README is made by `picture.sh`, which keeps beside it what it was made of, as a hash.
#[test]
fn the_picture_in_the_readme_is_of_the_present_first_sheet() {
    use sha2::{Digest, Sha256};
    let folder = tempfile::tempdir().expect("a folder");
    let page = folder.path().join("page.html");
    let job = concat!(env!("CARGO_MANIFEST_DIR"), "/catalogs/jobs/oyster_skiff.ron");
    run(Command::new(assert_cmd::cargo::cargo_bin("sternknee")).args(["check", job, "--html"]).arg(&page));
    let page = std::fs::read_to_string(&page).expect("a page");
    let hash: String = Sha256::digest(first_sheet(&page)).iter().map(|byte| format!("{byte:02x}")).collect();
    let kept = Path::new(HERE).join("first_sheet.sha256");
    if std::env::var_os("RENEW").is_some() {
        std::fs::write(&kept, format!("{hash}\n")).expect("written");
    }
    let known = std::fs::read_to_string(&kept).unwrap_or_default();
    assert_eq!(known.trim(), hash, "the first sheet has changed: tests/browser/picture.sh makes its picture anew");
    let readme = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/README.md")).expect("README");
    assert!(readme.contains("(tests/browser/first_sheet.png)"), "README shows no picture");
}

fn files(folder: &Path, extension: &str) -> Vec<PathBuf> {
    let mut all = Vec::new();
    for entry in std::fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            all.extend(files(&path, extension));
        } else if path.extension().is_some_and(|e| e == extension) {
            all.push(path);
        }
    }
    all.sort();
    all
}

#[test]
fn every_page_opens_reads_prints_and_can_be_used_by_everyone() {
    if !equipped("pages in a browser") {
        return;
    }
    let folder = tempfile::tempdir().expect("a folder");
    write_pages(folder.path());
    let mut check = Command::new("node");
    check.arg(Path::new(HERE).join("check.mjs")).arg(folder.path());
    if let Some(pictures) = std::env::var_os("STERNKNEE_PICTURES") {
        check.arg(pictures);
    }
    let said = run(&mut check);
    println!("{said}");
    assert!(said.contains(" 0 complaints"), "{said}");

    // The pages against the standard of HTML, the drawings against that of XML.
    let pages = files(folder.path(), "html");
    let said = run(Command::new("node")
        .arg(Path::new(HERE).join("node_modules/html-validate/bin/html-validate.mjs"))
        .arg("--config")
        .arg(Path::new(HERE).join("html-validate.json"))
        .args(&pages));
    assert!(!said.contains("error"), "{said}");
    println!("{} pages are valid HTML", pages.len());
    let drawings = files(folder.path(), "svg");
    assert!(drawings.len() >= 10);
    let said = run(Command::new("xmllint").args(["--noout", "--nonet"]).args(&drawings));
    assert!(said.trim().is_empty(), "{said}");
    println!("{} drawings are well-formed", drawings.len());
}
