//! Ordinary boats are asked nothing.

use super::{questions, read};

fn asked_nothing(folder: &str) -> usize {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    let mut count = 0;
    for file in std::fs::read_dir(&path).expect("a folder") {
        let file = file.expect("a file").path();
        if file.extension().is_some_and(|end| end == "ron") {
            let text = std::fs::read_to_string(&file).expect("a text");
            let Ok(job) = read(&text) else { continue };
            let asked = questions(&job);
            assert!(asked.is_empty(), "{}: {asked:?}", file.display());
            count += 1;
        }
    }
    count
}

#[test]
fn no_demo_and_no_boat_of_the_corpus_is_asked_back() {
    let count: usize =
        ["catalogs/jobs", "tests/boats/sound", "tests/boats/unsound"].into_iter().map(asked_nothing).sum();
    println!("{count} boats are asked nothing");
    assert!(count > 10);
}
