//! Wording on what knowing more is worth.

pub(crate) const WORTH_OF_KNOWING: &str = "What knowing more is worth";
pub(crate) const POINTS_AS_MONEY: &str = "You are keeping the piece, so what a step does for your \
    aim is converted into money at the rate your own points give to cost. Such sums say how much \
    it matters to you compared with cost. They are not prices, and may exceed what the piece would \
    fetch.";

pub(crate) fn points(count: f64) -> String {
    format!("{count:.0} points in 100")
}

// Looks and tests

pub(crate) const XRAY_BELOW: &str = "X-ray reading of the metal underneath";
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

// Perfect information

pub(crate) const ABOUT_NONE: &str = "about 0 %";
pub(crate) const TOO_LITTLE: &str = "too little to tell";
pub(crate) const ALL_AT_ONCE: &str = "All of it at once";
pub(crate) const KNOWN_CAPTION: &str =
    "What knowing one thing for certain would be worth to this decision";
pub(crate) const KNOWN_COLUMNS: [&str; 3] = [
    "If you knew",
    "Worth about",
    "Share of the spread it explains",
];

pub(crate) fn rules_asked_again(worth: &str, courses: &str) -> String {
    format!(
        "Some rules hold a course back until you know what the piece is. Applying them again once you knew, \
         knowing would be worth about {worth}; it might then allow: {courses}."
    )
}

pub(crate) const NOTHING_COUNTS: &str =
    "Nothing you could know for certain would change the choice enough to matter";

pub(crate) fn pays_most(name: &str, worth: &str) -> String {
    format!("The most useful thing to know: {name}, worth about {worth}")
}

pub(crate) fn kind_does_not_count(opinion: &str) -> String {
    format!(
        "Knowing for certain what it is would not change the choice enough to matter; an opinion costs about \
         {opinion}, so it does not pay for this decision alone."
    )
}

pub(crate) fn opinion_pays(worth: &str, opinion: &str) -> String {
    format!(
        "Knowing for certain what it is would be worth about {worth}; an opinion costs about {opinion}, so \
         it is worth asking for."
    )
}

pub(crate) fn opinion_does_not_pay(worth: &str, opinion: &str) -> String {
    format!(
        "Knowing for certain what it is would be worth about {worth}; an opinion costs about {opinion}, so \
         it does not pay in money alone."
    )
}

pub(crate) fn cost_counts_for_nothing(worth: &str) -> String {
    format!(
        "Knowing for certain what it is would be worth about {worth}. Cost has no weight in your aims, so \
         this cannot be compared with a fee."
    )
}

// Looking and testing

pub(crate) const LOOKS_CAPTION: &str = "What a look or a test would be worth, and what it costs";
pub(crate) const LOOKS_COLUMNS: [&str; 4] =
    ["Look or test", "Worth about", "Costs about", "Left over"];
pub(crate) const LEAD_TEST_ALLOWS: &str = "A lead test can be worth more than the knowledge alone: \
    some work is allowed only once the test is done.";
pub(crate) const GREATEST_FIRST: &str = "Those with something left over pay for themselves. Start with the greatest, then look at the advice again.";
pub(crate) const NONE_PAYS: &str = "None of them pays for itself in this decision. They may still be worth doing out of interest, or for safety.";

// How this was worked out

pub(crate) const METHOD: &str = "How this was worked out";

pub(crate) fn method(samples: u32) -> String {
    format!(
        "The worth of knowing is how much better the best choice would do on average if you knew first. It \
         is worked out over {samples} separate samples and left out where it is no greater than their \
         spread. A thing may be very uncertain and still not be worth knowing: it matters only where it \
         would change what you do. Only courses that no rule bars are counted, under the rules as they stand \
         now. The answers of a look are treated as if nothing similar had been looked for yet. If you keep \
         the piece, points are turned into money by the weight you give to cost."
    )
}
