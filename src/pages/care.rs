//! How long the silver on one part lasts: a forecast for two ways of keeping and cleaning, side by side.

use super::Subject;
use super::ask::{NumberField, choice, number};
use super::block::{Block, Table, Tone};
use super::care_fan::{Fan, fan};
use super::cross_section::cross_section;
use super::part_words::{caution_block, named, part_choice, part_problem, text_field, um, years};
use super::wording::care as words;
use leavewell_model::counsel::{SampledPart, UncertainInput};
use leavewell_model::ledger::{FigureId, Ledger};
use leavewell_model::maths::{deciles, median};
use leavewell_model::record::{Case, Draft};
use leavewell_model::silver::{
    FilmLoss, Habit, Layer, bleed_after, let_in, rolled_face_um, years_until,
};
use leavewell_model::terms::{Method, PartName, Tarnish, whole_percent};

/// Number of points in time that a forecast shows, including the present.
const TIMES: usize = 11;
/// Years that stand for "never". Longer than any forecast is meaningful, yet finite, so draws that lose
/// nothing still sort.
const NEVER: f64 = 1e6;

/// The figures behind what can be chosen, in the order of the words.
const SETTING_RATES: [Option<FigureId>; words::SETTINGS.len()] =
    FigureId::family_if_any("silver.setting.", ids(words::SETTINGS), "");
const AIR_RATES: [FigureId; words::AIRS.len()] =
    FigureId::family("silver.air.", ids(words::AIRS), "");
const LOSS_UM: [FigureId; words::WAYS.len()] =
    FigureId::family("silver.loss.", ids(words::WAYS), ".um");
const LOSS_SHARE: [FigureId; words::WAYS.len()] =
    FigureId::family("silver.loss.", ids(words::WAYS), ".share");
const MADE: [FigureId; words::MADE.len()] = FigureId::family("silver.t0.", ids(words::MADE), "");
const FILM: [FigureId; Tarnish::IDS.len()] = FigureId::family("silver.film.", Tarnish::IDS, "");
const HIGH_POINT: [FigureId; PartName::IDS.len()] =
    FigureId::family("silver.high_point.", PartName::IDS, "");

/// The ids of a list of words.
const fn ids<const N: usize>(list: [(&'static str, &'static str); N]) -> [&'static str; N] {
    let mut ids = [""; N];
    let mut i = 0;
    while i < N {
        ids[i] = list[i].0;
        i += 1;
    }
    ids
}

/// The place of a choice in the list it was chosen from.
fn place_in(list: &[(&str, &str)], id: &str) -> usize {
    list.iter().position(|(known, _)| *known == id).unwrap_or(0)
}

/// Builds the page.
#[must_use]
pub(super) fn page(subject: &Subject) -> Vec<Block> {
    let (draft, case, problems) = (subject.draft(), subject.case(), subject.problems());
    let (which, part) = part_choice(draft, case, "care.part");
    let worn = SampledPart::new(subject.solved(), part);
    let (ahead, horizon) = number(
        draft,
        NumberField {
            path: "care.years",
            label: words::LOOK_AHEAD,
            unit: words::YEARS,
            hint: "",
            stand_in: Some(worn.ledger.value(FigureId::SILVER_CARE_YEARS)),
        },
    );
    let a = EnteredHabit::new(draft, "a", words::FIRST_HABIT, &worn.ledger);
    let b = EnteredHabit::new(draft, "b", words::SECOND_HABIT, &worn.ledger);
    let mut blocks = vec![
        Block::Row {
            blocks: vec![which, ahead],
        },
        Block::section("care.a", words::FIRST_HABIT, a.blocks.clone()),
        Block::section("care.b", words::SECOND_HABIT, b.blocks.clone()),
    ];
    blocks.extend(answer(case, part, &worn, [&a, &b], horizon));
    blocks.push(thickness(draft, part, |field| {
        part_problem(draft, problems, part, field)
    }));
    blocks.push(as_made(&worn.ledger));
    blocks.push(basis());
    blocks
}

/// One habit, as entered.
struct EnteredHabit {
    blocks: Vec<Block>,
    name: &'static str,
    setting: &'static str,
    air: &'static str,
    way: &'static str,
    /// Cleanings per year; `None` if the entry cannot be used.
    a_year: Option<f64>,
}

impl EnteredHabit {
    fn new(draft: &Draft, id: &str, name: &'static str, ledger: &Ledger) -> Self {
        let path = |field: &str| format!("care.{id}.{field}");
        // The second habit defaults to the gentle one, so that there is something to compare.
        let first = |all: &[(&'static str, &'static str)], gentle: &str| {
            let mut all = all.to_vec();
            if id == "b" {
                let at = all.iter().position(|(id, _)| *id == gentle).unwrap_or(0);
                all.swap(0, at);
            }
            all
        };
        let (where_block, setting) = choice(
            draft,
            &path("setting"),
            words::KEPT,
            "",
            &first(&words::SETTINGS, "bag"),
        );
        let (air_block, air) = choice(
            draft,
            &path("air"),
            words::AIR,
            words::AIR_HINT,
            &words::AIRS,
        );
        let (way_block, way) = choice(
            draft,
            &path("how"),
            words::CLEANED_WITH,
            "",
            &first(&words::WAYS, "chalk"),
        );
        let (times_block, times) = number(
            draft,
            NumberField {
                path: &path("times"),
                label: words::CLEANINGS,
                unit: "",
                hint: words::CLEANINGS_HINT,
                stand_in: Some(ledger.value(FigureId::SILVER_POLISH_PER_YEAR)),
            },
        );
        let (span_block, span) = number(
            draft,
            NumberField {
                path: &path("in_years"),
                label: words::IN_YEARS,
                unit: words::YEARS,
                hint: "",
                stand_in: Some(1.0),
            },
        );
        let mut blocks = vec![Block::Row {
            blocks: vec![where_block, way_block],
        }];
        if setting == "coupon" {
            blocks.push(air_block);
        }
        blocks.push(Block::Row {
            blocks: vec![times_block, span_block],
        });
        Self {
            blocks,
            name,
            setting,
            air,
            way,
            a_year: times.zip(span).map(|(times, span)| times / span),
        }
    }

    /// How fast silver tarnishes where the piece is kept; the air decides where no setting does.
    fn rate(&self) -> FigureId {
        SETTING_RATES[place_in(&words::SETTINGS, self.setting)]
            .unwrap_or(AIR_RATES[place_in(&words::AIRS, self.air)])
    }
}

/// The effect of one habit on a part, over all draws.
struct Forecast {
    /// Bare share at each time: 10th, 50th and 90th percentile.
    bleed: Vec<[f64; 3]>,
    /// Silver lost per year, in micrometres: 10th, 50th and 90th percentile.
    um_a_year: [f64; 3],
    /// Silver taken by one cleaning, in micrometres.
    um_a_cleaning: f64,
    /// Years until the bare share doubles; `None` if half the part is already bare.
    doubles: Option<[f64; 3]>,
    /// Years until so much is bare that rubbing is barred; `None` if that is already the case.
    tenth: Option<[f64; 3]>,
    /// Tarnish in the middle case, after a year and when the next cleaning is due.
    after_a_year: Tarnish,
    at_cleaning: Option<Tarnish>,
}

/// Forecasts one habit. Returns `None` if most draws have no silver layer.
fn forecast(
    worn: &SampledPart,
    part: PartName,
    asked: &EnteredHabit,
    a_year: f64,
    horizon: f64,
) -> Option<Forecast> {
    let ledger = &worn.ledger;
    let known = worn.layers.iter().flatten().count();
    if known * 2 < worn.layers.len() {
        return None;
    }
    let h = ledger.value(HIGH_POINT[part as usize]).max(1.0);
    let none = ledger.value(FigureId::SILVER_F_NONE).clamp(1e-6, 0.1);
    let limit = ledger.value(FigureId::GUARD_BLEED_NO_CLEAN);
    let consumed = ledger.value(FigureId::SILVER_CONSUMED);
    let rate = worn.draw(ledger.figure(asked.rate()), UncertainInput::TarnishRate);
    let way = place_in(&words::WAYS, asked.way);
    let sound = worn.draw(ledger.figure(LOSS_UM[way]), UncertainInput::CleaningLoss);
    let share = worn.draw(ledger.figure(LOSS_SHARE[way]), UncertainInput::FilmShare);
    let mut paths: [Vec<f64>; TIMES] = Default::default();
    let [mut yearly, mut each, mut doubles, mut tenth] =
        [(); 4].map(|()| Vec::with_capacity(known));
    let rows = worn.layers.iter().zip(&worn.bleed);
    let luck = rate.iter().zip(&sound).zip(&share);
    for ((layer, &seen), ((&rate, &sound_um), &share)) in rows.zip(luck) {
        let Some(layer) = layer else { continue };
        let habit = Habit {
            film_nm_per_year: rate,
            cleanings_per_year: a_year,
            loss: FilmLoss { sound_um, share },
        };
        let um = habit.silver_um_per_year(consumed, h);
        yearly.push(um);
        each.push(if a_year > 0.0 { um / a_year } else { 0.0 });
        for (step, path) in paths.iter_mut().enumerate() {
            let years = horizon * step as f64 / (TIMES - 1) as f64;
            path.push(bleed_after(layer, seen, um * years));
        }
        if let Some(target) = Layer::doubled(seen, none) {
            doubles.push(years_until(layer, target, um).unwrap_or(NEVER).min(NEVER));
        }
        let until = if seen >= limit {
            0.0
        } else {
            years_until(layer, limit, um).unwrap_or(NEVER).min(NEVER)
        };
        tenth.push(until);
    }
    let tenth = deciles(&tenth);
    let middle_rate = median(&rate);
    let stage = |nm: f64| stage_of(nm, ledger);
    Some(Forecast {
        bleed: paths.iter_mut().map(|p| deciles(p)).collect(),
        um_a_year: deciles(&yearly),
        um_a_cleaning: median(&each),
        doubles: (doubles.len() * 2 >= known).then(|| deciles(&doubles)),
        tenth: (tenth[1] > 0.0).then_some(tenth),
        after_a_year: stage(middle_rate),
        at_cleaning: (a_year > 0.0).then(|| stage(middle_rate / a_year)),
    })
}

/// The stage that a film looks like: the last stage whose usual thickness it has reached.
fn stage_of(film_nm: f64, ledger: &Ledger) -> Tarnish {
    Tarnish::ALL
        .iter()
        .rfind(|t| ledger.value(FILM[**t as usize]) <= film_nm)
        .copied()
        .unwrap_or(Tarnish::Bright)
}

fn answer(
    case: &Case,
    part: PartName,
    worn: &SampledPart,
    habits: [&EnteredHabit; 2],
    horizon: Option<f64>,
) -> Vec<Block> {
    if let_in(case, part.id()) {
        return vec![Block::said(Tone::Answer, words::SHIELD)];
    }
    let Some(horizon) = horizon else {
        return vec![unusable()];
    };
    let mut made = Vec::new();
    for asked in habits {
        let Some(a_year) = asked.a_year else {
            return vec![unusable()];
        };
        match forecast(worn, part, asked, a_year, horizon) {
            Some(f) => made.push((asked, a_year, f)),
            None => {
                return vec![Block::said(Tone::Answer, words::SOLID_SILVER)];
            }
        }
    }
    let mut blocks = Vec::new();
    if let [(_, _, a), (_, _, b)] = made.as_slice() {
        blocks.push(Block::said(Tone::Answer, compared(a, b)));
    }
    for (asked, a_year, f) in &made {
        blocks.push(Block::para(format!(
            "{}: {}",
            asked.name,
            in_words(f, &worn.ledger)
        )));
        if let Some(warning) = rubbed_bare(asked, *a_year, worn) {
            blocks.push(warning);
        }
    }
    if let [(_, _, a), (_, _, b)] = made.as_slice() {
        blocks.push(Block::Picture(fan(&Fan {
            id: "care.fan",
            title: words::picture_title(&named(part), horizon),
            names: [words::FIRST, words::SECOND],
            horizon,
            bands: [&a.bleed, &b.bleed],
        })));
        blocks.push(Block::Table(side_by_side(a, b)));
        let worst = if a.um_a_cleaning >= b.um_a_cleaning {
            a
        } else {
            b
        };
        let one = if worst.um_a_cleaning > 0.0 {
            worst.um_a_cleaning
        } else {
            worst.um_a_year[1]
        };
        blocks.extend(cross_section(worn, part, one).map(Block::Picture));
    }
    blocks.extend(cautions(
        &made.iter().map(|(a, n, _)| (*a, *n)).collect::<Vec<_>>(),
        worn,
    ));
    blocks
}

fn unusable() -> Block {
    Block::para(words::CORRECT_IT)
}

fn compared(a: &Forecast, b: &Forecast) -> String {
    let (first, second) = (a.um_a_year[1], b.um_a_year[1]);
    let (more, less, name) = if first >= second {
        (first, second, words::SECOND)
    } else {
        (second, first, words::FIRST)
    };
    if less <= 0.0 || more / less >= 100.0 {
        return words::next_to_nothing(name);
    }
    let times = more / less;
    if times < 1.25 {
        words::ALIKE.to_owned()
    } else if times < 10.0 {
        words::lasts(name, &um(times))
    } else {
        words::lasts_many_times(name, (times / 5.0).round() * 5.0)
    }
}

fn in_words(f: &Forecast, ledger: &Ledger) -> String {
    let doubling = match f.doubles {
        None => words::HALF_IS_BARE.to_owned(),
        Some([low, middle, high]) => {
            let some = ledger.figure(FigureId::SILVER_CARE_SOME);
            let span = if middle < some.low {
                words::A_FEW_YEARS
            } else if middle < some.high {
                words::SOME_YEARS
            } else {
                words::DECADES
            };
            words::doubles(span, &years(low), &years(high))
        }
    };
    let limit = whole_percent(ledger.value(FigureId::GUARD_BLEED_NO_CLEAN));
    let tenth = match f.tenth {
        None => words::already_past(&limit),
        Some([low, _, high]) => words::bare_between(&limit, &years(low), &years(high)),
    };
    format!("{doubling}{tenth}")
}

fn side_by_side(a: &Forecast, b: &Forecast) -> Table {
    let span = |of: Option<[f64; 3]>, none: &str| {
        of.map_or_else(
            || none.to_owned(),
            |[low, middle, high]| {
                words::middle_and_range(&years(middle), &years(low), &years(high))
            },
        )
    };
    let row = |what: &str, of: &dyn Fn(&Forecast) -> String| vec![what.to_owned(), of(a), of(b)];
    Table {
        caption: words::CAPTION.to_owned(),
        columns: ["", words::FIRST_COLUMN, words::SECOND_COLUMN]
            .map(str::to_owned)
            .to_vec(),
        rows: vec![
            row(words::AFTER_A_YEAR, &|f| f.after_a_year.label().to_owned()),
            row(words::AT_CLEANING, &|f| {
                f.at_cleaning
                    .map_or(words::NEVER_CLEANED, Tarnish::label)
                    .to_owned()
            }),
            row(words::GONE_IN_A_YEAR, &|f| {
                let [low, middle, high] = f.um_a_year;
                words::middle_and_range(&um(middle), &um(low), &um(high))
            }),
            row(words::ONE_CLEANING, &|f| {
                if f.um_a_cleaning > 0.0 {
                    um(f.um_a_cleaning)
                } else {
                    words::NONE.to_owned()
                }
            }),
            row(words::UNTIL_DOUBLED, &|f| {
                span(f.doubles, words::HALF_ALREADY)
            }),
            row(words::UNTIL_BARRED, &|f| span(f.tenth, words::PAST)),
        ],
    }
}

/// A warning for parts where the rules bar rubbing: the forecast is not advice to rub.
fn rubbed_bare(asked: &EnteredHabit, a_year: f64, worn: &SampledPart) -> Option<Block> {
    let limit = worn.ledger.value(FigureId::GUARD_BLEED_NO_CLEAN);
    let seen = median(&worn.bleed);
    (a_year > 0.0 && seen >= limit).then(|| Block::said(Tone::Stop, words::rubbed_bare(asked.name)))
}

/// The cautions for the chosen methods, each once.
fn cautions(habits: &[(&EnteredHabit, f64)], worn: &SampledPart) -> Vec<Block> {
    let mut ids: Vec<&str> = Vec::new();
    let mut add = |id| {
        if !ids.contains(&id) {
            ids.push(id);
        }
    };
    for (asked, a_year) in habits {
        if *a_year > 0.0 {
            add(match asked.way {
                "chalk" => "caution.T03",
                "dip_swab" | "dip_bath" => "caution.T05",
                "foil_bath" => "caution.T06",
                _ => "caution.T04",
            });
            if asked.way == "buff" {
                add("caution.dust");
            }
            if asked.way.starts_with("dip") {
                add("caution.sealed");
            }
            if median(&worn.bleed) > worn.ledger.value(FigureId::SILVER_F_NONE) {
                add("caution.bare_edges");
            }
        }
        if asked.setting == "lacquer" {
            add("caution.T07");
        }
    }
    ids.into_iter().filter_map(caution_block).collect()
}

/// Fields for measured thicknesses of the part.
fn thickness(draft: &Draft, part: PartName, problem: impl Fn(&str) -> String) -> Block {
    let mut blocks = vec![Block::para(words::MEASUREMENT_TELLS_MORE)];
    for method in Method::ALL {
        let field = |end: &str| format!("{}_{end}", method.id());
        let (read, error) = (field("um"), field("error_um"));
        blocks.push(Block::Row {
            blocks: vec![
                text_field(
                    draft,
                    &format!("parts[part={}].{read}", part.id()),
                    [method.label(), "µm", words::READING_HINT],
                    problem(&read),
                ),
                text_field(
                    draft,
                    &format!("parts[part={}].{error}", part.id()),
                    [words::ERROR, "µm", words::ERROR_HINT],
                    problem(&error),
                ),
            ],
        });
    }
    Block::fold("care.measured", words::MEASURED, blocks)
}

/// The assumed thickness of new silver, and the one published figure for fused plate.
fn as_made(ledger: &Ledger) -> Block {
    let rows = words::MADE
        .iter()
        .zip(MADE)
        .map(|((_, name), id)| {
            let f = ledger.figure(id);
            vec![(*name).to_owned(), um(f.low), um(f.value), um(f.high)]
        })
        .collect();
    let (ratio, gauge) = (
        ledger.figure(FigureId::SILVER_ROLLED_FACE),
        ledger.figure(FigureId::SILVER_ROLLED_GAUGE),
    );
    let face = |ratio: f64, gauge_mm: f64| um(rolled_face_um(gauge_mm, ratio, 2.0));
    Block::fold(
        "care.made",
        words::AS_MADE,
        vec![
            Block::Table(Table {
                caption: words::AS_MADE_CAPTION.to_owned(),
                columns: words::AS_MADE_COLUMNS.map(str::to_owned).to_vec(),
                rows,
            }),
            Block::said(
                Tone::Quiet,
                words::rolled(
                    gauge.low,
                    gauge.high,
                    &face(ratio.low, gauge.low),
                    &face(ratio.low, gauge.high),
                    &face(ratio.high, gauge.low),
                    &face(ratio.high, gauge.high),
                ),
            ),
            Block::said(Tone::Quiet, words::SHIELD_IS_THICKER),
        ],
    )
}

fn basis() -> Block {
    let ledger = Ledger::standard();
    let display = ledger.value(FigureId::SILVER_LACQUER_DISPLAY);
    let used = ledger.figure(FigureId::SILVER_LACQUER_USED);
    Block::fold(
        "care.basis",
        words::BASIS,
        vec![Block::List {
            items: vec![
                words::HARDLY_MEASURED.to_owned(),
                words::WHAT_TAKES_SILVER.to_owned(),
                words::ONE_PACE.to_owned(),
                words::lacquer(display, used.low, used.high),
                words::CLASSES_OF_AIR.to_owned(),
            ],
        }],
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tray() -> Draft {
        Draft::parse(include_str!("../../tests/cases/worn_tray.json")).unwrap()
    }

    fn page(draft: &Draft) -> Vec<Block> {
        super::page(&Subject::new(draft.clone()))
    }

    fn text(draft: &Draft) -> String {
        serde_json::to_string(&page(draft)).unwrap()
    }

    fn asked(draft: &Draft, part: PartName) -> (Forecast, Forecast) {
        let (case, _) = draft.read();
        let worn = SampledPart::new(&leavewell_model::counsel::solve(&case), part);
        let make = |id, name| {
            let asked = EnteredHabit::new(draft, id, name, &worn.ledger);
            forecast(&worn, part, &asked, asked.a_year.unwrap(), 50.0).unwrap()
        };
        (make("a", "first"), make("b", "second"))
    }

    #[test]
    fn paste_four_times_a_year_lasts_less_than_a_bag_and_chalk_every_third_year() {
        let mut draft = tray();
        for (path, typed) in [
            ("care.a.setting", "home"),
            ("care.a.how", "paste"),
            ("care.a.times", "4"),
            ("care.b.setting", "bag"),
            ("care.b.how", "chalk"),
            ("care.b.times", "1"),
            ("care.b.in_years", "3"),
        ] {
            draft.set(path, typed);
        }
        draft.set_part("body", "bleed", "slight");
        let (a, b) = asked(&draft, PartName::Body);
        assert!(a.um_a_year[1] > 10.0 * b.um_a_year[1]);
        assert!(a.doubles.unwrap()[1] < b.doubles.unwrap()[1]);
        for f in [&a, &b] {
            assert!(
                f.bleed
                    .windows(2)
                    .all(|w| (0..3).all(|i| w[0][i] <= w[1][i]))
            );
            assert!(
                f.bleed
                    .iter()
                    .all(|[l, m, h]| 0.0 <= *l && l <= m && m <= h && *h <= 1.0)
            );
        }
        let text = text(&draft);
        for words in [
            "times as long",
            "care.fan",
            "care.section",
            "decades of this care",
        ] {
            assert!(text.contains(words), "{words}: {text}");
        }
    }

    #[test]
    fn an_impossible_number_is_kept_and_gets_a_message() {
        let mut draft = tray();
        draft.set("care.a.times", "-2");
        let shown = text(&draft);
        assert!(shown.contains("Use a number from 0 to 400") && shown.contains("marked above"));
        assert_eq!(draft.text("care.a.times"), "-2");
        let mut draft = tray();
        draft.set("parts[part=body].xrf_um", "-3");
        let shown = text(&draft);
        assert!(shown.contains("cannot be used here"), "{shown}");
        assert_eq!(draft.text("parts[part=body].xrf_um"), "-3");
    }

    #[test]
    fn a_let_in_shield_has_no_forecast_until_it_is_measured() {
        let mut draft = tray();
        draft.set("care.part", "shield");
        assert!(text(&draft).contains("thicker, by an unknown amount"));
        draft.set("parts[part=shield].xrf_um", "120");
        assert!(!text(&draft).contains("thicker, by an unknown amount"));
    }

    #[test]
    fn a_badly_worn_part_warns_against_rubbing() {
        let mut draft = tray();
        draft.set_part("body", "bleed", "much");
        let shown = text(&draft);
        assert!(shown.contains("should not be rubbed") && shown.contains("already past"));
        draft.set_part("body", "bleed", "none");
        let shown = text(&draft);
        assert!(!shown.contains("should not be rubbed") && !shown.contains("already past"));
    }

    #[test]
    fn a_class_of_air_states_that_its_limits_are_from_memory() {
        let mut draft = tray();
        assert!(!text(&draft).contains("Class of the air"));
        draft.set("care.a.setting", "coupon");
        draft.set("care.a.air", "ic3");
        let shown = text(&draft);
        assert!(shown.contains("Class of the air") && shown.contains("from memory"));
        let (worse, _) = asked(&draft, PartName::Body);
        draft.set("care.a.air", "ic1");
        let (better, _) = asked(&draft, PartName::Body);
        assert!(worse.um_a_year[1] > better.um_a_year[1]);
    }

    #[test]
    fn each_chosen_method_shows_its_caution() {
        let mut draft = tray();
        draft.set("care.a.how", "dip_bath");
        draft.set("care.b.setting", "lacquer");
        let shown = text(&draft);
        for id in [
            "caution.T05",
            "caution.T03",
            "caution.T07",
            "caution.sealed",
        ] {
            let words: String = leavewell_model::ledger::caution(id)
                .unwrap()
                .text
                .chars()
                .take(40)
                .collect();
            assert!(shown.contains(&words), "{id}");
        }
    }

    #[test]
    fn every_choice_has_its_figures() {
        let ledger = Ledger::standard();
        for (id, _) in words::WAYS {
            assert!(ledger.find(&format!("silver.loss.{id}.um")).is_some());
        }
        for (id, _) in words::AIRS {
            assert!(ledger.find(&format!("silver.air.{id}")).is_some());
        }
        for (id, _) in words::SETTINGS.iter().filter(|(id, _)| *id != "coupon") {
            assert!(ledger.find(&format!("silver.setting.{id}")).is_some());
        }
    }

    #[test]
    fn film_names_change_at_their_thresholds() {
        let ledger = Ledger::standard();
        let blue = ledger.value(FigureId::SILVER_FILM_BLUE);
        assert_eq!(stage_of(0.0, ledger), Tarnish::Bright);
        assert_eq!(stage_of(blue, ledger), Tarnish::Blue);
        assert_eq!(stage_of(blue - 0.01, ledger), Tarnish::Purple);
        assert_eq!(stage_of(1e9, ledger), Tarnish::Black);
    }
}
