//! `desk`: the page at the boat, where the program was built with it.

use sternknee::desk::{Given, page};

use crate::{project, sternknee};

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

#[test]
fn no_job_ends_the_element_that_it_stands_in() {
    let text = "(title: \"</script><script>alert(1)</script><!--\")";
    let page = page(b"engine", Some(&Given { name: "a</script>.ron", text, files: &[] }));
    assert_eq!(page.matches("</script>").count(), 4);
    assert!(!page.contains("<!--"));
}

#[test]
fn no_script_ends_its_own_element_and_every_module_is_taken_once() {
    let page = page(b"engine", None);
    assert!(!page.contains("<!--"));
    let (_, rest) = page.split_once("<script type=\"module\">").expect("a script");
    let (script, rest) = rest.rsplit_once("</script>").expect("its end");
    assert_eq!(rest, "\n</body></html>\n");
    assert!(!script.contains("</script"));
    assert!(!script.lines().any(|line| line.starts_with("import ") || line.starts_with("export ")));
    let files = std::fs::read_dir(project().join("src/desk")).expect("the sources");
    let modules: Vec<String> = files
        .map(|file| file.expect("a file").file_name().to_string_lossy().into_owned())
        .filter_map(|name| name.strip_suffix(".js").map(str::to_owned))
        .filter(|name| name != "worker")
        .collect();
    // All but the last, which runs, have a scope of their own.
    let scopes = modules.iter().filter(|name| script.matches(&format!("const {name}_js = (() => {{\n")).count() == 1);
    assert_eq!(scopes.count() + 1, modules.len());
    assert_eq!(script.matches("_js = (() => {\n").count() + 1, modules.len());
}
