//! Words round the list of what the trade's words mean; the meanings stand with the facts, for the
//! screens show them too.

pub(crate) const WORDS_USED: &str = "Words used here";

pub(crate) const LIKELIHOOD: &str = "How likely a thing is, is said in these words (Mastrandrea et \
    al. 2010). Where two ranges meet, the narrower one is meant.";
pub(crate) const FIRMNESS_AND_RANGES: &str = "Clear, leaning and open say how firm an answer is. A \
    range such as \"200 to 400\" leaves out the lowest and the highest tenth of the ways things may \
    be; the middle value has as many above it as below.";
