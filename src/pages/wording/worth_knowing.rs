//! Words on what knowing more is worth.

pub(crate) const WORTH_OF_KNOWING: &str = "What knowing more is worth";
pub(crate) const POINTS_AS_MONEY: &str = "You keep it, so what a step does for your aim is turned \
    into money at the rate your own points give to cost. Such sums say how much it matters to you \
    beside cost. They are no prices, and may be above what the piece would fetch.";

pub(crate) fn points(count: f64) -> String {
    format!("{count:.0} points in 100")
}

// Looks and tests

pub(crate) const XRAY_BELOW: &str = "X-ray reading of the metal below";
pub(crate) const XRAY_UNWORN: &str = "X-ray reading of an unworn spot";
pub(crate) const DENSITY: &str = "Weighing in water (density)";
pub(crate) const SEAM: &str = "Looking for the seam";
pub(crate) const OPINION: &str = "Conservator's opinion";
pub(crate) const NONE_OF_THESE: &str = "None of these";
pub(crate) const LEAD_TEST: &str = "Release test for lead";
pub(crate) const NOTHING: &str = "nothing";

// What could be known

pub(crate) const KIND: &str = "What it is";
pub(crate) const UNDAMAGED: &str = "What an undamaged one fetches";
pub(crate) const BLEED: &str = "How much base metal shows";
pub(crate) const LEAD: &str = "Whether there is lead";
pub(crate) const COST: &str = "What the work costs";
pub(crate) const MISHAP: &str = "Whether the work goes wrong";

// Knowing for sure

pub(crate) const ABOUT_NONE: &str = "about 0 %";
pub(crate) const TOO_LITTLE: &str = "too little to tell";
pub(crate) const ALL_AT_ONCE: &str = "All of it at once";
pub(crate) const KNOWN_CAPTION: &str =
    "What knowing one thing for sure would be worth to this decision";
pub(crate) const KNOWN_COLUMNS: [&str; 3] = [
    "If you knew",
    "Worth about",
    "Share of the spread it explains",
];

pub(crate) fn rules_asked_again(worth: &str, courses: &str) -> String {
    format!(
        "Some rules hold a course back until it is known what the piece is. With those asked again, knowing \
         would be worth about {worth}; it might then allow: {courses}."
    )
}

pub(crate) const NOTHING_COUNTS: &str =
    "Nothing you could know for sure would change the choice enough to count";

pub(crate) fn pays_most(name: &str, worth: &str) -> String {
    format!("{name} is what it would pay most to know: worth about {worth}")
}

pub(crate) fn kind_does_not_count(opinion: &str) -> String {
    format!(
        "Knowing for sure what it is would not change the choice enough to count; an opinion costs about \
         {opinion}, so it does not pay for this decision alone."
    )
}

pub(crate) fn opinion_pays(worth: &str, opinion: &str) -> String {
    format!(
        "Knowing for sure what it is would be worth about {worth}; an opinion costs about {opinion}, so it is \
         worth asking for."
    )
}

pub(crate) fn opinion_does_not_pay(worth: &str, opinion: &str) -> String {
    format!(
        "Knowing for sure what it is would be worth about {worth}; an opinion costs about {opinion}, so it does \
         not pay for money alone."
    )
}

pub(crate) fn cost_counts_for_nothing(worth: &str) -> String {
    format!(
        "Knowing for sure what it is would be worth about {worth}. Cost counts for nothing in your weights, so \
         it cannot be set against a fee."
    )
}

// Looking and testing

pub(crate) const LOOKS_CAPTION: &str = "What a look or a test would be worth, and what it costs";
pub(crate) const LOOKS_COLUMNS: [&str; 4] =
    ["Look or test", "Worth about", "Costs about", "Left over"];
pub(crate) const LEAD_TEST_ALLOWS: &str = "A test for lead can be worth more than merely knowing: \
    some things are allowed only once it has been made.";
pub(crate) const GREATEST_FIRST: &str = "Those with something left over pay for themselves; take the \
    greatest first, and weigh again after it.";
pub(crate) const NONE_PAYS: &str = "None of them pays for itself in this decision. They may still be \
    worth it for their own sake, or for safety.";

// How this was worked out

pub(crate) const METHOD: &str = "How this was worked out";

pub(crate) fn method(samples: u32) -> String {
    format!(
        "Worth of knowing is how much better the best choice would do on average if one knew first. It is \
         worked out over {samples} separate samples and left out where it is no greater than their spread. A \
         thing may be very uncertain and still be worth nothing to know: it matters only where it would change \
         what you do. Only courses that no rule bars are counted, and the rules are taken as they stand now. \
         Answers of a look are taken as if nothing alike had been looked for yet. A keeper's points are turned \
         into money by how much cost counts."
    )
}
