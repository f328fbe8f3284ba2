//! Money against originality: what each plan gains, and how much of the original surface it keeps.

use leavewell_model::report::CourseReport;
use leavewell_model::terms::Currency;
use leavewell_model::terms::ShortSort;
use leavewell_model::terms::Treatment;
use leavewell_pages::wrapped;
use yew::prelude::*;

use super::figure::{Frame, LINE, dot, figure, stroke, word, words};
use super::outcomes::{class_of, named, scale_of};
use super::placing::{Marked, Placement, placed};
use super::scale::{Scale, anchor, count};
use crate::app::parts::element::{El, el, group};
use crate::app::parts::words::{gain_band, joined, money};
use crate::app::wording::charts as text;
use leavewell_model::terms::percent;

const TOP: f64 = 64.0;
const BOTTOM: f64 = 330.0;

/// Plans that share one point.
struct CoincidingPlans {
    gain: f64,
    low: f64,
    high: f64,
    originality: f64,
    name: Vec<String>,
    class: &'static str,
}

/// The plans as points.
pub fn plane(plans: &[&CourseReport], advised: &[Treatment], currency: Currency) -> Html {
    let courses = &few(plans, advised);
    let scale = scale_of(courses);
    let spots = spots(courses, advised, scale);
    let edge = unbeaten(courses);
    let marked: Vec<Marked> = spots.iter().map(|spot| spot.marked(scale)).collect();
    let places = placed(&marked, 22.0, BOTTOM - 4.0);
    let bottom = BOTTOM + 6.0;
    let (least, most) = scale.ends();
    let frame = Frame {
        id: "plane",
        title: title(courses, advised).to_owned(),
        desc: text::PLANE_READ,
        height: bottom + 56.0,
        head: &text::PLANE_HEAD,
        rows: table(courses, currency),
    };
    let quiet = |text: &str, x, y, anchor| word(text, x, y, "chart-quiet", anchor);
    let zero = scale.place(0.0);
    let at = |(gain, kept)| (scale.place(gain), height_of(kept));
    let mut edges = group();
    for pair in edge.windows(2) {
        edges = edges.put(stroke("chart-edge", at(pair[0]), at(pair[1])));
    }
    let drawing = group()
        .put(quiet(text::PLANE_TOP, 2.0, 14.0, "start"))
        .put(quiet(text::PLANE_FOOT, 2.0, bottom + 15.0, "start"))
        .put(quiet(text::AS_IT_IS, zero, bottom + 32.0, anchor(zero)))
        .put(quiet(&money(least, currency), 2.0, bottom + 49.0, "start"))
        .put(quiet(text::PLANE_ACROSS, 50.0, bottom + 49.0, "middle"))
        .put(quiet(&money(most, currency), 98.0, bottom + 49.0, "end"))
        .put(stroke("chart-axis", (2.0, bottom), (98.0, bottom)))
        .put(stroke("chart-zero", (zero, 22.0), (zero, bottom)))
        .el(edges)
        .el(group().each(spots.iter().zip(&places), |(spot, place)| {
            range(spot, *place, scale)
        }))
        .el(group().each(spots.iter().zip(&places), |(spot, place)| {
            label(spot, *place, scale)
        }))
        .el(group().each(&spots, |spot| {
            el("g", spot.class).put(dot("chart-point", at((spot.gain, spot.originality))))
        }))
        .html();
    figure(frame, drawing)
}

impl CoincidingPlans {
    fn marked(&self, scale: Scale) -> Marked {
        Marked {
            across: scale.place(self.gain),
            range: (scale.place(self.low), scale.place(self.high)),
            down: height_of(self.originality),
            words: self.name.clone(),
        }
    }
}

/// The range of a point, and a line to its label if the label is far away.
fn range(spot: &CoincidingPlans, place: Placement, scale: Scale) -> El {
    let y = height_of(spot.originality);
    let x = scale.place(spot.gain);
    let middle = place.top + LINE * count(spot.name.len()) / 2.0;
    let range = el("g", spot.class).put(stroke(
        "chart-range is-thin",
        (scale.place(spot.low), y),
        (scale.place(spot.high), y),
    ));
    if place.far {
        range.put(stroke("chart-leader", (x, y), (x, middle)))
    } else {
        range
    }
}

fn label(spot: &CoincidingPlans, place: Placement, scale: Scale) -> El {
    let aside = place.aside.to_string();
    el("g", spot.class)
        .set("transform", joined(&["translate(", &aside, " 0)"]))
        .put(words(
            &spot.name,
            scale.place(spot.gain),
            place.top + 13.0,
            "chart-name chart-over",
            place.anchor,
        ))
}

/// The few plans that fit the chart: the advised one, leaving it, replating, and then the unbeaten plans
/// before the others.
fn few<'a>(courses: &[&'a CourseReport], advised: &[Treatment]) -> Vec<&'a CourseReport> {
    const MOST: usize = 5;
    let rank = |c: &CourseReport| {
        if c.steps == advised || c.steps == [Treatment::Leave] || c.steps == [Treatment::Replate] {
            0
        } else if beaten(c, courses) {
            2
        } else {
            1
        }
    };
    let mut few = courses.to_vec();
    few.order_by_key(|course| rank(course));
    few.truncate(MOST);
    few
}

/// The points. Plans at the same position share one.
fn spots(courses: &[&CourseReport], advised: &[Treatment], scale: Scale) -> Vec<CoincidingPlans> {
    let mut spots: Vec<CoincidingPlans> = Vec::new();
    for course in courses {
        let is_advised = course.steps == advised;
        let said = named(course, is_advised);
        let near = |s: &&mut CoincidingPlans| {
            (scale.place(s.gain) - scale.place(course.net_gain.p50)).abs() < 3.0
                && (height_of(s.originality) - height_of(course.originality)).abs() < 8.0
        };
        if let Some(spot) = spots.iter_mut().find(near) {
            spot.name.extend(wrapped(&text::and_plan(&said), 22));
            spot.low = spot.low.min(course.net_gain.p10);
            spot.high = spot.high.max(course.net_gain.p90);
            if is_advised {
                spot.class = class_of(course, true);
            }
        } else {
            spots.push(CoincidingPlans {
                gain: course.net_gain.p50,
                low: course.net_gain.p10,
                high: course.net_gain.p90,
                originality: course.originality,
                name: wrapped(&said, 22),
                class: class_of(course, is_advised),
            });
        }
    }
    spots
}

/// The gain and originality of the plans that no other beats on both, most original first.
fn unbeaten(courses: &[&CourseReport]) -> Vec<(f64, f64)> {
    let mut edge: Vec<(f64, f64)> = courses
        .iter()
        .filter(|c| c.barred.is_empty() && !beaten(c, courses))
        .map(|c| (c.net_gain.p50, c.originality))
        .collect();
    edge.order_by(|a, b| b.1.total_cmp(&a.1));
    edge
}

fn beaten(course: &CourseReport, all: &[&CourseReport]) -> bool {
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

fn title(courses: &[&CourseReport], advised: &[Treatment]) -> &'static str {
    match courses.iter().find(|c| c.steps == advised) {
        Some(course) if beaten(course, courses) => text::ADVISED_IS_BEATEN,
        Some(_) => text::ADVISED_IS_UNBEATEN,
        None => text::PLANS_BY_BOTH,
    }
}

fn table(courses: &[&CourseReport], currency: Currency) -> Vec<Vec<String>> {
    courses
        .iter()
        .map(|c| {
            vec![
                c.name.clone(),
                gain_band(c.net_gain, currency),
                percent(c.originality),
                text::beaten(beaten(c, courses)).to_owned(),
            ]
        })
        .collect()
}
