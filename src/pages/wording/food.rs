//! Wording on food and drink.

pub(crate) const FOOD: &str = "Food and drink";

// The answer

pub(crate) const NOTHING_AND_TESTED: &str = "Nothing recorded limits it to display, and a release \
    test passed: this applies only to what was tested, in the way it was tested.";
pub(crate) const NOTHING_YET: &str = "Nothing recorded limits it to display only. That is not a \
    test: only a release test answers for lead.";
pub(crate) const ONE_REASON: &str = "For display only, for one reason.";

pub(crate) fn reasons(count: usize) -> String {
    format!("For display only, for {count} reasons.")
}

pub(crate) fn have_it_tested(answer: &str) -> String {
    format!("{answer} You want to use it for food or drink: have it tested first.")
}

pub(crate) const TIE_TO_THE_PIECE: &str =
    "Print or copy that line and tie it to the piece, so that the next owner need not ask.";

// The six reasons

pub(crate) const TRIGGERS_CAPTION: &str =
    "The six reasons to keep a piece for display; one is enough";
pub(crate) const TRIGGERS_COLUMNS: [&str; 3] = ["Reason", "On this piece", "What lifts it"];

/// The six reasons, by number.
pub(crate) const TRIGGERS: [&str; 6] = [
    "Lead solder, lead filling or leaded metal on the wet side, or nobody has tested an old soldered piece",
    "Bare copper, brass or nickel metal on the wet side, with anything sour in it",
    "A lining of lacquer, wax or glue, a low-melting repair, or fresh plating not yet checked",
    "Old gilding that may contain mercury, cadmium solder, hollows that were dipped, asbestos pads, a leaking double wall",
    "A child, or someone pregnant or breast-feeding, would use it",
    "Food or drink standing in it for hours, or something hot in a loaded or closed part",
];

pub(crate) const NOT_RECORDED: &str = "nothing recorded";
pub(crate) const LIFTED_BY_PASS: &str = "a release test that passes, for what was tested";
pub(crate) const LIFTED_BY_LABORATORY: &str =
    "a laboratory release test that passes, and nothing else";
pub(crate) const NEVER_LIFTED: &str = "no test can: only a change to the piece or its use";

// Metals

pub(crate) const LEAD: &str = "Lead";
pub(crate) const CADMIUM: &str = "Cadmium";
pub(crate) const ARSENIC: &str = "Arsenic";
pub(crate) const MERCURY: &str = "Mercury";
pub(crate) const COPPER: &str = "Copper";
pub(crate) const NICKEL: &str = "Nickel";
pub(crate) const SILVER: &str = "Silver";
pub(crate) const TIN: &str = "Tin";
pub(crate) const ANTIMONY: &str = "Antimony";
pub(crate) const ZINC: &str = "Zinc";
pub(crate) const IRON: &str = "Iron";
pub(crate) const ALUMINIUM: &str = "Aluminium";
pub(crate) const COBALT: &str = "Cobalt";
pub(crate) const CHROMIUM: &str = "Chromium";
pub(crate) const MANGANESE: &str = "Manganese";
pub(crate) const THALLIUM: &str = "Thallium";

// A laboratory's results

pub(crate) const RESULTS: &str = "Compare a laboratory's release test with the limits";
pub(crate) const RESULTS_HINT: &str = "From a release test with an acid liquid that represents \
    food, in milligrams for each kilogram of liquid.";

pub(crate) const WHICH_PIECE: &str = "Which piece was tested";
pub(crate) const WHICH_PIECE_HINT: &str = "A pass clears the piece it was of and no other; where their \
    insides differ, name it. A result over a limit counts for all of them.";
/// What follows from a pass of some of several pieces.
pub(crate) fn only_of(pieces: &str) -> String {
    format!("This is true of {pieces} only; the others count as untested.")
}

pub(crate) const OF_EACH: &str = "Each of them";

pub(crate) fn against(metal: &str, found: &str, limit: &str) -> String {
    format!("{metal} {found}, with a limit of {limit} mg/kg")
}

pub(crate) const NONE_OVER: &str = "None of these results is over its limit. That lifts the \
    reasons about lead and bare metal, for the place, the liquid and the time tested; the other \
    reasons stand. Record it with the part: tested, no lead released.";
pub(crate) const NONE_OVER_WITHOUT_LEAD: &str = "None of these results is over its limit, but lead \
    was not among them, and lead is the question.";

pub(crate) fn over(results: &str) -> String {
    format!("Over the limit: {results}. Keep it for display.")
}

// The limits

pub(crate) const LIMITS: &str =
    "What may come off into a kilogram of food: Council of Europe guide of 2024, not itself a law";
pub(crate) const LIMITS_COLUMNS: [&str; 3] = ["Metal", "Limit", "How known"];
pub(crate) const THERE_IS_ONE: &str = "a limit exists";
pub(crate) const CHECK_CURRENT: &str = "check the current figure with the regulator";

// The old criterion

pub(crate) const ONE_CUP: &str = "One cup";
pub(crate) const NOT_KNOWN_HOW_MANY: &str = "an unknown number of";

pub(crate) fn old_criterion(
    criterion: &str,
    cup: &str,
    lead: &str,
    adult_times: &str,
    limit_times: &str,
    at_limit: &str,
    child: &str,
) -> String {
    format!(
        "Under an old American criterion, plated ware is seized at {criterion} µg of lead per mL (quoted \
         second hand: check the current text). Passing it does not mean that a piece is safe. A cup of {cup} \
         mL at that level holds {lead} µg of lead: {adult_times} times what an adult who may bear children \
         should take in with all food in a day, and {limit_times} times today's European release limit. Even \
         at that limit a cup carries {at_limit} µg, against {child} µg a day for a child."
    )
}

pub(crate) fn food_code(pewter: &str, solder: &str) -> String {
    format!(
        "We take one mL as one gram. The American model food code keeps pewter with more than {pewter} % \
         lead, and solder with more than {solder} %, away from food."
    )
}
