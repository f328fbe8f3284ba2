//! Reads what was measured with instruments. A reading is used whole or not at all, and then the reason is given.

use serde_json::{Map, Value};

use super::wording as words;
use super::{Reader, Section, hundredths};
use crate::ledger::{FigureId, FindingId, Ledger};
use crate::record::circumstances::MeasuredAs;
use crate::record::schema::{NumberRange, number_range};
use crate::record::{Answer, Density, Iacs, Measures, Spot, Weighing, Xrf};
use crate::terms::Seen;

impl Reader {
    /// What was said of the piece when it was measured, with or without a reading.
    pub(super) fn measured_as(&mut self, root: &Map<String, Value>) -> MeasuredAs {
        let s = self.section(root, "measures");
        MeasuredAs {
            loaded: self.flag(&s, "density.loaded"),
            hollow_sealed: self.flag(&s, "density.hollow_sealed"),
            organic: self.flag(&s, "density.organic"),
            filled_behind: self.flag(&s, "iacs.loaded"),
        }
    }

    /// Readings with a number. Each is used whole or not at all, and then the reason is given.
    pub(super) fn measures(
        &mut self,
        root: &Map<String, Value>,
        findings: &[Answer],
        measured: MeasuredAs,
    ) -> Measures {
        let s = self.section(root, "measures");
        for group in ["density", "iacs", "xrf"] {
            if s.get(group).is_some_and(|held| !held.is_object()) {
                self.problem(s.at(group), words::no_object(group), words::LEFT_OUT);
            }
        }
        Measures {
            density: self.density(&s, measured),
            iacs: self.iacs(&s, findings, measured),
            xrf: self.xrf(&s),
        }
    }

    /// True, with the reason given, when one of these ticks rules the reading out.
    pub(super) fn refused(&mut self, s: &Section, ticks: &[(&str, Option<bool>, &str)]) -> bool {
        let mut refused = false;
        for (field, tick, why) in ticks {
            if *tick == Some(true) {
                refused = true;
                self.problem(s.at(field), words::not_used(why), words::NOT_USED_REMEDY);
            }
        }
        refused
    }

    pub(super) fn density(&mut self, s: &Section, measured: MeasuredAs) -> Option<Density> {
        let ledger = Ledger::standard();
        let own = |id: FigureId| ledger.value(id);
        let (air_field, water_field) = ("density.in_air_g", "density.in_water_g");
        let air = self.number(s, air_field);
        let water = self.number(s, water_field);
        let water_c = self.number(s, "density.water_c");
        let readable = self.number(s, "density.readable_g");
        if s.get(air_field).is_none() && s.get(water_field).is_none() {
            return None;
        }
        let refused = self.refused(
            s,
            &[
                ("density.loaded", measured.loaded, words::LOADED),
                (
                    "density.hollow_sealed",
                    measured.hollow_sealed,
                    words::HOLLOW,
                ),
                ("density.organic", measured.organic, words::ORGANIC),
            ],
        );
        for field in [air_field, water_field] {
            if s.get(field).is_none() {
                self.problem(
                    s.at(field),
                    words::ONE_WEIGHT.to_owned(),
                    words::ONE_WEIGHT_REMEDY,
                );
            }
        }
        // Something that could not be read has its problem already; a default for it would be a guess.
        let unread = |field: &str, got: Option<f64>| s.get(field).is_some() && got.is_none();
        if refused || unread("density.water_c", water_c) || unread("density.readable_g", readable) {
            return None;
        }
        let weighing = Weighing {
            in_air_g: air?,
            in_water_g: water?,
            water_c: water_c.unwrap_or_else(|| own(FigureId::MEASURE_DENSITY_WATER)),
            readable_g: readable.unwrap_or_else(|| own(FigureId::MEASURE_DENSITY_READABLE)),
            unnoticed_cm3: own(FigureId::MEASURE_DENSITY_UNNOTICED),
        };
        let (Some(g_cm3), Some(spread)) = (weighing.density(), weighing.spread()) else {
            self.problem(
                s.at(water_field),
                words::WATER_NOT_LESS.to_owned(),
                words::WATER_NOT_LESS_REMEDY,
            );
            return None;
        };
        let fault = if g_cm3 > own(FigureId::MEASURE_DENSITY_MOST) {
            words::TOO_HEAVY
        } else if g_cm3 < own(FigureId::MEASURE_DENSITY_LEAST) {
            words::TOO_LIGHT
        } else {
            return Some(Density { g_cm3, spread });
        };
        self.problem(
            s.at(water_field),
            words::density(&hundredths(g_cm3), fault),
            words::DENSITY_REMEDY,
        );
        None
    }

    pub(super) fn iacs(
        &mut self,
        s: &Section,
        findings: &[Answer],
        measured: MeasuredAs,
    ) -> Option<Iacs> {
        let most = Ledger::standard().value(FigureId::MEASURE_IACS_MOST);
        let range = NumberRange {
            most,
            ..*number_range("measures.iacs.percent")
        };
        let percent = self.number_of(s, "iacs.percent", &range);
        let part = self.word(s, "iacs.where");
        s.get("iacs.percent")?;
        let (curved, thin) = (self.flag(s, "iacs.curved"), self.flag(s, "iacs.thin"));
        let refused = self.refused(
            s,
            &[
                ("iacs.curved", curved, words::CURVED),
                ("iacs.thin", thin, words::THIN),
                ("iacs.loaded", measured.filled_behind, words::FILLED),
            ],
        );
        let magnetic = findings
            .iter()
            .any(|a| a.id == FindingId::P01 && a.seen == Seen::Yes);
        if magnetic {
            self.problem(
                s.at("iacs.percent"),
                words::MAGNETIC.to_owned(),
                words::MAGNETIC_REMEDY,
            );
        }
        let percent = percent.filter(|_| !refused && !magnetic)?;
        Some(Iacs { percent, part })
    }

    pub(super) fn xrf(&mut self, s: &Section) -> Option<Xrf> {
        let limit = |id: FigureId| Ledger::standard().value(id);
        let fields = [
            "xrf.silver_pct",
            "xrf.nickel_pct",
            "xrf.zinc_pct",
            "xrf.tin_pct",
            "xrf.iron_pct",
            "xrf.copper_pct",
            "xrf.antimony_pct",
        ];
        let shares = fields.map(|f| self.number(s, f));
        let spot: Option<Spot> = self.word(s, "xrf.spot");
        if fields.iter().all(|f| s.get(f).is_none()) {
            return None;
        }
        if fields
            .iter()
            .zip(&shares)
            .any(|(f, x)| s.get(f).is_some() && x.is_none())
        {
            return None;
        }
        let Some(spot) = spot else {
            if s.get("xrf.spot").is_none() {
                self.problem(
                    s.at("xrf.spot"),
                    words::NO_SPOT.to_owned(),
                    words::NO_SPOT_REMEDY,
                );
            }
            return None;
        };
        let sum: f64 = shares.iter().flatten().sum();
        if sum > limit(FigureId::MEASURE_XRF_SUM) {
            self.problem(
                s.at(fields[0]),
                words::sum(&hundredths(sum)),
                words::SUM_REMEDY,
            );
            return None;
        }
        let silver = shares[0];
        if spot == Spot::Worn && silver.is_some_and(|x| x > limit(FigureId::MEASURE_XRF_BARE)) {
            self.problem(
                s.at("xrf.spot"),
                words::NOT_WORN_THROUGH.to_owned(),
                words::NOT_WORN_THROUGH_REMEDY,
            );
            return None;
        }
        let used = match spot {
            Spot::Sound => &shares[..1],
            Spot::Worn => &shares[1..5],
        };
        if used.iter().all(Option::is_none) {
            let (what, field) = match spot {
                Spot::Sound => (words::THE_SILVER, fields[0]),
                Spot::Worn => (words::OTHER_METALS, fields[1]),
            };
            self.problem(
                s.at(field),
                words::xrf_does_not_say(what),
                words::XRF_DOES_NOT_SAY_REMEDY,
            );
            return None;
        }
        // Shares of the base metal alone, so that what silver is left on the spot does not matter.
        // If copper is not given, it makes up the rest.
        let base = if shares[5].is_some() { sum } else { 100.0 } - silver.unwrap_or(0.0);
        let of_base = |i: usize| shares[i].filter(|_| base > 0.0).map(|x| 100.0 * x / base);
        Some(Xrf {
            spot,
            silver,
            base: [of_base(1), of_base(2), of_base(3), of_base(4)],
        })
    }
}
