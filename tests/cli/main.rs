//! The program as people call it: what it prints, what it says of bad input, how it ends.

mod bad_input;
mod catalogs;
mod desk;
mod json;
#[path = "../common/listed.rs"]
mod listed;
mod manual;
mod reports;
#[cfg(unix)]
mod safe_files;
mod starting;
mod terminal;
mod which;

use std::path::{Path, PathBuf};
use std::process::Output;

use assert_cmd::Command;
use assert_cmd::cargo::cargo_bin_cmd;

/// The program, called from a folder, its output not coloured whatever calls the tests.
fn sternknee(folder: &Path) -> Command {
    let mut command = cargo_bin_cmd!("sternknee");
    command.current_dir(folder).env_remove("NO_COLOR").env_remove("CLICOLOR_FORCE").env_remove("CLICOLOR");
    command
}

/// The folder that the project is in.
fn project() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// What a call printed and how it ended.
fn shown(output: &Output) -> String {
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    let code = output.status.code();
    let mut shown = format!("exit {}\n", code.map_or("none".to_owned(), |c| c.to_string()));
    for (name, bytes) in [("stdout", &output.stdout), ("stderr", &output.stderr)] {
        if !bytes.is_empty() {
            shown.push_str(&format!("--- {name}\n{}", text(bytes)));
        }
    }
    shown
}

/// Compares with the snapshot of this name in `snapshots/`.
#[track_caller]
fn same_as_kept(name: &str, about: &str, text: &str) {
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path(project().join("snapshots"));
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.set_description(about);
    settings.bind(|| insta::assert_snapshot!(name, text));
}
