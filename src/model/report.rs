//! The answer as plain data: what the screens, the sheets and the JSON are made from.
//!
//! Invariant: everything here is computed in this crate; whoever shows it adds nothing.

use serde::ser::SerializeStruct;
use serde::{Deserialize, Serialize, Serializer};

use crate::ledger::Level;
use crate::record::Problem;
pub use crate::terms::Text;

/// Everything the model says about one case.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct Report {
    /// What it is.
    pub identity: IdentityReport,
    /// How much silver is left.
    pub silver: SilverReport,
    /// What it is worth as it is.
    pub value: ValueReport,
    /// Each treatment a person may ask about, with what the guards say.
    pub options: Vec<OptionReport>,
    /// The plans worth comparing, best first; barred ones last. Sixteen at most.
    pub courses: Vec<CourseReport>,
    /// Every fault that was recorded.
    pub faults: Vec<FaultReport>,
    /// The person's own proposal, where there is one.
    pub proposal: Option<ProposalReport>,
    /// The pieces of a record of several. JSON has it for several alone; between the app and its workers it does
    /// not travel, since what a screen shows of it stands in sentences.
    #[serde(skip_deserializing)]
    pub pieces: Option<PiecesReport>,
    /// The advice.
    pub counsel: CounselReport,
    /// Cautions for what is named, most serious first.
    pub cautions: Vec<CautionReport>,
    /// Whether it is for display only.
    pub display_only: DisplayOnly,
    /// What in the case could not be used.
    pub problems: Vec<Problem>,
    /// Seed of the sample.
    pub seed: u32,
    /// Version of the figures.
    pub ledger_version: String,
}

impl Serialize for Report {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let with_pieces = self.pieces.is_some() && serializer.is_human_readable();
        let fields = 14 + usize::from(with_pieces);
        let mut report = serializer.serialize_struct("Report", fields)?;
        report.serialize_field("identity", &self.identity)?;
        report.serialize_field("silver", &self.silver)?;
        report.serialize_field("value", &self.value)?;
        report.serialize_field("options", &self.options)?;
        report.serialize_field("courses", &self.courses)?;
        report.serialize_field("faults", &self.faults)?;
        report.serialize_field("proposal", &self.proposal)?;
        if with_pieces {
            report.serialize_field("pieces", &self.pieces)?;
        }
        report.serialize_field("counsel", &self.counsel)?;
        report.serialize_field("cautions", &self.cautions)?;
        report.serialize_field("display_only", &self.display_only)?;
        report.serialize_field("problems", &self.problems)?;
        report.serialize_field("seed", &self.seed)?;
        report.serialize_field("ledger_version", &self.ledger_version)?;
        report.end()
    }
}

/// Several pieces: what they come to together and apart, once the advised work is done.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PiecesReport {
    /// How many.
    pub count: u16,
    /// What they are to each other: the id of a `Relation`.
    pub relation: Text,
    /// How they are weighed: `together` or `apart`.
    pub sell: Text,
    /// What the whole gains over single pieces; 1 where they do not belong together.
    pub premium: f64,
    /// Each piece, alike ones of a large number together.
    pub each: Vec<PieceReport>,
    /// As one lot.
    pub together: LotsReport,
    /// Each by itself.
    pub apart: LotsReport,
    /// The division into lots that leaves a seller most: the numbers of the pieces in each.
    pub lots: Vec<Vec<u16>>,
    /// What that leaves.
    pub lots_keep: f64,
    /// Together or apart, with the sums; empty unless they are to be sold.
    pub sentence: String,
    /// The faults that are not on every piece.
    pub faults: Vec<FaultOn>,
}

/// One of several pieces.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PieceReport {
    /// Its number, or the numbers of several alike.
    pub numbers: Vec<u16>,
    /// Its share of the value of the whole, 0 to 1.
    pub share: f64,
    /// What condition leaves of it, median.
    pub left: f64,
}

/// What several pieces come to by one way of selling them.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct LotsReport {
    /// At hammer level.
    pub hammer: Band,
    /// What a seller keeps of that by the route chosen.
    pub kept: Band,
}

/// A fault that is on some pieces and not on others.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FaultOn {
    /// Id of the fault.
    pub fault: Text,
    /// The numbers of the pieces.
    pub pieces: Vec<u16>,
}

/// Median with the band that holds 8 draws in 10.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Band {
    /// 10th percentile.
    pub p10: f64,
    /// Median.
    pub p50: f64,
    /// 90th percentile.
    pub p90: f64,
}

/// A band with its mean.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct BandMean {
    /// 10th percentile.
    pub p10: f64,
    /// Median.
    pub p50: f64,
    /// 90th percentile.
    pub p90: f64,
    /// Mean.
    pub mean: f64,
}

/// What it is, how sure, and when it was made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct IdentityReport {
    /// One plain sentence.
    pub sentence: String,
    /// Nothing was looked at or read yet, so that every share below is the prior and no answer.
    pub nothing_found: bool,
    /// How the body was made: the likeliest answer.
    pub body: SettledReport,
    /// What silver is on it now: the likeliest answer.
    pub skin: SettledReport,
    /// Every kind, most likely first.
    pub kinds: Vec<KindReport>,
    /// Probability of each family.
    pub families: Families,
    /// The families with intervals, most likely first.
    pub family_bars: Vec<FamilyReport>,
    /// When it was made; absent when nothing was found, or when the findings leave no year possible.
    pub dates: Option<DateReport>,
    /// Where the years given for it do not fit what was found.
    pub date_conflicts: Vec<String>,
    /// Findings that do not fit together.
    pub contradictions: Vec<ContradictionReport>,
    /// At most two looks that part what is still possible, the least effort first.
    pub parting: Vec<PartingReport>,
    /// What these looks will probably leave open, and the reading that tells more.
    pub open: Option<String>,
    /// What to look at next, most useful first.
    pub next_looks: Vec<NextLook>,
    /// How far each answer and each reading moved the leading family.
    pub pushes: Vec<PushReport>,
    /// Readings with a number, and how far each moved every family.
    pub measures: Vec<MeasureReport>,
    /// Words of the typed marks that mean something and are neither confirmed nor put aside, so that
    /// they count for nothing.
    pub unconfirmed: Vec<String>,
}

/// One reading with a number.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MeasureReport {
    /// `density`, `conductivity` or `xray`.
    pub id: Text,
    /// What was measured.
    pub title: Text,
    /// What was read and what it means.
    pub text: String,
    /// It is counted.
    pub counts: bool,
    /// How far it moved each family; empty when it is not counted.
    pub pushes: Vec<FamilyPush>,
}

/// How far one reading moved one family.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct FamilyPush {
    /// Family id.
    pub family: Text,
    /// Change of its log-odds (natural logarithm) when the reading is added last.
    pub log_odds: f64,
}

/// The likeliest family once a look has been taken.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct AfterLook {
    /// Family id.
    pub family: Text,
    /// In words.
    pub name: Text,
    /// Its probability then.
    pub p: f64,
    /// The answer says something; a mark that is not there does not.
    pub tells: bool,
}

/// One of the two questions behind a kind, with how far it is settled.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SettledReport {
    /// The likeliest answer.
    pub name: Text,
    /// Probability.
    pub p: f64,
    /// Least over the three ladders.
    pub low: f64,
    /// Greatest over the three ladders.
    pub high: f64,
    /// Settled: four in five or more on every ladder.
    pub settled: bool,
    /// In one sentence.
    pub sentence: String,
}

/// Probability of each family; they sum to 1.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Families {
    /// Solid silver.
    pub solid: f64,
    /// Fused plate with its original surface.
    pub fused: f64,
    /// Fused plate, electroplated later.
    pub replated_fused: f64,
    /// Close plate.
    pub close: f64,
    /// French plate.
    pub french: f64,
    /// Electroplate of any sort.
    pub electroplate: f64,
    /// Outside these kinds.
    pub outside: f64,
}

/// One kind with its probability.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct KindReport {
    /// Code, such as `FPD`.
    pub kind: Text,
    /// In words.
    pub name: Text,
    /// Probability.
    pub p: f64,
    /// Least over the three ladders.
    pub low: f64,
    /// Greatest over the three ladders.
    pub high: f64,
}

/// One family with its probability.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FamilyReport {
    /// Id, such as `fused`.
    pub family: Text,
    /// In words.
    pub name: Text,
    /// What the words mean.
    pub meaning: Text,
    /// Probability.
    pub p: f64,
    /// Least over the three ladders.
    pub low: f64,
    /// Greatest over the three ladders.
    pub high: f64,
}

/// When it was made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DateReport {
    /// 1 in 20 that it is earlier, over all kinds.
    pub from: u16,
    /// 1 in 20 that it is later, over all kinds; not worth saying where `open`.
    pub to: u16,
    /// It may have been made lately, so that the end is said as "or later".
    pub open: bool,
    /// What sets the ends.
    pub reasons: Vec<String>,
    /// The years of the leading family, then of others that are well possible and have other years.
    pub by_family: Vec<FamilyDates>,
    /// The years hang on the family, so that each is named with its own.
    pub is_conditional: bool,
    /// Whose years helped to narrow these: "the years given by the seller".
    pub given: Option<Text>,
}

/// When it was made if it is of one family.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FamilyDates {
    /// The family in words, and others with much the same years.
    pub names: Vec<Text>,
    /// 1 in 20 that it is earlier.
    pub from: u16,
    /// 1 in 20 that it is later; not worth saying where `open`.
    pub to: u16,
    /// It may have been made lately, so that the end is said as "or later".
    pub open: bool,
}

impl FamilyDates {
    /// The years in words: "1852 or later" where they reach our own days, else "1763 to 1847".
    #[must_use]
    pub fn in_words(&self) -> String {
        if self.open {
            format!("{} or later", self.from)
        } else {
            format!("{} to {}", self.from, self.to)
        }
    }

    /// Whether either end is more than `years` from the other's.
    pub(crate) fn differ(&self, other: &Self, years: f64) -> bool {
        let apart = |a: u16, b: u16| f64::from(a.abs_diff(b)) > years;
        let ends = match (self.open, other.open) {
            (true, true) => false,
            (false, false) => apart(self.to, other.to),
            _ => true,
        };
        apart(self.from, other.from) || ends
    }
}

impl DateReport {
    /// The years in words: "1852 or later", or with each family that the years hang on "1763 to 1847 if
    /// it is fused plate, 1852 or later if it is electroplate".
    #[must_use]
    pub fn in_words(&self) -> String {
        let years: Vec<String> = self
            .by_family
            .iter()
            .map(|f| {
                if self.is_conditional {
                    let names: Vec<&str> = f.names.iter().map(|name| name.get()).collect();
                    format!("{} if it is {}", f.in_words(), names.join(" or "))
                } else {
                    f.in_words()
                }
            })
            .collect();
        years.join(", ")
    }

    /// Whether every end that is shown is open.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.by_family.iter().all(|f| f.open)
    }
}

/// Two things that do not fit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ContradictionReport {
    /// The two finding ids.
    pub findings: [Text; 2],
    /// What does not fit, and what may explain it.
    pub text: String,
    /// They were seen on different parts, so a married piece is offered first.
    pub different_parts: bool,
}

/// A look not taken yet.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct NextLook {
    /// Finding id.
    pub finding: Text,
    /// What it is worth to this decision, in the case's currency, after the effort.
    pub worth: f64,
    /// Expected information about the kind.
    pub bits: f64,
    /// What to look for.
    pub title: Text,
    /// How to look.
    pub how: Text,
    /// What one needs.
    pub needs: Text,
    /// What it would then most likely be, if it is seen.
    pub if_seen: AfterLook,
    /// What it would then most likely be, if it is looked for and not there.
    pub if_absent: AfterLook,
}

/// A look that parts what is still possible.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PartingReport {
    /// Finding id.
    pub finding: Text,
    /// What to look for.
    pub title: Text,
    /// How to look.
    pub how: Text,
    /// What it would then most likely be, if it is seen.
    pub if_seen: AfterLook,
    /// What it would then most likely be, if it is looked for and not there.
    pub if_absent: AfterLook,
}

/// How far one answer or reading moved the leading family.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PushReport {
    /// Finding id, or the id of a reading.
    pub finding: Text,
    /// What was looked for.
    pub title: Text,
    /// `seen` or `absent`.
    pub answer: Text,
    /// Change of log-odds (natural logarithm) of the leading family when this answer is added last.
    pub log_odds: f64,
}

/// Silver left, by part.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SilverReport {
    /// Each part of the case, body first.
    pub parts: Vec<PartReport>,
    /// Area still covered, at the low end of the bleed, by area; parts nobody looked at are judged by
    /// the others.
    pub covered_area: f64,
    /// Share of the area that was looked at.
    pub looked_area: f64,
}

/// One part's silver.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PartReport {
    /// Part id.
    pub part: Text,
    /// Part in words, with the pieces where it is that of some.
    pub name: String,
    /// Mean thickness left, micrometres; absent for solid silver.
    pub left_um: Option<Band>,
    /// Median share of the first silver that is left.
    pub left_fraction: Option<f64>,
    /// Share of the part where base metal shows, median.
    pub bleed: f64,
    /// Gentle cleanings until twice as much shows.
    pub cleanings_to_double: Option<Band>,
    /// The same in words.
    pub words: String,
}

/// What it is worth, as it is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ValueReport {
    /// What an undamaged one would be knocked down for, chance of the sale included.
    pub undamaged: Band,
    /// As it is, at hammer level.
    pub as_it_is: Band,
    /// What a seller keeps of that after fees (the same as above on a private sale).
    pub net_as_it_is: Band,
    /// The figures come from class medians, not from the person.
    pub assumed: bool,
    /// Currency id.
    pub currency: Text,
    /// Always shown beside a value.
    pub label: Text,
}

/// What the guards say of one treatment by itself.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OptionReport {
    /// Treatment id.
    pub treatment: Text,
    /// In trade words.
    pub name: Text,
    /// What is done, for an owner.
    pub plain: Text,
    /// `allowed`, `conditional`, `needs_check`, `needs_opinion`, `barred`, `not_needed` or `never`.
    pub outcome: Text,
    /// It has something to do.
    pub needed: bool,
    /// Why not needed, when it is not.
    pub not_needed: Option<String>,
    /// Every guard that speaks.
    pub verdicts: Vec<VerdictReport>,
    /// What is gone for good.
    pub lost: Text,
    /// One question to ask.
    pub ask: Text,
    /// Who may do it.
    pub who: Text,
    /// Reversibility code.
    pub reversibility: Text,
    /// Reversibility in words.
    pub reversibility_words: Text,
    /// Cost band, in the case's currency.
    pub cost: Band,
    /// A quote was given.
    pub quoted: bool,
}

/// What one guard says.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct VerdictReport {
    /// Guard id, such as `H14`.
    pub guard: Text,
    /// `conditional`, `needs_check`, `needs_opinion` or `barred`.
    pub outcome: Text,
    /// Why.
    pub reason: String,
    /// What would lift it.
    pub lifted_by: String,
}

/// One plan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CourseReport {
    /// Treatment ids in order.
    pub steps: Vec<Text>,
    /// In words.
    pub name: String,
    /// Why it cannot be advised; empty when it can.
    pub barred: Vec<VerdictReport>,
    /// Conditions that go with it.
    pub conditions: Vec<VerdictReport>,
    /// Money kept after everything, absolute.
    pub net: BandMean,
    /// The same against leaving it as it is.
    pub net_gain: BandMean,
    /// Share of draws in which nothing else beats it by more than the noise.
    pub p_best: f64,
    /// Share of draws in which it leaves less money than leaving it alone.
    pub p_loss: f64,
    /// Originality kept, 0 to 1.
    pub originality: f64,
    /// Fitness for the aim, 0 to 1.
    pub fitness: f64,
    /// Lasting stability, 0 to 1.
    pub stability: f64,
    /// Worth for the aim, 0 to 1; for a seller the same order as money.
    pub score: f64,
    /// Worst reversibility code.
    pub reversibility: Text,
    /// Worst reversibility in words.
    pub reversibility_words: Text,
    /// Cost band.
    pub cost: Band,
    /// Mean of the worst tenth of net gains.
    pub tail_mean: f64,
    /// The most to pay for the piece if this is done and it is sold on; absent unless it is to be sold.
    pub most_to_pay: Option<f64>,
    /// Greatest regret.
    pub regret: f64,
    /// What is gone for good.
    pub lost: Vec<Text>,
    /// Each step of a course of several, with what leaving it out does.
    pub each: Vec<StepReport>,
}

/// One step of a course.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct StepReport {
    /// Treatment id.
    pub step: Text,
    /// Mean score without the step less the mean score with it: money for a seller, score for a keeper.
    pub without: f64,
}

/// One fault.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FaultReport {
    /// Id, such as `loose_part`.
    pub fault: Text,
    /// In a few words, with the pieces it is on where that is not all of several.
    pub name: String,
    /// The parts it was recorded on.
    pub parts: Vec<Text>,
    /// The worse of two sizes, where the fault has two.
    pub large: bool,
    /// Mean factor on the price with this fault alone.
    pub price_left: f64,
    /// Treatments that answer it, gentlest first.
    pub answers: Vec<Text>,
    /// The advice leaves it.
    pub left: bool,
}

/// The person's own plan, weighed at its own prices.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ProposalReport {
    /// The plan as far as it can be weighed.
    pub course: CourseReport,
    /// What was left out of it and why, and what has to come first.
    pub problems: Vec<String>,
}

/// The one contrast that goes with the advice.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ContrastReport {
    /// `asked`, `advised`, `leaving`, `fault`, `runner_up`, `barred`, `not_needed` or `never`.
    pub kind: Text,
    /// What it is about; empty for leaving.
    pub steps: Vec<Text>,
    /// What that costs, a test for lead apart: as typed where quoted, else the middle of our range.
    pub price: Option<f64>,
    /// Every step of it is quoted.
    pub quoted: bool,
    /// What a test for lead first would cost, where one is needed.
    pub test: Option<f64>,
    /// Mean money against what is advised, in the case's currency.
    pub gain: f64,
    /// Points of score in 100 against what is advised; money for a seller, times 100.
    pub points: f64,
    /// What keeps it out.
    pub verdict: Option<VerdictReport>,
    /// In one sentence, as it stands in the answer.
    pub sentence: String,
}

/// The advice.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CounselReport {
    /// The course advised.
    pub steps: Vec<Text>,
    /// `clear`, `leaning` or `open`.
    pub firmness: Text,
    /// The answer and its contrast, in a few sentences.
    pub sentence: String,
    /// The contrast by itself.
    pub contrast: Option<ContrastReport>,
    /// How firm, in one sentence.
    pub firmness_words: String,
    /// Why.
    pub reasons: Vec<ReasonReport>,
    /// What keeps the answer from being firmer.
    pub doubts: Vec<String>,
    /// What would change it.
    pub would_change: Vec<ChangeReport>,
    /// A specialist should see it first.
    pub refer: bool,
    /// Why.
    pub refer_why: Vec<String>,
    /// The most that knowing the kind for certain could be worth, in the case's currency.
    pub worth_of_kind: f64,
    /// Differences below this are noise, in the case's currency (for a seller) or points of score.
    pub noise: f64,
    /// Where to sell it; absent unless it is to be sold.
    pub selling: Option<SellingReport>,
}

/// Where to sell a piece once what is advised is done.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct SellingReport {
    /// Every way.
    pub routes: Vec<RouteReport>,
    /// The id of the way that brings most, of those open to the seller, as money is worth today.
    pub best: Text,
    /// In words.
    pub sentence: String,
    /// What a buyer of one's own would have to offer, where that is worth saying; may be empty.
    pub besides: String,
    /// Reserve to agree with the auction house, where the auction is best.
    pub reserve: Option<f64>,
    /// What to write on the ticket, for who sells from a shop or a stand.
    pub ticket: Option<f64>,
}

/// One way to sell it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RouteReport {
    /// Its id, such as `auction`.
    pub route: Text,
    /// In words.
    pub name: Text,
    /// What the seller keeps.
    pub kept: Band,
    /// Months until the money is there; absent where nobody can say.
    pub months: Option<f64>,
}

/// One reason.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ReasonReport {
    /// Stable code.
    pub code: Text,
    /// In words.
    pub text: String,
    /// Amount in the case's currency, where there is one.
    pub amount: Option<f64>,
}

/// Where the answer flips.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ChangeReport {
    /// `value`, `cost`, `bleed` or `fused`.
    pub input: Text,
    /// The input in words.
    pub name: String,
    /// Where it is now.
    pub now: f64,
    /// Where the answer flips; absent when it does not.
    pub flips_at: Option<f64>,
    /// To which course.
    pub to_steps: Vec<Text>,
    /// In words.
    pub text: String,
}

/// The answer with one input moved and everything else as it is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MovedReport {
    /// `value`, `cost`, `bleed` or `fused`.
    pub input: Text,
    /// How far it was moved, from [`MOST_MOVED`] steps down to as many up; 0 is where it stands.
    pub step: i8,
    /// Where it is then.
    pub at: f64,
    /// The advice then.
    pub steps: Vec<Text>,
    /// The advice then, in one sentence.
    pub sentence: String,
    /// `clear`, `leaning` or `open`.
    pub firmness: Text,
}

/// Steps an input can be moved to either side.
pub const MOST_MOVED: i8 = 10;

/// A caution.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct CautionReport {
    /// Stable id.
    pub id: String,
    /// How serious.
    pub level: Level,
    /// What it is about, in few words.
    pub about: String,
    /// The words.
    pub text: String,
}

/// Whether it may hold food or drink.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct DisplayOnly {
    /// For display only.
    pub yes: bool,
    /// Which triggers, in words.
    pub why: Vec<String>,
    /// The label to put on it.
    pub label: Text,
}

impl Report {
    /// The most to pay for the piece if what is advised is done; `None` unless it is to be sold.
    #[must_use]
    pub fn most_to_pay(&self) -> Option<f64> {
        let advised = self.courses.iter().find(|c| c.steps == self.counsel.steps);
        advised.and_then(|course| course.most_to_pay)
    }
}
