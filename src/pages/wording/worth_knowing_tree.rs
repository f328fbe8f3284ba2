//! Wording on what to test first, and on acting now or waiting.

pub(crate) const ASK_THEN_DO: &str = "What to ask, then what to do";

pub(crate) fn begin_with(step: &str) -> String {
    format!("The best first step: {step}")
}

pub(crate) fn ask_nothing(step: &str) -> String {
    format!("No further test is needed for the best choice: {step}")
}

pub(crate) const HOW_TO_READ: &str = "Squares are choices and circles are test results. Numbers \
    are the average outcome compared with leaving the piece alone, after fees. The best choice at \
    each square is dark and followed further; the losing ones are pale and keep their numbers. \
    Each test appears at most once, with no more than three in a row. The rules apply as they \
    stand now, except for what a lead test would allow.";
pub(crate) const ACT_OR_WAIT: &str = "Acting now or waiting, in numbers";

// Tests

pub(crate) const LEAD_TEST: &str = "Release test for lead";
pub(crate) const PASSES: &str = "Passes";
pub(crate) const LEAD_FOUND: &str = "Lead found";
pub(crate) const THEN: &str = ", then ";

// The tree

pub(crate) const DO_THIS: &str = "do this";
pub(crate) const LOSES: &str = "loses";
pub(crate) const MAY_HAPPEN: &str = "may happen";
pub(crate) const DESCRIPTION: &str = "A tree drawn downward: each choice or test result has its \
    own line, indented under the one it follows, with its outcome on the right.";
pub(crate) const CAPTION: &str = "The same tree, line by line; each dash is one step further";
pub(crate) const STEP: &str = "Step";
pub(crate) const HOW_LIKELY: &str = "How likely";
pub(crate) const AGAINST_LEAVING: &str = "Compared with leaving it";

// Waiting

pub(crate) const NOTHING_ALLOWED: &str = "The rules allow no work on the piece as things stand, so \
    there is nothing to decide in a hurry.";

pub(crate) fn waiting_keeps_nothing(act: &str) -> String {
    format!(
        "Nothing you could find out first would change what you do later, so waiting keeps no choice open: \
         {act} may as well be done now."
    )
}

pub(crate) fn waiting_costs_nothing(act: &str, gain: &str) -> String {
    format!(
        "Waiting costs nothing here, and nothing you could find out first would favour {act}. Act now only \
         if that gains more than {gain} for a reason not counted here."
    )
}

pub(crate) fn waiting_keeps_a_choice(worth: &str, test: &str, act: &str, gain: &str) -> String {
    format!(
        "Waiting keeps open a choice worth about {worth}: the {test} could still change it. Act now ({act}) \
         only if that gains more than {gain} for reasons not counted here."
    )
}

pub(crate) const NO_COURSE: &str = "There is no course to compare with leaving it.";

pub(crate) fn act_caption(act: &str, test: &str) -> String {
    format!(
        "{act}, compared with leaving it; you would learn the result of the {test}, its fee not counted."
    )
}

pub(crate) const ACT_NOW: &str = "Acting now";
pub(crate) const WAIT_BLIND: &str = "Waiting without learning anything";
pub(crate) const WAIT_AND_LEARN: &str = "Waiting, learning, then choosing";
pub(crate) const QUASI_OPTION: &str =
    "What learning adds, given that you wait (quasi-option value)";
pub(crate) const OPTION: &str =
    "What waiting adds to the better of acting now and waiting blind (option value)";
pub(crate) const WOULD_HAVE_TO_GAIN: &str = "What acting now would have to gain in addition";
pub(crate) const FORGETTING: &str = "The same, ignoring what you learn by waiting";
pub(crate) const TWO_VALUES: &str = "The two option values answer different questions and are kept \
    apart; the second is negative where acting now is right.";
