//! The transom as a plate: its outline, what it is made of, what holds it.

mod material;
mod outline;
mod supports;

use uom::si::f64::{Angle, Length};

use super::NoStrength;
use crate::case::stern::Stern;
use crate::catalog;
use crate::physics::strength::knockdown::KnockDown;
use crate::physics::strength::panel::{EdgeSupport, Layup, Line, Panel, PanelError, Ply, Point, Section};
use crate::quantity::{Dimensioned, Text};
use crate::rig::{Layer, Rig};

pub(super) use material::ply_material;
use material::weakened;
use outline::Outline;
pub use supports::Knee;

/// The transom, in its own plane: `[y, z]` in m, to port and up from the bottom on the centreline.
#[derive(Clone, Debug)]
pub struct Board {
    /// Where it stands in boat axes.
    pub(in crate::case) stern: Stern,
    /// Its corners, anticlockwise.
    pub outline: Vec<Point>,
    /// How the edge from each corner to the next is held.
    pub edges: Vec<EdgeSupport>,
    /// Height of the top edge where the engines hang, m.
    pub top: f64,
    /// Half the width of that edge, m.
    pub half_top: f64,
    /// Rise of the bottom for a metre off the centreline, along the transom.
    pub rise: f64,
    /// Where the bottom ends, m.
    pub chine: Point,
    /// Its layers from the outside in.
    pub layers: Vec<Layer>,
    /// Index of the thickest layer: the core, or the whole of it.
    pub core: usize,
    /// What carries and stiffens it besides knees.
    pub lines: Vec<Line>,
    /// Its knees.
    pub knees: Vec<Knee>,
    /// What was taken for granted.
    pub assumed: Vec<Text>,
}

impl Board {
    /// The transom of a rig.
    ///
    /// # Errors
    /// What is missing, or why no plate can be made of it.
    pub fn of(rig: &Rig) -> Result<Board, NoStrength> {
        let (boat, transom, structure) = (&rig.boat, &rig.transom, &rig.structure);
        let (layers, height, width, deadrise) =
            (structure.lay_up.ask(), transom.height.ask(), boat.transom_width.ask(), boat.deadrise.ask());
        let (Ok(layers), Ok(height), Ok(width), Ok(deadrise)) = (&layers, &height, &width, &deadrise) else {
            let missing = [layers.err(), height.err(), width.err(), deadrise.err()];
            return Err(NoStrength::Missing(missing.into_iter().flatten().collect()));
        };
        let mut assumed = Vec::new();
        let lean = transom.angle.reading().map(|angle| angle.value);
        if lean.is_none() {
            assumed.push(Text::from("The transom is taken to stand upright under its loads: its angle is not given."));
        }
        let stern = Stern::new(height.value, lean.unwrap_or_default());
        let outline = Outline::of(rig, height.value, width.value, deadrise.value, stern.angle, &mut assumed)?;
        let core = (0..layers.len())
            .max_by(|a, b| layers[*a].thickness.si().total_cmp(&layers[*b].thickness.si()))
            .unwrap_or(0);
        let mut board = Board {
            stern,
            outline: outline.corners,
            edges: outline.edges,
            top: height.value.si(),
            half_top: outline.half_top,
            rise: outline.rise,
            chine: outline.chine,
            layers: layers.to_vec(),
            core,
            lines: Vec::new(),
            knees: Vec::new(),
            assumed,
        };
        board.add_lines(rig);
        Ok(board)
    }

    /// How far it leans from vertical, top aft.
    pub fn lean(&self) -> Angle {
        self.stern.angle
    }

    /// How far a face stands aft, level, that stands so far off the transom square to it.
    pub fn level(&self, setback: Length) -> Length {
        setback / self.stern.angle.cos()
    }

    /// Height of the bottom edge at `y`, m; `None` beyond the chine.
    pub fn bottom(&self, y: f64) -> Option<f64> {
        (y.abs() < self.chine[0]).then(|| self.rise * y.abs())
    }

    /// Its thickness, m.
    pub fn thickness(&self) -> f64 {
        self.layers.iter().map(|layer| layer.thickness.si()).sum()
    }

    /// The core's material.
    pub fn core_material(&self) -> &catalog::Material {
        &self.layers[self.core].material.spec
    }

    /// A strength, averaged over the layers by thickness, with the core's share knocked down; Pa.
    pub fn mean(&self, knock: KnockDown, of: impl Fn(&catalog::Material) -> f64) -> f64 {
        let sum: f64 = self
            .layers
            .iter()
            .enumerate()
            .map(|(i, layer)| {
                let left = if i == self.core { knock.strength } else { 1.0 };
                left * layer.thickness.si() * of(&layer.material.spec)
            })
            .sum();
        sum / self.thickness()
    }

    /// The panel with its core knocked down and these knees.
    ///
    /// # Errors
    /// As the kernel's layup.
    pub fn panel(&self, knock: KnockDown, knees: &[Knee]) -> Result<Panel, PanelError> {
        let plies = self
            .layers
            .iter()
            .enumerate()
            .map(|(i, layer)| {
                let material = ply_material(&layer.material.spec);
                Ply {
                    material: if i == self.core { weakened(material, knock) } else { material },
                    thickness: layer.thickness,
                }
            })
            .collect();
        Ok(Panel {
            outline: self.outline.clone(),
            edges: self.edges.clone(),
            section: Section::layup(Layup::new(plies)?)?,
            regions: Vec::new(),
            lines: knees.iter().map(|knee| knee.line()).chain(self.lines.iter().copied()).collect(),
        })
    }
}
