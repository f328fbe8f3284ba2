//! A calendar day, as the shell hands it to the model.

/// A day of the Gregorian calendar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Date {
    /// Year, 1600 to 2999.
    pub year: u16,
    /// Month, 1 to 12.
    pub month: u8,
    /// Day, 1 to 31 as the month allows.
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

    /// Reads a day, a month such as `2026-11`, or a year such as `2026`. Of a month the 15th is
    /// taken, and of a year the first of July.
    #[must_use]
    pub fn parse_about(text: &str) -> Option<Self> {
        let middle = match text.len() {
            4 => "-07-01",
            7 => "-15",
            _ => "",
        };
        Self::parse(&[text, middle].concat())
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
}
