//! A hull as triangles, as a drawing program writes it.

#![no_main]

use libfuzzer_sys::fuzz_target;
use sternknee::physics::float::mesh_from_stl;
use uom::si::f64::Length;
use uom::si::length::millimeter;

fuzz_target!(|bytes: &[u8]| {
    let _ = mesh_from_stl(bytes, Length::new::<millimeter>(1.0));
});
