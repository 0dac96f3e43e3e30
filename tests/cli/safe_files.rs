//! Nothing that somebody would miss is lost to a report, nothing is waited for, and nothing that failed ends as if it had not.

use std::fs;
use std::os::unix::fs::{FileTypeExt, PermissionsExt, symlink};
use std::os::unix::net::UnixListener;
use std::path::Path;
use std::process::{Command, Output, Stdio};
use std::time::Duration;

use assert_cmd::cargo::cargo_bin;

use crate::{project, sternknee};

const DEMO: &str = "catalogs/jobs/tiller_skiff.ron";
/// Longer than any of these commands works; one that waits is ended then, without an exit code.
const PATIENCE: Duration = Duration::from_secs(60);

/// A folder with a job in it.
fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    fs::copy(project().join(DEMO), folder.path().join("job.ron")).unwrap();
    folder
}

fn run(folder: &Path, arguments: &[&str]) -> Output {
    sternknee(folder).args(arguments).timeout(PATIENCE).output().unwrap()
}

/// Refused: exit 2, and why, in one line of words.
#[track_caller]
fn refused(folder: &Path, arguments: &[&str], why: &str) {
    let output = run(folder, arguments);
    let said = String::from_utf8_lossy(&output.stderr);
    let words = said.split_whitespace().collect::<Vec<_>>().join(" ");
    assert_eq!(output.status.code(), Some(2), "{arguments:?}: {words}");
    assert!(words.contains(why), "{arguments:?}: {words}");
}

fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> =
        fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}

fn pipe(path: &Path) {
    assert!(Command::new("mkfifo").arg(path).status().unwrap().success());
}

/// Every way to name a file that is written.
const TARGETS: [&[&str]; 7] = [
    &["check", "job.ron", "--html"],
    &["tape", "job.ron", "--html"],
    &["tape", "job.ron", "--trial"],
    &["work", "job.ron", "weights", "--html"],
    &["start", "new.ron", "--sheet"],
    &["start"],
    #[cfg(feature = "desk")]
    &["desk", "job.ron", "--out"],
    #[cfg(not(feature = "desk"))]
    &["check", "job.ron", "--units", "si", "--html"],
];

#[test]
fn a_link_a_pipe_a_socket_a_device_and_a_folder_are_never_replaced() {
    let folder = folder();
    let at = |name: &str| folder.path().join(name);
    pipe(&at("pipe"));
    let _socket = UnixListener::bind(at("socket")).unwrap();
    symlink("/dev/null", at("link-to-device")).unwrap();
    symlink("nowhere", at("link-to-nothing")).unwrap();
    symlink("job.ron", at("link-to-job")).unwrap();
    fs::create_dir(at("folder")).unwrap();
    let mut nodes = vec!["pipe", "socket", "link-to-device", "link-to-nothing", "link-to-job", "folder"];
    // Whoever may make a device of their own tries that too: one that swallows whatever it gets.
    let made = Command::new("mknod").arg(at("device")).args(["c", "1", "3"]).stderr(Stdio::null()).status();
    if made.is_ok_and(|status| status.success()) {
        nodes.push("device");
    }
    let before = names(folder.path());
    let kinds = || nodes.iter().map(|name| fs::symlink_metadata(at(name)).unwrap().file_type()).collect::<Vec<_>>();
    let kinds_before = kinds();
    for node in &nodes {
        for target in TARGETS {
            refused(folder.path(), &[target, &[*node]].concat(), "no plain file; nothing was written");
        }
    }
    assert_eq!(names(folder.path()), before);
    assert_eq!(kinds(), kinds_before);
    assert!(fs::symlink_metadata("/dev/null").unwrap().file_type().is_char_device());
}

#[test]
fn what_this_program_did_not_write_or_somebody_altered_or_locked_stays_as_it_is() {
    let folder = folder();
    let at = |name: &str| folder.path().join(name);
    let page = ["check", "job.ron", "--html", "page.html"];
    assert_eq!(run(folder.path(), &page).status.code(), Some(0));
    let own = fs::read_to_string(at("page.html")).unwrap();
    // Its own it renews, also an empty one.
    assert_eq!(run(folder.path(), &page).status.code(), Some(0));
    fs::write(at("page.html"), "").unwrap();
    assert_eq!(run(folder.path(), &page).status.code(), Some(0));
    assert_eq!(fs::read_to_string(at("page.html")).unwrap(), own);
    let (altered, foreign) = ("was altered since this program wrote it", "not a file that this program wrote");
    // What says of itself that it is without being so.
    let unsealed: String = own.lines().filter(|line| !line.starts_with("<!-- written by")).collect();
    for (bytes, why) in [
        (own.replace("<main>", "<main><p>my own remark</p>").into_bytes(), altered),
        ((own.clone() + "\n").into_bytes(), altered),
        (b"<p>a letter</p>".to_vec(), foreign),
        (b"\xff\xfe".to_vec(), foreign),
        (unsealed.into_bytes(), foreign),
    ] {
        fs::write(at("page.html"), &bytes).unwrap();
        refused(folder.path(), &page, why);
        assert_eq!(fs::read(at("page.html")).unwrap(), bytes);
    }
    fs::write(at("page.html"), &own).unwrap();
    fs::set_permissions(at("page.html"), fs::Permissions::from_mode(0o444)).unwrap();
    refused(folder.path(), &page, "may only be read");
    assert_eq!(names(folder.path()), ["job.ron", "page.html"]);
}

#[test]
fn a_pipe_or_a_device_that_a_job_names_is_refused_and_not_waited_for() {
    let folder = folder();
    pipe(&folder.path().join("pipe.jpg"));
    pipe(&folder.path().join("pipe.stl"));
    pipe(&folder.path().join("pipe.csv"));
    let write = |text: &str| fs::write(folder.path().join("names.ron"), text).unwrap();
    write("(sitting: study, photographs: [(file: \"pipe.jpg\")])");
    refused(
        folder.path(),
        &["check", "names.ron", "--html", "x.html", "--photographs"],
        "a folder, a pipe or a device",
    );
    write("(hull: mesh(file: \"pipe.stl\", unit: \"1 mm\"))");
    refused(folder.path(), &["check", "names.ron"], "a folder, a pipe or a device");
    write("(trial: (before: (file: \"pipe.csv\")))");
    refused(folder.path(), &["check", "names.ron"], "a folder, a pipe or a device");
    write("(hull: mesh(file: \"/dev/zero\", unit: \"1 mm\"))");
    refused(folder.path(), &["check", "names.ron"], "outside the job's folder");
    // A catalog's folder is read file by file.
    fs::create_dir(folder.path().join("own")).unwrap();
    pipe(&folder.path().join("own/pipe.ron"));
    refused(folder.path(), &["check", "job.ron", "--catalog", "own"], "a pipe or a device");
}

#[test]
fn no_link_leads_out_of_the_jobs_folder() {
    let outside = tempfile::tempdir().unwrap();
    fs::write(outside.path().join("secret.jpg"), b"\xff\xd8\xff secret").unwrap();
    fs::write(outside.path().join("secret.stl"), "solid secret").unwrap();
    let folder = folder();
    let at = |name: &str| folder.path().join(name);
    symlink(outside.path().join("secret.jpg"), at("link.jpg")).unwrap();
    symlink(outside.path(), at("away")).unwrap();
    image::RgbImage::new(8, 8).save(at("own.jpg")).unwrap();
    symlink("own.jpg", at("inside.jpg")).unwrap();
    let embed = ["check", "names.ron", "--html", "x.html", "--photographs"];
    for name in ["link.jpg", "away/secret.jpg"] {
        fs::write(at("names.ron"), format!("(sitting: study, photographs: [(file: \"{name}\")])")).unwrap();
        refused(folder.path(), &embed, "outside the job's folder");
    }
    fs::write(at("names.ron"), "(hull: mesh(file: \"away/secret.stl\", unit: \"1 mm\"))").unwrap();
    refused(folder.path(), &["check", "names.ron"], "outside the job's folder");
    assert!(!at("x.html").exists());
    // One that stays inside is followed.
    fs::write(at("names.ron"), "(sitting: study, photographs: [(file: \"inside.jpg\")])").unwrap();
    assert_eq!(run(folder.path(), &embed).status.code(), Some(0));
}

#[test]
fn page_and_drawings_are_written_all_or_none() {
    let folder = folder();
    let at = |name: &str| folder.path().join(name);
    let both = ["check", "job.ron", "--html", "page.html", "--drawings", "drawn"];
    assert_eq!(run(folder.path(), &both).status.code(), Some(0));
    let written = names(&at("drawn"));
    assert!(written.len() > 3, "{written:?}");
    // The last of them is somebody's own.
    let last = at("drawn").join(written.last().unwrap());
    for name in &written {
        fs::remove_file(at("drawn").join(name)).unwrap();
    }
    fs::remove_file(at("page.html")).unwrap();
    fs::write(&last, "<svg/>").unwrap();
    refused(folder.path(), &both, "not a file that this program wrote");
    assert_eq!(names(&at("drawn")), [written.last().unwrap().as_str()]);
    assert!(!at("page.html").exists());
    // A page that is in the way leaves no empty folder behind.
    fs::write(at("page.html"), "mine").unwrap();
    refused(folder.path(), &["check", "job.ron", "--html", "page.html", "--drawings", "new/drawn"], "not a file");
    assert!(!at("new/drawn").exists());
}

/// The page is to stand where a drawing will: the drawing finds it there when the drawings before it are written.
#[test]
fn where_the_last_of_several_cannot_be_put_the_others_are_taken_back() {
    let folder = folder();
    let at = |name: &str| folder.path().join(name);
    let drawn = |units: &str| run(folder.path(), &["check", "job.ron", "--drawings", "drawn", "--units", units]);
    assert_eq!(drawn("us").status.code(), Some(0));
    let written = names(&at("drawn"));
    let read = || names(&at("drawn")).into_iter().map(|name| (fs::read(at("drawn").join(&name)).unwrap(), name));
    // One is new, one is in the way, and the others are renewed.
    let printed = String::from_utf8(drawn("us").stdout).unwrap();
    let order: Vec<&str> = printed
        .lines()
        .filter_map(|line| written.iter().find(|name| line.contains(*name)))
        .map(String::as_str)
        .collect();
    let (new, last) = (order[0], order[order.len() - 1]);
    for name in [new, last] {
        fs::remove_file(at("drawn").join(name)).unwrap();
    }
    let before: Vec<_> = read().collect();
    assert!(before.len() > 1, "{written:?}");
    let page = format!("drawn/{last}");
    refused(
        folder.path(),
        &["check", "job.ron", "--html", &page, "--drawings", "drawn", "--units", "si"],
        "is there already",
    );
    assert_eq!(read().collect::<Vec<_>>(), before);
    // They would have become others.
    assert_eq!(drawn("si").status.code(), Some(0));
    assert!(before.iter().any(|(bytes, name)| fs::read(at("drawn").join(name)).unwrap() != *bytes));
}

#[test]
fn a_job_is_not_begun_without_the_sheet_that_was_asked_for() {
    let folder = folder();
    fs::write(folder.path().join("sheet.html"), "mine").unwrap();
    refused(folder.path(), &["start", "new.ron", "--sheet", "sheet.html"], "not a file that this program wrote");
    refused(folder.path(), &["start", "new.ron", "--sheet", "no/such/folder.html"], "cannot be written");
    refused(folder.path(), &["start", "job.ron", "--sheet", "other.html"], "is there already");
    refused(folder.path(), &["start", "same", "--sheet", "same"], "is there already");
    assert_eq!(names(folder.path()), ["job.ron", "sheet.html"]);
}

/// The program behind a shell's limit of so many blocks of 512 bytes a file: what a full disk does to it. Without the trap the
/// system would end it before it could say anything.
fn with_little_room(folder: &Path, arguments: &[&str]) -> Output {
    Command::new("sh")
        .args(["-c", "trap '' XFSZ; ulimit -f 4; exec \"$0\" \"$@\""])
        .arg(cargo_bin!("sternknee"))
        .args(arguments)
        .current_dir(folder)
        .output()
        .unwrap()
}

#[test]
fn a_disk_that_is_full_keeps_what_was_there_and_is_told() {
    let folder = folder();
    for target in [
        &["check", "job.ron", "--html", "x.html"][..],
        &["check", "job.ron", "--drawings", "drawn"],
        &["start", "x.ron"],
    ] {
        let output = with_little_room(folder.path(), target);
        assert_eq!(output.status.code(), Some(2), "{target:?}: {}", String::from_utf8_lossy(&output.stderr));
        assert!(String::from_utf8_lossy(&output.stderr).contains("cannot be written"), "{target:?}");
        assert!(output.stdout.is_empty(), "{target:?}");
        assert_eq!(names(folder.path()), ["job.ron"], "{target:?}");
    }
}

/// Whatever prints.
const PRINTS: [&[&str]; 12] = [
    &["check", DEMO],
    &["check", DEMO, "--format", "json"],
    &["tape", DEMO],
    &["work", DEMO, "weights"],
    &["rules"],
    &["rules", "power/plate-limit"],
    &["catalog"],
    &["catalog", "check", "catalogs/engines"],
    &["completions", "bash"],
    &["man"],
    &["--help"],
    &["--version"],
];

#[test]
fn output_that_goes_nowhere_is_no_success() {
    for arguments in PRINTS {
        let full = fs::OpenOptions::new().write(true).open("/dev/full").unwrap();
        let output = Command::new(cargo_bin!("sternknee"))
            .current_dir(project())
            .args(arguments)
            .stdout(full)
            .stderr(Stdio::piped())
            .output()
            .unwrap();
        assert_eq!(output.status.code(), Some(2), "{arguments:?}");
        if !arguments[0].starts_with("--") {
            assert!(
                String::from_utf8_lossy(&output.stderr).contains("standard output: No space left"),
                "{arguments:?}"
            );
        }
    }
}

#[test]
fn a_closed_pipe_is_no_success_and_makes_no_noise() {
    for arguments in PRINTS {
        // Closed before the program begins.
        let (reader, writer) = std::io::pipe().unwrap();
        drop(reader);
        let output = Command::new(cargo_bin!("sternknee"))
            .current_dir(project())
            .args(arguments)
            .stdout(writer)
            .stderr(Stdio::piped())
            .output()
            .unwrap();
        assert_eq!(output.status.code(), Some(2), "{arguments:?}");
        assert_eq!(String::from_utf8_lossy(&output.stderr), "", "{arguments:?}");
    }
}

/// Signs that steer a terminal, turn the direction of words, or are not seen.
const SIGNS: [char; 10] =
    ['\u{1b}', '\u{7}', '\u{8}', '\u{9b}', '\u{61c}', '\u{200b}', '\u{200f}', '\u{202e}', '\u{2067}', '\u{feff}'];

#[test]
fn no_form_of_output_carries_signs_of_control_or_direction() {
    let folder = tempfile::tempdir().unwrap();
    let mut words = String::from("words");
    for sign in SIGNS {
        // As it stands, and by its number.
        words.push_str(&format!("{sign}x\\u{{{:x}}}y", sign as u32));
    }
    let mut job = include_str!("../../catalogs/jobs/oyster_skiff.ron").to_owned();
    for field in ["title", "date", "by", "for_whom", "what", "note", "name"] {
        let (before, after) = (format!("{field}: \""), format!("{field}: \"{words} "));
        assert!(job.contains(&before), "{field}");
        job = job.replace(&before, &after);
    }
    fs::write(folder.path().join("job.ron"), job).unwrap();
    let mut seen = 0;
    let mut clean = |what: &str, text: &str| {
        seen += 1;
        assert!(text.contains("words"), "{what} does not show the job's words");
        for sign in SIGNS {
            assert!(!text.contains(sign), "{what}: {sign:?}");
        }
    };
    for arguments in [
        &["check", "job.ron", "--explain"][..],
        &["check", "job.ron", "--format", "json"],
        &["tape", "job.ron"],
        &["work", "job.ron", "weights"],
        &["work", "job.ron", "weights", "--format", "json"],
        &["work", "job.ron", "swing"],
        &["work", "job.ron", "float", "--format", "json"],
    ] {
        let output = run(folder.path(), arguments);
        let text = String::from_utf8(output.stdout).unwrap();
        clean(&format!("{arguments:?}"), &text);
        if arguments.contains(&"json") {
            let parsed: serde_json::Value = serde_json::from_str(&text).unwrap();
            // Read back: what was written by number would be the sign itself again.
            strings(&parsed, &mut |words| assert!(!words.contains(SIGNS), "{arguments:?}: {words:?}"));
        }
    }
    run(folder.path(), &["check", "job.ron", "--html", "page.html", "--drawings", "drawn"]);
    run(folder.path(), &["work", "job.ron", "weights", "--html", "work.html"]);
    run(folder.path(), &["tape", "job.ron", "--html", "tape.html"]);
    for name in ["page.html", "work.html", "tape.html"] {
        clean(name, &fs::read_to_string(folder.path().join(name)).unwrap());
    }
    for name in names(&folder.path().join("drawn")) {
        let text = fs::read_to_string(folder.path().join("drawn").join(&name)).unwrap();
        roxmltree::Document::parse(&text).unwrap_or_else(|error| panic!("{name}: {error}"));
        for sign in SIGNS {
            assert!(!text.contains(sign), "{name}: {sign:?}");
        }
    }
    assert_eq!(seen, 10);
}

fn strings(value: &serde_json::Value, see: &mut dyn FnMut(&str)) {
    match value {
        serde_json::Value::String(words) => see(words),
        serde_json::Value::Array(all) => all.iter().for_each(|each| strings(each, see)),
        serde_json::Value::Object(all) => all.values().for_each(|each| strings(each, see)),
        _ => {}
    }
}
