//! Plain words for what a command calls by an id.

use crate::quantity::{Text, Units};
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

/// The words with each rule that they name by its id called by its name, in quotation marks: an id is for commands.
pub(super) fn plain(words: &str) -> String {
    if !words.contains('/') {
        return words.to_owned();
    }
    let mut out = String::with_capacity(words.len());
    let mut rest = words;
    while let Some(stroke) = rest.find('/') {
        let begin = rest[..stroke].rfind(|c: char| !c.is_ascii_lowercase()).map_or(0, |at| after(rest, at));
        let behind = &rest[stroke + 1..];
        let end = stroke + 1 + behind.find(|c: char| !c.is_ascii_lowercase() && c != '-').unwrap_or(behind.len());
        match rules::find(&rest[begin..end]) {
            Some(rule) => {
                out.push_str(&rest[..begin]);
                out.push_str(&format!("\u{201c}{}\u{201d}", name(rule)));
            }
            None => out.push_str(&rest[..end]),
        }
        rest = &rest[end..];
    }
    out + rest
}

/// Where the character that begins at this byte ends.
fn after(words: &str, at: usize) -> usize {
    at + words[at..].chars().next().map_or(0, char::len_utf8)
}

/// A sentence in these units, without ids.
pub(super) fn said(text: &Text, units: Units) -> String {
    plain(&text.show(units))
}

/// The first sentence of several.
pub(super) fn first_sentence(words: &str) -> &str {
    let end = words.match_indices(". ").find(|(at, _)| words[at + 2..].starts_with(char::is_uppercase));
    end.map_or(words, |(at, _)| &words[..=at])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_id_in_a_sentence_is_told_by_its_name() {
        for (words, told) in [
            ("see height/shaft-match.", "see \u{201c}shaft match\u{201d}."),
            ("first (fuel/one-feed): 1/2 in", "first (\u{201c}one feed\u{201d}): 1/2 in"),
            ("and/or stern/list", "and/or \u{201c}list\u{201d}"),
            ("25-1/4 in, 10 lb/ft³ at ½/½", "25-1/4 in, 10 lb/ft³ at ½/½"),
        ] {
            assert_eq!(plain(words), told);
        }
    }

    #[test]
    fn a_sentence_ends_before_a_capital() {
        assert_eq!(first_sentence("At 3.5 in. it is out. Lift it."), "At 3.5 in. it is out.");
        assert_eq!(first_sentence("Lift it."), "Lift it.");
    }
}
