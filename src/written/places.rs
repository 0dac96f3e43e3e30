//! Where each entry of a RON text stands.
//!
//! RON's reader tells the place of its own errors only; a check that comes later (an engine outside
//! the transom) needs the place of any value by its path. This is a scanner, not a second reader: it
//! follows brackets, strings and comments, and judges nothing.

use std::ops::Range;

/// The entries of a text in the order in which they begin, outer before inner.
#[derive(Clone, Debug, Default)]
pub(super) struct Places {
    /// The outermost value.
    pub(super) whole: Range<usize>,
    pub(super) entries: Vec<Entry>,
    /// What a person noted between them: `// …` and `/* … */`.
    pub(super) remarks: Vec<Range<usize>>,
}

/// A field of a struct or an element of a list.
#[derive(Clone, Debug)]
pub(super) struct Entry {
    /// `engines_on[0].class`
    pub(super) path: String,
    /// From the first byte of the field's name, or of the element, to behind its value.
    pub(super) whole: Range<usize>,
    /// The value alone.
    pub(super) value: Range<usize>,
}

impl Places {
    pub(super) fn of(text: &str, deepest: usize) -> Self {
        let mut scanner = Scanner { text, at: 0, deepest, entries: Vec::new(), remarks: Vec::new() };
        scanner.skip_blank();
        let start = scanner.at;
        scanner.value("", 0);
        let end = scanner.at;
        scanner.skip_blank();
        Places { whole: start..end, entries: scanner.entries, remarks: scanner.remarks }
    }

    /// How many bytes of spaces and comments the text begins with.
    pub(super) fn blank(text: &str) -> usize {
        let mut scanner = Scanner { text, at: 0, deepest: 0, entries: Vec::new(), remarks: Vec::new() };
        scanner.skip_blank();
        scanner.at
    }

    /// Whether there is an entry of this path.
    pub(super) fn has(&self, path: &str) -> bool {
        self.entries.iter().any(|entry| entry.path == path)
    }

    /// The value at the path, or the nearest entry around it; the start of the text at last.
    pub(super) fn nearest(&self, path: &str) -> Range<usize> {
        let mut path = path;
        loop {
            if let Some(entry) = self.entries.iter().find(|entry| entry.path == path) {
                return entry.value.clone();
            }
            match path.rfind(['.', '[']) {
                Some(cut) => path = &path[..cut],
                None => return 0..0,
            }
        }
    }

    /// The innermost entry that this byte stands in.
    pub(super) fn around(&self, at: usize) -> Option<&Entry> {
        self.entries.iter().rfind(|entry| entry.whole.contains(&at))
    }

    /// The innermost field that this byte stands in, with its name.
    pub(super) fn field_around(&self, at: usize) -> Option<&Entry> {
        let fields = self.entries.iter().filter(|entry| !entry.path.ends_with(']'));
        fields.rev().find(|entry| entry.whole.contains(&at))
    }

    /// The whole entry to blank for an error at this path, with the comma behind it. Where the error
    /// points inside one of several entries of that path (a field given twice), that one.
    pub(super) fn entry(&self, path: &str, error: &ron::error::Span, text: &str) -> Option<Range<usize>> {
        let offset = byte_of(text, error.start);
        let within = |entry: &&Entry| entry.whole.contains(&offset);
        let entry = if path.is_empty() || self.entries.iter().all(|entry| entry.path != path) {
            self.entries.iter().rfind(within)?
        } else {
            let inner =
                self.entries.iter().filter(within).find(|entry| entry.path != path && parent(&entry.path) == path);
            let same = self.entries.iter().filter(|entry| entry.path == path);
            match inner {
                Some(inner) if is_repeated(&self.entries, &inner.path) => inner,
                _ => same.clone().find(within).or_else(|| same.clone().next())?,
            }
        };
        Some(super::with_comma(text, entry.whole.clone()))
    }
}

pub(super) fn parent(path: &str) -> &str {
    path.rfind(['.', '[']).map_or("", |cut| &path[..cut])
}

fn is_repeated(entries: &[Entry], path: &str) -> bool {
    entries.iter().filter(|entry| entry.path == path).count() > 1
}

/// The byte offset of a line and column, both from 1.
pub(super) fn byte_of(text: &str, position: ron::error::Position) -> usize {
    let line_start = if position.line <= 1 {
        0
    } else {
        text.match_indices('\n').nth(position.line - 2).map_or(text.len(), |(i, _)| i + 1)
    };
    text[line_start..].char_indices().nth(position.col.saturating_sub(1)).map_or(text.len(), |(i, _)| line_start + i)
}

struct Scanner<'a> {
    text: &'a str,
    at: usize,
    deepest: usize,
    entries: Vec<Entry>,
    remarks: Vec<Range<usize>>,
}

impl Scanner<'_> {
    fn rest(&self) -> &str {
        &self.text[self.at..]
    }

    fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    fn skip_char(&mut self) {
        self.at += self.peek().map_or(0, char::len_utf8);
    }

    /// Spaces, comments and attributes.
    fn skip_blank(&mut self) {
        loop {
            let rest = self.rest();
            let trimmed = rest.trim_start();
            let spaces = rest.len() - trimmed.len();
            let skip = if trimmed.starts_with("//") {
                trimmed.find('\n').unwrap_or(trimmed.len())
            } else if trimmed.starts_with("/*") {
                block_comment(trimmed)
            } else if trimmed.starts_with("#!") {
                trimmed.find(']').map_or(trimmed.len(), |i| i + 1)
            } else {
                self.at += spaces;
                return;
            };
            let remark = self.at + spaces..self.at + spaces + skip;
            // The cursor goes back now and then, and passes the same ones again.
            if trimmed.starts_with('/') && self.remarks.last().is_none_or(|last| last.start < remark.start) {
                self.remarks.push(remark.clone());
            }
            self.at = remark.end;
        }
    }

    /// A value: its entries are noted under the path. Leaves the cursor behind it.
    fn value(&mut self, path: &str, depth: usize) {
        let start = self.at;
        match self.peek() {
            Some('"') => self.string(),
            Some('(') => self.group(')', path, depth),
            Some('[') => self.group(']', path, depth),
            Some('{') => self.group('}', path, depth),
            Some('\'') => self.character(),
            _ => {
                self.word();
                let behind = self.at;
                self.skip_blank();
                match self.peek() {
                    Some('(') if behind > start => self.group(')', path, depth),
                    Some('"' | '#') if behind == start + 1 && self.text[start..].starts_with('r') => self.raw_string(),
                    _ => self.at = behind,
                }
            }
        }
        if self.at == start {
            self.skip_char();
        }
    }

    fn word(&mut self) {
        while self.peek().is_some_and(|c| c.is_alphanumeric() || matches!(c, '_' | '.' | '-' | '+')) {
            self.skip_char();
        }
    }

    fn group(&mut self, close: char, path: &str, depth: usize) {
        self.skip_char();
        let mut index = 0;
        loop {
            self.skip_blank();
            match self.peek() {
                None => return,
                Some(c) if c == close => return self.skip_char(),
                Some(',' | ')' | ']' | '}' | ':') => {
                    self.skip_char();
                    continue;
                }
                Some(_) => {}
            }
            if depth >= self.deepest {
                self.at = self.text.len();
                return;
            }
            self.field_or_element(close, path, index, depth);
            index += 1;
        }
    }

    fn field_or_element(&mut self, close: char, path: &str, index: usize, depth: usize) {
        let start = self.at;
        let mut inner = format!("{path}[{index}]");
        if close == ')' {
            self.word();
            let name = self.text[start..self.at].to_owned();
            self.skip_blank();
            if !name.is_empty() && self.peek() == Some(':') {
                self.skip_char();
                self.skip_blank();
                inner = if path.is_empty() { name } else { format!("{path}.{name}") };
            } else {
                self.at = start;
            }
        }
        let slot = self.entries.len();
        let value = self.at;
        self.entries.push(Entry { path: inner.clone(), whole: start..start, value: value..value });
        self.value(&inner, depth + 1);
        self.entries[slot].whole = start..self.at;
        self.entries[slot].value = value..self.at;
    }

    fn string(&mut self) {
        self.skip_char();
        while let Some(c) = self.peek() {
            self.skip_char();
            match c {
                '"' => return,
                '\\' => self.skip_char(),
                _ => {}
            }
        }
    }

    fn raw_string(&mut self) {
        let hashes = self.rest().bytes().take_while(|b| *b == b'#').count();
        self.at += hashes;
        if self.peek() != Some('"') {
            return;
        }
        self.skip_char();
        let end = format!("\"{}", "#".repeat(hashes));
        self.at += self.rest().find(&end).map_or(self.rest().len(), |i| i + end.len());
    }

    fn character(&mut self) {
        self.skip_char();
        if self.peek() == Some('\\') {
            self.skip_char();
        }
        self.skip_char();
        if self.peek() == Some('\'') {
            self.skip_char();
        }
    }
}

/// The bytes of a block comment, which may nest.
fn block_comment(text: &str) -> usize {
    let mut depth = 0_usize;
    let mut at = 0;
    while at < text.len() {
        let rest = &text[at..];
        if rest.starts_with("/*") {
            depth += 1;
            at += 2;
        } else if rest.starts_with("*/") {
            depth -= 1;
            at += 2;
            if depth == 0 {
                return at;
            }
        } else {
            at += rest.chars().next().map_or(1, char::len_utf8);
        }
    }
    text.len()
}
