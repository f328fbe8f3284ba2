//! What a buyer must be told: re-plating, repairs, lead, replaced parts, wear and damage, whenever it
//! is recorded or more than very unlikely.

use super::sheet::{Paper, and, plain, small};
use crate::case::{Corrosion, Dents, Fill, Interior, Joint, Part, PartName};
use crate::small::percent;
use crate::treatment::LeadStatus;

/// One thing told: in a few words for a ticket, in a sentence for a catalogue.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Told {
    /// `replated`, `repaired`, `lead`, `replaced`, `worn`, `damaged`, `coated`, `corroding`
    /// or `history`.
    pub(super) about: &'static str,
    /// Few words, without a full stop.
    pub(super) ticket: String,
    /// One sentence.
    pub(super) catalogue: String,
}

/// Everything to be told, the weightiest first.
pub(super) fn told(paper: &Paper) -> Vec<Told> {
    let mut list = Vec::new();
    replated(paper, &mut list);
    repaired(paper, &mut list);
    lead(paper, &mut list);
    replaced(paper, &mut list);
    worn(paper, &mut list);
    damaged(paper, &mut list);
    coated(paper, &mut list);
    corroding(paper, &mut list);
    list
}

fn tell(list: &mut Vec<Told>, about: &'static str, ticket: String, catalogue: String) {
    list.push(Told {
        about,
        ticket,
        catalogue,
    });
}

/// Recorded, seen, or more than very unlikely.
fn replated(paper: &Paper, list: &mut Vec<Told>) {
    let recorded: Vec<String> = paper
        .done
        .iter()
        .filter(|d| d.plates())
        .map(|d| match d.when_and_who() {
            when if when.is_empty() => "at a time not recorded".to_owned(),
            when => when,
        })
        .collect();
    if !recorded.is_empty() {
        let whole = paper.done.iter().any(|d| {
            matches!(
                d.treatment,
                Some(crate::treatment::Treatment::Replate | crate::treatment::Treatment::Overplate)
            )
        });
        let extent = if whole {
            "Re-plated"
        } else {
            "Re-plated in places"
        };
        tell(
            list,
            "replated",
            format!("{extent} ({})", recorded.join("; ")),
            format!(
                "{extent}: the record gives {}. The silver now to be seen there is later than the piece.",
                recorded.join("; ")
            ),
        );
    }
    if paper.too_little() {
        return;
    }
    let kinds = &paper.report.identity.kinds;
    let p: f64 = kinds.iter().filter(|k| k.kind == "RFP").map(|k| k.p).sum();
    let signs: Vec<String> = ["S08", "S10"]
        .into_iter()
        .filter(|id| paper.case.has_seen(id))
        .filter_map(crate::facts::finding)
        .map(|f| small(f.title))
        .collect();
    if recorded.is_empty() && (paper.worth_telling(p) || !signs.is_empty()) {
        let why = if signs.is_empty() {
            String::new()
        } else {
            format!(" Signs of it: {}.", and(&signs))
        };
        tell(
            list,
            "replated",
            format!("later re-plating {}", paper.likely(p)),
            format!(
                "That fused plate was re-plated by electricity later on is {}.{why}",
                paper.likely(p)
            ),
        );
    }
}

/// Names of the parts for which something holds, small, as in a sentence.
fn parts_where(paper: &Paper, holds: impl Fn(&Part) -> bool) -> Vec<String> {
    paper
        .case
        .parts
        .iter()
        .filter(|p| holds(p))
        .map(|p| small(p.name.label()))
        .collect()
}

fn repaired(paper: &Paper, list: &mut Vec<Told>) {
    let grey = parts_where(paper, |p| p.joint == Some(Joint::GreyRepair));
    let neat = parts_where(paper, |p| p.joint == Some(Joint::NeatRepair));
    if !grey.is_empty() {
        tell(
            list,
            "repaired",
            format!("old grey repair: {}", grey.join(", ")),
            format!(
                "Repaired with a grey metal that looks like lead: {}.",
                and(&grey)
            ),
        );
    }
    if !neat.is_empty() {
        tell(
            list,
            "repaired",
            format!("old repair: {}", neat.join(", ")),
            format!("Repaired neatly at some time: {}.", and(&neat)),
        );
    }
    for work in paper.done.iter().filter(|d| d.repairs()) {
        let details: Vec<String> = [work.when_and_who(), small(&work.materials_words())]
            .into_iter()
            .filter(|t| !t.is_empty())
            .collect();
        let details = if details.is_empty() {
            String::new()
        } else {
            format!(" ({})", details.join("; "))
        };
        tell(
            list,
            "repaired",
            format!("repaired: {}{details}", work.in_sentence()),
            format!("Repaired: {}{details}.", work.in_sentence()),
        );
    }
    for work in paper
        .done
        .iter()
        .filter(|d| !(d.plates() || d.repairs() || d.replaces() || d.coats()))
    {
        let when = work.when_in_brackets();
        tell(
            list,
            "history",
            format!("work recorded: {}{when}", work.in_sentence()),
            format!("Work recorded: {}{when}.", work.in_sentence()),
        );
    }
}

fn lead(paper: &Paper, list: &mut Vec<Told>) {
    let filled = parts_where(paper, |p| p.fill == Some(Fill::Lead));
    if !filled.is_empty() {
        tell(
            list,
            "lead",
            format!("lead filling: {}", filled.join(", ")),
            format!("Filled with lead or solder: {}.", and(&filled)),
        );
    }
    if paper.case.has_seen("C10") && filled.is_empty() {
        tell(
            list,
            "lead",
            "borders filled with grey metal, probably lead".to_owned(),
            "Its stamped borders are filled with grey metal, probably lead, as such mounts were made."
                .to_owned(),
        );
    }
    if paper.done.iter().any(super::sheet_done::Done::adds_lead) {
        tell(
            list,
            "lead",
            "repaired with solder that holds lead".to_owned(),
            "Repaired with solder that holds lead.".to_owned(),
        );
    }
    match paper.lead() {
        LeadStatus::Present => tell(
            list,
            "lead",
            "lead found by a test".to_owned(),
            "A test found lead.".to_owned(),
        ),
        LeadStatus::Absent => tell(
            list,
            "lead",
            "tested, no lead released".to_owned(),
            "It was tested and released no lead; the test holds for the state it was tested in."
                .to_owned(),
        ),
        LeadStatus::Unknown => tell(
            list,
            "lead",
            "not tested for lead".to_owned(),
            if paper.case.is_soldered() {
                "It has not been tested for lead; old soldered pieces often hold some.".to_owned()
            } else {
                "It has not been tested for lead.".to_owned()
            },
        ),
    }
}

fn replaced(paper: &Paper, list: &mut Vec<Told>) {
    for (part, state) in paper.of_parts("replaced") {
        let part = small(&part);
        match state.as_str() {
            "original" | "no" | "none" => {}
            "doubtful" => tell(
                list,
                "replaced",
                format!("{part} perhaps replaced"),
                format!("Whether the {part} is the original one is doubtful."),
            ),
            _ => tell(
                list,
                "replaced",
                format!("{part} replaced"),
                format!("The {part} is a replacement."),
            ),
        }
    }
    for work in paper.done.iter().filter(|d| d.replaces()) {
        let when = work.when_in_brackets();
        tell(
            list,
            "replaced",
            format!("a part replaced{when}"),
            format!("A part of it is new{when}."),
        );
    }
    let parts_differ = paper
        .report
        .identity
        .contradictions
        .iter()
        .any(|c| c.different_parts);
    if parts_differ {
        tell(
            list,
            "replaced",
            "parts perhaps not from one piece".to_owned(),
            "What is found on its parts does not fit together, so they may come from different pieces."
                .to_owned(),
        );
    }
    let flaws = paper.raw["flaws"].as_array();
    for flaw in flaws.into_iter().flatten().map(plain) {
        let words = match flaw.as_str() {
            "part_replaced" => "a part replaced",
            "marriage" => "put together from different pieces",
            "part_missing_minor" => "a small part missing",
            "part_missing_major" => "an important part missing",
            "arms_erased" => "arms or initials taken out",
            "monogram_later" => "initials added later",
            "inscription_later" => "an inscription added later",
            "detail_softened" => "detail softened",
            "single_of_pair" => "one of a pair",
            "converted" => "made into something else",
            "" => continue,
            other => other,
        };
        let about = if matches!(flaw.as_str(), "part_replaced" | "marriage") {
            "replaced"
        } else {
            "damaged"
        };
        tell(
            list,
            about,
            words.to_owned(),
            format!("Recorded of it: {words}."),
        );
    }
}

fn worn(paper: &Paper, list: &mut Vec<Told>) {
    // What shows and is recorded, not what is guessed of parts nobody looked at.
    let bare: Vec<String> = paper
        .report
        .silver
        .parts
        .iter()
        .filter(|p| {
            let name = PartName::parse(&p.part);
            let recorded = name.and_then(|n| paper.case.part(n)).and_then(|p| p.bleed);
            recorded.is_some_and(|b| {
                crate::silver::bleed_range(Some(b), &paper.ledger).likely
                    >= paper.ledger.value("silver.f_none")
            })
        })
        .map(|p| format!("{} ({})", small(&p.name), percent(p.bleed)))
        .collect();
    if !bare.is_empty() {
        tell(
            list,
            "worn",
            format!("base metal showing: {}", bare.join(", ")),
            format!(
                "Worn so that base metal shows on the {}; the share is of the part's surface.",
                and(&bare)
            ),
        );
    }
}

fn damaged(paper: &Paper, list: &mut Vec<Told>) {
    let mut say = |parts: Vec<String>, ticket: &str, sentence: &str| {
        if !parts.is_empty() {
            tell(
                list,
                "damaged",
                format!("{ticket}: {}", parts.join(", ")),
                format!("{sentence}: {}.", and(&parts)),
            );
        }
    };
    let dents = |wanted| parts_where(paper, |p| p.dents == Some(wanted));
    say(
        parts_where(paper, |p| {
            matches!(p.joint, Some(Joint::Open | Joint::Leaking))
        }),
        "joint open or leaking",
        "Open or leaking at the",
    );
    say(dents(Dents::Split), "split or creased", "Creased or split");
    say(
        dents(Dents::Moderate),
        "dented",
        "Dented deeply or out of shape",
    );
    say(dents(Dents::Minor), "small dents", "Small dents");
    for (field, quiet, ticket, sentence) in [
        ("split", ["none", ""], "split", "Split or creased"),
        ("loss", ["none", ""], "metal missing", "Metal is missing"),
        (
            "engraving",
            ["absent", "crisp"],
            "engraving worn",
            "Engraving softened or gone",
        ),
        ("mount", ["sound", ""], "mount worn", "Stamped mount worn"),
    ] {
        let parts = paper
            .of_parts(field)
            .into_iter()
            .filter(|(_, state)| !quiet.contains(&state.as_str()) && state != "unknown")
            .map(|(part, _)| small(&part))
            .collect();
        say(parts, ticket, sentence);
    }
}

fn coated(paper: &Paper, list: &mut Vec<Told>) {
    let interior = paper.case.part(PartName::Interior).and_then(|p| p.interior);
    let mut parts: Vec<String> = paper
        .of_parts("lacquer")
        .into_iter()
        .filter(|(_, state)| !matches!(state.as_str(), "none" | "unknown"))
        .map(|(part, _)| small(&part))
        .collect();
    if interior == Some(Interior::Lacquered) {
        parts.push("inside".to_owned());
    }
    if paper.done.iter().any(super::sheet_done::Done::coats) && parts.is_empty() {
        parts.push("as recorded".to_owned());
    }
    if !parts.is_empty() {
        tell(
            list,
            "coated",
            format!("coated: {}", parts.join(", ")),
            format!("Lacquered, waxed or glued: {}.", and(&parts)),
        );
    }
    if interior == Some(Interior::Bare) {
        tell(
            list,
            "worn",
            "bare metal inside".to_owned(),
            "Bare metal shows on the inside.".to_owned(),
        );
    }
}

fn corroding(paper: &Paper, list: &mut Vec<Told>) {
    let mut parts = parts_where(paper, |p| p.corrosion.is_some_and(|c| c != Corrosion::None));
    if paper.case.has_seen("S07") && parts.is_empty() {
        parts.push("where rust or lifting foil was seen".to_owned());
    }
    if !parts.is_empty() {
        tell(
            list,
            "corroding",
            format!("corrosion: {}", parts.join(", ")),
            format!("Corroding: {}.", and(&parts)),
        );
    }
}
