//! Finds, for each listed mutant, the expression that it changes.

use std::collections::BTreeMap;
use std::ops::Range;

use proc_macro2::LineColumn;
use syn::spanned::Spanned;
use syn::visit::{self, Visit};

use crate::{Anything, Listed, Point};

/// An expression with its mutants.
pub struct Plant {
    /// Bytes of the source. Empty where something is put in only.
    pub at: Range<usize>,
    pub what: What,
}

pub enum What {
    /// This text in place of the whole.
    Others(Vec<(u32, String)>),
    /// The function comes back with this value before it begins.
    Returns(Vec<(u32, String)>),
    /// The guard of an arm, which holds whatever it says, or does not; `gone` takes the whole arm away.
    Guard { holds: Option<u32>, fails: Option<u32>, gone: Option<u32> },
    /// An arm without a guard, which goes.
    Arm(u32),
    /// A choice some arms of which may go: nothing is written for it, but the compiler may miss them.
    Choice(Vec<u32>),
}

struct Seeker<'a> {
    text: &'a str,
    /// Where each line begins.
    lines: Vec<usize>,
    listed: BTreeMap<(&'a str, Point), Vec<(u32, &'a Listed)>>,
    plants: Vec<Plant>,
}

/// All that is listed of one file. What cannot be planted (the operators of a chain of `let`) is left out.
pub fn plants(text: &str, mutants: &[(u32, &Listed)]) -> Anything<Vec<Plant>> {
    let starts = std::iter::once(0).chain(text.match_indices('\n').map(|(i, _)| i + 1));
    let mut seeker = Seeker { text, lines: starts.collect(), listed: BTreeMap::new(), plants: Vec::new() };
    for (number, mutant) in mutants {
        if mutant.genre == "FnValue" {
            let at = seeker.byte(mutant.span.start);
            match seeker.plants.iter_mut().find(|plant| plant.at == (at..at)) {
                Some(Plant { what: What::Returns(values), .. }) => values.push((*number, mutant.replacement.clone())),
                _ => seeker
                    .plants
                    .push(Plant { at: at..at, what: What::Returns(vec![(*number, mutant.replacement.clone())]) }),
            }
        } else {
            seeker.listed.entry((&mutant.genre, mutant.span.start)).or_default().push((*number, mutant));
        }
    }
    seeker.visit_file(&syn::parse_file(text)?);
    Ok(seeker.plants)
}

impl<'a> Seeker<'a> {
    fn byte(&self, point: Point) -> usize {
        let line = self.lines[point.line - 1];
        let letters = self.text[line..].char_indices();
        line + letters.map(|(i, _)| i).nth(point.column - 1).unwrap_or(self.text.len() - line)
    }

    fn bytes(&self, of: &impl Spanned) -> Range<usize> {
        let span = of.span();
        self.byte(point(span.start()))..self.byte(point(span.end()))
    }

    fn listed(&self, genre: &str, of: &impl Spanned) -> Vec<(u32, &'a Listed)> {
        let here = point(of.span().start());
        self.listed
            .iter()
            .filter(|((g, p), _)| *g == genre && *p == here)
            .flat_map(|(_, found)| found.clone())
            .collect()
    }

    /// The expression at `whole` with what is at `part` in it replaced.
    fn others(&mut self, whole: Range<usize>, part: Range<usize>, mutants: &[(u32, &Listed)]) {
        if mutants.is_empty() {
            return;
        }
        let (before, after) = (&self.text[whole.start..part.start], &self.text[part.end..whole.end]);
        let others =
            mutants.iter().map(|(number, mutant)| (*number, format!("{before}{} {after}", mutant.replacement)));
        let what = What::Others(others.collect());
        self.plants.push(Plant { at: whole, what });
    }
}

fn point(place: LineColumn) -> Point {
    Point { line: place.line, column: place.column + 1 }
}

/// Whether an expression is a link of a chain of `let`, which stands nowhere but in a condition.
fn lets(expr: &syn::Expr) -> bool {
    match expr {
        syn::Expr::Let(_) => true,
        syn::Expr::Binary(binary) => lets(&binary.left) || lets(&binary.right),
        _ => false,
    }
}

impl<'ast> Visit<'ast> for Seeker<'_> {
    fn visit_expr_binary(&mut self, binary: &'ast syn::ExprBinary) {
        if !lets(&binary.left) && !lets(&binary.right) {
            let mutants = self.listed("BinaryOperator", &binary.op);
            self.others(self.bytes(binary), self.bytes(&binary.op), &mutants);
        }
        visit::visit_expr_binary(self, binary);
    }

    fn visit_expr_unary(&mut self, unary: &'ast syn::ExprUnary) {
        let mutants = self.listed("UnaryOperator", &unary.op);
        self.others(self.bytes(unary), self.bytes(&unary.op), &mutants);
        visit::visit_expr_unary(self, unary);
    }

    fn visit_expr_struct(&mut self, made: &'ast syn::ExprStruct) {
        let mut others = Vec::new();
        for pair in made.fields.pairs() {
            for (number, _) in self.listed("StructField", *pair.value()) {
                let (whole, field) = (self.bytes(made), self.bytes(*pair.value()));
                let end = pair.punct().map_or(field.end, |comma| self.bytes(comma).end);
                others
                    .push((number, format!("{}{}", &self.text[whole.start..field.start], &self.text[end..whole.end])));
            }
        }
        if !others.is_empty() {
            let at = self.bytes(made);
            self.plants.push(Plant { at, what: What::Others(others) });
        }
        visit::visit_expr_struct(self, made);
    }

    fn visit_expr_match(&mut self, choice: &'ast syn::ExprMatch) {
        let going = choice.arms.iter().flat_map(|arm| self.listed("MatchArm", arm)).map(|(number, _)| number);
        let going: Vec<u32> = going.collect();
        if !going.is_empty() {
            let at = self.bytes(choice);
            self.plants.push(Plant { at, what: What::Choice(going) });
        }
        visit::visit_expr_match(self, choice);
    }

    fn visit_arm(&mut self, arm: &'ast syn::Arm) {
        let gone = self.listed("MatchArm", arm).first().map(|(number, _)| *number);
        match &arm.guard {
            Some((_, guard)) if !lets(guard) => {
                let of = |word: &str| {
                    let found = self.listed("MatchArmGuard", &**guard);
                    found.iter().find(|(_, mutant)| mutant.replacement == word).map(|(number, _)| *number)
                };
                let what = What::Guard { holds: of("true"), fails: of("false"), gone };
                if !matches!(what, What::Guard { holds: None, fails: None, gone: None }) {
                    let at = self.bytes(&**guard);
                    self.plants.push(Plant { at, what });
                }
            }
            None => {
                if let Some(number) = gone {
                    let end = self.bytes(&arm.pat).end;
                    self.plants.push(Plant { at: end..end, what: What::Arm(number) });
                }
            }
            Some(_) => {}
        }
        visit::visit_arm(self, arm);
    }
}
