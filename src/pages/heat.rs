//! How far soldering heat reaches: which old joints and fillings it may open.

use super::ask::{NumberField, choice, first, number};
use super::bench_inputs::Bench;
use super::block::{Block, Table, Tone};
use super::caution_blocks;
use super::heat_on_piece;
use super::heat_picture::picture;
use super::heat_reach::ReachRow;
use super::number_text::{chance, mm, range};
use super::sources_fold::sources_fold;
use super::wording::heat as words;
use leavewell_model::bench::{
    ALLOYS, Alloy, BaseMetal, HeatBands, HeatField, Reach, Spread, chance_lets_go, rod_length_mm,
    sheet_length_mm, solder_joint_c,
};
use leavewell_model::ledger::{FigureId, Ledger};
use leavewell_model::terms::Form;
use leavewell_model::terms::Kind;
use leavewell_model::terms::Treatment;
use leavewell_model::treatment::Mercury;
use leavewell_model::treatment::limits::melts_bond;

/// What gives way: id, name, figure for the temperature.
const LIMITS: [(&str, &str, FigureId); 8] = [
    (
        "bismuth_lead",
        words::BISMUTH_LEAD,
        FigureId::HEAT_LIMIT_BI_PB_SN,
    ),
    ("bismuth", words::BISMUTH, FigureId::HEAT_LIMIT_BI_SN),
    ("soft", words::SOFT, FigureId::GUARD_HEAT_SOFT_SOLDER),
    ("tin", words::TIN, FigureId::HEAT_LIMIT_TIN),
    ("pitting", words::PITTING, FigureId::HEAT_LIMIT_PITTING),
    (
        "silver_lead",
        words::SILVER_LEAD,
        FigureId::HEAT_LIMIT_SILVER_LEAD,
    ),
    ("lead", words::LEAD, FigureId::HEAT_LIMIT_LEAD),
    ("bond", words::BOND, FigureId::GUARD_H07_BOND),
];

/// Durations for which the page shows how far a brief heating spreads, in seconds.
const BRIEF_S: [f64; 4] = [1.0, 5.0, 10.0, 30.0];

/// Everything the section needs, once the fields are read.
struct Setup {
    rod: bool,
    metal: BaseMetal,
    conductivity: f64,
    alpha: f64,
    thickness_mm: (f64, f64, f64),
    loss: (f64, f64),
    joint_c: (f64, f64),
    ambient_c: f64,
    spread: Spread,
    /// The chosen solder; `None` for any permitted solder.
    solder: Option<Alloy>,
    /// Whether the user entered the temperature at the joint.
    own_joint: bool,
}

impl Setup {
    fn length(&self) -> fn(f64, f64, f64) -> f64 {
        if self.rod {
            rod_length_mm
        } else {
            sheet_length_mm
        }
    }

    /// Least and greatest reach of a temperature over the bands of uncertainty.
    fn reach(&self, threshold_c: f64) -> (Reach, Reach) {
        let at = |thickness: f64, loss: f64, joint: f64| {
            let field = HeatField {
                length_mm: self.length()(self.conductivity, thickness, loss),
                spread: self.spread,
            };
            field.reach(joint, self.ambient_c, threshold_c)
        };
        (
            at(self.thickness_mm.0, self.loss.1, self.joint_c.0),
            at(self.thickness_mm.2, self.loss.0, self.joint_c.1),
        )
    }
}

/// Builds the section.
pub(super) fn section(bench: &Bench<'_>) -> Block {
    let (fields, setup) = ask(bench);
    let (distance_field, distance) = distance(bench);
    let (what_field, what) = what_lies_there(bench);
    let mut blocks = Vec::new();
    let rows = setup
        .as_ref()
        .map(|setup| (setup, reaches(setup, bench.ledger)));
    match &setup {
        None => blocks.push(Block::said(Tone::Answer, words::NOT_YET)),
        Some(setup) => {
            blocks.push(Block::said(Tone::Answer, sentence(setup, bench.ledger)));
            blocks.extend(chance_at(bench, setup, distance, what));
        }
    }
    let situation = bench.solved.situation();
    if situation.mercury() != Mercury::NoSign {
        blocks.push(Block::said(Tone::Stop, words::MERCURY));
    }
    blocks.extend(heat_on_piece::blocks(
        bench,
        rows.as_ref()
            .map(|(setup, rows)| (&setup.spread, rows.as_slice(), table(rows))),
    ));
    blocks.extend(fields);
    blocks.push(Block::Row {
        blocks: vec![distance_field, what_field],
    });
    if let Some((setup, rows)) = &rows {
        blocks.push(Block::Picture(picture(
            &setup.spread,
            setup.rod,
            rows,
            distance,
            table(rows),
        )));
        blocks.push(brief(setup));
        blocks.extend(cautions(bench, setup));
    }
    blocks.push(Block::said(Tone::Quiet, words::ERRS));
    blocks.push(sources_fold("bench.heat.sources", bench.ledger, &SOURCES));
    Block::section("bench.heat", words::HEAT, blocks)
}

const SOURCES: [FigureId; 19] = [
    FigureId::GUARD_HEAT_H_FAR,
    FigureId::GUARD_HEAT_H_NEAR,
    FigureId::GUARD_HEAT_THICKNESS,
    FigureId::GUARD_HEAT_PATCH,
    FigureId::GUARD_HEAT_AMBIENT,
    FigureId::GUARD_HEAT_COPPER_K,
    FigureId::HEAT_K_BRASS,
    FigureId::HEAT_K_NICKEL_SILVER,
    FigureId::HEAT_K_BRITANNIA,
    FigureId::HEAT_ABOVE_LIQUID,
    FigureId::HEAT_EXTENT,
    FigureId::HEAT_DRAWN_HEIGHT,
    FigureId::HEAT_DRAWN_LENGTH,
    FigureId::HEAT_LIMIT_BI_PB_SN,
    FigureId::GUARD_HEAT_SOFT_SOLDER,
    FigureId::HEAT_LIMIT_TIN,
    FigureId::HEAT_LIMIT_PITTING,
    FigureId::HEAT_LIMIT_SILVER_LEAD,
    FigureId::GUARD_H07_BOND,
];

fn ask(bench: &Bench<'_>) -> (Vec<Block>, Option<Setup>) {
    let ledger = bench.ledger;
    let (form_field, form) = choice(
        bench.draft,
        "bench.heat.form",
        words::WHERE,
        "",
        &[
            ("disk", words::ON_A_BODY),
            ("strip", words::ALONG_A_SEAM),
            ("rod", words::ON_A_HANDLE),
        ],
    );
    let rod = form == "rod";
    let (metal_field, metal) = metal(bench);
    let (thick_field, thickness_mm) = thickness(bench, rod);
    let (solder_field, solder) = solder(bench);
    let (joint_field, joint_c) = joint(bench, solder);
    let (air_field, ambient_c) = number(
        bench.draft,
        NumberField {
            path: "bench.heat.air_c",
            label: words::ROOM,
            unit: "°C",
            hint: "",
            stand_in: Some(ledger.value(FigureId::GUARD_HEAT_AMBIENT)),
        },
    );
    let (patch_field, patch_mm) = number(
        bench.draft,
        NumberField {
            path: "bench.heat.patch_mm",
            label: words::PATCH,
            unit: "mm",
            hint: "",
            stand_in: Some(ledger.value(FigureId::GUARD_HEAT_PATCH)),
        },
    );
    let (extent_field, extent_mm) = extent(bench);
    let mut sizes = vec![thick_field, extent_field];
    if form == "disk" {
        sizes.push(patch_field);
    }
    let fields = vec![
        Block::Row {
            blocks: vec![form_field, metal_field],
        },
        Block::Row { blocks: sizes },
        Block::Row {
            blocks: vec![solder_field, joint_field, air_field],
        },
    ];
    let setup = (|| {
        let end_mm = extent_mm?;
        let patch = patch_mm.filter(|_| form == "disk");
        let loss = (
            ledger.value(FigureId::GUARD_HEAT_H_FAR).max(0.1),
            ledger.value(FigureId::GUARD_HEAT_H_NEAR).max(0.1),
        );
        Some(Setup {
            rod,
            metal,
            conductivity: metal.conductivity(ledger),
            alpha: metal.diffusivity(ledger),
            thickness_mm: thickness_mm.map(|(a, b, c)| (a.max(0.01), b.max(0.01), c.max(0.01)))?,
            loss: (loss.0.min(loss.1), loss.1.max(loss.0)),
            joint_c: joint_c?,
            ambient_c: ambient_c?,
            spread: match (form, patch) {
                ("disk", Some(patch_mm)) => Spread::Disk { patch_mm, end_mm },
                ("disk", None) => return None,
                _ => Spread::Strip { end_mm },
            },
            solder,
            own_joint: !bench.draft.text(JOINT).trim().is_empty(),
        })
    })();
    (fields, setup)
}

const THICKNESS: &str = "bench.heat.thickness_mm";
const JOINT: &str = "bench.heat.joint_c";

/// Thickness or diameter: as typed, or else the ledger's band.
fn thickness(bench: &Bench<'_>, rod: bool) -> (Block, Option<(f64, f64, f64)>) {
    let figure = bench.ledger.figure(FigureId::GUARD_HEAT_THICKNESS);
    let (field, typed) = number(
        bench.draft,
        NumberField {
            path: THICKNESS,
            label: if rod {
                words::DIAMETER
            } else {
                words::THICKNESS
            },
            unit: "mm",
            hint: words::THICKNESS_HINT,
            stand_in: Some(figure.value),
        },
    );
    let band = if bench.draft.text(THICKNESS).trim().is_empty() {
        Some((figure.low, figure.value, figure.high))
    } else {
        typed.map(|t| (t, t, t))
    };
    (field, band)
}

/// Temperature at the joint: as typed, or else from the solder.
fn joint(bench: &Bench<'_>, solder: Option<Alloy>) -> (Block, Option<(f64, f64)>) {
    let (field, typed) = number(
        bench.draft,
        NumberField {
            path: JOINT,
            label: words::JOINT,
            unit: "°C",
            hint: words::JOINT_HINT,
            stand_in: None,
        },
    );
    let band = if bench.draft.text(JOINT).trim().is_empty() {
        Some(match solder {
            None => solder_joint_c(bench.ledger),
            Some(alloy) => {
                let above = bench.ledger.figure(FigureId::HEAT_ABOVE_LIQUID);
                let liquid = alloy.liquid_c(bench.ledger);
                (liquid + above.low, liquid + above.high)
            }
        })
    } else {
        typed.map(|t| (t, t))
    };
    (field, band)
}

/// The metal. Defaults to what the piece is probably made of.
fn metal(bench: &Bench<'_>) -> (Block, BaseMetal) {
    let guess = BaseMetal::of(bench.solved.situation().posterior.top_kind());
    let options = first(
        BaseMetal::ALL.map(|m| (m.id(), metal_name(m))).to_vec(),
        guess.id(),
    );
    let (field, id) = choice(
        bench.draft,
        "bench.heat.metal",
        words::METAL,
        words::METAL_HINT,
        &options,
    );
    (field, BaseMetal::parse(id).unwrap_or(guess))
}

fn solder(bench: &Bench<'_>) -> (Block, Option<Alloy>) {
    let known = ALLOYS.iter().filter(|a| !a.cadmium);
    let options: Vec<(&'static str, &'static str)> = std::iter::once(("any", words::ANY_SOLDER))
        .chain(known.map(|a| (a.id, a.name)))
        .collect();
    let (field, id) = choice(
        bench.draft,
        "bench.heat.solder",
        words::SOLDER,
        "",
        &options,
    );
    (field, Alloy::parse(id))
}

/// How far the metal extends. Defaults to the size of the piece if recorded.
fn extent(bench: &Bench<'_>) -> (Block, Option<f64>) {
    let told = heat_on_piece::told_size_mm(bench);
    number(
        bench.draft,
        NumberField {
            path: "bench.heat.extent_mm",
            label: words::EXTENT,
            unit: "mm",
            hint: if told.is_none() {
                words::EXTENT_HINT
            } else if bench.case.piece.form == Some(Form::Tray) {
                words::EXTENT_FROM_LENGTH
            } else {
                words::EXTENT_FROM_HEIGHT
            },
            stand_in: Some(told.unwrap_or_else(|| bench.ledger.value(FigureId::HEAT_EXTENT))),
        },
    )
}

fn distance(bench: &Bench<'_>) -> (Block, Option<f64>) {
    let recorded = bench
        .case
        .parts
        .iter()
        .filter_map(|p| p.joint_distance_mm)
        .min_by(f64::total_cmp);
    number(
        bench.draft,
        NumberField {
            path: "bench.heat.distance_mm",
            label: words::DISTANCE,
            unit: "mm",
            hint: if recorded.is_some() {
                words::DISTANCE_RECORDED
            } else {
                ""
            },
            stand_in: recorded,
        },
    )
}

fn what_lies_there(bench: &Bench<'_>) -> (Block, &'static str) {
    choice(
        bench.draft,
        "bench.heat.next",
        words::NEXT,
        "",
        &[
            ("soft", words::NEXT_SOFT),
            ("bismuth_lead", words::NEXT_BISMUTH_LEAD),
            ("bismuth", words::NEXT_BISMUTH),
            ("tin", words::NEXT_TIN),
            ("lead", words::NEXT_LEAD),
            ("pitch", words::NEXT_PITCH),
        ],
    )
}

fn metal_name(metal: BaseMetal) -> &'static str {
    match metal {
        BaseMetal::Copper => words::COPPER,
        BaseMetal::Brass => words::BRASS,
        BaseMetal::NickelSilver => words::NICKEL_SILVER,
        BaseMetal::Britannia => words::BRITANNIA,
        BaseMetal::Steel => words::STEEL,
        BaseMetal::Silver => words::SILVER,
    }
}

fn sentence(setup: &Setup, ledger: &Ledger) -> String {
    let joint = range(
        &format!("{:.0}", setup.joint_c.0),
        &format!("{:.0}", setup.joint_c.1),
    );
    let threshold = ledger.value(FigureId::GUARD_HEAT_SOFT_SOLDER);
    let (near, far) = setup.reach(threshold);
    let told = match (near, far) {
        (_, Reach::Never) => {
            return words::never_opens(&joint, threshold);
        }
        (Reach::Whole, Reach::Whole) => words::EVERY_JOINT.to_owned(),
        (near, Reach::Whole) => words::from_at_least(&mm(distance_of(near, setup))),
        (near, far) => words::as_far_as(&range(
            &mm(distance_of(near, setup)),
            &mm(distance_of(far, setup)),
        )),
    };
    let source = if setup.own_joint {
        String::new()
    } else {
        format!(
            " ({})",
            setup.solder.map_or(words::ANY_SOLDER_SHORT, |a| a.name)
        )
    };
    words::can_open(&joint, &source, &told)
}

fn distance_of(reach: Reach, setup: &Setup) -> f64 {
    match reach {
        Reach::Never => 0.0,
        Reach::To(x) => x,
        Reach::Whole => match setup.spread {
            Spread::Strip { end_mm } | Spread::Disk { end_mm, .. } => end_mm,
        },
    }
}

fn chance_at(bench: &Bench<'_>, setup: &Setup, distance: Option<f64>, what: &str) -> Option<Block> {
    let distance = distance?;
    let ledger = bench.ledger;
    let lets_go_c = if what == "pitch" {
        let pitch = ledger.figure(FigureId::HEAT_LIMIT_PITCH);
        (pitch.low, pitch.high)
    } else {
        let id = LIMITS
            .iter()
            .find(|(id, ..)| *id == what)
            .map_or(FigureId::GUARD_HEAT_SOFT_SOLDER, |(.., figure)| *figure);
        let at = ledger.value(id);
        (at, at)
    };
    let p = chance_lets_go(
        &HeatBands {
            loss: setup.loss,
            thickness_mm: setup.thickness_mm,
            joint_c: setup.joint_c,
            lets_go_c,
            conductivity: setup.conductivity,
            ambient_c: setup.ambient_c,
        },
        setup.spread,
        setup.length(),
        distance,
    );
    Some(Block::para(words::chance_at(
        &mm(distance),
        &range(&lets_go_c.0.to_string(), &lets_go_c.1.to_string()),
        &chance(p),
    )))
}

fn reaches(setup: &Setup, ledger: &Ledger) -> Vec<ReachRow> {
    LIMITS
        .iter()
        .map(|(_, what, id)| {
            let at_c = ledger.value(*id);
            let (near, far) = setup.reach(at_c);
            ReachRow {
                what,
                at_c,
                near,
                far,
            }
        })
        .collect()
}

fn table(rows: &[ReachRow]) -> Table {
    let told = |reach: Reach| match reach {
        Reach::Never => words::NEVER_REACHED.to_owned(),
        Reach::To(x) => mm(x),
        Reach::Whole => words::ALL_OF_IT.to_owned(),
    };
    Table {
        caption: words::CAPTION.to_owned(),
        columns: words::COLUMNS.map(str::to_owned).to_vec(),
        rows: rows
            .iter()
            .map(|r| {
                vec![
                    r.what.to_owned(),
                    format!("{} °C", r.at_c),
                    told(r.near),
                    told(r.far),
                ]
            })
            .collect(),
    }
}

/// How far a brief heating is felt at all: the diffusion length sqrt(4 alpha t), with alpha in mm2/s and t
/// in seconds (any handbook of heat conduction).
fn brief(setup: &Setup) -> Block {
    let rows = BRIEF_S
        .iter()
        .map(|s| vec![format!("{s:.0} s"), mm((4.0 * setup.alpha * s).sqrt())])
        .collect();
    Block::fold(
        "bench.heat.brief",
        words::BRIEF,
        vec![
            Block::para(words::needs_time(&if setup.metal == BaseMetal::Britannia {
                metal_name(setup.metal).to_owned()
            } else {
                metal_name(setup.metal).to_lowercase()
            })),
            Block::Table(Table {
                caption: words::BRIEF_CAPTION.to_owned(),
                columns: words::BRIEF_COLUMNS.map(str::to_owned).to_vec(),
                rows,
            }),
        ],
    )
}

fn may_be_fused(bench: &Bench<'_>) -> bool {
    let posterior = bench.solved.situation().posterior;
    posterior.original_fused() + posterior.of(Kind::Rfp)
        >= bench.ledger.value(FigureId::GUARD_KIND_CHECK)
}

fn cautions(bench: &Bench<'_>, setup: &Setup) -> Vec<Block> {
    let ledger = bench.ledger;
    let is = |what: fn(Alloy) -> bool| setup.solder.is_some_and(what);
    let hard = is(|a| a.hard);
    let treatment = if hard {
        Treatment::HardSolder
    } else if is(|a| a.id == "bi_sn") {
        Treatment::LowMelt
    } else {
        Treatment::Solder
    };
    let mut blocks = Vec::new();
    if is(|a| a.id.starts_with("sn_pb")) {
        blocks.push(Block::said(Tone::Stop, words::LEADED));
    }
    if hard && may_be_fused(bench) {
        let too_hot = setup
            .solder
            .is_some_and(|a| melts_bond(a.liquid_c(ledger), ledger));
        blocks.push(Block::said(
            Tone::Stop,
            if too_hot {
                words::TOO_HOT_FOR_THE_BOND
            } else {
                words::BURNS_THE_PLATING
            },
        ));
    }
    if setup.metal == BaseMetal::Britannia
        && setup.joint_c.1 >= ledger.value(FigureId::HEAT_LIMIT_BRITANNIA)
    {
        blocks.push(Block::said(
            Tone::Stop,
            words::britannia_melts(ledger.value(FigureId::HEAT_LIMIT_BRITANNIA)),
        ));
    }
    blocks.extend(caution_blocks::of_treatment(treatment));
    blocks.extend(caution_blocks::named("caution.child"));
    if hard {
        blocks.extend(caution_blocks::named("caution.cadmium"));
    }
    blocks.extend(caution_blocks::named("caution.sealed"));
    blocks
}
