//! What is looked up without a job: rules and the catalog.

use super::layout::{bold, fill, head, wrap};
use super::working::padded;
use crate::catalog::{Catalog, Entry};
use crate::report::citations;
use crate::rules::rule::PARTS;
use crate::rules::{self, Rule};
use crate::written::printable;

/// A rule's explanation, from its doc comment.
pub fn explain_rule(rule: &Rule) -> String {
    let mut out = format!("{}\n\n{}", bold(rule.id), wrap(&rule.summary(), ""));
    for name in PARTS {
        if let Some(part) = rule.part(name) {
            out.push_str(&format!("\n{}\n{}", bold(name), wrap(&part, "  ")));
        }
    }
    out
}

/// Every rule with what it checks.
pub fn rule_list() -> String {
    let mut out = String::new();
    for rule in rules::ALL {
        out.push_str(&format!("{}\n{}", bold(rule.id), wrap(&rule.summary(), "  ")));
    }
    out + "\n`sternknee rules ID` explains one: why, limit, source, what to do.\n"
}

/// Everything in a catalog that a job can name.
pub fn catalog_list(catalog: &Catalog) -> String {
    let mut out = catalog_entries("engine classes", &catalog.engines);
    out.push_str(&catalog_entries("brackets and setback devices", &catalog.brackets));
    out.push_str(&catalog_entries("transom materials", &catalog.materials));
    out.push_str(&catalog_entries("bolt sizes", &catalog.tables.bolt_sizes));
    out.push_str(&catalog_entries("bolt grades", &catalog.tables.bolt_grades));
    out.push_str(&head("tables"));
    for (citation, edition) in citations(&catalog.tables) {
        out.push_str(&wrap(&format!("{citation} ({edition})"), "  "));
    }
    out + "\n`sternknee catalog show NAME` prints one with all its figures.\n"
}

/// One entry as it stands in its file: the form in which a job describes it in place.
pub fn catalog_entry(catalog: &Catalog, name: &str) -> Option<String> {
    let text = catalog.text_of(name)?;
    let mut out = String::new();
    for line in text.lines() {
        out.push_str(&printable(line.strip_prefix("        ").unwrap_or(line)));
        out.push('\n');
    }
    Some(out)
}

/// Names of a catalog's entries under a head, with what each is.
fn catalog_entries<T>(title: &str, entries: &[Entry<T>]) -> String {
    let mut out = head(title);
    let shared = shared_ending(entries);
    if !shared.is_empty() {
        out.push_str(&wrap(&format!("All of them: {}.", shared.trim_start_matches("; ")), "  "));
    }
    let widest = entries.iter().map(|entry| entry.name.chars().count()).max().unwrap_or(0);
    for entry in entries {
        let first = format!("  {}  ", padded(&printable(&entry.name), widest));
        let rest = " ".repeat(widest + 4);
        let own = entry.about.strip_suffix(shared).unwrap_or(&entry.about);
        out.push_str(&fill(own, &first, &rest));
    }
    out
}

/// The clauses at the end of every entry's words that all entries share, from their semicolon on: said once, they
/// need not be read under every name.
fn shared_ending<T>(entries: &[Entry<T>]) -> &str {
    let [first, others @ ..] = entries else {
        return "";
    };
    if others.is_empty() {
        return "";
    }
    first
        .about
        .match_indices("; ")
        .map(|(at, _)| &first.about[at..])
        .find(|ending| others.iter().all(|entry| entry.about.ends_with(ending)))
        .unwrap_or("")
}
