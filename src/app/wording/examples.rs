//! The worked examples: a title and a short story for each. The pieces are invented.

pub const CAKE_BASKET: [&str; 2] = [
    "The cake basket",
    "An early basket. A trace of copper shows at the foot and the edges, and \
     the owner has an offer to make it look new.",
];
pub const WORN_TRAY: [&str; 2] = [
    "The worn tray",
    "A tray polished for generations until copper shows on a fifth of it. Would it fetch more if it were bright?",
];
pub const DAILY_TEAPOT: [&str; 2] = [
    "The teapot for every day",
    "A sturdy pot whose mark names the metal below the silver. The family wants to pour tea from it again.",
];
pub const LEAKING_TEAPOT: [&str; 2] = [
    "The leaking teapot",
    "A pot of soft grey metal that leaks. Is it worth closing the leak?",
];
pub const RUSTED_SNUFFERS_TRAY: [&str; 2] = [
    "The rusted snuffers tray",
    "Silver over iron, with rust coming through. What stops it, and what makes it worse?",
];
pub const REPLATED_COFFEE_POT: [&str; 2] = [
    "The coffee pot with two skins",
    "An old pot, covered with new silver long ago, with a grey repair at the spout.",
];
pub const COPPER_TUREEN: [&str; 2] = [
    "The copper tureen",
    "A large, later piece made in the old style; nearly half of it is bare copper, and it is to be sold.",
];
pub const HALLMARKED_CANDLESTICKS: [&str; 2] = [
    "The candlesticks that do not add up",
    "Marks of solid silver on the base and a copper line down the stem: two \
     signs that do not fit together.",
];
pub const PAIR_OF_CANDLESTICKS: [&str; 2] = [
    "The pair of candlesticks",
    "Two alike, one of them dented. Is it worth mending, and do they sell better together?",
];
pub const DENTED_TRAY: [&str; 2] = [
    "The dented tray",
    "A nickel-silver tray with deep dents, and a quote for taking them out.",
];
pub const TEAPOT_WITHOUT_KNOB: [&str; 2] = [
    "The teapot without its knob",
    "Fused plate, sound but for the knob, which is lost. Is a new one worth it?",
];
pub const LOOSE_CANDLESTICK: [&str; 2] = [
    "The candlestick with a loose base",
    "It is loaded with pitch, so solder is out; the base wobbles.",
];
pub const BROKEN_LACQUER_POT: [&str; 2] = [
    "The pot under broken lacquer",
    "Tarnish runs in threads under an old coat.",
];
pub const UNTINNED_SAUCEBOAT: [&str; 2] = [
    "The sauceboat that lost its tin",
    "Bare copper inside, and the owner would like to use it at table.",
];
pub const SIX_FAULTS_TEAPOT: [&str; 2] = [
    "The teapot with six faults",
    "A leak, deep dents, a loose handle, no knob, a grey spout, and black all over.",
];
