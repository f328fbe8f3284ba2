//! The messages about a field that cannot be used: first what is wrong, then what to do (`…_REMEDY`,
//! `…_remedy`), each as a sentence.

use crate::ledger::SafeRange;

// Anything

pub(crate) const LEFT_OUT: &str = "It is left out. The file keeps what you entered.";

pub(crate) fn no_object(name: &str) -> String {
    format!("\"{name}\" should be an object with named fields.")
}

pub(crate) fn no_list(name: &str) -> String {
    format!("\"{name}\" should be a list.")
}

pub(crate) fn too_many(name: &str, count: usize, most: usize) -> String {
    format!("\"{name}\" has {count} entries; only the first {most} are used.")
}

pub(crate) const TOO_MANY_REMEDY: &str = "Remove entries that repeat.";
pub(crate) const ENTRY_NO_OBJECT: &str = "This entry is not an object.";
pub(crate) const ENTRY_NO_OBJECT_REMEDY: &str = "It is left out. Correct or remove it.";
pub(crate) const NO_TEXT: &str = "This should be text.";
pub(crate) const NO_TEXT_REMEDY: &str = "Put it in quotation marks or leave it out.";

pub(crate) fn no_choice(typed: &str) -> String {
    format!("\"{typed}\" is not one of the choices.")
}

pub(crate) fn no_choice_remedy(near: &str, choices: &str) -> String {
    format!("Did you mean \"{near}\"? Choose one of: {choices}.")
}

pub(crate) const NO_FLAG: &str = "This should be true or false.";
pub(crate) const NO_FLAG_REMEDY: &str = "Write true or false, yes or no, or leave it out.";

// Numbers; what is asked for comes in the middle of a sentence

pub(crate) fn no_number(typed: &str) -> String {
    format!("\"{typed}\" is not a number.")
}

pub(crate) fn no_number_remedy(what: &str, example: &str) -> String {
    format!("Type {what} in digits, such as {example}.")
}

pub(crate) fn two_ways(typed: &str) -> String {
    format!("\"{typed}\" could mean either of two numbers.")
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

pub(crate) const TOO_EARLY: &str = "is earlier than any piece this program covers";
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

pub(crate) const YEARS_CROSSED_REMEDY: &str = "Correct one of them. Until then, neither is used.";

pub(crate) fn no_date(typed: &str) -> String {
    format!("\"{typed}\" is not a date.")
}

pub(crate) const NO_DATE_REMEDY: &str = "Write it as year-month-day, such as 2026-05-31.";

// Findings

pub(crate) const NO_FINDING_ID: &str = "A finding needs an id.";
pub(crate) const NO_FINDING_ID_REMEDY: &str = "Give one, such as C01, or remove the entry.";

pub(crate) fn no_such_finding(typed: &str) -> String {
    format!("No finding is called \"{typed}\".")
}

pub(crate) fn did_you_mean(near: &str) -> String {
    format!("Did you mean {near}? The finding is left out.")
}

pub(crate) fn no_answer(id: &str) -> String {
    format!("{id} has no answer.")
}

pub(crate) const NO_ANSWER_REMEDY: &str = "Answer seen, absent or unsure.";

pub(crate) fn answered_twice(id: &str) -> String {
    format!("{id} has two different answers for the same part.")
}

pub(crate) fn answered_twice_remedy(kept: &str) -> String {
    format!("The first, \"{kept}\", is used. Remove the wrong one.")
}

// Readings of the metal

pub(crate) fn not_used(why: &str) -> String {
    format!("The reading is not used: {why}.")
}

pub(crate) const NOT_USED_REMEDY: &str =
    "Leave it out, or measure a part where this does not apply.";
pub(crate) const LOADED: &str =
    "in a filled part the pitch, plaster or lead counts in the weight, and water may get in";
pub(crate) const HOLLOW: &str =
    "air trapped inside makes it too light, and water may get in and stay";
pub(crate) const ORGANIC: &str =
    "wood, ivory, felt or card make it too light, and water spoils them";
pub(crate) const ONE_WEIGHT: &str = "One of the two weights is missing.";
pub(crate) const ONE_WEIGHT_REMEDY: &str =
    "Type it too. Until then, we cannot work out the density.";
pub(crate) const WATER_NOT_LESS: &str = "It cannot weigh as much in water as in air, or more.";
pub(crate) const WATER_NOT_LESS_REMEDY: &str =
    "Check the two weights; they may be the wrong way round.";
pub(crate) const TOO_HEAVY: &str = "heavier than any metal used for plate: check the two weights";
pub(crate) const TOO_LIGHT: &str =
    "lighter than any metal used for plate: there is air or a filling inside, or a weight is wrong";

pub(crate) fn density(value: &str, fault: &str) -> String {
    format!("That makes {value} g/cm3, {fault}.")
}

pub(crate) const DENSITY_REMEDY: &str =
    "Weigh again, with no bubbles on it, or leave the weights out. Until then, no density is used.";
pub(crate) const CURVED: &str =
    "the meter reads low on a curved spot or one smaller than its probe";
pub(crate) const THIN: &str = "the meter reads low on sheet thinner than it needs";
pub(crate) const FILLED: &str = "the meter also reads a filling or another metal close behind";
pub(crate) const MAGNETIC: &str = "The reading is not used: a magnet pulls on the body, and on iron \
    the meter does not measure conductivity.";
pub(crate) const MAGNETIC_REMEDY: &str = "Leave it out, or correct the answer about the magnet.";
pub(crate) const NO_SPOT: &str = "The record does not say where the X-ray reading was taken.";
pub(crate) const NO_SPOT_REMEDY: &str =
    "Say worn (where the silver is worn through) or sound. Until then, it is not used.";

pub(crate) fn sum(percent: &str) -> String {
    format!("The shares add up to {percent} %.")
}

pub(crate) const SUM_REMEDY: &str =
    "Together they cannot exceed 100 %. Until you correct them, none is used.";
pub(crate) const NOT_WORN_THROUGH: &str = "A spot with so much silver is not worn through.";
pub(crate) const NOT_WORN_THROUGH_REMEDY: &str =
    "Mark it as sound, or measure a spot where another metal shows.";
pub(crate) const THE_SILVER: &str = "the share of silver";
pub(crate) const OTHER_METALS: &str = "nickel, zinc, tin or iron";

pub(crate) fn xrf_does_not_say(what: &str) -> String {
    format!("The X-ray reading does not give {what}, and the rest does not help here.")
}

pub(crate) const XRF_DOES_NOT_SAY_REMEDY: &str =
    "Type what it found, and 0 for a metal it looked for but did not find.";

// Parts

pub(crate) const NO_PART_NAME: &str = "A part needs a name.";
pub(crate) const NO_PART_NAME_REMEDY: &str = "Give one, such as body, or remove the entry.";

pub(crate) fn listed_twice(part: &str) -> String {
    format!("\"{part}\" is listed twice.")
}

pub(crate) const LISTED_TWICE_REMEDY: &str = "The first entry is used. Merge the two.";

pub(crate) fn cannot_be_used(typed: &str) -> String {
    format!("\"{typed}\" cannot be used here.")
}

pub(crate) const CANNOT_BE_USED_REMEDY: &str =
    "Type numbers from 0 up, separated by spaces. Until then, none is used.";
pub(crate) const COUNT_DOES_NOT_FIT: &str =
    "The count does not fit the number of points in a field.";
pub(crate) const COUNT_DOES_NOT_FIT_REMEDY: &str = "Type whole numbers: how many points a field has, \
    and for each field how many of them fall on bare metal.";

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
    format!("\"{typed}\" does not say how much base metal shows.")
}

pub(crate) fn no_bleed_remedy(near: &str, words: &str) -> String {
    format!("Did you mean \"{near}\"? Say {words}, or a percentage such as 5 %.")
}

// Prices

pub(crate) const NO_VALUE: &str = "A value has to be more than zero.";
pub(crate) const NO_VALUE_REMEDY: &str =
    "Type what an undamaged one might fetch, or leave it empty.";
pub(crate) const OUT_OF_ORDER: &str = "Low, likely and high are out of order.";
pub(crate) const OUT_OF_ORDER_REMEDY: &str =
    "Type them from small to large. Until then, only \"likely\" is used.";
pub(crate) const NO_TREATMENT: &str = "A quote has to name its treatment.";
pub(crate) const NO_TREATMENT_REMEDY: &str = "Give one, such as T14a, or remove the entry.";

pub(crate) fn no_such_treatment(typed: &str) -> String {
    format!("No treatment is called \"{typed}\".")
}

pub(crate) fn no_such_treatment_remedy(near: &str) -> String {
    format!("Did you mean {near}? The quote is left out.")
}

pub(crate) const NO_PRICE: &str = "The quote has no price.";
pub(crate) const NO_PRICE_REMEDY: &str = "Type the quoted price.";

// The person's figures

pub(crate) fn own_figures(count: usize, most: usize) -> String {
    format!("You changed {count} figures; only the first {most} changes are used.")
}

pub(crate) const OWN_FIGURES_REMEDY: &str = "Remove those that only repeat our values.";
pub(crate) const NO_FIGURE: &str = "No figure has this id.";
pub(crate) const NOT_FINITE: &str = "This is not a number.";
pub(crate) const NOT_FINITE_REMEDY: &str = "Type your value in digits.";
pub(crate) const NEGATIVE: &str = "This figure cannot be below zero.";
pub(crate) const NEGATIVE_REMEDY: &str = "Type zero or more.";
pub(crate) const OUTSIDE_SHARE: &str = "This figure is a share, from 0 to 1.";
pub(crate) const OUTSIDE_SHARE_REMEDY: &str = "Type a number from 0 to 1; 0.15 is 15 %.";

/// What is wrong with an own value of a figure of safety, and what to do.
pub(crate) fn unsafe_figure(safe: SafeRange) -> (String, String) {
    let (message, remedy) = match (safe.least, safe.most) {
        (Some(least), Some(most)) if least < most => (
            "A rule of safety rests on this figure, so it cannot leave our range.",
            format!("Type a number from {least} to {most}. Until then our value is used."),
        ),
        (Some(only), Some(_)) => (
            "A rule of safety rests on this figure, so it cannot be changed.",
            format!("Remove your value. Ours, {only}, is used."),
        ),
        (limit, None) | (None, limit) => (
            "This is a safety limit: you can make it stricter but not looser.",
            limit.map_or_else(String::new, |limit| {
                format!("The loosest it may be is {limit}. Our value is used.")
            }),
        ),
    };
    (message.to_owned(), remedy)
}

/// Work on the piece: quotes, tests, what was done and what is proposed.
pub(crate) mod work {
    pub(crate) const NO_DATE_REMEDY: &str =
        "Write a year, year-month, or year-month-day, such as 2026-05-31.";
    pub(crate) const NO_TEST_KIND: &str = "This test does not say what it tests.";
    pub(crate) const NO_TEST_KIND_REMEDY: &str =
        "Choose release (into food or drink) or content (in the metal), or remove the entry.";
    pub(crate) const NO_STEP: &str = "A step of the proposal has to name its treatment.";
    pub(crate) const PIECE_NUMBERS_REMEDY: &str =
        "Give the numbers of the pieces, from 1, separated by spaces.";
}

/// What happened in the end, and what had been expected.
pub(crate) mod closed {
    pub(crate) const NO_EVENT: &str = "This prediction does not say when it was made.";
    pub(crate) const NO_EVENT_REMEDY: &str =
        "The program writes predictions by itself. Remove the entry, or write agreed or offered.";
    pub(crate) const EXPECTED_REMEDY: &str =
        "The program writes predictions by itself. It counts as unknown, and the entry is kept.";
}

/// Sales of pieces like it.
pub(crate) mod sales {
    pub(crate) const OR_LEAVE_OUT: &str = "Correct it, or choose to leave this sale out.";

    pub(crate) const NO_PRICE: &str = "This sale has no price, so it is not counted.";
    pub(crate) const PRICE_TOO_LOW: &str =
        "A price has to be more than zero, so this sale is not counted.";
    pub(crate) const OTHER_CURRENCY: &str = "This price is in a different currency from the rest, and we do not \
        convert, so it is not counted.";
    pub(crate) const OTHER_CURRENCY_REMEDY: &str =
        "Type the price in the currency of the rest, or choose to leave this sale out.";

    // A price far from the others

    pub(crate) const TIMES: &str = " times the middle price of the others";
    pub(crate) const TIMES_LESS: &str = " times less than the middle price of the others";

    pub(crate) fn far(times: f64, message: &str) -> String {
        format!("This price is about {times}{message}. It is counted.")
    }

    pub(crate) const FAR_REMEDY: &str = "Check the price and its currency. If it was \
        a different sort of piece, choose to leave this sale out.";

    // When

    pub(crate) fn no_date(typed: &str) -> String {
        format!("\"{typed}\" is not a date. The sale is counted as if new.")
    }

    pub(crate) const NO_DATE_REMEDY: &str =
        "Write a year such as 2024, or year-month-day such as 2024-05-31.";
    pub(crate) const FUTURE: &str =
        "This date is in the future. The sale is counted as if it were today's.";

    // How alike

    pub(crate) const NOT_ALIKE: &str =
        "A sale of a piece that is not alike at all says nothing. It is counted as loosely alike.";
    pub(crate) const NOT_ALIKE_REMEDY: &str =
        "Choose to leave this sale out, or say how alike it is.";

    // Who buys

    pub(crate) const NO_BUYER: &str = "Nobody would buy it: all three shares are zero.";
    pub(crate) const NO_BUYER_REMEDY: &str =
        "Give at least one kind of buyer a share. Until then, the usual shares are used.";
}

/// Several pieces in one record.
pub(crate) mod pieces {
    pub(crate) const MORE_THAN_ONE: &str =
        "There is more than one piece, so they are not a single one.";
    pub(crate) const MORE_THAN_ONE_REMEDY: &str = "Say what they are to each other, or that there is one. They count as several alike until then.";
    pub(crate) const PAIR_OF_MANY: &str = "A pair is two pieces.";
    pub(crate) const PAIR_OF_MANY_REMEDY: &str =
        "Say that they are a set, or that there are two. They count as a set until then.";
    pub(crate) const SET_OF_ONE: &str = "One piece is no pair and no set.";
    pub(crate) const SET_OF_ONE_REMEDY: &str =
        "Say how many there are, or that it is one piece, or one left of a pair.";
    pub(crate) const NO_NUMBER: &str = "It is not said which piece this is about.";
    pub(crate) const NO_NUMBER_REMEDY: &str =
        "Give the number of the piece in \"no\", counted from 1. The file keeps what you entered.";

    pub(crate) fn no_such_piece(no: f64, count: u16) -> String {
        format!("There is no piece number {no}: the record is of {count}.")
    }

    pub(crate) const NO_SUCH_PIECE_REMEDY: &str =
        "Correct the number or say how many pieces there are. The file keeps what you entered.";

    pub(crate) fn said_twice(no: u16) -> String {
        format!("Piece number {no} is listed twice.")
    }

    pub(crate) const SAID_TWICE_REMEDY: &str = "Only the first entry is used. Put both into one.";

    pub(crate) fn no_such_photo(key: &str) -> String {
        format!("There is no photo \"{key}\" in this record.")
    }

    pub(crate) const NO_SUCH_PHOTO_REMEDY: &str =
        "Take the photo in first, or leave it out here. The file keeps what you entered.";

    pub(crate) fn shares_do_not_add_up(sum: f64) -> String {
        format!("The shares of the pieces cannot be: those given come to {sum} %.")
    }

    pub(crate) const SHARES_REMEDY: &str = "Give shares above 0 that come to 100 % together, or leave some blank. Until then all count the same.";
}

pub(crate) mod spots {
    //! Messages about the places of faults.

    pub(crate) const NO_FAULT: &str = "This place does not say what is wrong there.";

    pub(crate) fn no_fault_remedy(choices: &str) -> String {
        format!("Choose one of: {choices}.")
    }

    pub(crate) fn no_photo(key: &str) -> String {
        format!("There is no photo \"{key}\" of this part or of the whole piece.")
    }

    pub(crate) const NO_PHOTO_REMEDY: &str = "The fault counts, without its place. Show it on another \
        photo or on the drawing.";
    pub(crate) const WHOLE_COUNT: &str =
        "Type a whole number from 1 to 500. Until then it counts as one.";
    pub(crate) const HALF_A_PLACE: &str =
        "A place needs both numbers: from the left and from the top.";
    pub(crate) const HALF_A_PLACE_REMEDY: &str = "Type the other number, or take this one out.";
}
