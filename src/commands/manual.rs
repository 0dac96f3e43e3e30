//! `completions` and `man`: what a shell and a reader of manuals want to know of the program.

use std::process::ExitCode;

use clap::{Args, CommandFactory};
use clap_complete::Shell;
use clap_mangen::Man;

use super::{Cli, CommandError, print};

#[derive(Args)]
pub(super) struct CompletionsArgs {
    /// The shell
    #[arg(value_enum)]
    shell: Shell,
}

pub(super) fn completions(args: &CompletionsArgs) -> Result<ExitCode, CommandError> {
    let mut command = Cli::command();
    let name = command.get_name().to_owned();
    let mut script = Vec::new();
    clap_complete::generate(args.shell, &mut command, name, &mut script);
    print(&String::from_utf8_lossy(&script))?;
    Ok(ExitCode::SUCCESS)
}

#[derive(Args)]
pub(super) struct ManArgs {
    /// Print the page of this command, in place of the page of the whole program
    command: Option<String>,
}

pub(super) fn man(args: &ManArgs) -> Result<ExitCode, CommandError> {
    let mut whole = Cli::command();
    whole.build();
    let wanted = match &args.command {
        None => whole,
        Some(name) => {
            let found = whole.find_subcommand(name).ok_or_else(|| CommandError::Unknown {
                what: "the command",
                name: name.clone(),
                hint: "`sternknee --help` lists them".to_owned(),
            })?;
            found.clone()
        }
    };
    let mut page = Vec::new();
    Man::new(wanted).render(&mut page).map_err(CommandError::Unprinted)?;
    print(&String::from_utf8_lossy(&page))?;
    Ok(ExitCode::SUCCESS)
}
