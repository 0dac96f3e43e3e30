//! Plain words for what a command calls by an id.

use crate::rules::{self, Rule};

/// What a rule is called where people read: `shaft match` for `height/shaft-match`; with its family where another family has one
/// called so too.
pub(super) fn name(rule: &Rule) -> String {
    let namesake = rules::ALL.iter().any(|other| other.id != rule.id && other.name() == rule.name());
    if namesake { format!("{} ({})", rule.name(), rule.family.word()) } else { rule.name() }
}

/// What rules of these ids are called, in a list.
pub(super) fn names(ids: &[&str]) -> String {
    ids.iter().filter_map(|id| rules::find(id)).map(name).collect::<Vec<_>>().join(", ")
}

/// The first sentence of several.
pub(super) fn first_sentence(words: &str) -> &str {
    let end = words.match_indices(". ").find(|(at, _)| words[at + 2..].starts_with(char::is_uppercase));
    end.map_or(words, |(at, _)| &words[..=at])
}
