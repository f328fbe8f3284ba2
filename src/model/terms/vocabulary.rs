//! The closed lists of words a case may use, each word with its stable id and its label.

/// Defines an enum whose variants carry a stable id (for files) and a label (for people).
macro_rules! vocabulary {
    ($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident = $id:literal, $label:literal;)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name { $($(#[$vdoc])* #[doc = $label] $variant,)+ }

        impl $name {
            /// Every value, in the order shown.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)+];

            /// The id of every value, in the order of [`Self::ALL`]; also the members of a family of figures.
            pub const IDS: [&'static str; [$($id,)+].len()] = [$($id,)+];

            /// The id used in files.
            #[must_use]
            pub fn id(self) -> &'static str {
                match self { $(Self::$variant => $id,)+ }
            }

            /// The words shown to people.
            #[must_use]
            pub fn label(self) -> &'static str {
                match self { $(Self::$variant => $label,)+ }
            }

            /// The value with this id.
            #[must_use]
            pub fn parse(id: &str) -> Option<Self> {
                match id { $($id => Some(Self::$variant),)+ _ => None }
            }
        }

        impl crate::terms::Word for $name {
            fn ids() -> Vec<&'static str> { vec![$($id,)+] }
            fn from_id(id: &str) -> Option<Self> { Self::parse(id) }
        }
    };
}

vocabulary! {
    /// What the piece is for.
    Form {
        CoffeePot = "coffee_pot", "Coffee pot";
        Teapot = "teapot", "Teapot";
        Tankard = "tankard", "Tankard or mug";
        Tray = "tray", "Tray or salver";
        Candlestick = "candlestick", "Candlestick";
        Basket = "basket", "Basket";
        Tureen = "tureen", "Tureen or covered dish";
        Sauceboat = "sauceboat", "Sauceboat or cream jug";
        Cooler = "cooler", "Wine cooler or coaster";
        Box = "box", "Box or caddy";
        Cutlery = "cutlery", "Cutlery or skewer";
        Snuffers = "snuffers", "Snuffers";
        Cruet = "cruet", "Cruet";
        Inkstand = "inkstand", "Inkstand";
        Salts = "salts", "Salts";
        Coaster = "coaster", "Coaster";
        Urn = "urn", "Urn";
        WaterDish = "water_dish", "Dish with a water jacket";
        Candelabrum = "candelabrum", "Candelabrum";
        Other = "other", "Something else";
    }
}

vocabulary! {
    /// How a piece came to its owner. It sets how common each kind is before anything is looked at.
    CameFrom {
        Household = "household", "From a household drawer or an inheritance";
        Sale = "sale", "From a general sale or shop";
        Dealer = "dealer", "From a dealer in old plate";
    }
}

vocabulary! {
    /// An instrument for looking at a piece.
    Instrument {
        Magnet = "magnet", "A magnet";
        Loupe = "loupe", "A loupe (small magnifying glass)";
        Scales = "scales", "Scales that weigh in water";
        Meter = "meter", "An eddy-current meter";
        Xrf = "xrf", "An X-ray analyser (XRF)";
    }
}

vocabulary! {
    /// A named part of a piece.
    PartName {
        Body = "body", "Body";
        Rim = "rim", "Rim";
        Foot = "foot", "Foot";
        Spout = "spout", "Spout";
        Handle = "handle", "Handle";
        Finial = "finial", "Finial or knob";
        Cover = "cover", "Cover or lid";
        Border = "border", "Border or stamped mount";
        Edge = "edge", "Edges";
        Shield = "shield", "Shield or arms";
        Interior = "interior", "Inside";
        Base = "base", "Underside";
        Nozzle = "nozzle", "Nozzle";
        Pan = "pan", "Drip pan";
        Stem = "stem", "Stem or column";
        Branch = "branch", "Branch or arm";
        Frame = "frame", "Frame";
        Bottle = "bottle", "Bottle or pot";
        Blade = "blade", "Blade, bowl or tines";
        Liner = "liner", "Liner";
        Fitting = "fitting", "Fitting: tap, iron, burner or jacket";
    }
}

vocabulary! {
    /// How the user answers a finding. No answer is a fourth state and is not recorded.
    Seen {
        Yes = "seen", "Seen";
        No = "absent", "Looked, not there";
        Unsure = "unsure", "Not sure";
    }
}

vocabulary! {
    /// How much base metal shows, in words.
    BleedWord {
        None = "none", "None";
        Slight = "slight", "A trace: about 1 in 100";
        Some = "some", "Some: about 5 in 100";
        Much = "much", "Much: about 20 in 100";
        Most = "most", "Most: nearly half or more";
    }
}

vocabulary! {
    /// Stages of tarnish, lightest first.
    Tarnish {
        Bright = "bright", "Bright";
        FaintYellow = "faint_yellow", "Faint yellow";
        YellowGold = "yellow_gold", "Yellow to gold";
        Brown = "brown", "Brown or red-brown";
        Purple = "purple", "Purple";
        Blue = "blue", "Blue";
        Grey = "grey", "Grey, patchy";
        Black = "black", "Black";
    }
}

vocabulary! {
    /// State of the joints of a part.
    Joint {
        Sound = "sound", "Sound";
        Open = "open", "Open seam";
        Leaking = "leaking", "Leaks or has a hole";
        GreyRepair = "grey_repair", "Old grey repair, looks like lead";
        NeatRepair = "neat_repair", "Old repair, neat";
    }
}

vocabulary! {
    /// What is known about lead in a part.
    Lead {
        Present = "present", "Lead found by a test";
        Absent = "absent", "Tested: no lead released";
        NotFound = "not_found", "Analysed: no lead in it";
    }
}

vocabulary! {
    /// Dents and distortion.
    Dents {
        None = "none", "None";
        Minor = "minor", "Small dents";
        Moderate = "moderate", "Deep dents or out of shape";
        Split = "split", "Crease or split";
    }
}

vocabulary! {
    /// What lines the inside.
    Interior {
        Silvered = "silvered", "Silver";
        Tinned = "tinned", "Grey tin";
        Gilt = "gilt", "Gilt";
        Bare = "bare", "Bare copper, brass or grey metal";
        Lacquered = "lacquered", "Lacquered, waxed or glued";
    }
}

vocabulary! {
    /// Active corrosion.
    Corrosion {
        None = "none", "None";
        Green = "green", "Green spots or crust";
        WhitePowder = "white_powder", "White powder";
        Rust = "rust", "Rust";
    }
}

vocabulary! {
    /// A stamped mount, backed with soft metal.
    Mount {
        Sound = "sound", "Silver whole";
        GreyWear = "grey_wear", "Worn grey on the high points";
        FillShowing = "fill_showing", "Filling shows";
    }
}

vocabulary! {
    /// Splits and cracks.
    Split {
        None = "none", "None";
        Crease = "crease", "A crease, not through";
        Through = "through", "Through the metal";
    }
}

vocabulary! {
    /// Metal that is no longer there.
    Loss {
        None = "none", "Nothing missing";
        Small = "small", "A small piece missing";
        Large = "large", "A large piece missing";
    }
}

vocabulary! {
    /// A fault that can be shown at a place on a part.
    SpotFault {
        SmallDent = "small_dent", "Small dent";
        DeepDent = "deep_dent", "Deep dent";
        Scratch = "scratch", "Scratch";
        BareMetal = "bare", "Base metal showing";
        Crease = "crease", "Crease, not through";
        Split = "split", "Split or crack";
        SmallLoss = "small_loss", "Small piece missing";
        LargeLoss = "large_loss", "Large piece missing";
        OpenJoint = "open_joint", "Open seam or joint";
        Leak = "leak", "Leak or hole";
        GreyRepair = "grey_repair", "Old grey repair, looks like lead";
        NeatRepair = "neat_repair", "Old repair, neat";
        WornMount = "worn_mount", "Mount worn grey";
        FillShowing = "fill_showing", "Filling shows";
        LooseFilling = "loose_filling", "Filling loose or coming out";
        Green = "green", "Green spots or crust";
        WhitePowder = "white_powder", "White powder";
        Rust = "rust", "Rust";
        BrokenLacquer = "broken_lacquer", "Broken lacquer";
        WornGilding = "worn_gilding", "Worn gilding";
        Other = "other", "Something else, described in the note";
    }
}

vocabulary! {
    /// Whether a part is the one it was made with.
    Replaced {
        Original = "original", "Looks original";
        Doubtful = "doubtful", "Doubtful";
        Yes = "replaced", "Replaced";
    }
}

vocabulary! {
    /// How crisp engraving and chasing still are.
    Engraving {
        Absent = "absent", "There is none";
        Crisp = "crisp", "Crisp";
        Softened = "softened", "Softened";
        Faint = "faint", "Faint";
        Gone = "gone", "Rubbed away";
    }
}

vocabulary! {
    /// A clear coating.
    Lacquer {
        None = "none", "None";
        Sound = "sound", "Whole and clear";
        Yellowed = "yellowed", "Yellowed";
        Broken = "broken", "Broken: tarnish in patches or threads";
    }
}

vocabulary! {
    /// Whether an old repair holds.
    Repair {
        Sound = "sound", "Holds";
        Failing = "failing", "Failing";
    }
}

vocabulary! {
    /// The state of a filling.
    FillState {
        Sound = "sound", "Firm";
        Failing = "failing", "Loose, swollen or coming out";
    }
}

vocabulary! {
    /// A loose liner inside a piece.
    Liner {
        None = "none", "None";
        Glass = "glass", "Glass";
        Metal = "metal", "Metal";
    }
}

vocabulary! {
    /// What a part is made of.
    Material {
        Metal = "metal", "Metal";
        Wood = "wood", "Wood";
        Ivory = "ivory", "Ivory";
        Horn = "horn", "Horn";
        Bone = "bone", "Bone or shell";
        Composition = "composition", "Composition or early plastic";
        Glass = "glass", "Glass";
        Unknown = "unknown", "Not known";
    }
}

vocabulary! {
    /// The state of gilding.
    Gilding {
        Whole = "whole", "Whole";
        Worn = "worn", "Worn";
        Gone = "gone", "Gone, or traces only";
    }
}

vocabulary! {
    /// What a test for lead determines.
    TestKind {
        Release = "release", "Whether lead comes out into food or drink";
        Content = "content", "Whether there is lead in the metal";
    }
}

vocabulary! {
    /// Who carried out a test.
    Tester {
        Laboratory = "laboratory", "A laboratory";
        Workshop = "workshop", "A workshop";
        Home = "home", "Somebody at home, with a kit";
    }
}

vocabulary! {
    /// The class of material used in work already done.
    MaterialUsed {
        Nothing = "none", "Nothing was added";
        SolderLeadFree = "solder_lead_free", "Solder without lead";
        SolderLead = "solder_lead", "Solder with lead";
        SolderUnknown = "solder_unknown", "Solder, not known which";
        SolderLow = "solder_low", "Solder that melts low";
        SolderHard = "solder_hard", "Silver solder";
        Adhesive = "adhesive", "Glue";
        Coating = "coating", "Lacquer, wax or other coating";
        Silver = "silver", "Silver put on by electricity";
        SilverOther = "silver_other", "Silver put on in another way";
        Tin = "tin", "Tin";
        NewPart = "new_part", "New metal or another new part";
    }
}

vocabulary! {
    /// What a quote covers.
    Covers {
        Work = "work", "This work alone";
        WithCleaning = "with_cleaning", "This work and the cleaning it needs";
    }
}

vocabulary! {
    /// How a thickness of silver was measured.
    Method {
        Xrf = "xrf", "X-ray fluorescence";
        Coulometric = "coulometric", "Coulometric spot";
        Section = "section", "Cross-section under a microscope";
    }
}

vocabulary! {
    /// What fills a hollow base, handle or mount.
    Fill {
        None = "none", "Nothing: open and empty";
        Lead = "lead", "Lead or solder";
        Pitch = "pitch", "Pitch, plaster or resin";
        Sealed = "sealed", "Closed, contents unknown";
    }
}

vocabulary! {
    /// What the user wants from the piece.
    Goal {
        Sell = "sell", "Sell it";
        KeepShow = "keep_show", "Keep it and show it";
        KeepUse = "keep_use", "Keep it and use it";
        Insure = "insure", "Insure it";
        Study = "study", "Study it";
    }
}

vocabulary! {
    /// Who would do the work.
    Doer {
        Owner = "owner", "Me, at home";
        Workshop = "workshop", "A workshop";
    }
}

vocabulary! {
    /// How it would be sold.
    Route {
        Auction = "auction", "At auction";
        Private = "private", "Privately, no fees";
        Shop = "shop", "From a shop or a stand in one";
        Trade = "trade", "To the trade, at once";
        Fair = "fair", "From a stand at fairs";
    }
}

vocabulary! {
    /// The status of a piece in a dealer's stock. The last two are read from how its case was closed.
    StockStatus {
        Looking = "looking", "Looking at it";
        Bought = "bought", "Bought";
        AtWorkshop = "at_workshop", "At the workshop";
        ForSale = "for_sale", "For sale";
        Sold = "sold", "Sold";
        Returned = "returned", "Returned to the client";
    }
}

vocabulary! {
    /// What the pieces of one record are to each other.
    Relation {
        Single = "single", "One piece";
        OneOfPair = "one_of_pair", "One left of a pair";
        Pair = "pair", "A pair";
        Set = "set", "A set";
        Alike = "alike", "Several alike, no set";
    }
}

vocabulary! {
    /// Whether several pieces are sold as one lot.
    SellAs {
        Together = "together", "Together, as one lot";
        Apart = "apart", "Each by itself";
    }
}

vocabulary! {
    /// How the price of a lot is shared out over its records.
    LotRule {
        Expected = "expected", "By what each might fetch";
        Equal = "equal", "The same for each";
        Own = "own", "By my own shares";
    }
}

vocabulary! {
    /// The unit a person measures lengths in.
    LengthUnit {
        Millimetres = "mm", "Millimetres";
        Inches = "in", "Inches";
    }
}

vocabulary! {
    /// The unit in which the user measures weights.
    WeightUnit {
        Grams = "g", "Grams";
        TroyOunces = "ozt", "Troy ounces";
    }
}

vocabulary! {
    /// What a price is.
    SoldAs {
        Hammer = "hammer", "What it was knocked down for";
        WithPremium = "with_premium", "What the buyer paid, premium included";
        Retail = "retail", "Paid in a shop";
        Asking = "asking", "Only asked";
    }
}

vocabulary! {
    /// How a case ended.
    Ending {
        Sold = "sold", "Sold";
        Unsold = "unsold", "Offered, not sold";
        Kept = "kept", "Kept";
        GivenBack = "given_back", "Given back to its owner";
        Stopped = "stopped", "Stopped before the end";
    }
}

vocabulary! {
    /// Who bought a piece.
    BuyerSort {
        Collector = "collector", "A collector";
        Decorator = "decorator", "Somebody who shows it";
        User = "user", "Somebody who uses it";
        Trade = "trade", "The trade";
        Unknown = "unknown", "Not known";
    }
}

/// The sorts of buyers that the ledger has shares of: the first of [`BuyerSort`].
pub const BUYERS: [&str; 3] = [BuyerSort::IDS[0], BuyerSort::IDS[1], BuyerSort::IDS[2]];

vocabulary! {
    /// The price at which a piece did not sell.
    UnsoldAt {
        Reserve = "reserve", "The reserve";
        TopBid = "top_bid", "The highest bid";
        Asking = "asking", "The price on the label";
    }
}

vocabulary! {
    /// Why a prediction was frozen.
    PredictedWhen {
        Agreed = "agreed", "Work was agreed";
        Offered = "offered", "It was offered for sale";
    }
}

vocabulary! {
    /// What an expected price rested on.
    PriceBasis {
        Guess = "guess", "The person's own estimate";
        Comparables = "comps", "Prices of like pieces";
        Class = "class", "The usual price of its kind";
    }
}

vocabulary! {
    /// The currency of the amounts. Only a label; nothing is converted.
    Currency {
        Pound = "GBP", "Pounds (£)";
        Euro = "EUR", "Euros (€)";
        Dollar = "USD", "Dollars ($)";
        Other = "other", "Another currency";
    }
}

impl StockStatus {
    /// The statuses a user enters; whether a piece is sold or returned is recorded where its case is closed.
    pub const ENTERED: [Self; 4] = [Self::Looking, Self::Bought, Self::AtWorkshop, Self::ForSale];
}

impl Form {
    /// The parts such a piece usually has, body first.
    #[allow(clippy::too_many_lines)] // a table
    #[must_use]
    pub fn parts(self) -> &'static [PartName] {
        use PartName as P;
        match self {
            Self::CoffeePot | Self::Teapot => &[
                P::Body,
                P::Cover,
                P::Spout,
                P::Handle,
                P::Foot,
                P::Finial,
                P::Border,
                P::Shield,
                P::Interior,
                P::Base,
            ],
            Self::Tankard => &[
                P::Body,
                P::Rim,
                P::Handle,
                P::Foot,
                P::Cover,
                P::Shield,
                P::Interior,
                P::Base,
            ],
            Self::Tray => &[
                P::Body,
                P::Border,
                P::Edge,
                P::Handle,
                P::Shield,
                P::Foot,
                P::Base,
            ],
            Self::Candlestick => &[P::Body, P::Rim, P::Border, P::Foot, P::Base],
            Self::Basket => &[
                P::Body,
                P::Edge,
                P::Border,
                P::Handle,
                P::Foot,
                P::Shield,
                P::Base,
            ],
            Self::Tureen => &[
                P::Body,
                P::Cover,
                P::Rim,
                P::Border,
                P::Handle,
                P::Foot,
                P::Finial,
                P::Shield,
                P::Interior,
                P::Base,
            ],
            Self::Sauceboat => &[
                P::Body,
                P::Rim,
                P::Spout,
                P::Handle,
                P::Foot,
                P::Shield,
                P::Interior,
                P::Base,
            ],
            Self::Cooler => &[
                P::Body,
                P::Rim,
                P::Border,
                P::Handle,
                P::Foot,
                P::Shield,
                P::Interior,
                P::Base,
            ],
            Self::Box => &[
                P::Body,
                P::Cover,
                P::Edge,
                P::Border,
                P::Shield,
                P::Interior,
                P::Base,
            ],
            Self::Cutlery | Self::Snuffers => &[P::Body, P::Blade, P::Handle],
            Self::Cruet => &[P::Body, P::Frame, P::Bottle, P::Handle, P::Foot, P::Base],
            Self::Inkstand => &[
                P::Body,
                P::Border,
                P::Edge,
                P::Bottle,
                P::Handle,
                P::Shield,
                P::Foot,
                P::Base,
            ],
            Self::Salts => &[P::Body, P::Rim, P::Border, P::Foot, P::Liner, P::Base],
            Self::Coaster => &[P::Body, P::Rim, P::Border, P::Shield, P::Interior, P::Base],
            Self::Urn => &[
                P::Body,
                P::Cover,
                P::Fitting,
                P::Handle,
                P::Foot,
                P::Finial,
                P::Border,
                P::Shield,
                P::Interior,
                P::Base,
            ],
            Self::WaterDish => &[
                P::Body,
                P::Cover,
                P::Rim,
                P::Border,
                P::Handle,
                P::Fitting,
                P::Finial,
                P::Shield,
                P::Interior,
                P::Base,
            ],
            Self::Candelabrum => &[
                P::Body,
                P::Stem,
                P::Branch,
                P::Nozzle,
                P::Pan,
                P::Border,
                P::Foot,
                P::Base,
            ],
            Self::Other => &[
                P::Body,
                P::Rim,
                P::Foot,
                P::Spout,
                P::Handle,
                P::Finial,
                P::Cover,
                P::Border,
                P::Edge,
                P::Shield,
                P::Interior,
                P::Base,
            ],
        }
    }

    /// Whether such a piece usually has soldered joints that hold liquid or bear a load.
    #[must_use]
    pub fn usually_soldered(self) -> bool {
        !matches!(
            self,
            Self::Tray | Self::Box | Self::Snuffers | Self::Coaster
        )
    }

    /// Whether its base, stem or handle usually contains a hidden filling.
    #[must_use]
    pub fn usually_loaded(self) -> bool {
        matches!(self, Self::Candlestick | Self::Candelabrum | Self::Cutlery)
    }

    /// Whether replating it costs as much as for a large piece.
    #[must_use]
    pub fn large(self) -> bool {
        matches!(
            self,
            Self::Tray | Self::Basket | Self::Urn | Self::Candelabrum
        )
    }
}

/// How an open joint of a part is classified.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JointClass {
    /// The part is integral with the body: an open joint is an open seam.
    Seam,
    /// The part is attached: an open joint is a loose fitting.
    Attachment,
}

impl PartName {
    /// Whether silver wears faster there: edges and high points.
    #[must_use]
    pub fn is_high_point(self) -> bool {
        !matches!(
            self,
            Self::Body
                | Self::Interior
                | Self::Cover
                | Self::Base
                | Self::Shield
                | Self::Pan
                | Self::Stem
                | Self::Bottle
                | Self::Liner
                | Self::Fitting
        )
    }

    /// How an open joint of this part is classified.
    #[must_use]
    pub fn joint_class(self) -> JointClass {
        match self {
            Self::Body
            | Self::Rim
            | Self::Spout
            | Self::Border
            | Self::Edge
            | Self::Shield
            | Self::Interior
            | Self::Frame
            | Self::Liner => JointClass::Seam,
            Self::Foot
            | Self::Handle
            | Self::Finial
            | Self::Cover
            | Self::Base
            | Self::Nozzle
            | Self::Pan
            | Self::Stem
            | Self::Branch
            | Self::Bottle
            | Self::Blade
            | Self::Fitting => JointClass::Attachment,
        }
    }

    /// Whether the contents of the piece touch it.
    #[must_use]
    pub fn meets_liquid(self) -> bool {
        matches!(
            self,
            Self::Body
                | Self::Rim
                | Self::Spout
                | Self::Interior
                | Self::Bottle
                | Self::Liner
                | Self::Fitting
        )
    }
}
