use std::process::ExitCode;

fn main() -> ExitCode {
    sternknee::commands::main(std::env::args_os())
}
