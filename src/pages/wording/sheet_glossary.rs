//! Wording around the glossary. The meanings are part of the model, because the screens show them too.

pub(crate) const WORDS_USED: &str = "Words used here";

pub(crate) const LIKELIHOOD: &str = "These words say how likely something is (Mastrandrea et al. \
    2010). Where two ranges overlap, the narrower one applies.";
pub(crate) const FIRMNESS_AND_RANGES: &str = "Clear, leaning and open say how firm an answer is. A \
    range such as \"200 to 400\" leaves out the lowest and the highest tenth of the cases tried; \
    half of them lie above the middle value and half below.";
