//! Wording of the page on care.

// The two habits

/// Places to keep a piece: id in the ledger under `silver.setting`, and label.
pub(crate) const SETTINGS: [(&str, &str); 7] = [
    ("home", "Open, in a usual home"),
    ("rural", "Open, in clean country air"),
    (
        "kitchen",
        "Kitchen or town air, or near wool, rubber or coal",
    ),
    ("cabinet", "Closed glazed case"),
    ("bag", "Sealed bag with a tarnish absorber"),
    ("lacquer", "Under unbroken lacquer"),
    ("coupon", "By the class of a silver coupon hung there"),
];

/// Classes of air: id in the ledger under `silver.air`, and label.
pub(crate) const AIRS: [(&str, &str); 9] = [
    ("ic1", "ISO 11844-1, category 1: very low"),
    ("ic2", "ISO 11844-1, category 2: low"),
    ("ic3", "ISO 11844-1, category 3: medium"),
    ("ic4", "ISO 11844-1, category 4: high"),
    ("ic5", "ISO 11844-1, category 5: very high"),
    ("g1", "ANSI/ISA-71.04, G1: mild"),
    ("g2", "ANSI/ISA-71.04, G2: moderate"),
    ("g3", "ANSI/ISA-71.04, G3: harsh"),
    ("gx", "ANSI/ISA-71.04, GX: severe"),
];

/// Ways of cleaning: id in the ledger under `silver.loss`, and label.
pub(crate) const WAYS: [(&str, &str); 9] = [
    ("paste", "Paste, cream or foam for silver"),
    ("cloth", "Impregnated cloth, lightly"),
    ("chalk", "Precipitated chalk, gently"),
    ("whiting", "Whiting or plate powder"),
    ("brass_polish", "Polish for brass or all metals"),
    ("dip_swab", "Dip, on a swab"),
    ("dip_bath", "Dip, with the piece immersed"),
    ("foil_bath", "Bath with foil"),
    ("buff", "Machine buffing"),
];

pub(crate) const LOOK_AHEAD: &str = "Look ahead";
pub(crate) const YEARS: &str = "years";
pub(crate) const FIRST_HABIT: &str = "The first habit";
pub(crate) const SECOND_HABIT: &str = "The second habit";
pub(crate) const KEPT: &str = "Kept";
pub(crate) const AIR: &str = "Class of the air";
pub(crate) const AIR_HINT: &str = "Only if a silver coupon was hung there and read. The limits of \
    these classes are from memory.";
pub(crate) const CLEANED_WITH: &str = "Cleaned with";
pub(crate) const CLEANINGS: &str = "Cleanings";
pub(crate) const CLEANINGS_HINT: &str = "0 if it is never cleaned.";
pub(crate) const IN_YEARS: &str = "in how many years";

// The answer

pub(crate) const SHIELD: &str = "The shield is a let-in piece of silver: thicker, by an unknown \
    amount. It cannot be forecast until it is measured.";
pub(crate) const SOLID_SILVER: &str = "Most likely solid silver, so there is no layer to wear \
    through.";

pub(crate) fn picture_title(part: &str, years: f64) -> String {
    format!("Base metal showing on the {part}, over {years:.0} years")
}

pub(crate) const CORRECT_IT: &str = "Correct the number marked above to see the forecast.";

pub(crate) fn next_to_nothing(habit: &str) -> String {
    format!("The {habit} habit takes almost nothing compared with the other.")
}

pub(crate) const ALIKE: &str = "Both habits take about the same amount of silver.";

pub(crate) fn lasts(habit: &str, times: &str) -> String {
    format!("With the {habit} habit the silver lasts about {times} times as long.")
}

pub(crate) fn lasts_many_times(habit: &str, times: f64) -> String {
    format!("With the {habit} habit the silver lasts about {times:.0} times as long.")
}

pub(crate) const FIRST: &str = "first";
pub(crate) const SECOND: &str = "second";
pub(crate) const HALF_IS_BARE: &str =
    "half of it is already bare, so there is little left to lose.";
pub(crate) const A_FEW_YEARS: &str = "a few years of this care";
pub(crate) const SOME_YEARS: &str = "some years of this care";
pub(crate) const DECADES: &str = "decades of this care";

pub(crate) fn doubles(span: &str, low: &str, high: &str) -> String {
    format!("{span} until twice as much base metal shows: somewhere between {low} and {high}.")
}

pub(crate) fn already_past(limit: &str) -> String {
    format!(" It is already past {limit} bare.")
}

pub(crate) fn bare_between(limit: &str, low: &str, high: &str) -> String {
    format!(" {limit} is bare somewhere between {low} and {high} from now.")
}

// The two side by side

pub(crate) const CAPTION: &str = "The two habits side by side; each range covers 8 cases in 10";
pub(crate) const FIRST_COLUMN: &str = "First";
pub(crate) const SECOND_COLUMN: &str = "Second";
pub(crate) const AFTER_A_YEAR: &str = "How it looks after a year without cleaning";
pub(crate) const AT_CLEANING: &str = "How it looks when the next cleaning is due";
pub(crate) const NEVER_CLEANED: &str = "never cleaned";
pub(crate) const GONE_IN_A_YEAR: &str = "Silver lost in a year, µm";
pub(crate) const ONE_CLEANING: &str = "One cleaning takes, µm";
pub(crate) const NONE: &str = "none";
pub(crate) const UNTIL_DOUBLED: &str = "Until twice as much shows";
pub(crate) const HALF_ALREADY: &str = "half is already bare";
pub(crate) const UNTIL_BARRED: &str = "Until too much metal is bare for rubbing";
pub(crate) const PAST: &str = "already past";

pub(crate) fn middle_and_range(middle: &str, low: &str, high: &str) -> String {
    format!("{middle}; {low} to {high}")
}

pub(crate) fn rubbed_bare(habit: &str) -> String {
    format!(
        "{habit}: so much base metal shows here that it should not be rubbed, dipped or buffed at all. The \
         forecast only shows what would follow."
    )
}

// A measured thickness

pub(crate) const MEASURED: &str = "The silver has been measured";
pub(crate) const MEASUREMENT_TELLS_MORE: &str = "A measurement tells you more than any guess from \
    the surface. Give one reading or several, separated by spaces, from places typical of the \
    part.";
pub(crate) const READING_HINT: &str = "Thousandths of a millimetre.";
pub(crate) const ERROR: &str = "Standard error";
pub(crate) const ERROR_HINT: &str = "Leave it empty if you were given none: a usual value is \
    used.";

// As made

pub(crate) const AS_MADE: &str = "How thick it was when new";
pub(crate) const AS_MADE_CAPTION: &str =
    "Silver on one face when new, in thousandths of a millimetre; our judgement";
pub(crate) const AS_MADE_COLUMNS: [&str; 4] = ["Kind", "Least", "Usual", "Most"];

/// Kinds whose original thickness is listed: id and label.
pub(crate) const MADE: [(&str, &str); 6] = [
    ("FPD", "Fused plate"),
    ("CLP", "Close plate"),
    ("FRP", "French plate"),
    ("ENS_marked", "Electroplate, marked as good"),
    ("ENS", "Electroplate on nickel silver, unmarked"),
    ("ECU", "Other electroplate"),
];

pub(crate) fn rolled(
    thin: f64,
    thick: f64,
    low: &str,
    low_end: &str,
    high: &str,
    high_end: &str,
) -> String {
    format!(
        "For fused plate a museum gives two proportions that do not agree. On sheet of {thin} to {thick} mm \
         with silver on both faces, one gives {low} to {low_end} µm, the other up to {high} to {high_end}."
    )
}

pub(crate) const SHIELD_IS_THICKER: &str =
    "A let-in shield is thicker still; nobody has published by how much.";

// What it rests on

pub(crate) const BASIS: &str = "What this rests on";
pub(crate) const HARDLY_MEASURED: &str = "Nobody has published how fast silver tarnishes in a \
    home, and we know of only one weighed loss from a cleaning, from 1916. The rest is our \
    judgement, so the ranges are wide.";
pub(crate) const WHAT_TAKES_SILVER: &str = "Tarnish uses up the same silver in a year however \
    often you clean it off; each cleaning takes sound silver as well. Ridges and edges lose \
    several times as much as flat areas.";
pub(crate) const ONE_PACE: &str = "We assume that tarnish grows at a steady pace. In fact it slows as it thickens, but never stops.";

pub(crate) fn lacquer(display: f64, least: f64, most: f64) -> String {
    format!(
        "We assume that lacquer stays unbroken. One was predicted to last about {display:.0} years in museum \
         rooms, and was found failing on many pieces soon after; on a piece in use we judge {least:.0} to \
         {most:.0} years. It fails in patches."
    )
}

pub(crate) const CLASSES_OF_AIR: &str = "Classes of air: their limits are from memory and must be \
    checked in the standard. The mildest class of ANSI/ISA-71.04 is meant for electronics: a year \
    at its limit turns silver black.";
