//! What is left of the core, by what was read of it.

use std::sync::Arc;

use uom::si::f64::Ratio;

use super::board::Board;
use super::footing::Footing;
use super::grip::STRIP_IN;
use super::state::unfit;
use crate::job::{self, Sitting, Sound};
use crate::physics::strength::bolts::bolt_forces;
use crate::physics::strength::knockdown::{self, KnockDown, Percussion};
use crate::physics::strength::loads::FaceLoad;
use crate::physics::strength::panel::{Load, Meshed, PanelError, scales_of_part};
use crate::physics::strength::panel_loads;
use crate::quantity::{Dimensioned, Measure, Text, inches, say, standard_gravity};
use crate::reading::Absent;
use crate::rig::Rig;

/// The core and its readings.
#[derive(Clone, Debug)]
pub struct Core {
    /// What is left of stiffness and strength.
    pub left: KnockDown,
    /// The readings in words.
    pub words: Vec<Text>,
    /// What a measured flex said.
    pub flex: Option<FlexRead>,
    /// The flex test, where it is still to be made and would move enough to be read.
    pub test: Option<FlexTest>,
}

/// What a measured flex leaves of the core's stiffness, as parts of the sound one: 0 where no softness of the core alone
/// lets it move as far.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlexRead {
    /// As it was read.
    pub as_read: f64,
    /// The least that can be left of it, the reading being off by its tolerance.
    pub at_least: f64,
    /// The most: so, and the sound transom moving [`FlexRead::MODEL`] times as far as it is worked out to.
    pub at_most: f64,
}

impl FlexRead {
    /// How many times as far a sound transom may move as it is worked out to: supports give, and a lay-up is stiffer or softer
    /// than its class. Common practice, no source.
    pub const MODEL: f64 = 2.0;
    /// What the edge moves besides by bending, m: the bracket sinks into its seat, and the gauge's stand gives. Common practice,
    /// no source.
    pub const SEAT: f64 = 0.5e-3;
    /// How far off a flex may be that was written without a tolerance, m: a dial gauge held on a boat. Common practice, no source.
    const GAUGE: f64 = 0.25e-3;
    /// Stiffness that is left at least, however far it moves: softer ones are not sought.
    const SOFTEST: f64 = 1e-3;

    /// What is left for certain, every doubt in the core's favour.
    pub fn certain(&self) -> KnockDown {
        left(self.at_most)
    }

    /// What is left as it was read.
    pub fn read(&self) -> KnockDown {
        left(self.as_read)
    }

    /// What is left with every doubt against the core.
    pub fn doubted(&self) -> KnockDown {
        left(self.at_least)
    }
}

fn left(scale: f64) -> KnockDown {
    knockdown::by_flex(scale.clamp(FlexRead::SOFTEST, 1.0)).unwrap_or(KnockDown::SOUND)
}

/// A test to make: a weight on the lower unit with the leg level.
#[derive(Clone, Debug)]
pub struct FlexTest {
    /// Whose lower unit.
    pub engine: String,
    /// Aft of the transom's face, level, m.
    pub arm: f64,
    /// How far the top edge of a sound transom moves under [`FlexTest::WEIGHT`], [`FlexRead::SEAT`] with it, m.
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
/// Part of a flex that counts as none. Common practice, no source.
const NOTHING: f64 = 1e-3;
/// How fine a mesh a flex is worked out on, beside that for strength: a deflection is known to 1 % on half of it.
const TEST_FINENESS: f64 = 0.5;

impl Core {
    /// The core by its readings.
    ///
    /// # Errors
    /// A measured flex that no stiffness explains.
    pub fn of(rig: &Rig, board: &Board, after: &[Footing], before: Option<&[Footing]>) -> Result<Core, Absent> {
        let said = &rig.structure.said;
        let hangs = match (rig.job.sitting, before) {
            (Sitting::AsFitted, _) | (_, None) => after,
            (_, Some(before)) => before,
        };
        let mut core = Core { left: KnockDown::SOUND, words: Vec::new(), flex: None, test: None };
        core.hear(rig);
        if let Some(moisture) = &said.moisture
            && let Some(left) = knockdown::by_moisture(100.0 * moisture.value.si())
        {
            core.lower(left, moisture_words(moisture.value));
        }
        let Some(flex) = &said.flex else {
            if core.left != KnockDown::SOUND {
                core.test = test(rig, board, hangs);
            }
            return Ok(core);
        };
        let y = flex.engine_at.as_ref().map_or(0.0, |at| at.y().si());
        let read = read(board, hangs, y, flex)?;
        core.flex = Some(read);
        core.words.push(flex_words(flex, read));
        // A measured flex overrules what hammer and meter rank. Only what has gone for certain is taken off, and no more strength
        // than of a dead core: a transom that moves farther still has let go elsewhere.
        let certain = read.certain();
        let dead = knockdown::by_percussion(Percussion::Dead);
        core.left = KnockDown { strength: certain.strength.max(dead.strength), ..certain };
        Ok(core)
    }

    /// The hammer and the word for the core: both count, for either may have found the one soft place.
    fn hear(&mut self, rig: &Rig) {
        if let Some(core) = rig.job.transom.core {
            let heard = match core {
                job::Core::Sound => Percussion::Sound,
                job::Core::Suspect => Percussion::Dull,
                job::Core::Soft => Percussion::Dead,
            };
            self.lower(knockdown::by_percussion(heard), core_words(core));
        }
        if let Some(sound) = rig.structure.said.percussion {
            let heard = match sound {
                Sound::Sharp => Percussion::Sound,
                Sound::Dull => Percussion::Dull,
                Sound::Dead => Percussion::Dead,
            };
            self.lower(knockdown::by_percussion(heard), hammer_words(sound));
        }
    }

    fn lower(&mut self, left: KnockDown, word: Text) {
        self.left = self.left.lower(left);
        self.words.push(word);
    }
}

/// "found soft".
pub fn core_words(core: job::Core) -> Text {
    say!("found {}", core.words())
}

/// "the hammer sounds dull".
pub fn hammer_words(sound: Sound) -> Text {
    say!("the hammer sounds {}", sound.words())
}

/// "moisture 26 %".
pub fn moisture_words(moisture: Ratio) -> Text {
    say!("moisture {} %", percent(moisture.si()))
}

fn flex_words(flex: &job::Flex, read: FlexRead) -> Text {
    let part = |scale: f64| Measure::of(Ratio::from_si(scale));
    // A gauge reads hundredths; a tape rounds them away.
    let moved = say!("the top edge moved {} under {}", Measure::of(flex.moved.value), Measure::of(flex.weight.value));
    if read.as_read <= 0.0 {
        return moved.then(Text::from(", farther than any softness of the core explains"));
    }
    if read.as_read >= 1.0 {
        return moved.then(Text::from(", no farther than with a sound core"));
    }
    moved.then(say!(", as with {} of the core's sound stiffness left", part(read.as_read)))
}

fn percent(part: f64) -> Measure {
    Measure::of(Ratio::from_si((1000.0 * part).round() / 10.0))
}

/// A weight on the lower unit of the engine nearest to `y`: what it brings to the panel, and where its top edge is.
fn pulled(board: &Board, footings: &[Footing], y: f64, arm: f64, weight: f64) -> Option<(Vec<Load>, [f64; 2])> {
    let footing = footings.iter().min_by(|a, b| (a.middle[0] - y).abs().total_cmp(&(b.middle[0] - y).abs()))?;
    // The leg is level behind the top edge.
    let at = board.stern.top - board.stern.on_face(footing.middle[1]);
    let load = FaceLoad::at([at.x - arm, y - footing.middle[0], at.z], [0.0, 0.0, -weight * standard_gravity().si()])
        .leaning(board.lean());
    let forces = bolt_forces(&footing.bolts, footing.face, load.on_bolts(footing.middle)).ok()?;
    let loads = panel_loads(&footing.bolts, footing.face, &forces, &footing.spreads(board), inches(STRIP_IN).si());
    let y = y.clamp(-0.99 * board.half_top, 0.99 * board.half_top);
    // A hair under the edge, lest rounding put it off the panel.
    Some((loads, [y, board.top * (1.0 - 1e-6)]))
}

/// How far the panel moves at a place, m.
fn deflection(
    board: &Board,
    meshed: &Arc<Meshed>,
    left: KnockDown,
    loads: &[Load],
    at: [f64; 2],
) -> Result<f64, PanelError> {
    let factored = board.factored(left, meshed)?;
    let bent = factored.bend(&[loads])?;
    Ok(bent.first().and_then(|loaded| factored.deflection_at(loaded, at)).unwrap_or(0.0))
}

/// What a measured flex leaves of the core.
fn read(board: &Board, footings: &[Footing], y: f64, flex: &job::Flex) -> Result<FlexRead, Absent> {
    let (loads, at) = pulled(board, footings, y, flex.arm.value.si(), flex.weight.value.si())
        .ok_or_else(|| Absent::CannotBe(Text::from("The flex cannot be reckoned: no engine hangs there.")))?;
    // The core alone is softened, as it is wherever a reading of it counts.
    let meshed = board.meshed(TEST_FINENESS);
    let softened = |stiffness: f64| {
        let left = KnockDown { stiffness, ..KnockDown::SOUND };
        deflection(board, &meshed, left, &loads, at)
    };
    let moved = flex.moved.value.si();
    let off = flex.moved.tolerance.map_or(FlexRead::GAUGE, |off| off.si().abs());
    // A gauge that may have stood still moved next to nothing, and a part of what it moved is not bending.
    let bent = |far: f64| (far - FlexRead::SEAT).max(NOTHING * moved);
    let [as_read, most, least] = [bent(moved), bent(moved + off), bent(moved - off) / FlexRead::MODEL];
    // The lower unit goes down, the top edge aft.
    let [as_read, at_least, at_most] =
        scales_of_part(softened, [as_read, most, least].map(|bent| -bent)).map_err(unfit)?;
    Ok(FlexRead { as_read, at_least, at_most })
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
    let moves = deflection(board, &board.meshed(TEST_FINENESS), KnockDown::SOUND, &loads, at).ok()?;
    (moves.abs() > READABLE).then(|| FlexTest { engine: hung.name.clone(), arm, moves: moves.abs() + FlexRead::SEAT })
}
