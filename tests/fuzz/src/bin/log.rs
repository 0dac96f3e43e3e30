//! A trial as an instrument or a sheet of figures has it.

#![no_main]

use libfuzzer_sys::fuzz_target;
use sternknee::logged;

fuzz_target!(|bytes: &[u8]| {
    if let Err(problem) = logged::read(bytes) {
        assert!(!problem.to_string().is_empty());
    }
});
