//! Net area × depth → board feet, each allowance on its own line.
//!
//! The lines add up exactly, unrounded; one figure is rounded, once, at the very end and upward. What is lost
//! between cylinder and wall is not here: it is in the usable yield of the [kits](crate::kits).

mod ground;
mod surface;
mod until;

use crate::SurfaceEstimate;
use crate::job::{DepthWay, Job, Part, Reader};
use crate::measure::{Band, BoardFeet};
use serde::Serialize;

pub use ground::{Ground, GroundForm, ground, grounds};
pub use surface::{Lines, PatchFoam, Sum, closes_in, growth, in_place, mean, rest, spread, uneven};
pub use until::{Until, until};

/// The shares that are added to the foam in place, in percent.
///
/// Both are shares of the foam in place, not of each other: 3 % over-depth and 2 % other waste add 5 %. A range
/// (2 to 4 %) makes its line one.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Allowances {
    /// What the crew sprays over the aim.
    pub over_depth_pct: Band<f64>,
    /// Any other waste; nothing unless it was switched on.
    pub other_waste_pct: Band<f64>,
}

impl Allowances {
    /// What is likely added, as a factor on the foam in place: 1 + over-depth + other waste.
    pub fn factor(self) -> f64 {
        1.0 + (self.over_depth_pct.likely + self.other_waste_pct.likely) / 100.0
    }
}

/// Board feet of the whole job.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[cfg_attr(target_arch = "wasm32", derive(tsify::Tsify))]
pub struct Quantity {
    /// The allowances used.
    pub allowances: Allowances,
    /// Net area × aim, over the surfaces that are complete.
    pub in_place: Band<BoardFeet>,
    /// The line for over-depth.
    pub over_depth: Band<BoardFeet>,
    /// The line for other waste.
    pub other_waste: Band<BoardFeet>,
    /// In place and both lines.
    pub to_spray: Band<BoardFeet>,
    /// The same, rounded up once: the figure on the sheet.
    pub to_spray_up: Band<BoardFeet>,
    /// The board feet that go on surfaces that get whatever is left: not bought for, and in none of the lines.
    pub left_over: Option<BoardFeet>,
    /// Surfaces that are complete.
    pub surfaces: u32,
    /// Surfaces in the job.
    pub of: u32,
}

/// The allowances of a job, in percent of the foam in place (0 to 100 each; an entry outside that leaves a
/// finding and adds nothing).
///
/// Over-depth is common practice, 0 unless entered: crews overshoot to hold the least depth. Other waste is 0
/// unless entered, since the usable yield of a kit already holds everything lost on the way to the wall.
pub fn allowances(job: &Job, reader: &mut Reader) -> Allowances {
    let mut share = |name| {
        let taken = reader.take(Part::Job, 0, &job.entries, name);
        taken.map_or(Band::exactly(0.0), |taken| taken.value)
    };
    Allowances { over_depth_pct: share("over_depth"), other_waste_pct: share("other_waste") }
}

/// Adds up the board feet in place of each surface (`None` for one that is not complete) and the allowances.
///
/// In words: in place = the sum over the complete surfaces of net area × aim; over-depth and other waste =
/// in place × their percent; to spray = the three lines added; and that rounded up to whole board feet.
///
/// ```
/// use foamwright::measure::{Band, BoardFeet};
/// use foamwright::quantity::{Allowances, board_feet};
/// let places = [322.6, 248.6, 217.0].map(|feet| Some(Band::exactly(BoardFeet(feet))));
/// let quantity = board_feet(&places, Allowances { over_depth_pct: Band::exactly(3.0), other_waste_pct: Band::exactly(0.0) });
/// assert_eq!(quantity.to_spray_up.likely, BoardFeet(812.0)); // from 811.846
/// ```
pub fn board_feet(in_place: &[Option<Band<BoardFeet>>], allowances: Allowances) -> Quantity {
    let column =
        |of: fn(&Band<BoardFeet>) -> BoardFeet| -> BoardFeet { in_place.iter().flatten().map(of).sum() };
    let place = Band {
        low: column(|band| band.low),
        likely: column(|band| band.likely),
        high: column(|band| band.high),
    };
    let share = |percent: Band<f64>| Band {
        low: BoardFeet(place.low.0 * percent.low / 100.0),
        likely: BoardFeet(place.likely.0 * percent.likely / 100.0),
        high: BoardFeet(place.high.0 * percent.high / 100.0),
    };
    let over_depth = share(allowances.over_depth_pct);
    let other_waste = share(allowances.other_waste_pct);
    let to_spray = Band {
        low: place.low + over_depth.low + other_waste.low,
        likely: place.likely + over_depth.likely + other_waste.likely,
        high: place.high + over_depth.high + other_waste.high,
    };
    Quantity {
        allowances,
        in_place: place,
        over_depth,
        other_waste,
        to_spray,
        to_spray_up: to_spray.map(rounded_up),
        left_over: None,
        surfaces: in_place.iter().flatten().count() as u32,
        of: in_place.len() as u32,
    }
}

impl Quantity {
    /// Takes in the surfaces that get whatever is left: they are counted, and their foam stands by itself.
    ///
    /// In words: left over = the sum of their foam in place × the job's allowances.
    pub(crate) fn with_left_over(&mut self, surfaces: &[SurfaceEstimate]) {
        let feet = |one: &SurfaceEstimate| {
            let left = one.depth.as_ref().filter(|depth| depth.way == DepthWay::LeftOver);
            left.and(one.in_place).map(|band| band.likely.0)
        };
        let all: Vec<f64> = surfaces.iter().filter_map(feet).collect();
        if !all.is_empty() {
            self.left_over = Some(BoardFeet(all.iter().sum::<f64>() * self.allowances.factor()));
        }
        self.surfaces = surfaces.iter().filter(|one| one.in_place.is_some()).count() as u32;
        self.of = surfaces.len() as u32;
    }

    /// All that is sprayed, what goes on with the left-over foam included.
    pub fn all_sprayed(&self) -> BoardFeet {
        self.to_spray.likely + self.left_over.unwrap_or(BoardFeet(0.0))
    }
}

/// Rounds up to whole board feet. A sum that is whole but for its last binary digits (812.000000001) stays
/// what it is instead of gaining a board foot.
fn rounded_up(feet: BoardFeet) -> BoardFeet {
    const LAST_DIGITS: f64 = 1e-9;
    let up = (feet.0 - LAST_DIGITS).ceil();
    BoardFeet(if up > 0.0 { up } else { 0.0 })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{Inches, SquareFeet};
    use proptest::prelude::*;

    fn total(places: &[f64], over_depth_pct: f64, other_waste_pct: f64) -> Quantity {
        let places: Vec<_> = places.iter().map(|feet| Some(Band::exactly(BoardFeet(*feet)))).collect();
        let (over_depth_pct, other_waste_pct) =
            (Band::exactly(over_depth_pct), Band::exactly(other_waste_pct));
        board_feet(&places, Allowances { over_depth_pct, other_waste_pct })
    }

    #[test]
    fn rounds_up_once_at_the_end() {
        for (sum, up) in [
            (811.8, 812.0),
            (812.0, 812.0),
            (812.000_000_000_1, 812.0),
            (812.000_001, 813.0),
            (0.0, 0.0),
            (0.01, 1.0),
            (248.6, 249.0),
        ] {
            assert_eq!(total(&[sum], 0.0, 0.0).to_spray_up.likely, BoardFeet(up), "{sum}");
        }
        // Three surfaces of a third of a board foot are one board foot, not three.
        assert_eq!(total(&[1.0 / 3.0; 3], 0.0, 0.0).to_spray_up.likely, BoardFeet(1.0));
    }

    /// The sample job's own lines, worked by hand: 322.6 + 248.6 + 217.0 = 788.2; 3 % of it 23.646; 811.846.
    #[test]
    fn the_sample_job_adds_up_line_by_line() {
        let quantity = total(&[322.6, 248.6, 217.0], 3.0, 0.0);
        assert!((quantity.in_place.likely.0 - 788.2).abs() < 1e-9);
        assert!((quantity.over_depth.likely.0 - 23.646).abs() < 1e-9);
        assert_eq!(quantity.other_waste.likely, BoardFeet(0.0));
        assert!((quantity.to_spray.likely.0 - 811.846).abs() < 1e-9);
        assert_eq!(quantity.to_spray_up.likely, BoardFeet(812.0));
        assert_eq!(quantity.in_place.likely.0.round(), 788.0);
        assert_eq!(total(&[124.3 * 2.0], 0.0, 0.0).to_spray_up.likely, BoardFeet(249.0));
    }

    #[test]
    fn an_incomplete_surface_is_counted_but_not_added() {
        let quantity = board_feet(
            &[Some(Band::exactly(BoardFeet(10.0))), None],
            Allowances { over_depth_pct: Band::exactly(0.0), other_waste_pct: Band::exactly(0.0) },
        );
        assert_eq!((quantity.surfaces, quantity.of), (1, 2));
        assert_eq!(quantity.to_spray.likely, BoardFeet(10.0));
    }

    #[test]
    fn a_range_of_an_allowance_runs_through() {
        let places = [Some(Band { low: 90.0, likely: 100.0, high: 120.0 }.map(BoardFeet))];
        let over_depth_pct = Band { low: 2.0, likely: 3.0, high: 5.0 };
        let quantity =
            board_feet(&places, Allowances { over_depth_pct, other_waste_pct: Band::exactly(1.0) });
        assert_eq!(quantity.over_depth, Band { low: 1.8, likely: 3.0, high: 6.0 }.map(BoardFeet));
        assert_eq!(quantity.to_spray_up, Band { low: 93.0, likely: 104.0, high: 128.0 }.map(BoardFeet));
    }

    /// NIST SP 811 (2008) appendix B.8: 1 ft = 0.3048 m, 1 ft² = 9.290 304 E−02 m², 1 in² = 6.4516 E−04 m²,
    /// 1 ft³ = 2.831 685 E−02 m³. A board foot is a twelfth of a cubic foot, 144 in³, by definition.
    #[test]
    fn a_board_foot_is_a_twelfth_of_a_cubic_foot() {
        let (foot_m, ft2_m2, in2_m2, ft3_m3) = (0.3048_f64, 9.290_304e-2, 6.4516e-4, 2.831_685e-2);
        assert!((foot_m * foot_m - ft2_m2).abs() < 1e-12);
        assert!((in2_m2 * 144.0 - ft2_m2).abs() < 1e-12);
        let twelve = SquareFeet(1.0) * Inches(12.0);
        assert_eq!(twelve, BoardFeet(12.0));
        let in_m3 = ft2_m2 * (foot_m / 12.0);
        assert!((in_m3 * 12.0 - ft3_m3).abs() < 5e-9, "SP 811 gives seven digits");
    }

    proptest! {
        #[test]
        fn the_lines_add_up_exactly(
            places in proptest::collection::vec(0.0..1e6_f64, 0..20),
            over in 0.0..100.0_f64,
            other in 0.0..100.0_f64,
        ) {
            let quantity = total(&places, over, other);
            let (place, up) = (quantity.in_place.likely.0, quantity.to_spray_up.likely.0);
            let sum = place + quantity.over_depth.likely.0 + quantity.other_waste.likely.0;
            prop_assert_eq!(quantity.to_spray.likely.0, sum);
            prop_assert!(up >= sum - 1e-9 && up < sum + 1.0 && up == up.trunc());
            prop_assert!((sum - place * quantity.allowances.factor()).abs() <= 1e-9 * sum.max(1.0));
        }

        #[test]
        fn more_depth_is_never_less_foam(
            net in 0.0..1e5_f64,
            depth in 0.0..36.0_f64,
            more in 0.0..36.0_f64,
            over in 0.0..100.0_f64,
        ) {
            let foam = |depth: f64| total(&[(SquareFeet(net) * Inches(depth)).0], over, 0.0).to_spray;
            prop_assert!(foam(depth + more).likely >= foam(depth).likely);
        }
    }
}
