//! Faults as a terminal shows them: each with the line that it is about.

use std::fmt;
use std::sync::Arc;

use miette::{Diagnostic, GraphicalReportHandler, GraphicalTheme, LabeledSpan, NamedSource, SourceCode};

use super::{Fault, Faults};

/// Columns that a rendered fault keeps to.
const WIDTH: usize = 80;
/// The longest line of a file that is quoted whole.
const LONGEST_LINE_QUOTED: usize = 400;

impl Faults {
    /// The faults as a person reads them: each with file, line and column, and the line quoted.
    pub fn render(&self, colour: bool) -> String {
        let theme = if colour { GraphicalTheme::unicode() } else { GraphicalTheme::unicode_nocolor() };
        let handler = GraphicalReportHandler::new_themed(theme).with_width(WIDTH).with_links(false);
        let mut out = String::new();
        for fault in &self.faults {
            // Formatting into a String cannot fail.
            let _ = handler.render_report(&mut out, &self.located(fault));
            out.push('\n');
        }
        let count = self.faults.len();
        let noun = if count == 1 { "fault" } else { "faults" };
        out.push_str(&format!("{}: {count} {noun}; nothing was judged.\n", self.name));
        out
    }

    fn located<'a>(&'a self, fault: &'a Fault) -> Located<'a> {
        let longest = self.text.lines().map(str::len).max().unwrap_or(0);
        let quotable = longest <= LONGEST_LINE_QUOTED && !self.text.is_empty();
        let title = if quotable {
            fault.message.clone()
        } else {
            let (line, column) = self.place(fault);
            format!("{}:{line}:{column}: {}", self.name, fault.message)
        };
        Located { fault, title, source: quotable.then(|| NamedSource::new(&self.name, self.text.clone())) }
    }
}

struct Located<'a> {
    fault: &'a Fault,
    title: String,
    source: Option<NamedSource<Arc<str>>>,
}

impl fmt::Debug for Located<'_> {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str(&self.title)
    }
}

impl fmt::Display for Located<'_> {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str(&self.title)
    }
}

impl std::error::Error for Located<'_> {}

impl Diagnostic for Located<'_> {
    fn help<'a>(&'a self) -> Option<Box<dyn fmt::Display + 'a>> {
        self.fault.help.as_ref().map(|help| Box::new(help) as _)
    }

    fn source_code(&self) -> Option<&dyn SourceCode> {
        self.source.as_ref().map(|source| source as _)
    }

    fn labels(&self) -> Option<Box<dyn Iterator<Item = LabeledSpan> + '_>> {
        let label = (!self.fault.path.is_empty()).then(|| self.fault.path.clone());
        let span = self.fault.span.clone();
        Some(Box::new(std::iter::once(LabeledSpan::new(label, span.start, span.len()))))
    }
}
