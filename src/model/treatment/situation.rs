//! What the guards look at: the case, the posterior, and how far a course has got.

use super::limits::near_reach;
use crate::identity::{Kind, Posterior};
use crate::ledger::Ledger;
use crate::ledger::signs;
use crate::record::{Case, Corrosion, Fill, Form, Interior, Joint, Lead, PartName};

/// What is known of lead at a moment of a course.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeadStatus {
    /// Nobody has tested.
    Unknown,
    /// A test found lead.
    Present,
    /// A test found none released.
    Absent,
}

/// Everything a guard may ask about. Built once a case, then stepped through each course.
#[derive(Clone, Debug)]
pub struct Situation<'a> {
    /// The case.
    pub case: &'a Case,
    /// The figures.
    pub ledger: &'a Ledger,
    /// What it probably is.
    pub posterior: Posterior,
    /// Likely bare share of the body.
    pub body_bleed: f64,
    /// Covered area of the whole piece at the low end of the bleed, 0 to 1.
    pub covered_area: f64,
    /// Chance that the silver at the worst point does not last the planned cleanings twice over.
    pub worn_through: f64,
    /// The look that would settle the kind best, in words.
    pub next_look: &'static str,
    /// How far a soft-solder joint's heat reaches beyond its patch, mm.
    pub heat_reach_mm: f64,
    /// Lead, now.
    pub lead: LeadStatus,
    /// The worst joint, now.
    pub joint: Option<Joint>,
    /// Silver has been electroplated on in this course.
    pub replated: bool,
    /// A low-melt or glued repair was made in this course.
    pub low_melt: bool,
    /// Tarnish has been taken off in this course.
    pub cleaned: bool,
}

impl Situation<'_> {
    /// Probability of fused plate that still carries its original surface, now.
    #[must_use]
    pub fn original_fused(&self) -> f64 {
        if self.replated {
            0.0
        } else {
            self.posterior.original_fused()
        }
    }

    /// Probability of Britannia metal or pewter, plated or not.
    #[must_use]
    pub fn britannia(&self) -> f64 {
        self.posterior.of_any(&[Kind::Ebm, Kind::Ubm])
    }

    /// Probability that heat or water lifts the silver: held by tin, only burnished on, or plated on
    /// iron or steel that rusts.
    #[must_use]
    pub fn close_or_french(&self) -> f64 {
        self.posterior.of_any(&[Kind::Clp, Kind::Frp, Kind::Est])
    }

    /// Probability that it never carried silver.
    #[must_use]
    pub fn never_silvered(&self) -> f64 {
        self.posterior
            .of_any(&[Kind::Ucu, Kind::Uns, Kind::Ubm, Kind::Ncp])
    }

    /// Whether anything in it is grey, filled or soldered, so that lead is to be expected.
    #[must_use]
    pub fn lead_suspected(&self) -> bool {
        self.lead != LeadStatus::Absent
            && (self.case.has_seen("C10")
                || self.case.has_seen("C12")
                || self.lead == LeadStatus::Present
                || self.any_joint(&[Joint::GreyRepair])
                || self.lead_filled()
                || self.case.is_soldered())
    }

    /// Whether a part is told to be filled with lead or solder.
    #[must_use]
    pub fn lead_filled(&self) -> bool {
        self.case.parts.iter().any(|p| p.fill == Some(Fill::Lead))
    }

    /// Whether any part has one of these joints, as found.
    #[must_use]
    pub fn any_joint(&self, joints: &[Joint]) -> bool {
        self.case
            .parts
            .iter()
            .any(|p| p.joint.is_some_and(|j| joints.contains(&j)))
    }

    /// A hollow part that is closed or filled with something that bursts or moves when hot: told, seen,
    /// or probably weighted sterling. A candlestick counts until somebody says what is in it.
    #[must_use]
    pub fn sealed_or_pitch(&self) -> bool {
        let told: Vec<Fill> = self.case.parts.iter().filter_map(|p| p.fill).collect();
        let filled = self.case.has_seen_any(&signs::LOADED)
            || self.posterior.of(Kind::Wst) >= self.ledger.value("guard.kind_barred");
        filled
            || told.iter().any(|f| matches!(f, Fill::Pitch | Fill::Sealed))
            || (told.is_empty() && self.case.piece.form.is_some_and(Form::usually_loaded))
    }

    /// Active corrosion: green, white powder or rust, or rust seen at the wear.
    #[must_use]
    pub fn active_corrosion(&self) -> bool {
        self.case.has_seen_any(&signs::RUST)
            || self
                .case
                .parts
                .iter()
                .any(|p| p.corrosion.is_some_and(|c| c != Corrosion::None))
    }

    /// Foil that lifts, or rust under it.
    #[must_use]
    pub fn lifting_foil(&self) -> bool {
        self.case.has_seen_any(&signs::LIFTING)
            || self
                .case
                .parts
                .iter()
                .any(|p| p.corrosion == Some(Corrosion::Rust))
    }

    /// The lining, as found.
    #[must_use]
    pub fn interior(&self) -> Option<Interior> {
        self.case.part(PartName::Interior).and_then(|p| p.interior)
    }

    /// Gilding anywhere that is recorded.
    #[must_use]
    pub fn gilt(&self) -> bool {
        self.case
            .parts
            .iter()
            .any(|p| p.interior == Some(Interior::Gilt))
    }

    /// The shortest stated distance from a faulty joint to the next soft joint or fill, mm.
    #[must_use]
    pub fn nearest_joint_mm(&self) -> Option<f64> {
        self.case
            .parts
            .iter()
            .filter_map(|p| p.joint_distance_mm)
            .min_by(f64::total_cmp)
    }

    /// The display-only triggers that hold now, each in words.
    #[must_use]
    pub fn display_only(&self) -> Vec<String> {
        self.triggers()
            .into_iter()
            .map(|(_, why)| why.to_owned())
            .collect()
    }

    /// The display-only triggers that hold now: the number of each, 1 to 6, and why. An all-clear
    /// release test lifts those on lead (1), on bare metal inside (2), and on who would use it (5); not
    /// the others.
    #[must_use]
    pub fn triggers(&self) -> Vec<(u8, &'static str)> {
        let mut why = Vec::new();
        let tested = self.lead == LeadStatus::Absent;
        if !tested {
            if self.lead == LeadStatus::Present
                || self.case.has_seen("C10")
                || self.any_joint(&[Joint::GreyRepair])
                || self.lead_filled()
            {
                why.push((1, "Lead was found, or grey solder or filling shows."));
            } else if self.case.is_soldered() && self.before_lead_free() {
                why.push((
                    1,
                    "Nobody has tested it, and old soldered pieces may release lead. Nearly every old one is in \
                     this position until a test says otherwise.",
                ));
            }
            let inside = self.case.part(PartName::Interior);
            let worn = inside.is_some_and(|p| p.bleed.is_some_and(shows_metal));
            if worn || self.interior() == Some(Interior::Bare) {
                why.push((
                    2,
                    "Bare copper, brass or nickel metal shows on the inside, where sour food dissolves it.",
                ));
            }
        }
        if self.interior() == Some(Interior::Lacquered) {
            why.push((3, "The inside is lacquered, waxed or glued."));
        }
        if self.low_melt {
            why.push((3, "The repair is low-melting metal or glue."));
        }
        if self.replated {
            why.push((
                3,
                "Fresh plating has to be washed and checked before food touches it.",
            ));
        }
        if self.case.has_seen("P14") || self.gilt() {
            why.push((4, "Old gilding or silvering may hold mercury."));
        }
        if self.case.piece.form == Some(Form::Cooler) && self.any_joint(&[Joint::Leaking]) {
            why.push((
                4,
                "A double wall that leaks holds what nobody can wash out.",
            ));
        }
        if !tested && self.case.aim.household_child_or_pregnant && self.case.aim.food {
            why.push((
                5,
                "A child, or someone pregnant or breast-feeding, lives with it or would use it: never, unless a laboratory release test \
                 passes.",
            ));
        }
        if self.case.aim.store_food {
            why.push((6, "Food or drink would stand in it for hours."));
        }
        if self.sealed_or_pitch() && self.case.aim.food {
            why.push((
                6,
                "Something hot would go into a piece with a loaded or closed part.",
            ));
        }
        why
    }

    /// How much the next joint counts against a soldered repair, 0 to 1: all within the heat's reach,
    /// less and less beyond it (S06). Nothing where no distance is stated.
    #[must_use]
    pub fn near_heat(&self) -> f64 {
        self.nearest_joint_mm()
            .map_or(0.0, |d| near_reach(d, self.heat_reach_mm, self.ledger))
    }

    /// Made, or possibly made, before lead-free solder was usual.
    fn before_lead_free(&self) -> bool {
        let year = self.ledger.value("guard.food_year");
        self.case
            .piece
            .from_year
            .is_none_or(|from| f64::from(from) < year)
    }

    /// The lead status a case states: any part found with lead decides; all-clear needs a test.
    #[must_use]
    pub fn stated_lead(case: &Case) -> LeadStatus {
        let told: Vec<Lead> = case.parts.iter().filter_map(|p| p.lead).collect();
        if told.contains(&Lead::Present) {
            LeadStatus::Present
        } else if told.contains(&Lead::Absent) {
            LeadStatus::Absent
        } else {
            LeadStatus::Unknown
        }
    }

    /// The worst joint a case states: leaking, open, grey, neat, sound.
    #[must_use]
    pub fn stated_joint(case: &Case) -> Option<Joint> {
        [
            Joint::Leaking,
            Joint::Open,
            Joint::GreyRepair,
            Joint::NeatRepair,
            Joint::Sound,
        ]
        .into_iter()
        .find(|j| case.parts.iter().any(|p| p.joint == Some(*j)))
    }
}

fn shows_metal(bleed: crate::record::Bleed) -> bool {
    match bleed {
        crate::record::Bleed::Word(word) => word != crate::record::BleedWord::None,
        crate::record::Bleed::Fraction(f) => f > 0.0,
        crate::record::Bleed::Counted { likely, .. } => likely > 0.0,
    }
}
