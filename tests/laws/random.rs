//! Random case files. All are CONSTRUCTED and resemble no real piece.
//!
//! Every choice comes from a [`Tape`] of numbers. The same tape gives the same file, and a tape of zeros gives
//! the empty file, so that a failing tape shrinks toward fewer entries.

use leavewell_model::ledger::{Ledger, findings};
use leavewell_model::terms::Treatment;
use leavewell_model::terms::{
    Corrosion, Currency, Dents, Doer, Fill, Form, Goal, Interior, Joint, Lead, PartName, Route,
    Tarnish,
};
use serde_json::{Map, Value, json};

/// A source of numbers for choices: the given ones, then zeros.
pub(crate) struct Tape {
    left: std::vec::IntoIter<u32>,
}

impl Tape {
    pub(crate) fn new(numbers: Vec<u32>) -> Self {
        Self {
            left: numbers.into_iter(),
        }
    }

    /// The tape of a linear congruential generator with this seed (Knuth's MMIX constants).
    pub(crate) fn numbered(seed: u64) -> Self {
        let mut state = seed;
        let numbers = (0..512).map(|_| {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            u32::try_from(state >> 33).unwrap()
        });
        Self::new(numbers.skip(4).collect())
    }

    /// A number below `n`.
    pub(crate) fn below(&mut self, n: usize) -> usize {
        self.left.next().unwrap_or(0) as usize % n
    }

    /// True once in `n` times.
    fn one_in(&mut self, n: usize) -> bool {
        self.below(n) == n - 1
    }

    fn pick<T: Copy>(&mut self, choices: &[T]) -> T {
        choices[self.below(choices.len())]
    }

    /// One of these or nothing, all equally likely.
    fn maybe<T: Copy>(&mut self, choices: &[T]) -> Option<T> {
        let i = self.below(choices.len() + 1);
        i.checked_sub(1).map(|i| choices[i])
    }
}

/// A valid case file: every value can be used.
pub(crate) fn case_file(tape: &mut Tape) -> Value {
    let mut root = Map::new();
    root.insert("format".to_owned(), json!("leavewell-case"));
    root.insert("version".to_owned(), json!(1));
    root.insert("piece".to_owned(), piece(tape));
    let seen = typical_findings(tape);
    root.insert("findings".to_owned(), findings_list(tape, seen));
    root.insert("parts".to_owned(), parts(tape));
    root.insert("aim".to_owned(), aim(tape));
    root.insert("market".to_owned(), market(tape));
    root.insert("quotes".to_owned(), quotes(tape));
    root.insert("consents".to_owned(), consents(tape));
    root.insert("overrides".to_owned(), overrides(tape));
    if tape.one_in(2) {
        root.insert("asked_on".to_owned(), json!("2026-05-31"));
    }
    let mut file = Value::Object(root);
    if tape.one_in(3) {
        tempt(tape, &mut file);
    }
    file
}

/// Makes replating as attractive as possible: a valuable piece, badly worn, tested for lead, with a low quote
/// and every consent. Its material stays the same.
fn tempt(tape: &mut Tape, file: &mut Value) {
    file["parts"] = json!([{
        "part": "body",
        "bleed": tape.pick(&["most", "much", "some", "80 %"]),
        "tarnish": "brown",
        "joint": "sound",
        "lead": "absent",
    }]);
    file["aim"] = json!({"goal": tape.pick(&["sell", "keep_show", "sell"])});
    let likely = tape.pick(&[2400.0, 520.0, 90_000.0]);
    file["market"] = json!({"likely": likely, "route": tape.pick(&["auction", "private"])});
    file["quotes"] = json!([{"treatment": "T14a", "likely": tape.pick(&[25.0, 180.0, 0.0])}]);
    file["consents"] = json!({"loss": true, "photo": true, "disclose": true});
}

fn put<T: Into<Value>>(fields: &mut Map<String, Value>, name: &str, value: Option<T>) {
    if let Some(value) = value {
        fields.insert(name.to_owned(), value.into());
    }
}

fn piece(tape: &mut Tape) -> Value {
    let mut fields = Map::new();
    put(&mut fields, "form", tape.maybe(Form::ALL).map(Form::id));
    put(
        &mut fields,
        "soldered_vessel",
        tape.maybe(&[false, true, false]),
    );
    put(&mut fields, "rare", tape.one_in(10).then_some(true));
    put(&mut fields, "documented", tape.one_in(8).then_some(true));
    put(&mut fields, "from_year", tape.maybe(&[1760, 1840, 1995]));
    put(&mut fields, "height_mm", tape.maybe(&[40.0, 182.5]));
    Value::Object(fields)
}

/// Sets of findings that fit together, so that not every random case contradicts itself.
fn typical_findings(tape: &mut Tape) -> &'static [&'static str] {
    tape.pick(&[
        &[],
        &["C01", "C08", "S03", "S01"],
        &["M01", "S04", "C09"],
        &["C06", "C08", "C14"],
        &["M09", "C09", "C11", "S03"],
        &["C01", "C13", "S08", "S10"],
        &["M02", "S05", "C09"],
        &["C07", "C10", "S03"],
        &["P01", "S07"],
        &["S03"],
        &["M01b", "C09", "C15"],
        &["M03", "S01"],
        &["C19", "C09", "P12"],
    ])
}

fn findings_list(tape: &mut Tape, typical: &[&'static str]) -> Value {
    let mut list: Vec<Value> = Vec::new();
    let mut add = |tape: &mut Tape, id: &str, answer: &str| {
        let mut fields = Map::new();
        put(&mut fields, "id", Some(id));
        put(&mut fields, "answer", Some(answer));
        put(
            &mut fields,
            "part",
            tape.maybe(PartName::ALL).map(PartName::id),
        );
        // A finding may be reported for several parts, but not twice for one part.
        if !list
            .iter()
            .any(|f| f["id"] == fields["id"] && f.get("part") == fields.get("part"))
        {
            list.push(Value::Object(fields));
        }
    };
    for id in typical {
        add(tape, id, "seen");
    }
    let more = tape.pick(&[0, 0, 1, 3, 6, 15]);
    for _ in 0..more {
        let id = findings()[tape.below(findings().len())].id.text();
        let answer = tape.pick(&["absent", "seen", "absent", "unsure"]);
        add(tape, id, answer);
    }
    Value::Array(list)
}

fn parts(tape: &mut Tape) -> Value {
    let most = tape.pick(&[0, 1, 2, 4, 8]);
    let mut names: Vec<PartName> = Vec::new();
    for _ in 0..most {
        // People describe the body first.
        let name = if names.is_empty() && !tape.one_in(6) {
            PartName::Body
        } else {
            tape.pick(PartName::ALL)
        };
        if !names.contains(&name) {
            names.push(name);
        }
    }
    let list = names.into_iter().map(|name| part(tape, name)).collect();
    Value::Array(list)
}

fn part(tape: &mut Tape, name: PartName) -> Value {
    let mut fields = Map::new();
    put(&mut fields, "part", Some(name.id()));
    put(&mut fields, "bleed", bleed(tape));
    put(
        &mut fields,
        "tarnish",
        tape.maybe(Tarnish::ALL).map(Tarnish::id),
    );
    put(&mut fields, "joint", tape.maybe(Joint::ALL).map(Joint::id));
    put(
        &mut fields,
        "lead",
        tape.maybe(&[Lead::Absent, Lead::Present, Lead::Absent])
            .map(Lead::id),
    );
    put(&mut fields, "dents", tape.maybe(Dents::ALL).map(Dents::id));
    if tape.one_in(4) {
        let lining = tape.maybe(Interior::ALL).map(Interior::id);
        put(&mut fields, "interior", lining);
    }
    if tape.one_in(6) {
        let corrosion = tape.maybe(Corrosion::ALL).map(Corrosion::id);
        put(&mut fields, "corrosion", corrosion);
        put(&mut fields, "fill", tape.maybe(Fill::ALL).map(Fill::id));
        put(
            &mut fields,
            "joint_distance_mm",
            tape.maybe(&[0.0, 12.0, 300.0]),
        );
    }
    Value::Object(fields)
}

fn bleed(tape: &mut Tape) -> Option<Value> {
    let words = ["none", "slight", "some", "much", "most", "most", "unknown"];
    match tape.below(8) {
        0 => None,
        1 => Some(json!(tape.pick(&[0.0, 0.004, 0.12, 0.62, 0.97, 1.0]))),
        2 => Some(tape.pick(&[
            [0.0, 0.0, 0.03],
            [0.05, 0.11, 0.2],
            [0.7, 0.8, 0.9],
            [0.9, 0.99, 1.0],
        ]))
        .map(|[low, likely, high]| json!({"low": low, "likely": likely, "high": high})),
        3 => Some(json!(tape.pick(&["3 %", "80 %", "100 %"]))),
        _ => Some(json!(tape.pick(&words))),
    }
}

fn aim(tape: &mut Tape) -> Value {
    let mut fields = Map::new();
    let goals = [
        Goal::Sell,
        Goal::KeepShow,
        Goal::KeepUse,
        Goal::Insure,
        Goal::Study,
        Goal::Sell,
    ];
    put(&mut fields, "goal", tape.maybe(&goals).map(Goal::id));
    put(&mut fields, "food", tape.maybe(&[false, true]));
    put(&mut fields, "store_food", tape.one_in(10).then_some(true));
    let household = tape.one_in(6).then_some(true);
    put(&mut fields, "household_child_or_pregnant", household);
    put(&mut fields, "doer", tape.maybe(Doer::ALL).map(Doer::id));
    Value::Object(fields)
}

fn market(tape: &mut Tape) -> Value {
    let mut fields = Map::new();
    let likely = tape.maybe(&[3.0, 45.0, 180.0, 520.0, 2400.0, 90_000.0]);
    put(&mut fields, "likely", likely);
    if let Some(likely) = likely.filter(|_| tape.one_in(2)) {
        put(&mut fields, "low", Some(likely / 1.6));
        put(&mut fields, "high", Some(likely * 2.2));
    }
    put(
        &mut fields,
        "currency",
        tape.maybe(Currency::ALL).map(Currency::id),
    );
    put(&mut fields, "route", tape.maybe(Route::ALL).map(Route::id));
    Value::Object(fields)
}

fn quotes(tape: &mut Tape) -> Value {
    let mut list = Vec::new();
    for treatment in Treatment::WEIGHED {
        if tape.one_in(4) {
            let mut fields = Map::new();
            put(&mut fields, "treatment", Some(treatment.id()));
            let likely = tape.pick(&[60.0, 0.0, 25.0, 180.0, 900.0]);
            put(&mut fields, "likely", Some(likely));
            if tape.one_in(2) {
                put(&mut fields, "low", Some(likely * 0.8));
                put(&mut fields, "high", Some(likely * 1.5));
            }
            list.push(Value::Object(fields));
        }
    }
    Value::Array(list)
}

fn consents(tape: &mut Tape) -> Value {
    let all = tape.one_in(2);
    json!({"loss": all, "photo": all, "disclose": all, "conservator_opinion": tape.one_in(8)})
}

/// Occasionally the person's own figures, at the ends of the shipped range or at zero.
fn overrides(tape: &mut Tape) -> Value {
    let mut fields = Map::new();
    let how_many = tape.pick(&[0, 0, 0, 0, 1, 3]);
    let ledger = Ledger::standard();
    let count = ledger.figures().count();
    for _ in 0..how_many {
        let figure = ledger.figures().nth(tape.below(count)).unwrap();
        let value = tape.pick(&[figure.low, figure.high, 0.0]);
        if ledger.clone().override_with(figure.id, value, "").is_ok() {
            fields.insert(
                figure.id.to_owned(),
                json!({"value": value, "reason": "mine"}),
            );
        }
    }
    Value::Object(fields)
}
