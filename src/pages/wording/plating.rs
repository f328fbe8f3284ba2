//! Wording of the plating arithmetic.

pub(crate) const NEW_COAT: &str = "Silver in a new coat";
pub(crate) const NO_SIZES: &str =
    "Enter the sizes of the piece to see how much silver a coat would take.";
pub(crate) const NO_PROCEDURE: &str = "Sums for a conversation with a plater, not a procedure. A \
    coat is never even: it is thinnest in hollows and thickest on edges.";

// Shape

pub(crate) const SHAPE: &str = "Shape";
pub(crate) const SHAPE_HINT: &str = "Preset from the form of the piece.";
pub(crate) const TURNED: &str = "Round: a pot, cup or candlestick";
pub(crate) const FLAT: &str = "Flat, round or oval: a tray or dish";
pub(crate) const BOX: &str = "A box";
pub(crate) const SIDES: &str = "Which sides";
pub(crate) const OUTSIDE: &str = "Outside or top only";
pub(crate) const BOTH_SIDES: &str = "Both sides";
pub(crate) const EXTRAS_FIELD: &str = "Extra for handles, spout and borders";
pub(crate) const EXTRAS_HINT: &str = "As a share of the rest.";
pub(crate) const FROM_THE_PIECE: &str = "Preset from the piece.";
pub(crate) const HEIGHT: &str = "Height";
pub(crate) const LENGTH: &str = "Length";
pub(crate) const WIDTH: &str = "Width";
pub(crate) const TOP: &str = "Across at the top";
pub(crate) const WIDEST: &str = "Across at the widest";
pub(crate) const FOOT: &str = "Across at the foot";

// Surface

pub(crate) const SURFACE_CAPTION: &str = "Surface to be covered";
pub(crate) const SURFACE_COLUMNS: [&str; 3] = ["Surface", "Formula", "Area"];
pub(crate) const TRAY: &str = "Tray or dish";
pub(crate) const TRAY_FORMULA: &str = "π × half the length × half the width";
pub(crate) const BOX_SURFACE: &str = "Box";
pub(crate) const BOX_FORMULA: &str = "2 × (length × width + length × height + width × height)";
pub(crate) const WALL: &str = "Wall";
pub(crate) const WALL_FORMULA: &str = "π (r + R) × slant, for each frustum";
pub(crate) const BOTTOM: &str = "Bottom";
pub(crate) const BOTTOM_FORMULA: &str = "π × half the foot, squared";
pub(crate) const EXTRAS: &str = "Handles, spout, borders";
pub(crate) const SHARE_OF_THE_REST: &str = "as a share of the rest";
pub(crate) const ALL: &str = "Total";

// The plater's figures

pub(crate) const THICKNESS: &str = "Thickness of the new coat";
pub(crate) const THICKNESS_HINT: &str = "Ask the plater; the value shown is a usual one.";
pub(crate) const SILVER_PRICE: &str = "Price of a gram of fine silver";
pub(crate) const SILVER_PRICE_HINT: &str = "It changes daily and this program looks nothing up: \
    enter today's price. The value shown is only a placeholder.";
pub(crate) const BILL: &str = "The plater's price for the whole job";
pub(crate) const BILL_QUOTED: &str = "Preset to your quote.";
pub(crate) const BILL_GUESSED: &str = "Preset to a wide guess: we know of no price list.";

// The answer

pub(crate) fn answer(
    um: &str,
    cm2: &str,
    grams: &str,
    money: &str,
    worth: &str,
    share: &str,
    stand_ins: &str,
) -> String {
    format!(
        "{um} µm of silver on {cm2} cm² weighs {grams} g: metal worth {money}{worth}{share}.{stand_ins}"
    )
}

pub(crate) const MORE_THAN_THE_PRICE: &str = ", which is more than the whole price: check both \
    figures";

pub(crate) fn share_of_price(hundredths: &str) -> String {
    format!(", about {hundredths} % of the price of the job")
}

pub(crate) const ONE_OR_LESS: &str = "1 or less";
pub(crate) const STAND_INS: &str = " Usual values replace what you have not entered.";

pub(crate) fn real_loss(hundredths: f64, um: &str, grams: &str) -> String {
    format!(
        "The silver is the smaller matter. On one replated tray, {hundredths:.0} of every 100 minutes at the \
         bench went into polishing off the old surface, and hard polishing takes some {um} µm: {grams} g of \
         the piece's own surface over the same area, with the edge of every mark and line. That is the real \
         loss, and no coat puts it back."
    )
}

// The sums

pub(crate) const SUMS: &str = "The sums";
pub(crate) const SUMS_COLUMNS: [&str; 3] = ["What", "Formula", "Result"];
pub(crate) const SILVER: &str = "Silver in the coat";
pub(crate) const SILVER_FORMULA: &str = "area × thickness × density";
pub(crate) const WORTH: &str = "Worth as metal";
pub(crate) const TIMES_YOUR_PRICE: &str = "times your price per gram";
pub(crate) const TIMES_A_STAND_IN: &str = "times a placeholder price per gram";
