//! What is left of the core, by what was read of it.

use super::NoStrength;
use super::bend::unfit;
use super::board::Board;
use super::footing::Footing;
use crate::job::{self, Sitting, Sound};
use crate::physics::strength::bolts::bolt_forces;
use crate::physics::strength::knockdown::{self, KnockDown, Percussion};
use crate::physics::strength::loads::FaceLoad;
use crate::physics::strength::panel::{Load, PanelError, scale_of_part};
use crate::physics::strength::panel_loads;
use crate::quantity::{Dimensioned, Measure, Text, inches, say, standard_gravity};
use crate::rig::Rig;

/// The core and its readings.
#[derive(Clone, Debug)]
pub struct Core {
    /// Whether anybody looked.
    pub read: bool,
    /// What is left of stiffness and strength.
    pub left: KnockDown,
    /// The readings in words.
    pub words: Vec<Text>,
    /// Readings that are still to be taken.
    pub moisture: bool,
    pub percussion: bool,
    /// What a measured flex said, as a part of the sound stiffness.
    pub flex: Option<f64>,
    /// The flex test, where it is still to be made and would move enough to be read.
    pub test: Option<FlexTest>,
}

/// A test to make: a weight on the lower unit with the leg level.
#[derive(Clone, Debug)]
pub struct FlexTest {
    /// Whose lower unit.
    pub engine: String,
    /// Aft of the transom's face, level, m.
    pub arm: f64,
    /// How far the top edge of a sound transom moves under [`FlexTest::WEIGHT`], m.
    pub moves: f64,
}

impl FlexTest {
    /// The weight of the test, kg: a person who leans on the gearcase. Common practice, no source.
    pub const WEIGHT: f64 = 80.0;
}

/// Leg from transom to gearcase where the engine's own is not known. Common practice, no source.
const LEG_IN: f64 = 32.0;
/// What a dial gauge on a boat tells from nothing, m. Common practice, no source.
const READABLE: f64 = 1e-4;
impl Core {
    /// The core by its readings.
    ///
    /// # Errors
    /// A measured flex that no stiffness explains.
    pub fn of(rig: &Rig, board: &Board, after: &[Footing], before: Option<&[Footing]>) -> Result<Core, NoStrength> {
        let said = &rig.structure.said;
        let hangs = match (rig.sitting, before) {
            (Sitting::AsFitted, _) | (_, None) => after,
            (_, Some(before)) => before,
        };
        let mut core = Core {
            read: false,
            left: KnockDown::SOUND,
            words: Vec::new(),
            moisture: false,
            percussion: false,
            flex: None,
            test: None,
        };
        core.hear(rig);
        if let Some(moisture) = &said.moisture
            && let Some(left) = knockdown::by_moisture(100.0 * moisture.value.si())
        {
            core.moisture = true;
            core.lower(left, say!("moisture {} %", percent(moisture.value.si())));
        }
        let Some(flex) = &said.flex else {
            if core.left != KnockDown::SOUND {
                core.test = test(rig, board, hangs);
            }
            return Ok(core);
        };
        let y = flex.engine_at.as_ref().map_or(0.0, |at| at.y().si());
        let scale = scale(board, hangs, y, flex)?;
        let left = knockdown::by_flex(scale).unwrap_or(KnockDown::SOUND);
        core.read = true;
        core.flex = Some(scale);
        core.words.push(say!(
            "the top edge moved {} under {}, as with {} of the core's sound stiffness left",
            Measure::tape(flex.moved.value),
            Measure::of(flex.weight.value),
            Measure::of(uom::si::f64::Ratio::from_si(scale))
        ));
        // A measured flex overrules what hammer and meter rank.
        core.left = left;
        Ok(core)
    }

    fn hear(&mut self, rig: &Rig) {
        let (heard, word) = match (rig.structure.said.percussion, rig.transom.core) {
            (Some(Sound::Sharp), _) => (Percussion::Sound, "the hammer sounds sharp"),
            (Some(Sound::Dull), _) => (Percussion::Dull, "the hammer sounds dull"),
            (Some(Sound::Dead), _) => (Percussion::Dead, "the hammer sounds dead"),
            (None, Some(job::Core::Sound)) => (Percussion::Sound, "found sound"),
            (None, Some(job::Core::Suspect)) => (Percussion::Dull, "found suspect"),
            (None, Some(job::Core::Soft)) => (Percussion::Dead, "found soft"),
            (None, None) => return,
        };
        self.percussion = rig.structure.said.percussion.is_some();
        self.lower(knockdown::by_percussion(heard), Text::from(word));
    }

    fn lower(&mut self, left: KnockDown, word: Text) {
        self.read = true;
        self.left = self.left.lower(left);
        self.words.push(word);
    }
}

fn percent(part: f64) -> Measure {
    Measure::of(uom::si::f64::Ratio::from_si((1000.0 * part).round() / 10.0))
}

/// A weight on the lower unit of the engine nearest to `y`: what it brings to the panel, and where its top edge is.
fn pulled(board: &Board, footings: &[Footing], y: f64, arm: f64, weight: f64) -> Option<(Vec<Load>, [f64; 2])> {
    let footing = footings.iter().min_by(|a, b| (a.middle[0] - y).abs().total_cmp(&(b.middle[0] - y).abs()))?;
    // The leg is level behind the top edge.
    let at = board.stern.top - board.stern.on_face(footing.middle[1]);
    let load = FaceLoad::at([at.x - arm, y - footing.middle[0], at.z], [0.0, 0.0, -weight * standard_gravity().si()])
        .leaning(board.lean());
    let forces = bolt_forces(&footing.bolts, footing.face, load.on_bolts(footing.middle)).ok()?;
    let loads = panel_loads(&footing.bolts, footing.face, &forces, &footing.spreads(board), inches(1.5).si());
    let y = y.clamp(-0.99 * board.half_top, 0.99 * board.half_top);
    // A hair under the edge, lest rounding put it off the panel.
    Some((loads, [y, board.top * (1.0 - 1e-6)]))
}

/// How far the panel moves at a place, m.
fn deflection(board: &Board, left: KnockDown, loads: &[Load], at: [f64; 2]) -> Result<f64, PanelError> {
    let factored = board.factored(left)?;
    let bent = factored.bend(&[loads])?;
    Ok(bent.first().and_then(|loaded| factored.deflection_at(loaded, at)).unwrap_or(0.0))
}

fn scale(board: &Board, footings: &[Footing], y: f64, flex: &job::Flex) -> Result<f64, NoStrength> {
    let (loads, at) = pulled(board, footings, y, flex.arm.value.si(), flex.weight.value.si())
        .ok_or_else(|| NoStrength::Unfit(Text::from("The flex cannot be reckoned: no engine hangs there.")))?;
    // The lower unit goes down, the top edge aft. The core alone is softened, as it is wherever a reading of it counts.
    let deflection = |stiffness: f64| {
        let left = KnockDown { stiffness, ..KnockDown::SOUND };
        deflection(board, left, &loads, at)
    };
    match scale_of_part(deflection, -flex.moved.value.si()) {
        Err(PanelError::NoScale { .. }) => Err(NoStrength::Unfit(say!(
            "The top edge moved {}, which no softness of the core explains: a skin or a support has let go, or the reading is wrong.",
            Measure::tape(flex.moved.value)
        ))),
        scale => scale.map_err(unfit),
    }
}

fn test(rig: &Rig, board: &Board, footings: &[Footing]) -> Option<FlexTest> {
    let footing = footings.iter().find(|footing| !footing.is_small())?;
    let hung = footing.hung.first()?;
    let leg = [&rig.after, &rig.before]
        .into_iter()
        .flat_map(|outfit| outfit.engines())
        .find(|(_, engine)| engine.label == hung.name)
        .and_then(|(group, engine)| {
            let setback = board.level(group.setback().reading()?.value);
            Some((setback + engine.rest_to_plate.reading()?.value).si())
        })
        .unwrap_or(inches(LEG_IN).si());
    let inch = inches(1.0).si();
    let arm = (leg / inch).round() * inch;
    let (loads, at) = pulled(board, footings, footing.middle[0], arm, FlexTest::WEIGHT)?;
    let moves = deflection(board, KnockDown::SOUND, &loads, at).ok()?;
    (moves.abs() > READABLE).then(|| FlexTest { engine: hung.name.clone(), arm, moves: moves.abs() })
}
