//! Why, what would change it, and when to refer.

// The answer and its contrast

pub(crate) const NOT_FOR_FOOD: &str = " Do not use it for food or drink.";

// How firmly

pub(crate) fn clear(cases: &str) -> String {
    format!("Clear: it does as well as any option in {cases}.")
}

pub(crate) fn leaning(cases: &str) -> String {
    format!("Leaning this way: it does as well as any option in {cases}.")
}

/// The chance by itself would be clear, but a doubt stands against it.
pub(crate) fn leaning_by_doubt(cases: &str) -> String {
    format!(
        "Leaning this way: it does as well as any option in {cases}, but it rests on something not settled yet."
    )
}

pub(crate) fn open(cases: &str) -> String {
    format!(
        "Open: it does as well as any option in only {cases}. Of the options that come out level, this one \
         leaves you the most choice later."
    )
}

// Reasons

pub(crate) const FOOD_UNTESTED: &str = "You want to serve food or drink from it. Until a test says \
    no lead is released, it is for display.";
pub(crate) const FOOD_DISPLAY: &str =
    "You want to serve food or drink from it, but as it stands it is for display only.";
pub(crate) const CORROSION: &str =
    "Something is still corroding. Keeping it dry comes before anything else.";

pub(crate) fn keeps_original(share: &str) -> String {
    format!("It keeps {share} of what is original.")
}

// The next best

pub(crate) fn next_leaves_less(name: &str, sum: &str) -> String {
    format!("The next best option that really differs, {name}, leaves about {sum} less on average.")
}

pub(crate) fn next_leaves_more(name: &str, sum: &str) -> String {
    format!(
        "The next best option that really differs, {name}, leaves about {sum} more on average, but that is within the noise or it is harder to undo."
    )
}

pub(crate) fn next_comes_level(name: &str) -> String {
    format!("The next best option that really differs, {name}, comes out level for what you want.")
}

pub(crate) fn next_scores(name: &str, points: f64, unit: &str, how: &str) -> String {
    format!(
        "The next best option that really differs, {name}, scores {points:.0} {unit} in 100 {how} for what you want."
    )
}

pub(crate) const POINT: &str = "point";
pub(crate) const POINTS: &str = "points";
pub(crate) const LOWER: &str = "lower";
pub(crate) const HIGHER: &str = "higher";

// What it is

pub(crate) const VERY_PROBABLY: &str = "It is very probably";
pub(crate) const PROBABLY: &str = "It is probably";
pub(crate) const MAY_BE: &str = "It may be";

pub(crate) fn original_silver(how: &str, share: &str) -> String {
    format!(
        "{how} fused plate (old Sheffield plate), and its own silver may still cover {share} of it. That \
         surface cannot be put back."
    )
}

pub(crate) fn most_likely(family: &str, share: &str) -> String {
    format!("It is most likely {family} ({share}).")
}

pub(crate) const REPLATED: &str =
    "The silver on it now was added later, so a collector has less to lose.";

// What other work would bring

pub(crate) fn tested_first(name: &str) -> String {
    format!("{name} after a test for lead")
}

pub(crate) fn not_this(name: &str, why: &str) -> String {
    format!("{name}: not as things stand. {why}")
}

pub(crate) fn little_cost_and_loss(name: &str, loss: &str) -> String {
    format!(
        "{name} costs little, but leaves you about {loss} worse off: it can go wrong, and it takes some silver."
    )
}

pub(crate) fn cost_and_loss(name: &str, cost: &str, loss: &str) -> String {
    format!("{name} would cost about {cost} and leave you about {loss} worse off.")
}

pub(crate) fn too_little_gain(name: &str, gain: &str) -> String {
    format!(
        "{name} would leave you about {gain} better off in money, which is too little, or too hard to undo, to \
         be worth it."
    )
}

// From before the work to after it

pub(crate) const RAISES: &str = "raises";
pub(crate) const LOWERS: &str = "lowers";

pub(crate) fn value(verb: &str, sum: &str) -> String {
    format!("The work {verb} what it would fetch by about {sum} on average, mishaps included.")
}

pub(crate) fn fees(sum: &str) -> String {
    format!("Selling charges take about {sum} of the change.")
}

pub(crate) fn place(sum: &str) -> String {
    format!("Where it is sold makes that about {sum} more.")
}

pub(crate) fn cost(sum: &str) -> String {
    format!("The work costs about {sum}.")
}

pub(crate) const BETTER: &str = "better";
pub(crate) const WORSE: &str = "worse";

pub(crate) fn together(sum: &str, how: &str) -> String {
    format!("Together that leaves you about {sum} {how} off than leaving it.")
}

// What would change it

pub(crate) fn no_value_changes(input: &str) -> String {
    format!("{input}: no value we tried changes the answer.")
}

pub(crate) const MORE_THAN: &str = "more than";
pub(crate) const LESS_THAN: &str = "less than";

pub(crate) fn if_value(side: &str, at: &str) -> String {
    format!("If an undamaged one fetched {side} {at}")
}

pub(crate) fn if_cost(side: &str, at: &str) -> String {
    format!("If the work cost {side} {at}")
}

pub(crate) fn if_bleed(side: &str, at: &str) -> String {
    format!("If base metal showed on {side} {at} of it")
}

pub(crate) fn if_fused(side: &str, at: &str) -> String {
    format!("If the chance of fused plate with its own silver were {side} {at}")
}

pub(crate) fn answer_would_be(subject: &str, to: &str) -> String {
    format!("{subject}, we would advise: {to}.")
}

pub(crate) const NEXT: &str = "; ";

// When to let a specialist look first

pub(crate) const DELICATE: &str =
    "This work on this kind of piece needs someone who knows it well.";
pub(crate) const NOT_SETTLED: &str = "The figures do not settle it.";
pub(crate) const CORRODING: &str = "It is corroding now.";
pub(crate) const FOOD_UNKNOWN: &str =
    "You want to use it for food, and nobody knows whether it releases lead.";

pub(crate) fn worth_an_opinion(sum: &str) -> String {
    format!(
        "Knowing for certain what it is could be worth up to about {sum}, more than an opinion usually costs."
    )
}
