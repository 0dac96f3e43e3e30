//! What each engine of an outfit is called: by side, where there are several.

use crate::job::{EngineGroup, Role};
use crate::quantity::Dimensioned;

/// The names, group by group and place by place.
pub(super) struct Names(Vec<Vec<String>>);

impl Names {
    pub(super) fn of(groups: &[EngineGroup], roles: &[Role], age: &str) -> Self {
        let all: Vec<(Role, f64)> = groups
            .iter()
            .zip(roles)
            .flat_map(|(group, role)| group.places().into_iter().map(|at| (*role, at.y().si())))
            .collect();
        let name = |role: Role, y: f64| {
            let peers: Vec<f64> = all.iter().filter(|(r, _)| *r == role).map(|(_, y)| *y).collect();
            let noun = match role {
                Role::Main => "engine",
                Role::Auxiliary => "auxiliary engine",
            };
            let outer = peers.iter().any(|other| other.signum() == y.signum() && other.abs() > y.abs() + 1e-9);
            let inner = if outer { "inner " } else { "" };
            let side = match peers.len() {
                0 | 1 => String::new(),
                _ if y.abs() < 1e-9 => "centre ".to_owned(),
                _ if y > 0.0 => format!("{inner}port "),
                _ => format!("{inner}starboard "),
            };
            format!("{age}{side}{noun}")
        };
        Names(
            groups
                .iter()
                .zip(roles)
                .map(|(group, role)| group.places().iter().map(|at| name(*role, at.y().si())).collect())
                .collect(),
        )
    }

    pub(super) fn label(&self, group: usize, place: usize) -> &str {
        self.0.get(group).and_then(|labels| labels.get(place)).map_or("engine", String::as_str)
    }
}
