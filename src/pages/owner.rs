//! What owners ask about a piece, each answered in a word and about ten more, from the solved case.
//!
//! Only questions that make sense for the record are answered: no dent recorded, no line about a dent. Where
//! too little is recorded to advise, no line advises anything.

use super::standing::Standing;
use super::wording::owner as words;
use leavewell_model::counsel::money;
use leavewell_model::ledger::Level;
use leavewell_model::record::{Asked, Case, is_enough_to_advise};
use leavewell_model::report::{FaultReport, OptionReport, Report};
use leavewell_model::terms::{Fault, Form, Goal, Treatment};
use leavewell_model::treatment::{LeadStatus, Release, lead_anywhere, release};

/// What a line is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OwnerTopic {
    /// Whether to polish it.
    Polish,
    /// Whether to eat or drink from it.
    Food,
    /// A recorded fault.
    Fault(Fault),
    /// The work that was offered or asked about.
    Offer,
    /// What it is worth.
    Worth,
    /// Whether it is dangerous.
    Danger,
    /// Who can help.
    Help,
}

/// One question with its answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OwnerLine {
    /// What it is about; it also says which page has more.
    pub topic: OwnerTopic,
    /// The question.
    pub question: String,
    /// The answer in a word or two.
    pub verdict: String,
    /// Whether the verdict stops the owner from doing something.
    pub stops: bool,
    /// About ten words more.
    pub text: String,
}

/// The lines for this case, in the order owners ask.
#[must_use]
pub fn lines(case: &Case, report: &Report) -> Vec<OwnerLine> {
    let asker = Asker { case, report };
    if !is_enough_to_advise(case) {
        // A hazard is said at once, however little else is recorded.
        let danger = Some(asker.danger()).filter(|line| line.stops);
        return [asker.food(), danger, Some(help_to_look())]
            .into_iter()
            .flatten()
            .collect();
    }
    let faults = words::FAULTS.iter().filter_map(|(fault, question)| {
        let found = report.faults.iter().find(|f| f.fault == *fault)?;
        Some(asker.fault(question, found))
    });
    [asker.polish(), asker.food()]
        .into_iter()
        .flatten()
        .chain(faults)
        .chain(asker.offer())
        .chain([asker.worth(), asker.danger(), asker.help()])
        .collect()
}

struct Asker<'a> {
    case: &'a Case,
    report: &'a Report,
}

fn line(topic: OwnerTopic, question: &str, verdict: &str, text: String) -> OwnerLine {
    OwnerLine {
        topic,
        question: question.to_owned(),
        verdict: verdict.to_owned(),
        stops: false,
        text,
    }
}

impl Asker<'_> {
    fn option(&self, treatment: Treatment) -> Option<&OptionReport> {
        let mut options = self.report.options.iter();
        options.find(|option| option.treatment == treatment)
    }

    fn standing(&self, option: &OptionReport) -> Standing {
        Standing::of(option, self.report)
    }

    fn polish(&self) -> Option<OwnerLine> {
        let option = self.option(Treatment::Clean)?;
        let (verdict, text) = match self.standing(option) {
            Standing::Advised => (words::YES_GENTLY, words::POLISH_ONCE.to_owned()),
            Standing::NotNeeded => (words::NO, first(option.not_needed.as_deref())),
            Standing::Possible => (words::RARELY, self.polish_takes()),
            standing => (verdict_of(standing), why(option, standing)),
        };
        Some(line(OwnerTopic::Polish, words::POLISH, verdict, text))
    }

    /// How many polishes double the bare metal, on the part that has least to spare.
    fn polish_takes(&self) -> String {
        let parts = self.report.silver.parts.iter();
        let least = parts
            .filter_map(|part| Some((part.name.as_str(), part.cleanings_to_double?.p50)))
            .min_by(|a, b| a.1.total_cmp(&b.1));
        match least {
            Some((part, polishes)) if polishes < words::MANY_POLISHES => {
                words::polishes_left(&part.to_lowercase(), polishes)
            }
            _ => words::WASH_INSTEAD.to_owned(),
        }
    }

    fn food(&self) -> Option<OwnerLine> {
        let case = self.case;
        let never_holds_food = matches!(
            case.piece.form,
            Some(Form::Candlestick | Form::Candelabrum | Form::Snuffers | Form::Inkstand)
        );
        if never_holds_food && !case.aim.food {
            return None;
        }
        let shown = &self.report.display_only;
        let (verdict, text, stops) = if shown.yes {
            let reason = first(shown.why.first().map(String::as_str));
            let found = lead_anywhere(case) == LeadStatus::Present;
            let verdict = if found || release(case) == Release::Failed {
                words::NO
            } else {
                words::NOT_YET
            };
            (verdict, reason, true)
        } else if release(case).passed() {
            (words::YES, words::FOOD_PASSED.to_owned(), false)
        } else {
            (words::NOT_KNOWN, words::FOOD_UNTESTED.to_owned(), false)
        };
        Some(OwnerLine {
            stops,
            ..line(OwnerTopic::Food, words::FOOD, verdict, text)
        })
    }

    fn fault(&self, question: &str, fault: &FaultReport) -> OwnerLine {
        let options: Vec<(&OptionReport, Standing)> = fault
            .answers
            .iter()
            .filter_map(|id| self.report.options.iter().find(|o| o.treatment == *id))
            .map(|option| (option, self.standing(option)))
            .collect();
        let find = |wanted: &[Standing]| options.iter().find(|(_, s)| wanted.contains(s));
        let (verdict, text) = if let Some((option, _)) = find(&[Standing::Advised]) {
            (
                words::YES,
                words::mend(option.plain.get(), &self.cost(option)),
            )
        } else if let Some((option, _)) = find(&[Standing::Possible]) {
            (words::LEAVE_IT, words::left(&self.cost(option)))
        } else if let Some((option, standing)) =
            find(&[Standing::NeedsCheck, Standing::NeedsOpinion])
        {
            (words::NOT_YET, why(option, *standing))
        } else if let Some((option, standing)) = options.first() {
            (words::LEAVE_IT, why(option, *standing))
        } else {
            (words::LEAVE_IT, words::NO_WORK_ANSWERS.to_owned())
        };
        line(OwnerTopic::Fault(fault.fault), question, verdict, text)
    }

    fn cost(&self, option: &OptionReport) -> String {
        if option.cost.p90 <= 0.0 {
            return words::NOTHING.to_owned();
        }
        money(self.case, option.cost.p50)
    }

    /// The work that was asked about, or else the first that was quoted by itself.
    fn asked(&self) -> Option<Treatment> {
        let asked = match &self.case.aim.asked {
            Some(Asked::Treatments(all)) => all.first().copied(),
            _ => None,
        };
        asked.or_else(|| {
            let alone = |treatments: &[Treatment]| match treatments {
                [one] => Some(*one),
                _ => None,
            };
            self.case.quotes.iter().find_map(|q| alone(&q.treatments))
        })
    }

    fn offer(&self) -> Option<OwnerLine> {
        let treatment = self.asked()?;
        let option = self.option(treatment)?;
        let quoted = self.case.quote(treatment).map(|quote| quote.likely);
        let sum = quoted.map(|likely| money(self.case, likely));
        let question = words::offer(option.name.get(), sum.as_deref());
        let standing = self.standing(option);
        let (verdict, text) = match standing {
            Standing::Advised => (words::YES, words::OFFER_ADVISED.to_owned()),
            Standing::Possible => self.possible_offer(treatment),
            Standing::NotNeeded => (words::NO, first(option.not_needed.as_deref())),
            standing => (verdict_of(standing), why(option, standing)),
        };
        Some(line(OwnerTopic::Offer, &question, verdict, text))
    }

    /// An offer that no rule keeps out and that is not advised: what it does to the money, or to what is wanted.
    fn possible_offer(&self, treatment: Treatment) -> (&'static str, String) {
        let mut courses = self.report.courses.iter();
        let alone = courses.find(|course| course.steps == [treatment]);
        let gain = alone.map(|course| course.net_gain.mean);
        let sells = self.case.aim.goal_or_default() == Goal::Sell;
        match gain {
            Some(gain) if sells && gain < 0.0 => {
                (words::NO, words::offer_loses(&money(self.case, -gain)))
            }
            _ => (words::NO, words::OFFER_NO_BETTER.to_owned()),
        }
    }

    fn worth(&self) -> OwnerLine {
        let value = &self.report.value;
        let [low, likely, high] = [value.as_it_is.p10, value.as_it_is.p50, value.as_it_is.p90]
            .map(|v| money(self.case, v));
        let (verdict, text) = if value.assumed {
            (
                words::NOT_KNOWN.to_owned(),
                words::worth_assumed(&low, &high),
            )
        } else {
            (words::about(&likely), words::worth(&low, &high))
        };
        line(OwnerTopic::Worth, words::WORTH, &verdict, text)
    }

    /// What is recorded that can harm a person, the gravest first. The cautions of the report carry every
    /// hazard recorded; here stand those that harm whoever holds, heats or cleans it.
    fn danger(&self) -> OwnerLine {
        let level_of = |id: &str| {
            let mut cautions = self.report.cautions.iter();
            cautions.find(|c| c.id == id).map(|c| c.level)
        };
        let stops = |id: &str| level_of(id) == Some(Level::Stop);
        let harms: Vec<&str> = [
            (
                lead_anywhere(self.case) == LeadStatus::Present,
                words::LEAD_THERE,
            ),
            (stops("caution.asbestos"), words::ASBESTOS_THERE),
            (stops("caution.mercury"), words::MERCURY_THERE),
            (stops("caution.cadmium"), words::CADMIUM_THERE),
            (stops("caution.ammonia"), words::AMMONIA_THERE),
            (stops("caution.corrosion"), words::CORROSION_THERE),
            (level_of("caution.sealed").is_some(), words::SEALED_THERE),
        ]
        .into_iter()
        .filter_map(|(there, text)| there.then_some(text))
        .collect();
        let (verdict, text, stops) = if !harms.is_empty() {
            (words::TAKE_CARE, harms.join(" "), true)
        } else if self.report.display_only.yes {
            (words::SAFE_TO_HOLD, words::LEAD_PERHAPS.to_owned(), false)
        } else {
            (words::NOT_THAT_WE_KNOW, words::NO_HAZARD.to_owned(), false)
        };
        OwnerLine {
            stops,
            ..line(OwnerTopic::Danger, words::DANGER, verdict, text)
        }
    }

    fn help(&self) -> OwnerLine {
        let by_owner = |option: &&OptionReport| option.who.split('/').any(|who| who == "O");
        let steps = self.report.counsel.steps.iter();
        let options =
            steps.filter_map(|id| self.report.options.iter().find(|o| o.treatment == *id));
        let first_hand = options
            .filter(|option| option.treatment != Treatment::Leave && !by_owner(option))
            .find_map(|option| option.who.split('/').next());
        // Whoever is told to take care is not told to do without help.
        let who = if self.report.counsel.refer || self.danger().stops {
            "C"
        } else {
            first_hand.unwrap_or("O")
        };
        let [verdict, text] = words::help(who);
        line(OwnerTopic::Help, words::HELP, verdict, text.to_owned())
    }
}

/// Who can help to look.
fn help_to_look() -> OwnerLine {
    let [verdict, text] = words::help("C");
    line(OwnerTopic::Help, words::HELP, verdict, text.to_owned())
}

fn verdict_of(standing: Standing) -> &'static str {
    match standing {
        Standing::Advised => words::YES,
        Standing::NeedsCheck | Standing::NeedsOpinion => words::NOT_YET,
        _ => words::NO,
    }
}

/// Why a rule keeps a treatment out, or what has to come first.
fn why(option: &OptionReport, standing: Standing) -> String {
    let rule = option.verdicts.first();
    rule.map_or_else(
        || option.lost.get().to_owned(),
        |rule| match standing {
            Standing::NeedsCheck | Standing::NeedsOpinion => {
                words::first_this(&rule.reason, &rule.lifted_by)
            }
            _ => first_sentence(&rule.reason),
        },
    )
}

fn first(text: Option<&str>) -> String {
    text.map(first_sentence).unwrap_or_default()
}

fn first_sentence(text: &str) -> String {
    match text.split_once(". ") {
        Some((sentence, _)) => format!("{sentence}."),
        None => text.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Subject;
    use leavewell_model::ledger::FindingId;

    fn lines_of(name: &str) -> Vec<OwnerLine> {
        let path = format!(
            "{}/../../tests/cases/{name}.json",
            env!("CARGO_MANIFEST_DIR")
        );
        let subject = Subject::parse(&std::fs::read_to_string(path).unwrap()).unwrap();
        lines(subject.case(), subject.report())
    }

    fn subject_refers(name: &str) -> bool {
        let path = format!(
            "{}/../../tests/cases/{name}.json",
            env!("CARGO_MANIFEST_DIR")
        );
        let subject = Subject::parse(&std::fs::read_to_string(path).unwrap()).unwrap();
        subject.report().counsel.refer
    }

    fn verdict(lines: &[OwnerLine], topic: OwnerTopic) -> Option<String> {
        let found = lines.iter().find(|line| line.topic == topic);
        found.map(|line| line.verdict.clone())
    }

    #[test]
    fn every_example_answers_in_few_words_what_its_record_asks() {
        for entry in
            std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/cases")).unwrap()
        {
            let name = entry.unwrap().path();
            let name = name.file_stem().unwrap().to_str().unwrap().to_owned();
            let lines = lines_of(&name);
            assert!(lines.len() >= 4, "{name}: {lines:#?}");
            for line in &lines {
                let said = format!("{} {}", line.verdict, line.text);
                assert!(line.question.ends_with('?'), "{name}: {line:?}");
                assert!(
                    line.verdict.ends_with('.') && line.text.ends_with('.'),
                    "{name}: {line:?}"
                );
                assert!(
                    !line.text.contains("  ") && said.split(' ').count() <= 34,
                    "{name}: {said}"
                );
            }
        }
    }

    #[test]
    fn the_worn_tray_is_neither_polished_nor_served_from_and_its_dent_is_left() {
        let lines = lines_of("worn_tray");
        let said = |topic| verdict(&lines, topic).unwrap();
        assert_eq!(said(OwnerTopic::Polish), words::NO);
        assert_eq!(said(OwnerTopic::Food), words::NOT_YET);
        assert_eq!(said(OwnerTopic::Fault(Fault::Dents)), words::LEAVE_IT);
        assert_eq!(said(OwnerTopic::Offer), words::NO);
        assert_eq!(verdict(&lines, OwnerTopic::Fault(Fault::PartLost)), None);
        let worth = lines.iter().find(|l| l.topic == OwnerTopic::Worth).unwrap();
        assert!(
            worth.verdict.contains('£') && worth.text.contains('£'),
            "{worth:?}"
        );
    }

    #[test]
    fn the_teapot_for_every_day_waits_for_a_test() {
        let lines = lines_of("daily_teapot");
        assert_eq!(verdict(&lines, OwnerTopic::Food).unwrap(), words::NOT_YET);
        let help = lines.iter().find(|l| l.topic == OwnerTopic::Help).unwrap();
        assert!(subject_refers("daily_teapot"));
        assert_eq!(help.verdict, words::help("C")[0]);
    }

    #[test]
    fn the_leaking_teapot_is_mended() {
        let lines = lines_of("leaking_teapot");
        assert_eq!(
            verdict(&lines, OwnerTopic::Fault(Fault::OpenJoint)).unwrap(),
            words::YES
        );
    }

    #[test]
    fn a_lost_knob_has_a_line_only_where_one_is_lost() {
        let lost = OwnerTopic::Fault(Fault::PartLost);
        assert!(verdict(&lines_of("teapot_without_knob"), lost).is_some());
        assert!(verdict(&lines_of("cake_basket"), lost).is_none());
    }

    #[test]
    fn every_hazard_recorded_is_said_whether_or_not_the_piece_was_looked_at() {
        for looked in [false, true] {
            for (path, word) in [
                ("catalogue.insulator", "asbestos"),
                ("catalogue.fire_gilding", "mercury"),
                ("catalogue.hard_repair", "cadmium"),
                ("catalogue.ammonia", "ammonia"),
            ] {
                let mut draft = leavewell_model::Draft::default();
                draft.set_flag(path, Some(true));
                if looked {
                    draft.set_answer(FindingId::C01, "seen", "");
                }
                let subject = Subject::new(draft);
                let lines = lines(subject.case(), subject.report());
                let danger = lines.iter().find(|l| l.topic == OwnerTopic::Danger);
                let danger = danger.unwrap_or_else(|| panic!("{path}: no line"));
                let help = lines.iter().find(|l| l.topic == OwnerTopic::Help).unwrap();
                assert_eq!(help.verdict, words::help("C")[0], "{path}");
                assert!(
                    danger.stops && danger.text.contains(word),
                    "{path}: {danger:?}"
                );
            }
        }
    }

    #[test]
    fn a_loading_seen_is_said_like_a_filling_recorded() {
        let mut draft = leavewell_model::Draft::default();
        draft.set("piece.form", "candlestick");
        draft.set_answer(FindingId::C32, "seen", "base");
        let subject = Subject::new(draft);
        let lines = lines(subject.case(), subject.report());
        let danger = lines.iter().find(|l| l.topic == OwnerTopic::Danger);
        assert!(danger.unwrap().text.contains("closed or filled"));
    }

    #[test]
    fn with_nothing_looked_at_nothing_is_advised() {
        let subject = Subject::new(leavewell_model::Draft::default());
        let lines = lines(subject.case(), subject.report());
        let topics: Vec<OwnerTopic> = lines.iter().map(|line| line.topic).collect();
        assert_eq!(topics, [OwnerTopic::Food, OwnerTopic::Help]);
    }
}
