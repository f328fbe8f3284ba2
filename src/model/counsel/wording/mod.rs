//! Every word of the counsel, with one wording file for each source file that says something. The same
//! rule and the same test apply to the pages.

pub(crate) mod advise;
pub(crate) mod caution_list;
pub(crate) mod change;
pub(crate) mod contrast;
pub(crate) mod course;
pub(crate) mod explain;
pub(crate) mod pieces;
pub(crate) mod proposal;
pub(crate) mod report;
pub(crate) mod selling;
pub(crate) mod sentences;
