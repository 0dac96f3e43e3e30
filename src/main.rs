use std::process::ExitCode;

use clap::Parser;

fn main() -> ExitCode {
    sternknee::commands::run(sternknee::commands::Cli::parse())
}
