//! An engine through a range of poses, against what stands round it.

use uom::si::f64::Length;

use super::around::{Around, FACE, TRANSOM, UNMEASURED};
use super::cures::cure;
use super::hang::Hanging;
use super::swept::{Swept, refused};
use super::{Answer, effort};
use crate::job::Role;
use crate::physics::swing::called::COWL;
use crate::physics::swing::{AngleRange, Obstacle, Part, Scene, least_distance, nearer_than};
use crate::reading::Absent;

/// The answer for each of several; the first that has none decides.
pub(super) fn each<I, T>(items: &[I], ask: impl Fn(&I) -> Answer<T>) -> Answer<Vec<T>> {
    items.iter().map(ask).collect()
}

/// The engine with its head alone. The swivel is drawn as one hull from the tilt tube over the transom's top
/// down the steering axis, and passes through the transom; what matters of it forward of the transom is the
/// tube, which stands still.
pub(super) fn head_of(engine: &Hanging) -> Answer<Hanging> {
    let mut head = engine.clone();
    head.fitted.chain = head.fitted.chain.keeping(|part, _| part == Part::Head).map_err(|error| refused(&error))?;
    Ok(head)
}

/// An engine against these bodies of the boat. How near leg and lower unit come to the face that
/// carries them is the maker's own trim stop, whatever the boat: only the cowl is held against that.
pub(super) fn boat_scene(engine: &Hanging, tilt: AngleRange, obstacles: Vec<Obstacle>) -> Scene {
    let mut scene = Scene::new(engine.fitted.chain.clone(), tilt, engine.fitted.steer);
    scene.obstacles = obstacles;
    for (_, body) in engine.fitted.chain.bodies() {
        for fixed in [TRANSOM, FACE] {
            if !COWL.contains(&body.name()) {
                scene.may_touch.push((body.name().to_owned(), fixed.to_owned()));
            }
        }
    }
    scene
}

/// The least distance in a scene of the boat. Where readings of the well are missing, all that could be there
/// counts as solid: what keeps clear of that needs no readings.
pub(super) fn against(label: &str, mut scene: Scene, around: &Around, margin: Length, curable: bool) -> Answer<Swept> {
    if !around.missing.is_empty() {
        let known = least_distance(&scene, &effort()).map_err(|error| refused(&error))?;
        if known.upper > margin {
            push_unknown(&mut scene, &around.unknown);
            let all = least_distance(&scene, &effort()).map_err(|error| refused(&error))?;
            if all.lower < margin {
                return Err(Absent::Waits(around.missing.clone()));
            }
        }
    }
    let clearance = least_distance(&scene, &effort()).map_err(|error| refused(&error))?;
    let mut swept = Swept::new(label, scene, clearance, margin);
    if curable && !swept.keeps() {
        swept.cure = Some(cure(&swept)?);
        swept.limit_lift().map_err(|error| refused(&error))?;
        let nearer = nearer_than(&swept.scene, margin, &effort()).map_err(|error| refused(&error))?;
        swept.also = nearer.into_iter().filter(|other| other.other != swept.clearance.other).collect();
    }
    Ok(swept)
}

/// Whatever may touch the transom may touch the space that begins at it.
fn push_unknown(scene: &mut Scene, unknown: &Obstacle) {
    scene.obstacles.push(unknown.clone());
    let free: Vec<_> = scene
        .may_touch
        .iter()
        .filter(|(_, fixed)| fixed == TRANSOM)
        .map(|(body, _)| (body.clone(), UNMEASURED.to_owned()))
        .collect();
    scene.may_touch.extend(free);
}

/// Whether the engine is one that drives her.
pub(super) fn is_main(engine: &&Hanging) -> bool {
    engine.role == Role::Main
}
