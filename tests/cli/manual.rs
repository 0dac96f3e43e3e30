//! Completions and manual pages say what the program takes.

use std::process::Command;

use crate::{project, sternknee};

fn printed(arguments: &[&str]) -> String {
    let output = sternknee(&project()).args(arguments).output().unwrap();
    assert_eq!(output.status.code(), Some(0), "{arguments:?}");
    String::from_utf8(output.stdout).unwrap()
}

/// The verbs that `--help` lists.
fn verbs() -> Vec<String> {
    let help = printed(&["--help"]);
    let listed = help.split("Commands:\n").nth(1).unwrap().split("\n\n").next().unwrap();
    let verbs =
        listed.lines().filter_map(|line| line.strip_prefix("  ")?.split(' ').next()).filter(|verb| !verb.is_empty());
    let verbs: Vec<String> = verbs.map(str::to_owned).collect();
    assert!(verbs.len() > 7, "{verbs:?}");
    verbs
}

#[test]
fn a_shell_completes_verbs_options_and_their_words() {
    let script = printed(&["completions", "bash"]);
    let complete = |line: &[&str]| -> Vec<String> {
        let words = line.iter().map(|word| format!("'{word}'")).collect::<Vec<_>>().join(" ");
        let (last, before) = (line[line.len() - 1], line[line.len() - 2]);
        let program = format!(
            "{script}\nCOMP_WORDS=({words}); COMP_CWORD={}; _sternknee sternknee '{last}' '{before}'; printf '%s\\n' \"${{COMPREPLY[@]}}\"",
            line.len() - 1
        );
        let output = Command::new("bash").args(["--norc", "-c", &program]).output().unwrap();
        assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
        String::from_utf8(output.stdout).unwrap().lines().map(str::to_owned).collect()
    };
    for verb in verbs() {
        assert!(complete(&["sternknee", ""]).contains(&verb), "{verb}");
    }
    assert_eq!(complete(&["sternknee", "ch"]), ["check"]);
    assert!(complete(&["sternknee", "check", "--"]).contains(&"--drawings".to_owned()));
    assert_eq!(complete(&["sternknee", "check", "--units", ""]), ["us", "si", "both"]);
}

#[test]
fn every_shell_gets_a_script_that_knows_every_verb() {
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        let script = printed(&["completions", shell]);
        for verb in verbs() {
            assert!(script.contains(&verb), "{shell}: {verb}");
        }
    }
}

#[test]
fn the_manual_has_a_page_of_the_program_and_of_each_verb() {
    let whole = printed(&["man"]);
    assert!(whole.contains(".TH sternknee 1"), "{whole}");
    for verb in verbs().iter().filter(|verb| *verb != "help") {
        assert!(whole.contains(verb), "{verb}");
        let page = printed(&["man", verb]);
        assert!(page.contains(&format!(".TH sternknee-{verb} 1")), "{page}");
        let help = printed(&[verb.as_str(), "--help"]);
        for option in help.split_whitespace().filter_map(|word| word.strip_prefix("--")) {
            let option = option.trim_end_matches(|c: char| !c.is_alphanumeric()).split(['=', '`']).next().unwrap();
            assert!(page.contains(&option.replace('-', "\\-")), "{verb}: --{option}");
        }
    }
    let output = sternknee(&project()).args(["man", "dance"]).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
}
