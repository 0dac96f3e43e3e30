//! `rules`: the list, or one rule in full.

use std::process::ExitCode;

use clap::Args;

use super::{CommandError, print};
use crate::{report, rules};

#[derive(Args)]
pub(super) struct RulesArgs {
    /// The rule to explain, such as power/plate-limit
    id: Option<String>,
}

pub(super) fn run(args: &RulesArgs) -> Result<ExitCode, CommandError> {
    match &args.id {
        Some(id) => {
            let rule = rules::find(id).ok_or_else(|| CommandError::Unknown {
                what: "the rule",
                name: id.clone(),
                hint: "`sternknee rules` lists them".to_owned(),
            })?;
            print(&report::explain_rule(rule))?;
        }
        None => print(&report::rule_list())?,
    }
    Ok(ExitCode::SUCCESS)
}
