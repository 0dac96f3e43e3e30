//! What is said of a reading where it is declared.

use super::amount::same;
use super::{Amount, Bounds};
use crate::quantity::{Kind, Style};

/// A stop on the walk round the boat, in the order of the walk: what is taken in one place is asked for in one place.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stop {
    /// Papers, plates, letters.
    Papers,
    /// At the helm, and while she runs.
    Helm,
    /// Her outside and her shape.
    Hull,
    /// At the dock, afloat.
    Afloat,
    /// What is aboard.
    Aboard,
    /// The transom from outside.
    Transom,
    /// The transom from inside, and the well.
    Inside,
    /// On the trailer.
    Trailer,
    /// An engine, its plate and its mounting sheet.
    Engine,
    /// What an engine hangs on.
    Bracket,
    /// Bolts, washers and nuts.
    Bolts,
    /// What comes and goes with the engines.
    Items,
    /// At the desk: a question given outright.
    Desk,
}

impl Stop {
    /// Every stop, in the order of the walk.
    pub const ALL: [Stop; 13] = [
        Stop::Papers,
        Stop::Helm,
        Stop::Hull,
        Stop::Afloat,
        Stop::Aboard,
        Stop::Transom,
        Stop::Inside,
        Stop::Trailer,
        Stop::Engine,
        Stop::Bracket,
        Stop::Bolts,
        Stop::Items,
        Stop::Desk,
    ];

    /// The stop in words.
    pub fn words(self) -> &'static str {
        match self {
            Stop::Papers => "papers and plates",
            Stop::Helm => "at the helm",
            Stop::Hull => "round the hull",
            Stop::Afloat => "afloat",
            Stop::Aboard => "aboard",
            Stop::Transom => "the transom, from outside",
            Stop::Inside => "the transom, from inside",
            Stop::Trailer => "on the trailer",
            Stop::Engine => "the engines and their mounting sheets",
            Stop::Bracket => "brackets",
            Stop::Bolts => "bolts",
            Stop::Items => "what comes off and goes on besides",
            Stop::Desk => "at the desk",
        }
    }
}

/// How a reading is taken: a line of the measuring sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taking {
    /// On which stop of the walk.
    pub stop: Stop,
    /// Where on the boat.
    pub place: &'static str,
    /// How.
    pub how: &'static str,
}

/// A field of a job, with everything that is said of it in one place.
#[derive(Clone, Copy, Debug)]
pub struct Declared {
    /// The thing that it stands in.
    pub of: &'static str,
    /// Its field there.
    pub field: &'static str,
    /// What it is: the lines of its doc comment.
    pub doc: &'static [&'static str],
    /// What a sheet or a report calls it; empty where its field says it.
    pub name: &'static str,
    /// Between what and what it can be.
    pub bounds: Option<Bounds>,
    /// How it is taken; nothing where it is taken together with what it stands in.
    pub taking: Option<Taking>,
    /// How closely it is worth taking: its tolerance where a job gives none.
    pub closely: Option<Amount>,
    /// Its place on the sheet's sketch, from the left and from the top.
    pub spot: Option<(u16, u16)>,
    /// How a report shows it.
    pub style: Style,
    /// Whether it is what the thing is called.
    pub is_label: bool,
    /// How the names of the files end that it can name; empty where it names none.
    pub files: &'static [&'static str],
    /// Whether what stands in it is told by its name too: of a chine, its height.
    pub names_parts: bool,
    /// How many entries it takes, where it is a list: more is a drawing or a table, not what somebody took.
    pub most_entries: usize,
    /// Further lines of the sheet that end in this field: of a list whose entries are of several sorts.
    pub also: &'static [Declared],
}

/// A field that needs no more than its name.
pub const fn field() -> Declared {
    called("")
}

/// A field of this name.
pub const fn called(name: &'static str) -> Declared {
    Declared {
        of: "",
        field: "",
        doc: &[],
        name,
        bounds: None,
        taking: None,
        closely: None,
        spot: None,
        style: Style::Tape,
        is_label: false,
        files: &[],
        names_parts: false,
        most_entries: MOST_ENTRIES,
        also: &[],
    }
}

/// Entries of a list of which nothing is said.
const MOST_ENTRIES: usize = 400;

/// What a thing is called by the one who wrote the job.
pub const fn label() -> Declared {
    Declared { is_label: true, ..field() }
}

/// The name of a file that lies beside the job, by how such names can end.
pub const fn named_file(endings: &'static [&'static str]) -> Declared {
    Declared { files: endings, ..field() }
}

impl Declared {
    /// Within these bounds.
    #[must_use]
    pub const fn within(self, bounds: Bounds) -> Self {
        Declared { bounds: Some(bounds), ..self }
    }

    /// Taken at this stop and place, so.
    #[must_use]
    pub const fn taken(self, stop: Stop, place: &'static str, how: &'static str) -> Self {
        Declared { taking: Some(Taking { stop, place, how }), ..self }
    }

    /// Worth taking as closely as this.
    #[must_use]
    pub const fn closely(self, closely: Amount) -> Self {
        Declared { closely: Some(closely), ..self }
    }

    /// Of so many entries at most.
    #[must_use]
    pub const fn up_to(self, most_entries: usize) -> Self {
        Declared { most_entries, ..self }
    }

    /// With this place on the sketch.
    #[must_use]
    pub const fn spot(self, from_left: u16, from_top: u16) -> Self {
        Declared { spot: Some((from_left, from_top)), ..self }
    }

    /// Shown in feet and inches.
    #[must_use]
    pub const fn in_feet(self) -> Self {
        Declared { style: Style::FeetInches, ..self }
    }

    /// Shown in this style.
    #[must_use]
    pub const fn shown(self, style: Style) -> Self {
        Declared { style, ..self }
    }

    /// Naming what stands in it.
    #[must_use]
    pub const fn naming_parts(self) -> Self {
        Declared { names_parts: true, ..self }
    }

    /// With further lines of the sheet.
    #[must_use]
    pub const fn also(self, also: &'static [Declared]) -> Self {
        Declared { also, ..self }
    }

    /// As the field of a thing that holds this kind; bounds of another kind stop the build.
    #[must_use]
    pub(crate) const fn standing(
        self,
        of: &'static str,
        field: &'static str,
        doc: &'static [&'static str],
        kind: Option<Kind>,
    ) -> Self {
        if let Some(bounds) = self.bounds {
            match (bounds.kind(), kind) {
                (Some(bound), Some(held)) => assert!(bound as u8 == held as u8, "bounds of another kind"),
                (None, None) => {}
                _ => panic!("bounds of another kind"),
            }
        }
        Declared { of, field, doc, ..self }
    }

    /// What it is called: its name, or its field in words.
    pub fn words(&self) -> String {
        if self.name.is_empty() { self.field.replace('_', " ") } else { self.name.to_owned() }
    }

    /// What it is, in one paragraph.
    pub fn about(&self) -> String {
        self.doc.iter().map(|line| line.trim()).collect::<Vec<_>>().join(" ")
    }

    /// Where it is taken, in words.
    pub fn place(&self) -> &'static str {
        self.taking.map_or("", |taking| taking.place)
    }

    /// How it is taken, in words.
    pub fn how(&self) -> &'static str {
        self.taking.map_or("", |taking| taking.how)
    }
}

/// Two declarations are the same where they stand at the same field and bear the same name.
impl PartialEq for Declared {
    fn eq(&self, other: &Self) -> bool {
        self.of == other.of && self.field == other.field && self.name == other.name
    }
}

impl Eq for Declared {}

/// The declaration of this field; a name that is none stops the build. See `reading!`.
pub const fn find(fields: &'static [Declared], name: &str) -> &'static Declared {
    let mut i = 0;
    while i < fields.len() {
        if same(fields[i].field, name) {
            return &fields[i];
        }
        i += 1;
    }
    panic!("no such field")
}

/// The declaration of a field: `reading!(Boat.length)`.
macro_rules! reading {
    ($thing:ident.$field:ident) => {
        const { $crate::reading::find(<$thing as $crate::reading::Thing>::FIELDS, stringify!($field)) }
    };
    ($room:ident::$thing:ident.$field:ident) => {
        const { $crate::reading::find(<$room::$thing as $crate::reading::Thing>::FIELDS, stringify!($field)) }
    };
}
pub(crate) use reading;
