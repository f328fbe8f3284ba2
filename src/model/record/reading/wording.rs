//! What is said of a field that cannot be used: first what is wrong, then what to do (`…_REMEDY`,
//! `…_remedy`), each as a sentence.

// Anything

pub(crate) const LEFT_OUT: &str = "It was left out. What stood there is kept in the file.";

pub(crate) fn no_object(name: &str) -> String {
    format!("\"{name}\" should be an object with named fields.")
}

pub(crate) fn no_list(name: &str) -> String {
    format!("\"{name}\" should be a list.")
}

pub(crate) fn too_many(name: &str, count: usize, most: usize) -> String {
    format!("\"{name}\" has {count} entries; the first {most} are used.")
}

pub(crate) const TOO_MANY_REMEDY: &str = "Remove what repeats.";
pub(crate) const ENTRY_NO_OBJECT: &str = "This entry is not an object.";
pub(crate) const ENTRY_NO_OBJECT_REMEDY: &str = "It was left out. Correct or remove it.";
pub(crate) const NO_TEXT: &str = "This should be text.";
pub(crate) const NO_TEXT_REMEDY: &str = "Put it in quotation marks or leave it out.";

pub(crate) fn no_choice(typed: &str) -> String {
    format!("\"{typed}\" is not one of the choices.")
}

pub(crate) fn no_choice_remedy(near: &str, choices: &str) -> String {
    format!("Did you mean \"{near}\"? Choices: {choices}.")
}

pub(crate) const NO_FLAG: &str = "This should be true or false.";
pub(crate) const NO_FLAG_REMEDY: &str = "Write true or false, yes or no, or leave it out.";

// Numbers; what is asked for stands in the middle of a sentence

pub(crate) fn no_number(typed: &str) -> String {
    format!("\"{typed}\" is not a number.")
}

pub(crate) fn no_number_remedy(what: &str, example: &str) -> String {
    format!("Type {what} in digits, such as {example}.")
}

pub(crate) fn two_ways(typed: &str) -> String {
    format!("\"{typed}\" could be either of two numbers.")
}

/// A decimal is shown with four places, since three would be asked about again.
pub(crate) fn two_ways_remedy(decimal: f64, grouped: f64) -> String {
    format!("Type {grouped} or {decimal:.4}.")
}

pub(crate) fn out_of_range(number: f64, what: &str) -> String {
    format!("{number} is out of range for {what}.")
}

pub(crate) fn out_of_range_remedy(least: f64, most: f64) -> String {
    format!("Use a number from {least} to {most}.")
}

// Years

pub(crate) const TOO_EARLY: &str = "is earlier than any piece weighed here";
pub(crate) const TOO_EARLY_REMEDY: &str = " If it is right, leave it out and ask a specialist.";
pub(crate) const NO_YEAR: &str = "is out of range for a year";

pub(crate) fn year_is(year: f64, what: &str) -> String {
    format!("{year} {what}.")
}

pub(crate) fn year_remedy(least: f64, most: f64, then: &str) -> String {
    format!("Use a year from {least} to {most}.{then}")
}

pub(crate) fn no_whole_year(year: f64) -> String {
    format!("{year} is not a whole year.")
}

pub(crate) const NO_WHOLE_YEAR_REMEDY: &str = "Type the year in four digits.";

pub(crate) fn years_crossed(from: u16, to: u16) -> String {
    format!("The earliest year, {from}, is after the latest, {to}.")
}

pub(crate) const YEARS_CROSSED_REMEDY: &str = "Correct one of them. Until then neither is used.";

pub(crate) fn no_date(typed: &str) -> String {
    format!("\"{typed}\" is not a date.")
}

pub(crate) const NO_DATE_REMEDY: &str = "Write it as year-month-day, such as 2026-05-31.";

// Findings

pub(crate) const NO_FINDING_ID: &str = "A finding needs its id.";
pub(crate) const NO_FINDING_ID_REMEDY: &str = "Give it, such as C01, or remove the entry.";

pub(crate) fn no_such_finding(typed: &str) -> String {
    format!("No finding is called \"{typed}\".")
}

pub(crate) fn did_you_mean(near: &str) -> String {
    format!("Did you mean {near}? It was left out.")
}

pub(crate) fn no_answer(id: &str) -> String {
    format!("{id} has no answer.")
}

pub(crate) const NO_ANSWER_REMEDY: &str = "Say seen, absent or unsure.";

pub(crate) fn answered_twice(id: &str) -> String {
    format!("{id} is answered twice for the same part, differently.")
}

pub(crate) fn answered_twice_remedy(kept: &str) -> String {
    format!("The first, \"{kept}\", is used. Remove one of them.")
}

// Readings of the metal

pub(crate) fn not_used(why: &str) -> String {
    format!("The reading is not used: {why}.")
}

pub(crate) const NOT_USED_REMEDY: &str =
    "Leave it out, or measure a part of which this is not true.";
pub(crate) const LOADED: &str =
    "a part filled with pitch, plaster or lead weighs like its filling, and water may get in";
pub(crate) const HOLLOW: &str = "air shut inside makes it too light, and water may get in and stay";
pub(crate) const ORGANIC: &str =
    "wood, ivory, felt or card make it too light, and water spoils them";
pub(crate) const ONE_WEIGHT: &str = "One of the two weights is missing.";
pub(crate) const ONE_WEIGHT_REMEDY: &str = "Type it too. Until then no density is worked out.";
pub(crate) const WATER_NOT_LESS: &str = "It cannot weigh as much in water as in air, or more.";
pub(crate) const WATER_NOT_LESS_REMEDY: &str =
    "Check the two weights; they may be the wrong way round.";
pub(crate) const TOO_HEAVY: &str = "heavier than any metal of this trade: check the two weights";
pub(crate) const TOO_LIGHT: &str =
    "lighter than any metal of this trade: air or a filling is shut in, or a weight is wrong";

pub(crate) fn density(value: &str, fault: &str) -> String {
    format!("That makes {value} g/cm3, {fault}.")
}

pub(crate) const DENSITY_REMEDY: &str =
    "Weigh again, with no bubbles on it, or leave the weights out. No density is used.";
pub(crate) const CURVED: &str =
    "on a curved spot, or one smaller than the probe, the meter reads low";
pub(crate) const THIN: &str = "on sheet thinner than the meter sees it reads low";
pub(crate) const FILLED: &str =
    "with a filling or another metal close behind, the meter reads both";
pub(crate) const MAGNETIC: &str = "The reading is not used: a magnet pulls on the body, and on iron \
    the meter does not tell conductivity.";
pub(crate) const MAGNETIC_REMEDY: &str = "Leave it out, or correct the answer about the magnet.";
pub(crate) const NO_SPOT: &str = "It is not said where the X-ray reading was taken.";
pub(crate) const NO_SPOT_REMEDY: &str =
    "Say worn (where the silver is worn through) or sound. Until then it is not used.";

pub(crate) fn sum(percent: &str) -> String {
    format!("The shares add up to {percent} %.")
}

pub(crate) const SUM_REMEDY: &str =
    "They cannot be more than 100 % together. Until they are corrected none is used.";
pub(crate) const NOT_WORN_THROUGH: &str = "A spot that reads so much silver is not worn through.";
pub(crate) const NOT_WORN_THROUGH_REMEDY: &str =
    "Say that it is sound, or read a spot where another metal shows.";
pub(crate) const THE_SILVER: &str = "the share of silver";
pub(crate) const OTHER_METALS: &str = "nickel, zinc, tin or iron";

pub(crate) fn xrf_does_not_say(what: &str) -> String {
    format!("The X-ray reading does not say {what}, and the rest tells nothing here.")
}

pub(crate) const XRF_DOES_NOT_SAY_REMEDY: &str =
    "Type what it found; 0 for a metal it looked for and did not find.";

// Parts

pub(crate) const NO_PART_NAME: &str = "A part needs its name.";
pub(crate) const NO_PART_NAME_REMEDY: &str = "Give it, such as body, or remove the entry.";

pub(crate) fn listed_twice(part: &str) -> String {
    format!("\"{part}\" is listed twice.")
}

pub(crate) const LISTED_TWICE_REMEDY: &str = "The first entry is used. Join the two.";

pub(crate) fn cannot_be_used(typed: &str) -> String {
    format!("\"{typed}\" cannot be used here.")
}

pub(crate) const CANNOT_BE_USED_REMEDY: &str =
    "Type numbers from 0 up, with a space between. Until then none is used.";
pub(crate) const COUNT_DOES_NOT_FIT: &str = "The count does not fit the points of a field.";
pub(crate) const COUNT_DOES_NOT_FIT_REMEDY: &str = "Type whole numbers: how many points a field has, \
    and for each field no more than that on metal.";

pub(crate) fn interval_lacks(end: &str) -> String {
    format!("The counted interval has no \"{end}\".")
}

pub(crate) const INTERVAL_LACKS_REMEDY: &str =
    "Give low, likely and high, each as a share of 1, or one word or percentage instead.";
pub(crate) const INTERVAL_CROSSED: &str = "The interval is out of order.";
pub(crate) const INTERVAL_CROSSED_REMEDY: &str = "Write low, likely and high from small to large.";

pub(crate) fn not_possible(percent: f64) -> String {
    format!("{percent} % is not possible.")
}

pub(crate) const NOT_POSSIBLE_REMEDY: &str =
    "Use 0 to 100 %: the share of the part where base metal shows.";

pub(crate) fn no_bleed(typed: &str) -> String {
    format!("\"{typed}\" is not a way to tell how much base metal shows.")
}

pub(crate) fn no_bleed_remedy(near: &str, words: &str) -> String {
    format!("Did you mean \"{near}\"? Say {words}, or a percentage such as 5 %.")
}

// Prices

pub(crate) const NO_VALUE: &str = "A value has to be more than nothing.";
pub(crate) const NO_VALUE_REMEDY: &str =
    "Type what an undamaged one might fetch, or leave it empty.";
pub(crate) const OUT_OF_ORDER: &str = "Low, likely and high are out of order.";
pub(crate) const OUT_OF_ORDER_REMEDY: &str =
    "Type them from small to large. Until then only \"likely\" is used.";
pub(crate) const NO_TREATMENT: &str = "A quote needs the treatment it is for.";
pub(crate) const NO_TREATMENT_REMEDY: &str = "Give it, such as T14a, or remove the entry.";

pub(crate) fn no_such_treatment(typed: &str) -> String {
    format!("No treatment is called \"{typed}\".")
}

pub(crate) fn no_such_treatment_remedy(near: &str) -> String {
    format!("Did you mean {near}? The quote was left out.")
}

pub(crate) const NO_PRICE: &str = "The quote has no price.";
pub(crate) const NO_PRICE_REMEDY: &str = "Type the price asked.";

// Figures of one's own

pub(crate) fn own_figures(count: usize, most: usize) -> String {
    format!("There are {count} figures of your own; the first {most} are used.")
}

pub(crate) const OWN_FIGURES_REMEDY: &str = "Remove those that only repeat what is shipped.";
pub(crate) const NO_FIGURE: &str = "No figure has this id.";
pub(crate) const NOT_FINITE: &str = "This is not a number.";
pub(crate) const NOT_FINITE_REMEDY: &str = "Type your value in digits.";
pub(crate) const NEGATIVE: &str = "This figure cannot be below zero.";
pub(crate) const NEGATIVE_REMEDY: &str = "Type zero or more.";
pub(crate) const OUTSIDE_SHARE: &str = "This figure is a share of 1.";
pub(crate) const OUTSIDE_SHARE_REMEDY: &str = "Type a number from 0 to 1; 0.15 is 15 %.";
pub(crate) const UNSAFE: &str = "This is a safety limit; it can be made stricter but not looser.";

pub(crate) fn unsafe_remedy(limit: f64) -> String {
    format!("The loosest it may be is {limit}. The shipped value is used.")
}

/// Work on the piece: quotes, tests, what was done and what is proposed.
pub(crate) mod work {
    pub(crate) const NO_DATE_REMEDY: &str =
        "Write a year, year-month, or year-month-day, such as 2026-05-31.";
    pub(crate) const NO_TEST_KIND: &str = "This test does not say what it tests.";
    pub(crate) const NO_TEST_KIND_REMEDY: &str =
        "Choose release (into food or drink) or content (of the metal), or remove the entry.";
    pub(crate) const NO_STEP: &str = "A step of the proposal needs its treatment.";
    pub(crate) const PIECE_NUMBERS_REMEDY: &str =
        "Give the numbers of the pieces, from 1, with a space between.";
}

/// Sales of pieces like it.
pub(crate) mod sales {
    pub(crate) const OR_LEAVE_OUT: &str = "Correct it, or choose to leave this sale out.";

    pub(crate) const NO_PRICE: &str = "This sale has no price, so it is not counted.";
    pub(crate) const PRICE_TOO_LOW: &str =
        "A price has to be more than nothing, so this sale is not counted.";
    pub(crate) const OTHER_CURRENCY: &str = "This price is in another currency than the rest, so it \
        is not counted: nothing is converted here.";
    pub(crate) const OTHER_CURRENCY_REMEDY: &str =
        "Type the price in the currency of the rest, or choose to leave this sale out.";

    // A price far from the others

    pub(crate) const TIMES: &str = " times the middle of the others";
    pub(crate) const TIMES_LESS: &str = " times less than the middle of the others";

    pub(crate) fn far(times: f64, message: &str) -> String {
        format!("This price is about {times}{message}. It is counted.")
    }

    pub(crate) const FAR_REMEDY: &str = "Look for a slip in the price or its currency. If it was \
        another sort of thing, choose to leave this sale out.";

    // When

    pub(crate) fn no_date(typed: &str) -> String {
        format!("\"{typed}\" is not a date. The sale is counted as if new.")
    }

    pub(crate) const NO_DATE_REMEDY: &str =
        "Write a year such as 2024, or year-month-day such as 2024-05-31.";
    pub(crate) const FUTURE: &str =
        "This sale lies in the future. It is counted as if it were today's.";

    // How alike

    pub(crate) const NOT_ALIKE: &str =
        "A sale that is not alike at all tells nothing. It is counted as loosely alike.";
    pub(crate) const NOT_ALIKE_REMEDY: &str =
        "Choose to leave this sale out, or say how alike it is.";

    // Who buys

    pub(crate) const NO_BUYER: &str = "Somebody has to buy it: all three shares are nothing.";
    pub(crate) const NO_BUYER_REMEDY: &str =
        "Give at least one sort of buyer a share. Until then the usual ones are used.";
}
