//! Forty closed pieces, all invented, which show at first sight what closed pieces teach.

use leavewell_model::learn::Closing;
use leavewell_model::record::Draft;

const PIECES: &str = include_str!("learning_example.psv");

/// The invented pieces.
pub(super) fn example() -> Vec<Closing> {
    PIECES
        .lines()
        .filter(|line| !line.starts_with('#'))
        .enumerate()
        .filter_map(|(number, line)| {
            Some(Closing {
                id: format!("invented-{number:02}"),
                case: record(line)?.read().0,
            })
        })
        .collect()
}

/// The record of one line; `None` for a line with too few columns.
fn record(line: &str) -> Option<Draft> {
    let columns: Vec<&str> = line.split('|').collect();
    let [
        name,
        form,
        class,
        level,
        bare,
        rows,
        price,
        month,
        ending,
        at,
        reserve,
        buyer,
        works,
    ] = columns.as_slice()
    else {
        return None;
    };
    let mut draft = Draft::default();
    let mut set = |path: &str, text: &str| draft.set(path, text);
    set("piece.name", name);
    set("piece.form", form);
    set("market.currency", "GBP");
    let works: Vec<Vec<&str>> = works
        .split(';')
        .map(|work| work.split(',').collect())
        .filter(|work: &Vec<&str>| work.len() == 6)
        .collect();
    let expected = |value: &dyn Fn(&[&str]) -> String| {
        let each = works
            .iter()
            .map(|work| [work[0], "=", &value(work)].concat());
        each.collect::<Vec<String>>().join(" ")
    };
    let bills = expected(&|work| work[1].to_owned());
    let hours = expected(&|work| work[2].to_owned());
    for event in ["agreed", "offered"] {
        let place = ["predicted[event=", event, "]."].concat();
        for (field, text) in [
            ("on", [month, "-01"].concat()),
            ("basis", "guess".to_owned()),
            ("ln_level", (*level).to_owned()),
            ("sd", "0.54".to_owned()),
            ("p", "0.95".to_owned()),
            ("state", [class, " bare=", bare, " ", rows].concat()),
            ("shipped.price", (*price).to_owned()),
            ("shipped.bills", bills.clone()),
            ("shipped.hours", hours.clone()),
        ] {
            set(&[&place, field].concat(), &text);
        }
    }
    for (place, work) in works.iter().enumerate() {
        for (field, text) in [
            ("id", format!("w{place}").as_str()),
            ("what", work[0]),
            ("bill", work[3]),
            ("hours", work[4]),
            ("bad", work[5]),
            ("on", month),
        ] {
            set(&format!("done[{place}].{field}"), text);
        }
    }
    set("closed.outcome", ending);
    set("closed.on", &[month, "-20"].concat());
    if *ending == "sold" {
        set("closed.sale.price", at);
        set("closed.sale.what", "hammer");
        set("closed.sale.reserve", reserve);
        set("closed.sale.buyer", buyer);
    } else {
        set("closed.unsold.price", at);
        set("closed.unsold.what", "reserve");
    }
    Some(draft)
}

#[cfg(test)]
mod tests {
    use super::*;
    use leavewell_model::learn::evidence;

    #[test]
    fn all_forty_are_read_without_a_problem_and_tell_something() {
        let lines = PIECES.lines().filter(|line| !line.starts_with('#'));
        for line in lines {
            let (_, problems) = record(line).unwrap().read();
            assert!(problems.is_empty(), "{line}: {problems:?}");
        }
        let told = evidence(&example(), None);
        assert_eq!(told.len(), 40);
        assert!(
            told.iter().all(|one| one.not_counted.is_empty()),
            "{told:?}"
        );
    }
}
