//! Runs the whole job in Chromium, Firefox and `WebKit`, after finding or installing the last two.
//!
//! They come from the system's packages, which only Debian's administrator can install. Elsewhere the step is
//! skipped and says why, unless `LEAVEWELL_ENGINES` is `required`, as it is in CI.

use std::env;
use std::path::Path;

use crate::browser;
use crate::debian;
use crate::trouble::{Fallible, Trouble};

/// What an engine needs: the program, and the package of Debian that has it.
const NEEDED: [(&str, &str); 3] = [
    ("firefox-esr", "firefox-esr"),
    ("WebKitWebDriver", "webkit2gtk-driver"),
    ("Xvfb", "xvfb"),
];

/// Why the step cannot run here; `None` where it can, or must.
pub(crate) fn obstacle() -> Option<String> {
    let required = env::var_os("LEAVEWELL_ENGINES").is_some_and(|value| value == "required");
    let missing = missing();
    if missing.is_empty() || required || debian::can_install() {
        return None;
    }
    Some(format!(
        "{} missing, and only Debian's administrator can install them here (apt-get install {})",
        missing.join(", "),
        missing.join(" ")
    ))
}

/// Runs the job in every engine against the site in `dist`.
pub(crate) fn test() -> Fallible<()> {
    let missing = missing();
    if !missing.is_empty() && debian::can_install() {
        println!("Installing Firefox and WebKit from the system's packages (about a minute, once)");
        debian::install(&missing)?;
    }
    let missing = self::missing();
    if !missing.is_empty() {
        return Err(Trouble::new(
            format!(
                "the job in every engine needs {}, which is not installed",
                missing.join(" and ")
            ),
            format!(
                "install it (Debian: sudo apt-get install {}).",
                missing.join(" ")
            ),
        ));
    }
    // Node.js 20 has WebSocket behind this flag.
    browser::node(
        &[
            "--experimental-websocket",
            "--test-reporter=spec",
            "engines/jobs.mjs",
        ],
        &[],
    )
}

/// The packages of the programs that are not installed.
fn missing() -> Vec<&'static str> {
    NEEDED
        .iter()
        .filter(|(program, _)| !Path::new("/usr/bin").join(program).is_file())
        .map(|(_, package)| *package)
        .collect()
}
