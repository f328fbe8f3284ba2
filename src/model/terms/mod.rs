//! The lowest layer: the trade's vocabulary as types. Every other module uses it; it uses none of them.
//!
//! Kinds, treatments, parts, faults and answers are closed lists with stable ids for files and labels for
//! people. It also holds other small general types: a calendar day, a decimal number, a share in words.
//! Invariant: nothing here holds a figure or makes a decision.

mod by_id;
mod capital;
mod date;
mod decimal;
mod fault;
mod firmness;
mod input;
mod kind;
mod lists;
mod money;
mod ordinal;
mod outcome;
mod shares;
mod short_sort;
mod text;
mod treatment;
mod vocabulary;
mod written_date;

pub(crate) use by_id::as_ids;
pub use capital::{capital, small};
pub use date::Date;
pub use decimal::decimal;
pub use fault::Fault;
pub use firmness::Firmness;
pub use input::Input;
pub use kind::{ByKind, ByLadderKind, Cluster, Family, Kind, Letter};
pub use lists::{all_of, any_of, in_turn};
pub use money::{money, sum, to_the_penny, two_figures};
pub use ordinal::{ordinal, the_pieces};
pub use outcome::Outcome;
pub use shares::{at_most, chance, percent, share, share_of_cases, whole_percent};
pub use short_sort::ShortSort;
pub use text::Text;
pub use treatment::{Reversibility, Treatment, TreatmentSet};
pub use vocabulary::{
    BUYERS, BleedWord, BuyerSort, CameFrom, Corrosion, Covers, Currency, Dents, Doer, Ending,
    Engraving, Fill, FillState, Form, Gilding, Goal, Instrument, Interior, Joint, JointClass,
    Lacquer, Lead, LengthUnit, Liner, Loss, LotRule, Material, MaterialUsed, Method, Mount,
    PartName, PredictedWhen, PriceBasis, Relation, Repair, Replaced, Route, Seen, SellAs, SoldAs,
    Split, SpotFault, StockStatus, Tarnish, TestKind, Tester, UnsoldAt, WeightUnit,
};
pub use written_date::{DateOrder, WrittenDate};

/// A closed list of words with stable ids.
pub trait Word: Sized {
    /// All ids.
    fn ids() -> Vec<&'static str>;
    /// The word with this id.
    fn from_id(id: &str) -> Option<Self>;
}
