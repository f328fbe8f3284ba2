//! The ground floor: the words of the trade as types, which every other room uses and which use none.
//!
//! Kinds, treatments, parts, faults and answers are closed lists with stable ids for files and labels for
//! people. Beside them stand the small things that are as general: a calendar day, a decimal number, a share
//! in words. Invariant: nothing here holds a figure or decides anything.

mod capital;
mod date;
mod decimal;
mod kind;
mod money;
mod ordinal;
mod shares;
mod text;
mod treatment;
mod vocabulary;
mod written_date;

pub use capital::{capital, small};
pub use date::Date;
pub use decimal::decimal;
pub use kind::{ByKind, ByLadderKind, Cluster, Family, Kind, Letter};
pub use money::{money, sum, two_figures};
pub use ordinal::{ordinal, the_pieces};
pub use shares::{percent, share, share_of_cases};
pub use text::Text;
pub use treatment::{Reversibility, Treatment, TreatmentSet};
pub use vocabulary::{
    BleedWord, BuyerSort, CameFrom, Corrosion, Covers, Currency, Dents, Doer, Ending, Engraving,
    Fill, FillState, Form, Gilding, Goal, Instrument, Interior, Joint, JointClass, Lacquer, Lead,
    LengthUnit, Liner, Loss, LotRule, Material, MaterialUsed, Method, Mount, PartName,
    PredictedWhen, PriceBasis, Relation, Repair, Replaced, Route, Seen, SellAs, SoldAs, Split,
    SpotFault, StockStatus, Tarnish, TestKind, Tester, UnsoldAt, WeightUnit,
};
pub use written_date::{DateOrder, WrittenDate};

/// A closed list of words with stable ids.
pub trait Word: Sized {
    /// All ids.
    fn ids() -> Vec<&'static str>;
    /// The word with this id.
    fn from_id(id: &str) -> Option<Self>;
}
