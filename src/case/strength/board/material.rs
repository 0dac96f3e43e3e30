//! What the catalog says of a material, in the panel's terms.

use uom::si::f64::{Length, Pressure};

use crate::catalog;
use crate::physics::strength::knockdown::KnockDown;
use crate::physics::strength::panel::{Material, Plywood, Strength};
use crate::quantity::Dimensioned;

/// Density above which a material is a metal, kg/m³: no wood, foam or laminate reaches it. Common practice, no source.
const METAL: f64 = 2400.0;
/// Modulus from which a material counts as fibre laid in several directions, not as a foam, Pa. Common practice, no source.
const FIBRE: f64 = 2e9;
/// Strength in shear within the plane over strength through the thickness, for fibre laid in several directions:
/// within the plane the cross layers hold, through it the weakest layer rolls. Common practice, no source.
const PLANE_OVER_THROUGH: f64 = 4.0;
/// Poisson's ratio of plywood. Source: Wood Handbook, value from memory: cross plies keep it small.
const PLYWOOD_POISSON: f64 = 0.1;

/// What bends: moduli and bending strengths along and across, Pa.
struct Bending {
    moduli: [Pressure; 2],
    strengths: [Pressure; 2],
}

/// A layer's bending: of plywood as so many sheets make it, of all else as its entry says.
fn bending(material: &catalog::Material, thickness: Length) -> Bending {
    let moduli = [material.modulus_along.value, material.modulus_across.value];
    let along = material.bending_strength.value;
    // The weaker direction has the less strength as it has the less stiffness: the same plies hold it.
    let by_stiffness = along * (moduli[1] / moduli[0]).si().min(1.0);
    let told = material.bending_strength_across.as_ref().map(|across| across.value);
    let board = material.plywood.as_ref().and_then(|sheet| {
        let sheets = (thickness / sheet.thickness.value).si();
        Some((Plywood::new(sheet.plies, 1.0)?, Plywood::new(sheet.plies, sheets)?))
    });
    let Some((one, board)) = board else {
        return Bending { moduli, strengths: [along, told.unwrap_or(by_stiffness)] };
    };
    let (one, board) = ([one.along(), one.across()], [board.along(), board.across()]);
    let across = told.unwrap_or(along * (one[1].strength / one[0].strength));
    Bending {
        moduli: [0, 1].map(|k| moduli[k] * (board[k].modulus / one[k].modulus)),
        strengths: [along * (board[0].strength / one[0].strength), across * (board[1].strength / one[1].strength)],
    }
}

/// A catalog material as a ply of the panel, as thick as it lies there, its stronger direction across the boat.
pub(in crate::case) fn ply_material(material: &catalog::Material, thickness: Length) -> Material {
    let Bending { moduli: [along, across], strengths } = bending(material, thickness);
    let shear = material.shear_modulus.value;
    let through = material.transverse_shear_modulus.value;
    let rolling = material.shear_strength.value;
    let poisson =
        if has_grain(material) { PLYWOOD_POISSON } else { (0.5 * along.si() / shear.si() - 1.0).clamp(0.0, 0.4) };
    let strength = if material.density.value.si() > METAL {
        Strength::VonMises { yield_stress: strengths[0] }
    } else {
        let plane = if along.si() > FIBRE { PLANE_OVER_THROUGH } else { 1.0 };
        Strength::MaxStress {
            along_y: strengths[0],
            along_z: strengths[1],
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

/// Whether it is wood with its grain in the transom's plane, which a washer presses across: it is stiffer one way than the
/// other.
pub(super) fn has_grain(material: &catalog::Material) -> bool {
    let (along, across) = (material.modulus_along.value, material.modulus_across.value);
    (along - across).abs().si() >= 1e-6 * along.si()
}

/// The same with its stiffness and strength knocked down.
pub(super) fn weakened(material: Material, knock: KnockDown) -> Material {
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
            Strength::VonMises { yield_stress } => Strength::VonMises { yield_stress: weak(yield_stress) },
            Strength::MaxStress { along_y, along_z, plane_shear, shear_y, shear_z } => Strength::MaxStress {
                along_y: weak(along_y),
                along_z: weak(along_z),
                plane_shear: weak(plane_shear),
                shear_y: weak(shear_y),
                shear_z: weak(shear_z),
            },
        },
    }
}
