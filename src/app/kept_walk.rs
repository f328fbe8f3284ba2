//! The questions of the owner's road put so far about a piece, as the text that the browser keeps. Every answer stands in
//! the record; what the record has no place for, such as "not sure", would be asked again without this text.

use leavewell_model::Case;
use leavewell_model::road::RoadWalk;

use super::parts::words::joined;
use super::route::Route;

/// The walk as text: a line for each question, its address before its answer.
#[must_use]
pub fn text_of(walk: &RoadWalk) -> String {
    let lines = walk
        .steps()
        .iter()
        .map(|(question, answer)| joined(&[Route::Road(*question).href(), " ", answer]));
    lines.collect::<Vec<String>>().join("\n")
}

/// The walk in a text. A line that names no question, or no answer that its question takes for this piece, is left out.
#[must_use]
pub fn walk_in(text: &str, case: &Case) -> RoadWalk {
    let mut walk = RoadWalk::default();
    for line in text.lines() {
        let Some((href, answer)) = line.split_once(' ') else {
            continue;
        };
        if let Route::Road(question) = Route::parse(href) {
            let answers = question.answers(case.piece.form);
            if let Some(answer) = answers.into_iter().find(|id| *id == answer) {
                walk = walk.with(question, answer);
            }
        }
    }
    walk
}

#[cfg(test)]
mod tests {
    use super::*;
    use leavewell_model::Draft;
    use leavewell_model::road::{Damage, RoadQuestion, UNSURE, next, write};

    #[test]
    fn a_walk_comes_back_as_it_was_and_goes_on_with_the_same_question() {
        let (mut walk, mut draft) = (RoadWalk::default(), Draft::default());
        let mut put = 0;
        while let Some(question) = next(&walk, &draft.read().0) {
            let answer = match question {
                RoadQuestion::Form => "teapot",
                RoadQuestion::Trouble => Damage::Dented.id(),
                _ => UNSURE,
            };
            write(&mut draft, &walk, question, answer);
            walk = walk.with(question, answer);
            put += 1;
            let case = draft.read().0;
            let again = walk_in(&text_of(&walk), &case);
            assert_eq!(again, walk);
            assert_eq!(next(&again, &case), next(&walk, &case));
        }
        assert!(put > 6, "{put}");
    }

    #[test]
    fn what_is_no_question_or_no_answer_is_left_out() {
        let case = Case::default();
        let broken =
            "#/road/form teapot\n#/road/form\n#/look seen\n#/road/magnet maybe\n\n#/road/use sell";
        let walk = walk_in(broken, &case);
        assert_eq!(walk.len(), 2);
        assert_eq!(walk.answer(RoadQuestion::Use), Some("sell"));
        assert!(walk_in("", &case).is_empty());
    }
}
