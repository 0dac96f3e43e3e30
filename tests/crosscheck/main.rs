//! The program against general-purpose libraries: each topic has a script, its pinned requirements and the
//! results it gave, with the libraries' versions. `tests/crosscheck/run.sh` runs the scripts again.

mod float;
mod propeller;
mod rigging;
mod running;
mod strength;
mod swing;
mod units;
