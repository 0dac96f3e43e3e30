//! A file of a catalog: every fault in it told, or its entries as they stand.

#![no_main]

use libfuzzer_sys::fuzz_target;
use sternknee::catalog;

fuzz_target!(|bytes: &[u8]| {
    if let Err(faults) = catalog::load("catalog.ron", &String::from_utf8_lossy(bytes)) {
        assert!(!faults.to_string().is_empty());
    }
});
