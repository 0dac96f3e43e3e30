//! Words in lines: indents, heads, what a terminal may colour.

use anstyle::{AnsiColor, Style};

use crate::rules::Verdict;
use crate::written::printable;

/// Columns of a report.
pub(super) const WIDTH: usize = 80;
/// Indent of what belongs to a finding.
pub(super) const INDENT: &str = "      ";

pub(in super::super) fn head(title: &str) -> String {
    format!("\n{}", bold(&format!("{}\n", title.to_uppercase())))
}

/// The verdict's word, coloured where the output is a terminal that shows colour.
pub(super) fn word(verdict: Verdict) -> String {
    let colour = match verdict {
        Verdict::Fail => AnsiColor::Red,
        Verdict::Warn => AnsiColor::Yellow,
        Verdict::Unmeasured => AnsiColor::Magenta,
        Verdict::Pass => AnsiColor::Blue,
        Verdict::NotApplicable => AnsiColor::BrightBlack,
    };
    let style = Style::new().bold().fg_color(Some(colour.into()));
    format!("{style}{}{style:#}", verdict.word())
}

pub(super) fn bold(words: &str) -> String {
    let style = Style::new().bold();
    let (line, end) = words.strip_suffix('\n').map_or((words, ""), |line| (line, "\n"));
    format!("{style}{line}{style:#}{end}")
}

/// What a job's own words may do to a report: neither move the cursor nor begin a line of their own.
pub(in super::super) fn one_line(words: &str) -> String {
    printable(words).replace(['\n', '\t'], " ")
}

/// A paragraph wrapped to the report's width behind an indent.
pub(in super::super) fn wrap(words: &str, indent: &str) -> String {
    fill(words, indent, indent)
}

/// A paragraph with a first and a following indent. A number stays on one line with its unit, and
/// nothing breaks at the hyphen of `26-1/2` or the stroke of a rule's id.
pub(super) fn fill(words: &str, first: &str, following: &str) -> String {
    let options = textwrap::Options::new(WIDTH)
        .initial_indent(first)
        .subsequent_indent(following)
        .word_separator(textwrap::WordSeparator::AsciiSpace)
        .word_splitter(textwrap::WordSplitter::NoHyphenation);
    let mut kept = String::with_capacity(words.len());
    for (i, c) in words.char_indices() {
        let after_digit = words[..i].ends_with(|c: char| c.is_ascii_digit());
        let before_letter = words[i + c.len_utf8()..].starts_with(char::is_alphabetic);
        let inside = c == ' ' && after_digit && before_letter;
        kept.push(if inside { '\u{a0}' } else { c });
    }
    textwrap::fill(&one_line(&kept), options).replace('\u{a0}', " ") + "\n"
}

/// A labelled paragraph of a finding.
pub(in super::super) fn block(label: &str, words: &str) -> String {
    let first = format!("{INDENT}{label}: ");
    fill(words, &first, "        ")
}
