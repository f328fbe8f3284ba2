//! Building the site into `dist`, ready to be copied to any server.

use crate::program::run;
use crate::tools;
use crate::trouble::Fallible;

/// Builds the released form of the site, installing the tools for it first if need be.
pub(crate) fn build() -> Fallible<()> {
    let tools = tools::site_tools()?;
    run(tools.trunk()?.args(["build", "--release"]))
}
