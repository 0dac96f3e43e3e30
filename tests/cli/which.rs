//! `options`, `compare`, `needed`.

use serde_json::Value;

use super::{project, shown, sternknee};

#[test]
fn options_rank_by_what_is_asked_and_say_how_the_best_stands_in_the_job() {
    let mut call = sternknee(&project());
    call.args(["options", "catalogs/jobs/oyster_skiff.ron", "--only", "200 hp", "--by", "weight", "--show", "2"]);
    let output = call.output().expect("it runs");
    assert_eq!(output.status.code(), Some(0), "{}", shown(&output));
    let text = String::from_utf8_lossy(&output.stdout);
    assert!(text.contains("Ranked by least weight aft."), "{text}");
    assert!(text.contains("engines_on: [(class: \"four-stroke 200 hp"), "{text}");
    assert!(text.contains("This is advice") && !text.contains("recommend"), "{text}");
    let long = text.lines().filter(|line| line.chars().count() > 80 && !line.starts_with("    ")).count();
    assert_eq!(long, 0, "{text}");
}

#[test]
fn a_folder_of_jobs_gives_a_line_a_boat_and_faults_go_to_standard_error() {
    let folder = tempfile::tempdir().expect("a folder");
    for name in ["bay_runabout", "tiller_skiff"] {
        let from = project().join(format!("catalogs/jobs/{name}.ron"));
        std::fs::copy(from, folder.path().join(format!("{name}.ron"))).expect("copied");
    }
    std::fs::write(folder.path().join("odd.ron"), "(boat: 3)").expect("written");
    let mut call = sternknee(folder.path());
    call.args(["options", ".", "--only", "four-stroke 115 hp", "--cores", "1"]);
    let output = call.output().expect("it runs");
    assert_eq!(output.status.code(), Some(2), "{}", shown(&output));
    let lines: Vec<Value> = String::from_utf8_lossy(&output.stdout)
        .lines()
        .map(|line| serde_json::from_str(line).unwrap_or_else(|error| panic!("{line}: {error}")))
        .collect();
    let jobs: Vec<&str> = lines.iter().filter_map(|line| line["job"].as_str()).collect();
    assert_eq!(jobs, ["./bay_runabout.ron", "./tiller_skiff.ron"]);
    assert!(lines[0]["best"][0]["class"].is_string(), "{}", lines[0]);
    assert!(String::from_utf8_lossy(&output.stderr).contains("odd.ron"), "{}", shown(&output));
}

#[test]
fn a_price_list_with_a_fault_is_unusable() {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("yard.csv"), "class,price\nfour-strike,1\n").expect("written");
    let job = project().join("catalogs/jobs/tiller_skiff.ron");
    let mut call = sternknee(folder.path());
    call.arg("options").arg(job).args(["--prices", "yard.csv"]);
    let output = call.output().expect("it runs");
    assert_eq!(output.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&output.stderr).contains("no engine and no bracket"), "{}", shown(&output));
}

#[test]
fn compare_wants_candidates_and_says_how_they_are_written() {
    let mut call = sternknee(&project());
    let output = call.args(["compare", "catalogs/jobs/tiller_skiff.ron"]).output().expect("it runs");
    assert_eq!(output.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&output.stderr).contains("candidates: ["), "{}", shown(&output));
}

#[test]
fn needed_tells_an_end_of_each_with_what_stops_it() {
    let mut call = sternknee(&project());
    let output = call.args(["needed", "catalogs/jobs/bay_runabout.ron", "--format", "json"]).output().expect("it runs");
    assert_eq!(output.status.code(), Some(0), "{}", shown(&output));
    let told: Value = serde_json::from_slice(&output.stdout).expect("one document");
    let all = told["needed"].as_array().expect("a list");
    assert!(all.iter().any(|one| one["asked"] == "the heaviest engine"), "{told}");
    for one in all {
        let stops = one["then_fails"].as_array().expect("a list");
        assert!(stops.is_empty() || one["end"]["text"].is_string(), "what stops it stops it somewhere: {one}");
    }
}
