//! Reads how many pieces a record is of, what differs between them, and the lot it was bought in.
//!
//! Invariant: the shares of several pieces sum to 1, and every piece has each part once.

use serde_json::{Map, Value};

use super::sales::SINGLE_OF_PAIR;
use super::wording::pieces as words;
use super::{Reader, Section, shorten};
use crate::record::{Each, Lot, MOST_PIECES, Part, Pieces};
use crate::terms::Relation;

/// How far typed shares may be from 100 % together: three thirds are written 33.3 %.
const ROUNDING: f64 = 0.5;

/// What is said of one piece.
struct SaidOfPiece {
    /// Its number.
    no: u16,
    /// Its share of 1.
    share: Option<f64>,
    /// Its parts.
    parts: Vec<Part>,
    /// The photographs that show it.
    photos: Vec<String>,
}

/// Whether this is the key of a photograph taken after a work, `done-<id>/<number>`, that the work lists.
fn is_of_a_work(root: &Map<String, Value>, key: &str) -> bool {
    let Some((id, number)) = key
        .strip_prefix("done-")
        .and_then(|key| key.split_once('/'))
    else {
        return false;
    };
    let text =
        |work: &Value, field: &str| work.get(field).and_then(Value::as_str).map(str::to_owned);
    let works = root.get("done").and_then(Value::as_array);
    works.into_iter().flatten().any(|work| {
        let numbers = text(work, "photos").unwrap_or_default();
        text(work, "id").as_deref() == Some(id) && numbers.split_whitespace().any(|n| n == number)
    })
}

impl Reader {
    /// How many pieces there are, and the parts of all of them.
    pub(super) fn pieces(
        &mut self,
        root: &Map<String, Value>,
        photos: &[String],
    ) -> (Pieces, Vec<Part>) {
        let shared = self.parts(root, "parts", photos);
        let s = self.section(root, "pieces");
        let flaws = self.section(root, "flaws");
        let typed = self.number(&s, "count");
        let left_of_pair = self.flag(&flaws, SINGLE_OF_PAIR) == Some(true);
        let relation = self.relation(&s, left_of_pair, typed);
        let count = typed.or((relation == Relation::Pair).then_some(2.0));
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        // the schema's range is 1 to MOST_PIECES
        let count = count.map_or(1, |count| count as u16).clamp(1, MOST_PIECES);
        let mut pieces = Pieces {
            count,
            relation,
            sell: self.word(&s, "sell"),
            each: Vec::new(),
        };
        let said = match s.fields {
            Some(fields) => self.each((root, fields), count, photos, &shared),
            None => Vec::new(),
        };
        if count == 1 {
            return (pieces, shared);
        }
        let mut shares = vec![None; usize::from(count)];
        for one in &said {
            shares[usize::from(one.no) - 1] = one.share;
        }
        pieces.each = self.shares(&shares);
        for one in &said {
            pieces.each[usize::from(one.no) - 1]
                .photos
                .clone_from(&one.photos);
        }
        (pieces, parts_of_all(&shared, said, count))
    }

    /// What the pieces are to each other, made to agree with how many there are.
    fn relation(&mut self, s: &Section, left_of_pair: bool, count: Option<f64>) -> Relation {
        let said: Option<Relation> = self.word(s, "relation");
        let count = count.unwrap_or(1.0);
        let typed = s.get("count").is_some();
        let usual = match (count > 1.0, left_of_pair) {
            (false, true) => Relation::OneOfPair,
            (false, false) => Relation::Single,
            (true, _) => Relation::Alike,
        };
        let mut wrong = |message: &str, remedy: &str| {
            self.problem(s.at("relation"), message.to_owned(), remedy);
        };
        match said {
            None => usual,
            Some(Relation::Single) if left_of_pair && count <= 1.0 => usual,
            Some(relation @ (Relation::Single | Relation::OneOfPair)) => {
                if count > 1.0 {
                    wrong(words::MORE_THAN_ONE, words::MORE_THAN_ONE_REMEDY);
                    return usual;
                }
                relation
            }
            // A pair is two, whether or not anybody has counted.
            Some(Relation::Pair) if !typed => Relation::Pair,
            Some(Relation::Pair) if count > 2.0 => {
                wrong(words::PAIR_OF_MANY, words::PAIR_OF_MANY_REMEDY);
                Relation::Set
            }
            Some(relation) if count > 1.0 => relation,
            Some(_) => {
                wrong(words::SET_OF_ONE, words::SET_OF_ONE_REMEDY);
                usual
            }
        }
    }

    /// What is said of single pieces, each once.
    fn each(
        &mut self,
        (root, fields): (&Map<String, Value>, &Map<String, Value>),
        count: u16,
        photos: &[String],
        shared: &[Part],
    ) -> Vec<SaidOfPiece> {
        let mut said: Vec<SaidOfPiece> = Vec::new();
        for s in self.list(fields, "pieces.each", usize::from(MOST_PIECES)) {
            if s.get("no").is_none() {
                self.problem(
                    s.at("no"),
                    words::NO_NUMBER.to_owned(),
                    words::NO_NUMBER_REMEDY,
                );
                continue;
            }
            let Some(no) = self.number(&s, "no") else {
                continue;
            };
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
            // the schema's range is 1 to MOST_PIECES
            let whole = no as u16;
            if no.fract() != 0.0 || whole > count {
                self.problem(
                    s.at("no"),
                    words::no_such_piece(no, count),
                    words::NO_SUCH_PIECE_REMEDY,
                );
                continue;
            }
            if said.iter().any(|one| one.no == whole) {
                self.problem(
                    s.at("no"),
                    words::said_twice(whole),
                    words::SAID_TWICE_REMEDY,
                );
                continue;
            }
            let share = self.number(&s, "share").map(|percent| percent / 100.0);
            let parts = match s.fields {
                Some(fields) => self.parts(fields, &s.at("parts"), photos),
                None => Vec::new(),
            };
            let mut shown = self.photos(&s);
            let is_there = |key: &String| {
                let listed = |of: &str, numbers: &[String]| {
                    let number = key.strip_prefix(of).and_then(|key| key.strip_prefix('/'));
                    number.is_some_and(|number| numbers.iter().any(|known| known == number))
                };
                let mut parts = shared.iter().chain(&parts);
                listed("piece", photos)
                    || parts.any(|p| listed(p.name.id(), &p.photos))
                    || is_of_a_work(root, key)
            };
            if let Some(key) = shown.iter().find(|key| !is_there(key)) {
                let message = words::no_such_photo(&shorten(key));
                self.problem(s.at("photos"), message, words::NO_SUCH_PHOTO_REMEDY);
            }
            shown.retain(is_there);
            said.push(SaidOfPiece {
                no: whole,
                share,
                parts,
                photos: shown,
            });
        }
        said
    }

    /// The share of each piece: as typed, and what is left over the pieces without one. Where the typed
    /// shares cannot be, all have the same.
    fn shares(&mut self, typed: &[Option<f64>]) -> Vec<Each> {
        let count = typed.len();
        let given: Vec<f64> = typed.iter().copied().flatten().collect();
        let sum: f64 = given.iter().sum();
        let open = count - given.len();
        let rounding = ROUNDING / 100.0;
        let adds_up = if open == 0 {
            (sum - 1.0).abs() <= rounding
        } else {
            sum < 1.0
        };
        if !given.is_empty() && (!adds_up || given.contains(&0.0)) {
            self.problem(
                "pieces.each".to_owned(),
                words::shares_do_not_add_up((sum * 100.0).round()),
                words::SHARES_REMEDY,
            );
        }
        if given.is_empty() || !adds_up || given.contains(&0.0) {
            return vec![
                Each {
                    share: 1.0 / count as f64,
                    photos: Vec::new(),
                };
                count
            ];
        }
        let rest = if open == 0 {
            0.0
        } else {
            (1.0 - sum) / open as f64
        };
        let all = sum + rest * open as f64;
        let share = |share: &Option<f64>| Each {
            share: share.unwrap_or(rest) / all,
            photos: Vec::new(),
        };
        typed.iter().map(share).collect()
    }

    /// The lot it was bought in.
    pub(super) fn lot(&mut self, root: &Map<String, Value>) -> Lot {
        let s = self.section(root, "lot");
        Lot {
            id: self.text(&s, "id").unwrap_or_default().trim().to_owned(),
            price: self.money(&s, "price"),
            rule: self.word(&s, "rule"),
            share: self.money(&s, "share"),
        }
    }
}

/// The parts of all pieces: what holds for all, with what is said of single ones added to it. A part in
/// the same state on several pieces stands once.
fn parts_of_all(shared: &[Part], said: Vec<SaidOfPiece>, count: u16) -> Vec<Part> {
    let own: Vec<(u16, Part)> = said
        .into_iter()
        .flat_map(|SaidOfPiece { no, parts, .. }| parts.into_iter().map(move |part| (no, part)))
        .collect();
    let mut all: Vec<Part> = Vec::new();
    let mut names = Vec::new();
    for name in shared
        .iter()
        .map(|p| p.name)
        .chain(own.iter().map(|(_, p)| p.name))
    {
        if !names.contains(&name) {
            names.push(name);
        }
    }
    for name in names {
        let below = shared.iter().find(|part| part.name == name);
        let mut states: Vec<Part> = below.cloned().into_iter().collect();
        for no in 1..=count {
            let found = own.iter().find(|(of, part)| *of == no && part.name == name);
            let state = match (found, below) {
                (Some((_, part)), Some(below)) => part.clone().over(below),
                (Some((_, part)), None) => part.clone(),
                (None, Some(below)) => below.clone(),
                (None, None) => continue,
            };
            let same = |known: &&mut Part| {
                Part {
                    on: Vec::new(),
                    ..(**known).clone()
                } == state
            };
            match states.iter_mut().find(same) {
                Some(known) => known.on.push(no),
                None => states.push(Part {
                    on: vec![no],
                    ..state
                }),
            }
        }
        states.retain(|part| !part.on.is_empty());
        for part in &mut states {
            if part.on.len() == usize::from(count) {
                part.on.clear();
            }
        }
        all.append(&mut states);
    }
    all
}

#[cfg(test)]
mod tests {
    use crate::record::{Case, Draft, Problem};
    use crate::terms::{Dents, PartName, Relation, Tarnish};

    fn read(body: &str) -> (Case, Vec<Problem>) {
        let text = format!("{{\"format\":\"leavewell-case\",\"version\":2,{body}}}");
        let (case, problems) = Draft::parse(&text).unwrap().read();
        for p in &problems {
            assert!(p.message.ends_with('.') && p.remedy.ends_with('.'), "{p:?}");
        }
        (case, problems)
    }

    fn fields(body: &str) -> Vec<String> {
        read(body).1.into_iter().map(|p| p.field).collect()
    }

    #[test]
    fn what_is_said_of_one_piece_lies_over_what_holds_for_all() {
        let (case, problems) = read(
            r#""parts":[{"part":"body","tarnish":"brown","dents":"none"},{"part":"foot","joint":"sound"}],
            "pieces":{"count":3,"relation":"set","each":[{"no":2,"parts":[{"part":"body","dents":"minor"}]}]}"#,
        );
        assert_eq!(problems, []);
        let bodies: Vec<(&[u16], Option<Dents>, Option<Tarnish>)> = case
            .parts_named(PartName::Body)
            .map(|p| (&p.on[..], p.dents, p.tarnish))
            .collect();
        assert_eq!(
            bodies,
            [
                (&[1, 3][..], Some(Dents::None), Some(Tarnish::Brown)),
                (&[2][..], Some(Dents::Minor), Some(Tarnish::Brown)),
            ]
        );
        let second = case.of_piece(2);
        assert_eq!(second.parts.len(), 2);
        assert_eq!(
            second.part(PartName::Body).unwrap().dents,
            Some(Dents::Minor)
        );
        assert!(second.parts.iter().all(|p| p.on.is_empty()));
    }

    #[test]
    fn a_flaw_of_one_piece_is_not_the_others() {
        let (case, _) = read(
            r#""flaws":{"monogram_later":true},
            "pieces":{"relation":"pair","each":[{"no":1,"parts":[{"part":"nozzle","loss":"small"}]}]}"#,
        );
        assert_eq!(case.pieces.count, 2);
        assert!(case.has_flaw("part_missing_minor"));
        assert!(case.of_piece(1).has_flaw("part_missing_minor"));
        assert!(!case.of_piece(2).has_flaw("part_missing_minor"));
        assert!(case.of_piece(2).has_flaw("monogram_later"));
    }

    #[test]
    fn one_left_of_a_pair_is_one_fault_however_it_is_said() {
        for body in [
            r#""flaws":{"single_of_pair":true}"#,
            r#""pieces":{"relation":"one_of_pair"}"#,
            r#""pieces":{"count":1,"relation":"one_of_pair"},"flaws":{"single_of_pair":true}"#,
            r#""pieces":{"relation":"single"},"flaws":{"single_of_pair":true}"#,
        ] {
            let (case, problems) = read(body);
            assert_eq!(problems, [], "{body}");
            assert_eq!(case.pieces.relation, Relation::OneOfPair, "{body}");
            assert_eq!(case.flaws, ["single_of_pair"], "{body}");
        }
        let (case, _) = read(r#""pieces":{"relation":"pair"},"flaws":{"single_of_pair":true}"#);
        assert!(case.flaws.is_empty());
    }

    #[test]
    fn a_fault_placed_on_all_pieces_counts_on_one_that_has_a_state_of_its_own() {
        let (case, problems) = read(
            r#""parts":[{"part":"foot","spots":[{"id":"a","fault":"grey_repair"}]}],
            "pieces":{"relation":"pair","each":[{"no":2,"parts":[{"part":"foot","joint":"sound"}]}]}"#,
        );
        assert!(problems.is_empty(), "{problems:?}");
        for no in [1, 2] {
            let one = case.of_piece(no);
            assert!(
                one.part(PartName::Foot)
                    .unwrap()
                    .has_joint(crate::record::Joint::GreyRepair)
            );
        }
    }

    #[test]
    fn shares_are_as_typed_and_the_rest_is_divided() {
        let share = |body: &str| -> Vec<f64> {
            read(body)
                .0
                .pieces
                .each
                .iter()
                .map(|each| each.share)
                .collect()
        };
        assert_eq!(share(r#""pieces":{"count":4,"relation":"set"}"#), [0.25; 4]);
        let typed = share(r#""pieces":{"count":3,"relation":"set","each":[{"no":2,"share":50}]}"#);
        assert!((typed[1] - 0.5).abs() < 1e-12 && (typed[0] - 0.25).abs() < 1e-12);
        let thirds = r#""pieces":{"count":3,"relation":"set","each":[{"no":1,"share":33.3},
            {"no":2,"share":33.3},{"no":3,"share":33.3}]}"#;
        assert_eq!(fields(thirds), Vec::<String>::new());
        assert!((share(thirds).iter().sum::<f64>() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_photo_says_which_piece_it_shows_and_makes_no_two_states() {
        let (case, problems) = read(
            r#""piece":{"photos":"p1"},"parts":[{"part":"foot","photos":"k1 k2","joint":"sound"}],
            "pieces":{"relation":"pair","each":[{"no":2,"photos":"foot/k2 piece/p1"}]}"#,
        );
        assert_eq!(problems, []);
        assert_eq!(case.parts.len(), 1);
        for (key, pieces) in [("foot/k2", &[2][..]), ("piece/p1", &[2]), ("foot/k1", &[])] {
            assert_eq!(case.pieces.shown_on(key), pieces);
        }
        let text = r#"{"format":"leavewell-case","version":2,"parts":[{"part":"foot","photos":"k1","joint":"sound"}],
            "pieces":{"relation":"pair","each":[{"no":2,"share":40,"photos":"foot/k1",
                "parts":[{"part":"foot","photos":"k3","dents":"minor","spots":[{"id":"a","fault":"split"}]}]}]}}"#;
        let copy = Draft::parse(text).unwrap().duplicate().to_json();
        assert!(!copy.contains("k1") && !copy.contains("k3") && !copy.contains("spots"));
        assert!(copy.contains("minor") && copy.contains("40"));
    }

    #[test]
    fn what_cannot_be_is_named_and_nothing_is_lost() {
        for (body, field) in [
            (r#""pieces":{"count":0}"#, "pieces.count"),
            (
                r#""pieces":{"count":10000,"relation":"set"}"#,
                "pieces.count",
            ),
            (r#""pieces":{"count":-2}"#, "pieces.count"),
            (r#""pieces":{"count":"many"}"#, "pieces.count"),
            (
                r#""pieces":{"count":1,"relation":"set"}"#,
                "pieces.relation",
            ),
            (r#""pieces":{"relation":"set"}"#, "pieces.relation"),
            (
                r#""pieces":{"count":1,"relation":"pair"}"#,
                "pieces.relation",
            ),
            (
                r#""pieces":{"count":3,"relation":"pair"}"#,
                "pieces.relation",
            ),
            (
                r#""pieces":{"count":2,"relation":"single"}"#,
                "pieces.relation",
            ),
            (
                r#""pieces":{"count":2,"relation":"brothers"}"#,
                "pieces.relation",
            ),
            (
                r#""pieces":{"count":2,"each":[{"no":3,"share":20}]}"#,
                "pieces.each[0].no",
            ),
            (
                r#""pieces":{"count":2,"each":[{"no":1.5}]}"#,
                "pieces.each[0].no",
            ),
            (
                r#""pieces":{"count":2,"each":[{"share":20}]}"#,
                "pieces.each[0].no",
            ),
            (
                r#""pieces":{"count":2,"each":[{"no":1},{"no":1}]}"#,
                "pieces.each[1].no",
            ),
            (
                r#""pieces":{"count":2,"each":[{"no":1,"share":80},{"no":2,"share":70}]}"#,
                "pieces.each",
            ),
            (
                r#""pieces":{"count":2,"each":[{"no":1,"share":0}]}"#,
                "pieces.each",
            ),
            (
                r#""pieces":{"count":2,"each":[{"no":1,"share":-5}]}"#,
                "pieces.each[0].share",
            ),
            (
                r#""pieces":{"count":2,"each":[{"no":1,"photos":"foot/k9"}]}"#,
                "pieces.each[0].photos",
            ),
            (
                r#""done":[{"id":"e1","what":"T12","photos":"k1"}],
                    "pieces":{"count":2,"each":[{"no":1,"photos":"done-e1/k2"}]}"#,
                "pieces.each[0].photos",
            ),
            (r#""pieces":{"count":2,"each":7}"#, "pieces.each"),
            (r#""pieces":7"#, "pieces"),
            (r#""lot":{"price":-5}"#, "lot.price"),
            (r#""lot":{"share":-5}"#, "lot.share"),
            (r#""lot":{"rule":"by size"}"#, "lot.rule"),
            (
                r#""pieces":{"count":2,"relation":"set","each":[{"no":2,"parts":[{"part":"body","dents":"big"}]}]}"#,
                "pieces.each[0].parts[0].dents",
            ),
        ] {
            let found = fields(body);
            assert!(found.iter().any(|f| f == field), "{body}: {found:?}");
            let text = format!("{{\"format\":\"leavewell-case\",\"version\":2,{body}}}");
            let draft = Draft::parse(&text).unwrap();
            assert_eq!(Draft::parse(&draft.to_json()).unwrap(), draft);
            let each = &draft.read().0.pieces.each;
            assert!(
                each.is_empty() || (each.iter().map(|e| e.share).sum::<f64>() - 1.0).abs() < 1e-9
            );
        }
    }
}
