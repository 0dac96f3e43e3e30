//! A finished drawing: in a page, or as a file of its own.

use maud::{Markup, PreEscaped, html};

use super::ink;
use super::lettering::{FONT, LETTERING};

/// A drawing that can go into a page or a file.
#[derive(Clone, Debug)]
pub(crate) struct Drawing {
    /// Its name in file names and fragments: letters and hyphens.
    pub name: &'static str,
    /// What it shows.
    pub title: String,
    /// The same at length, for those who cannot see it.
    pub description: String,
    /// What a reader must know of how it is drawn.
    pub notes: Vec<String>,
    /// Width and height of the paper, in its units.
    pub size: (f64, f64),
    /// Millimetres of the boat for a unit of the paper, where it is to scale.
    pub scale: Option<f64>,
    /// What is drawn.
    pub body: Markup,
    /// The same laid out for a narrow screen.
    pub narrow: Option<Box<Drawing>>,
}

/// A number of the paper's units, short.
pub(in super::super) fn number(value: f64) -> String {
    let text = format!("{value:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// The first lines of an SVG file of this program, by which it knows its own files.
const FILE_HEAD: &str = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
/// The typeface: the one of the reader's system.
pub(crate) const TYPEFACE: &str = "system-ui, -apple-system, 'Segoe UI', Roboto, 'Liberation Sans', Arial, sans-serif";

impl Drawing {
    /// The same under another name, and of something that is called so.
    pub(crate) fn renamed(self, name: &'static str, of: String) -> Drawing {
        let narrow = self.narrow.map(|narrow| Box::new(narrow.renamed(name, of.clone())));
        Drawing { name, title: of, narrow, ..self }
    }

    /// The drawing as an element of a page.
    pub(crate) fn inline(&self) -> Markup {
        self.element(false, self.name)
    }

    /// The same for a narrow screen.
    pub(crate) fn inline_narrow(&self) -> Option<Markup> {
        let narrow = self.narrow.as_ref()?;
        Some(narrow.element(false, &format!("{}-narrow", self.name)))
    }

    /// The drawing as a file of its own.
    pub(crate) fn file(&self) -> String {
        FILE_HEAD.to_owned() + &self.element(true, self.name).into_string() + "\n"
    }

    fn element(&self, alone: bool, name: &str) -> Markup {
        let (wide, high) = (number(self.size.0), number(self.size.1));
        let title = format!("drawing-{name}-title");
        let about = format!("drawing-{name}-about");
        html! {
            svg xmlns=[alone.then_some("http://www.w3.org/2000/svg")]
                role="img" aria-labelledby=(title) aria-describedby=(about)
                viewBox=(format!("0 0 {wide} {high}"))
                width=[alone.then_some(&wide)] height=[alone.then_some(&high)]
                font-family=[alone.then_some(TYPEFACE)] font-size=(number(FONT))
                data-drawing=(name)
                data-mm-per-unit=[self.scale.map(|scale| format!("{scale:.6}"))]
            {
                title id=(title) { (self.title) }
                desc id=(about) { (self.description) }
                @if alone {
                    style { (LETTERING) }
                    rect width=(wide) height=(high) fill=(ink::PAPER) {}
                }
                (self.body)
                @if alone {
                    (PreEscaped("\n"))
                }
            }
        }
    }
}
