//! Finds the best course without weighing every course, and shows that it is the best.
//!
//! In each block, a choice is dropped when another is at least as good whatever the rest of the course is.
//! The difference between two choices is bounded draw by draw on the first 2^9 points: the rest of the course
//! multiplies and bounds what a block adds, so the least and greatest contributions of the other blocks bound
//! the difference. The remaining courses are enumerated on those points, and the best of them are weighed on
//! all points.

use crate::ledger::FigureId;
use crate::terms::ShortSort;
use std::rc::Rc;

use super::choice::{BlockChoice, Rulings, Tested, not_needed};

use super::columns::Columns;
use super::course::Course;
use super::outcome::{CourseOutcome, Weigher};
use super::work_block::WorkBlock;
use crate::maths::{at_least, at_most, mean};
use crate::record::Goal;
use crate::treatment::{LeadStatus, Treatment, worst};

/// Points on which choices are dropped and courses enumerated.
const ROUGH: usize = 512;
/// The most courses enumerated; beyond that, only a few choices per block are kept, and the answer says so.
const MOST_COURSES: usize = 512;
/// Choices kept per block if there would be more courses than that.
const FEW: usize = 3;
/// Courses weighed on all points for their mean alone.
const BEST: usize = 12;
/// The same limit when courses within twice the noise of the best are included.
const MOST_BEST: usize = 24;
/// How many times a change that beats the best course may replace it.
const ROUNDS: usize = 3;

/// Adds courses, each once.
pub(super) struct Tally<'a> {
    pub(super) weigher: &'a Weigher<'a>,
    pub(super) rulings: &'a Rulings<'a>,
    pub(super) n: usize,
    pub(super) courses: Vec<Course>,
    pub(super) outcomes: Vec<CourseOutcome>,
}

impl Tally<'_> {
    /// The index of a course, which is weighed first if it is new.
    pub(super) fn place(&mut self, course: Course) -> usize {
        let known = self.courses.iter().position(|c| c.same_as(&course));
        known.unwrap_or_else(|| {
            self.outcomes.push(self.weigher.weigh(&course, self.n));
            self.courses.push(course);
            self.courses.len() - 1
        })
    }

    /// The best course that can be advised.
    pub(super) fn best(&self) -> usize {
        (0..self.courses.len())
            .filter(|i| self.courses[*i].can_be_advised())
            .fold(0, |best, i| {
                if self.outcomes[i].score.mean() > self.outcomes[best].score.mean() {
                    i
                } else {
                    best
                }
            })
    }
}

/// The choices of every block, with and without a test first.
pub(super) struct Menu {
    /// Choices by block, in the order of [`WorkBlock::ALL`].
    pub(super) as_recorded: Vec<Vec<Rc<BlockChoice>>>,
    /// `None` where a test would change nothing.
    pub(super) tested: Option<Vec<Vec<Rc<BlockChoice>>>>,
}

impl Menu {
    pub(super) fn new(rulings: &Rulings, weigher: &Weigher) -> Self {
        let blocks = |tested: Tested| -> Vec<Vec<Rc<BlockChoice>>> {
            WorkBlock::ALL
                .into_iter()
                .map(|b| {
                    rulings
                        .choices(b, tested)
                        .into_iter()
                        .map(Rc::new)
                        .collect()
                })
                .collect()
        };
        Self {
            as_recorded: blocks(Tested::AsRecorded),
            tested: worth_testing(rulings, weigher).then(|| blocks(Tested::First)),
        }
    }

    pub(super) fn of(&self, tested: Tested) -> &[Vec<Rc<BlockChoice>>] {
        match (tested, &self.tested) {
            (Tested::First, Some(blocks)) => blocks,
            _ => &self.as_recorded,
        }
    }
}

/// A test is worth trying if a verdict depends on lead, or if the aim includes food and nothing has passed.
fn worth_testing(rulings: &Rulings, weigher: &Weigher) -> bool {
    let world = weigher.world;
    if not_needed(Treatment::TestLead, world).is_some() {
        return false;
    }
    if world.wants(Treatment::TestLead) || wants_a_pass(weigher) {
        return true;
    }
    WorkBlock::ALL.into_iter().any(|b| {
        rulings.offered(b).into_iter().flatten().any(|t| {
            let allowed = |lead| worst(&rulings.granted(t, lead)).can_be_advised();
            !allowed(None)
                && (allowed(Some(LeadStatus::Absent)) || allowed(Some(LeadStatus::Present)))
        })
    })
}

fn wants_a_pass(weigher: &Weigher) -> bool {
    weigher.world.case.aim.food && !weigher.world.situation.release().passed()
}

/// Whether a tested course needs its test: some step depends on it, or the test itself is wanted.
fn needs_its_test(course: &Course, weigher: &Weigher, rulings: &Rulings) -> bool {
    if wants_a_pass(weigher) || weigher.world.wants(Treatment::TestLead) {
        return true;
    }
    course
        .choices
        .iter()
        .flat_map(|c| &c.steps)
        .any(|t| !worst(&rulings.granted(*t, None)).can_be_advised())
}

/// A choice on the rough sample.
struct Rough {
    choice: Rc<BlockChoice>,
    /// Price factor, cost, originality, fitness, soundness, its addition, and later choice.
    of: [Vec<f64>; 7],
    /// Whether it changes whether food may touch the piece.
    food: bool,
    /// Whether it is part of a price for several treatments together, so that its cost depends on the rest.
    bundled: bool,
}

const VALUE: usize = 0;
const COST: usize = 1;
const ORIGINALITY: usize = 2;
const FITNESS: usize = 3;
const KEEPS: usize = 4;
const EXTRA: usize = 5;
const CHOICE: usize = 6;

fn flat(columns: &Columns, n: usize) -> [Vec<f64>; 7] {
    let levels = [
        &columns.value,
        &columns.cost,
        &columns.originality,
        &columns.fitness,
        &columns.keeps,
        &columns.extra,
        &columns.choice,
    ];
    levels.map(|level| {
        let mut all = vec![0.0; n];
        level.fold_into(&mut all, |_, x| x);
        all
    })
}

/// What the bounds need besides the choices.
struct Bounds<'a> {
    weigher: &'a Weigher<'a>,
    n: usize,
    noise: f64,
    /// Least and greatest slope of the amount kept as a function of the price, in each draw.
    slopes: Vec<(f64, f64)>,
    floor: f64,
}

impl Bounds<'_> {
    /// The least and greatest mean difference in score between `a` and `b`, whatever the rest of the course;
    /// `rest` holds the least and greatest products of the other blocks.
    fn difference(&self, a: &Rough, b: &Rough, rest: &Rest) -> (f64, f64) {
        let (world, n) = (self.weigher.world, self.n);
        let (mut least, mut most) = (0.0, 0.0);
        match world.weights {
            None => {
                for i in 0..n {
                    let (va, vb) = (a.of[VALUE][i], b.of[VALUE][i]);
                    let level = world.draws.level[i] * world.draws.insure_factor;
                    let gap = |other: f64| {
                        level
                            * (at_least(other * va, self.floor) - at_least(other * vb, self.floor))
                    };
                    let (g1, g2) = (gap(rest.value[i].0), gap(rest.value[i].1));
                    let (low, high) = (at_most(g1, g2), at_least(g1, g2));
                    let (s_low, s_high) = self.slopes[i];
                    let paid = a.of[COST][i] - b.of[COST][i];
                    least += low * if low < 0.0 { s_high } else { s_low } - paid;
                    most += high * if high > 0.0 { s_high } else { s_low } - paid;
                }
            }
            Some(w) => {
                let [wo, wf, ws, wc, wr] = w.each();
                let study = world.goal == Goal::Study;
                for i in 0..n {
                    let at = |r: &Rough, what: usize| r.of[what][i];
                    let scaled = |gap: f64, (low, high): (f64, f64)| {
                        (
                            at_most(gap * low, gap * high),
                            at_least(gap * low, gap * high),
                        )
                    };
                    let o = scaled(at(a, ORIGINALITY) - at(b, ORIGINALITY), rest.originality[i]);
                    let f = if study {
                        o
                    } else if a.food || b.food {
                        let high = rest.fitness[i].1;
                        (-at(b, FITNESS) * high, at(a, FITNESS) * high)
                    } else {
                        scaled(at(a, FITNESS) - at(b, FITNESS), rest.fitness[i])
                    };
                    let between = |gap: f64| (at_most(gap, 0.0), at_least(gap, 0.0));
                    let k = between(at(a, KEEPS) - at(b, KEEPS));
                    let e = between(at(a, EXTRA) - at(b, EXTRA));
                    let c = between(at(a, CHOICE) - at(b, CHOICE));
                    let paid = wc * (at(a, COST) - at(b, COST)) / world.cost_scale;
                    least += wo * o.0 + wf * f.0 + ws * (k.0 + e.0) + wr * c.0 - paid;
                    most += wo * o.1 + wf * f.1 + ws * (k.1 + e.1) + wr * c.1 - paid;
                }
            }
        }
        (least / n as f64, most / n as f64)
    }
}

/// The least and greatest product of the other blocks, in each draw.
struct Rest {
    value: Vec<(f64, f64)>,
    originality: Vec<(f64, f64)>,
    fitness: Vec<(f64, f64)>,
}

impl Rest {
    /// The products of all blocks but one. Only what the goal counts is filled in.
    fn of(ends: &[Ends], without: usize, bounds: &Bounds, food: bool) -> Self {
        let product = |of: fn(&Ends) -> &Vec<(f64, f64)>| {
            let mut all = vec![(1.0, 1.0); bounds.n];
            for (_, block) in ends.iter().enumerate().filter(|(b, _)| *b != without) {
                for (end, (low, high)) in all.iter_mut().zip(of(block)) {
                    *end = (end.0 * low, end.1 * high);
                }
            }
            all
        };
        if bounds.weigher.world.weights.is_none() {
            return Self {
                value: product(|ends| &ends.value),
                originality: Vec::new(),
                fitness: Vec::new(),
            };
        }
        let mut fitness = product(|ends| &ends.fitness);
        if food {
            for (least, _) in &mut fitness {
                *least = 0.0;
            }
        }
        Self {
            value: Vec::new(),
            originality: product(|ends| &ends.originality),
            fitness,
        }
    }
}

/// The least and greatest factor of one block, in each draw.
struct Ends {
    value: Vec<(f64, f64)>,
    originality: Vec<(f64, f64)>,
    fitness: Vec<(f64, f64)>,
}

impl Ends {
    /// Only what the goal counts is filled in.
    fn of(block: &[Rough], bounds: &Bounds) -> Self {
        let ends = |what: usize| {
            let mut ends = vec![(f64::INFINITY, f64::NEG_INFINITY); bounds.n];
            for r in block {
                for ((low, high), x) in ends.iter_mut().zip(&r.of[what]) {
                    *low = at_most(*low, *x);
                    *high = at_least(*high, *x);
                }
            }
            ends
        };
        if bounds.weigher.world.weights.is_none() {
            Self {
                value: ends(VALUE),
                originality: Vec::new(),
                fitness: Vec::new(),
            }
        } else {
            Self {
                value: Vec::new(),
                originality: ends(ORIGINALITY),
                fitness: ends(FITNESS),
            }
        }
    }
}

/// Whether `a` can be used wherever `b` can: it needs no more from other blocks and gives them no less.
fn replaces(a: &BlockChoice, b: &BlockChoice) -> bool {
    (0..2).all(|s| a.needs[s] & !b.needs[s] == 0 && b.serves[s] & !a.serves[s] == 0)
}

/// Drops choices until no more can be dropped.
fn eliminate(blocks: &mut [Vec<Rough>], bounds: &Bounds) {
    let n = bounds.n;
    let food = bounds.weigher.world.case.aim.food && bounds.weigher.world.goal == Goal::KeepUse;
    let mut ends: Vec<Ends> = blocks.iter().map(|b| Ends::of(b, bounds)).collect();
    loop {
        let mut gone = false;
        for at in 0..blocks.len() {
            if blocks[at].len() < 2 {
                continue;
            }
            let rest = Rest::of(&ends, at, bounds, food);
            let strong = strongest(&blocks[at], bounds);
            let mut drop = vec![false; blocks[at].len()];
            for (j, b) in blocks[at].iter().enumerate() {
                for k in strong.iter().copied().filter(|k| *k != j && !drop[*k]) {
                    let a = &blocks[at][k];
                    if a.bundled || b.bundled || !replaces(&a.choice, &b.choice) {
                        continue;
                    }
                    let (least, _) = bounds.difference(a, b, &rest);
                    let gentle = (0..n).all(|i| a.of[CHOICE][i] >= b.of[CHOICE][i]);
                    // At least as good and as gentle whatever the rest is, or better by more than the noise.
                    let same = least.abs() < 1e-12 && k > j;
                    if gentle && least >= 0.0 && !same || least > 2.0 * bounds.noise {
                        drop[j] = true;
                        break;
                    }
                }
            }
            if drop.iter().any(|d| *d) {
                let mut place = 0;
                blocks[at].retain(|_| {
                    place += 1;
                    !drop[place - 1]
                });
                ends[at] = Ends::of(&blocks[at], bounds);
                gone = true;
            }
        }
        if !gone {
            return;
        }
    }
}

/// The indices of leaving and of the two choices that do best when all other blocks are left.
fn strongest(block: &[Rough], bounds: &Bounds) -> Vec<usize> {
    let worth: Vec<f64> = block.iter().map(|r| alone(r, bounds)).collect();
    let mut order: Vec<usize> = (0..block.len()).collect();
    order.order_by(|a, b| worth[*b].total_cmp(&worth[*a]));
    let mut strong: Vec<usize> = order.into_iter().take(2).collect();
    let leave = block.iter().position(|r| r.choice.leaves());
    if let Some(leave) = leave
        && !strong.contains(&leave)
    {
        strong.push(leave);
    }
    strong
}

/// An estimate of one choice when all other blocks are left.
fn alone(r: &Rough, bounds: &Bounds) -> f64 {
    let world = bounds.weigher.world;
    match world.weights {
        None => {
            let each = r.of[VALUE].iter().zip(&r.of[COST]).enumerate();
            each.map(|(i, (v, c))| world.draws.level[i] * v * bounds.slopes[i].0 - c)
                .sum()
        }
        Some(w) => {
            let [wo, wf, ws, wc, wr] = w.each();
            (0..bounds.n)
                .map(|i| {
                    wo * r.of[ORIGINALITY][i]
                        + wf * r.of[FITNESS][i]
                        + ws * (r.of[KEEPS][i] + r.of[EXTRA][i])
                        - wc * r.of[COST][i] / world.cost_scale
                        + wr * r.of[CHOICE][i]
                })
                .sum()
        }
    }
}

/// Finds and weighs the courses to compare. `n` is the number of draws of the whole sample.
pub(super) fn search(tally: &mut Tally, menu: &Menu, least_noise: f64) -> bool {
    let (weigher, rulings, n) = (tally.weigher, tally.rulings, tally.n);
    let world = weigher.world;
    let rough = ROUGH.min(n);
    let draws = world.draws;
    let bounds = Bounds {
        weigher,
        n: rough,
        noise: least_noise,
        floor: world.ledger.value(FigureId::VALUE_FLOOR).clamp(0.0, 1.0),
        slopes: (0..rough)
            .map(|i| match world.goal {
                Goal::Sell => draws.selling.slopes(draws.route, &draws.fees.at(i)),
                _ => (1.0, 1.0),
            })
            .collect(),
    };
    let bundled: Vec<Treatment> = world
        .prices
        .bundles()
        .flat_map(|quoted| {
            let cleaning = quoted.with_cleaning.then_some([
                Treatment::Wash,
                Treatment::Clean,
                Treatment::Foam,
            ]);
            quoted
                .treatments
                .iter()
                .copied()
                .chain(cleaning.into_iter().flatten())
                .collect::<Vec<_>>()
        })
        .collect();
    let mut cut = false;
    let mut found: Vec<(f64, Course)> = Vec::new();
    let switches = [
        Some(Tested::AsRecorded),
        menu.tested.is_some().then_some(Tested::First),
    ];
    for tested in switches.into_iter().flatten() {
        let mut blocks: Vec<Vec<Rough>> = menu
            .of(tested)
            .iter()
            .map(|block| {
                block
                    .iter()
                    .map(|choice| Rough {
                        of: flat(&weigher.merged(choice.block, &choice.sides, rough), rough),
                        food: choice.steps.iter().any(|t| {
                            matches!(
                                t,
                                Treatment::Tinning
                                    | Treatment::LowMelt
                                    | Treatment::RemoveLead
                                    | Treatment::Replate
                                    | Treatment::Overplate
                                    | Treatment::Solder
                                    | Treatment::Lacquer
                                    | Treatment::Regild
                            )
                        }) && world.case.aim.food,
                        bundled: choice.steps.iter().any(|t| bundled.contains(t)),
                        choice: Rc::clone(choice),
                    })
                    .collect()
            })
            .collect();
        if draws.damping >= 1.0 {
            eliminate(&mut blocks, &bounds);
        }
        let count: usize = blocks.iter().map(Vec::len).product();
        if count > MOST_COURSES {
            cut = true;
            for block in &mut blocks {
                let strong = strongest(block, &bounds);
                let mut place = 0;
                block.retain(|_| {
                    place += 1;
                    strong.iter().take(FEW).any(|s| *s == place - 1)
                });
            }
        }
        for choices in product(&blocks) {
            let course = Course::of(choices, tested, rulings);
            let idle = tested == Tested::First && !needs_its_test(&course, weigher, rulings);
            if idle || !course.can_be_advised() {
                continue;
            }
            found.push((mean(&weigher.score(&course, rough)), course));
        }
    }
    found.order_by(|a, b| b.0.total_cmp(&a.0));
    let best = found.first().map_or(0.0, |f| f.0);
    for (place, (score, course)) in found.into_iter().enumerate() {
        if place < BEST || (place < MOST_BEST && score >= best - 2.0 * least_noise) {
            tally.place(course);
        }
    }
    cut
}

/// Every course with one choice in each block.
fn product(blocks: &[Vec<Rough>]) -> Vec<Vec<Rc<BlockChoice>>> {
    let mut all: Vec<Vec<Rc<BlockChoice>>> = vec![Vec::new()];
    for block in blocks {
        let longer = all.iter().flat_map(|course| {
            block.iter().map(|r| {
                let mut next = course.clone();
                next.push(Rc::clone(&r.choice));
                next
            })
        });
        all = longer.collect();
    }
    all
}

/// Weighs every change of one choice in the best course, tested or not; a change that beats it replaces it.
pub(super) fn improve(tally: &mut Tally, menu: &Menu) {
    for _ in 0..ROUNDS {
        let best = tally.best();
        changes_of(tally, menu, best);
        if tally.best() == best {
            return;
        }
    }
}

/// The indices of every course that differs from this one in one block, or in whether a test comes first, and
/// that can be advised.
pub(super) fn changes_of(tally: &mut Tally, menu: &Menu, of: usize) -> Vec<(WorkBlock, usize)> {
    let course = tally.courses[of].clone();
    let mut changes = Vec::new();
    for block in menu.of(course.tested) {
        for choice in block {
            let change = course.with(choice, tally.rulings);
            let idle = change.tested == Tested::First
                && !needs_its_test(&change, tally.weigher, tally.rulings);
            if change.can_be_advised() && !idle && !change.same_as(&course) {
                changes.push((choice.block, tally.place(change)));
            }
        }
    }
    if menu.tested.is_some() {
        let other = match course.tested {
            Tested::AsRecorded => Tested::First,
            Tested::First => Tested::AsRecorded,
        };
        let steps: Vec<Treatment> = course.steps.clone();
        let switched = course_of(&steps, other, tally.rulings);
        let idle =
            other == Tested::First && !needs_its_test(&switched, tally.weigher, tally.rulings);
        if switched.can_be_advised() && !idle {
            changes.push((WorkBlock::Test, tally.place(switched)));
        }
    }
    changes
}

/// The course with these steps, whatever the rules say about it.
pub(super) fn course_of(steps: &[Treatment], tested: Tested, rulings: &Rulings) -> Course {
    let choices = WorkBlock::ALL
        .into_iter()
        .map(|block| {
            let own: Vec<Treatment> = steps
                .iter()
                .copied()
                .filter(|t| WorkBlock::of_treatment(*t) == Some(block))
                .collect();
            Rc::new(rulings.choice(block, &own, tested))
        })
        .collect();
    Course::of(choices, tested, rulings)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::counsel::Solved;
    use crate::counsel::advise::choose;
    use crate::counsel::weights::Weights;
    use crate::record::Draft;
    use serde_json::{Value, json};

    /// A small random number generator, so that a seed always gives the same piece.
    struct Dice(u64);

    impl Dice {
        fn below(&mut self, most: u64) -> u64 {
            self.0 = self
                .0
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            (self.0 >> 33) % most
        }

        fn one<'a>(&mut self, of: &[&'a str]) -> &'a str {
            of[usize::try_from(self.below(of.len() as u64)).unwrap_or(0)]
        }
    }

    /// An invented piece with a few faults.
    fn piece(seed: u64) -> Value {
        let mut dice = Dice(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) + 1);
        let kinds: [&[&str]; 4] = [
            &["M01", "S04", "C09"],
            &["C01", "C06", "C08", "S03"],
            &["C12", "M09", "S02", "S03"],
            &["M02", "S05", "C04"],
        ];
        let kind = kinds[usize::try_from(dice.below(4)).unwrap_or(0)];
        let findings: Vec<Value> = kind
            .iter()
            .map(|id| json!({"id": id, "answer": "seen"}))
            .collect();
        let mut body = json!({
            "part": "body",
            "bleed": dice.one(&["none", "slight", "some", "much"]),
            "tarnish": dice.one(&["bright", "faint_yellow", "brown", "black"]),
            "joint": dice.one(&["sound", "sound", "leaking", "open"]),
        });
        if dice.below(2) == 0 {
            body["dents"] = dice.one(&["minor", "moderate", "split"]).into();
        }
        if dice.below(3) == 0 {
            body["lead"] = dice.one(&["present", "absent"]).into();
        }
        let mut parts = vec![body];
        match dice.below(5) {
            0 => parts.push(json!({"part": "handle", "joint": "open"})),
            1 => parts.push(json!({"part": "finial", "loss": dice.one(&["small", "large"])})),
            2 => parts.push(json!({"part": "spout", "joint": "grey_repair", "bleed": "much"})),
            3 => parts.push(json!({"part": "foot", "bleed": 0.4})),
            _ => {}
        }
        let likely = [40, 90, 250, 700, 2500, 9000][usize::try_from(dice.below(6)).unwrap_or(0)];
        let mut case = json!({
            "format": "leavewell-case",
            "version": 1,
            "piece": {"form": dice.one(&["teapot", "tray", "tankard", "tureen"])},
            "findings": findings,
            "parts": parts,
            "aim": {"goal": dice.one(&["sell", "keep_show", "keep_use", "insure"])},
            "market": {"low": likely * 2 / 3, "likely": likely, "high": likely * 3 / 2, "currency": "GBP"},
        });
        if dice.below(3) == 0 {
            case["quotes"] = json!([{
                "treatment": dice.one(&["T08", "T09", "T14a", "T12", "T16"]),
                "likely": 20 + dice.below(400),
            }]);
        }
        case
    }

    fn solved(case: &Value, log2_points: u32) -> Solved {
        let (case, problems) = Draft::parse(&case.to_string()).unwrap().read();
        assert_eq!(problems, []);
        Solved::of(&case, log2_points)
    }

    /// How many pieces are tried: a few by default, or the number that the environment sets.
    fn pieces() -> u64 {
        let asked = std::env::var("LEAVEWELL_PIECES").ok();
        asked.and_then(|n| n.parse().ok()).unwrap_or(16)
    }

    #[test]
    fn the_search_finds_what_weighing_every_course_finds() {
        for seed in 0..pieces() {
            let case = piece(seed);
            let solved = solved(&case, 6);
            let situation = solved.situation();
            let weights = Weights::of(&solved.case.aim);
            let world = solved.world(&solved.draws, &situation, weights);
            let rulings = Rulings::new(&world);
            let weigher = Weigher::new(&world);
            let menu = Menu::new(&rulings, &weigher);
            let n = world.draws.n;
            let mut all: Vec<Course> = vec![course_of(&[], Tested::AsRecorded, &rulings)];
            for tested in [Tested::AsRecorded, Tested::First] {
                if tested == Tested::First && menu.tested.is_none() {
                    continue;
                }
                let mut lists: Vec<Vec<Rc<BlockChoice>>> = vec![Vec::new()];
                for block in menu.of(tested) {
                    lists = lists
                        .into_iter()
                        .flat_map(|list| {
                            block.iter().map(move |choice| {
                                let mut next = list.clone();
                                next.push(Rc::clone(choice));
                                next
                            })
                        })
                        .collect();
                }
                for list in lists {
                    let course = Course::of(list, tested, &rulings);
                    let idle =
                        tested == Tested::First && !needs_its_test(&course, &weigher, &rulings);
                    if course.can_be_advised() && !idle {
                        all.push(course);
                    }
                }
            }
            let outcomes: Vec<CourseOutcome> = all.iter().map(|c| weigher.weigh(c, n)).collect();
            let (chosen, noise) = choose(&all, &outcomes, world.draws, world.goal, world.ledger);
            let found = &solved.courses[solved.advice.chosen];
            let best = |outcomes: &[CourseOutcome], courses: &[Course]| {
                courses
                    .iter()
                    .zip(outcomes)
                    .filter(|(c, _)| c.can_be_advised())
                    .map(|(_, o)| o.score.mean())
                    .fold(f64::NEG_INFINITY, f64::max)
            };
            let (all_best, found_best) = (
                best(&outcomes, &all),
                best(&solved.outcomes, &solved.courses),
            );
            assert!(
                (all_best - found_best).abs() < 1e-9,
                "seed {seed}: {all_best} against {found_best}, {case}"
            );
            assert!(
                (noise - solved.advice.noise).abs() < 1e-9 || found.same_as(&all[chosen]),
                "seed {seed}: noise {noise} against {}, {case}",
                solved.advice.noise
            );
            assert_eq!(
                found.steps,
                all[chosen].steps,
                "seed {seed} of {}: {case}",
                all.len()
            );
        }
    }

    #[test]
    fn another_treatment_never_lowers_the_best() {
        for seed in 0..pieces().min(200) {
            let case = piece(seed);
            let solved = solved(&case, 6);
            let situation = solved.situation();
            let weights = Weights::of(&solved.case.aim);
            let world = solved.world(&solved.draws, &situation, weights);
            let rulings = Rulings::new(&world);
            let weigher = Weigher::new(&world);
            let best_without = |treatment: Option<Treatment>| {
                let mut menu = Menu::new(&rulings, &weigher);
                let tested = menu.tested.iter_mut().flatten();
                for block in menu.as_recorded.iter_mut().chain(tested) {
                    block.retain(|choice| treatment.is_none_or(|t| !choice.steps.contains(&t)));
                }
                let mut tally = Tally {
                    weigher: &weigher,
                    rulings: &rulings,
                    n: world.draws.n,
                    courses: Vec::new(),
                    outcomes: Vec::new(),
                };
                tally.place(course_of(&[], Tested::AsRecorded, &rulings));
                search(&mut tally, &menu, 0.0);
                improve(&mut tally, &menu);
                tally.outcomes[tally.best()].score.mean()
            };
            let best = best_without(None);
            for t in Treatment::WEIGHED {
                let fewer = best_without(Some(t));
                assert!(
                    fewer <= best + 1e-9,
                    "seed {seed}: {fewer} without {}, {best} with it: {case}",
                    t.id()
                );
            }
        }
    }

    #[test]
    fn leaving_and_keeping_are_always_listed_and_nothing_barred_is_advised() {
        for seed in 0..pieces().min(200) {
            let case = piece(seed);
            let solved = solved(&case, 10);
            let report = solved.report(Vec::new());
            for steps in [Treatment::Leave, Treatment::Keeping] {
                assert!(
                    report.courses.iter().any(|c| c.steps == [steps]),
                    "seed {seed}: {steps:?}"
                );
            }
            assert!(report.courses.len() <= 16);
            assert!(report.courses[0].barred.is_empty(), "seed {seed}");
            assert_eq!(report.courses[0].steps, report.counsel.steps);
            // No course contains a step that is not needed.
            for c in &report.courses {
                for t in c.steps.iter().filter(|t| **t != Treatment::Wash) {
                    let option = report.options.iter().find(|o| o.treatment == *t).unwrap();
                    assert!(option.needed, "seed {seed}: {t:?} in {:?}", c.steps);
                }
            }
        }
    }

    #[test]
    fn a_higher_quote_never_makes_its_step_advised() {
        for seed in 0..pieces().min(200) {
            let mut advised: Option<bool> = None;
            for price in [20, 80, 300, 1200] {
                let mut case = piece(seed);
                case["quotes"] = json!([{"treatment": "T08", "likely": price}]);
                let solved = solved(&case, 8);
                let now = solved.courses[solved.advice.chosen]
                    .steps
                    .contains(&Treatment::Dents);
                assert!(!now || advised != Some(false), "seed {seed}: at {price}");
                advised = Some(now);
            }
        }
    }
}
