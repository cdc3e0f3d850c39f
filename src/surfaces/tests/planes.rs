//! Hip roofs, triangles, trapezoids and planes walked along their edges, against closed forms and printed tables.

use super::super::*;
use crate::findings::{Code, Finding};
use crate::job::{Entered, Leg};
use crate::measure::Units;
use proptest::prelude::*;

fn entry(field: &str, text: &str) -> Entered {
    Entered { field: field.into(), text: text.into(), unit: None, sense: None }
}

fn plane(shape: Shape, entries: &[(&str, &str)]) -> Surface {
    Surface::typed(1, shape, entries)
}

/// A length in inches and a turn to the left in degrees for each edge; no length for a blank.
fn walk(legs: &[(Option<f64>, f64)]) -> Surface {
    let leg = |(id, (length, turn)): (usize, &(Option<f64>, f64))| {
        let mut entries = vec![
            entry("turn", if *turn < 0.0 { "right" } else { "left" }),
            entry("angle", &format!("{:.9}", turn.abs())),
        ];
        entries.extend(length.map(|length| entry("length", &format!("{length:.9} in"))));
        Leg { id: id as u32 + 10, entries }
    };
    Surface { legs: legs.iter().enumerate().map(leg).collect(), ..plane(Shape::Polygon, &[]) }
}

fn areas(surface: &Surface) -> (Option<SurfaceArea>, Vec<Finding>) {
    let mut reader = Reader::new(Units::Us);
    (measure(surface, &mut reader), reader.findings)
}

fn gross(surface: &Surface) -> f64 {
    let (area, findings) = areas(surface);
    area.unwrap_or_else(|| panic!("{findings:?}")).gross_ft2.likely.0
}

fn codes(surface: &Surface) -> Vec<Code> {
    areas(surface).1.iter().map(|found| found.code).collect()
}

fn part(area: &SurfaceArea, field: &str) -> f64 {
    area.parts.iter().find(|one| one.field == field).map_or(f64::NAN, |one| one.value.likely)
}

/// A framing square's rafter table, inches per foot of common run ("length common rafters per foot run" and "length
/// hip or valley per foot run"), to the hundredth of an inch as it is stamped.
#[test]
fn a_hip_is_as_long_as_the_framing_square_says() {
    let table = [
        (2.0, 12.17, 17.09),
        (3.0, 12.37, 17.23),
        (4.0, 12.65, 17.44),
        (5.0, 13.00, 17.69),
        (6.0, 13.42, 18.00),
        (8.0, 14.42, 18.76),
        (9.0, 15.00, 19.21),
        (10.0, 15.62, 19.70),
        (12.0, 16.97, 20.78),
        (18.0, 21.63, 24.74),
    ];
    for (rise, common, hip) in table {
        let pitch = format!("{rise}/12");
        let roof = plane(Shape::HipRoof, &[("length", "30 ft"), ("width", "24 ft"), ("pitch", &pitch)]);
        let area = areas(&roof).0.expect("complete");
        assert!((part(&area, "slope_length") / 12.0 - common).abs() <= 0.005, "{rise}: common");
        assert!((part(&area, "hip_length") / 12.0 - hip).abs() <= 0.005, "{rise}: hip");
        assert_eq!(part(&area, "ridge_length"), 72.0);
        // Hip and half the end's eave are the legs over the common rafter of the end.
        let (slope, hip) = (part(&area, "slope_length"), part(&area, "hip_length"));
        assert!((hip * hip - slope * slope - 144.0 * 144.0).abs() < 1e-6);
    }
}

#[test]
fn a_hip_roof_is_its_faces() {
    for (length, width, count) in
        [("30 ft", "24 ft", [4, 4, 3, 3]), ("24 ft", "30 ft", [4, 4, 3, 3]), ("20 ft", "20 ft", [3, 3, 3, 3])]
    {
        let roof = plane(Shape::HipRoof, &[("length", length), ("width", width), ("pitch", "7/12")]);
        let drawn = outline(&roof, &mut Reader::new(Units::Us)).expect("complete");
        let corners: Vec<usize> = drawn.faces.iter().map(|face| face.corners.len()).collect();
        assert_eq!(corners, count, "{length}");
        let sum: f64 = drawn.faces.iter().map(|face| walk::shoelace(&face.corners)).sum();
        assert!((sum / 144.0 - gross(&roof)).abs() < 1e-9);
    }
}

/// Integer triangles, and two needles of W. Kahan, "Miscalculating area and angles of a needle-like triangle" (2014),
/// whose areas follow from ½ × side × height to the digits given.
#[test]
fn three_sides_make_an_area() {
    let sides = |a: &str, b: &str, c: &str| {
        gross(&plane(Shape::Triangle, &[("length", a), ("side_b", b), ("side_c", c)]))
    };
    assert_eq!(sides("3 ft", "4 ft", "5 ft"), 6.0);
    assert_eq!(sides("14 ft", "13 ft", "15 ft"), 84.0);
    assert_eq!(sides("15 ft", "14 ft", "13 ft"), 84.0);
    let needle = sides("99999.99996 in", "99999.99994 in", "0.00003 in") * 144.0;
    assert!((needle - 1.118_033_988).abs() < 1e-6, "{needle}");
    let needle = sides("0.00003 in", "99999.99996 in", "99999.99994 in") * 144.0;
    assert!((needle - 1.118_033_988).abs() < 1e-6, "{needle}");
}

#[test]
fn sides_that_cannot_meet_are_refused_beside_the_longest() {
    for (a, b, c, longest) in [
        ("10 ft", "4 ft", "6 ft", "length"),
        ("3 ft", "9 ft", "5 ft", "side_b"),
        ("3 ft", "5 ft", "9 ft", "side_c"),
    ] {
        let (area, findings) = areas(&plane(Shape::Triangle, &[("length", a), ("side_b", b), ("side_c", c)]));
        assert!(area.is_none());
        assert_eq!((findings[0].code, findings[0].at.field.as_str()), (Code::SidesCannotMeet, longest));
    }
}

#[test]
fn a_height_and_a_base_are_half_a_rectangle() {
    assert_eq!(gross(&plane(Shape::Triangle, &[("length", "12 ft"), ("height", "5 ft")])), 30.0);
    let with = |offset: &str| {
        gross(&plane(
            Shape::Trapezoid,
            &[("length", "12 ft"), ("top", "8 ft"), ("height", "5 ft"), ("top_offset", offset)],
        ))
    };
    for offset in ["", "0", "3 ft", "40 ft"] {
        assert_eq!(with(offset), 50.0, "{offset}");
    }
}

/// The compass rule by hand: 20 × 10 ft with a last wall that is 2 in long. P = 722 in, the walk ends 2 in beyond its start
/// (y = −2): each corner moves up by 2 × its way ÷ 722, so the right edge is 2 × 240/722 higher at its foot and so on.
#[test]
fn a_gap_is_spread_by_the_compass_rule() {
    let room = walk(&[(Some(240.0), 90.0), (Some(120.0), 90.0), (Some(240.0), 90.0), (Some(122.0), 90.0)]);
    assert_eq!(codes(&room), [Code::LegsSpread]);
    let up = |way: f64| 2.0 * way / 722.0;
    let corners = [(0.0, 0.0), (240.0, up(240.0)), (240.0, 120.0 + up(360.0)), (0.0, 120.0 + up(600.0))];
    let mean = ((corners[2].1 - corners[1].1) + (corners[3].1 - corners[0].1)) / 2.0;
    assert!((gross(&room) - 240.0 * mean / 144.0).abs() < 1e-9);
}

#[test]
fn the_limit_of_a_gap_is_one_percent_of_the_way_around() {
    // 240 + 120 + 240 + 120 + gap: 1 % of 727 is 7.27.
    let with = |last: f64| {
        codes(&walk(&[(Some(240.0), 90.0), (Some(120.0), 90.0), (Some(240.0), 90.0), (Some(last), 90.0)]))
    };
    assert_eq!(with(120.05), []);
    assert_eq!(with(120.07), [Code::LegsSpread]);
    assert_eq!(with(127.27), [Code::LegsSpread]);
    assert_eq!(with(127.28), [Code::LegsOpen]);
}

#[test]
fn a_walk_that_crosses_or_folds_back_is_refused() {
    let some = |legs: &[(f64, f64)]| {
        walk(&legs.iter().map(|(length, turn)| (Some(*length), *turn)).collect::<Vec<_>>())
    };
    let bow = some(&[(120.0, 135.0), (169.705_627_485, -135.0), (120.0, -135.0), (169.705_627_485, 0.0)]);
    assert_eq!(codes(&bow), [Code::LegsCross]);
    let back = some(&[(120.0, 180.0), (60.0, 90.0), (60.0, 90.0), (60.0, 90.0), (60.0, 90.0)]);
    assert!(codes(&back).contains(&Code::LegsCross) || codes(&back).contains(&Code::LegsOpen));
    let flat = some(&[(120.0, 180.0), (60.0, 0.0), (60.0, 180.0)]);
    assert!(codes(&flat).contains(&Code::LegsCross));
    // A corner that touches a wall.
    let touch = some(&[
        (240.0, 90.0),
        (120.0, 90.0),
        (120.0, 90.0),
        (120.0, -90.0),
        (120.0, 90.0),
        (0.000_000_1, 90.0),
    ]);
    assert!(areas(&touch).0.is_none());
}

#[test]
fn a_blank_last_edge_closes_the_walk() {
    let room = walk(&[(Some(36.0), 90.0), (Some(48.0), 0.0), (None, 0.0)]);
    let (area, findings) = areas(&room);
    let area = area.expect("complete");
    assert_eq!(findings.iter().map(|one| one.code).collect::<Vec<_>>(), [Code::LegsClosed]);
    assert_eq!((part(&area, "closing_length"), area.gross_ft2.likely.0), (60.0, 6.0));
    // A row too many, left blank, is none.
    let more =
        walk(&[(Some(36.0), 90.0), (Some(48.0), 90.0), (Some(36.0), 90.0), (Some(48.0), 90.0), (None, 0.0)]);
    assert_eq!((codes(&more), gross(&more)), (vec![], 12.0));
}

#[test]
fn a_walk_is_as_large_as_its_ranges_allow() {
    let mut room = walk(&[(None, 90.0), (Some(96.0), 90.0), (None, 90.0), (Some(96.0), 90.0)]);
    for leg in [0, 2] {
        room.legs[leg].entries.push(entry("length", "10-11 ft"));
    }
    let area = areas(&room).0.expect("complete");
    assert_eq!(area.gross_ft2.map(|one| one.0), Band { low: 80.0, likely: 84.0, high: 88.0 });
}

#[test]
fn framing_without_places_is_member_over_spacing() {
    let mut roof = plane(
        Shape::HipRoof,
        &[
            ("length", "30 ft"),
            ("width", "20 ft"),
            ("pitch", "9/12"),
            ("spacing", "24 in"),
            ("member", "2x6"),
        ],
    );
    roof.deduct_framing = true;
    let area = areas(&roof).0.expect("complete");
    assert_eq!((area.framing_by, area.framing_share_pct.likely), (FramingBy::Spacing, 6.25));
    assert_eq!((area.gross_ft2.likely.0, area.net_ft2.likely.0), (750.0, 703.125));
    roof.entries.push(entry("framing_share", "10 %"));
    let area = areas(&roof).0.expect("complete");
    assert_eq!((area.framing_by, area.net_ft2.likely.0), (FramingBy::Share, 675.0));
}

/// Corners around a middle: a plane without crossings.
fn around(radii: &[f64]) -> Vec<(f64, f64)> {
    let each = 360.0 / radii.len() as f64;
    let corner = |(number, radius): (usize, &f64)| {
        let angle = (number as f64 * each).to_radians();
        (radius * libm::cos(angle), radius * libm::sin(angle))
    };
    radii.iter().enumerate().map(corner).collect()
}

/// The walk along these corners, from any of them.
fn legs(corners: &[(f64, f64)], start: usize) -> Vec<(Option<f64>, f64)> {
    let at = |number: usize| corners[(start + number) % corners.len()];
    let toward = |number: usize| {
        let (from, to) = (at(number), at(number + 1));
        (libm::hypot(to.0 - from.0, to.1 - from.1), libm::atan2(to.1 - from.1, to.0 - from.0).to_degrees())
    };
    let leg = |number| {
        let ((length, heading), (_, next)) = (toward(number), toward(number + 1));
        let turn = (next - heading + 540.0).rem_euclid(360.0) - 180.0;
        (Some(length), turn)
    };
    (0..corners.len()).map(leg).collect()
}

proptest! {
    #[test]
    fn where_a_walk_begins_and_which_way_it_goes_changes_nothing(
        radii in proptest::collection::vec(40.0..400.0_f64, 4..12), start in 0..12_usize, gap in 0.0..0.004_f64,
    ) {
        let corners = around(&radii);
        let whole = walk::shoelace(&corners) / 144.0;
        let mut from_first = legs(&corners, 0);
        prop_assert!((gross(&walk(&from_first)) - whole).abs() <= 1e-7 * whole);
        // A tape's error on the first edge, spread alike from any corner and either way around.
        from_first[0].0 = from_first[0].0.map(|length| length * (1.0 + gap));
        let area = gross(&walk(&from_first));
        let count = from_first.len();
        let mut turned = from_first.clone();
        turned.rotate_left(start % count);
        prop_assert!((gross(&walk(&turned)) - area).abs() <= 1e-6 * area);
        let mirrored: Vec<_> = turned.iter().map(|(length, turn)| (*length, -turn)).collect();
        prop_assert!((gross(&walk(&mirrored)) - area).abs() <= 1e-6 * area);
        // Backward: the turn at an edge's end is then the one before it.
        let backward: Vec<_> =
            (0..count).map(|at| (turned[count - 1 - at].0, -turned[(2 * count - 2 - at) % count].1)).collect();
        prop_assert!((gross(&walk(&backward)) - area).abs() <= 1e-6 * area);
    }

    #[test]
    fn a_last_edge_left_blank_gives_what_it_would_have(radii in proptest::collection::vec(40.0..400.0_f64, 4..12)) {
        let corners = around(&radii);
        let mut open = legs(&corners, 0);
        let last = open.len() - 1;
        let length = open[last].0.take().unwrap_or(0.0);
        let area = areas(&walk(&open)).0.expect("complete");
        prop_assert!((part(&area, "closing_length") - length).abs() < 1e-5);
        prop_assert!((area.gross_ft2.likely.0 - walk::shoelace(&corners) / 144.0).abs() < 1e-5);
    }

    #[test]
    fn two_parts_of_a_plane_are_the_plane(base in 10..400_u32, top in 1..400_u32, up in 2..200_u32, cut in 0.1..0.9_f64) {
        let sized = |base: f64, top: f64, height: f64| {
            let texts = [base, top, height].map(|inches| format!("{inches:.9} in"));
            let mut one = plane(Shape::Trapezoid, &[("length", &texts[0]), ("top", &texts[1]), ("height", &texts[2]), ("member", "2x6")]);
            one.deduct_framing = true;
            areas(&one).0.expect("complete").net_ft2.likely.0
        };
        let (base, top, up) = (f64::from(base), f64::from(top), f64::from(up));
        let middle = base + (top - base) * cut;
        let parts = sized(base, middle, up * cut) + sized(middle, top, up * (1.0 - cut));
        let whole = sized(base, top, up);
        prop_assert!((parts - whole).abs() <= 1e-7 * whole.max(1.0));
        // So does the volume, at any depth: board feet = net area × depth.
        prop_assert!((parts * 3.5 - whole * 3.5).abs() <= 1e-6 * whole.max(1.0));
    }

    #[test]
    fn a_hip_roof_is_a_gable_roof_of_the_same_plan(length in 20..2000_u32, width in 20..2000_u32, pitch in 0..24_u32) {
        let (long, wide, half) = (format!("{length} in"), format!("{width} in"), format!("{} in", f64::from(width) / 2.0));
        let pitch = format!("{pitch}/12");
        let hip = gross(&plane(Shape::HipRoof, &[("length", &long), ("width", &wide), ("pitch", &pitch)]));
        let turned = gross(&plane(Shape::HipRoof, &[("length", &wide), ("width", &long), ("pitch", &pitch)]));
        let slopes = gross(&plane(Shape::PitchedPlane, &[("length", &long), ("plan_run", &half), ("pitch", &pitch), ("times", "2")]));
        prop_assert!((hip - slopes).abs() <= 1e-9 * hip && (hip - turned).abs() <= 1e-9 * hip);
    }
}
