//! Money against originality: what each plan brings, and how much of the first surface it keeps.

use leavewell_model::case::Currency;
use leavewell_model::report::{Band, CourseReport};
use yew::prelude::*;

use super::figure::{Figure, LINE, words};
use super::outcomes::{class_of, named};
use super::placing::{Marked, Place, placed};
use super::scale::{Scale, anchor, count, lines};
use crate::app::parts::words::{money, money_band, percent};

const TOP: f64 = 64.0;
const BOTTOM: f64 = 330.0;

/// What the picture needs.
#[derive(Clone, Debug, PartialEq, Properties)]
pub struct PlaneProps {
    /// The plans.
    pub courses: Vec<CourseReport>,
    /// Steps of the plan advised.
    pub advised: Vec<&'static str>,
    /// What amounts are in.
    pub currency: Currency,
}

/// Plans that fall on the same spot.
struct Spot {
    gain: f64,
    low: f64,
    high: f64,
    originality: f64,
    name: Vec<String>,
    class: Classes,
}

/// Plans as points.
#[component]
pub fn Plane(props: &PlaneProps) -> Html {
    let PlaneProps {
        courses: all,
        advised,
        currency,
    } = props;
    let courses = &few(all, advised);
    let scale = Scale::holding(
        courses
            .iter()
            .flat_map(|c| [c.net_gain.p10, c.net_gain.p90])
            .chain(std::iter::once(0.0)),
    );
    let spots = spots(courses, advised, scale);
    let edge = unbeaten(courses);
    let marked: Vec<Marked> = spots.iter().map(|spot| spot.marked(scale)).collect();
    let places = placed(&marked, 22.0, BOTTOM - 4.0);
    let bottom = BOTTOM + 6.0;
    let (least, most) = scale.ends();
    html! {
        <Figure
            id="plane"
            title={title(courses, advised)}
            desc="Further right is more money than by leaving it; further up keeps more of what is original. The level \
                  line through a point holds 8 outcomes in 10. Dashes join the plans that nothing beats on both counts."
            height={bottom + 56.0}
            head={["Plan", "Against leaving it", "Originality kept", "Beaten on both counts"].map(AttrValue::from).to_vec()}
            rows={table(courses, *currency)}
        >
            { words(&["Originality kept: all".to_owned()], "2%", 14.0, "chart-quiet", "start") }
            { words(&["none".to_owned()], "2%", bottom + 15.0, "chart-quiet", "start") }
            { words(
                &["as it is".to_owned()],
                &scale.at(0.0),
                bottom + 32.0,
                "chart-quiet",
                anchor(scale.place(0.0)),
            ) }
            { words(&[money(least, *currency)], "2%", bottom + 49.0, "chart-quiet", "start") }
            { words(&["against leaving it".to_owned()], "50%", bottom + 49.0, "chart-quiet", "middle") }
            { words(&[money(most, *currency)], "98%", bottom + 49.0, "chart-quiet", "end") }
            <line class="chart-axis" x1="2%" x2="98%" y1={px(bottom)} y2={px(bottom)} />
            <line class="chart-zero" x1={scale.at(0.0)} x2={scale.at(0.0)} y1="22" y2={px(bottom)} />
            for pair in edge.windows(2) {
                <line
                    class="chart-edge"
                    x1={scale.at(pair[0].0)}
                    y1={px(height_of(pair[0].1))}
                    x2={scale.at(pair[1].0)}
                    y2={px(height_of(pair[1].1))}
                />
            }
            for (spot, place) in spots.iter().zip(&places) {
                { range(spot, *place, scale) }
            }
            for (spot, place) in spots.iter().zip(&places) {
                { label(spot, *place, scale) }
            }
            for spot in &spots {
                <g class={spot.class.clone()}>
                    <circle class="chart-point" cx={scale.at(spot.gain)} cy={px(height_of(spot.originality))} r="6" />
                </g>
            }
        </Figure>
    }
}

impl Spot {
    fn marked(&self, scale: Scale) -> Marked {
        Marked {
            across: scale.place(self.gain),
            range: (scale.place(self.low), scale.place(self.high)),
            down: height_of(self.originality),
            words: self.name.clone(),
        }
    }
}

/// A point's range, and a line to its words where they stand off.
fn range(spot: &Spot, place: Place, scale: Scale) -> Html {
    let y = height_of(spot.originality);
    let x = scale.at(spot.gain);
    let middle = place.top + LINE * count(spot.name.len()) / 2.0;
    html! {
        <g class={spot.class.clone()}>
            <line class="chart-range is-thin" x1={scale.at(spot.low)} x2={scale.at(spot.high)} y1={px(y)} y2={px(y)} />
            if place.far {
                <line class="chart-leader" x1={x.clone()} y1={px(y)} x2={x} y2={px(middle)} />
            }
        </g>
    }
}

fn label(spot: &Spot, place: Place, scale: Scale) -> Html {
    html! {
        <g class={spot.class.clone()} transform={format!("translate({} 0)", place.aside)}>
            { words(&spot.name, &scale.at(spot.gain), place.top + 13.0, "chart-name chart-over", place.anchor) }
        </g>
    }
}

/// The plans a person can tell apart here: the advised one, leaving it, replating, and then those
/// nothing beats before the others.
fn few(courses: &[CourseReport], advised: &[&'static str]) -> Vec<CourseReport> {
    const MOST: usize = 5;
    let rank = |c: &CourseReport| {
        if c.steps == advised || c.steps == ["T00"] || c.steps == ["T14a"] {
            0
        } else if beaten(c, courses) {
            2
        } else {
            1
        }
    };
    let mut few: Vec<CourseReport> = courses.to_vec();
    few.sort_by_key(rank);
    few.truncate(MOST);
    few
}

/// The points; plans that fall together share one.
fn spots(courses: &[CourseReport], advised: &[&'static str], scale: Scale) -> Vec<Spot> {
    let mut spots: Vec<Spot> = Vec::new();
    for course in courses {
        let is_advised = course.steps == advised;
        let said = named(course, is_advised);
        let near = |s: &&mut Spot| {
            (scale.place(s.gain) - scale.place(course.net_gain.p50)).abs() < 3.0
                && (height_of(s.originality) - height_of(course.originality)).abs() < 8.0
        };
        if let Some(spot) = spots.iter_mut().find(near) {
            spot.name.extend(lines(&format!("and {said}"), 22));
            spot.low = spot.low.min(course.net_gain.p10);
            spot.high = spot.high.max(course.net_gain.p90);
            if is_advised {
                spot.class = class_of(course, true);
            }
        } else {
            spots.push(Spot {
                gain: course.net_gain.p50,
                low: course.net_gain.p10,
                high: course.net_gain.p90,
                originality: course.originality,
                name: lines(&said, 22),
                class: class_of(course, is_advised),
            });
        }
    }
    spots
}

/// Gain and originality of the plans that no other beats on both counts, most original first.
fn unbeaten(courses: &[CourseReport]) -> Vec<(f64, f64)> {
    let mut edge: Vec<(f64, f64)> = courses
        .iter()
        .filter(|c| c.barred.is_empty() && !beaten(c, courses))
        .map(|c| (c.net_gain.p50, c.originality))
        .collect();
    edge.sort_by(|a, b| b.1.total_cmp(&a.1));
    edge
}

fn beaten(course: &CourseReport, all: &[CourseReport]) -> bool {
    all.iter()
        .filter(|other| other.barred.is_empty())
        .any(|other| {
            let (money, kept) = (
                other.net_gain.p50 - course.net_gain.p50,
                other.originality - course.originality,
            );
            money >= 0.0 && kept >= 0.0 && (money > 0.0 || kept > 0.0)
        })
}

fn height_of(originality: f64) -> f64 {
    BOTTOM - originality.clamp(0.0, 1.0) * (BOTTOM - TOP)
}

fn px(y: f64) -> String {
    format!("{y:.1}")
}

fn title(courses: &[CourseReport], advised: &[&'static str]) -> &'static str {
    match courses.iter().find(|c| c.steps == advised) {
        Some(course) if beaten(course, courses) => {
            "Another plan keeps as much and does as well or better in money"
        }
        Some(_) => "No plan beats the one advised in money and in originality at once",
        None => "What each plan brings, and what it keeps",
    }
}

fn table(courses: &[CourseReport], currency: Currency) -> Vec<Vec<String>> {
    courses
        .iter()
        .map(|c| {
            let band = Band {
                p10: c.net_gain.p10,
                p50: c.net_gain.p50,
                p90: c.net_gain.p90,
            };
            vec![
                c.name.clone(),
                money_band(band, currency),
                percent(c.originality),
                if beaten(c, courses) { "yes" } else { "no" }.to_owned(),
            ]
        })
        .collect()
}
