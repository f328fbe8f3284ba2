//! What to disclose to a buyer: re-plating, repairs, lead, replaced parts, wear and damage, if recorded or
//! more than very unlikely.

use super::as_typed::as_typed;
use super::sentence::and;
use super::sheet::{Paper, part_label, part_labels};
use super::wording::sheet::part_of;
use super::wording::sheet_disclosure as words;
use leavewell_model::ledger::{FigureId, FindingId, signs};
use leavewell_model::record::{Done, Part, Test};
use leavewell_model::terms::small;
use leavewell_model::terms::the_pieces;
use leavewell_model::terms::{
    Corrosion, Dents, Engraving, Fill, Gilding, Interior, Joint, Lacquer, Lead, Loss, Material,
    Mount, PartName, Repair, Replaced, Split, SpotFault, TestKind,
};
use leavewell_model::terms::{Kind, percent};
use leavewell_model::treatment::{LeadStatus, Mercury, Release, mercury, release_of};

/// One disclosure: a few words for a ticket, a sentence for a catalogue.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Disclosure {
    /// `replated`, `repaired`, `lead`, `hazard`, `replaced`, `worn`, `damaged`, `coated`, `corroding` or `history`.
    pub(super) about: &'static str,
    /// A few words, without a full stop.
    pub(super) ticket: String,
    /// One sentence.
    pub(super) catalogue: String,
}

/// Every disclosure, most serious first.
pub(super) fn disclosures(paper: &Paper) -> Vec<Disclosure> {
    let mut list = Vec::new();
    replated(paper, &mut list);
    repaired(paper, &mut list);
    lead(paper, &mut list);
    hazards(paper, &mut list);
    replaced(paper, &mut list);
    worn(paper, &mut list);
    damaged(paper, &mut list);
    coated(paper, &mut list);
    corroding(paper, &mut list);
    list
}

fn disclose(list: &mut Vec<Disclosure>, about: &'static str, ticket: String, catalogue: String) {
    list.push(Disclosure {
        about,
        ticket,
        catalogue,
    });
}

/// Re-plating that is recorded, seen, or more than very unlikely.
fn replated(paper: &Paper, list: &mut Vec<Disclosure>) {
    let recorded: Vec<String> = paper
        .done
        .iter()
        .filter(|d| d.plates())
        .map(|d| match d.when_and_who() {
            when if when.is_empty() => words::NO_TIME.to_owned(),
            when => when,
        })
        .collect();
    if !recorded.is_empty() {
        let whole = paper.done.iter().any(|d| {
            matches!(
                d.treatment,
                Some(
                    leavewell_model::terms::Treatment::Replate
                        | leavewell_model::terms::Treatment::Overplate
                )
            )
        });
        let extent = if whole {
            words::REPLATED
        } else {
            words::REPLATED_IN_PLACES
        };
        disclose(
            list,
            "replated",
            words::replated_short(extent, &recorded.join("; ")),
            words::replated(extent, &recorded.join("; ")),
        );
    }
    if paper.too_little() {
        return;
    }
    let kinds = &paper.report.identity.kinds;
    let p: f64 = kinds
        .iter()
        .filter(|k| k.kind == Kind::Rfp)
        .map(|k| k.p)
        .sum();
    let signs: Vec<String> = [
        FindingId::S08,
        FindingId::S10,
        FindingId::S18,
        FindingId::S19,
        FindingId::S20,
    ]
    .into_iter()
    .filter(|id| paper.case.has_seen(*id))
    .map(|id| small(id.fact().title))
    .collect();
    if recorded.is_empty() && paper.report.identity.nothing_found {
        disclose(
            list,
            "replated",
            words::REPLATING_UNKNOWN_SHORT.to_owned(),
            words::REPLATING_UNKNOWN.to_owned(),
        );
    } else if recorded.is_empty() && (paper.worth_telling(p) || !signs.is_empty()) {
        let why = if signs.is_empty() {
            String::new()
        } else {
            words::signs(&and(&signs))
        };
        disclose(
            list,
            "replated",
            words::perhaps_replated_short(paper.in_words(p)),
            words::perhaps_replated(paper.in_words(p), &why),
        );
    }
}

/// Lower-case names of the parts that satisfy `holds`.
fn parts_where(paper: &Paper, holds: impl Fn(&Part) -> bool) -> Vec<String> {
    part_labels(paper.case, &holds)
}

fn repaired(paper: &Paper, list: &mut Vec<Disclosure>) {
    let grey = parts_where(paper, |p| p.has_joint(Joint::GreyRepair));
    let neat = parts_where(paper, |p| p.has_joint(Joint::NeatRepair));
    if !grey.is_empty() {
        disclose(
            list,
            "repaired",
            words::grey_repair_short(&grey.join(", ")),
            words::grey_repair(&and(&grey)),
        );
    }
    if !neat.is_empty() {
        disclose(
            list,
            "repaired",
            words::neat_repair_short(&neat.join(", ")),
            words::neat_repair(&and(&neat)),
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
        disclose(
            list,
            "repaired",
            words::repaired_short(&work.in_sentence(), &details),
            words::repaired(&work.in_sentence(), &details),
        );
    }
    for work in paper
        .done
        .iter()
        .filter(|d| !(d.plates() || d.repairs() || d.replaces() || d.coats()))
    {
        let when = work.when_in_brackets();
        disclose(
            list,
            "history",
            words::work_short(&work.in_sentence(), &when),
            words::work(&work.in_sentence(), &when),
        );
    }
}

fn lead(paper: &Paper, list: &mut Vec<Disclosure>) {
    let filled = parts_where(paper, |p| p.fill == Some(Fill::Lead));
    if !filled.is_empty() {
        disclose(
            list,
            "lead",
            words::lead_filling_short(&filled.join(", ")),
            words::lead_filling(&and(&filled)),
        );
    }
    if paper.case.has_seen(FindingId::C10) && filled.is_empty() {
        disclose(
            list,
            "lead",
            words::BORDERS_SHORT.to_owned(),
            words::BORDERS.to_owned(),
        );
    }
    if paper.case.done.iter().any(Done::adds_lead) {
        disclose(
            list,
            "lead",
            words::LEAD_SOLDER_SHORT.to_owned(),
            words::LEAD_SOLDER.to_owned(),
        );
    }
    tested_for_lead(paper, list);
}

/// The results of lead tests. Lead in the metal and lead released into food are reported separately.
fn tested_for_lead(paper: &Paper, list: &mut Vec<Disclosure>) {
    let case = &paper.case;
    let mut places = parts_where(paper, |p| p.lead == Some(Lead::Present));
    let tested = |t: &&Test| t.kind == TestKind::Content && t.passed == Some(false);
    let found = !places.is_empty() || case.tests.iter().any(|t| tested(&t));
    for place in case.tests.iter().filter(tested).map(place_tested) {
        if !place.is_empty() && !places.contains(&place) {
            places.push(place);
        }
    }
    let mut add =
        |short: &str, long: &str| disclose(list, "lead", short.to_owned(), long.to_owned());
    if found {
        let [short, long] = words::lead_found(&places.join(", "));
        add(&short, &long);
    } else if paper.lead() == LeadStatus::Absent {
        add(words::NO_LEAD_IN_IT_SHORT, words::NO_LEAD_IN_IT);
    }
    match paper.release() {
        Release::Failed => {
            let failed = |t: &&Test| t.kind == TestKind::Release && t.passed == Some(false);
            let places = case.tests.iter().filter(failed).map(place_tested);
            let places: Vec<String> = places.filter(|place| !place.is_empty()).collect();
            let [short, long] = words::lead_released(&places.join(", "));
            add(&short, &long);
        }
        Release::Passed | Release::PassedByLaboratory => {
            let parts = passed_on(paper).join(", ");
            add(&words::no_lead_short(&parts), &words::no_lead(&parts));
        }
        Release::Untested if found || paper.lead() == LeadStatus::Absent => {}
        Release::Untested if case.aim.assume_lead => {
            add(words::LEAD_ASSUMED_SHORT, words::LEAD_ASSUMED);
        }
        Release::Untested => add(
            words::NOT_TESTED_SHORT,
            if case.is_soldered() {
                words::NOT_TESTED_SOLDERED
            } else {
                words::NOT_TESTED
            },
        ),
    }
}

/// The part that was tested, and of which of several pieces; empty where neither was said.
fn place_tested(test: &Test) -> String {
    let part = test.part.map_or("", PartName::label);
    match (small(part), the_pieces(&test.of)) {
        (part, of) if part.is_empty() => of,
        (part, of) => part_of(&part, &of),
    }
}

/// The parts on which a release test passed that counts.
fn passed_on(paper: &Paper) -> Vec<String> {
    let passed = |name: &PartName| release_of(*name, paper.case).passed();
    let parts = PartName::ALL.iter().copied().filter(passed);
    parts.map(|part| small(part.label())).collect()
}

/// Hazards other than lead, and materials that the law may keep from sale.
fn hazards(paper: &Paper, list: &mut Vec<Disclosure>) {
    let answers = &paper.case.circumstances;
    let ivory = parts_where(paper, |p| p.material == Some(Material::Ivory));
    let mut add =
        |short: &str, long: &str| disclose(list, "hazard", short.to_owned(), long.to_owned());
    if !ivory.is_empty() {
        add(
            &words::ivory_short(&ivory.join(", ")),
            &words::ivory(&and(&ivory)),
        );
    }
    if mercury(paper.case) >= Mercury::Possible {
        add(words::MERCURY_SHORT, words::MERCURY);
    }
    if answers.hard_repair == Some(true) {
        add(words::CADMIUM_SHORT, words::CADMIUM);
    }
    if answers.insulator == Some(true) {
        add(words::ASBESTOS_SHORT, words::ASBESTOS);
    }
}

fn replaced(paper: &Paper, list: &mut Vec<Disclosure>) {
    for recorded in &paper.case.parts {
        let part = part_label(recorded);
        match recorded.replaced {
            None | Some(Replaced::Original) => {}
            Some(Replaced::Doubtful) => disclose(
                list,
                "replaced",
                words::doubtful_short(&part),
                words::doubtful(&part),
            ),
            Some(Replaced::Yes) => disclose(
                list,
                "replaced",
                words::replaced_short(&part),
                words::replaced(&part),
            ),
        }
    }
    for work in paper.done.iter().filter(|d| d.replaces()) {
        let when = work.when_in_brackets();
        disclose(
            list,
            "replaced",
            words::part_new_short(&when),
            words::part_new(&when),
        );
    }
    let parts_differ = paper
        .report
        .identity
        .contradictions
        .iter()
        .any(|c| c.different_parts);
    if parts_differ {
        disclose(
            list,
            "replaced",
            words::MARRIAGE_SHORT.to_owned(),
            words::MARRIAGE.to_owned(),
        );
    }
    // A fault recorded on a part is disclosed with that part.
    let flaws = paper.case.flaws.iter();
    for flaw in flaws.filter(|id| paper.case.flaw_parts(id).is_empty()) {
        let words = words::flaw_words(flaw);
        let about = if matches!(*flaw, "part_replaced" | "marriage") {
            "replaced"
        } else {
            "damaged"
        };
        disclose(list, about, words.to_owned(), words::flaw(words));
    }
}

fn worn(paper: &Paper, list: &mut Vec<Disclosure>) {
    // Only what is visible and recorded, not guesses about parts that nobody looked at.
    let bare: Vec<String> = paper
        .report
        .silver
        .parts
        .iter()
        .filter(|p| {
            let states = || paper.case.parts_named(p.part);
            // On several pieces a part may be in more states than its silver is.
            let state = states().find(|state| part_label(state) == small(&p.name));
            let recorded = state.or(states().next()).and_then(|p| p.bleed);
            recorded.is_some_and(|b| {
                leavewell_model::silver::bleed_range(Some(b), paper.ledger).likely
                    >= paper.ledger.value(FigureId::SILVER_F_NONE)
            })
        })
        .map(|p| format!("{} ({})", small(&p.name), percent(p.bleed)))
        .collect();
    if !bare.is_empty() {
        disclose(
            list,
            "worn",
            words::worn_short(&bare.join(", ")),
            words::worn(&and(&bare)),
        );
    }
}

fn damaged(paper: &Paper, list: &mut Vec<Disclosure>) {
    let mut add = |parts: Vec<String>, ticket: &str, sentence: &str| {
        if !parts.is_empty() {
            disclose(
                list,
                "damaged",
                words::damaged_short(ticket, &parts.join(", ")),
                words::damaged(sentence, &and(&parts)),
            );
        }
    };
    let dents = |wanted| parts_where(paper, |p| p.dents == Some(wanted));
    add(
        parts_where(paper, |p| p.has_any_joint(&[Joint::Open, Joint::Leaking])),
        words::JOINT_SHORT,
        words::JOINT,
    );
    add(
        parts_where(paper, |p| p.repair == Some(Repair::Failing)),
        words::FAILING_SHORT,
        words::FAILING,
    );
    add(
        parts_where(paper, |p| {
            matches!(p.gilding, Some(Gilding::Worn | Gilding::Gone))
        }),
        words::GILDING_SHORT,
        words::GILDING,
    );
    let splits = |wanted| parts_where(paper, |p| p.split == Some(wanted));
    add(splits(Split::Through), words::THROUGH_SHORT, words::THROUGH);
    add(splits(Split::Crease), words::CREASE_SHORT, words::CREASE);
    add(dents(Dents::Split), words::CREASED_SHORT, words::CREASED);
    add(dents(Dents::Moderate), words::DENTED_SHORT, words::DENTED);
    add(
        dents(Dents::Minor),
        words::SMALL_DENTS_SHORT,
        words::SMALL_DENTS,
    );
    add(
        parts_where(paper, |p| matches!(p.loss, Some(Loss::Small | Loss::Large))),
        words::LOSS_SHORT,
        words::LOSS,
    );
    add(
        parts_where(paper, |p| {
            matches!(
                p.engraving,
                Some(Engraving::Softened | Engraving::Faint | Engraving::Gone)
            )
        }),
        words::ENGRAVING_SHORT,
        words::ENGRAVING,
    );
    add(
        parts_where(paper, |p| {
            matches!(p.mount, Some(Mount::GreyWear | Mount::FillShowing))
        }),
        words::MOUNT_SHORT,
        words::MOUNT,
    );
    // What no choice says: only a place on the part shows it.
    let placed = |wanted| parts_where(paper, |p| p.spots.iter().any(|s| s.fault == wanted));
    add(
        placed(SpotFault::Scratch),
        words::SCRATCHED_SHORT,
        words::SCRATCHED,
    );
    for fault in super::sheet_places::placed(paper.case) {
        if fault.spot.fault == SpotFault::Other {
            let note = as_typed(&fault.spot.note);
            let (ticket, sentence) = (words::other_short(&note), words::other(&note));
            add(vec![small(fault.part.label())], &ticket, &sentence);
        }
    }
}

fn coated(paper: &Paper, list: &mut Vec<Disclosure>) {
    let lined = |lining: Interior| {
        let mut inside = paper.case.parts_named(PartName::Interior);
        inside.any(|p| p.interior == Some(lining))
    };
    let mut parts = parts_where(paper, |p| p.lacquer.is_some_and(|l| l != Lacquer::None));
    if lined(Interior::Lacquered) {
        parts.push(words::INSIDE.to_owned());
    }
    if paper
        .done
        .iter()
        .any(super::sheet_done::RecordedWork::coats)
        && parts.is_empty()
    {
        parts.push(words::AS_RECORDED.to_owned());
    }
    if !parts.is_empty() {
        disclose(
            list,
            "coated",
            words::coated_short(&parts.join(", ")),
            words::coated(&and(&parts)),
        );
    }
    if lined(Interior::Bare) {
        disclose(
            list,
            "worn",
            words::BARE_INSIDE_SHORT.to_owned(),
            words::BARE_INSIDE.to_owned(),
        );
    }
}

fn corroding(paper: &Paper, list: &mut Vec<Disclosure>) {
    let mut parts = parts_where(paper, |p| p.corrosion.is_some_and(|c| c != Corrosion::None));
    if paper.case.has_seen_any(&signs::RUST) && parts.is_empty() {
        parts.push(words::WHERE_RUST_WAS_SEEN.to_owned());
    }
    if !parts.is_empty() {
        disclose(
            list,
            "corroding",
            words::corroding_short(&parts.join(", ")),
            words::corroding(&and(&parts)),
        );
    }
}
