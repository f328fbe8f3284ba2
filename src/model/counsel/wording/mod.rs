//! Every word of the counsel, a file for each file that says something: the rule of the pages
//! (`page/wording`), held by the same test.

pub(crate) mod advise;
pub(crate) mod caution_list;
pub(crate) mod change;
pub(crate) mod contrast;
pub(crate) mod course;
pub(crate) mod explain;
pub(crate) mod proposal;
pub(crate) mod report;
pub(crate) mod sentences;
