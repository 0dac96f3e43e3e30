//! What the catalog says of a material, in the panel's terms.

use uom::si::f64::Pressure;

use crate::catalog;
use crate::physics::strength::knockdown::KnockDown;
use crate::physics::strength::panel::{Material, Strength};
use crate::quantity::Dimensioned;

/// Density above which a material is a metal, kg/m³: no wood, foam or laminate reaches it. Common practice, no source.
const METAL: f64 = 2400.0;
/// Modulus from which a material counts as fibre laid in several directions, not as a foam, Pa. Common practice, no source.
const FIBRE: f64 = 2e9;
/// Strength in shear within the plane over strength through the thickness, for fibre laid in several directions:
/// within the plane the cross layers hold, through it the weakest layer rolls. Common practice, no source.
const PLANE_OVER_THROUGH: f64 = 3.0;
/// Poisson's ratio of plywood. Source: Wood Handbook, value from memory: cross plies keep it small.
const PLYWOOD_POISSON: f64 = 0.1;

/// A catalog material as a ply of the panel, its stronger direction across the boat.
pub(in crate::case::strength) fn ply_material(material: &catalog::Material) -> Material {
    let (along, across, shear) =
        (material.modulus_along.value, material.modulus_across.value, material.shear_modulus.value);
    let through = material.transverse_shear_modulus.value;
    let (bending, rolling) = (material.bending_strength.value, material.shear_strength.value);
    let alike = (along - across).abs().si() < 1e-6 * along.si();
    let poisson = if alike { (0.5 * along.si() / shear.si() - 1.0).clamp(0.0, 0.4) } else { PLYWOOD_POISSON };
    let strength = if material.density.value.si() > METAL {
        Strength::VonMises { yield_stress: bending }
    } else {
        let plane = if along.si() > FIBRE { PLANE_OVER_THROUGH } else { 1.0 };
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
