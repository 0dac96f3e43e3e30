//! What each engine is for, where nobody says.

use uom::si::f64::Power;

use super::Resolver;
use crate::catalog::Catalog;
use crate::job::{BracketKind, EngineGroup, Role};
use crate::quantity::{Dimensioned, horsepower, say};

/// A small engine beside a large one brings her home or trolls. Common practice, no source: up to 25 hp, and a quarter of the
/// other.
const SMALL_HP: f64 = 25.0;
const SMALL_SHARE: f64 = 0.25;

/// The roles of these groups, in their order: as written, else by their size and by what they hang on.
pub(super) fn roles(catalog: &Catalog, groups: &[EngineGroup]) -> Vec<Role> {
    let powers: Vec<Option<Power>> = groups.iter().map(|group| power(catalog, group)).collect();
    let largest = powers.iter().flatten().map(|power| power.si()).fold(0.0, f64::max);
    let small = |power: &Option<Power>| {
        power.is_some_and(|power| power.si() <= SMALL_SHARE * largest && power <= horsepower(SMALL_HP))
    };
    let guessed = |(group, power): (&EngineGroup, &Option<Power>)| {
        let beside = groups.len() > 1;
        if beside && (small(power) || on_auxiliary_bracket(catalog, group)) { Role::Auxiliary } else { Role::Main }
    };
    groups.iter().zip(&powers).map(|both| both.0.role.unwrap_or_else(|| guessed(both))).collect()
}

fn power(catalog: &Catalog, group: &EngineGroup) -> Option<Power> {
    let described = group.described.as_ref();
    let spec = described.or_else(|| catalog.engine(group.class.as_deref()?).map(|entry| &entry.spec))?;
    Some(spec.power.as_ref()?.value)
}

fn on_auxiliary_bracket(catalog: &Catalog, group: &EngineGroup) -> bool {
    let spec = group.bracket.as_ref().and_then(|hung| {
        hung.described.as_ref().or_else(|| catalog.bracket(hung.class.as_deref()?).map(|entry| &entry.spec))
    });
    spec.is_some_and(|spec| spec.kind == Some(BracketKind::Auxiliary))
}

impl Resolver<'_> {
    /// Tells which engine was taken to be an auxiliary though nobody said so.
    pub(super) fn tell_role(&mut self, group: &EngineGroup, role: Role, label: &str) {
        if group.role.is_none() && role == Role::Auxiliary {
            self.assumed.push(say!(
                "The {} is taken to bring her home or to troll, and does not count against the power limit: where it drives her, write role: main.",
                label
            ));
        }
    }
}
