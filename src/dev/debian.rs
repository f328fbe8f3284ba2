//! Packages of the system, where it is Debian and this program may install them.

use std::path::Path;

use crate::program::{answer, command, run};
use crate::trouble::Fallible;

/// Whether [`install`] can do anything here.
pub(crate) fn can_install() -> bool {
    Path::new("/etc/debian_version").is_file()
        && answer(command("id").arg("-u")).is_some_and(|id| id == "0")
        && answer(command("apt-get").arg("--version")).is_some()
}

/// Installs packages of the system, without those they only recommend.
///
/// # Errors
/// When apt-get fails; its own words are on the terminal.
pub(crate) fn install(packages: &[&str]) -> Fallible<()> {
    let apt = |arguments: &[&str]| {
        run(command("apt-get")
            .args(arguments)
            .env("DEBIAN_FRONTEND", "noninteractive"))
    };
    apt(&["update", "-qq"])?;
    let wanted = ["install", "-y", "-qq", "--no-install-recommends"];
    apt(&[&wanted, packages].concat())
}
