//! `cargo serve`: the site on this machine, rebuilt when a source file changes.

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

/// Which form of the site is served.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Build {
    /// The form that is published.
    Released,
    /// Not optimised: the same screens and answers, slower and several times as large, rebuilt in seconds.
    Quick,
}

impl Build {
    /// What tells Trunk to build it. `wasm-opt` runs on the released form only.
    fn arguments(self) -> &'static [&'static str] {
        match self {
            Self::Released => &["--release"],
            Self::Quick => &["--cargo-profile", "quick"],
        }
    }

    /// Its folder: no other build changes what is served.
    fn folder(self) -> PathBuf {
        paths::root().join(match self {
            Self::Released => "target/served",
            Self::Quick => "target/served-quick",
        })
    }
}

/// Serves until interrupted, on the port asked for, or on the first free one from 8080.
pub(crate) fn serve(build: Build, asked: Option<u16>) -> Fallible<ExitCode> {
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

/// Reads the port a person asked for.
pub(crate) fn parse_port(text: &str) -> Fallible<u16> {
    text.parse().ok().filter(|port| *port > 0).ok_or_else(|| {
        Trouble::new(
            format!("{text} is no port"),
            "give a number from 1 to 65535, such as `cargo serve --port 8090`.",
        )
    })
}

fn is_free(port: u16) -> bool {
    TcpListener::bind((Ipv4Addr::LOCALHOST, port)).is_ok()
}

/// Says where the site is, once it is there.
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
    fn only_real_ports_are_read() {
        assert_eq!(parse_port("8090"), Ok(8090));
        assert!(parse_port("0").is_err());
        assert!(parse_port("70000").is_err());
        assert!(parse_port("door").is_err());
    }
}
