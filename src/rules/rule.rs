//! A rule: its id, its explanation, its judgement.

use super::{Family, Finding};
use crate::case::Case;
use crate::quantity::capitalised;

/// One check.
#[derive(Debug)]
pub struct Rule {
    /// `family/name`.
    pub id: &'static str,
    /// What it is about.
    pub family: Family,
    /// The lines of its doc comment.
    pub doc: &'static [&'static str],
    /// The judgement: reads the case, calls physics, writes its working, returns a finding.
    pub judge: fn(&Case) -> Finding,
}

/// The parts of a rule's explanation, each a paragraph that begins with its name in bold.
pub const PARTS: [&str; 4] = ["Why", "Limit", "Source", "When it warns"];

impl Rule {
    /// What it is called under its family's head: `shaft match` for `height/shaft-match`.
    pub fn name(&self) -> String {
        self.id.split_once('/').map_or(self.id, |(_, name)| name).replace('-', " ")
    }

    /// The same with its family: `Height: shaft match`.
    pub fn full_name(&self) -> String {
        format!("{}: {}", capitalised(self.family.word()), self.name())
    }

    /// What the rule checks: the first paragraph of its explanation.
    pub fn summary(&self) -> String {
        self.paragraphs().into_iter().next().unwrap_or_default()
    }

    /// The part of this name, without the name.
    pub fn part(&self, name: &str) -> Option<String> {
        let head = format!("**{name}.** ");
        self.paragraphs().into_iter().find_map(|paragraph| paragraph.strip_prefix(&head).map(str::to_owned))
    }

    /// The sources, each by itself.
    pub fn sources(&self) -> Vec<String> {
        let part = self.part("Source").unwrap_or_default();
        // What stands in brackets belongs to one source.
        let mut depth = 0;
        part.split(|c| {
            depth += i32::from(c == '(') - i32::from(c == ')');
            c == ';' && depth == 0
        })
        .map(|source| source.trim())
        .map(|source| source.trim_end_matches('.').to_owned())
        .filter(|source| !source.is_empty())
        .collect()
    }

    fn paragraphs(&self) -> Vec<String> {
        self.doc
            .split(|line| line.trim().is_empty())
            .map(|lines| lines.iter().map(|line| line.trim()).collect::<Vec<_>>().join(" "))
            .filter(|paragraph| !paragraph.is_empty())
            .collect()
    }
}

/// Declares a rule. Its doc comment is its explanation: what it checks, then the parts of [`PARTS`].
macro_rules! rule {
    ($(#[doc = $doc:literal])+ $name:ident = $family:ident $id:literal, $judge:ident;) => {
        $(#[doc = $doc])+
        pub(crate) const $name: $crate::rules::Rule = $crate::rules::Rule {
            id: $id,
            family: $crate::rules::Family::$family,
            doc: &[$($doc),+],
            judge: |case| $crate::rules::Finding::from($judge(case)).with_figures(),
        };
    };
}
pub(super) use rule;
