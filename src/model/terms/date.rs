//! A calendar day, as the caller passes it to the model.

/// A day of the Gregorian calendar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Date {
    /// Year, 1600 to 2999.
    pub year: u16,
    /// Month, 1 to 12.
    pub month: u8,
    /// Day, 1 to 28, 29, 30 or 31 as the month allows.
    pub day: u8,
}

impl Date {
    /// Reads an ISO 8601 calendar date such as `2026-11-25`.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let mut fields = text.split('-');
        let year: u16 = fields.next().filter(|t| t.len() == 4)?.parse().ok()?;
        let month: u8 = fields.next().filter(|t| t.len() == 2)?.parse().ok()?;
        let day: u8 = fields.next().filter(|t| t.len() == 2)?.parse().ok()?;
        let ok = fields.next().is_none()
            && (1600..3000).contains(&year)
            && day >= 1
            && day <= days(year, month)?;
        ok.then_some(Self { year, month, day })
    }

    /// Reads a day, a month such as `2026-11`, or a year such as `2026`. A month is taken as its 15th, a year
    /// as its first of July.
    #[must_use]
    pub fn parse_about(text: &str) -> Option<Self> {
        let middle = match text.len() {
            4 => "-07-01",
            7 => "-15",
            _ => "",
        };
        Self::parse(&[text, middle].concat())
    }

    /// Days from this day to `later`; negative when `later` comes first. Exact, with leap years by the
    /// Gregorian rule.
    #[must_use]
    pub fn days_until(self, later: Self) -> i32 {
        later.day_number() - self.day_number()
    }

    /// Days since the last day of February of year 0, counted in years that begin in March.
    fn day_number(self) -> i32 {
        let (year, month) = if self.month > 2 {
            (i32::from(self.year), i32::from(self.month) - 3)
        } else {
            (i32::from(self.year) - 1, i32::from(self.month) + 9)
        };
        // Every five months from March have 153 days.
        365 * year + year / 4 - year / 100
            + year / 400
            + (153 * month + 2) / 5
            + i32::from(self.day)
    }
}

impl std::fmt::Display for Date {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

fn days(year: u16, month: u8) -> Option<u8> {
    let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    Some(match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 => 28 + u8::from(leap),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::Date;

    #[test]
    fn reads_real_days_only() {
        assert_eq!(
            Date::parse("2024-02-29"),
            Some(Date {
                year: 2024,
                month: 2,
                day: 29
            })
        );
        for bad in [
            "2023-02-29",
            "1900-02-29",
            "2026-13-01",
            "2026-1-1",
            "26-01-01",
            "2026-01-01T00",
            "",
            "never",
        ] {
            assert_eq!(Date::parse(bad), None, "{bad}");
        }
    }

    #[test]
    fn counts_the_days_between_two_dates() {
        let days = |from: &str, to: &str| {
            Date::parse(from)
                .unwrap()
                .days_until(Date::parse(to).unwrap())
        };
        assert_eq!(days("2026-11-30", "2026-12-07"), 7);
        assert_eq!(days("2026-12-07", "2026-11-30"), -7);
        assert_eq!(days("2024-02-28", "2024-03-01"), 2);
        assert_eq!(days("2023-02-28", "2023-03-01"), 1);
        assert_eq!(days("1900-01-01", "2000-01-01"), 36_524);
        // The Gregorian calendar repeats after 146,097 days.
        assert_eq!(days("1600-03-01", "2000-03-01"), 146_097);
        assert_eq!(Date::parse("2024-02-29").unwrap().to_string(), "2024-02-29");
    }
}
