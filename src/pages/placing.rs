//! Where faults are: what the page's script shows on the drawing and on photographs, and the words for it.

use serde_json::{Value, json};

use super::Subject;
use super::block::Block;
use super::sheet::public_name;
use super::wording::placing as words;
use leavewell_model::record::{Draft, Problem};
use leavewell_model::terms::{PartName, SpotFault, small};

/// Builds the page.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let (draft, case) = (subject.draft(), subject.case());
    let parts: Vec<Value> = PartName::ALL
        .iter()
        .map(|part| {
            let photos = case.part(*part).map_or(&[][..], |p| &p.photos);
            json!({ "id": part.id(), "name": small(part.label()), "photos": photos })
        })
        .collect();
    let faults: Vec<[&str; 2]> = SpotFault::ALL
        .iter()
        .map(|fault| [fault.id(), fault.label()])
        .collect();
    let data = json!({
        "words": words::all(),
        "parts": parts,
        "faults": faults,
        "piece": case.piece.photos,
        "drawing": small(&public_name(case)),
        "spots": spots(draft, subject.problems()),
    });
    vec![Block::PlaceFaults {
        data: data.to_string(),
    }]
}

/// Every place in the record, whether or not it can be used.
fn spots(draft: &Draft, problems: &[Problem]) -> Vec<Value> {
    let mut spots = Vec::new();
    for place in 0..draft.count("parts") {
        let list = format!("parts[{place}].spots");
        let part = draft.text(&format!("parts[{place}].part"));
        for at in 0..draft.count(&list) {
            let entry = format!("{list}[{at}]");
            let field = |name: &str| draft.text(&[&entry, ".", name].concat());
            let id = field("id");
            // By id where there is one, so that a place taken out meanwhile moves no other.
            let path = match (PartName::parse(&part), id.is_empty()) {
                (Some(_), false) => format!("parts[part={part}].spots[id={id}]"),
                _ => entry.clone(),
            };
            let wrong = problems.iter().filter(|p| p.field.starts_with(&entry));
            let wrong: Vec<String> = wrong
                .map(|p| [p.message.as_str(), " ", &p.remedy].concat())
                .collect();
            let fault = field("fault");
            spots.push(json!({
                "part": part,
                "path": path,
                "id": id,
                "label": SpotFault::parse(&fault).map_or_else(|| fault.clone(), |f| f.label().to_owned()),
                "fault": fault,
                "count": field("count"),
                "photo": field("photo"),
                "x": field("x"),
                "y": field("y"),
                "note": field("note"),
                "problem": wrong.join(" "),
            }));
        }
    }
    spots
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_is_shown_with_what_is_wrong_with_it() {
        let subject = Subject::parse(
            r#"{"format":"leavewell-case","version":2,"piece":{"form":"tray","photos":"p1"},
                "parts":[{"part":"body","photos":"k1 k2","spots":[
                    {"id":"e1","fault":"small_dent","count":3,"x":20,"y":130},
                    {"fault":"dint"}]},{"part":"lid","spots":[{"id":"e2","fault":"split"}]}]}"#,
        )
        .unwrap();
        let [Block::PlaceFaults { data }] = &page(&subject)[..] else {
            panic!("one block");
        };
        let data: Value = serde_json::from_str(data).unwrap();
        let spots = data["spots"].as_array().unwrap();
        assert_eq!(spots.len(), 3);
        assert_eq!(spots[0]["path"], "parts[part=body].spots[id=e1]");
        assert!(spots[0]["problem"].as_str().unwrap().contains("130"));
        assert_eq!(spots[1]["label"], "dint");
        assert_eq!(spots[1]["path"], "parts[0].spots[1]");
        assert_eq!(spots[2]["path"], "parts[1].spots[0]");
        assert_eq!(data["piece"][0], "p1");
        let body = data["parts"].as_array().unwrap().iter();
        let body = body.clone().find(|part| part["id"] == "body").unwrap();
        assert_eq!(body["photos"].as_array().unwrap().len(), 2);
    }
}
