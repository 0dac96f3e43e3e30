//! Which of the planted mutants is awake, and which were reached.

use std::sync::atomic::{AtomicU8, AtomicU32, Ordering::Relaxed};

/// Nobody has looked yet what the environment says.
const UNASKED: u32 = u32::MAX;
/// No mutant is awake, and each that is reached is noted.
const NOTING: u32 = u32::MAX - 1;
/// More numbers than any list has.
const MOST: usize = 40_000;

static AWAKE: AtomicU32 = AtomicU32::new(UNASKED);
static REACHED: [AtomicU8; MOST] = [const { AtomicU8::new(0) }; MOST];

/// Whether the mutant of this number is the one that `MUTANT` names.
#[inline]
pub fn awake(number: u32) -> bool {
    let awake = AWAKE.load(Relaxed);
    awake == number || (awake >= NOTING && asked(number))
}

#[cold]
fn asked(number: u32) -> bool {
    if AWAKE.load(Relaxed) == UNASKED {
        let told = std::env::var("MUTANT").ok().and_then(|told| told.parse().ok());
        if std::env::var_os("MUTANTS_REACHED").is_some() {
            AWAKE.store(NOTING, Relaxed);
            unsafe extern "C" {
                fn atexit(call: extern "C" fn()) -> i32;
            }
            unsafe { atexit(note) };
        } else {
            AWAKE.store(told.unwrap_or(0), Relaxed);
        }
        return awake(number);
    }
    REACHED[number as usize].store(1, Relaxed);
    false
}

extern "C" fn note() {
    let Some(path) = std::env::var_os("MUTANTS_REACHED") else { return };
    let reached = (0..MOST).filter(|i| REACHED[*i].load(Relaxed) == 1);
    let text: String = reached.map(|i| format!("{i}\n")).collect();
    // A test that runs the program itself has two processes that note.
    if let Ok(mut file) = std::fs::OpenOptions::new().create(true).append(true).open(path) {
        let _ = std::io::Write::write_all(&mut file, text.as_bytes());
    }
}
