//! Where faults are: what the page's script shows on the drawing and on photographs.

use serde_json::Value;

use super::Subject;
use super::block::Block;
use leavewell_model::record::{Draft, Problem};
use leavewell_model::terms::{PartName, SpotFault, small};

/// Builds the page.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let (draft, case) = (subject.draft(), subject.case());
    let parts = PartName::ALL.iter().map(|part| {
        let photos = case.part(*part).map_or(&[][..], |p| &p.photos);
        let name = small(part.label());
        let photos = photos.join(" ");
        object(&[("id", part.id()), ("name", &name), ("photos", &photos)])
    });
    let faults = SpotFault::ALL
        .iter()
        .map(|fault| object(&[("id", fault.id()), ("label", fault.label())]));
    let data = [
        ("parts", list(&parts.collect::<Vec<_>>())),
        ("faults", list(&faults.collect::<Vec<_>>())),
        ("piece", quoted(&case.piece.photos.join(" "))),
        ("spots", list(&spots(draft, subject.problems()))),
    ];
    let fields: Vec<String> = data
        .iter()
        .map(|(name, value)| ["\"", name, "\":", value].concat())
        .collect();
    vec![Block::PlaceFaults {
        data: ["{", &fields.join(","), "}"].concat(),
    }]
}

/// Text as JSON.
fn quoted(text: &str) -> String {
    Value::from(text).to_string()
}

/// An object of texts as JSON.
fn object(fields: &[(&str, &str)]) -> String {
    let fields: Vec<String> = fields
        .iter()
        .map(|(name, text)| ["\"", name, "\":", &quoted(text)].concat())
        .collect();
    ["{", &fields.join(","), "}"].concat()
}

fn list(entries: &[String]) -> String {
    ["[", &entries.join(","), "]"].concat()
}

/// Every place in the record, whether or not it can be used.
fn spots(draft: &Draft, problems: &[Problem]) -> Vec<String> {
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
            let wrong = wrong.join(" ");
            let names = ["fault", "count", "photo", "x", "y", "note"];
            let texts = names.map(field);
            let label: &str = match SpotFault::parse(&texts[0]) {
                Some(fault) => fault.label(),
                None => &texts[0],
            };
            let mut fields = vec![
                ("part", part.as_str()),
                ("path", &path),
                ("label", label),
                ("problem", &wrong),
            ];
            fields.extend(names.into_iter().zip(texts.iter().map(String::as_str)));
            spots.push(object(&fields));
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
        assert_eq!(data["piece"], "p1");
        let body = data["parts"].as_array().unwrap().iter();
        let body = body.clone().find(|part| part["id"] == "body").unwrap();
        assert_eq!(body["photos"], "k1 k2");
    }
}
