//! Catalogs: engine classes, brackets, bolts, materials and regulation tables.
//!
//! The built-in set is compiled in from `catalogs/`; a folder can add to it, or take an entry's place
//! by giving one of the same name.

mod check;
mod entries;
mod folder;

use std::path::{Path, PathBuf};
use std::sync::Arc;

use include_dir::{Dir, include_dir};
use sha2::{Digest, Sha256};

use crate::hands::{Hands, each, one_pair};
use crate::job::rigging::{BatterySpec, CylinderSpec, FuseSpec, HelmSpec, HoseSpec, TrailerSpec, WireSpec};
use crate::job::{BracketSpec, EngineSpec};
use crate::written::{self, Faults, FileError, Page};

pub use entries::{
    BoltGrade, BoltSize, CatalogFile, EngineWeightRow, EngineWeights, Entry, Material, PowerCapacity, PowerStep,
};
pub use folder::{FileText, read_folder};

static BUILT_IN: Dir = include_dir!("$CARGO_MANIFEST_DIR/catalogs");

/// Everything that jobs can name, and the tables that rules read.
#[derive(Clone, Debug, Default)]
pub struct Catalog {
    /// Engine classes.
    pub engines: Vec<Entry<EngineSpec>>,
    /// Brackets and setback devices.
    pub brackets: Vec<Entry<BracketSpec>>,
    /// Transom materials and cores.
    pub materials: Vec<Entry<Material>>,
    /// Fuel hoses.
    pub hoses: Vec<Entry<HoseSpec>>,
    /// Batteries.
    pub batteries: Vec<Entry<BatterySpec>>,
    /// Fuses and breakers.
    pub fuses: Vec<Entry<FuseSpec>>,
    /// Hydraulic helms.
    pub helms: Vec<Entry<HelmSpec>>,
    /// Steering cylinders.
    pub cylinders: Vec<Entry<CylinderSpec>>,
    /// Trailers.
    pub trailers: Vec<Entry<TrailerSpec>>,
    /// Threads, bolt grades, wires and tables of regulations: what rules read.
    pub tables: Arc<Tables>,
    /// What was read, file by file: the fingerprint by which a report names its catalogs.
    read: Sha256,
    /// The folder that was added, where one was.
    folder: Option<PathBuf>,
}

/// The tables of regulations and standards, shared by every rig of a catalog.
#[derive(Clone, Debug, Default)]
pub struct Tables {
    /// Screw threads.
    pub bolt_sizes: Vec<Entry<BoltSize>>,
    /// Wires, the thinnest first.
    pub wires: Vec<Entry<WireSpec>>,
    /// Property classes and grades of bolts.
    pub bolt_grades: Vec<Entry<BoltGrade>>,
    /// 33 CFR 183.53.
    pub power_capacity: Option<PowerCapacity>,
    /// ABYC S-30.
    pub engine_weights: Option<EngineWeights>,
}

/// Why a catalog cannot be used.
#[derive(Debug, thiserror::Error)]
pub enum CatalogError {
    /// A folder could not be read.
    #[error("{}: {source}; a catalog is a folder with .ron files in it, as `sternknee catalog` lists them", path.display())]
    Unreadable {
        /// The folder.
        path: PathBuf,
        /// Why it cannot be read.
        source: FileError,
    },
    /// The folder holds no catalog file.
    #[error("{}: no .ron file in this folder or one inside it", path.display())]
    Empty {
        /// The folder.
        path: PathBuf,
    },
    /// Files with faults, each with its own.
    #[error("{}", render_all(.0))]
    Faulty(Vec<Faults>),
}

fn render_all(faulty: &[Faults]) -> String {
    faulty.iter().map(Faults::to_string).collect()
}

impl Catalog {
    /// The built-in catalog.
    ///
    /// # Errors
    /// Faults in the built-in files: none in a released program (a test reads them all).
    pub fn built_in() -> Result<Self, CatalogError> {
        Catalog::built_in_by(one_pair)
    }

    /// The built-in catalog, its files read by these hands.
    ///
    /// # Errors
    /// As [`Catalog::built_in`].
    pub fn built_in_by(hands: Hands) -> Result<Self, CatalogError> {
        let mut catalog = Catalog::default();
        catalog.add(folder::built_in(&BUILT_IN).into_iter().map(|(name, text)| (name, Ok(text))).collect(), hands)?;
        Ok(catalog)
    }

    /// The built-in catalog with the folder's entries added or put in place of its own.
    ///
    /// # Errors
    /// A folder that cannot be read, or faults in its files, all of them.
    pub fn with_folder(folder: &Path, hands: Hands) -> Result<Self, CatalogError> {
        let mut catalog = Catalog::built_in_by(hands)?;
        catalog.add(read_folder(folder)?, hands)?;
        catalog.folder = Some(folder.to_owned());
        Ok(catalog)
    }

    /// The engine class of this name.
    pub fn engine(&self, name: &str) -> Option<&Entry<EngineSpec>> {
        find(&self.engines, name)
    }

    /// The bracket of this name.
    pub fn bracket(&self, name: &str) -> Option<&Entry<BracketSpec>> {
        find(&self.brackets, name)
    }

    /// The material of this name.
    pub fn material(&self, name: &str) -> Option<&Entry<Material>> {
        find(&self.materials, name)
    }

    /// The text of the entry of this name, whatever it is.
    pub fn text_of(&self, name: &str) -> Option<&str> {
        self.all_entries().find(|(entry, _)| *entry == name).map(|(_, text)| text)
    }

    /// Which catalogs these are, in words, with the SHA-256 of all that was read.
    pub fn stamp(&self) -> String {
        let hash = hexadecimal(&self.read.clone().finalize());
        let folder = match &self.folder {
            Some(folder) => format!(" and {}", folder.display()),
            None => String::new(),
        };
        format!("built in{folder}, SHA-256 {hash}")
    }

    /// The name nearest to this one.
    pub fn likeliest(&self, name: &str) -> &str {
        self.all_entries()
            .map(|(entry, _)| entry)
            .max_by(|a, b| likeness(name, a).total_cmp(&likeness(name, b)))
            .unwrap_or("")
    }

    fn all_entries(&self) -> impl Iterator<Item = (&str, &str)> {
        fn pairs<T>(entries: &[Entry<T>]) -> impl Iterator<Item = (&str, &str)> {
            entries.iter().map(|entry| (entry.name.as_str(), entry.text.as_str()))
        }
        pairs(&self.engines)
            .chain(pairs(&self.brackets))
            .chain(pairs(&self.materials))
            .chain(pairs(&self.tables.bolt_sizes))
            .chain(pairs(&self.tables.bolt_grades))
            .chain(pairs(&self.tables.wires))
            .chain(pairs(&self.hoses))
            .chain(pairs(&self.batteries))
            .chain(pairs(&self.fuses))
            .chain(pairs(&self.helms))
            .chain(pairs(&self.cylinders))
            .chain(pairs(&self.trailers))
    }

    fn add(&mut self, files: Vec<FileText>, hands: Hands) -> Result<(), CatalogError> {
        let texts = files.iter().filter_map(|(_, text)| text.as_ref().ok());
        texts.for_each(|text| self.read.update(text.as_bytes()));
        let read = |i: usize| {
            let (name, text) = &files[i];
            load(name, text.as_ref().map_err(Clone::clone)?)
        };
        let mut faulty = Vec::new();
        for read in each(hands, files.len(), read) {
            match read {
                Ok((file, _)) => self.put(file),
                Err(faults) => faulty.push(faults),
            }
        }
        if faulty.is_empty() { Ok(()) } else { Err(CatalogError::Faulty(faulty)) }
    }

    fn put(&mut self, file: CatalogFile) {
        put_all(&mut self.engines, file.engines);
        put_all(&mut self.brackets, file.brackets);
        put_all(&mut self.materials, file.materials);
        put_all(&mut self.hoses, file.hoses);
        put_all(&mut self.batteries, file.batteries);
        put_all(&mut self.fuses, file.fuses);
        put_all(&mut self.helms, file.helms);
        put_all(&mut self.cylinders, file.cylinders);
        put_all(&mut self.trailers, file.trailers);
        let tables = Arc::make_mut(&mut self.tables);
        put_all(&mut tables.bolt_sizes, file.bolt_sizes);
        put_all(&mut tables.bolt_grades, file.bolt_grades);
        put_all(&mut tables.wires, file.wires);
        if file.power_capacity.is_some() {
            tables.power_capacity = file.power_capacity;
        }
        if file.engine_weights.is_some() {
            tables.engine_weights = file.engine_weights;
        }
    }
}

/// The invented jobs that come with the program: name of the file, and text.
pub fn demos() -> Vec<(String, String)> {
    folder::demos(&BUILT_IN)
}

/// Bytes in hexadecimal.
pub(crate) fn hexadecimal(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

/// The names, the likeliest for a misspelt one first.
pub fn likely_names<'a, T>(entries: &'a [Entry<T>], wanted: &str) -> Vec<&'a str> {
    let mut names: Vec<&str> = entries.iter().map(|entry| entry.name.as_str()).collect();
    names.sort_by(|a, b| likeness(wanted, b).total_cmp(&likeness(wanted, a)));
    names
}

/// How much a name is like the one that was wanted: by its letters, less how far their first numbers are apart; of a 10 hp
/// engine the 9.9 is meant, not the 150.
fn likeness(wanted: &str, name: &str) -> f64 {
    let apart = match (first_number(wanted), first_number(name)) {
        (Some(one), Some(other)) => (one / other).ln().abs(),
        _ => 0.0,
    };
    strsim::jaro_winkler(wanted, name) - apart
}

fn first_number(words: &str) -> Option<f64> {
    let number = words.split(|c: char| !(c.is_ascii_digit() || c == '.')).find_map(|word| word.parse::<f64>().ok())?;
    (number > 0.0).then_some(number)
}

fn find<'a, T>(entries: &'a [Entry<T>], name: &str) -> Option<&'a Entry<T>> {
    entries.iter().find(|entry| entry.name == name)
}

fn put_all<T>(entries: &mut Vec<Entry<T>>, new: Vec<Entry<T>>) {
    for entry in new {
        match entries.iter_mut().find(|old| old.name == entry.name) {
            Some(old) => *old = entry,
            None => entries.push(entry),
        }
    }
}

/// Reads one catalog file and checks its entries.
///
/// # Errors
/// Everything that is wrong with the text, each with its place.
pub fn load(name: &str, text: &str) -> Result<(CatalogFile, Page), Faults> {
    let mut draft = written::read::<CatalogFile>(name, text);
    if let Some(file) = &draft.value {
        draft.faults.extend(check::file(file, &draft.page));
    }
    let (mut file, page) = draft.finish()?;
    file.keep_texts(&page);
    Ok((file, page))
}
