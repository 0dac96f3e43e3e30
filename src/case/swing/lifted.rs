//! What a lifting bracket carries into reach: its engine against the boat, and its face against the other engines, over the whole
//! travel.

use super::around::Around;
use super::hang::Hanging;
use super::sweep::{against, boat_scene, head_of};
use super::swept::{Swept, refused};
use super::{Answer, from_boat};
use crate::physics::swing::{AngleRange, Lift, Neighbour, NeighbourTilt, Obstacle, Scene};
use crate::quantity::{Text, degrees};
use crate::reading::Absent;

/// Every engine on a lifting bracket whose travel is known, from the bottom of it to where it is carried.
pub(super) fn raised(hanging: &[Hanging], around: &Around) -> Answer<Vec<Swept>> {
    let lifting: Vec<(&Hanging, Lift)> = hanging.iter().filter_map(|engine| Some((engine, engine.lift?))).collect();
    if lifting.is_empty() {
        return Err(Absent::NotApplicable(Text::from(
            "No engine hangs on a lifting bracket of which the travel is known.",
        )));
    }
    let mut found = Vec::new();
    for (engine, lift) in lifting {
        // Its own bracket's face goes up with it: how near it comes to that is looked at with the engine down.
        let (others, face) = around.beside_bracket_of(engine);
        let mut head = head_of(engine)?;
        head.fitted.chain = head.fitted.chain.lifted(lift);
        let scene = boat_scene(&head, engine.fitted.tilt, others);
        found.push(against(&engine.label, scene, around, from_boat(), true)?);
        let Some(Obstacle::Body(face)) = face else { continue };
        let bracket = engine.fitted.chain.bracket_alone(face.clone()).lifted(lift);
        let still = AngleRange::only("upright", degrees(0.0)).map_err(|error| refused(&error))?;
        for other in hanging.iter().filter(|other| other.label != engine.label && other.lift.is_none()) {
            let mut scene = Scene::new(head_of(other)?.fitted.chain, other.fitted.tilt, other.fitted.steer);
            scene.neighbour = Some(Neighbour { chain: bracket.clone(), tilt: NeighbourTilt::Independent(still) });
            let mut swept = against(&other.label, scene, around, from_boat(), true)?;
            swept.other = Some(engine.label.clone());
            found.push(swept);
        }
    }
    Ok(found)
}
