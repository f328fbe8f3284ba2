//! The owner's road: one question a screen, why it is asked, and the answers.

use leavewell_model::ledger::FindingId;
use leavewell_model::record::{Form, PartName};
use leavewell_model::road::{ALL_OVER, Damage, NONE, RoadQuestion, UNSURE};
use leavewell_model::terms::Seen;

use crate::app::parts::words::joined;

// On the first screen.

pub const HAVE: &str = "What have you got? Tap it.";
pub const START: &str = "I have a piece and a question";
/// The other two ways in.
pub const RESTORE: &str = "I work on a client\u{2019}s piece";
pub const DEAL: &str = "I buy and sell";

// How far the road goes.

pub fn progress(answered: usize, left: usize, until_answer: usize) -> String {
    let to_go = match (answered, left) {
        (0, 1) => "One short question.".to_owned(),
        (0, left) => joined(&["About ", &left.to_string(), " short questions."]),
        (answered, 1) => joined(&[&answered.to_string(), " answered, about one to go."]),
        (answered, left) => joined(&[
            &answered.to_string(),
            " answered, about ",
            &left.to_string(),
            " to go.",
        ]),
    };
    let first = match until_answer {
        0 => return to_go,
        1 => " A first answer comes after this one.".to_owned(),
        n => joined(&[" A first answer comes after ", &n.to_string(), " of them."]),
    };
    to_go + &first
}

// The question, where to look, and why we ask.

#[allow(clippy::too_many_lines)] // one arm a question
pub fn question(question: RoadQuestion) -> [&'static str; 3] {
    const DAMAGE: &str = "Damage decides what needs doing, and who should do it.";
    const TAP: &str = "Tap it in the drawing or in the list.";
    match question {
        RoadQuestion::Form => [
            "What have you got?",
            "Tap the nearest. A close likeness will do.",
            "The form decides which parts there are to look at.",
        ],
        RoadQuestion::Letters => [
            "Are there letters or marks on it?",
            "Look underneath, near the handle and on the rim.",
            "Some letters name the metal below. Many pieces have none.",
        ],
        RoadQuestion::Metal => [
            "Does another metal show through?",
            "Look where hands and cloths rub: edges, foot, the tip of a spout.",
            "Its colour tells old plate from later plate, and shows where the silver is thin.",
        ],
        RoadQuestion::Magnet => [
            "Does a magnet pull on the body?",
            "Wrap a small magnet in cloth. A pull at the base alone does not count.",
            "Silver, copper and brass do not pull. Iron and steel do.",
        ],
        RoadQuestion::BareWhere => [
            "Where does most bare metal show?",
            TAP,
            "That part has the least silver left, so it needs the most care.",
        ],
        RoadQuestion::BareAmount => [
            "How much of that part is bare?",
            "Judge by eye. A rough guess will do.",
            "It says how much silver is left and how much cleaning it can take.",
        ],
        RoadQuestion::Trouble => [
            "Is anything wrong with it?",
            "Choose the worst. We ask about others next.",
            DAMAGE,
        ],
        RoadQuestion::More => [
            "Is anything else wrong with it?",
            "Choose one more, if there is one.",
            DAMAGE,
        ],
        RoadQuestion::TroubleWhere(trouble) => match trouble {
            Damage::Missing => [
                "What is missing?",
                TAP,
                "A lost knob is soon made. A lost spout is another matter.",
            ],
            Damage::Loose => [
                "What is loose?",
                TAP,
                "A loose part tears its joint a little more each time you use it.",
            ],
            Damage::Leaking => [
                "Where does it leak, or stand open?",
                TAP,
                "How it may be closed depends on what lies near.",
            ],
            Damage::Dented => [
                "Where is the dent?",
                TAP,
                "Thin, chased or filled places may not be pushed back.",
            ],
            Damage::Repair => [
                "Where is the grey repair?",
                TAP,
                "Old grey solder often holds lead. Do not heat, sand or file it.",
            ],
        },
        RoadQuestion::Use => [
            "What will you do with it?",
            "Choose what matters most to you.",
            "What helps a sale can spoil a piece you keep, and the other way round.",
        ],
        RoadQuestion::Offer => [
            "Has anyone offered to work on it?",
            "Choose what they offered, or what you have in mind.",
            "We compare that work with leaving the piece alone. Do not try it yourself: heat, filing \
             and polishing can set lead and other poisons free.",
        ],
        RoadQuestion::Sum => [
            "What would it cost?",
            "Type the price if you know it, or go on without.",
            "Without a price we use an estimate, and say so.",
        ],
        RoadQuestion::Look(id) => look(id),
    }
}

fn look(id: FindingId) -> [&'static str; 3] {
    match id {
        FindingId::C01 => [
            "Does a copper line run down the body?",
            "Breathe on the body below the handle and watch the mist clear. Look inside with a torch.",
            "Old plate was made from sheet that is copper inside, so its seam shows copper.",
        ],
        FindingId::C07 => [
            "Is there a strip of silver on the edge?",
            "Run a fingertip under the rim and feel for a small lip.",
            "Makers of old plate hid the copper edge under silver wire.",
        ],
        FindingId::C06 => [
            "Is the edge folded over?",
            "Run a fingernail gently under the rim and feel for a step.",
            "Makers of old plate folded the edge to hide its copper.",
        ],
        FindingId::C08 => [
            "Does an edge look like a sandwich?",
            "Look at a worn edge or a pierced hole. Use what wear has opened; never file.",
            "Copper between two layers of silver means that they were rolled as one sheet.",
        ],
        FindingId::S10 => [
            "Do old worn patches show under the silver?",
            "Let light skim over the high points and look for a faint step or change of shade.",
            "They mean that someone plated the piece again.",
        ],
        FindingId::S22 => [
            "Does the silver peel or blister?",
            "Look along the edges. Do not press or pull.",
            "Silver that lifts was laid on afterwards.",
        ],
        _ => [
            "Has it stayed bright for years?",
            "Think of the years when nobody cleaned it.",
            "Silver turns black in time. Nickel and chromium do not.",
        ],
    }
}

// The answers.

pub const WHY: &str = "Why we ask.";
pub const NOT_SURE: &str = "Not sure";
pub const MORE_FORMS: &str = "More kinds of piece";
pub const PRICE: &str = "Price asked";
pub const CURRENCY: &str = "Currency";
pub const NO_CURRENCY: &str = "Not given";

pub fn answer(question: RoadQuestion, id: &'static str) -> &'static str {
    if id == UNSURE {
        return match question {
            RoadQuestion::Sum => "I do not know the price",
            _ => NOT_SURE,
        };
    }
    match question {
        RoadQuestion::Form => Form::parse(id).map_or(id, Form::label),
        RoadQuestion::Letters => match id {
            "M01" => "Letters such as EPNS",
            "M01b" => "EP, A1 or ELECTROPLATE",
            "M03" => "Hallmarks, as on solid silver",
            "M04" => "A name with a small picture",
            _ => "No marks that I can find",
        },
        RoadQuestion::Metal => match id {
            "S03" => "Red, like copper",
            "S04" => "Pale yellowish grey",
            "S06" => "Yellow, like brass",
            "S05" => "Dull blue-grey",
            _ => "No, all silver",
        },
        RoadQuestion::Magnet => there(id, ["It pulls all over", "It does not pull"]),
        RoadQuestion::Look(_) => there(id, ["Yes", "No"]),
        RoadQuestion::BareAmount => match id {
            "slight" => "A trace, about 1\u{a0}%",
            "some" => "Some, about 5\u{a0}%",
            "much" => "Much, about 20\u{a0}%",
            _ => "Half of it or more",
        },
        RoadQuestion::BareWhere if id == ALL_OVER => "All over alike",
        RoadQuestion::BareWhere | RoadQuestion::TroubleWhere(_) => {
            PartName::parse(id).map_or(id, PartName::label)
        }
        RoadQuestion::Trouble | RoadQuestion::More => match Damage::parse(id) {
            Some(Damage::Missing) => "Something is missing",
            Some(Damage::Loose) => "Something is loose",
            Some(Damage::Leaking) => "It leaks, or a seam is open",
            Some(Damage::Dented) => "It is dented",
            Some(Damage::Repair) => "An old grey repair",
            None if question == RoadQuestion::More => "No, nothing else",
            None => "Nothing that I can see",
        },
        RoadQuestion::Use => match id {
            "use" => "Eat or drink from it",
            "show" => "Keep it and show it",
            _ => "Sell it",
        },
        RoadQuestion::Offer => match id {
            "T14a" => "Plate it again",
            "T09" => "Solder a joint",
            "T08" => "Take the dents out",
            "T16" => "Make a new part",
            "T03" => "Clean and polish it",
            _ => "No, nobody has",
        },
        RoadQuestion::Sum => "Go on with this price",
    }
}

fn there(id: &str, [seen, absent]: [&'static str; 2]) -> &'static str {
    if id == Seen::Yes.id() { seen } else { absent }
}

/// Whether an answer leads on without choosing anything that the record could hold.
pub fn is_plain(id: &str) -> bool {
    [UNSURE, NONE, ALL_OVER].contains(&id)
}

// The answer so far.

pub const SO_FAR: &str = "So far";
pub const TOO_LITTLE: &str = "Too little is recorded to advise yet.";
pub const WHOLE_ANSWER: &str = "See the whole answer";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_look_has_words() {
        let mut titles: Vec<&str> = RoadQuestion::LOOKS.map(|id| look(id)[0]).to_vec();
        titles.dedup();
        assert_eq!(titles.len(), RoadQuestion::LOOKS.len());
    }

    #[test]
    fn the_way_to_go_reads_as_sentences() {
        assert_eq!(
            progress(0, 9, 5),
            "About 9 short questions. A first answer comes after 5 of them."
        );
        assert_eq!(progress(0, 1, 0), "One short question.");
        assert_eq!(progress(6, 1, 0), "6 answered, about one to go.");
        assert_eq!(
            progress(4, 5, 1),
            "4 answered, about 5 to go. A first answer comes after this one."
        );
    }
}
