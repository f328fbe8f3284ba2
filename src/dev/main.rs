//! The project's commands, run through the aliases in `.cargo/config.toml`:
//!
//! - `cargo serve` builds the site and serves it on this machine;
//! - `cargo verify` runs every check, as CI does;
//! - `cargo weigh CASE.json` runs the model on one case and prints the counsel, or with `--sheet` a
//!   sheet for a client, a buyer, the file or a conservator.
//!
//! A fresh machine needs rustup and Node.js; the commands install everything else into a user cache.
//! No code of this crate runs in the browser, and neither the model nor the app depends on it.

mod audit;
mod browser;
mod bundle;
mod debian;
mod engines;
mod finish;
#[cfg(feature = "mutants")]
mod mutants;
mod one_file;
mod pack;
mod paths;
mod program;
mod serve;
mod site;
#[cfg(feature = "model")]
mod speed;
mod sum;
mod tools;
mod trouble;
mod verify;
#[cfg(feature = "model")]
mod weigh;

use std::process::ExitCode;

use serve::SiteBuild;
use trouble::{Fallible, Trouble};

const HELP: &str = "\
cargo serve [--quick] [--port N]
                           build the site and serve it on 127.0.0.1 (port 8080, or the next free one);
                           --quick skips optimisation: larger and slower, but rebuilt in seconds
cargo verify [--quick]     run every check; --quick skips those that need a browser
cargo weigh CASE.json      weigh one case (- reads it from standard input) and print the counsel as JSON
cargo weigh CASE.json --sheet client|buyer|file|conservation [--as markdown|html]
                           print one of its sheets instead

Also: cargo run -p leavewell-dev -- build     build the site into dist
      cargo run -p leavewell-dev -- one-file  make the single-file edition, dist-one/leavewell.html, from the site in dist
      cargo run -p leavewell-dev -- pack      print the sizes of the site in dist and check the budget
      cargo run -p leavewell-dev -- audit     check where the crates come from, and their licences
      cargo run -p leavewell-dev -- speed     print how long an answer takes, here and in Chromium
      cargo run -p leavewell-dev -- mutants [--sample N] [--seed N]
                                              change the model in N small ways and print which changes no
                                              test notices
      cargo run -p leavewell-dev -- browser   run the browser tests on the site in dist
      cargo run -p leavewell-dev -- engines   run the whole job in Chromium, Firefox and WebKit on the site in dist
      cargo run -p leavewell-dev -- pictures  take the pictures of the README, from the site in dist
";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match run(&arguments) {
        Ok(code) => code,
        Err(trouble) => {
            eprintln!("{trouble}");
            ExitCode::FAILURE
        }
    }
}

fn run(arguments: &[&str]) -> Fallible<ExitCode> {
    match arguments {
        ["serve"] => serve::serve(SiteBuild::Released, None),
        ["serve", "--quick"] => serve::serve(SiteBuild::Quick, None),
        ["serve", "--port", port] => {
            serve::serve(SiteBuild::Released, Some(serve::parse_port(port)?))
        }
        ["serve", "--quick", "--port", port] | ["serve", "--port", port, "--quick"] => {
            serve::serve(SiteBuild::Quick, Some(serve::parse_port(port)?))
        }
        ["verify"] => Ok(verify::verify(verify::Extent::Whole)),
        ["verify", "--quick"] => Ok(verify::verify(verify::Extent::Quick)),
        #[cfg(feature = "model")]
        ["weigh", file] if !file.starts_with("--") => weigh::weigh(file),
        #[cfg(feature = "model")]
        ["weigh", file, "--sheet", version] => weigh::sheet(file, version, "markdown"),
        #[cfg(feature = "model")]
        ["weigh", file, "--sheet", version, "--as", form] => weigh::sheet(file, version, form),
        ["weigh"] => Err(Trouble::new(
            "no case was named",
            "give a case file, `cargo weigh CASE.json`, or `-` to read one from standard input.",
        )),
        ["build"] => site::build().map(|()| ExitCode::SUCCESS),
        ["audit"] => audit::audit().map(|()| ExitCode::SUCCESS),
        // Called by Trunk (Trunk.toml) for every build.
        ["finish"] => finish::finish().map(|()| ExitCode::SUCCESS),
        ["one-file"] => one_file::make().map(|()| ExitCode::SUCCESS),
        #[cfg(feature = "model")]
        ["speed"] => speed::speed().map(|()| ExitCode::SUCCESS),
        #[cfg(feature = "mutants")]
        ["mutants", rest @ ..] => mutants::mutants(rest).map(|()| ExitCode::SUCCESS),
        ["browser"] => browser::test().map(|()| ExitCode::SUCCESS),
        ["engines"] => engines::test().map(|()| ExitCode::SUCCESS),
        #[cfg(feature = "model")]
        ["pictures"] => browser::script("pictures.mjs", &[]).map(|()| ExitCode::SUCCESS),
        ["pack"] => pack::pack(&paths::dist()).map(|()| ExitCode::SUCCESS),
        [] | ["help" | "--help" | "-h"] | [_, "--help" | "-h"] => {
            print!("{HELP}");
            Ok(ExitCode::SUCCESS)
        }
        other => Err(Trouble::new(
            format!("unknown command: {}", other.join(" ")),
            format!("the commands are:\n{HELP}"),
        )),
    }
}
