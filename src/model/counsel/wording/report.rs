//! Words of the report itself.

pub(crate) const SPECIALISTS_LOOK: &str = "a specialist's look";
pub(crate) const SHIELD: &str = "A piece of silver let in: thicker, amount unknown.";
pub(crate) const INDICATIVE: &str = "Indicative, not an appraisal.";
// As the data of treatments say it.
pub(crate) const NOTHING_LOST: &str = "Nothing";

// Silver

pub(crate) const SOLID_SILVER: &str = "Most likely solid silver, so there is no layer to lose.";

pub(crate) fn little_left(share: &str) -> String {
    format!("Base metal shows on {share} of it already; there is little left to keep.")
}

pub(crate) const A_FEW_CLEANINGS: &str = "A few gentle cleanings more and twice as much shows.";
pub(crate) const SOME_YEARS: &str =
    "With gentle care it takes some years until twice as much shows.";
pub(crate) const DECADES: &str = "With gentle care it takes decades until twice as much shows.";

pub(crate) fn shows_and_lasts(share: &str, span: &str) -> String {
    format!("Base metal shows on {share} of it. {span}")
}
