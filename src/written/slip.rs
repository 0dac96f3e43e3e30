//! What is wrong with an entry, found after its file was read.

/// Something wrong with an entry; [`super::Draft::add_slips`] finds its place in the text.
#[derive(Clone, Debug, PartialEq)]
pub struct Slip {
    /// The entry, such as `hull.sections[2]`.
    pub path: String,
    /// What is wrong.
    pub message: String,
    /// What would do; may be empty.
    pub help: String,
}
