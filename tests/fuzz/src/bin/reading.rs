//! What a person writes for one reading, of any kind: a finite number with its tolerance, or a sentence that says why not.

#![no_main]

use libfuzzer_sys::fuzz_target;
use sternknee::quantity::{Kind, Measure, Style, Units, parse};

fuzz_target!(|bytes: &[u8]| {
    let text = String::from_utf8_lossy(bytes);
    for kind in Kind::ALL {
        match parse(&text, kind) {
            Ok(read) => {
                assert!(read.si.is_finite());
                for style in [Style::Plain, Style::Tape, Style::FeetInches] {
                    let shown = Measure { si: read.si, kind, style }.show(Units::Both);
                    assert!(!shown.contains("NaN") && !shown.contains("inf"), "{shown}");
                }
            }
            Err(problem) => assert!(!problem.to_string().is_empty()),
        }
    }
});
