//! A job that somebody wrote: the whole way, through the front door, to report, page and drawings.

#![no_main]

use libfuzzer_sys::fuzz_target;
use serde_json::json;
use sternknee::front_door;

fuzz_target!(|bytes: &[u8]| {
    let text = String::from_utf8_lossy(bytes);
    for ask in ["check", "page"] {
        let question = json!({ "ask": ask, "name": "job.ron", "text": text });
        let reply = front_door::reply(&question.to_string());
        assert!(!reply.contains("\"cannot\""), "{reply}");
        for word in ["NaN", "-inf ", " inf "] {
            assert!(text.contains(word) || !reply.contains(word), "{word}: {reply}");
        }
    }
});
