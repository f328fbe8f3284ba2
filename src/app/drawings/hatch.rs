//! The hatch of bare copper. A fill alone would not tell it from silver.

use crate::app::parts::element::{El, el};

/// A pattern of copper with fine slanting lines, under this id.
pub(super) fn copper_hatch(id: String) -> El {
    let copper = el("rect", "copper").attr("width", "5").attr("height", "5");
    let line = el("line", "copper-edge")
        .attr("x1", "2.5")
        .attr("y1", "0")
        .attr("x2", "2.5")
        .attr("y2", "5");
    el("pattern", "")
        .set("id", id)
        .attr("patternUnits", "userSpaceOnUse")
        .attr("width", "5")
        .attr("height", "5")
        .attr("patternTransform", "rotate(45)")
        .el(copper)
        .el(line)
}
