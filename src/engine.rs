//! The front door as a WebAssembly module: bytes of JSON in, bytes of JSON out. It imports nothing.
//!
//! A caller asks [`room`] for a place, writes its question there, and hands it to [`ask`]; the reply's place and length
//! come back in one number, and [`give_back`] frees it when it was read.

use crate::front_door;

/// Bits that the place of a reply is shifted by, its length being below them.
const LENGTH_BITS: u32 = 32;

/// Room for a question of this length.
#[unsafe(no_mangle)]
extern "C" fn room(length: usize) -> *mut u8 {
    Box::into_raw(vec![0_u8; length].into_boxed_slice()).cast()
}

/// Answers the question that was written into this room, and takes the room back.
///
/// # Safety
/// `place` and `length` are those of a [`room`] that was not handed over before.
#[unsafe(no_mangle)]
unsafe extern "C" fn ask(place: *mut u8, length: usize) -> u64 {
    // SAFETY: the caller hands over a room that it asked for.
    let question = unsafe { Box::from_raw(std::ptr::slice_from_raw_parts_mut(place, length)) };
    let reply = front_door::reply(&String::from_utf8_lossy(&question)).into_bytes().into_boxed_slice();
    let length = reply.len() as u64;
    let place = Box::into_raw(reply).cast::<u8>() as u64;
    place << LENGTH_BITS | length
}

/// Frees a reply.
///
/// # Safety
/// `place` and `length` are those of a reply that was not given back before.
#[unsafe(no_mangle)]
unsafe extern "C" fn give_back(place: *mut u8, length: usize) {
    // SAFETY: the caller gives back a reply that it got.
    drop(unsafe { Box::from_raw(std::ptr::slice_from_raw_parts_mut(place, length)) });
}
