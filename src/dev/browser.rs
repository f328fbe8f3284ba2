//! Runs the browser tests, after finding or installing Chromium and their packages.

use std::env;
use std::fs;
use std::path::PathBuf;

use crate::debian;
use crate::paths;
use crate::program::{command, npm, run};
use crate::tools;
use crate::trouble::{Fallible, Trouble};

/// Runs every browser test against the site in `dist`.
pub(crate) fn test() -> Fallible<()> {
    // A test mostly waits, so two files can run at once even on two cores.
    node(
        &["--test", "--test-reporter=spec", "--test-concurrency=2"],
        &[],
    )
}

/// Checks the types in the scripts of the page and of the workers.
pub(crate) fn check_scripts() -> Fallible<()> {
    tools::node()?;
    packages()?;
    for scripts in ["page", "worker"] {
        let mut compiler = command("node");
        compiler
            .current_dir(folder())
            .args(["node_modules/typescript/bin/tsc", "--project"])
            .arg(format!("../scripts/{scripts}.json"));
        run(&mut compiler)?;
    }
    Ok(())
}

/// The path of this program. A build of the whole workspace may have put a new file in its place since it
/// started, and Linux then adds a word to the path.
fn this_program() -> Option<PathBuf> {
    let path = env::current_exe().ok()?;
    let text = path.to_string_lossy();
    let path = text
        .strip_suffix(" (deleted)")
        .map_or_else(|| path.clone(), PathBuf::from);
    path.is_file().then_some(path)
}

/// Runs a script from the browser tests' folder in Node.js with extra environment variables.
#[cfg(feature = "model")]
pub(crate) fn script(name: &str, given: &[(&str, String)]) -> Fallible<()> {
    node(&[name], given)
}

/// Runs Node.js in the browser tests' folder, with Chromium and the packages at hand.
pub(crate) fn node(arguments: &[&str], given: &[(&str, String)]) -> Fallible<()> {
    tools::node()?;
    let chromium = chromium()?;
    packages()?;
    let mut node = command("node");
    node.current_dir(folder())
        .args(arguments)
        .env("CHROMIUM", chromium);
    // The tests compare the browser's answers with this program's.
    if let Some(program) = this_program() {
        node.env("LEAVEWELL_DEV", program);
    }
    for (key, value) in given {
        node.env(key, value);
    }
    run(&mut node)
}

fn folder() -> PathBuf {
    paths::root().join("tests/browser")
}

/// Installs the tests' packages, unless those of the current lock file are installed already.
fn packages() -> Fallible<()> {
    let lock = folder().join("package-lock.json");
    let wanted = fs::read(&lock).map_err(|error| {
        Trouble::new(
            format!("{} cannot be read: {error}", lock.display()),
            "restore the file from the repository.",
        )
    })?;
    // Written only after a complete installation; the next one removes it with the folder.
    let stamp = folder().join("node_modules/.installed-lock.json");
    if fs::read(&stamp).is_ok_and(|installed| installed == wanted) {
        return Ok(());
    }
    println!("Installing the packages of the browser tests (a few seconds, once)");
    run(npm()
        .current_dir(folder())
        .args(["ci", "--no-audit", "--no-fund", "--ignore-scripts"]))?;
    fs::write(&stamp, wanted).map_err(|error| {
        Trouble::new(
            format!("{} cannot be written: {error}", stamp.display()),
            "free some space or mend the permissions, then run the command again.",
        )
    })
}

/// The browser to test in: the one `CHROMIUM` names, or Chromium in its usual place.
fn chromium() -> Fallible<PathBuf> {
    if let Some(named) = env::var_os("CHROMIUM").filter(|value| !value.is_empty()) {
        let named = PathBuf::from(named);
        return if named.is_file() {
            Ok(named)
        } else {
            Err(Trouble::new(
                format!("CHROMIUM names {}, which is not a file", named.display()),
                "set it to the path of the browser's executable, or unset it.",
            ))
        };
    }
    if let Some(found) = known_chromium() {
        return Ok(found);
    }
    if debian::can_install() {
        println!("Installing Chromium from the system's packages (about a minute, once)");
        debian::install(&["chromium"])?;
    }
    known_chromium().ok_or_else(|| {
        Trouble::new(
            "the browser tests need Chromium, which is not installed",
            "install it (Debian: sudo apt-get install chromium), or set CHROMIUM to the executable of a browser built on it; `cargo verify --quick` runs without one.",
        )
    })
}

fn known_chromium() -> Option<PathBuf> {
    [
        "/usr/bin/chromium",
        "/usr/bin/chromium-browser",
        "/snap/bin/chromium",
        "/Applications/Chromium.app/Contents/MacOS/Chromium",
    ]
    .map(PathBuf::from)
    .into_iter()
    .find(|path| path.is_file())
}
