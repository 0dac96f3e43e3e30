//! How a transom is built.

use super::{Odd, Relation};
use crate::quantity::{Dimensioned, Measure, inches, say};

/// A transom of nothing but metal.
pub(super) const METAL_IS_PLATE: Relation = Relation {
    name: "a transom of metal is plate, over wood, foam or a box",
    why: "What bolts go through at a boat of metal is her plate and what fills it out. Taken for one solid block it would bear ten times of what it does.",
    source: "Common practice, no source: the plate of welded outboard boats ends at half an inch.",
    look: |known| {
        let rig = known.case.rig;
        let layers = rig.structure.lay_up.reading().filter(|_| !rig.structure.layers_told);
        let [layer] = layers.map_or(&[][..], Vec::as_slice) else { return Vec::new() };
        let metal = layer.material.spec.density.value.si() > METAL;
        let asked = (metal && layer.thickness > inches(THICKEST_PLATE_IN)).then(|| Odd {
            entries: vec!["transom.material".to_owned(), "transom.thickness".to_owned()],
            said: say!(
                "The transom is written as {} of solid {}. A transom of metal is plate over wood, foam or a box: tell what fills it out as the transom's material, or its layers as its lay-up. Or is it one block?",
                Measure::tape(layer.thickness),
                layer.material.name.as_str()
            ),
        });
        asked.into_iter().collect()
    },
};

/// Heavier than this a material is metal, kg/m³: glass laminates end at about 2,000, aluminium begins at 2,660.
const METAL: f64 = 2300.0;
/// Thicker than this no plate of a transom is. Common practice, no source.
const THICKEST_PLATE_IN: f64 = 0.75;
