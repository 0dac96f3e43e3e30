//! Plants many mutants into one copy of the sources, each behind a number: the copy is built once, and a number in the environment
//! says which of them is awake. What is mutated and into what is decided elsewhere (`cargo mutants --list --json`).
//!
//! `plant LIST TREE` reads the list from LIST, the sources below the folder that it runs in, and writes those with mutants below
//! TREE. A mutant's number is its place in the list, from 1. To standard output goes, as JSON, where in each written file which
//! number stands (`grow::Place`).

mod grow;
mod seek;

use std::collections::BTreeMap;
use std::path::Path;
use std::{env, fs};

use serde::Deserialize;

/// A mutant as it is listed.
#[derive(Deserialize)]
pub struct Listed {
    file: String,
    genre: String,
    replacement: String,
    span: Span,
    /// It is to be left out: it was seen not to compile.
    #[serde(default)]
    skip: bool,
}

#[derive(Deserialize)]
struct Span {
    start: Point,
}

/// Line and column, both from 1, in letters.
#[derive(Deserialize, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Point {
    line: usize,
    column: usize,
}

type Anything<T> = Result<T, Box<dyn std::error::Error>>;

fn main() -> Anything<()> {
    let arguments: Vec<String> = env::args().skip(1).collect();
    let [list, tree] = arguments.as_slice() else {
        return Err("plant LIST TREE".into());
    };
    let listed: Vec<Listed> = serde_json::from_str(&fs::read_to_string(list)?)?;
    let mut by_file: BTreeMap<&str, Vec<(u32, &Listed)>> = BTreeMap::new();
    for (number, mutant) in (1..).zip(&listed) {
        if !mutant.skip {
            by_file.entry(&mutant.file).or_default().push((number, mutant));
        }
    }
    let mut places = BTreeMap::new();
    for (file, mutants) in by_file {
        let text = fs::read_to_string(file)?;
        let plants = seek::plants(&text, &mutants)?;
        let (grown, where_) = grow::grow(&text, plants);
        write_if_other(&Path::new(tree).join(file), &grown)?;
        places.insert(file, where_);
    }
    println!("{}", serde_json::to_string(&places)?);
    Ok(())
}

/// A file that is as it was keeps its time, so that what is built of it is not built again.
fn write_if_other(path: &Path, text: &str) -> std::io::Result<()> {
    if fs::read_to_string(path).is_ok_and(|old| old == text) {
        return Ok(());
    }
    fs::write(path, text)
}
