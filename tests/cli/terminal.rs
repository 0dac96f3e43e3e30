//! Colour, and what a job's own words may do to a terminal.

use crate::{project, sternknee};

const DEMO: &str = "catalogs/jobs/oyster_skiff.ron";

fn coloured(variables: &[(&str, &str)], arguments: &[&str]) -> (Vec<u8>, Vec<u8>) {
    let mut command = sternknee(&project());
    command.envs(variables.iter().copied()).args(arguments);
    let output = command.output().unwrap();
    (output.stdout, output.stderr)
}

#[test]
fn colour_is_shown_when_asked_for_and_never_against_no_color() {
    let has_escape = |bytes: &[u8]| bytes.contains(&0x1b);
    let check = ["check", DEMO];
    assert!(!has_escape(&coloured(&[], &check).0));
    assert!(has_escape(&coloured(&[("CLICOLOR_FORCE", "1")], &check).0));
    assert!(!has_escape(&coloured(&[("NO_COLOR", "1")], &check).0));
    let both = [("NO_COLOR", "1"), ("CLICOLOR_FORCE", "1")];
    assert!(!has_escape(&coloured(&both, &check).0));
}

/// The words tell the verdict; taking the colour away takes nothing else.
#[test]
fn colour_changes_no_word() {
    let plain = coloured(&[], &["check", DEMO, "--explain"]).0;
    let colour = coloured(&[("CLICOLOR_FORCE", "1")], &["check", DEMO, "--explain"]).0;
    let colour = String::from_utf8(colour).unwrap();
    let stripped: String = colour
        .split('\u{1b}')
        .enumerate()
        .map(|(i, part)| if i == 0 { part } else { part.split_once('m').unwrap().1 })
        .collect();
    assert_eq!(stripped, String::from_utf8(plain).unwrap());
}

/// Whatever a job says, nothing but our own colours reaches the terminal.
#[test]
fn escape_sequences_of_a_job_never_reach_the_terminal() {
    let folder = tempfile::tempdir().unwrap();
    let nasty = "\u{1b}]0;owned\u{7}\u{9b}2J\u{1b}[2Jx\u{202e}y\\u{1b}[31m\\nFAILS";
    let good = format!(
        "(title: \"{nasty}\", goes_on: [(what: \"{nasty}\", on_transom: true)], \
         transom: (height: (value: \"20 in\", basis: assumed, note: \"{nasty}\")), \
         engines_on: [(described: (power: \"90 hp\", running_weight: \"400 lb\"))])"
    );
    let bad = format!("(title: \"{nasty}\", boat: (\"{nasty}\": 1, length: \"{nasty}\"))");
    for (name, text) in [("good.ron", good), ("bad.ron", bad)] {
        std::fs::write(folder.path().join(name), text).unwrap();
        for verb in ["check", "tape"] {
            let output = sternknee(folder.path()).env("CLICOLOR_FORCE", "1").args([verb, name]).output().unwrap();
            for bytes in [&output.stdout, &output.stderr] {
                let text = String::from_utf8(bytes.clone()).unwrap();
                for part in text.split('\u{1b}').skip(1) {
                    let sequence = part.split_once('m').map_or(part, |(s, _)| s);
                    let colour =
                        sequence.starts_with('[') && sequence[1..].chars().all(|c| c.is_ascii_digit() || c == ';');
                    assert!(colour, "{verb} {name}: {sequence:?}");
                }
                let plain = |c: char| c == '\n' || c == '\u{1b}' || !c.is_control();
                assert!(text.chars().all(plain), "{verb} {name}: {text:?}");
                assert!(!text.contains('\u{202e}'), "{verb} {name}");
                assert!(!text.contains("\nFAILS\n"), "{verb} {name}: {text}");
            }
        }
    }
}

#[test]
fn a_wrong_command_line_ends_with_two() {
    for arguments in
        [&["chek"][..], &["check"], &["check", DEMO, "--units", "stone"], &["start", "x.ron", "--for", "fun"], &[]]
    {
        let output = sternknee(&project()).args(arguments).output().unwrap();
        assert_eq!(output.status.code(), Some(2), "{arguments:?}");
        assert!(!output.stderr.is_empty(), "{arguments:?}");
    }
}
