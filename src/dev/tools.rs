//! Installs what building needs: the wasm target, and the tools that build the site.
//!
//! Each tool is installed once, at a fixed version, into a separate folder in the user cache. The folder has
//! a temporary name until the tool is complete, so an interrupted installation never passes for a good one.
//! A lock on the cache keeps two commands from installing at once.

use std::fs::{self, File, TryLockError};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::Instant;

use crate::paths;
use crate::program::{answer, cannot_start, cargo, command, file_name, npm, path_with, run, shown};
use crate::trouble::{Fallible, Trouble};

/// The latest Trunk that the project's Rust version compiles.
const TRUNK: &str = "0.21.14";
/// The npm package `binaryen`, which provides `wasm-opt`. Keep in step with `wasm_opt` in `Trunk.toml`.
const BINARYEN: &str = "132";
const WASM: &str = "wasm32-unknown-unknown";
const LEAST_NODE: u32 = 20;

/// The installed tools that build the site.
pub(crate) struct Tools {
    trunk: PathBuf,
    folders: Vec<PathBuf>,
}

impl Tools {
    /// A Trunk command that finds our tools first and does not check for newer versions.
    pub(crate) fn trunk(&self) -> Fallible<Command> {
        let mut trunk = command(&self.trunk);
        trunk
            .arg("--skip-version-check")
            .env("PATH", path_with(&self.folders)?)
            // Some machines set it to a number, which Trunk rejects.
            .env_remove("NO_COLOR");
        Ok(trunk)
    }
}

/// Installs whatever is missing of the tools that build the site.
pub(crate) fn site_tools() -> Fallible<Tools> {
    wasm_target()?;
    node()?;
    let cache = paths::tools()?;
    let bindgen = wasm_bindgen_version()?;
    let wanted = [
        Tool {
            name: "Trunk",
            folder: format!("trunk-{TRUNK}"),
            program: Path::new("bin").join(file_name("trunk")),
            minutes: "about 5 minutes",
            // It compiles only with the lock file it was published with.
            source: Origin::Cargo(vec!["--locked", "trunk", "--version", TRUNK]),
        },
        Tool {
            name: "wasm-bindgen",
            folder: format!("wasm-bindgen-{bindgen}"),
            program: Path::new("bin").join(file_name("wasm-bindgen")),
            minutes: "about 2 minutes",
            // Its published lock file may name a dependency that is no longer available.
            source: Origin::Cargo(vec!["wasm-bindgen-cli", "--version", &bindgen]),
        },
        Tool {
            name: "wasm-opt",
            folder: format!("binaryen-{BINARYEN}"),
            program: Path::new("node_modules/.bin").join(if cfg!(windows) {
                "wasm-opt.cmd"
            } else {
                "wasm-opt"
            }),
            minutes: "a few seconds",
            source: Origin::Npm(format!("binaryen@{BINARYEN}.0.0")),
        },
    ];
    if !wanted.iter().all(|tool| tool.is_in(&cache)) {
        fs::create_dir_all(&cache).map_err(|error| cannot_write(&cache, &error))?;
        let _held_until_the_end = lock(&cache)?;
        for tool in &wanted {
            tool.install_into(&cache)?;
        }
    }
    let programs = wanted.map(|tool| tool.path_in(&cache));
    Ok(Tools {
        folders: programs
            .iter()
            .filter_map(|program| program.parent().map(Path::to_path_buf))
            .collect(),
        trunk: programs.into_iter().next().unwrap_or_default(),
    })
}

/// Adds the wasm target to the current Rust toolchain, if it is missing.
pub(crate) fn wasm_target() -> Fallible<()> {
    let installed = answer(command("rustc").args(["--print", "target-libdir", "--target", WASM]))
        .is_some_and(|folder| Path::new(&folder).is_dir());
    if installed {
        return Ok(());
    }
    need_rustup(&format!("the Rust target {WASM} is missing"))?;
    println!("Adding the Rust target {WASM} (a few seconds, once)");
    run(command("rustup").args(["target", "add", WASM]))
}

/// Adds the formatter and the linter to the current Rust toolchain, if they are missing.
pub(crate) fn lint_components() -> Fallible<()> {
    for (component, subcommand) in [("rustfmt", "fmt"), ("clippy", "clippy")] {
        if answer(cargo().args([subcommand, "--version"])).is_none() {
            need_rustup(&format!("the Rust component {component} is missing"))?;
            println!("Adding the Rust component {component} (a few seconds, once)");
            run(command("rustup").args(["component", "add", component]))?;
        }
    }
    Ok(())
}

/// Checks that Node.js and npm are installed. This project does not install them.
pub(crate) fn node() -> Fallible<()> {
    let cure = format!(
        "install Node.js {LEAST_NODE} or newer with npm (Debian: apt-get install nodejs npm; elsewhere its own installer), then run the command again."
    );
    let Some(version) = answer(command("node").arg("--version")) else {
        return Err(Trouble::new("Node.js is missing", cure));
    };
    if major(&version).is_none_or(|number| number < LEAST_NODE) {
        return Err(Trouble::new(format!("Node.js {version} is too old"), cure));
    }
    if answer(npm().arg("--version")).is_none() {
        return Err(Trouble::new(
            "npm is missing, though Node.js is installed",
            cure,
        ));
    }
    Ok(())
}

/// The first number of a version such as `v20.20.2`.
fn major(version: &str) -> Option<u32> {
    version
        .trim_start_matches('v')
        .split('.')
        .next()?
        .parse()
        .ok()
}

fn need_rustup(why: &str) -> Fallible<()> {
    if answer(command("rustup").arg("--version")).is_some() {
        return Ok(());
    }
    Err(Trouble::new(
        format!("{why}, and so is rustup, which could add it"),
        "install rustup (see rust-lang.org), open a new terminal and run the command again.",
    ))
}

/// A tool at a fixed version.
struct Tool<'a> {
    name: &'a str,
    /// Its folder in the cache; the version is part of the name.
    folder: String,
    /// The path of the executable inside that folder.
    program: PathBuf,
    minutes: &'a str,
    source: Origin<'a>,
}

enum Origin<'a> {
    /// Arguments of `cargo install`.
    Cargo(Vec<&'a str>),
    /// An npm package with its version.
    Npm(String),
}

impl Tool<'_> {
    fn path_in(&self, cache: &Path) -> PathBuf {
        cache.join(&self.folder).join(&self.program)
    }

    fn is_in(&self, cache: &Path) -> bool {
        self.path_in(cache).is_file()
    }

    fn install_into(&self, cache: &Path) -> Fallible<()> {
        if self.is_in(cache) {
            return Ok(());
        }
        let whole = cache.join(&self.folder);
        let part = cache.join(format!("{}.part", self.folder));
        remove(&part)?;
        fs::create_dir_all(&part).map_err(|error| cannot_write(&part, &error))?;
        println!(
            "Installing {} ({}, once; into {})",
            self.folder,
            self.minutes,
            whole.display()
        );
        let begun = Instant::now();
        self.source.fetch_into(&part, self.name)?;
        if !part.join(&self.program).is_file() {
            return Err(Trouble::new(
                format!("{} was installed, but its executable is missing", self.name),
                format!("delete {} and run the command again.", part.display()),
            ));
        }
        remove(&whole)?;
        fs::rename(&part, &whole).map_err(|error| cannot_write(&whole, &error))?;
        println!("  installed in {} s", begun.elapsed().as_secs());
        Ok(())
    }
}

impl Origin<'_> {
    fn fetch_into(&self, folder: &Path, name: &str) -> Fallible<()> {
        let mut installer = match self {
            Origin::Cargo(arguments) => {
                let mut installer = cargo();
                installer
                    .args(["install", "--root"])
                    .arg(folder)
                    .args(arguments);
                installer
            }
            Origin::Npm(package) => {
                let mut installer = npm();
                installer
                    .args([
                        "install",
                        "--no-audit",
                        "--no-fund",
                        "--save-exact",
                        "--prefix",
                    ])
                    .arg(folder)
                    .arg(package);
                installer
            }
        };
        let output = installer
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .output()
            .map_err(|error| cannot_start(&installer, &error))?;
        if output.status.success() {
            return Ok(());
        }
        let errors = String::from_utf8_lossy(&output.stderr);
        let lines: Vec<&str> = errors.lines().collect();
        for line in lines.iter().skip(lines.len().saturating_sub(15)) {
            eprintln!("  | {line}");
        }
        Err(Trouble::new(
            format!(
                "{name} could not be installed (`{}` failed)",
                shown(&installer)
            ),
            "read the lines above, which say why. If the network failed, connect this machine and run the command again; if a compiler or linker is missing, install one (Debian: apt-get install build-essential).",
        ))
    }
}

/// Waits until no other command is installing into the cache, then locks it until the file is dropped.
///
/// The operating system releases the lock when the process ends, even after a crash.
fn lock(cache: &Path) -> Fallible<File> {
    let path = cache.join("lock");
    let file = File::create(&path).map_err(|error| cannot_write(&path, &error))?;
    match file.try_lock() {
        Ok(()) => return Ok(file),
        Err(TryLockError::WouldBlock) => {
            println!("Waiting for another command that is installing the same tools");
        }
        Err(TryLockError::Error(error)) => return Err(cannot_write(&path, &error)),
    }
    file.lock().map_err(|error| cannot_write(&path, &error))?;
    Ok(file)
}

fn remove(folder: &Path) -> Fallible<()> {
    match fs::remove_dir_all(folder) {
        Err(error) if error.kind() != std::io::ErrorKind::NotFound => {
            Err(cannot_write(folder, &error))
        }
        _ => Ok(()),
    }
}

fn cannot_write(path: &Path, error: &std::io::Error) -> Trouble {
    Trouble::new(
        format!("{} cannot be written: {error}", path.display()),
        "free some space or mend the permissions, or set LEAVEWELL_CACHE to another folder.",
    )
}

/// The version of wasm-bindgen in Cargo.lock. The tool must have exactly the same version.
fn wasm_bindgen_version() -> Fallible<String> {
    let path = paths::root().join("Cargo.lock");
    let lock = fs::read_to_string(&path).unwrap_or_default();
    locked_version(&lock, "wasm-bindgen")
        .map(str::to_owned)
        .ok_or_else(|| {
            Trouble::new(
                "Cargo.lock does not name a version of wasm-bindgen",
                "restore the Cargo.lock of the project, or run `cargo generate-lockfile`.",
            )
        })
}

/// The version of a package in the text of a lock file.
fn locked_version<'a>(lock: &'a str, package: &str) -> Option<&'a str> {
    let name = format!("name = \"{package}\"");
    let mut lines = lock.lines().skip_while(|line| *line != name);
    lines.next()?;
    lines
        .next()?
        .strip_prefix("version = \"")?
        .strip_suffix('"')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_locked_version_is_found_by_the_full_package_name() {
        let lock = "[[package]]\nname = \"wasm-bindgen-futures\"\nversion = \"0.4.1\"\n\n\
                    [[package]]\nname = \"wasm-bindgen\"\nversion = \"0.2.130\"\n";
        assert_eq!(locked_version(lock, "wasm-bindgen"), Some("0.2.130"));
        assert_eq!(locked_version(lock, "wasm"), None);
    }

    #[test]
    fn the_major_version_of_node_is_read() {
        assert_eq!(major("v20.20.2"), Some(20));
        assert_eq!(major("nonsense"), None);
    }

    #[test]
    fn trunk_toml_names_the_same_tool_versions() {
        let settings = fs::read_to_string(paths::root().join("Trunk.toml")).unwrap_or_default();
        let bindgen = wasm_bindgen_version().unwrap_or_default();
        for line in [
            format!("wasm_bindgen = \"{bindgen}\""),
            format!("wasm_opt = \"version_{BINARYEN}\""),
        ] {
            assert!(settings.contains(&line), "Trunk.toml should say {line}");
        }
    }
}
