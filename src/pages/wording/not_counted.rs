//! Why something recorded about a closed piece teaches nothing.

use leavewell_model::learn::NotCounted;

pub(crate) fn not_counted(why: NotCounted) -> &'static str {
    match why {
        NotCounted::LeftOut => "You left it out.",
        NotCounted::OtherCurrency => {
            "The price is in another currency than the piece, and we do not convert. Correct the currency to have it counted."
        }
        NotCounted::NothingExpected => {
            "We had noted nothing before the sale. Choose For sale before a piece goes."
        }
        NotCounted::ExpectedLater => {
            "What we expected was noted after the sale, when it was easy to know. Check the date of the sale."
        }
        NotCounted::KindUnsure => {
            "It was not certain enough what it is, so its price says little about any kind."
        }
        NotCounted::NoPrice => "It has no price, or a price of nothing. Enter what it fetched.",
        NotCounted::OnlyAsked => "An asking price is not a sale. Enter what it fetched.",
        NotCounted::SoldBeforeBought => {
            "It is dated as sold before it was bought. Correct one of the two dates."
        }
        NotCounted::NotLongOnOffer => {
            "It has not been on offer long enough to say that the price was too high. Enter the months."
        }
        NotCounted::NearlyWorthless => "Too little of its value was left to tell anything.",
        NotCounted::BillOfNothing => {
            "A bill of nothing, or no hours, says nothing of what work costs. Enter what it came to, or leave it empty."
        }
        NotCounted::SoldApart => {
            "Its pieces were sold one by one, so one price says little of each. Give each a separate record to have them counted."
        }
        NotCounted::Copy => "It agrees in every number with another closed piece, and counts once.",
    }
}
