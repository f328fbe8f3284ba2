//! `cargo serve`: serves the site on this machine and rebuilds it when a source file changes.

use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::PathBuf;
use std::process::ExitCode;
use std::thread;
use std::time::Duration;

use crate::paths;
use crate::program::cannot_start;
use crate::tools;
use crate::trouble::{Fallible, Trouble};

const FIRST_PORT: u16 = 8080;
const LAST_PORT: u16 = 8179;

/// Which build of the site to serve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum SiteBuild {
    /// The build that is published.
    Released,
    /// An unoptimised build: the same screens and answers, slower and several times as large, rebuilt in seconds.
    Quick,
}

impl SiteBuild {
    /// Trunk's arguments for this build. `wasm-opt` runs on the released build only.
    fn arguments(self) -> &'static [&'static str] {
        match self {
            Self::Released => &["--release"],
            Self::Quick => &["--cargo-profile", "quick"],
        }
    }

    /// The output folder, which no other build writes to.
    fn folder(self) -> PathBuf {
        paths::root().join(match self {
            Self::Released => "target/served",
            Self::Quick => "target/served-quick",
        })
    }
}

/// Serves until interrupted, on the given port or else on the first free one from 8080.
pub(crate) fn serve(build: SiteBuild, asked: Option<u16>) -> Fallible<ExitCode> {
    let tools = tools::site_tools()?;
    let port = match asked {
        Some(port) if is_free(port) => port,
        Some(port) => {
            return Err(Trouble::new(
                format!("port {port} is taken or not allowed"),
                "stop the program that uses it, or run `cargo serve` without --port to get a free one.",
            ));
        }
        None => (FIRST_PORT..=LAST_PORT)
            .find(|port| is_free(*port))
            .ok_or_else(|| {
                Trouble::new(
                    format!("every port from {FIRST_PORT} to {LAST_PORT} is taken"),
                    "choose one with `cargo serve --port N`.",
                )
            })?,
    };
    let mut trunk = tools.trunk()?;
    trunk
        .args(["serve", "--no-autoreload", "true"])
        .args(build.arguments())
        .args(["--address", "127.0.0.1", "--port", &port.to_string()])
        .arg("--dist")
        .arg(build.folder());
    println!("Building; this takes a minute the first time.");
    let mut server = trunk
        .spawn()
        .map_err(|error| cannot_start(&trunk, &error))?;
    thread::spawn(move || announce(port));
    let status = server
        .wait()
        .map_err(|error| cannot_start(&trunk, &error))?;
    Ok(if status.success() {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    })
}

/// Reads a port number from the command line, 1 to 65535.
pub(crate) fn parse_port(text: &str) -> Fallible<u16> {
    text.parse().ok().filter(|port| *port > 0).ok_or_else(|| {
        Trouble::new(
            format!("{text} is not a port number"),
            "give a number from 1 to 65535, such as `cargo serve --port 8090`.",
        )
    })
}

fn is_free(port: u16) -> bool {
    TcpListener::bind((Ipv4Addr::LOCALHOST, port)).is_ok()
}

/// Waits for the server to answer, then prints the site's address.
fn announce(port: u16) {
    let address = SocketAddr::from((Ipv4Addr::LOCALHOST, port));
    while TcpStream::connect_timeout(&address, Duration::from_secs(1)).is_err() {
        thread::sleep(Duration::from_millis(200));
    }
    println!(
        "\nLeavewell is at http://127.0.0.1:{port}/ (Ctrl+C stops it; after a rebuild, reload the page and take the new version it offers)\n"
    );
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_valid_ports_are_accepted() {
        assert_eq!(parse_port("8090"), Ok(8090));
        assert!(parse_port("0").is_err());
        assert!(parse_port("70000").is_err());
        assert!(parse_port("door").is_err());
    }
}
