//! What a program of another language can ask.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::job::Sitting;
use crate::quantity::Units;

/// A question.
#[derive(Deserialize)]
#[serde(rename_all = "snake_case", tag = "ask", deny_unknown_fields)]
pub(super) enum Asked {
    /// Judge a job by every rule: the whole report.
    Check {
        #[serde(flatten)]
        job: JobAsked,
    },
    /// Judge a job for somebody who is typing: what stops it, what is missing; without the dear families, or with all of
    /// them and the drawings.
    Judge {
        #[serde(flatten)]
        job: JobAsked,
        /// Whether only what is quickly judged is asked for.
        #[serde(default)]
        quickly: bool,
    },
    /// The report as one HTML file.
    Page {
        #[serde(flatten)]
        job: JobAsked,
        /// Pictures of its photographs, as data addresses, by the name of the file.
        #[serde(default)]
        pictures: BTreeMap<String, String>,
    },
    /// The measuring sheet as one HTML file.
    Sheet {
        #[serde(flatten)]
        job: JobAsked,
    },
    /// The entries of a text, each with its path.
    Entries { text: String },
    /// A text with entries put in, altered or taken out, one after the other.
    Alter { text: String, changes: Vec<Change> },
    /// A number as somebody types it.
    Read {
        /// What it shall be, by the word of the description.
        kind: String,
        typed: String,
        /// The unit that counts where none is typed.
        unit: String,
    },
    /// The fields of a job: what each takes, where and how it is taken.
    Describe,
    /// The names that a job can use: engine classes, brackets, materials, bolts.
    Catalog,
    /// The invented jobs that come with the program.
    Demos,
    /// A commented job to fill in.
    Start { sitting: Sitting },
}

/// A job as it is asked about.
#[derive(Deserialize)]
pub(super) struct JobAsked {
    /// What faults call it.
    pub name: String,
    /// Its text.
    pub text: String,
    /// The files that it names, in base64.
    #[serde(default)]
    pub files: BTreeMap<String, String>,
    #[serde(default)]
    pub units: UnitsAsked,
}

/// A change to a text.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Change {
    /// The entry.
    pub path: String,
    /// Its new value, as it shall stand in the text…
    pub value: Option<String>,
    /// …or words, which are put in quotes. With neither the entry is taken out.
    pub words: Option<String>,
}

/// Units of a reply.
#[derive(Clone, Copy, Default, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum UnitsAsked {
    #[default]
    Us,
    Si,
    Both,
}

impl From<UnitsAsked> for Units {
    fn from(asked: UnitsAsked) -> Self {
        match asked {
            UnitsAsked::Us => Units::Us,
            UnitsAsked::Si => Units::Si,
            UnitsAsked::Both => Units::Both,
        }
    }
}
