//! One surface from its measures to its lifts, in two strokes: what is known of it by itself, and what
//! follows from its depth, which for some hangs on what the others leave over.

use crate::assembly::{self, Build};
use crate::climate::{Component, Place};
use crate::depth::{self, Depth, Existing, Left, Patched};
use crate::findings::{Code, Finding};
use crate::foam::Foam;
use crate::job::{DepthWay, Job, Part, Reader, Surface};
use crate::kits::Purchase;
use crate::measure::{Band, BoardFeet, Inches, SquareFeet};
use crate::quantity::{self, Ground, Lines, Quantity, Sum, Until};
use crate::spraying::{self, Lifts};
use crate::surfaces::{self, SurfaceArea};
use serde::Serialize;

/// Everything that follows from one surface.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct SurfaceEstimate {
    /// The surface's id in the job.
    pub id: u32,
    /// The foam it gets: an id in the job's foams; 0 where the job holds no such sheet.
    pub foam: u32,
    /// Its areas.
    pub area: Option<SurfaceArea>,
    /// Its depths.
    pub depth: Option<Depth>,
    /// What it goes on, where that is not flat.
    pub ground: Option<Ground>,
    /// The foam in place: what is added, not what is there.
    pub in_place: Option<Band<BoardFeet>>,
    /// The same where kits are bought for it: none for a surface that gets whatever is left.
    pub bought: Option<Band<BoardFeet>>,
    /// How it adds up.
    pub in_place_by: Sum,
    /// Its lines, where it has more than one.
    pub lines: Option<Lines>,
    /// Its lifts.
    pub lifts: Option<Lifts>,
    /// While it is not measured: the foam for a piece of it.
    pub until: Option<Until>,
}

/// A surface before its depth is known.
pub(crate) struct Begun<'a> {
    job: &'a Job,
    place: &'a Place,
    surface: &'a Surface,
    foam: Option<&'a Foam>,
    area: Option<SurfaceArea>,
    patches: Option<Vec<Patched>>,
    existing: Option<Existing>,
    /// What it goes on; `None` while that is not known.
    ground: Option<Ground>,
    component: Option<Component>,
    build: Option<Build>,
}

impl<'a> Begun<'a> {
    /// Measures a surface.
    pub(crate) fn new(
        job: &'a Job,
        place: &'a Place,
        surface: &'a Surface,
        foam: Option<&'a Foam>,
        reader: &mut Reader,
    ) -> Self {
        if foam.is_none() {
            reader.say(Finding::new(Code::NoSheet, Part::Surface, surface.id, "foam"));
        }
        let area = surfaces::measure(surface, reader);
        let patches = depth::patches(surface, area.as_ref(), reader);
        let existing = depth::existing(surface, reader);
        let ground = quantity::ground(surface, reader);
        let component = depth::component(surface, reader);
        let build = assembly::build(surface, component, area.as_ref(), reader);
        Begun { job, place, surface, foam, area, patches, existing, ground, component, build }
    }

    /// The area over which a given amount of foam spreads at one depth.
    pub(crate) fn rest_ft2(&self) -> Option<SquareFeet> {
        self.ground.as_ref()?;
        let rest = quantity::rest(self.area.as_ref()?.net_ft2, self.patches.as_ref()?);
        Some(rest.likely)
    }

    /// What each square foot of it grows by with an inch of depth.
    fn growth(&self) -> Band<f64> {
        self.area.as_ref().map_or(Band::exactly(0.0), quantity::growth)
    }

    /// What an inch over that area takes more, for its uneven ground.
    pub(crate) fn uneven_factor(&self) -> f64 {
        self.ground.as_ref().map_or(1.0, |ground| 1.0 + ground.uneven_pct().likely / 100.0)
    }

    /// What is taken whatever the depth of the rest is, in place: by the patches, and by pockets that are filled.
    pub(crate) fn patch_feet(&self) -> BoardFeet {
        let there = self.existing.map_or(Band::exactly(Inches(0.0)), |there| there.depth_in);
        let all = self.patches.iter().flatten();
        let feet: BoardFeet = all
            .map(|one| {
                let add = depth::to_add(one.depth_in, self.existing.as_ref());
                quantity::spread(quantity::mean(one.area_ft2, there, add, self.growth()), add).likely
            })
            .sum();
        let pockets = self.area.as_ref().zip(self.ground.as_ref());
        let filled = pockets.map_or(0.0, |(area, ground)| (area.net_ft2.likely * ground.pocket_in).0);
        BoardFeet(feet.0 * self.uneven_factor() + filled)
    }

    /// The rest, once it is known what one kit gives (and the factor for the job's allowances) or what is left.
    pub(crate) fn finish(
        self,
        one_kit: Option<(BoardFeet, f64)>,
        left: Option<Left>,
        largest: Option<(u32, BoardFeet, f64)>,
        reader: &mut Reader,
    ) -> SurfaceEstimate {
        let one_kit = one_kit.map(|(usable, factor)| {
            let taken = self.patch_feet().0 * factor;
            (BoardFeet((usable.0 - taken).max(0.0)), factor * self.uneven_factor())
        });
        let largest = largest.map(|(kit, usable, factor)| {
            let taken = self.patch_feet().0 * factor;
            (kit, BoardFeet((usable.0 - taken).max(0.0)), factor * self.uneven_factor())
        });
        let growth = self.growth();
        let around = depth::Around {
            job: self.job,
            place: self.place,
            surface: self.surface,
            component: self.component,
            build: self.build.as_ref(),
            largest,
            area: self.area.as_ref(),
            foam: self.foam,
            existing: self.existing,
            spread_ft2: self.rest_ft2(),
            growth: growth.likely,
            one_kit,
            left,
        };
        let depth = depth::choose(around, reader);
        if let (Some(build), Some(depth)) = (&self.build, &depth) {
            build.fits(self.surface.id, depth.thickest_aim_in, reader);
        }
        let known = self.area.as_ref().zip(depth.as_ref()).zip(self.patches.as_deref());
        let known = known.filter(|((_, depth), patches)| {
            let depths = patches.iter().map(|one| one.depth_in.high.0);
            let deepest = depths.fold(depth.aim_in.high.0, f64::max);
            let closes = quantity::closes_in(growth);
            if deepest > closes {
                let at = depth::aim_field(depth.way);
                let finding = Finding::new(Code::DeeperThanRound, Part::Surface, self.surface.id, at);
                reader.say(finding);
            }
            deepest <= closes
        });
        let laid = known.zip(self.ground.as_ref()).map(|(((area, depth), patches), ground)| {
            quantity::in_place(self.surface, area, depth, patches, ground, self.foam)
        });
        let (in_place, lines) = laid.map_or((None, None), |(feet, lines)| (Some(feet), lines));
        // The deepest spot rules the lifts.
        let lifts = depth.as_ref().zip(self.foam).and_then(|(depth, foam)| {
            let patches = lines.iter().flat_map(|lines| &lines.patches).map(|one| one.add_in.likely);
            let deepest =
                patches.fold(depth.add_in().likely, |most, one| if one > most { one } else { most });
            let pocket = self.ground.as_ref().map_or(Inches(0.0), |ground| ground.deepest_in);
            spraying::lifts(self.surface, deepest, pocket, foam, reader)
        });
        let until = depth
            .as_ref()
            .filter(|_| self.area.is_none())
            // What fills pockets hangs on no depth: nothing is told then.
            .zip(self.ground.as_ref().filter(|ground| ground.pocket_in.0 <= 0.0))
            .and_then(|(depth, ground)| {
                quantity::until(self.surface, depth, ground.uneven_pct(), self.job.units)
            });
        let filled = lines.as_ref().is_some_and(|lines| lines.fill.is_some());
        let in_place_by = match (lines.is_some(), growth == Band::exactly(0.0)) {
            (true, true) if filled => Sum::Filled,
            (true, false) if filled => Sum::WrappedFilled,
            (true, true) => Sum::Lines,
            (true, false) => Sum::WrappedLines,
            (false, true) => Sum::Plain,
            (false, false) => Sum::Wrapped,
        };
        SurfaceEstimate {
            id: self.surface.id,
            foam: self.foam.map_or(0, |foam| foam.id),
            in_place_by,
            ground: self.ground.filter(|ground| ground.on != "flat"),
            area: self.area,
            depth,
            in_place,
            bought: in_place.filter(|_| self.surface.depth_way != DepthWay::LeftOver),
            lines,
            lifts,
            until,
        }
    }
}

/// What the purchase for all other surfaces leaves for those that get whatever is left; `None` where no
/// purchase is known or one of them is not measured.
///
/// In words: feet = usable board feet bought − board feet to spray − what their patches and filled pockets
/// take; over = the sum of each one's area × its factor for uneven ground × the job's allowances. The depth is feet ÷ over, or the root
/// of [`depth::Wrapped`] where something is round or boxed.
pub(crate) fn left(waiting: &[(usize, Begun<'_>)], purchase: &Purchase, quantity: &Quantity) -> Option<Left> {
    // The shelf alone may be enough: then nothing is bought.
    let shelf = purchase.from_stock.0 - quantity.to_spray.likely.0;
    let bought = purchase.buy.as_ref().map(|buy| buy.left.0);
    let (mut feet, mut over, mut growth) = (bought.or((shelf > 0.0).then_some(shelf))?, 0.0, 0.0);
    for (_, one) in waiting {
        feet -= one.patch_feet().0 * quantity.allowances.factor();
        let whole = one.rest_ft2()?.0 * one.uneven_factor() * quantity.allowances.factor();
        let each = one.growth().likely;
        over += whole * (1.0 + 2.0 * each * depth::there_in(one.existing.as_ref()));
        growth += whole * each;
    }
    Some(Left { feet_bdft: BoardFeet(feet), over_ft2: SquareFeet(over), growth_ft2_in: growth })
}
