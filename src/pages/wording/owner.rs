//! What owners ask, and the words of the answers.

use leavewell_model::terms::Fault;

// The questions.

pub(crate) const POLISH: &str = "Polish it?";
pub(crate) const FOOD: &str = "Eat or drink from it?";
pub(crate) const WORTH: &str = "Worth anything?";
pub(crate) const DANGER: &str = "Is it dangerous?";
pub(crate) const HELP: &str = "Who can help?";

/// The faults that owners ask about, in the order of the lines.
pub(crate) const FAULTS: [(Fault, &str); 8] = [
    (Fault::Split, "The split?"),
    (Fault::OpenJoint, "The leak or open seam?"),
    (Fault::LoosePart, "The loose part?"),
    (Fault::PartLost, "The missing part?"),
    (Fault::Dents, "The dent?"),
    (Fault::GreyRepair, "The old grey repair?"),
    (Fault::LiningGone, "The worn lining?"),
    (Fault::Corrosion, "The corrosion?"),
];

pub(crate) fn offer(name: &str, sum: Option<&str>) -> String {
    match sum {
        Some(sum) => format!("{name} for {sum}?"),
        None => format!("{name}?"),
    }
}

// The answers in a word or two.

pub(crate) const YES: &str = "Yes.";
pub(crate) const YES_GENTLY: &str = "Yes, gently.";
pub(crate) const RARELY: &str = "As rarely as you can.";
pub(crate) const NO: &str = "No.";
pub(crate) const NOT_YET: &str = "Not yet.";
pub(crate) const NOT_KNOWN: &str = "Not known.";
pub(crate) const LEAVE_IT: &str = "Leave it.";
pub(crate) const TAKE_CARE: &str = "Take care.";
pub(crate) const SAFE_TO_HOLD: &str = "Safe to hold.";
pub(crate) const NOT_THAT_WE_KNOW: &str = "Not that we know.";

// About ten words more.

pub(crate) const POLISH_ONCE: &str =
    "Once, with the mildest polish. From then on dust and wash it.";
pub(crate) const WASH_INSTEAD: &str =
    "Dust and wash it instead. Each polish takes some silver off.";
/// From this many on, the number of polishes is not worth saying.
pub(crate) const MANY_POLISHES: f64 = 500.0;

pub(crate) fn polishes_left(part: &str, polishes: f64) -> String {
    if polishes < 2.0 {
        format!("One or two polishes would double the bare metal on the {part}.")
    } else {
        format!("About {polishes:.0} gentle polishes would double the bare metal on the {part}.")
    }
}

pub(crate) const FOOD_PASSED: &str = "A test found no lead released, in the state it was in then.";
pub(crate) const FOOD_UNTESTED: &str =
    "Nothing recorded speaks against it, but nobody has tested it.";

pub(crate) const NOTHING: &str = "nothing";

pub(crate) fn mend(plain: &str, cost: &str) -> String {
    format!("{plain} It costs about {cost}.")
}

pub(crate) fn left(cost: &str) -> String {
    format!("Mending it would cost about {cost} and is not worth it for what you want.")
}

pub(crate) const NO_WORK_ANSWERS: &str = "No work would put it right.";

pub(crate) fn first_this(reason: &str, lifted_by: &str) -> String {
    format!("{reason} {lifted_by}")
}

pub(crate) const OFFER_ADVISED: &str = "It is part of what we advise.";
pub(crate) const OFFER_NO_BETTER: &str = "It does no more for what you want than our advice does.";

pub(crate) fn offer_loses(loss: &str) -> String {
    format!("You would end up with about {loss} less than by leaving it.")
}

pub(crate) fn about(sum: &str) -> String {
    format!("About {sum}.")
}

pub(crate) fn worth(low: &str, high: &str) -> String {
    format!("As it is, 8 in 10 like it fetch between {low} and {high}.")
}

pub(crate) fn worth_assumed(low: &str, high: &str) -> String {
    format!("Such pieces usually fetch {low} to {high}; a sale of a like piece would tell more.")
}

pub(crate) const LEAD_THERE: &str =
    "There is lead in it. Do not heat, sand or file it, and wash your hands.";
pub(crate) const LEAD_PERHAPS: &str =
    "Its joints or fillings may hold lead. Do not heat, sand or file them.";
pub(crate) const ASBESTOS_THERE: &str =
    "An old heat pad or cord may be asbestos. Leave it alone and do not disturb it.";
pub(crate) const MERCURY_THERE: &str =
    "Its gilding may hold mercury, which heat drives off as poison.";
pub(crate) const CADMIUM_THERE: &str =
    "An old repair in hard solder may hold cadmium. Its fume can kill: no heat.";
pub(crate) const AMMONIA_THERE: &str =
    "Keep ammonia off it: with silver it can form something that explodes.";
pub(crate) const CORROSION_THERE: &str = "Do not breathe or rub the powder, and wash your hands.";
pub(crate) const SEALED_THERE: &str = "Never heat a closed or filled part: it can burst.";
pub(crate) const NO_HAZARD: &str = "Nothing recorded makes it dangerous to hold or to show.";

/// Who can help, by the catalogue's letter, and how to find them.
pub(crate) fn help(who: &str) -> [&'static str; 2] {
    match who {
        "O" => [
            "You need nobody.",
            "For a second opinion, your country's register of conservators lists them by town.",
        ],
        "L" => [
            "A laboratory.",
            "Look for one that tests tableware for lead, and ask its price first.",
        ],
        "S" => [
            "A silversmith.",
            "Choose one who repairs old plate; a museum or a conservator can name some.",
        ],
        "P" => [
            "A plating works with a permit.",
            "Ask a conservator from your country's register before you send it.",
        ],
        _ => [
            "A metals conservator.",
            "Your country's register of conservators lists them by town and subject.",
        ],
    }
}
