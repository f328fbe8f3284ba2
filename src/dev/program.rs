//! Runs other programs and finds out whether they are installed.

use std::env;
use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use crate::paths;
use crate::trouble::{Fallible, Trouble};

/// A command that runs in the project's root folder, with an empty standard input.
pub(crate) fn command(program: impl AsRef<OsStr>) -> Command {
    let mut command = Command::new(program);
    command.current_dir(paths::root()).stdin(Stdio::null());
    command
}

/// The cargo that runs this command.
pub(crate) fn cargo() -> Command {
    command(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
}

/// npm, by its name on this system.
pub(crate) fn npm() -> Command {
    command(if cfg!(windows) { "npm.cmd" } else { "npm" })
}

/// Runs a command with its output on the terminal. Any exit code but 0 is an error.
pub(crate) fn run(command: &mut Command) -> Fallible<()> {
    let status = command
        .status()
        .map_err(|error| cannot_start(command, &error))?;
    if status.success() {
        Ok(())
    } else {
        Err(Trouble::new(
            format!("`{}` failed ({status})", shown(command)),
            "read its output above, which says why.",
        ))
    }
}

/// The trimmed standard output of a command, or `None` if it is missing or fails.
pub(crate) fn answer(command: &mut Command) -> Option<String> {
    let output = command.stderr(Stdio::null()).output().ok()?;
    output
        .status
        .success()
        .then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

/// The command as a person would type it.
pub(crate) fn shown(command: &Command) -> String {
    let program = Path::new(command.get_program());
    let name = program.file_stem().unwrap_or(program.as_os_str());
    std::iter::once(name)
        .chain(command.get_args())
        .map(OsStr::to_string_lossy)
        .collect::<Vec<_>>()
        .join(" ")
}

/// The error for a program that is missing or may not be run.
pub(crate) fn cannot_start(command: &Command, error: &std::io::Error) -> Trouble {
    Trouble::new(
        format!("`{}` could not be started: {error}", shown(command)),
        "check that the program is installed and on PATH.",
    )
}

/// The file name of an executable that cargo builds, with the suffix of this system.
pub(crate) fn file_name(program: &str) -> String {
    format!("{program}{}", env::consts::EXE_SUFFIX)
}

/// `PATH` with these folders in front.
pub(crate) fn path_with(first: &[PathBuf]) -> Fallible<std::ffi::OsString> {
    let rest = env::var_os("PATH").unwrap_or_default();
    env::join_paths(first.iter().cloned().chain(env::split_paths(&rest))).map_err(|error| {
        Trouble::new(
            format!("the tool folders cannot be put on PATH: {error}"),
            "set LEAVEWELL_CACHE to a folder whose name has no path separator in it.",
        )
    })
}
