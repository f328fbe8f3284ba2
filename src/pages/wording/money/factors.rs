//! Wording on what moves the price.

pub(crate) const FACTORS: &str = "What moves the price";

// Anything else a buyer would notice

pub(crate) const FLAWS: &str = "Anything else a buyer would notice";
pub(crate) const WHATEVER_IS_DONE: &str = "These change what any buyer pays, whatever is done to \
    the silver. Solder or lead put inside stamped borders and hollow parts when the piece was made \
    is not a fault and takes nothing off.";

pub(crate) const YES: &str = "Yes";
pub(crate) const DAMPING: &str = "Several faults together";
pub(crate) const DAMPING_HINT: &str = "At 100 all factors are multiplied. A lower figure makes \
    many faults count for less: the worst counts in full, the rest by this much.";

// The factors, and the user's own

pub(crate) const OWN: &str = "The factors behind this, and your own";
pub(crate) const WHAT_EACH_IS: &str = "Each factor is the price in one condition, as a share of the undamaged price. Enter yours where you know better; an empty field uses ours.";

pub(crate) fn usual_range(low: f64, high: f64, id: &str) -> String {
    format!("Usual range {low} to {high}; {id}.")
}

pub(crate) const OUR_JUDGEMENT: &str =
    "All of these are our judgement: we know of no published figure for plate.";
