//! Words of the sums on a new coat of silver.

pub(crate) const NEW_COAT: &str = "Silver in a new coat";
pub(crate) const NO_SIZES: &str =
    "Give the sizes of the piece, and this says how much silver a coat would be.";
pub(crate) const NO_PROCEDURE: &str = "Sums for a conversation with a plater, not a procedure: a \
    coat is never even, and lies thinnest in hollows and thickest on edges.";

// Shape

pub(crate) const SHAPE: &str = "Shape";
pub(crate) const SHAPE_HINT: &str = "The one that stands in comes from the form of the piece.";
pub(crate) const TURNED: &str = "Round: a pot, cup or candlestick";
pub(crate) const FLAT: &str = "Flat, round or oval: a tray or dish";
pub(crate) const BOX: &str = "A box";
pub(crate) const SIDES: &str = "Which sides";
pub(crate) const OUTSIDE: &str = "Outside or upper side only";
pub(crate) const BOTH_SIDES: &str = "Both sides";
pub(crate) const EXTRAS_FIELD: &str = "Handles, spout and borders, beyond that";
pub(crate) const EXTRAS_HINT: &str = "As a share of the rest.";
pub(crate) const FROM_THE_PIECE: &str = "Stands in from the piece.";
pub(crate) const HEIGHT: &str = "Height";
pub(crate) const LENGTH: &str = "Length";
pub(crate) const WIDTH: &str = "Width";
pub(crate) const TOP: &str = "Across at the top";
pub(crate) const WIDEST: &str = "Across at the widest";
pub(crate) const FOOT: &str = "Across at the foot";

// Surface

pub(crate) const SURFACE_CAPTION: &str = "Surface to be covered";
pub(crate) const SURFACE_COLUMNS: [&str; 3] = ["Surface", "Worked out as", "Area"];
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
pub(crate) const ALL: &str = "All together";

// The plater's figures

pub(crate) const THICKNESS: &str = "Thickness of the new coat";
pub(crate) const THICKNESS_HINT: &str = "Ask the plater for it; this stands in.";
pub(crate) const SILVER_PRICE: &str = "Price of a gram of fine silver";
pub(crate) const SILVER_PRICE_HINT: &str = "It moves daily and this program looks nothing up: put in \
    today's. What stands there is only a stand-in.";
pub(crate) const BILL: &str = "The plater's price for the whole job";
pub(crate) const BILL_QUOTED: &str = "Your quote stands in.";
pub(crate) const BILL_GUESSED: &str = "A wide guess stands in: no price list is known to us.";

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
        "{um} µm of silver on {cm2} cm² is {grams} g: metal for {money}{worth}{share}.{stand_ins}"
    )
}

pub(crate) const MORE_THAN_THE_PRICE: &str = ", which is more than the whole price: check both";

pub(crate) fn share_of_price(hundredths: &str) -> String {
    format!(", about {hundredths} in 100 of the price of the job")
}

pub(crate) const ONE_OR_LESS: &str = "1 or less";
pub(crate) const STAND_INS: &str = " With stand-ins for what you have not given.";

pub(crate) fn real_loss(hundredths: f64, um: &str, grams: &str) -> String {
    format!(
        "The silver is the small part. Of one replated tray, {hundredths:.0} in 100 minutes at the bench went \
         into polishing the old surface off, and hard polishing takes some {um} µm: {grams} g of the piece's \
         own surface over the same area, with the edge of every mark and line. That is the real loss, and no \
         coat puts it back."
    )
}

// The sums

pub(crate) const SUMS: &str = "The sums";
pub(crate) const SUMS_COLUMNS: [&str; 3] = ["What", "Worked out as", "Result"];
pub(crate) const SILVER: &str = "Silver in the coat";
pub(crate) const SILVER_FORMULA: &str = "area × thickness × density";
pub(crate) const WORTH: &str = "Worth as metal";
pub(crate) const TIMES_YOUR_PRICE: &str = "times your price of a gram";
pub(crate) const TIMES_A_STAND_IN: &str = "times a stand-in for the price of a gram";
