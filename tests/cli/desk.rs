//! `desk`: the page at the boat, where the program was built with it.

use crate::sternknee;

#[cfg(not(feature = "desk"))]
#[test]
fn a_program_without_the_page_says_so_and_writes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let output = sternknee(folder.path()).arg("desk").output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert!(String::from_utf8_lossy(&output.stderr).contains("built without the page"));
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[cfg(feature = "desk")]
#[test]
fn the_page_is_written_with_its_job_and_over_nothing_that_is_not_its_own() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("mine.ron"), "(title: \"mine\")").unwrap();
    std::fs::write(folder.path().join("letter.html"), "an afternoon's work").unwrap();
    let desk = |out: &str| sternknee(folder.path()).args(["desk", "mine.ron", "--out", out]).output().unwrap();
    assert_eq!(desk("page.html").status.code(), Some(0));
    assert_eq!(desk("page.html").status.code(), Some(0));
    assert_eq!(desk("letter.html").status.code(), Some(2));
    let page = std::fs::read_to_string(folder.path().join("page.html")).unwrap();
    assert!(page.contains("mine.ron") && page.contains("Content-Security-Policy"));
}
