//! What trade words mean, in plain words. One list serves both the screens, which explain a word at its first
//! use, and the printed sheets, which list the words they use.

use std::sync::OnceLock;

/// A word and its meaning.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Meaning {
    /// The word.
    pub word: &'static str,
    /// Its forms, in lower case, separated by `|`. Forms after a `;` are plain enough that a screen does not
    /// mark them, but a printed list still explains the word.
    forms: &'static str,
    /// What it means, in one sentence.
    pub meaning: &'static str,
}

const fn says(word: &'static str, forms: &'static str, meaning: &'static str) -> Meaning {
    Meaning {
        word,
        forms,
        meaning,
    }
}

/// Every word, in order. At most 64, so that a set of words fits in one 64-bit number.
pub const WORDS: [Meaning; 54] = [
    says(
        "auction commission",
        "commission|commissions",
        "The seller's fee to an auction house, a share of the hammer price.",
    ),
    says(
        "base metal",
        "base metal|base metals",
        "The copper, brass, nickel silver, Britannia metal, iron or steel under the silver.",
    ),
    says(
        "bleed",
        "bleed|bleeds|bleeding",
        "Base metal showing where the silver has worn through.",
    ),
    says(
        "break-even",
        "break-even|break-evens|break even|breaks even",
        "The price at which you neither gain nor lose.",
    ),
    says(
        "Britannia metal",
        "britannia metal;britannia",
        "A soft alloy, mostly tin, that melts low.",
    ),
    says(
        "buffed",
        "buffed|buffing",
        "Polished bright on a turning wheel, which takes metal away.",
    ),
    says(
        "buyer's premium",
        "buyer's premium|premium",
        "What a buyer pays the auction house on top of the hammer price.",
    ),
    says(
        "clearance wipe",
        "clearance wipe",
        "A wipe taken after work with lead, and tested for lead dust left behind.",
    ),
    says(
        "close plate",
        "close plate|close-plate|close-plated|close plating",
        "Silver foil held by tin on iron or steel.",
    ),
    says(
        "comparable",
        "comparable|comparables",
        "A sale of a similar piece, which helps to judge what this one would fetch.",
    ),
    says(
        "conductivity",
        "conductivity",
        "How well a metal carries electricity; it helps to tell one alloy from another.",
    ),
    says(
        "conservator",
        "conservator|conservators",
        "A person trained to look after old things and to keep as much of the original as possible.",
    ),
    says(
        "density",
        "density",
        "How heavy something is for its size; it helps to tell one metal from another.",
    ),
    says(
        "display only",
        "display only|for display only;display",
        "Not to be used for food or drink.",
    ),
    says(
        "electroplate",
        "electroplate|electroplated|electroplates|electroplating",
        "Base metal covered with silver by an electric current, from about 1840.",
    ),
    says(
        "engraving",
        "engraving|engraved",
        "A pattern or arms cut into the surface; a little metal is cut away.",
    ),
    says(
        "filled mount",
        "filled mount|filled mounts|lead fill|lead filling|lead fillings;filled",
        "A thin stamped border or foot, backed with lead, soft solder or pitch to hold its shape.",
    ),
    says(
        "fine silver",
        "fine silver|pure silver",
        "Silver with almost nothing else in it.",
    ),
    says(
        "finial",
        "finial|finials",
        "The knob or ornament on top of a cover.",
    ),
    says(
        "flat chasing",
        "flat chasing|flat-chased|flat chased|chasing|chased",
        "A pattern pressed into the surface with blunt tools; no metal is cut away.",
    ),
    says(
        "French plate",
        "french plate",
        "Silver leaf rubbed onto brass, bronze or copper with heat.",
    ),
    says(
        "fused plate",
        "fused plate|old sheffield plate",
        "Old Sheffield plate: silver and copper joined by heat, rolled out as one sheet, and then made into things.",
    ),
    says("gilding", "gilding|gilt|gilded", "A thin coat of gold."),
    says(
        "guard",
        "guard|guards",
        "A rule that forbids a treatment, or requires something before it.",
    ),
    says(
        "hallmark",
        "hallmark|hallmarks|hallmarked",
        "Marks struck by a testing office on solid silver or gold; marks on plate may only look like them.",
    ),
    says(
        "hammer",
        "hammer price|hammer",
        "The price at which a lot sells at auction, before fees.",
    ),
    says(
        "hard solder",
        "hard solder|hard-soldered|silver solder",
        "A solder of silver alloy or brass, which melts at far higher heat than soft solder.",
    ),
    says(
        "lacquer",
        "lacquer|lacquered|lacquers",
        "A clear coat that keeps tarnish away for a time.",
    ),
    says(
        "let-in shield",
        "let-in shield|let in",
        "A piece of thicker silver set into fused plate to carry engraved arms.",
    ),
    says(
        "loupe",
        "loupe|loupes",
        "A small magnifying glass held close to the eye.",
    ),
    says(
        "margin scheme",
        "margin scheme",
        "A way of taxing a dealer on the difference between buying and selling price.",
    ),
    says(
        "mount",
        "mount|mounts",
        "A border, foot, handle or ornament made separately and attached.",
    ),
    says(
        "nickel silver",
        "nickel silver",
        "A white alloy of copper, nickel and zinc; there is no silver in it.",
    ),
    says(
        "noise",
        "noise",
        "A difference too small to mean anything, given how much we do not know.",
    ),
    says(
        "originality",
        "originality;original",
        "How much of what the maker made is still there.",
    ),
    says(
        "Part",
        ";condition by part",
        "A named piece of the whole, such as a foot or spout, with a separate condition.",
    ),
    says(
        "patina",
        "patina",
        "The look that age, use and care give to a surface.",
    ),
    says(
        "pitch",
        "pitch",
        "A dark resin that hardens, used to fill thin metal.",
    ),
    says(
        "plating works",
        "plating works",
        "A workshop that plates metal by electricity; it needs a permit for its poisons, so ask to see it.",
    ),
    says(
        "point count",
        "point count|point counts",
        "A way to measure how much of a part is bare: you count the points of a grid that fall on bare metal.",
    ),
    says(
        "preventive conservation",
        "preventive conservation;preventive",
        "Looking after the surroundings and use of a piece, without touching the piece itself.",
    ),
    says(
        "regret",
        "regret|regrets",
        "How much less a choice brings than the best one would have, once you know the outcome.",
    ),
    says(
        "remedial conservation",
        "remedial conservation;remedial",
        "Work on a piece to stop further damage, or to strengthen it.",
    ),
    says(
        "re-plated",
        "re-plated|re-plating|re-plate|replated|replating|replate",
        "Covered with new silver by electricity after it left the maker.",
    ),
    says(
        "reserve",
        "reserve",
        "The lowest price a seller will accept at auction.",
    ),
    says(
        "restoration",
        "restoration",
        "Work on a sound piece so that people can better enjoy, understand or use it.",
    ),
    says(
        "reversibility",
        "reversibility;undone",
        "How far work can be undone without harm.",
    ),
    says(
        "seam",
        "seam|seams",
        "The line where two edges of sheet metal meet and are joined.",
    ),
    says(
        "soft solder",
        "soft solder|soft-soldered|soft solders|solder|soldered|soldering",
        "A low-melting metal that joins parts; old solder usually holds lead.",
    ),
    says(
        "stamped",
        "stamped|die-stamped",
        "Pressed out of thin sheet by driving it into a shaped steel die.",
    ),
    says(
        "sterling",
        "sterling",
        "The usual alloy of solid silver: nearly all silver, with a little copper.",
    ),
    says(
        "tarnish",
        "tarnish|tarnished|tarnishes",
        "The dark layer that sulphur in the air forms on silver.",
    ),
    says("tinning", "tinning|tinned", "A lining of tin over copper."),
    says(
        "X-ray reading",
        "x-ray reading|x-ray readings|x-ray|xrf",
        "A reading of which metals are at the surface, made with X-rays; it takes nothing off.",
    ),
];

/// A word found in a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FoundWord {
    /// Where it begins, in bytes.
    pub start: usize,
    /// Where it ends.
    pub end: usize,
    /// Its index in [`WORDS`].
    pub at: usize,
}

/// The first word at or after a byte offset in a text that is not among those done. Matches whole words in
/// any case, and the longest form where several begin alike. `done` has a bit for each of [`WORDS`].
#[must_use]
pub fn next_word(text: &str, from: usize, done: u64) -> Option<FoundWord> {
    find(text, from, done, screen_forms())
}

/// The words of [`WORDS`] that a printed text needs to explain, one bit each.
#[must_use]
pub fn words_in(text: &str) -> u64 {
    let (mut done, mut from) = (0, 0);
    while let Some(found) = find(text, from, done, print_forms()) {
        done |= 1 << found.at;
        // A shorter word may be part of a longer one that is done.
        from = found.end;
    }
    done
}

/// The forms that begin with each letter, the longest first, each with the index of its word.
type Forms = [Vec<(&'static str, usize)>; 26];

fn screen_forms() -> &'static Forms {
    static FORMS: OnceLock<Forms> = OnceLock::new();
    FORMS.get_or_init(|| forms(|all| all.split(';').next().unwrap_or_default()))
}

fn print_forms() -> &'static Forms {
    static FORMS: OnceLock<Forms> = OnceLock::new();
    FORMS.get_or_init(|| forms(|all| all))
}

fn forms(wanted: fn(&'static str) -> &'static str) -> Forms {
    let mut by_letter: Forms = Default::default();
    for (at, word) in WORDS.iter().enumerate() {
        for form in wanted(word.forms).split(['|', ';']) {
            let letter = form.bytes().next().and_then(letter);
            if let Some(list) = letter.and_then(|letter| by_letter.get_mut(letter)) {
                let place = list.iter().position(|(other, _)| other.len() < form.len());
                list.insert(place.unwrap_or(list.len()), (form, at));
            }
        }
    }
    by_letter
}

fn find(text: &str, from: usize, done: u64, forms: &Forms) -> Option<FoundWord> {
    let bytes = text.as_bytes();
    let inside = |byte: u8| byte.is_ascii_alphanumeric() || byte == b'-';
    let mut start = from;
    let mut before = from
        .checked_sub(1)
        .and_then(|place| bytes.get(place))
        .is_some_and(|byte| inside(*byte));
    while let Some(&byte) = bytes.get(start) {
        if !before
            && let Some(forms) = letter(byte).and_then(|letter| forms.get(letter))
            && let Some(rest) = bytes.get(start..)
        {
            let whole = |form: &str| {
                rest.get(..form.len())
                    .is_some_and(|head| head.eq_ignore_ascii_case(form.as_bytes()))
                    && !rest.get(form.len()).is_some_and(|byte| inside(*byte))
            };
            if let Some((form, at)) = forms.iter().find(|(form, _)| whole(form)) {
                let end = start + form.len();
                if done >> *at & 1 == 0 {
                    return Some(FoundWord {
                        start,
                        end,
                        at: *at,
                    });
                }
                // A word that is done hides the shorter ones in it.
                start = end;
                continue;
            }
        }
        before = inside(byte);
        start += 1;
    }
    None
}

/// The index of a letter in the alphabet.
fn letter(byte: u8) -> Option<usize> {
    let small = byte.to_ascii_lowercase();
    small
        .is_ascii_lowercase()
        .then(|| usize::from(small - b'a'))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(text: &str, done: u64) -> Vec<(&str, &'static str)> {
        let (mut all, mut done, mut from) = (Vec::new(), done, 0);
        while let Some(word) = next_word(text, from, done) {
            all.push((&text[word.start..word.end], WORDS[word.at].word));
            done |= 1 << word.at;
            from = word.end;
        }
        all
    }

    #[test]
    fn words_are_in_order_and_each_meaning_is_one_plain_sentence() {
        let names = WORDS.map(|w| w.word.to_lowercase().replace('-', ""));
        assert!(names.is_sorted(), "{names:?}");
        assert!(WORDS.len() <= 64);
        let mut seen = std::collections::BTreeSet::new();
        for Meaning {
            word,
            forms,
            meaning,
        } in WORDS
        {
            assert!(
                meaning.ends_with('.') && forms == forms.to_lowercase(),
                "{word}"
            );
            assert!(meaning.len() <= 120, "{word}: {}", meaning.len());
            for form in forms.split(['|', ';']).filter(|form| !form.is_empty()) {
                assert!(form.bytes().next().and_then(letter).is_some(), "{form}");
                assert!(seen.insert(form), "{form} stands for two words");
                let whole = next_word(form, 0, 0).is_none_or(|found| found.end == form.len());
                assert!(whole, "{form} is not found whole");
            }
        }
    }

    #[test]
    fn whole_words_are_found_in_any_case() {
        assert_eq!(
            found("Bleed shows; the MOUNTS are sound.", 0),
            [("Bleed", "bleed"), ("MOUNTS", "mount")]
        );
        assert_eq!(
            found("an amount, nosebleeds, bleed-through and ad-hammer", 0),
            []
        );
        assert_eq!(found("bleed", 0), [("bleed", "bleed")]);
        assert_eq!(
            found("“bleed”, £reserve", 0),
            [("bleed", "bleed"), ("reserve", "reserve")]
        );
        assert_eq!(found("", 0), []);
    }

    #[test]
    fn the_longest_form_wins() {
        assert_eq!(
            found("a hammer price and soft-soldered filled mounts", 0),
            [
                ("hammer price", "hammer"),
                ("soft-soldered", "soft solder"),
                ("filled mounts", "filled mount")
            ]
        );
    }

    #[test]
    fn a_word_is_found_once_and_not_at_all_when_done() {
        assert_eq!(
            found("bleed, bleeding and tarnish", 0),
            [("bleed", "bleed"), ("tarnish", "tarnish")]
        );
        let bleed = next_word("bleed", 0, 0).unwrap().at;
        assert_eq!(
            found("bleed and tarnish", 1 << bleed),
            [("tarnish", "tarnish")]
        );
        // A shorter word is not found inside a longer one that is done.
        let hard = next_word("hard solder", 0, 0).unwrap().at;
        assert_eq!(found("hard solder", 1 << hard), []);
    }

    #[test]
    fn print_explains_more_than_a_screen_marks() {
        let original = words_in("It can be undone; half of it is original.");
        assert_eq!(original.count_ones(), 2);
        assert_eq!(found("It can be undone; half of it is original.", 0), []);
        assert_eq!(words_in("nothing here"), 0);
    }
}
