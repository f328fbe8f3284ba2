//! Builds the site into `dist`, ready to copy to any static file server.

use crate::program::run;
use crate::tools;
use crate::trouble::Fallible;

/// Builds the release version of the site, after installing any missing tools.
pub(crate) fn build() -> Fallible<()> {
    let tools = tools::site_tools()?;
    run(tools.trunk()?.args(["build", "--release"]))
}
