//! Writes a source with its mutants in it.

use std::ops::Range;

use crate::seek::{Plant, What};

/// Where a number stands in what was written: bytes from, bytes to, the number, and how: `alone`, `shared` with others, or as
/// one arm of a `choice`.
pub type Place = (usize, usize, u32, &'static str);

struct Growing<'a> {
    text: &'a str,
    out: String,
    places: Vec<Place>,
}

/// The text with all plants, none of which overlaps another but by lying inside it.
pub fn grow(text: &str, mut plants: Vec<Plant>) -> (String, Vec<Place>) {
    // What holds another comes before it; what is put in at a place, before what begins there.
    plants.sort_by_key(|plant| (plant.at.start, !plant.at.is_empty(), std::cmp::Reverse(plant.at.end)));
    let mut growing = Growing { text, out: String::new(), places: Vec::new() };
    growing.stretch(0..text.len(), &plants);
    (growing.out, growing.places)
}

impl Growing<'_> {
    /// A stretch of the source with the plants that lie in it.
    fn stretch(&mut self, at: Range<usize>, mut plants: &[Plant]) {
        let mut done = at.start;
        while let Some((plant, rest)) = plants.split_first() {
            let inside = rest.partition_point(|other| other.at.start < plant.at.end);
            self.out.push_str(&self.text[done..plant.at.start]);
            self.plant(plant, &rest[..inside]);
            done = plant.at.end;
            plants = &rest[inside..];
        }
        self.out.push_str(&self.text[done..at.end]);
    }

    fn plant(&mut self, plant: &Plant, inside: &[Plant]) {
        let from = self.out.len();
        let numbers: Vec<u32> = match &plant.what {
            What::Others(others) => {
                // What stood there comes first: its type is then that of the whole, and another's is the error.
                let any: Vec<String> =
                    others.iter().map(|(number, _)| format!("crate::planted::awake({number})")).collect();
                self.out.push_str(&format!("(if !({}) {{ ", any.join(" || ")));
                self.stretch(plant.at.clone(), inside);
                self.out.push_str(" }");
                for (i, (number, other)) in others.iter().enumerate() {
                    let asked = if i + 1 < others.len() { format!(" if {}", any[i]) } else { String::new() };
                    self.out.push_str(&format!(" else{asked} {{ "));
                    self.alone(*number, other);
                    self.out.push_str(" }");
                }
                self.out.push(')');
                others.iter().map(|(number, _)| *number).collect()
            }
            What::Returns(values) => {
                for (number, value) in values {
                    self.alone(*number, &format!("if crate::planted::awake({number}) {{ return {value}; }} "));
                }
                values.iter().map(|(number, _)| *number).collect()
            }
            What::Guard { holds, fails, gone } => {
                let asleep =
                    |number: &Option<u32>| number.map_or("true".to_owned(), |n| format!("!crate::planted::awake({n})"));
                let awake = holds.map_or("false".to_owned(), |n| format!("crate::planted::awake({n})"));
                self.out.push_str(&format!("{} && ({awake} || ({} && (", asleep(gone), asleep(fails)));
                self.stretch(plant.at.clone(), inside);
                self.out.push_str(")))");
                [holds, fails, gone].into_iter().flatten().copied().collect()
            }
            What::Arm(number) => {
                self.alone(*number, &format!(" if !crate::planted::awake({number})"));
                vec![*number]
            }
            What::Choice(numbers) => {
                self.stretch(plant.at.clone(), inside);
                numbers.clone()
            }
        };
        let to = self.out.len();
        let how = if let What::Choice(_) = plant.what { "choice" } else { "shared" };
        self.places.extend(numbers.into_iter().map(|number| (from, to, number, how)));
    }

    fn alone(&mut self, number: u32, text: &str) {
        let from = self.out.len();
        self.out.push_str(text);
        self.places.push((from, self.out.len(), number, "alone"));
    }
}
