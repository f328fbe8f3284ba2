//! Numeric readings as evidence: how well each kind explains a density, a conductivity or an X-ray reading.
//!
//! Each reading is one seen observation of the cluster of physical measures, within the limits of the ladder:
//! the kind that explains it best can reach N, and none falls below X. A reading never implies a date. It
//! replaces the ladder's bands of the same instrument, so that one reading is not counted twice.

use super::judged_reading::JudgedReading;
use super::posterior::{Edge, Ladder};
use crate::ledger::ReadingOf;
use crate::ledger::{Figure, FigureId, FindingId, Ledger};
use crate::record::{Case, Spot, Xrf, hundredths};
use crate::terms::{ByLadderKind, Family, Kind, Letter};
use crate::terms::{Seen, any_of};

impl JudgedReading {
    /// Log-likelihood by kind on a ladder, from ln N down to ln X; `None` when it is the same for every kind
    /// and therefore no evidence.
    pub(super) fn log_likelihood(&self, ladder: &[f64; 5]) -> Option<ByLadderKind> {
        let (top, bottom) = (ladder[Letter::N as usize], ladder[Letter::X as usize]);
        let ln = self.penalty.map(|p| (top - p).max(bottom));
        let differs = ln.iter().any(|x| (x - ln[0]).abs() > 1e-9);
        (self.counts && differs).then_some(ln)
    }

    /// Likelihood by kind on a ladder, for judging whether two observations are consistent.
    pub(super) fn likelihood(&self, ladder: &Ladder) -> ByLadderKind {
        let (top, bottom) = (ladder.step(Letter::N), ladder.step(Letter::X));
        self.penalty.map(|p| (top * libm::exp(-p)).max(bottom))
    }
}

/// The 95th percentile of the standard normal: half the width of a central 90 % interval, in standard
/// deviations.
const Z95: f64 = 1.644_853_626_951_472_7;

/// The expected reading of a kind: a normal distribution with two spreads, from the middle of a figure to
/// either end.
#[derive(Clone, Copy)]
struct Expected {
    low: f64,
    middle: f64,
    high: f64,
}

impl Expected {
    fn of(figure: &Figure) -> Self {
        Self {
            low: figure.low,
            middle: figure.value,
            high: figure.high,
        }
    }

    /// Half the squared distance, and the width, of a reading with its own `spread`.
    fn misfit(self, read: f64, spread: f64) -> (f64, f64) {
        let side = |end: f64| {
            let own = (end - self.middle) / Z95;
            (own * own + spread * spread).sqrt().max(1e-9)
        };
        let (below, above) = (side(self.low), side(self.high));
        let z = (read - self.middle) / if read < self.middle { below } else { above };
        (0.5 * z * z, libm::log(below + above))
    }
}

/// Half the squared distance and the logarithm of the width, for each kind of the ladder.
type Misfits = [(f64, f64); Kind::LADDER.len()];

/// The metal a body is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Body {
    Silver,
    Copper,
    /// The late core of fused plate, copper alloyed with nickel.
    Late,
    Nickel,
    Britannia,
    Steel,
    Brass,
}

/// Ids of the bodies in the ledger, in the order of [`Body`].
const BODIES: [&str; 7] = [
    "silver",
    "copper",
    "late",
    "nickel",
    "britannia",
    "steel",
    "brass",
];
const DENSITIES: [FigureId; 7] = FigureId::family("measure.density.", BODIES, "");
const CONDUCTIVITIES: [FigureId; 7] = FigureId::family("measure.iacs.", BODIES, "");
/// Shares of the metals of [`Xrf::BASE`] by body; `None` means a trace.
const BASE_SHARES: [[Option<FigureId>; 7]; 4] = [
    FigureId::family_if_any("measure.core.", BODIES, ".nickel"),
    FigureId::family_if_any("measure.core.", BODIES, ".zinc"),
    FigureId::family_if_any("measure.core.", BODIES, ".tin"),
    FigureId::family_if_any("measure.core.", BODIES, ".iron"),
];
/// Thickness of the silver when new, by kind.
const LAYERS: [Option<FigureId>; Kind::COUNT] =
    FigureId::family_if_any("silver.t0.", Kind::CODES, "");

fn body(kind: Kind) -> Body {
    match kind {
        Kind::Sil | Kind::Wst => Body::Silver,
        Kind::Fpn => Body::Late,
        Kind::Clp | Kind::Est => Body::Steel,
        Kind::Frp | Kind::Ncp => Body::Brass,
        Kind::Ens | Kind::Uns => Body::Nickel,
        Kind::Ebm | Kind::Ubm => Body::Britannia,
        _ => Body::Copper,
    }
}

/// The penalties for misfits: the log of the greatest density that the narrowest curve of any kind could
/// have, minus the log of this kind's density at the reading.
#[allow(clippy::large_types_passed_by_value)] // one small table, made for this call
fn penalties(misfits: Misfits) -> ByLadderKind {
    let narrowest = misfits.iter().fold(f64::INFINITY, |n, m| n.min(m.1));
    misfits.map(|(half_square, width)| half_square + width - narrowest)
}

/// Every usable reading of the case, in a fixed order.
#[must_use]
pub fn readings(case: &Case, ledger: &Ledger) -> Vec<JudgedReading> {
    let m = &case.measures;
    let mut all = Vec::new();
    if let Some(d) = m.density {
        all.push(density(d.g_cm3, d.spread, ledger));
    }
    if let Some(i) = m.iacs {
        all.push(conductivity(i.percent, ledger));
    }
    if let Some(x) = m.xrf {
        all.extend(xray(case, &x, ledger));
    }
    let ladder = Ladder::of(ledger, Edge::Base);
    let reach = libm::log(ladder.step(Letter::N) / ladder.step(Letter::X));
    for reading in &mut all {
        let best = reading.penalty.iter().fold(f64::INFINITY, |a, b| a.min(*b));
        if best >= reach {
            reading.counts = false;
            reading
                .text
                .push_str(" No kind weighed here reads so, and it is not counted: measure again.");
        }
    }
    all
}

/// Volume shares of core and skin for the kind, at the middle and at both ends of the figures.
fn expected_density(kind: Kind, ledger: &Ledger) -> Expected {
    let core = Expected::of(ledger.figure(DENSITIES[body(kind) as usize]));
    let Some(layer) = LAYERS[kind.index()].filter(|_| kind.has_layer()) else {
        return core;
    };
    let layer = ledger.figure(layer);
    let sheet = ledger.value(if matches!(kind, Kind::Clp | Kind::Est) {
        FigureId::MEASURE_SHEET_STEEL
    } else {
        FigureId::MEASURE_SHEET_THIN
    });
    let silver = ledger.value(FigureId::METAL_SILVER_DENSITY);
    let faces = if kind == Kind::Fps { 1.0 } else { 2.0 };
    let mixed = |core: f64, um: f64| {
        let share = crate::bench::skin_share(um, faces, sheet.max(0.01));
        crate::bench::layered_density(core, silver, share)
    };
    Expected {
        low: mixed(core.low, layer.low),
        middle: mixed(core.middle, layer.value),
        high: mixed(core.high, layer.high),
    }
}

fn density(g_cm3: f64, spread: f64, ledger: &Ledger) -> JudgedReading {
    let own = ledger.value(FigureId::MEASURE_DENSITY_SPREAD);
    let whole = (spread * spread + own * own).sqrt();
    let expected = Kind::LADDER.map(|k| expected_density(k, ledger));
    let misfits = expected.map(|e| e.misfit(g_cm3, whole));
    JudgedReading {
        of: ReadingOf::Density,
        title: "Density by weighing in water",
        text: compared(
            &[
                &hundredths(g_cm3),
                " g/cm3, plus or minus ",
                &hundredths(spread.max(0.01)),
            ]
            .concat(),
            &expected,
            &misfits,
            " g/cm3",
        ),
        penalty: penalties(misfits),
        replaces: &[
            FindingId::P02,
            FindingId::P03,
            FindingId::P04,
            FindingId::P05,
        ],
        counts: true,
    }
}

fn conductivity(percent: f64, ledger: &Ledger) -> JudgedReading {
    let spread = ledger.value(FigureId::MEASURE_IACS_SPREAD);
    let expected = Kind::LADDER.map(|k| {
        let figure = match k {
            Kind::Ecu | Kind::Rep | Kind::Ucu => FigureId::MEASURE_IACS_COPPER_NEW,
            _ => CONDUCTIVITIES[body(k) as usize],
        };
        Expected::of(ledger.figure(figure))
    });
    let misfits = expected.map(|e| e.misfit(percent, spread));
    let mut penalty = penalties(misfits);
    // Whether the copper of fused plate conducts worse than later copper has not been tested on documented
    // pieces, so between copper bodies the reading counts only as likely against possible.
    let ladder = Ladder::of(ledger, Edge::Base);
    let untried = libm::log(ladder.step(Letter::L) / ladder.step(Letter::P));
    let copper = |i: usize| body(Kind::LADDER[i]) == Body::Copper;
    let best = (0..Kind::LADDER.len())
        .filter(|i| copper(*i))
        .fold(f64::INFINITY, |best, i| best.min(penalty[i]));
    for i in (0..Kind::LADDER.len()).filter(|i| copper(*i)) {
        penalty[i] = penalty[i].min(best + untried);
    }
    let mut text = compared(
        &[&hundredths(percent), " % of pure copper's conductivity"].concat(),
        &expected,
        &misfits,
        " %",
    );
    text.push_str(
        " No reading of documented fused plate is known to us, so it counts for little between one copper body and another.",
    );
    JudgedReading {
        of: ReadingOf::Conductivity,
        title: "Conductivity by meter",
        text,
        penalty,
        replaces: &[FindingId::P06, FindingId::P07, FindingId::P08],
        counts: true,
    }
}

fn xray(case: &Case, x: &Xrf, ledger: &Ledger) -> Option<JudgedReading> {
    let spread = ledger.value(FigureId::MEASURE_XRF_SPREAD);
    match x.spot {
        Spot::Worn => {
            let mut misfits = [(0.0, 0.0); Kind::LADDER.len()];
            let mut found = Vec::new();
            for ((metal, share), by_body) in Xrf::BASE.into_iter().zip(x.base).zip(BASE_SHARES) {
                let Some(share) = share else { continue };
                found.push([metal, " ", &hundredths(share), " %"].concat());
                for (sum, kind) in misfits.iter_mut().zip(Kind::LADDER) {
                    let id = by_body[body(kind) as usize].unwrap_or(FigureId::MEASURE_CORE_TRACE);
                    let figure = ledger.figure(id);
                    // The spread of a reading of an absent metal depends on the analyser, not on the kind, so
                    // the widths are left out.
                    sum.0 += Expected::of(figure).misfit(share, spread).0;
                }
            }
            // A body of silver has no spot where the silver is gone.
            if x.silver.is_some() {
                let solid = Expected::of(ledger.figure(FigureId::MEASURE_SKIN_OWN));
                let own = solid.misfit(x.silver.unwrap_or(0.0), spread).0;
                for (sum, kind) in misfits.iter_mut().zip(Kind::LADDER) {
                    if kind.family() == Family::Solid {
                        sum.0 += own;
                    }
                }
            }
            if found.is_empty() {
                return None;
            }
            let found = ["Of the base metal at a worn spot: ", &found.join(", ")].concat();
            Some(JudgedReading {
                of: ReadingOf::Xray,
                title: "X-ray reading of a worn spot",
                text: [&found, ": ", &fits(&misfits), "."].concat(),
                penalty: penalties(misfits),
                replaces: &[FindingId::P09, FindingId::P10, FindingId::P13],
                counts: true,
            })
        }
        Spot::Sound => {
            let silver = x.silver?;
            let expected = Kind::LADDER.map(|k| {
                let skin = match k {
                    Kind::Sil | Kind::Wst => FigureId::MEASURE_SKIN_OWN,
                    Kind::Fps | Kind::Fpd | Kind::Fpn => FigureId::MEASURE_SKIN_FUSED,
                    Kind::Clp => FigureId::MEASURE_SKIN_FOIL,
                    Kind::Frp => FigureId::MEASURE_SKIN_LEAF,
                    k if k.is_unsilvered() => FigureId::MEASURE_SKIN_BARE,
                    _ => FigureId::MEASURE_SKIN_PLATED,
                };
                Expected::of(ledger.figure(skin))
            });
            let misfits = expected.map(|e| e.misfit(silver, spread));
            // A user who entered the ratio of the copper lines has already given more than this one number
            // says.
            let ratio_told = case
                .findings
                .iter()
                .any(|a| matches!(a.id, FindingId::P11 | FindingId::P12) && a.seen == Seen::Yes);
            let more = if ratio_told {
                " The answer with the ratio of the copper lines says more, so this is not counted beside it."
            } else {
                ""
            };
            Some(JudgedReading {
                of: ReadingOf::Xray,
                title: "X-ray reading of sound silver",
                text: [
                    &hundredths(silver),
                    " % silver on a sound surface: the reading reaches only some thousandths of a millimetre deep, so a layer of sterling, or a thin layer over copper, reads like solid silver. By itself it never shows solid silver.",
                    more,
                ]
                .concat(),
                penalty: penalties(misfits),
                replaces: &[],
                counts: !ratio_told,
            })
        }
    }
}

/// The bodies that a reading fits, in words: those whose central 90 % contains it; none otherwise.
fn fits(misfits: &Misfits) -> String {
    let mut names: Vec<&str> = Vec::new();
    for (kind, (half_square, _)) in Kind::LADDER.into_iter().zip(misfits) {
        let name = match body(kind) {
            Body::Silver => "silver all through",
            Body::Late => "copper with nickel silver",
            Body::Steel => "steel",
            Body::Brass => "brass",
            Body::Nickel => "nickel silver",
            Body::Britannia => "Britannia metal",
            Body::Copper => "copper with a skin of silver",
        };
        if *half_square <= 0.5 * Z95 * Z95 && !names.contains(&name) {
            names.push(name);
        }
    }
    if names.is_empty() {
        return "fits none of these bodies well".to_owned();
    }
    format!("what {} gives", any_of(&names))
}

/// What was read, what fits it, and what the opposite case would have read: silver if the reading does not
/// fit silver, else copper.
fn compared(
    read: &str,
    expected: &[Expected; Kind::LADDER.len()],
    misfits: &Misfits,
    unit: &str,
) -> String {
    // Indices in Kind::LADDER: solid silver first, fused plate on both sides third.
    let (name, other) = if misfits[0].0 > 0.5 * Z95 * Z95 {
        ("solid silver", expected[0])
    } else {
        ("fused plate", expected[2])
    };
    [
        read,
        ": ",
        &fits(misfits),
        "; ",
        name,
        " would give ",
        &hundredths(other.low),
        " to ",
        &hundredths(other.high),
        unit,
        ".",
    ]
    .concat()
}
