//! What can be said of one part: what is asked of most parts at once, the rest in boxes to open.
//!
//! Invariant: a field that holds something is always shown, whether or not such a part usually has it.

use leavewell_model::terms::{
    BleedWord, Corrosion, Dents, Engraving, Fill, FillState, Form, Gilding, Interior, Joint,
    Lacquer, Lead, Liner, Loss, Material, Mount, PartName, Repair, Replaced, Split, Tarnish, Word,
};
use yew::prelude::*;

use crate::app::pages::Page;
use crate::app::parts::choice::{LabelledId, choices, pick, radios};
use crate::app::parts::element::{El, el};
use crate::app::parts::field::number_field;
use crate::app::parts::marks::fold;
use crate::app::parts::share::is_counted;
use crate::app::parts::words::joined;
use crate::app::state::Target;
use crate::app::wording::condition as text;
use crate::app::wording::controls::{NO, YES};

/// The fields of one part. Each part has different ones. Fields that come and go are hidden, not removed, so
/// that the others keep their elements.
pub(super) fn part_fields(page: Page, part: PartName) -> Html {
    let asked = PartFields { page, part };
    let metal = asked.is_metal();
    let silver = el("div", "")
        .hidden(!metal && !asked.holds("bleed") && !asked.holds("tarnish"))
        .put(bleed(page, part))
        .el(tarnish(page, part));
    el("section", "part-fields")
        .attr("aria-labelledby", "part-title")
        // A list that a person has touched does not go back by itself, so each piece has fields of its own.
        .key(&joined(&[part.id(), "-", &page.open.piece.to_string()]))
        .el(el("h2", "").attr("id", "part-title").text(part.label()))
        .el(asked.word(
            "material",
            text::MATERIAL,
            choices!(Material),
            asked.may_be_of_wood(),
        ))
        .el(silver)
        .el(seen_at_once(asked, metal))
        .put(asked.fold(text::DAMAGE, &DAMAGE_FIELDS, damage(asked, metal)))
        .put(asked.fold(text::INSIDE_IT, &INSIDE_FIELDS, inside(asked, metal)))
        .html()
}

/// Fields in the box of damage.
const DAMAGE_FIELDS: [&str; 4] = ["split", "replaced", "mount", "engraving"];

/// Fields in the box of fillings, linings and coats.
const INSIDE_FIELDS: [&str; 8] = [
    "hollow",
    "fill",
    "fill_state",
    "interior",
    "liner",
    "gilding",
    "lacquer",
    "wax",
];

/// What is asked of most parts.
fn seen_at_once(asked: PartFields, metal: bool) -> El {
    let joint = asked.read::<Joint>("joint");
    let faulty = joint.is_some_and(|j| !matches!(j, Joint::Sound | Joint::NeatRepair));
    let repaired = matches!(joint, Some(Joint::GreyRepair | Joint::NeatRepair));
    let distance = number_field(
        asked.page,
        Target::Part(asked.part, "joint_distance_mm"),
        text::JOINT_DISTANCE,
    );
    el("div", "field-grid")
        .el(asked.word("joint", text::JOINT, choices!(Joint), true))
        .el(asked.word("repair", text::REPAIR, choices!(Repair), repaired))
        .el(el("div", "").hidden(!faulty).put(distance))
        .el(asked.word("dents", text::DENTS, choices!(Dents), metal))
        .el(asked.word("loss", text::LOSS, choices!(Loss), true))
        .el(asked.word("corrosion", text::CORROSION, choices!(Corrosion), metal))
        .el(asked.word("lead", text::LEAD, choices!(Lead), metal))
}

fn damage(asked: PartFields, metal: bool) -> El {
    let mounted = metal && asked.may_have_a_mount();
    let engraved = metal && asked.may_be_engraved();
    el("div", "field-grid")
        .el(asked.word("split", text::SPLIT, choices!(Split), true))
        .el(asked.word("replaced", text::REPLACED, choices!(Replaced), true))
        .el(asked.word("mount", text::MOUNT, choices!(Mount), mounted))
        .el(asked.word("engraving", text::ENGRAVING, choices!(Engraving), engraved))
}

fn inside(asked: PartFields, metal: bool) -> El {
    let filled = asked
        .read::<Fill>("fill")
        .is_some_and(|fill| fill != Fill::None);
    let yes_no = || vec![("yes", YES), ("no", NO)];
    el("div", "field-grid")
        .el(asked.word(
            "hollow",
            text::HOLLOW,
            yes_no(),
            metal && asked.may_be_hollow(),
        ))
        .el(asked.word(
            "fill",
            text::FILL,
            choices!(Fill),
            metal && asked.may_be_filled(),
        ))
        .el(asked.word("fill_state", text::FILL_STATE, choices!(FillState), filled))
        .el(asked.word(
            "interior",
            text::INTERIOR,
            choices!(Interior),
            asked.is_inside(),
        ))
        .el(asked.word("liner", text::LINER, choices!(Liner), asked.is_inside()))
        .el(asked.word(
            "gilding",
            text::GILDING,
            choices!(Gilding),
            asked.is_inside(),
        ))
        .el(asked.word("lacquer", text::LACQUER, choices!(Lacquer), metal))
        .el(asked.word("wax", text::WAX, yes_no(), asked.may_hold_candles()))
}

/// A part that is asked about.
#[derive(Clone, Copy)]
struct PartFields<'a> {
    page: Page<'a>,
    part: PartName,
}

impl PartFields<'_> {
    fn text(self, field: &str) -> String {
        self.page.open.part_text(self.part, field)
    }

    /// The recorded word of a field.
    fn read<W: Word>(self, field: &str) -> Option<W> {
        self.page.open.part_word(self.part, field)
    }

    fn holds(self, field: &str) -> bool {
        !self.text(field).is_empty()
    }

    /// A list to pick from, hidden where it cannot apply and nothing stands in it.
    fn word(
        self,
        field: &'static str,
        words: [&'static str; 3],
        choices: Vec<LabelledId>,
        applies: bool,
    ) -> El {
        let target = Target::Part(self.part, field);
        el("div", "")
            .hidden(!applies && !self.holds(field))
            .put(pick(self.page, target, words, choices))
    }

    /// A box to open, whose line says how many of its fields hold something.
    fn fold(self, title: &'static str, fields: &[&str], body: El) -> Html {
        let said = fields.iter().filter(|field| self.holds(field)).count();
        fold("part-more", text::box_title(title, said), body.html())
    }

    fn is_metal(self) -> bool {
        let material = self.read::<Material>("material");
        matches!(material, None | Some(Material::Metal | Material::Unknown))
    }

    /// Parts that may be of wood, ivory, glass or the like.
    fn may_be_of_wood(self) -> bool {
        matches!(
            self.part,
            PartName::Handle
                | PartName::Finial
                | PartName::Foot
                | PartName::Base
                | PartName::Bottle
                | PartName::Liner
                | PartName::Blade
                | PartName::Fitting
        )
    }

    /// Parts that are often hollow and filled.
    fn may_be_filled(self) -> bool {
        self.may_be_hollow() || self.part == PartName::Base
    }

    fn may_be_hollow(self) -> bool {
        matches!(
            self.part,
            PartName::Handle
                | PartName::Border
                | PartName::Foot
                | PartName::Finial
                | PartName::Stem
                | PartName::Branch
        ) || (self.holds_candles() && self.part == PartName::Body)
    }

    fn holds_candles(self) -> bool {
        matches!(
            self.page.open.form(),
            Some(Form::Candlestick | Form::Candelabrum)
        )
    }

    fn may_hold_candles(self) -> bool {
        self.holds_candles()
            || matches!(self.part, PartName::Nozzle | PartName::Pan)
            || self.page.open.form() == Some(Form::Snuffers)
    }

    fn is_inside(self) -> bool {
        matches!(self.part, PartName::Interior | PartName::Liner)
    }

    fn may_have_a_mount(self) -> bool {
        !matches!(
            self.part,
            PartName::Interior
                | PartName::Bottle
                | PartName::Blade
                | PartName::Liner
                | PartName::Base
        )
    }

    fn may_be_engraved(self) -> bool {
        !matches!(
            self.part,
            PartName::Interior | PartName::Liner | PartName::Fitting | PartName::Bottle
        )
    }
}

/// The colours beside the words are in the style sheet, by the id of each stage.
fn tarnish(page: Page, part: PartName) -> El {
    el("div", "swatches").put(radios(
        page,
        Target::Part(part, "tarnish"),
        text::TARNISH,
        choices!(Tarnish),
    ))
}

/// How much base metal shows: in words, or as a share.
fn bleed(page: Page, part: PartName) -> Html {
    let text = |field: &str| page.open.part_text(part, field);
    let hint = if !text("count_bare").is_empty() {
        text::COUNT_STANDS
    } else if is_counted(&text("bleed")) {
        text::COUNT_GIVES_WAY
    } else {
        text::SHARE_HINT
    };
    el("div", "bleed-fields")
        .put(radios(
            page,
            Target::Part(part, "bleed"),
            text::BLEED,
            choices!(BleedWord),
        ))
        .put(number_field(
            page,
            Target::Share(part),
            [text::SHARE, hint, text::SHARE_UNIT],
        ))
        .html()
}
