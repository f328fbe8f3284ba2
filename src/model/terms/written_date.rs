//! A date written as numbers with the year last, in which the day or the month comes first.

/// Months in a year: a greater number in a date is its day.
const MONTHS: u16 = 12;

/// The most digits of each number of a date; a year has just so many.
const MOST_DIGITS: [u8; 3] = [2, 2, 4];

/// Which of the first two numbers of a date is the day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DateOrder {
    /// 31/5/2026.
    DayFirst,
    /// 5/31/2026.
    MonthFirst,
}

/// A date such as 31/5/2026, with `/`, `.` or `-` between its numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WrittenDate {
    first: u16,
    second: u16,
    year: u16,
}

impl WrittenDate {
    /// Reads two numbers of one or two digits and a year of four; `None` for anything else.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let (mut numbers, mut at, mut digits) = ([0_u16; 3], 0, 0);
        for letter in text.trim().bytes() {
            match letter {
                b'0'..=b'9' if digits < MOST_DIGITS[at] => {
                    numbers[at] = numbers[at] * 10 + u16::from(letter - b'0');
                    digits += 1;
                }
                b'/' | b'.' | b'-' if at < 2 && digits > 0 => {
                    at += 1;
                    digits = 0;
                }
                _ => return None,
            }
        }
        let [first, second, year] = numbers;
        (at == 2 && digits == MOST_DIGITS[2]).then_some(Self {
            first,
            second,
            year,
        })
    }

    /// The order that its numbers tell by themselves: one of them is no month.
    #[must_use]
    pub fn order(self) -> Option<DateOrder> {
        match (self.first > MONTHS, self.second > MONTHS) {
            (true, false) => Some(DateOrder::DayFirst),
            (false, true) => Some(DateOrder::MonthFirst),
            _ => None,
        }
    }

    /// Whether it is two different days, by which number is the day.
    #[must_use]
    pub fn is_open(self) -> bool {
        self.first <= MONTHS && self.second <= MONTHS && self.first != self.second
    }

    /// The date as year-month-day: in the order its numbers tell, else in the order given. `None` where it is
    /// open and none is given, and where neither number is a month.
    #[must_use]
    pub fn iso(self, given: Option<DateOrder>) -> Option<String> {
        let either = (self.first == self.second).then_some(DateOrder::DayFirst);
        let (day, month) = match self.order().or(given).or(either)? {
            DateOrder::DayFirst => (self.first, self.second),
            DateOrder::MonthFirst => (self.second, self.first),
        };
        (month <= MONTHS).then(|| format!("{}-{month:02}-{day:02}", self.year))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_beyond_twelve_is_the_day() {
        let iso = |text: &str, given| WrittenDate::parse(text).and_then(|d| d.iso(given));
        let day = Some(DateOrder::DayFirst);
        assert_eq!(iso("31/5/2026", None).as_deref(), Some("2026-05-31"));
        assert_eq!(iso("5.31.2026", day).as_deref(), Some("2026-05-31"));
        assert_eq!(iso("7-7-2026", None).as_deref(), Some("2026-07-07"));
        assert_eq!(iso("4/3/2026", None), None);
        assert_eq!(iso("4/3/2026", day).as_deref(), Some("2026-03-04"));
        for wrong in [
            "2026-05-31",
            "31/31/2026",
            "1/2/26",
            "a/b/2026",
            "1/2/2026/3",
            "1/2",
        ] {
            assert_eq!(iso(wrong, day), None, "{wrong}");
        }
    }
}
