//! The program against general-purpose libraries: kept results of the scripts beside, compared here.

mod float;
mod swing;
