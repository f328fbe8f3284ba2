//! The answer as plain data: what the screens, the sheets and the JSON are made from.
//!
//! Invariant: everything here is computed in this crate; a caller that displays it adds nothing.

use serde::ser::SerializeStruct;
use serde::{Deserialize, Serialize, Serializer};

use crate::ledger::{EvidenceId, FindingId, Ground, Level, ReadingOf};
use crate::record::Problem;
pub use crate::terms::Text;
use crate::terms::{
    Currency, Family, Fault, Firmness, Input, Kind, Outcome, PartName, Relation, Reversibility,
    Route, SellAs, Treatment, TreatmentSet, any_of,
};

/// Everything the model says about one case.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub struct Report {
    /// What the piece is.
    pub identity: IdentityReport,
    /// How much silver is left.
    pub silver: SilverReport,
    /// What the piece is worth as it is.
    pub value: ValueReport,
    /// Each treatment a user may ask about, with what the rules say.
    pub options: Vec<OptionReport>,
    /// The plans worth comparing, best first and barred ones last. At most sixteen.
    pub courses: Vec<CourseReport>,
    /// Every fault that was recorded.
    pub faults: Vec<FaultReport>,
    /// The user's own proposal, if there is one.
    pub proposal: Option<ProposalReport>,
    /// The pieces of a record of several. JSON has it for several alone; between the app and its workers it does
    /// not travel, since what a screen shows of it stands in sentences.
    #[serde(skip_deserializing)]
    pub pieces: Option<PiecesReport>,
    /// The advice.
    pub counsel: CounselReport,
    /// Cautions for the treatments and hazards named, most serious first.
    pub cautions: Vec<CautionReport>,
    /// Whether the piece is for display only.
    pub display_only: DisplayOnly,
    /// The parts of the case that could not be used.
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
    /// What they are to each other.
    pub relation: Relation,
    /// How they are weighed.
    pub sell: SellAs,
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
    /// The fault.
    pub fault: Fault,
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

/// What the piece is, how certain that is, and when it was made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct IdentityReport {
    /// One plain sentence.
    pub sentence: String,
    /// Nothing has been looked at or read yet, so every share below is only the prior.
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
    /// When it was made; absent when nothing was found, or when the findings leave no possible year.
    pub dates: Option<DateReport>,
    /// Conflicts between the years given for it and what was found.
    pub date_conflicts: Vec<String>,
    /// Findings that do not fit together.
    pub contradictions: Vec<ContradictionReport>,
    /// At most two looks that best distinguish what is still possible, the easier one first.
    pub parting: Vec<PartingReport>,
    /// What these looks will probably leave open, and the reading that would add more.
    pub open: Option<String>,
    /// What to look at next, most useful first.
    pub next_looks: Vec<NextLook>,
    /// How far each answer and each reading shifted the leading family.
    pub pushes: Vec<PushReport>,
    /// Readings with a number, and how far each shifted every family.
    pub measures: Vec<MeasureReport>,
    /// Words in the typed marks that suggest a finding and are neither confirmed nor dismissed, so they do
    /// not count.
    pub unconfirmed: Vec<String>,
}

/// One instrument reading with a number.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MeasureReport {
    /// `density`, `conductivity` or `xray`.
    pub id: ReadingOf,
    /// What was measured.
    pub title: Text,
    /// What was read and what it means.
    pub text: String,
    /// Whether it counts as evidence.
    pub counts: bool,
    /// How far it shifted each family; empty when it does not count.
    pub pushes: Vec<FamilyPush>,
}

/// How far one reading shifted one family.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct FamilyPush {
    /// The family.
    pub family: Family,
    /// Change of its log-odds (natural logarithm) when the reading is added last.
    pub log_odds: f64,
}

/// The likeliest family once a look has been taken.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct AfterLook {
    /// The family.
    pub family: Family,
    /// The family in words.
    pub name: Text,
    /// Its probability after the look.
    pub p: f64,
    /// Whether the answer is evidence; that a mark is absent is not.
    pub tells: bool,
}

/// One of the two questions behind a kind, and how settled it is.
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
    /// Settled: at least four in five on every ladder.
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
    pub kind: Kind,
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
    /// The family.
    pub family: Family,
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
    /// The year with a 1 in 20 chance that it was made earlier, over all kinds.
    pub from: u16,
    /// The year with a 1 in 20 chance that it was made later, over all kinds; not worth showing where `open`.
    pub to: u16,
    /// It may have been made recently, so the end is shown as "or later".
    pub open: bool,
    /// What determines the ends.
    pub reasons: Vec<String>,
    /// The years of the leading family, then of other families that are reasonably likely and have different
    /// years.
    pub by_family: Vec<FamilyDates>,
    /// The years depend on the family, so each family is named with its own.
    pub is_conditional: bool,
    /// The source of the years that helped to narrow these: "the years given by the seller".
    pub given: Option<Text>,
}

/// When it was made if it belongs to one family.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FamilyDates {
    /// The family in words, and others with much the same years.
    pub names: Vec<Text>,
    /// The year with a 1 in 20 chance that it was made earlier.
    pub from: u16,
    /// The year with a 1 in 20 chance that it was made later; not worth showing where `open`.
    pub to: u16,
    /// It may have been made recently, so the end is shown as "or later".
    pub open: bool,
}

impl FamilyDates {
    /// The years in words: "1852 or later" where they reach the present, else "1763 to 1847".
    #[must_use]
    pub fn in_words(&self) -> String {
        if self.open {
            format!("{} or later", self.from)
        } else {
            format!("{} to {}", self.from, self.to)
        }
    }

    /// Whether either end differs from the other report's by more than `years`.
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
    /// The years in words: "1852 or later". Where the years depend on the family, each family has its own:
    /// "1763 to 1847 if it is fused plate, 1852 or later if it is electroplate".
    #[must_use]
    pub fn in_words(&self) -> String {
        let years: Vec<String> = self
            .by_family
            .iter()
            .map(|f| {
                if self.is_conditional {
                    let names: Vec<&str> = f.names.iter().map(|name| name.get()).collect();
                    format!("{} if it is {}", f.in_words(), any_of(&names))
                } else {
                    f.in_words()
                }
            })
            .collect();
        years.join(", ")
    }

    /// Whether every end shown is open.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.by_family.iter().all(|f| f.open)
    }
}

/// Two findings that contradict each other.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ContradictionReport {
    /// The two findings, or a finding and a reading.
    pub findings: [EvidenceId; 2],
    /// What does not fit, and what may explain it.
    pub text: String,
    /// They were seen on different parts, so a married piece is offered as the first explanation.
    pub different_parts: bool,
}

/// A look not yet taken.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct NextLook {
    /// The finding.
    pub finding: FindingId,
    /// Its worth to this decision, in the case's currency, after the effort.
    pub worth: f64,
    /// Expected information about the kind, in bits.
    pub bits: f64,
    /// What to look for.
    pub title: Text,
    /// How to look.
    pub how: Text,
    /// What the look needs.
    pub needs: Text,
    /// What the piece would then most likely be, if the feature is seen.
    pub if_seen: AfterLook,
    /// What the piece would then most likely be, if the feature is looked for and absent.
    pub if_absent: AfterLook,
}

/// A look that distinguishes what is still possible.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PartingReport {
    /// The finding.
    pub finding: FindingId,
    /// What to look for.
    pub title: Text,
    /// How to look.
    pub how: Text,
    /// What the piece would then most likely be, if the feature is seen.
    pub if_seen: AfterLook,
    /// What the piece would then most likely be, if the feature is looked for and absent.
    pub if_absent: AfterLook,
}

/// How far one answer or reading shifted the leading family.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PushReport {
    /// The finding or the reading.
    pub finding: EvidenceId,
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
    /// Share of the area still covered, at the low end of the bleed; parts that nobody looked at are
    /// predicted from the others.
    pub covered_area: f64,
    /// Share of the area that was looked at.
    pub looked_area: f64,
}

/// One part's silver.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PartReport {
    /// Part id.
    pub part: PartName,
    /// Part in words, with the pieces where it is that of some.
    pub name: String,
    /// Mean thickness left, micrometres; absent for solid silver.
    pub left_um: Option<Band>,
    /// Median share of the original silver that is left.
    pub left_fraction: Option<f64>,
    /// Median share of the part where base metal shows.
    pub bleed: f64,
    /// Gentle cleanings until twice as much base metal shows.
    pub cleanings_to_double: Option<Band>,
    /// The same in words.
    pub words: String,
}

/// What the piece is worth as it is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ValueReport {
    /// Hammer price of an undamaged piece, including the chance of the sale.
    pub undamaged: Band,
    /// Hammer price of the piece as it is.
    pub as_it_is: Band,
    /// What a seller keeps of that after fees (the same as above on a private sale).
    pub net_as_it_is: Band,
    /// The figures come from class medians, not from the user.
    pub assumed: bool,
    /// Currency id.
    pub currency: Currency,
    /// Always shown beside a value.
    pub label: Text,
}

/// What the rules say of one treatment by itself.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct OptionReport {
    /// Treatment id.
    pub treatment: Treatment,
    /// In trade words.
    pub name: Text,
    /// What is done, for an owner.
    pub plain: Text,
    /// `allowed`, `conditional`, `needs_check`, `needs_opinion`, `barred`, `not_needed` or `never`.
    pub outcome: OptionOutcome,
    /// Whether it has anything to do.
    pub needed: bool,
    /// Why it is not needed, when it is not.
    pub not_needed: Option<String>,
    /// Every rule that applies.
    pub verdicts: Vec<VerdictReport>,
    /// What is gone for good.
    pub lost: Text,
    /// One question to ask.
    pub ask: Text,
    /// Who may do it.
    pub who: Text,
    /// How far it can be undone.
    pub reversibility: Reversibility,
    /// Reversibility in words.
    pub reversibility_words: Text,
    /// Cost band in the case's currency.
    pub cost: Band,
    /// A quote was given.
    pub quoted: bool,
}

/// What can be said of a treatment by itself, in the order of a list of all treatments.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum OptionOutcome {
    /// No objection.
    Allowed,
    /// It can be advised, with conditions.
    Conditional,
    /// A named check comes first.
    NeedsCheck,
    /// A conservator's written opinion comes first.
    NeedsOpinion,
    /// It has nothing to do.
    NotNeeded,
    /// It is ruled out.
    Barred,
    /// It never suits these pieces.
    Never,
}

impl From<Outcome> for OptionOutcome {
    fn from(outcome: Outcome) -> Self {
        match outcome {
            Outcome::Allowed => Self::Allowed,
            Outcome::Conditional => Self::Conditional,
            Outcome::NeedsCheck => Self::NeedsCheck,
            Outcome::NeedsOpinion => Self::NeedsOpinion,
            Outcome::Barred => Self::Barred,
        }
    }
}

/// What one rule says.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct VerdictReport {
    /// What it rests on.
    #[serde(rename = "guard")]
    pub ground: Ground,
    /// `conditional`, `needs_check`, `needs_opinion` or `barred`.
    pub outcome: Outcome,
    /// Why.
    pub reason: String,
    /// What would lift it.
    pub lifted_by: String,
}

/// One plan.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CourseReport {
    /// Treatment ids in order.
    pub steps: Vec<Treatment>,
    /// In words.
    pub name: String,
    /// Why it cannot be advised; empty when it can.
    pub barred: Vec<VerdictReport>,
    /// Conditions that go with it.
    pub conditions: Vec<VerdictReport>,
    /// Money kept after all costs, in absolute terms.
    pub net: BandMean,
    /// The same, relative to leaving the piece as it is.
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
    /// Worth for the aim, 0 to 1; for a seller it ranks courses in the same order as money.
    pub score: f64,
    /// How far its worst step can be undone.
    pub reversibility: Reversibility,
    /// Worst reversibility in words.
    pub reversibility_words: Text,
    /// Cost band.
    pub cost: Band,
    /// Mean of the worst tenth of net gains.
    pub tail_mean: f64,
    /// The most to pay for the piece if this is done and it is then sold; absent unless it is to be sold.
    pub most_to_pay: Option<f64>,
    /// Greatest regret.
    pub regret: f64,
    /// What is gone for good.
    pub lost: Vec<Text>,
    /// Each step of a course with several steps, and the effect of leaving it out.
    pub each: Vec<StepReport>,
}

impl CourseReport {
    /// The ids of its steps, which tell it from other courses: "T02+T03".
    #[must_use]
    pub fn ids(&self) -> String {
        let ids: Vec<&str> = self.steps.iter().map(|step| step.id()).collect();
        ids.join("+")
    }
}

/// One step of a course.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct StepReport {
    /// Treatment id.
    pub step: Treatment,
    /// Mean score without the step minus the mean score with it: money for a seller, score for a keeper.
    pub without: f64,
}

/// One fault.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FaultReport {
    /// The fault.
    pub fault: Fault,
    /// In a few words, with the pieces it is on where that is not all of several.
    pub name: String,
    /// The parts it was recorded on.
    pub parts: Vec<PartName>,
    /// The larger of the two sizes, where the fault has two.
    pub large: bool,
    /// Mean factor on the price with this fault alone.
    pub price_left: f64,
    /// Treatments that answer it, the gentlest first.
    pub answers: Vec<Treatment>,
    /// Whether the advice leaves it.
    pub left: bool,
}

/// The user's own plan, weighed at its own prices.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ProposalReport {
    /// The plan as far as it can be weighed.
    pub course: CourseReport,
    /// What was left out of it and why, and what has to be done first.
    pub problems: Vec<String>,
}

/// The one contrast shown with the advice.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ContrastReport {
    /// `asked`, `advised`, `leaving`, `fault`, `runner_up`, `barred`, `not_needed` or `never`.
    pub kind: Text,
    /// The steps it is about; empty for leaving.
    pub steps: Vec<Treatment>,
    /// What those steps cost, excluding a test for lead: as typed where quoted, else the middle of our range.
    pub price: Option<f64>,
    /// Whether every step of it is quoted.
    pub quoted: bool,
    /// What a test for lead first would cost, where one is needed.
    pub test: Option<f64>,
    /// Mean money relative to the advised course, in the case's currency.
    pub gain: f64,
    /// Points of score in 100 relative to the advised course; for a seller, money times 100.
    pub points: f64,
    /// The rule that keeps it out.
    pub verdict: Option<VerdictReport>,
    /// The contrast in one sentence, as in the answer.
    pub sentence: String,
}

/// The advice.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CounselReport {
    /// The course advised.
    pub steps: Vec<Treatment>,
    /// How firmly it stands.
    pub firmness: Firmness,
    /// The answer and its contrast, in a few sentences.
    pub sentence: String,
    /// The contrast on its own.
    pub contrast: Option<ContrastReport>,
    /// The firmness in one sentence.
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
    /// The way that brings most in present value, among those open to the seller.
    pub best: Route,
    /// In words.
    pub sentence: String,
    /// What a private buyer would have to offer, where that is worth saying; may be empty.
    pub besides: String,
    /// Reserve to agree with the auction house, where the auction is best.
    pub reserve: Option<f64>,
    /// The price to put on the ticket, for a seller with a shop or a stand.
    pub ticket: Option<f64>,
}

/// One way to sell it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct RouteReport {
    /// The route.
    pub route: Route,
    /// In words.
    pub name: Text,
    /// What the seller keeps.
    pub kept: Band,
    /// Months until the money arrives; absent where nobody can say.
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

impl CounselReport {
    /// The treatments that the advice and its contrast name.
    #[must_use]
    pub fn named(&self) -> TreatmentSet {
        let contrast = self.contrast.iter().flat_map(|c| &c.steps);
        self.steps.iter().chain(contrast).copied().collect()
    }
}

impl ChangeReport {
    /// The treatments it names.
    #[must_use]
    pub fn named(&self) -> TreatmentSet {
        self.to_steps.iter().copied().collect()
    }
}

/// Where the answer flips.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ChangeReport {
    /// `value`, `cost`, `bleed` or `fused`.
    pub input: Input,
    /// The input in words.
    pub name: String,
    /// Its present value.
    pub now: f64,
    /// Where the answer flips; absent when it does not.
    pub flips_at: Option<f64>,
    /// The course it flips to.
    pub to_steps: Vec<Treatment>,
    /// In words.
    pub text: String,
}

/// The answer with one input moved and everything else unchanged.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MovedReport {
    /// `value`, `cost`, `bleed` or `fused`.
    pub input: Input,
    /// How far it was moved, from [`MOST_MOVED`] steps down to as many up; 0 is its present value.
    pub step: i8,
    /// The input's value after the move.
    pub at: f64,
    /// The advice after the move.
    pub steps: Vec<Treatment>,
    /// That advice in one sentence.
    pub sentence: String,
    /// How firmly it stands.
    pub firmness: Firmness,
}

/// The most steps an input can be moved to either side.
pub const MOST_MOVED: i8 = 10;

/// A caution.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct CautionReport {
    /// Stable id.
    pub id: String,
    /// How serious.
    pub level: Level,
    /// What it is about, in a few words.
    pub about: String,
    /// The words.
    pub text: String,
}

/// Whether the piece may hold food or drink.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct DisplayOnly {
    /// For display only.
    pub yes: bool,
    /// The triggers, in words.
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

    /// Whether another plan that could be advised is as good as any in more cases than the plan advised, in whole
    /// cases of 100 as they are shown. Wherever both shares are shown, a sentence has to say why.
    #[must_use]
    pub fn has_oftener_unbeaten_plan(&self) -> bool {
        let shown = |course: &CourseReport| (100.0 * course.p_best).round();
        let advised = self.courses.iter().find(|c| c.steps == self.counsel.steps);
        let mut open = self.courses.iter().filter(|c| c.barred.is_empty());
        advised.is_some_and(|advised| open.any(|other| shown(other) > shown(advised)))
    }
}
