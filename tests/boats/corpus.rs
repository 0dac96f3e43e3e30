//! The boats: one file each, that holds everything known of her.
//!
//! A line that ends in `// L3` is told from level 3 on; a line without a mark is told from the first.
//! L1 plate and weights; L2 transom, well, trailer and gear; L3 bolts and a top speed; L4 lay-up, stringers,
//! knees, fastening; L5 hull sections, weights and edges.

use std::path::{Path, PathBuf};

/// The levels of what is told of a boat.
pub const LEVELS: std::ops::RangeInclusive<u8> = 1..=5;

/// A boat of the corpus.
#[derive(Debug)]
pub struct Boat {
    /// `sound/…` or `unsound/…`.
    pub name: String,
    text: String,
}

impl Boat {
    /// Every boat of this folder, by name.
    pub fn all(folder: &str) -> Vec<Boat> {
        let files = std::fs::read_dir(here().join(folder)).expect("the folder is there");
        let mut paths: Vec<PathBuf> = files.map(|file| file.expect("a file").path()).collect();
        paths.sort();
        paths.iter().map(|path| Boat::read(folder, path)).filter(|boat| is_asked_for(&boat.name)).collect()
    }

    fn read(folder: &str, path: &Path) -> Boat {
        let stem = path.file_stem().expect("a file has a name").to_string_lossy();
        let text = std::fs::read_to_string(path).expect("the file is read");
        Boat { name: format!("{folder}/{stem}"), text }
    }

    /// The job as it is told at this level.
    pub fn at(&self, level: u8) -> String {
        self.text.lines().filter(|line| mark(line) <= level).flat_map(|line| [line, "\n"]).collect()
    }

    /// The first line that begins so, without its beginning.
    pub fn line(&self, start: &str) -> Option<&str> {
        self.text.lines().find_map(|line| line.strip_prefix(start))
    }
}

/// Whether a boat is looked at: all are, or the one that is named by `BOAT=sound/NAME`.
pub fn is_asked_for(name: &str) -> bool {
    std::env::var("BOAT").map_or(true, |asked| asked == name)
}

/// The folder of the boats.
pub fn here() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/boats")
}

/// From which level on a line is told.
fn mark(line: &str) -> u8 {
    let mark = line.rsplit_once("// L").and_then(|(_, level)| level.trim_end().parse().ok());
    mark.unwrap_or(*LEVELS.start())
}
