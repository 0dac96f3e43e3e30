//! The transom as a plate: its outline, what it is made of, what holds it.

use uom::si::f64::Pressure;

use super::NoStrength;
use crate::catalog;
use crate::job::{Bond, SplashWell, Upright};
use crate::physics::strength::knockdown::KnockDown;
use crate::physics::strength::panel::{
    EdgeSupport, Layup, Line, LineKind, Material, Panel, PanelError, Ply, Point, Section, Strength,
};
use crate::quantity::{Dimensioned, Measure, Text, inches, say};
use crate::rig::{Layer, Missing, Rig};
use uom::si::f64::Length;

/// The transom, in its own plane: `[y, z]` in m, to port and up from the bottom on the centreline.
#[derive(Clone, Debug)]
pub struct Board {
    /// Its corners, anticlockwise.
    pub outline: Vec<Point>,
    /// How the edge from each corner to the next is held.
    pub edges: Vec<EdgeSupport>,
    /// Height of the top edge where the engines hang, m.
    pub top: f64,
    /// Half the width of that edge, m.
    pub half_top: f64,
    /// Rise of the bottom for a metre off the centreline.
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

/// A knee, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Knee {
    /// To port of the centreline.
    pub y: f64,
    /// Its foot and its head.
    pub from: f64,
    pub to: f64,
}

/// Chine beam over transom width where it was not taken. Common practice, no source.
const CHINE_OF_WIDTH: f64 = 0.9;
/// Height of the transom's corners above its cutout where it was not taken. Common practice, no source.
const CORNER_ABOVE_IN: f64 = 8.0;
/// A cutout whose shoulders are narrower or lower than this is none. Common practice, no source.
const SHOULDER_IN: f64 = 2.0;
/// How far up the transom a knee reaches where it was not taken. Common practice, no source.
pub const KNEE_REACH: f64 = 0.75;
/// Least clear height of the sides above the chine for a plate to be made of it. Common practice, no source.
const SIDE_IN: f64 = 2.0;
/// Density above which a material is a metal, kg/m³: no wood, foam or laminate reaches it.
const METAL: f64 = 2400.0;
/// Modulus from which a material counts as fibre laid in several directions, not as a foam, Pa.
const FIBRE: f64 = 2e9;
/// Strength in shear within the plane over strength through the thickness, for fibre laid in several directions:
/// within the plane the cross layers hold, through it the weakest layer rolls. Common practice, no source.
const PLANE_OVER_THROUGH: f64 = 3.0;
/// Poisson's ratio of plywood. Source: Wood Handbook, value from memory: cross plies keep it small.
const PLYWOOD_POISSON: f64 = 0.1;

impl Board {
    /// The transom of a rig.
    ///
    /// # Errors
    /// What is missing, or why no plate can be made of it.
    pub fn of(rig: &Rig) -> Result<Board, NoStrength> {
        let (boat, transom, structure) = (&rig.boat, &rig.transom, &rig.structure);
        let (layers, height, width, deadrise) = (
            structure.lay_up.ask(),
            transom.height.ask(),
            boat.transom_width.ask(),
            boat.deadrise.ask(),
        );
        let missing: Vec<Missing> = [
            layers.as_ref().err().cloned(),
            height.as_ref().err().cloned(),
            width.as_ref().err().cloned(),
            deadrise.as_ref().err().cloned(),
        ]
        .into_iter()
        .flatten()
        .collect();
        let (Ok(layers), Ok(height), Ok(width), Ok(deadrise)) = (layers, height, width, deadrise)
        else {
            return Err(NoStrength::Missing(missing));
        };
        let mut assumed = Vec::new();
        let (top, half) = (height.value.si(), 0.5 * width.value.si());
        let chine_half = match boat.chine_beam.reading() {
            Some(beam) => 0.5 * beam.value.si(),
            None => {
                let beam = CHINE_OF_WIDTH * width.value;
                assumed.push(say!(
                    "The chines are taken to be {} apart at the transom: 0.9 of its width.",
                    Measure::tape(beam)
                ));
                0.5 * beam.si()
            }
        };
        let rise = deadrise.value.si().tan();
        let chine = [chine_half, chine_half * rise];
        let (corner, half_top) = corner(rig, top, half, &mut assumed);
        if corner < chine[1] + inches(SIDE_IN).si() {
            return Err(NoStrength::Unfit(say!(
                "With {} of deadrise the chine comes to {}, and the transom's corner stands {} above the bottom: check transom height, chine beam, deadrise and structure.corner_height.",
                Measure::of(deadrise.value),
                Measure::tape(Length::from_si(chine[1])),
                Measure::tape(Length::from_si(corner))
            )));
        }
        let bond = |said: Option<Bond>, what: &str, assumed: &mut Vec<Text>| match said {
            None => {
                assumed.push(say!(
                    "The {} is taken to be bonded to the transom, free to turn on it.",
                    what
                ));
                EdgeSupport::Simple
            }
            Some(Bond::Loose) => EdgeSupport::Free,
            Some(Bond::Bonded) => EdgeSupport::Simple,
            Some(Bond::BuiltIn) => EdgeSupport::Clamped,
        };
        let bottom = bond(structure.said.bottom, "hull's bottom", &mut assumed);
        let side = bond(structure.said.sides, "hull's side", &mut assumed);
        let mut outline = Vec::new();
        let mut edges = Vec::new();
        let mut corner_at = |place: Point, edge: EdgeSupport| {
            outline.push(place);
            edges.push(edge);
        };
        let free = EdgeSupport::Free;
        if rise > 1e-3 {
            corner_at([0.0, 0.0], bottom);
        }
        corner_at(chine, side);
        corner_at([half, corner], free);
        if half_top < half {
            corner_at([half_top, corner], free);
            corner_at([half_top, top], free);
            corner_at([-half_top, top], free);
            corner_at([-half_top, corner], free);
        }
        corner_at([-half, corner], side);
        corner_at([-chine[0], chine[1]], bottom);
        let core = (0..layers.len())
            .max_by(|a, b| {
                layers[*a]
                    .thickness
                    .si()
                    .total_cmp(&layers[*b].thickness.si())
            })
            .unwrap_or(0);
        let mut board = Board {
            outline,
            edges,
            top,
            half_top,
            rise,
            chine,
            layers: layers.clone(),
            core,
            lines: Vec::new(),
            knees: Vec::new(),
            assumed,
        };
        board.add_lines(rig);
        Ok(board)
    }

    fn add_lines(&mut self, rig: &Rig) {
        let said = &rig.structure.said;
        let uprights = |board: &Board, list: &[Upright]| -> Vec<Knee> {
            list.iter()
                .filter_map(|one| {
                    board.knee(one.at.y().si(), one.height.as_ref().map(|h| h.value.si()))
                })
                .collect()
        };
        self.knees = uprights(
            self,
            rig.structure.knees.reading().map_or(&[], Vec::as_slice),
        );
        if rig.structure.knees.reading().is_none() {
            self.assumed.push(Text::from(
                "No knee is counted behind the transom: none is given.",
            ));
        } else if said
            .knees
            .iter()
            .flatten()
            .any(|knee| knee.height.is_none())
        {
            self.assumed.push(Text::from(
                "A knee without its height is taken to reach three quarters up the transom.",
            ));
        }
        let stringers = uprights(self, &said.stringers);
        self.lines.extend(stringers.into_iter().map(Knee::line));
        if let (Some(stiffener), Some(material)) =
            (&said.top_stiffener, &rig.structure.stiffener_material)
        {
            let (depth, height) = (stiffener.depth.value.si(), stiffener.height.value.si());
            let (long, short) = (depth.max(height), depth.min(height));
            // A rectangle's torsion constant, first terms (Timoshenko and Goodier).
            let torsion = long * short.powi(3) * (1.0 - 0.63 * short / long) / 3.0;
            self.lines.push(Line {
                from: [-self.half_top, self.top],
                to: [self.half_top, self.top],
                kind: LineKind::Beam {
                    bending: material.modulus_along.value.si() * height * depth.powi(3) / 12.0,
                    torsion: material.shear_modulus.value.si() * torsion,
                },
            });
        }
        if let (Some(Bond::Bonded | Bond::BuiltIn), Some(SplashWell::Floor(floor))) =
            (said.well_floor, rig.transom.splash_well.reading())
        {
            let z = self.top - floor.value.si();
            let reach = if self.rise > 1e-6 {
                0.95 * z / self.rise
            } else {
                f64::INFINITY
            };
            let half = self.half_top.min(reach).min(0.95 * self.chine[0]);
            if z > 0.0 && half > 0.0 {
                self.lines.push(Line {
                    from: [-half, z],
                    to: [half, z],
                    kind: LineKind::Supported,
                });
            }
        } else if rig.transom.splash_well.reading().is_some() && said.well_floor.is_none() {
            self.assumed.push(Text::from(
                "The splash-well's floor is not counted as a support of the transom (structure.well_floor says otherwise).",
            ));
        }
    }

    /// A knee at `y`, cut off where the transom ends; `None` off the transom.
    pub fn knee(&self, y: f64, height: Option<f64>) -> Option<Knee> {
        let from = self.bottom(y)?;
        let head = if y.abs() <= self.half_top {
            self.top
        } else {
            self.side_top(y)?
        };
        let reach = height.unwrap_or(KNEE_REACH * (self.top.min(head) - from));
        let to = (from + reach).min(head);
        (to > from + 1e-3).then_some(Knee { y, from, to })
    }

    /// Height of the bottom edge at `y`, m; `None` beyond the chine.
    pub fn bottom(&self, y: f64) -> Option<f64> {
        (y.abs() < self.chine[0]).then(|| self.rise * y.abs())
    }

    fn side_top(&self, y: f64) -> Option<f64> {
        let corner = self.outline.iter().map(|p| p[1]).fold(0.0, f64::max);
        let half = self.outline.iter().map(|p| p[0]).fold(0.0, f64::max);
        (y.abs() < half.min(self.chine[0])).then_some(corner)
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
                    material: if i == self.core {
                        weakened(material, knock)
                    } else {
                        material
                    },
                    thickness: layer.thickness,
                }
            })
            .collect();
        Ok(Panel {
            outline: self.outline.clone(),
            edges: self.edges.clone(),
            section: Section::layup(Layup::new(plies)?)?,
            regions: Vec::new(),
            lines: knees
                .iter()
                .map(|knee| knee.line())
                .chain(self.lines.iter().copied())
                .collect(),
        })
    }
}

impl Knee {
    fn line(self) -> Line {
        Line {
            from: [self.y, self.from],
            to: [self.y, self.to],
            kind: LineKind::Supported,
        }
    }
}

/// Height of the transom's corners, and half the width of the edge on which the engines hang.
fn corner(rig: &Rig, top: f64, half: f64, assumed: &mut Vec<Text>) -> (f64, f64) {
    let shoulder = inches(SHOULDER_IN).si();
    let Some(cutout) = rig.transom.cutout_width.reading() else {
        assumed.push(Text::from(
            "The transom's top is taken to be level all across: no cutout is given.",
        ));
        return (top, half);
    };
    let cut = 0.5 * cutout.value.si();
    if cut > half - shoulder {
        return (top, half);
    }
    let corner = match &rig.structure.said.corner_height {
        Some(height) => height.value.si(),
        None => {
            let above = inches(CORNER_ABOVE_IN);
            assumed.push(say!(
                "The transom's corners are taken to stand {} above its cutout.",
                Measure::tape(above)
            ));
            top + above.si()
        }
    };
    if corner < top + shoulder {
        (top, half)
    } else {
        (corner, cut)
    }
}

/// A catalog material as a ply of the panel, its stronger direction across the boat.
pub(super) fn ply_material(material: &catalog::Material) -> Material {
    let (along, across, shear) = (
        material.modulus_along.value,
        material.modulus_across.value,
        material.shear_modulus.value,
    );
    let through = material.transverse_shear_modulus.value;
    let (bending, rolling) = (
        material.bending_strength.value,
        material.shear_strength.value,
    );
    let alike = (along - across).abs().si() < 1e-6 * along.si();
    let poisson = if alike {
        (0.5 * along.si() / shear.si() - 1.0).clamp(0.0, 0.4)
    } else {
        PLYWOOD_POISSON
    };
    let strength = if material.density.value.si() > METAL {
        Strength::VonMises {
            yield_stress: bending,
        }
    } else {
        let plane = if along.si() > FIBRE {
            PLANE_OVER_THROUGH
        } else {
            1.0
        };
        Strength::MaxStress {
            along_y: bending,
            // The weaker direction has the less strength as it has the less stiffness: the same plies hold it.
            along_z: bending * (across.si() / along.si()).min(1.0),
            plane_shear: plane * rolling,
            shear_y: rolling,
            shear_z: rolling,
        }
    };
    Material {
        modulus_y: along,
        modulus_z: across,
        poisson,
        shear_plane: shear,
        shear_y: through,
        shear_z: through,
        strength,
    }
}

fn weakened(material: Material, knock: KnockDown) -> Material {
    let soft = |stiff: Pressure| knock.stiffness * stiff;
    let weak = |strong: Pressure| knock.strength * strong;
    Material {
        modulus_y: soft(material.modulus_y),
        modulus_z: soft(material.modulus_z),
        poisson: material.poisson,
        shear_plane: soft(material.shear_plane),
        shear_y: soft(material.shear_y),
        shear_z: soft(material.shear_z),
        strength: match material.strength {
            Strength::VonMises { yield_stress } => Strength::VonMises {
                yield_stress: weak(yield_stress),
            },
            Strength::MaxStress {
                along_y,
                along_z,
                plane_shear,
                shear_y,
                shear_z,
            } => Strength::MaxStress {
                along_y: weak(along_y),
                along_z: weak(along_z),
                plane_shear: weak(plane_shear),
                shear_y: weak(shear_y),
                shear_z: weak(shear_z),
            },
        },
    }
}
