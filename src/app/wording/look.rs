//! Look: what to look for on the piece, place by place, and what it tells about the piece.

use leavewell_model::ledger::Place;
use leavewell_model::terms::Seen;
use leavewell_model::terms::capital;

use crate::app::parts::words::{count, joined};

pub const TITLE: &str = "Look at the piece";
pub const PURPOSE: &str =
    "Say what you see. \"Not sure\" is a good answer: it leaves us less sure, and you can go on.";
pub const NEXT: &str = "Next: the condition of each part";

// Marks and descriptions in words.

pub const IN_WORDS: &str = "What is stamped on it, and how you would describe it";
pub const MARK: &str = "The mark, as you read it";
pub const MARK_HINT: &str =
    "Letters, words and numbers, such as E P N S or STERLING WEIGHTED. We look up no maker.";
pub const ADD_MARK: &str = "Add another mark";
/// The hint of the part that carries a mark, and the choice for no particular part.
pub const MARK_ON: [&str; 2] = ["", "Not said"];

pub fn mark_on(number: usize) -> String {
    joined(&["Where mark ", &number.to_string(), " is struck"])
}

pub fn remove_mark(number: usize) -> String {
    joined(&["Remove mark ", &number.to_string()])
}

pub const DESCRIPTION: &str = "In a few words";
pub const DESCRIPTION_HINT: &str =
    "As you or a catalogue would put it: rolled edge, shield let in, some copper showing.";
pub const SUGGESTED: &str = "Your words may mean these. None counts until you confirm it.";

pub fn suggestion(words: &str, title: &str) -> String {
    joined(&["“", words, "”: ", title, "."])
}

pub fn confirm(title: &str) -> String {
    joined(&["Yes: ", title])
}

pub fn put_aside(title: &str) -> String {
    joined(&["Not sure: ", title])
}

// The few questions that tell most.

pub const FEW: &str = "What tells us most";
pub const FEW_HINT: &str = "Start here. A loupe (a small magnifying glass) and daylight are enough for most. Never scratch, file \
     or heat anything to see more.";

/// The question, and its hint.
pub const INSTRUMENTS: [&str; 2] = [
    "Which of these can you use?",
    "Tick none if you have none: you get an answer all the same. We assume that you have a magnet and a loupe.",
];

// Everything, by place.

pub const EVERYTHING: &str = "Everything to look for";
pub const EVERYTHING_HINT: &str =
    "Grouped by place on the piece. Your answers above appear here too.";

pub fn answered(answered: usize, of: usize) -> String {
    let looks = count(of, "look", "looks");
    joined(&[&answered.to_string(), " of ", &looks, " answered"])
}

pub fn place(place: Place) -> &'static str {
    match place {
        Place::Marks => "Marks and words",
        Place::Wear => "Where it has worn",
        Place::Seam => "The seam and the inside",
        Place::Edges => "Edges and rim",
        Place::Mounts => "Borders, feet, spout, knobs",
        Place::Shield => "Arms and engraving",
        Place::Surface => "The colour of the silver",
        Place::Style => "What sort of thing it is, its style and its papers",
        Place::Measures => "Magnet, weight and instruments",
    }
}

pub fn place_hint(place: Place) -> &'static str {
    match place {
        Place::Marks => {
            "Letters and small stamped pictures. A mark speaks for the part it is on, not for the whole piece."
        }
        Place::Wear => {
            "High points, feet and the most handled places show what lies below the silver."
        }
        Place::Seam => "The way a round or hollow body was closed shows how it was made.",
        Place::Edges => "An edge is a cut through the metal: it shows the layers.",
        Place::Mounts => "Parts that were made separately and then attached.",
        Place::Shield => "Where arms were to be engraved, makers let in better silver.",
        Place::Surface => "How white the silver is beside silver you know.",
        Place::Style => {
            "A form or a style says when such things were made, but styles were copied and revived."
        }
        Place::Measures => {
            "Some need an instrument, and someone who has one. You get an answer without them."
        }
    }
}

pub const READINGS: &str = "Readings with a number: density, conductivity, X-ray";

// One question. The model words what to look for.

pub const NOT_LOOKED: &str = "Not looked";

pub fn seen_on(look: &str) -> String {
    joined(&["On which part did you see it? (", look, ")"])
}

/// The hint, and the choice for no particular part.
pub const SEEN_ON: [&str; 2] = [
    "Skip this if it is all over the piece, or if you cannot say.",
    "The piece as a whole",
];
pub const THERE: &str = "There";
pub const NOT_THERE: &str = "Not there";
pub const HOW_TO_LOOK: &str = "How to look";

pub fn needs(needs: &str, invasive: u8) -> String {
    joined(&["You need: ", needs, ". ", effort(invasive)])
}

fn effort(invasive: u8) -> &'static str {
    match invasive {
        0 => "Looking is all it takes.",
        1 => "It takes a touch or a breath.",
        2 => {
            "It means wetting the piece or taking something apart: only if you are sure of the piece."
        }
        _ => "A person with the instrument does it.",
    }
}

// What it is.

pub const WHAT_IT_IS: &str = "What it is";
pub const BEFORE_LOOKING: &str = "How common each is before anything is looked at";
pub const MEANINGS: &str = "What these words mean";

pub fn family(name: &str) -> String {
    capital(name) + ": "
}

pub const NO_YEAR: &str = "No year of making fits all your answers: one of them must be wrong.";

/// When it was made, and whose years helped to say so.
pub fn made_in(years: &str, given: Option<&str>) -> String {
    match given {
        None => joined(&["Date, judging by what shows: ", years, "."]),
        Some(given) => joined(&["Date, judging by what shows and ", given, ": ", years, "."]),
    }
}

/// Words of marks that count for nothing until they are confirmed.
pub fn unconfirmed(words: &[String]) -> String {
    if words.is_empty() {
        return String::new();
    }
    let quoted: Vec<String> = words.iter().map(|w| joined(&["“", w, "”"])).collect();
    joined(&[
        "Not counted yet: ",
        &quoted.join(", "),
        " as read in a mark. Say what it means under “",
        IN_WORDS,
        "” below.",
    ])
}

pub const DOES_NOT_FIT: &str = "Does not fit: ";
pub const LOOK_NEXT: &str = "Look next: ";

/// The most likely family after each answer to a question; `None` where an answer says nothing.
pub fn after_look(if_there: [&str; 2], if_not: Option<[&str; 2]>) -> String {
    let then = |[family, share]: [&str; 2]| joined(&[family, " (", share, ")"]);
    let there = joined(&["If it is there: most likely ", &then(if_there)]);
    match if_not {
        Some(if_not) => joined(&[&there, ". If not: ", &then(if_not), "."]),
        None => joined(&[&there, ". If not, it tells us nothing."]),
    }
}

pub const WHAT_ANSWERS_DID: &str = "What your answers did";

pub fn what_it_did(look: &str, did: &str) -> String {
    joined(&[look, ": ", did, "."])
}

/// How strongly an answer speaks for or against the leading family, in a few clear steps.
pub fn pushed(answer: &str, log_odds: f64) -> String {
    let how = if answer == Seen::Yes.id() {
        "seen"
    } else {
        "not there"
    };
    let strength = match log_odds.abs() {
        weak if weak < 0.2 => return joined(&[how, "; it hardly matters"]),
        some if some < 1.0 => "a little",
        clear if clear < 2.5 => "clearly",
        _ => "strongly",
    };
    let side = if log_odds > 0.0 { "for" } else { "against" };
    joined(&[
        how,
        "; it counts ",
        strength,
        " ",
        side,
        " the likeliest family",
    ])
}

#[cfg(test)]
mod tests {
    use super::pushed;

    #[test]
    fn the_strength_of_an_answer_is_worded_in_steps() {
        assert_eq!(
            pushed("seen", 3.0),
            "seen; it counts strongly for the likeliest family"
        );
        assert_eq!(
            pushed("absent", -0.5),
            "not there; it counts a little against the likeliest family"
        );
        assert_eq!(pushed("seen", 0.1), "seen; it hardly matters");
    }
}
