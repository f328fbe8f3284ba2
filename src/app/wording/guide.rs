//! Words of the guide's frame; its content comes from the worker.

pub const TITLE: &str = "How it works";
pub const PURPOSE: &str =
    "What the program does, one piece from start to finish, and what it cannot know.";
pub const LINK: &str = "How it works, with one piece from start to finish";
