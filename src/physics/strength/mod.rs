//! What the engine hangs and drives into the transom, and what each part makes of it.

pub mod panel;
