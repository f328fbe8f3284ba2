//! Wording on sales of similar pieces.

pub(crate) const SALES: &str = "Sales of pieces like it";
pub(crate) const HOW_TO_TYPE_THEM: &str = "Enter sales of pieces like it, one per row; there is \
    always an empty row at the end. Each is converted to the hammer price of an undamaged one.";

// One sale

pub(crate) fn sale(number: usize) -> String {
    format!("Sale {number}")
}

pub(crate) fn left_out(sale: &str) -> String {
    format!("{sale}: left out")
}

pub(crate) fn what_it_was(sale: &str) -> String {
    format!("{sale}: what it was and its condition")
}

pub(crate) fn price(sale: &str) -> String {
    format!("{sale}: price")
}

pub(crate) const WHAT_THE_PRICE_IS: &str = "What the price is";
pub(crate) const WHEN: &str = "When";
pub(crate) const WHEN_HINT: &str = "A year is enough.";
pub(crate) const KIND: &str = "What it was";

pub(crate) fn kind_words(id: &str) -> &'static str {
    match id {
        "fused" => "Fused plate (old Sheffield plate)",
        "replated" => "Fused plate, electroplated later",
        "close" => "Close plate",
        "electroplate" => "Electroplate on nickel silver",
        "britannia" => "Electroplate on Britannia metal",
        "copper" => "Electroplate on copper",
        "silver" => "Solid silver",
        _ => "The same as yours",
    }
}

pub(crate) const HOW_LIKE: &str = "How like yours";
pub(crate) const HOW_LIKE_HINT: &str = "Form, size, age and quality.";
pub(crate) const VERY_LIKE: &str = "Very like it";
pub(crate) const FAIRLY_LIKE: &str = "Fairly like it";
pub(crate) const LOOSELY_LIKE: &str = "Loosely like it";
pub(crate) const BLEED: &str = "Base metal showing";
pub(crate) const BLEED_HINT: &str = "Anything not stated counts as sound.";
pub(crate) const TARNISH: &str = "Tarnish";
pub(crate) const DENTS: &str = "Dents";
pub(crate) const JOINTS: &str = "Joints";
pub(crate) const CURRENCY: &str = "Currency";
pub(crate) const CURRENCY_HINT: &str = "Only if it differs; such a sale cannot be counted.";
pub(crate) const NOTE: &str = "Note";
pub(crate) const NOTE_HINT: &str = "Where you found it.";
pub(crate) const DOES_IT_COUNT: &str = "Does it count?";
pub(crate) const DOES_IT_COUNT_HINT: &str = "If you leave it out, it stays here.";
pub(crate) const IT_COUNTS: &str = "It counts";
pub(crate) const LEAVE_IT_OUT: &str = "Leave it out";

// What each sale suggests

pub(crate) const NO_SALE: &str = "No sale counts yet, so the value rests on your estimate, or on what such pieces usually fetch.";
pub(crate) const EACH_SALE: &str = "What each sale suggests";
pub(crate) const COLUMNS: [&str; 7] = [
    "Sale",
    "Price",
    "For condition, sort of price and date",
    "Undamaged, at auction",
    "Counts as",
    "Moves the middle by",
    "Fits the rest",
];
pub(crate) const YES: &str = "Yes";
pub(crate) const NO: &str = "No";

pub(crate) fn pulls_most(sale: &str, without: &str, middle: &str) -> String {
    format!("{sale} counts most: without it the middle would be {without} instead of {middle}.")
}

pub(crate) fn does_not_fit(sale: &str, times: &str) -> String {
    format!(
        "{sale} does not fit: judging by the others, a price that far out would occur about {times} times in 100. \
         Check for a typing error, or for what made it different; you can leave it out."
    )
}

pub(crate) const LESS_THAN_1: &str = "less than 1";
pub(crate) const HARDLY: &str = "hardly";

pub(crate) fn narrower(before: f64, after: f64) -> String {
    format!(
        "Without the sales the band was the middle times or divided by {before:.1}; with them it is {after:.1}."
    )
}

pub(crate) fn wider(before: f64, after: f64) -> String {
    format!(
        "The band grew from the middle times or divided by {before:.1} to {after:.1}, because the sales lie \
         far from each other or from your starting value."
    )
}

pub(crate) const HOW_THEY_COUNT: &str = "The band covers 8 in 10 of what the next such piece would \
    fetch. Prices are compared as ratios; a sale counts for less the older and the less similar it \
    is. How condition moves a price is our judgement; its uncertainty is not added here.";

// The picture

pub(crate) const BEFORE: &str = "Before the sales";
pub(crate) const EACH: &str = "Each sale, converted to undamaged";
pub(crate) const WITH: &str = "With the sales";

pub(crate) fn picture_title(middle: &str) -> String {
    format!("Undamaged, the next one would fetch about {middle}")
}

pub(crate) const PICTURE: &str = "A wide band before the sales, a mark for each sale, and the band \
    with the sales, on a scale where equal steps are equal ratios.";
pub(crate) const CAPTION: &str = "Undamaged, at auction: the middle, and the range that covers 8 \
    in 10";
pub(crate) const RESTS_ON: &str = "What it rests on";
pub(crate) const PRICE: &str = "Price";
