//! The engines through their whole range against the boat and each other.

use uom::si::f64::Length;

use super::around::{Around, FACE, TRANSOM, UNMEASURED, around};
use super::cures::{Cure, Spacing, cure};
use super::hang::{Hanging, engines, lacking};
use super::{Answer, Swing, effort, from_boat, gear, ground, study, water};
use crate::case::Case;
use crate::case::stern::Stern;
use crate::job::Role;
use crate::physics::swing::{
    AngleRange, Clearance, LiftLimit, Obstacle, Part, Scene, SwingError, least_distance, nearer_than, permitted_lift,
};
use crate::quantity::{Text, say};
use crate::reading::Absent;

/// One sweep through a whole range.
#[derive(Clone, Debug)]
pub struct Swept {
    /// Which engine moves.
    pub label: String,
    /// Its neighbour, where the sweep is about two.
    pub other: Option<String>,
    /// The scene that was asked about.
    pub scene: Scene,
    /// The least distance in it.
    pub clearance: Clearance,
    /// The distance to keep.
    pub margin: Length,
    /// What would clear it, where it does not keep that distance.
    pub cure: Option<Cure>,
    /// Whether what moves was not described but taken as common practice has it: then contact is no more
    /// than a warning to measure.
    pub taken: bool,
    /// The spacing that would clear two engines, where they come too near each other.
    pub spacing: Option<Spacing>,
    /// How high its lifting bracket may go, where it does not keep that distance.
    pub lift: Option<LiftLimit>,
    /// What else of the boat comes nearer than that distance, each with its own least.
    pub also: Vec<Clearance>,
}

impl Swept {
    /// A sweep of this engine, judged by nothing yet.
    pub(super) fn new(label: &str, scene: Scene, clearance: Clearance, margin: Length) -> Self {
        Swept {
            label: label.to_owned(),
            other: None,
            scene,
            clearance,
            margin,
            cure: None,
            taken: false,
            spacing: None,
            lift: None,
            also: Vec::new(),
        }
    }

    /// The lift of either engine.
    pub fn lifts(&self) -> Option<&crate::physics::swing::Lift> {
        self.scene.engine.lift().or(self.scene.neighbour.as_ref().and_then(|other| other.chain.lift()))
    }

    /// How high the lift may go, where there is one and the distance is not kept.
    pub(super) fn limit_lift(&mut self) -> Result<(), SwingError> {
        if self.lifts().is_some() && !self.keeps() {
            self.lift = Some(permitted_lift(&self.scene, self.margin, &effort())?);
        }
        Ok(())
    }

    /// Whether two bodies touch for certain somewhere in the range.
    pub fn touches(&self) -> bool {
        self.clearance.upper.value <= 0.0
    }

    /// Whether the distance is kept for certain over the whole range.
    pub fn keeps(&self) -> bool {
        self.clearance.lower >= self.margin
    }
}

/// A solver's refusal in words.
pub(super) fn refused(error: &SwingError) -> Absent {
    Absent::CannotBe(say!("The swing cannot be worked out: {}.", format!("{error}")))
}

/// Everything about the swing of the case.
pub(super) fn swing(case: &Case) -> Swing {
    let mut swing = of_engines(case);
    swing.study = case.rig.job.swing_study.as_ref().map(study::answer);
    swing
}

fn of_engines(case: &Case) -> Swing {
    let rig = case.rig;
    let stern = match Stern::of(rig) {
        Ok(stern) => stern,
        Err(mut missing) => {
            missing.splice(0..0, lacking(rig));
            return Swing::nothing(Absent::Waits(missing));
        }
    };
    if rig.after.is_empty() {
        return Swing::nothing(Absent::Waits(lacking(rig)));
    }
    let hanging = match engines(rig, &stern) {
        Ok(hanging) => hanging,
        Err(open) => return Swing::nothing(open),
    };
    let around = match around(rig, &stern, &hanging) {
        Ok(around) => around,
        Err(error) => return Swing::nothing(refused(&error)),
    };
    let against_boat = |range: fn(&Hanging) -> AngleRange, curable: bool| {
        each(&hanging, |engine| {
            let scene = boat_scene(&head_of(engine)?, range(engine), around.known.clone());
            against(&engine.label, scene, &around, from_boat(), curable)
        })
    };
    let mut swing = Swing {
        full_tilt: against_boat(|engine| engine.fitted.tilt, true),
        raised: super::lifted::raised(&hanging, &around),
        lock: against_boat(|engine| engine.running, true),
        neighbours: super::beside::neighbours(&hanging),
        cylinder: gear::cylinders(rig, &hanging, &around),
        tie_bar: gear::tie_bars(rig, &hanging, &around),
        water: water::above(case, &hanging),
        ground: ground::over(rig, &stern, &hanging),
        study: None,
        assumed: Vec::new(),
        engines: Ok(Vec::new()),
        around: Err(Absent::Waits(Vec::new())),
    };
    swing.assumed = assumed(&swing, &hanging, &around, rig);
    swing.engines = Ok(hanging);
    swing.around = Ok(around);
    swing
}

fn assumed(swing: &Swing, hanging: &[Hanging], around: &Around, rig: &crate::rig::Rig) -> Vec<Text> {
    let mut assumed = super::hang::assumed(hanging);
    if swing.full_tilt.is_ok() || swing.cylinder.is_ok() || swing.tie_bar.is_ok() {
        assumed.extend(around.assumed.clone());
    }
    assumed.extend(gear::assumed(swing, rig));
    assumed.extend(water::assumed(swing));
    assumed
}

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

/// Beginning of the names of the cowl's bodies.
const COWL: &str = "powerhead cowl";

/// An engine against these bodies of the boat. How near leg and lower unit come to the face that
/// carries them is the maker's own trim stop, whatever the boat: only the cowl is held against that.
pub(super) fn boat_scene(engine: &Hanging, tilt: AngleRange, obstacles: Vec<Obstacle>) -> Scene {
    let mut scene = Scene::new(engine.fitted.chain.clone(), tilt, engine.fitted.steer);
    scene.obstacles = obstacles;
    for (_, body) in engine.fitted.chain.bodies() {
        for fixed in [TRANSOM, FACE] {
            if !body.name().starts_with(COWL) {
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
