//! Words of the guide's frame; its content comes from the worker.

pub const TITLE: &str = "How it works";
pub const PURPOSE: &str =
    "What the program does, one piece from start to finish, and what it cannot know.";
pub const PICTURES: &str = "The piece below, in three pictures";
pub const STEPS: [&str; 3] = [
    "You say what you see",
    "You say what is worn or damaged",
    "You see what each choice would bring",
];
pub const LINK: &str = "How it works, with one piece from start to finish";
