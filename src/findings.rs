//! What the tool has to say about a job: data, never a sentence. The words are in `www/words/`.

use crate::job::Part;
use serde::Serialize;

/// How grave a finding is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Severity {
    /// Something has to be put right before a figure or a verdict can stand.
    Stop,
    /// Something is likely to go wrong.
    Warn,
    /// Worth knowing.
    Note,
}

/// How far a rule's figure is to be trusted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
#[serde(rename_all = "snake_case")]
pub enum Trust {
    /// Read in a public copy of its source.
    Read,
    /// Read in a public text that retells its source, and no other text gainsays it.
    Retold,
    /// From memory: drawn dashed, decides nothing, "check your code book".
    Memory,
    /// Worked out from published figures, itself in no code: drawn dashed, warns, decides nothing.
    Derived,
    /// Common practice, no source.
    Practice,
    /// From the foam sheet as entered.
    YourSheet,
    /// Measured on site.
    YourTape,
    /// What the user wants.
    YourTarget,
}

impl Trust {
    /// Whether a figure of this standing may decide a depth.
    pub fn decides(self) -> bool {
        !matches!(self, Trust::Memory | Trust::Derived)
    }
}

/// Where a finding belongs. The page's field has the DOM id `part-id-field`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct At {
    /// The part of the job.
    pub part: Part,
    /// The listed thing's id; 0 for the job itself.
    pub id: u32,
    /// The field; empty where the whole part is meant.
    pub field: String,
}

/// A figure in a finding, already rounded and written in the job's units.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Figure {
    /// The placeholder in the words.
    pub name: &'static str,
    /// What stands there. A text that begins with `@` is the key of a word (`@cylinder_a`): the name of a
    /// thing to which the person gave none.
    pub text: String,
}

/// One thing that the tool has to say.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Finding {
    /// What it is about: the key of its words.
    pub code: Code,
    /// How grave.
    pub severity: Severity,
    /// Where it belongs.
    pub at: At,
    /// The figures that its words name.
    pub figures: Vec<Figure>,
    /// Where the rule comes from: a key of the table of sources, empty for an entry's own faults.
    pub source: &'static str,
}

macro_rules! codes {
    ($($(#[$doc:meta])* $name:ident: $severity:ident, $source:literal;)*) => {
        /// Every thing that the tool can say. Words, a case that raises it and a source stand for each.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
        #[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
        #[serde(rename_all = "snake_case")]
        pub enum Code { $($(#[$doc])* $name,)* }

        impl Code {
            /// Every code, for tests and for the words.
            pub const ALL: &[Code] = &[$(Code::$name,)*];

            /// How grave a finding of this code is.
            pub fn severity(self) -> Severity {
                match self { $(Code::$name => Severity::$severity,)* }
            }

            /// The key of its source in the table of sources.
            pub fn source(self) -> &'static str {
                match self { $(Code::$name => $source,)* }
            }
        }
    };
}

codes! {
    /// An entry that the present shape or sheet needs is blank.
    Needed: Stop, "";
    /// The text has two meanings; one has to be pressed.
    TwoMeanings: Stop, "";
    /// No number, or something beside the number that is not understood.
    NotANumber: Stop, "";
    /// Less than zero.
    Negative: Stop, "";
    /// Zero below the line of a fraction.
    ZeroBelowTheLine: Stop, "";
    /// The unit measures something else.
    WrongUnit: Stop, "";
    /// Larger than the tool holds.
    TooLarge: Stop, "";
    /// More characters than any reading needs.
    TooLong: Stop, "";
    /// A fraction where whole things are counted.
    NotWhole: Stop, "";
    /// A day that no calendar has.
    NoSuchDay: Stop, "";
    /// A form that is not taken here.
    NotTaken: Stop, "";
    /// A list of readings in which a comma may end a reading or may be a decimal comma.
    RunTogether: Stop, "";
    /// Several measures in a box for one.
    Several: Stop, "";
    /// Three lengths multiplied where an area is wanted.
    ThreeLengths: Stop, "";
    /// Under the least that the table of fields allows.
    BelowLimit: Stop, "";
    /// Over the most that the table of fields allows.
    AboveLimit: Stop, "";
    /// Within the limits but not likely; the other unit would be.
    Unlikely: Warn, "";
    /// Openings take more than the whole surface.
    OpeningsExceed: Stop, "";
    /// An opening reaches past the edge of its surface.
    OpeningOutside: Stop, "";
    /// Two openings overlap.
    OpeningsOverlap: Stop, "";
    /// An opening without a place: taken out, not drawn, its framing estimated.
    OpeningNotPlaced: Note, "";
    /// The upper edge of a band is no higher than its lower edge.
    HeightsCross: Stop, "";
    /// A metal profile that cannot be: its flats are wider than its pitch, or its waves deeper than half of it.
    ProfileImpossible: Stop, "";
    /// Foam follows rough stone, and no share was typed for what that takes more.
    ContourNotCounted: Warn, "stone";
    /// The deepest pocket takes more lifts than the rest of the surface.
    PocketsRuleLifts: Note, "pockets";
    /// A pipe as large as the hole that it runs through, or larger.
    PipeFillsHole: Stop, "";
    /// One side of a triangle is as long as the two others together, or longer.
    SidesCannotMeet: Stop, "";
    /// Fewer edges than a plane has.
    LegsFew: Stop, "";
    /// The walk along the edges ends too far from where it began.
    LegsOpen: Stop, "closing";
    /// The walk ends a little beside where it began: the gap is spread over the edges.
    LegsSpread: Note, "closing";
    /// The last edge was left blank: it closes the walk.
    LegsClosed: Note, "";
    /// Two edges cross or touch.
    LegsCross: Stop, "";
    /// No circle of that radius spans so far.
    RadiusTooShort: Stop, "";
    /// All four sides of a duct are switched off.
    NoSideFoamed: Stop, "";
    /// The foam is so deep that the inside it lies in would close.
    DeeperThanRound: Stop, "";
    /// Nothing says on which sides of a rim joists land: no joist ends are taken out.
    JoistsNotSaid: Note, "rim";
    /// The sides along the first parallel joist cannot be reached and are left out.
    ParallelOutOfReach: Warn, "rim";
    /// The surface names a foam or kit that the job does not hold.
    NoSheet: Stop, "";
    /// The sheet lists no R at or above the target.
    TargetBeyondSheet: Stop, "foam_sheet";
    /// The foam sheet lists no R, so none can be promised.
    NoListedR: Warn, "ftc_460_17";
    /// The R listed at or below the promise falls short of the target.
    TargetNotPromised: Warn, "ftc_460_17";
    /// The rules were chosen to say how deep, and none that was read asks for a depth here.
    NoLeastHere: Stop, "marks";
    /// The rules were chosen to say how deep, and the energy code could not be asked.
    CodeNotAsked: Note, "marks";
    /// A row that no thickness of this foam meets here.
    CodeOutOfReach: Warn, "energy_code";
    /// The promise falls short of the row chosen.
    CodeShort: Warn, "energy_code";
    /// The mean falls short of the U-factor row.
    CodeUShort: Warn, "energy_code";
    /// The mean depth is less than the effective R that is wanted of the whole asks for.
    WholeShort: Warn, "u_paths";
    /// No thickness that the foam sheet lists reaches the effective R that is wanted of the whole.
    WholeOutOfReach: Warn, "u_paths";
    /// The same by a figure from memory.
    CodeShortMemory: Note, "from_memory";
    /// The way through the code that was chosen rests on a figure from memory.
    WayFromMemory: Warn, "from_memory";
    /// Only parts of the edition are known.
    EditionPartly: Note, "energy_code";
    /// The ceiling is larger than the exception for small ones allows.
    SmallCeilingTooLarge: Warn, "small_ceiling";
    /// The promise falls short of the table for unvented roofs.
    UnventedShort: Warn, "irc_unvented";
    /// The table is met or not, but foam's share of the whole R is less than what the table was made for.
    ShareShort: Warn, "unvented_share";
    /// The foam is too thin to be the retarder that a cold zone's unvented roof asks for.
    FoamTooOpen: Warn, "irc_unvented";
    /// The foam sheet is silent on permeance, where a rule asks for it.
    FoamPermeanceBlank: Warn, "foam_sheet";
    /// The promise falls short of what class III on the room side asks; from memory.
    ClassThreeShort: Note, "from_memory";
    /// The retarder on the room side is one that the table does not allow here.
    RetarderNotAllowed: Warn, "irc_retarder";
    /// Two rows of a foam sheet are for one thickness.
    ThicknessTwice: Warn, "foam_sheet";
    /// A thicker row of a foam sheet has a lower R.
    RFalls: Warn, "foam_sheet";
    /// The least promised is thinner than the thinnest listed: no R can be promised.
    BelowListed: Warn, "ftc_460_17";
    /// The aim is deeper than the cavity.
    DeeperThanCavity: Warn, "your_tape";
    /// Foam and what lies in front of it are thicker together than the cavity.
    FillSqueezed: Warn, "batt_labels";
    /// The members are steel: no U is worked out.
    SteelFraming: Warn, "u_paths";
    /// What it is built of was entered, but not how much of it is framing: no U is worked out.
    ShareNotSaid: Note, "framing_share";
    /// The least promised is more than the aim or the aim more than the most allowed.
    DepthsCross: Stop, "";
    /// The depth that the target needs is more than may stay here.
    RulesCross: Warn, "marks";
    /// Left exposed at the rim, thicker than the exception allows.
    ExposedTooThick: Warn, "irc_rim";
    /// Left exposed at the rim, thicker than the foam was tested.
    ExposedOverTested: Warn, "irc_rim";
    /// Left exposed at the rim, but the foam sheet does not show what the exception asks for.
    ExposedNotAvailable: Warn, "irc_rim";
    /// The foam sheet is silent on something that the exception for a rim left exposed asks for.
    ExposedBlank: Warn, "irc_rim";
    /// The foam sheet shows a figure outside what that exception asks for.
    ExposedOutside: Warn, "irc_rim";
    /// Aim and tolerance together reach past what may stay exposed.
    NoToleranceLeft: Note, "irc_rim";
    /// Foam left exposed elsewhere: a cover is asked for.
    CoverAsked: Warn, "irc_barrier";
    /// Foam left exposed where an ignition barrier is enough: it is asked for.
    IgnitionAsked: Warn, "irc_ignition";
    /// Foam left bare to sun and rain.
    BareInWeather: Warn, "bare_in_weather";
    /// The cover that was chosen is not among those that are asked for here.
    CoverNotEnough: Warn, "irc_barrier";
    /// A coating tested without a barrier: only its own report tells whether it is enough.
    CoverByReport: Warn, "irc_tested";
    /// The cover is on the list of newer editions only.
    CoverSinceNewer: Note, "irc_covers";
    /// Said to stay exposed, with a cover chosen, or said to be covered, with none.
    CoverUnclear: Warn, "irc_barrier";
    /// Flame spread or smoke is above what any foam may have.
    BurnsTooFast: Warn, "irc_burning";
    /// Old foam is sprayed over: clean, dust-free, a test patch first.
    OldFoam: Note, "old_foam";
    /// The foam that is there reaches the aim already.
    NothingToAdd: Note, "your_tape";
    /// Patches take more than the whole surface.
    PatchesExceed: Stop, "";
    /// Nothing is known to be left over for this surface.
    NothingLeft: Warn, "left_over";
    /// The aim is thinner than the least lift.
    ThinnerThanLift: Warn, "least_lift";
    /// The lifts cannot all lie between the least and the largest.
    LiftsCross: Warn, "largest_lift";
    /// A single lift thicker than two inches is a fire matter: the label governs.
    ThickLift: Warn, "lift_fire";
    /// Kits on offer have no yield or no price.
    KitUnusable: Warn, "";
    /// No kit with a yield and a price is on offer.
    NoKits: Stop, "";
    /// The search ended before the mix was proved to cost the least.
    LeastNotProved: Warn, "kit_search";
    /// The search ended before every mix at the least cost had been looked into.
    TieNotProved: Note, "kit_search";
    /// More kits of a size are chosen than can be had.
    ChosenOverLimit: Warn, "shop";
    /// No mix of the kits on offer, within their limits, is enough.
    NotEnoughKits: Stop, "";
    /// The chosen purchase is not enough.
    ChosenTooLittle: Stop, "";
    /// The chosen purchase costs more than the least.
    ChosenDearer: Note, "";
    /// Something that decides what a kit on the shelf still gives is not known: it counts for nothing.
    StockUnknown: Warn, "part_used";
    /// A kit on the shelf passes its date before it would be sprayed: it counts for nothing.
    StockPastDate: Warn, "shelf_date";
    /// A kit on the shelf was opened too long ago: it counts for nothing.
    StockOpenTooLong: Warn, "open_days";
    /// A kit on the shelf has a day of the past that is still to come.
    StockDayAhead: Warn, "";
    /// The contents of a cylinder weigh more than its label says.
    StockOverWeight: Warn, "carton";
    /// An opened kit has not been purged in time.
    StockPurgeDue: Warn, "weekly_purge";
    /// The room of a kit on the shelf is too cold or too hot.
    StockStorage: Warn, "storage";
    /// A kit on the shelf that counts has no date.
    StockNoDate: Note, "shelf_date";
    /// More foam than disposable kits are for.
    TooBig: Stop, "too_big";
    /// Something at the place for which this foam is not made: it is left out.
    NotThisKit: Stop, "before_foam";
    /// Something at the place that has to be put right before anything is sprayed.
    NotYet: Stop, "before_foam";
    /// A lift was sprayed before the wait on its spot was over.
    LiftEarly: Warn, "wait_practice";
    /// A kit on the day gave clearly less than was planned.
    KitGaveLess: Warn, "yield_factor";
    /// A cylinder was colder than its label wants as its kit was opened or ended.
    KitCold: Stop, "label_windows";
    /// A cylinder was hotter than its label wants as its kit was opened or ended.
    KitHot: Stop, "label_windows";
    /// Something of the day is stamped in the future, or with no time at all.
    EventAhead: Warn, "day_clock";
    /// The label's board feet need more chemical than the kit holds.
    MassShort: Warn, "mass_check";
    /// A cylinder has not been read.
    CylinderNotRead: Stop, "label_windows";
    /// The air has not been read.
    AirNotRead: Stop, "label_windows";
    /// A surface is listed, but has not been read.
    SpotNotRead: Stop, "label_windows";
    /// No surface has been read.
    SurfaceNotRead: Stop, "label_windows";
    /// Neither humidity nor dew point has been read.
    HumidityNotRead: Stop, "dew_spread";
    /// A reading is too old and counts as not read.
    ReadingOld: Stop, "reading_age";
    /// A reading without a time, or from the future.
    ReadingUntimed: Stop, "reading_age";
    /// A cylinder is colder than its label wants.
    CylinderCold: Stop, "label_windows";
    /// A cylinder is hotter than its label wants.
    CylinderHot: Stop, "label_windows";
    /// A cylinder is so hot that it must not be opened.
    CylinderDanger: Stop, "warming_kits";
    /// The air is colder than the label wants.
    AirCold: Stop, "label_windows";
    /// The air is hotter than the label wants.
    AirHot: Stop, "label_windows";
    /// A surface is colder than the label wants.
    SurfaceCold: Stop, "label_windows";
    /// A surface is hotter than the label wants.
    SurfaceHot: Stop, "label_windows";
    /// A surface is less than the spread above the dew point.
    DewTooClose: Stop, "dew_spread";
    /// A surface is at or below the dew point: water settles on it.
    BelowDewPoint: Stop, "dew_spread";
    /// A surface clears the dew point, but not by the meter's own error.
    DewWithinMeterError: Warn, "meter_error";
    /// A question has not been answered.
    Unanswered: Stop, "";
    /// An infrared reading of bare metal shows the room's reflection.
    InfraredOnMetal: Stop, "infrared";
    /// Bare metal draws heat off: a thin first lift.
    MetalSkin: Note, "cold_surface";
    /// Masonry that is not clean and dry.
    MasonryDamp: Stop, "clean_dry";
    /// Wood whose moisture has not been read.
    MoistureNotRead: Stop, "wood_moisture";
    /// Wood that is too wet.
    WoodWet: Stop, "wood_moisture";
    /// The label limits the wind, and it has not been read.
    WindNotRead: Stop, "foam_sheet";
    /// More wind than the label allows.
    WindOver: Stop, "foam_sheet";
    /// Work outdoors, and the sheet says nothing about wind.
    WindNotOnSheet: Note, "overspray";
    /// The night will fall below the window before the foam has cured.
    NightCold: Stop, "through_cure";
    /// The same, but heat is kept on until the foam has cured.
    NightColdHeated: Warn, "through_cure";
    /// The sheet does not say how long the foam cures.
    CureNotOnSheet: Note, "through_cure";
    /// Flames or glowing elements are not out.
    FlamesLit: Stop, "flames";
    /// A heater is lit.
    HeaterLit: Stop, "flames";
    /// An unvented heater wets the air.
    HeaterMoist: Note, "unvented";
    /// With an unvented heater on, the estimate brings the coldest surface too near to the dew point.
    HeaterWets: Warn, "unvented";
    /// People live or work in other rooms while foam is sprayed.
    OccupantsIn: Warn, "work_zone";
    /// Children, or somebody with asthma or allergies: more care than the hours alone.
    ExtraCare: Note, "work_zone";
    /// Somebody is sensitized to isocyanates.
    Sensitized: Warn, "work_zone";
    /// The zone is not sealed off from the rest of the house.
    NotIsolated: Warn, "work_zone";
    /// The air handler runs, or its openings in the zone are open.
    AirHandlerOn: Warn, "work_zone";
    /// Exhaust can pull a flue backwards.
    FluePulled: Warn, "work_zone";
    /// The kits weigh more than a vehicle may carry of such cylinders, from memory.
    VehicleOver: Note, "vehicle_most";
    /// A kit at hand of which something that decides is not known.
    KitNotKnown: Stop, "part_used";
    /// A kit at hand without the date on its carton.
    KitDateNotRead: Stop, "shelf_date";
    /// A kit at hand past its last day.
    KitPastDay: Stop, "shelf_date";
    /// Kits that were not as long in the warm room as their label asks.
    WarmTooShort: Stop, "conditioning";
    /// Kits whose core is colder than their label wants, by the estimate.
    CoreCold: Stop, "warm_estimate";
    /// Kits kept so hot that they must not be opened.
    StorageTooHot: Stop, "warming_kits";
    /// A reading is inside its window by little.
    Close: Note, "close_reading";
    /// The two cylinders are further apart than they should be.
    CylindersApart: Warn, "cylinders_apart";
    /// A dew point below freezing is frost: the surface may be icy.
    Frost: Note, "frost_point";
    /// A dew point above the temperature of its air: one of the two is misread.
    DewAboveAir: Stop, "dew_spread";
    /// A day of the forecast whose low is above its high.
    ForecastCrossed: Stop, "";
    /// A date that another day of the forecast has already.
    ForecastTwice: Warn, "";
    /// By the longitude the sun stands highest far from noon by the clock.
    PlaceOffClock: Warn, "position";
    /// A dark wall in the sun may be too hot on the day of spraying.
    HotInSun: Note, "hot_in_sun";
    /// The window on the sheet has its least above its most.
    WindowCrossed: Stop, "foam_sheet";
}

impl Finding {
    /// A finding of this code at this place.
    pub fn new(code: Code, part: Part, id: u32, field: &str) -> Self {
        Self {
            code,
            severity: code.severity(),
            at: At { part, id, field: field.to_owned() },
            figures: Vec::new(),
            source: code.source(),
        }
    }

    /// The same finding with one more figure for its words.
    #[must_use]
    pub fn with(mut self, name: &'static str, text: impl Into<String>) -> Self {
        self.figures.push(Figure { name, text: text.into() });
        self
    }
}
