//! What is rigged to the engines: how they are steered, fed, started, charged, told to the instruments and carried on
//! the road. Each is a small calculation with a known source.

pub mod battery;
pub mod cable;
pub mod fuel;
pub mod network;
pub mod pipe;
pub mod steering;
pub mod tie_bar;
pub mod trailer;
pub mod tube;
pub mod wire;
