//! The checks that a text report names in lists.

use std::collections::BTreeSet;

/// Full names, such as `Stern: well edge`, of the checks that stand in the lists under a heading: `Power: plate limit, too little;
/// Stern: well edge`, two letters in; what is said of them stands farther in.
pub fn listed(text: &str, heading: &str) -> BTreeSet<String> {
    // A heading may be set bold.
    let section = text.lines().skip_while(|line| line.starts_with(' ') || !line.contains(heading)).skip(1);
    let mut lists: Vec<String> = Vec::new();
    let mut goes_on = false;
    for line in section.take_while(|line| line.starts_with("  ")) {
        let names = !line[2..].starts_with(' ');
        match lists.last_mut() {
            Some(list) if names && goes_on => *list += &line[1..],
            _ if names => lists.push(line[2..].to_owned()),
            _ => {}
        }
        goes_on = names;
    }
    let of_family = |part: &str| {
        let (family, names) = part.split_once(": ").unwrap_or(("", part));
        names.split(", ").map(|name| format!("{family}: {name}")).collect::<Vec<_>>()
    };
    lists.iter().flat_map(|list| list.split("; ").flat_map(of_family).collect::<Vec<_>>()).collect()
}
