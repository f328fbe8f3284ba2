//! The fields, in the order of the file, and the ranges they share.

use super::{Field, FieldKind, NumberKind, NumberRange};

const fn number(
    kind: NumberKind,
    (least, most): (f64, f64),
    unit: &'static str,
    what: &'static str,
    example: &'static str,
) -> NumberRange {
    NumberRange {
        kind,
        least,
        most,
        unit,
        what,
        example,
    }
}

pub(in crate::record) static ANY_NUMBER: NumberRange = number(
    NumberKind::Measure,
    (f64::MIN, f64::MAX),
    "",
    "a number",
    "120",
);
const YEAR: NumberRange = number(NumberKind::Whole, (-1e9, 1e9), "", "a year", "1790");
const HEIGHT: NumberRange = number(
    NumberKind::Measure,
    (1.0, 3000.0),
    "mm",
    "a length in millimetres",
    "150",
);
const WEIGHT: NumberRange = number(
    NumberKind::Measure,
    (0.1, 50_000.0),
    "g",
    "a weight in grams",
    "150",
);
const WEIGHT_IN_WATER: NumberRange = number(
    NumberKind::Measure,
    (0.0, 50_000.0),
    "g",
    "a weight in grams",
    "150",
);
const WATER: NumberRange = number(
    NumberKind::Measure,
    (0.0, 40.0),
    "°C",
    "a temperature in C",
    "20",
);
const STEP: NumberRange = number(
    NumberKind::Measure,
    (0.001, 100.0),
    "g",
    "the smallest step of the balance in grams",
    "0.1",
);
const CONDUCTIVITY: NumberRange = number(
    NumberKind::Percent,
    (0.0, 110.0),
    "% IACS",
    "a conductivity in % of copper",
    "50",
);
const SHARE_IN_PERCENT: NumberRange =
    number(NumberKind::Percent, (0.0, 100.0), "%", "a share in %", "50");
const DISTANCE: NumberRange = number(
    NumberKind::Measure,
    (0.0, 2000.0),
    "mm",
    "a distance in millimetres",
    "25",
);
const MICROMETRES: NumberRange = number(
    NumberKind::Measure,
    (0.0, 2000.0),
    "µm",
    "micrometres",
    "20",
);
const POINTS_COUNTED: NumberRange = number(
    NumberKind::Whole,
    (1.0, 100_000.0),
    "",
    "a number of points",
    "120",
);
const FRACTION: NumberRange = number(NumberKind::Measure, (0.0, 1.0), "", "a fraction", "0.05");
pub(in crate::record) static BARE_SHARE: NumberRange = number(
    NumberKind::Measure,
    (0.0, 1.0),
    "",
    "the share of the part where base metal shows (0.05 is 5 %)",
    "0.05",
);
const POINTS: NumberRange = number(NumberKind::Whole, (0.0, 100.0), "points", "points", "50");
const STAKE: NumberRange = number(
    NumberKind::Money,
    (1.0, 100_000_000.0),
    "",
    "an amount of money",
    "120",
);
const MONEY: NumberRange = number(
    NumberKind::Money,
    (0.0, 100_000_000.0),
    "",
    "an amount of money",
    "120",
);
const PRICE: NumberRange = number(
    NumberKind::Money,
    (-100_000_000.0, 100_000_000.0),
    "",
    "a price",
    "120",
);
const PERCENTAGE: NumberRange =
    number(NumberKind::Percent, (0.0, 100.0), "%", "a percentage", "50");
pub(in crate::record) static SIMILAR: NumberRange = number(
    NumberKind::Measure,
    (0.0, 1.0),
    "",
    "close, fair, loose or a share of 1",
    "0.05",
);
const HOURS: NumberRange = number(
    NumberKind::Measure,
    (0.0, 10_000.0),
    "h",
    "a number of hours",
    "2.5",
);
const OWN_FIGURE: NumberRange = number(
    NumberKind::Measure,
    (f64::MIN, f64::MAX),
    "",
    "your own value",
    "120",
);
const RELEASED: NumberRange = number(
    NumberKind::Measure,
    (0.0, 100_000.0),
    "mg/kg",
    "a laboratory's result in mg/kg",
    "0.05",
);
const CUP: NumberRange = number(
    NumberKind::Measure,
    (1.0, 5000.0),
    "mL",
    "the size of a cup in mL",
    "200",
);
const AIR: NumberRange = number(
    NumberKind::Measure,
    (-30.0, 50.0),
    "°C",
    "a temperature in °C",
    "20",
);
const PATCH: NumberRange = number(
    NumberKind::Measure,
    (0.5, 100.0),
    "mm",
    "a width in mm",
    "10",
);
const THICKNESS: NumberRange = number(
    NumberKind::Measure,
    (0.05, 30.0),
    "mm",
    "a thickness in mm",
    "0.8",
);
const JOINT_HEAT: NumberRange = number(
    NumberKind::Measure,
    (-50.0, 1500.0),
    "°C",
    "a temperature in °C",
    "230",
);
const EXTRAS: NumberRange = number(NumberKind::Percent, (0.0, 300.0), "%", "a percentage", "20");
const LOOK_AHEAD: NumberRange = number(
    NumberKind::Measure,
    (1.0, 300.0),
    "years",
    "a number of years",
    "30",
);
const CLEANINGS: NumberRange = number(
    NumberKind::Measure,
    (0.0, 400.0),
    "",
    "a number of cleanings",
    "4",
);
const IN_YEARS: NumberRange = number(
    NumberKind::Measure,
    (0.1, 100.0),
    "years",
    "a number of years",
    "1",
);
const SHOP_MULTIPLE: NumberRange = number(
    NumberKind::Measure,
    (0.5, 10.0),
    "times",
    "how many times the hammer price",
    "1.5",
);
const SHOP_MONTHS: NumberRange = number(
    NumberKind::Measure,
    (0.0, 240.0),
    "months",
    "a number of months",
    "6",
);
const MONTHS: NumberRange = number(
    NumberKind::Measure,
    (0.0, 60.0),
    "months",
    "a number of months",
    "2",
);
const RATE: NumberRange = number(
    NumberKind::Percent,
    (0.0, 60.0),
    "% a year",
    "a percentage",
    "4",
);
const HOLDING: NumberRange = number(
    NumberKind::Percent,
    (0.0, 30.0),
    "% a year",
    "a percentage",
    "2",
);
const GAIN: NumberRange = number(
    NumberKind::Percent,
    (0.0, 1000.0),
    "%",
    "a percentage",
    "20",
);
const RISK: NumberRange = number(
    NumberKind::Percent,
    (1.0, 50.0),
    "in 100",
    "a percentage",
    "10",
);
const PLATE: NumberRange = number(
    NumberKind::Measure,
    (0.1, 500.0),
    "µm",
    "a thickness in µm",
    "20",
);
const SILVER_PRICE: NumberRange = number(
    NumberKind::Money,
    (0.001, 1000.0),
    "",
    "a price for each gram",
    "0.80",
);
const CURRENT: NumberRange = number(
    NumberKind::Measure,
    (0.01, 1000.0),
    "mA",
    "a current in mA",
    "50",
);
const EXTENT: NumberRange = number(
    NumberKind::Measure,
    (1.0, 2000.0),
    "mm",
    "a length in millimetres",
    "150",
);

const fn field(path: &'static str, label: &'static str, kind: FieldKind, since: u64) -> Field {
    Field {
        path,
        label,
        kind,
        since,
    }
}

/// Every field of a record that this program reads or shows.
pub static FIELDS: &[Field] = &[
    field("asked_on", "Asked on", FieldKind::Day, 1),
    field("piece.name", "Name", FieldKind::Text, 1),
    field("piece.form", "Form", FieldKind::Word, 1),
    field(
        "piece.from_year",
        "Made no earlier than",
        FieldKind::Number(YEAR),
        1,
    ),
    field(
        "piece.to_year",
        "Made no later than",
        FieldKind::Number(YEAR),
        1,
    ),
    field("piece.height_mm", "Height", FieldKind::Number(HEIGHT), 1),
    field("piece.length_mm", "Length", FieldKind::Number(HEIGHT), 2),
    field("piece.width_mm", "Width", FieldKind::Number(HEIGHT), 2),
    field("piece.weight_g", "Weight", FieldKind::Number(WEIGHT), 2),
    field(
        "piece.soldered_vessel",
        "Soldered joints",
        FieldKind::Flag,
        1,
    ),
    field("piece.rare", "Rare", FieldKind::Flag, 1),
    field("piece.documented", "Documented", FieldKind::Flag, 1),
    field("piece.came_from", "How it came", FieldKind::Word, 2),
    field("findings[].id", "Finding", FieldKind::Word, 1),
    field("findings[].answer", "Answer", FieldKind::Word, 1),
    field("findings[].part", "Part", FieldKind::Word, 1),
    field("findings[].from", "From the mark", FieldKind::Text, 2),
    field(
        "measures.density.in_air_g",
        "Weight in air",
        FieldKind::Number(WEIGHT),
        1,
    ),
    field(
        "measures.density.in_water_g",
        "Weight in water",
        FieldKind::Number(WEIGHT_IN_WATER),
        1,
    ),
    field(
        "measures.density.water_c",
        "Water",
        FieldKind::Number(WATER),
        1,
    ),
    field(
        "measures.density.readable_g",
        "Smallest step of the balance",
        FieldKind::Number(STEP),
        1,
    ),
    field(
        "measures.iacs.percent",
        "Conductivity",
        FieldKind::Number(CONDUCTIVITY),
        1,
    ),
    field(
        "measures.xrf.silver_pct",
        "Silver",
        FieldKind::Number(SHARE_IN_PERCENT),
        1,
    ),
    field(
        "measures.xrf.nickel_pct",
        "Nickel",
        FieldKind::Number(SHARE_IN_PERCENT),
        1,
    ),
    field(
        "measures.xrf.zinc_pct",
        "Zinc",
        FieldKind::Number(SHARE_IN_PERCENT),
        1,
    ),
    field(
        "measures.xrf.tin_pct",
        "Tin",
        FieldKind::Number(SHARE_IN_PERCENT),
        1,
    ),
    field(
        "measures.xrf.iron_pct",
        "Iron",
        FieldKind::Number(SHARE_IN_PERCENT),
        1,
    ),
    field(
        "measures.xrf.copper_pct",
        "Copper",
        FieldKind::Number(SHARE_IN_PERCENT),
        1,
    ),
    field(
        "measures.xrf.antimony_pct",
        "Antimony",
        FieldKind::Number(SHARE_IN_PERCENT),
        1,
    ),
    field("parts[].part", "Part", FieldKind::Word, 1),
    field("parts[].bleed", "Base metal showing", FieldKind::Word, 1),
    field(
        "parts[].bleed.low",
        "Base metal showing, low",
        FieldKind::Number(FRACTION),
        1,
    ),
    field(
        "parts[].bleed.likely",
        "Base metal showing, likely",
        FieldKind::Number(FRACTION),
        1,
    ),
    field(
        "parts[].bleed.high",
        "Base metal showing, high",
        FieldKind::Number(FRACTION),
        1,
    ),
    field("parts[].tarnish", "Tarnish", FieldKind::Word, 1),
    field("parts[].joint", "Joints and seams", FieldKind::Word, 1),
    field("parts[].lead", "Lead", FieldKind::Word, 1),
    field("parts[].dents", "Dents", FieldKind::Word, 1),
    field("parts[].interior", "Lining", FieldKind::Word, 1),
    field(
        "parts[].corrosion",
        "Powder, crust or rust",
        FieldKind::Word,
        1,
    ),
    field("parts[].fill", "Filling", FieldKind::Word, 1),
    field("parts[].mount", "Stamped mount", FieldKind::Word, 1),
    field("parts[].split", "Splits", FieldKind::Word, 1),
    field("parts[].loss", "Missing metal", FieldKind::Word, 1),
    field("parts[].replaced", "Replaced", FieldKind::Word, 1),
    field(
        "parts[].engraving",
        "Engraving and chasing",
        FieldKind::Word,
        1,
    ),
    field("parts[].lacquer", "Lacquer", FieldKind::Word, 1),
    field("parts[].repair", "Old repair", FieldKind::Word, 2),
    field(
        "parts[].fill_state",
        "State of the filling",
        FieldKind::Word,
        2,
    ),
    field("parts[].liner", "Loose liner", FieldKind::Word, 2),
    field("parts[].material", "Material", FieldKind::Word, 2),
    field("parts[].gilding", "Gilding", FieldKind::Word, 2),
    field("parts[].hollow", "Hollow", FieldKind::Flag, 2),
    field("parts[].wax", "Candle wax", FieldKind::Flag, 2),
    field("parts[].spots", "Places of faults", FieldKind::Several, 2),
    field(
        "parts[].joint_distance_mm",
        "From the faulty joint to the next",
        FieldKind::Number(DISTANCE),
        1,
    ),
    field("parts[].xrf_um", "Silver (xrf)", FieldKind::Several, 1),
    field(
        "parts[].xrf_error_um",
        "Error (xrf)",
        FieldKind::Number(MICROMETRES),
        1,
    ),
    field(
        "parts[].coulometric_um",
        "Silver (coulometric)",
        FieldKind::Several,
        1,
    ),
    field(
        "parts[].coulometric_error_um",
        "Error (coulometric)",
        FieldKind::Number(MICROMETRES),
        1,
    ),
    field(
        "parts[].section_um",
        "Silver (section)",
        FieldKind::Several,
        1,
    ),
    field(
        "parts[].section_error_um",
        "Error (section)",
        FieldKind::Number(MICROMETRES),
        1,
    ),
    field(
        "parts[].count_points",
        "Points in a field",
        FieldKind::Number(POINTS_COUNTED),
        1,
    ),
    field(
        "parts[].count_bare",
        "Points on bare metal",
        FieldKind::Several,
        1,
    ),
    field("parts[].note", "Note", FieldKind::Text, 1),
    field("parts[].photos", "Photographs", FieldKind::Several, 1),
    field("aim.goal", "Goal", FieldKind::Word, 1),
    field("aim.food", "Food or drink", FieldKind::Flag, 1),
    field("aim.store_food", "Food stored in it", FieldKind::Flag, 1),
    field(
        "aim.household_child_or_pregnant",
        "Child or pregnancy",
        FieldKind::Flag,
        1,
    ),
    field("aim.doer", "Who does it", FieldKind::Word, 1),
    field("aim.asked", "Asked about", FieldKind::Several, 1),
    field(
        "aim.weights.originality",
        "Originality",
        FieldKind::Number(POINTS),
        1,
    ),
    field(
        "aim.weights.fitness",
        "Fitness",
        FieldKind::Number(POINTS),
        1,
    ),
    field(
        "aim.weights.stability",
        "Stability",
        FieldKind::Number(POINTS),
        1,
    ),
    field("aim.weights.cost", "Cost", FieldKind::Number(POINTS), 1),
    field(
        "aim.weights.retreatability",
        "Retreatability",
        FieldKind::Number(POINTS),
        1,
    ),
    field("aim.even_bet", "Even bet", FieldKind::Number(STAKE), 1),
    field("aim.assume_lead", "Treat as leaded", FieldKind::Flag, 2),
    field(
        "aim.dishwasher",
        "Washed in a dishwasher",
        FieldKind::Flag,
        2,
    ),
    field("aim.damp", "Kept in a damp place", FieldKind::Flag, 2),
    field("aim.loan", "Lent to a museum", FieldKind::Flag, 2),
    field("aim.until", "By when", FieldKind::Day, 2),
    field("market.low", "Value, low", FieldKind::Number(MONEY), 1),
    field(
        "market.likely",
        "Value, likely",
        FieldKind::Number(MONEY),
        1,
    ),
    field("market.high", "Value, high", FieldKind::Number(MONEY), 1),
    field("market.currency", "Currency", FieldKind::Word, 1),
    field("market.route", "Route", FieldKind::Word, 1),
    field(
        "market.fees.above",
        "Sum above which the commission changes",
        FieldKind::Number(MONEY),
        1,
    ),
    field(
        "market.fees.minimum",
        "Least charge",
        FieldKind::Number(MONEY),
        1,
    ),
    field(
        "market.fees.lot",
        "Charge a lot",
        FieldKind::Number(MONEY),
        1,
    ),
    field(
        "market.fees.transport",
        "Transport",
        FieldKind::Number(MONEY),
        1,
    ),
    field(
        "market.fees.unsold",
        "Charge when unsold",
        FieldKind::Number(MONEY),
        1,
    ),
    field(
        "market.fees.commission_pct",
        "Commission",
        FieldKind::Number(PERCENTAGE),
        1,
    ),
    field(
        "market.fees.above_pct",
        "Commission above",
        FieldKind::Number(PERCENTAGE),
        1,
    ),
    field(
        "market.fees.vat_pct",
        "Tax",
        FieldKind::Number(PERCENTAGE),
        1,
    ),
    field(
        "market.fees.insurance_pct",
        "Insurance",
        FieldKind::Number(PERCENTAGE),
        1,
    ),
    field(
        "market.fees.sold_pct",
        "Sold at the first try",
        FieldKind::Number(PERCENTAGE),
        1,
    ),
    field(
        "market.fees.reoffer_pct",
        "Price when offered again",
        FieldKind::Number(PERCENTAGE),
        1,
    ),
    field(
        "market.fees.premium_pct",
        "Buyer's premium",
        FieldKind::Number(PERCENTAGE),
        1,
    ),
    field(
        "market.damping_pct",
        "Damping",
        FieldKind::Number(PERCENTAGE),
        1,
    ),
    field(
        "market.mix.collector",
        "Share of collectors",
        FieldKind::Number(PERCENTAGE),
        1,
    ),
    field(
        "market.mix.decorator",
        "Share of decorators",
        FieldKind::Number(PERCENTAGE),
        1,
    ),
    field(
        "market.mix.user",
        "Share of users",
        FieldKind::Number(PERCENTAGE),
        1,
    ),
    field("comparables[].price", "Price", FieldKind::Number(PRICE), 1),
    field("comparables[].similar", "How alike", FieldKind::Word, 1),
    field("comparables[].on", "Sold on", FieldKind::Day, 1),
    field(
        "comparables[].bleed.low",
        "Base metal showing, low",
        FieldKind::Number(FRACTION),
        1,
    ),
    field(
        "comparables[].bleed.likely",
        "Base metal showing, likely",
        FieldKind::Number(FRACTION),
        1,
    ),
    field(
        "comparables[].bleed.high",
        "Base metal showing, high",
        FieldKind::Number(FRACTION),
        1,
    ),
    field("comparables[].what", "Sort of price", FieldKind::Word, 1),
    field("comparables[].kind", "Kind", FieldKind::Word, 1),
    field(
        "comparables[].bleed",
        "Base metal showing",
        FieldKind::Word,
        1,
    ),
    field("comparables[].tarnish", "Tarnish", FieldKind::Word, 1),
    field("comparables[].dents", "Dents", FieldKind::Word, 1),
    field("comparables[].joint", "Joints", FieldKind::Word, 1),
    field("comparables[].currency", "Currency", FieldKind::Word, 1),
    field("comparables[].of", "Own sale", FieldKind::Text, 2),
    field("comparables[].left_out", "Left out", FieldKind::Flag, 1),
    field("quotes[].treatment", "Treatment", FieldKind::Word, 1),
    field("quotes[].low", "Price, low", FieldKind::Number(MONEY), 1),
    field(
        "quotes[].likely",
        "Price, likely",
        FieldKind::Number(MONEY),
        1,
    ),
    field("quotes[].high", "Price, high", FieldKind::Number(MONEY), 1),
    field("quotes[].post", "Carriage", FieldKind::Number(MONEY), 1),
    field("quotes[].deposit", "Deposit", FieldKind::Number(MONEY), 1),
    field("quotes[].by", "By whom", FieldKind::Text, 1),
    field("quotes[].id", "Id", FieldKind::Text, 2),
    field("quotes[].treatments", "Treatments", FieldKind::Several, 2),
    field("quotes[].hours", "Hours", FieldKind::Number(HOURS), 2),
    field("quotes[].fixed", "Fixed price", FieldKind::Flag, 2),
    field("quotes[].covers", "Covers", FieldKind::Word, 2),
    field(
        "quotes[].post_included",
        "Carriage included",
        FieldKind::Flag,
        2,
    ),
    field("tests[].id", "Id", FieldKind::Text, 2),
    field("tests[].note", "Note", FieldKind::Text, 2),
    field("tests[].kind", "What was tested", FieldKind::Word, 2),
    field("tests[].part", "Part", FieldKind::Word, 2),
    field("tests[].by", "Who tested", FieldKind::Word, 2),
    field("tests[].on", "Tested on", FieldKind::Day, 2),
    field("tests[].passed", "Passed", FieldKind::Flag, 2),
    field("done[].what", "Work", FieldKind::Word, 1),
    field("done[].materials", "Material", FieldKind::Word, 1),
    field("done[].by", "By whom", FieldKind::Text, 1),
    field("done[].before", "Before", FieldKind::Text, 1),
    field("done[].after", "After", FieldKind::Text, 1),
    field("done[].on", "When", FieldKind::Day, 1),
    field("done[].id", "Id", FieldKind::Text, 2),
    field("done[].parts", "Parts", FieldKind::Several, 2),
    field("done[].hours", "Hours", FieldKind::Number(HOURS), 2),
    field("done[].bill", "Bill", FieldKind::Number(MONEY), 2),
    field("done[].bill_no", "Number of the bill", FieldKind::Text, 2),
    field("done[].method", "Method", FieldKind::Text, 2),
    field("done[].deviations", "Deviations", FieldKind::Text, 2),
    field("done[].kept", "Parts kept", FieldKind::Text, 2),
    field("done[].bad", "Went wrong", FieldKind::Flag, 2),
    field("done[].photos", "Photographs", FieldKind::Several, 2),
    field(
        "proposal.steps[].treatment",
        "Treatment",
        FieldKind::Word,
        2,
    ),
    field("proposal.steps[].id", "Id", FieldKind::Text, 2),
    field("proposal.steps[].quote", "Quote", FieldKind::Text, 2),
    field("proposal.steps[].note", "Note", FieldKind::Text, 2),
    field(
        "proposal.steps[].low",
        "Price, low",
        FieldKind::Number(MONEY),
        2,
    ),
    field(
        "proposal.steps[].likely",
        "Price, likely",
        FieldKind::Number(MONEY),
        2,
    ),
    field(
        "proposal.steps[].high",
        "Price, high",
        FieldKind::Number(MONEY),
        2,
    ),
    field(
        "proposal.steps[].hours",
        "Hours",
        FieldKind::Number(HOURS),
        2,
    ),
    field("proposal.steps[].who", "Who does it", FieldKind::Word, 2),
    field("proposal.steps[].parts", "Parts", FieldKind::Several, 2),
    field("proposal.steps[].of", "Pieces", FieldKind::Several, 2),
    field("proposal.steps[].fixed", "Fixed price", FieldKind::Flag, 2),
    field("proposal.steps[].agreed", "Agreed", FieldKind::Flag, 2),
    field("consents.loss", "Loss accepted", FieldKind::Flag, 1),
    field("consents.photo", "Photographs first", FieldKind::Flag, 1),
    field("consents.disclose", "Disclosure", FieldKind::Flag, 1),
    field(
        "consents.conservator_opinion",
        "Conservator's opinion",
        FieldKind::Flag,
        1,
    ),
    field(
        "overrides.*.value",
        "Own figure",
        FieldKind::Number(OWN_FIGURE),
        1,
    ),
    field("overrides.*.reason", "Reason", FieldKind::Text, 1),
    field("bench.food.pb", "Lead", FieldKind::Number(RELEASED), 1),
    field("bench.food.cu", "Copper", FieldKind::Number(RELEASED), 1),
    field("bench.food.ni", "Nickel", FieldKind::Number(RELEASED), 1),
    field("bench.food.ag", "Silver", FieldKind::Number(RELEASED), 1),
    field("bench.food.sn", "Tin", FieldKind::Number(RELEASED), 1),
    field("bench.food.sb", "Antimony", FieldKind::Number(RELEASED), 1),
    field("bench.food.zn", "Zinc", FieldKind::Number(RELEASED), 1),
    field("bench.food.cup_ml", "One cup", FieldKind::Number(CUP), 1),
    field("bench.heat.air_c", "Room", FieldKind::Number(AIR), 1),
    field(
        "bench.heat.patch_mm",
        "Hot place",
        FieldKind::Number(PATCH),
        1,
    ),
    field(
        "bench.heat.thickness_mm",
        "Thickness",
        FieldKind::Number(THICKNESS),
        1,
    ),
    field(
        "bench.heat.joint_c",
        "Joint",
        FieldKind::Number(JOINT_HEAT),
        1,
    ),
    field(
        "bench.heat.distance_mm",
        "Distance",
        FieldKind::Number(DISTANCE),
        1,
    ),
    field(
        "bench.plating.extra_pct",
        "Extras",
        FieldKind::Number(EXTRAS),
        1,
    ),
    field("care.years", "Look ahead", FieldKind::Number(LOOK_AHEAD), 1),
    field("care.a.times", "Cleanings", FieldKind::Number(CLEANINGS), 1),
    field(
        "care.a.in_years",
        "In years",
        FieldKind::Number(IN_YEARS),
        1,
    ),
    field("care.b.times", "Cleanings", FieldKind::Number(CLEANINGS), 1),
    field(
        "care.b.in_years",
        "In years",
        FieldKind::Number(IN_YEARS),
        1,
    ),
    field(
        "worth.retail_over_hammer",
        "Shop price over hammer price",
        FieldKind::Number(SHOP_MULTIPLE),
        1,
    ),
    field(
        "worth.shop_months",
        "Months until sold",
        FieldKind::Number(SHOP_MONTHS),
        1,
    ),
    field(
        "worth.work_months",
        "Months away for work",
        FieldKind::Number(MONTHS),
        1,
    ),
    field(
        "worth.auction_months",
        "Months until paid",
        FieldKind::Number(MONTHS),
        1,
    ),
    field(
        "worth.rate_pct",
        "What the money earns elsewhere",
        FieldKind::Number(RATE),
        1,
    ),
    field(
        "worth.holding_pct",
        "Holding it",
        FieldKind::Number(HOLDING),
        1,
    ),
    field(
        "worth.margin_pct",
        "Gain wanted",
        FieldKind::Number(GAIN),
        1,
    ),
    field(
        "worth.risk_pct",
        "How often it may be less",
        FieldKind::Number(RISK),
        1,
    ),
    field(
        "bench.plating.thickness_um",
        "Thickness of the silver",
        FieldKind::Number(PLATE),
        1,
    ),
    field(
        "bench.plating.price_per_g",
        "Price of silver",
        FieldKind::Number(SILVER_PRICE),
        1,
    ),
    field("bench.plating.bill", "Bill", FieldKind::Number(MONEY), 1),
    field(
        "bench.plating.current",
        "Current",
        FieldKind::Number(CURRENT),
        1,
    ),
    field(
        "bench.heat.extent_mm",
        "How far the metal goes on",
        FieldKind::Number(EXTENT),
        1,
    ),
];
