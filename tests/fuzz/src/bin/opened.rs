//! A job that somebody wrote, as far as what is wrong with it and what is asked back: every fault told with a place in the text.

#![no_main]

use std::sync::LazyLock;

use libfuzzer_sys::fuzz_target;
use sternknee::catalog::Catalog;
use sternknee::front_door;

static CATALOG: LazyLock<Catalog> = LazyLock::new(|| Catalog::built_in().expect("the built-in catalog is sound"));

fuzz_target!(|bytes: &[u8]| {
    let text = String::from_utf8_lossy(bytes);
    match front_door::open("job.ron", &text, &CATALOG, |_| Err("no files".to_owned())) {
        Ok(opened) => opened.rig.questions().for_each(|asked| assert!(!asked.entries.is_empty())),
        Err(faults) => assert!(!faults.to_string().is_empty()),
    }
});
