//! Words on what to ask first, and on acting now or waiting.

pub(crate) const ASK_THEN_DO: &str = "What to ask, then what to do";

pub(crate) fn begin_with(step: &str) -> String {
    format!("Best is to begin with: {step}")
}

pub(crate) fn ask_nothing(step: &str) -> String {
    format!("Best is to ask nothing further: {step}")
}

pub(crate) const HOW_TO_READ: &str = "Squares are choices, circles are what a test may say. Numbers \
    are what it comes to on average against leaving the piece alone, fees taken off. The best at \
    each square is dark and followed further; what loses is pale and keeps its number. Each test is \
    asked once at most, and no more than three in a row. The rules are taken as they stand now, but \
    for what a test for lead allows.";
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
pub(crate) const DESCRIPTION: &str = "A tree drawn downward: each choice or test result on a line of \
    its own, set in under what it follows from, with what it comes to at the right.";
pub(crate) const CAPTION: &str = "The same tree, line by line; each dash is one step further";
pub(crate) const STEP: &str = "Step";
pub(crate) const HOW_LIKELY: &str = "How likely";
pub(crate) const AGAINST_LEAVING: &str = "Against leaving it";

// Waiting

pub(crate) const NOTHING_ALLOWED: &str = "No rule lets anything be done to the piece as things \
    stand, so there is nothing to decide in a hurry.";

pub(crate) fn waiting_keeps_nothing(act: &str) -> String {
    format!(
        "Nothing you could find out first would change what you do later, so waiting keeps nothing open: {act} \
         may as well be done now."
    )
}

pub(crate) fn waiting_costs_nothing(act: &str, gain: &str) -> String {
    format!(
        "Waiting costs nothing here, and nothing you could find out first would speak for {act}. Act now only \
         if that gains more than {gain} for a reason not counted here."
    )
}

pub(crate) fn waiting_keeps_a_choice(worth: &str, test: &str, act: &str, gain: &str) -> String {
    format!(
        "Waiting keeps a choice open worth about {worth}: what the {test} says could still turn it. Act now \
         ({act}) only if acting now gains more than {gain} besides what is counted here."
    )
}

pub(crate) const NO_COURSE: &str = "There is no course to set against leaving it.";

pub(crate) fn act_caption(act: &str, test: &str) -> String {
    format!(
        "{act} against leaving it; what is learnt is what the {test} would say, its fee not counted."
    )
}

pub(crate) const ACT_NOW: &str = "Acting now";
pub(crate) const WAIT_BLIND: &str = "Waiting without learning anything";
pub(crate) const WAIT_AND_LEARN: &str = "Waiting, learning, then choosing";
pub(crate) const QUASI_OPTION: &str =
    "What learning adds, given that you wait (quasi-option value)";
pub(crate) const OPTION: &str =
    "What waiting adds to the better of acting now and waiting blind (option value)";
pub(crate) const WOULD_HAVE_TO_GAIN: &str = "What acting now would have to gain besides";
pub(crate) const FORGETTING: &str = "The same if one forgets that waiting teaches";
pub(crate) const TWO_VALUES: &str = "The two option values answer different questions and are kept \
    apart; the second is below nothing where acting now is right.";
