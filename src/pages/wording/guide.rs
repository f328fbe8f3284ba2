//! Words of the guide.

pub(crate) const WHAT: &str = "What it does";
pub(crate) const DOES: [&str; 4] = [
    "You record what you see: the metal that shows, the marks, the faults, and what anybody has offered to do.",
    "It works out what the piece probably is and how much silver is left on it.",
    "It weighs leaving the piece alone against every treatment that could help: the price it would bring, what the work costs, what is lost for good, and what is dangerous.",
    "It tells you how sure it is, and what you could look at to be surer.",
];
pub(crate) const STAYS_HERE: &str =
    "Everything you type stays on this device. Nothing is sent anywhere.";

pub(crate) const WORKED: &str = "A piece from start to finish";

pub(crate) fn invented(name: &str) -> String {
    format!(
        "This piece is invented: {name}. The words and sums below are what the program says of it now. Open a copy of it from the first screen to try it yourself."
    )
}

pub(crate) const RECORDED: &str = "What was recorded";
pub(crate) const SEEN: &str = "Seen: ";
pub(crate) const NOT_THERE: &str = "Looked for and not there: ";

pub(crate) fn bare(part: &str, share: &str) -> String {
    format!("{part}: {share} of the silver is gone, and the metal below shows.")
}

pub(crate) const IS: &str = "What it is";
pub(crate) const EACH_ANSWER: &str =
    "Each answer moves the odds. The picture shows by how much, the strongest first.";
pub(crate) const SILVER: &str = "How much silver is left";
pub(crate) const WORTH: &str = "What it is worth";
pub(crate) const UNDAMAGED: &str = "Without a fault";
pub(crate) const AS_IT_IS: &str = "As it is";
pub(crate) const KEPT: &str = "What its seller keeps after fees";
pub(crate) const CHOICES: &str = "What could be done";
pub(crate) const CHOICES_CAPTION: &str = "What each choice costs and does to what its seller keeps";
pub(crate) const CHOICES_COLUMNS: [&str; 3] = ["Choice", "Cost", "Gain over leaving it"];
pub(crate) const NOTHING: &str = "Nothing";
pub(crate) const ADVICE: &str = "What we advise";
pub(crate) const CHANGES: &str = "What would change it";
pub(crate) const NOTHING_CHANGES_IT: &str =
    "None of the inputs we moved changes the advice, however far.";

pub(crate) const CANNOT: &str = "What it cannot know";
pub(crate) const LIMITS: [&str; 5] = [
    "It never sees the piece. A photo is kept for you and your restorer; the program does not look at it.",
    "Most of its figures are our judgement, with a range, because nobody publishes what work on old plate costs or brings. The figures can be read and changed, each with its source.",
    "It names no maker and gives no market price. The prices come from you, from sales you enter, or from wide ranges of our own.",
    "It cannot tell whether a repair holds lead or whether a lining is safe for food. Only a test of that place can.",
    "It is no substitute for a conservator who has the piece in hand, nor for the law where you live.",
];

pub(crate) const BEGIN: &str = "Where to begin";
pub(crate) const ROADS: [(&str, &str); 3] = [
    (
        "You own a piece",
        "Answer a few short questions from the first screen. The first advice stands after five, and each further answer makes it firmer.",
    ),
    (
        "You restore for a client",
        "Record the faults under Condition, put your proposal and its prices together on the page of advice, then print the client's sheet.",
    ),
    (
        "You deal",
        "Enter what you paid and what you think it would fetch under Money. It gives the most to pay, where to sell, and which work pays. The first screen holds your stock as a table.",
    ),
];
