//! Reads what was looked for, what is struck on the piece, and the instruments at hand.

use serde_json::{Map, Value};

use super::wording as words;
use super::{MOST_ENTRIES, Reader, shorten};
use crate::ledger::{FindingId, findings, nearest};
use crate::record::{Answer, StruckMark};
use crate::terms::{Instrument, Seen};

impl Reader {
    /// The answers, and of each finding confirmed from typed words where those stand: the id of a mark.
    pub(super) fn findings(
        &mut self,
        root: &Map<String, Value>,
    ) -> (Vec<Answer>, Vec<(String, FindingId)>) {
        let mut answers: Vec<Answer> = Vec::new();
        let mut confirmed: Vec<(String, FindingId)> = Vec::new();
        for s in self.list(root, "findings", crate::record::MAX_FINDINGS) {
            let Some(id) = self.text(&s, "id") else {
                self.problem(
                    s.at("id"),
                    words::NO_FINDING_ID.to_owned(),
                    words::NO_FINDING_ID_REMEDY,
                );
                continue;
            };
            let Some(finding) = FindingId::parse(&id) else {
                let near = nearest(&id, findings().iter().map(|f| f.id.text())).unwrap_or("");
                self.problem(
                    s.at("id"),
                    words::no_such_finding(&shorten(&id)),
                    &words::did_you_mean(near),
                );
                continue;
            };
            let Some(seen) = self.word::<Seen>(&s, "answer") else {
                if s.get("answer").is_none() {
                    self.problem(
                        s.at("answer"),
                        words::no_answer(&id),
                        words::NO_ANSWER_REMEDY,
                    );
                }
                continue;
            };
            if let Some(from) = self.text(&s, "from")
                && seen == Seen::Yes
            {
                confirmed.push((from, finding));
            }
            let answer = Answer {
                id: finding,
                seen,
                part: self.word(&s, "part"),
            };
            match answers
                .iter()
                .find(|a| a.id == answer.id && a.part == answer.part)
            {
                None => answers.push(answer),
                Some(first) if first.seen == answer.seen => {}
                Some(first) => {
                    let kept = first.seen.id();
                    self.problem(
                        s.at("answer"),
                        words::answered_twice(&id),
                        &words::answered_twice_remedy(kept),
                    );
                }
            }
        }
        (answers, confirmed)
    }

    /// What is struck on the piece. A mark without words counts for nothing.
    pub(super) fn marks(
        &mut self,
        root: &Map<String, Value>,
        confirmed: &[(String, FindingId)],
    ) -> Vec<StruckMark> {
        let mut marks = Vec::new();
        for s in self.list(root, "marks", MOST_ENTRIES) {
            let id = self.text(&s, "id").unwrap_or_default();
            let part = self.word(&s, "part");
            let text = self.text(&s, "text").unwrap_or_default();
            if text.trim().is_empty() {
                continue;
            }
            let from_it = confirmed.iter().filter(|(from, _)| *from == id);
            marks.push(StruckMark {
                text: text.trim().to_owned(),
                part,
                findings: from_it.map(|(_, finding)| *finding).collect(),
            });
        }
        marks
    }

    pub(super) fn instruments(&mut self, root: &Map<String, Value>) -> Vec<Instrument> {
        let s = self.section(root, "looked");
        let known: Vec<_> = Instrument::ALL.iter().map(|i| (i.id(), *i)).collect();
        self.ids(&s, "instruments", &known)
    }
}
