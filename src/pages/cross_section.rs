//! A cross-section of one part, to scale: the wall, and its silver enlarged.

use super::block::Table;
use super::part_words::{named, um};
use super::picture::{Anchor, Ink, Mark, Picture};
use super::wording::cross_section as words;
use leavewell_model::counsel::Worn;
use leavewell_model::ledger::FigureId;
use leavewell_model::maths::{deciles, median};
use leavewell_model::silver::Layer;
use leavewell_model::terms::Kind;
use leavewell_model::terms::PartName;

/// Height of the drawn metal in both boxes, in picture units.
const HIGH: f64 = 200.0;
/// Height of base metal left visible below the silver in the second box, in picture units.
const BASE: f64 = 24.0;
/// Width and left edges of the boxes, in picture units.
const WIDE: f64 = 130.0;
const FIRST: f64 = 4.0;
const SECOND: f64 = 170.0;
const TOP: f64 = 40.0;

/// Draws one face of a part in cross-section, with the loss from cleanings of `taken_um` each. Returns
/// `None` if there is no silver layer.
pub(super) fn cross_section(worn: &Worn, part: PartName, taken_um: f64) -> Option<Picture> {
    let cut = Cut::new(worn, taken_um)?;
    let mut marks = cut.areas();
    marks.extend(cut.words());
    let wall = um(cut.wall_um / 1000.0);
    let times = round(cut.enlarged / cut.per_um);
    Some(Picture {
        id: "care.section".to_owned(),
        title: words::picture_title(&um(cut.left_um), &named(part)),
        description: words::description(&wall, &times, &cut.cleanings()),
        width: 320.0,
        height: TOP + HIGH + 40.0,
        marks,
        table: cut.table(),
    })
}

/// The thicknesses drawn, and their scales.
struct Cut {
    wall_um: f64,
    made_um: f64,
    low_um: f64,
    left_um: f64,
    high_um: f64,
    taken_um: f64,
    /// Picture units per micrometre in the first box, and in the second.
    per_um: f64,
    enlarged: f64,
    /// Number of cleanings drawn together so that their loss is visible.
    many: Option<u32>,
    copper: bool,
}

impl Cut {
    fn new(worn: &Worn, taken_um: f64) -> Option<Self> {
        let column =
            |of: fn(&Layer) -> f64| -> Vec<f64> { worn.layers.iter().flatten().map(of).collect() };
        let made = column(|l| l.t0_um);
        if made.is_empty() {
            return None;
        }
        let made_um = median(&made);
        let [low_um, left_um, high_um] = deciles(&column(Layer::covered_um));
        let wall_um = 1000.0 * worn.ledger.value(FigureId::GUARD_HEAT_THICKNESS).max(0.01);
        let enlarged = (HIGH - BASE) / made_um.max(high_um);
        // The wall is drawn as copper only if copper is more likely than not.
        let copper = [Kind::Fps, Kind::Fpd, Kind::Rfp, Kind::Rep, Kind::Ecu];
        Some(Self {
            wall_um,
            made_um,
            low_um,
            left_um,
            high_um,
            taken_um,
            per_um: HIGH / wall_um,
            enlarged,
            many: visible(taken_um, left_um, enlarged),
            copper: worn.posterior.of_any(&copper) >= 0.5,
        })
    }

    /// Vertical position in the second box at which this much silver ends.
    fn at(&self, thick_um: f64) -> f64 {
        TOP + HIGH - BASE - thick_um * self.enlarged
    }

    fn base(&self) -> (Ink, &'static str) {
        if self.copper {
            (Ink::Copper, words::COPPER)
        } else {
            (Ink::Outline, words::BASE_METAL)
        }
    }

    fn areas(&self) -> Vec<Mark> {
        let area = |ink, x: f64, wide: f64, from: f64, to: f64| {
            Mark::path(
                ink,
                format!("M{x:.1} {from:.2}h{wide:.1}V{to:.2}h-{wide:.1}z"),
            )
        };
        let (bottom, floor) = (TOP + HIGH, self.at(0.0));
        let skin = TOP + self.left_um * self.per_um;
        let base = self.base().0;
        let mut marks = vec![
            area(base, FIRST, WIDE, skin, bottom),
            area(Ink::Silver, FIRST, WIDE, TOP, skin),
            area(base, SECOND, WIDE, floor, bottom),
            area(Ink::Silver, SECOND, WIDE, self.at(self.left_um), floor),
            area(
                Ink::Band,
                SECOND + WIDE - 22.0,
                22.0,
                self.at(self.high_um),
                self.at(self.low_um),
            ),
        ];
        if let Some(many) = self.many {
            let after = (self.left_um - f64::from(many) * self.taken_um).max(0.0);
            marks.push(area(
                Ink::Detail,
                SECOND + 6.0,
                70.0,
                self.at(self.left_um),
                self.at(after),
            ));
        }
        let (edge, made) = (FIRST + WIDE, self.at(self.made_um));
        marks.push(Mark::path(
            Ink::Quiet,
            format!("M{SECOND} {made:.2}h{WIDE}"),
        ));
        // Lines from the thin silver in the first box to the box that enlarges it.
        marks.push(Mark::path(
            Ink::Rule,
            format!(
                "M{edge} {TOP}L{SECOND} {:.2}M{edge} {skin:.2}L{SECOND} {floor}",
                self.at(self.left_um)
            ),
        ));
        marks
    }

    fn words(&self) -> Vec<Mark> {
        let bottom = TOP + HIGH;
        let (first, second) = (FIRST + WIDE / 2.0, SECOND + WIDE / 2.0);
        let times = round(self.enlarged / self.per_um);
        let heads = [
            (Ink::Outline, first, 16.0, words::WALL.to_owned()),
            (Ink::Outline, second, 16.0, words::SILVER.to_owned()),
            (Ink::Quiet, second, 32.0, words::enlarged(&times)),
            (
                Ink::Outline,
                first,
                TOP + HIGH / 2.0,
                self.base().1.to_owned(),
            ),
        ];
        let feet = [
            (FIRST, 16.0, words::thick(&um(self.wall_um / 1000.0))),
            (SECOND, 16.0, words::as_made(&um(self.made_um))),
            (SECOND, 32.0, self.cleanings()),
        ];
        let heads = heads
            .into_iter()
            .map(|(ink, x, y, text)| Mark::text(ink, Anchor::Middle, (x, y), text));
        let feet = feet
            .into_iter()
            .map(|(x, down, text)| Mark::text(Ink::Quiet, Anchor::Start, (x, bottom + down), text));
        heads.chain(feet).collect()
    }

    fn cleanings(&self) -> String {
        match self.many {
            Some(1) => words::ONE_CLEANING.to_owned(),
            Some(many) => words::cleanings(many),
            None => words::ALL_AT_ONCE.to_owned(),
        }
    }

    fn table(&self) -> Table {
        let row = |what: String, said: String| vec![what, said];
        Table {
            caption: words::CAPTION.to_owned(),
            columns: [words::WHAT, words::THICKNESS].map(str::to_owned).to_vec(),
            rows: vec![
                row(words::wall_of(self.base().1), um(self.wall_um)),
                row(words::MADE.to_owned(), um(self.made_um)),
                row(words::LEFT.to_owned(), um(self.left_um)),
                row(
                    words::BETWEEN.to_owned(),
                    words::between(&um(self.low_um), &um(self.high_um)),
                ),
                row(words::TAKES.to_owned(), um(self.taken_um)),
            ],
        }
    }
}

/// How many cleanings together remove a visible band: 1, 10, 100 or 1,000, but no more than is left.
/// Returns `None` if one cleaning removes it all.
fn visible(taken_um: f64, left_um: f64, per_um: f64) -> Option<u32> {
    let fits = |n: &u32| f64::from(*n) * taken_um <= left_um;
    let steps = [1, 10, 100, 1000];
    steps
        .into_iter()
        .filter(fits)
        .find(|n| f64::from(*n) * taken_um * per_um >= 6.0)
        .or_else(|| steps.into_iter().rfind(fits))
}

/// A magnification rounded to one figure.
fn round(times: f64) -> String {
    if times >= 10.0 {
        format!("{:.0}", (times / 5.0).round() * 5.0)
    } else {
        format!("{times:.0}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use leavewell_model::record::Draft;

    #[test]
    fn the_boxes_are_to_scale() {
        let text = include_str!("../../tests/cases/worn_tray.json");
        let (case, _) = Draft::parse(text).unwrap().read();
        let worn = Worn::new(&leavewell_model::counsel::solve(&case), PartName::Body);
        let picture = cross_section(&worn, PartName::Body, 0.07).unwrap();
        let left: Vec<f64> = worn
            .layers
            .iter()
            .flatten()
            .map(Layer::covered_um)
            .collect();
        let left = median(&left);
        // Reads the top and bottom of a rectangle such as "M4.0 40.00h130.0V..h-130.0z".
        let heights: Vec<f64> = picture
            .marks
            .iter()
            .filter_map(|m| match m {
                Mark::Path {
                    d,
                    ink: Ink::Silver,
                } => {
                    let top: f64 = d.split([' ', 'h']).nth(1).unwrap().parse().unwrap();
                    let end: f64 = d
                        .split('V')
                        .nth(1)
                        .unwrap()
                        .split('h')
                        .next()
                        .unwrap()
                        .parse()
                        .unwrap();
                    Some(end - top)
                }
                _ => None,
            })
            .collect();
        assert_eq!(heights.len(), 2);
        assert!(
            (heights[0] - left * HIGH / 800.0).abs() < 0.02,
            "{heights:?} {left}"
        );
        assert!(heights[1] > 10.0 * heights[0]);
        assert!(picture.title.contains("body"));
    }

    #[test]
    fn cleanings_are_grouped_until_their_loss_is_visible() {
        assert_eq!(visible(0.07, 12.0, 10.0), Some(10));
        assert_eq!(visible(0.07, 12.0, 0.1), Some(100));
        assert_eq!(visible(1.0, 12.0, 10.0), Some(1));
        assert_eq!(visible(20.0, 12.0, 10.0), None);
    }
}
