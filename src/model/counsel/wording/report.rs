//! Words of the report itself.

pub(crate) const SPECIALISTS_LOOK: &str = "a specialist's look";
pub(crate) const SHIELD: &str =
    "A thicker piece of silver is set in here; its thickness is unknown.";
pub(crate) const INDICATIVE: &str = "Indicative, not an appraisal.";
// The same word as in the treatments' data.
pub(crate) const NOTHING_LOST: &str = "Nothing";

// Silver

pub(crate) const SOLID_SILVER: &str = "Most likely solid silver, so there is no layer to lose.";

pub(crate) fn little_left(share: &str) -> String {
    format!("Base metal already shows on {share} of it, so there is little silver left to keep.")
}

pub(crate) const A_FEW_CLEANINGS: &str =
    "After a few more gentle cleanings, twice as much will show.";
pub(crate) const SOME_YEARS: &str =
    "With gentle care it will be some years before twice as much shows.";
pub(crate) const DECADES: &str = "With gentle care it will be decades before twice as much shows.";

pub(crate) fn shows_and_lasts(share: &str, span: &str) -> String {
    format!("Base metal shows on {share} of it. {span}")
}

// What closed pieces taught

pub(crate) fn otherwise_as_shipped(course: &str, pieces: usize) -> String {
    let taught = match pieces {
        1 => "1 closed piece of yours makes".to_owned(),
        _ => format!("{pieces} closed pieces of yours make"),
    };
    format!("Leavewell's own figures would advise: {course}. {taught} the difference.")
}
