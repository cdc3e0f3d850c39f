//! Areas and drawings from plain numbers; what is read from entries is tested in `tests/jobs/`.

use super::openings::Hole;
use super::takeoff::Framing;
use super::*;
use crate::findings::{Code, Finding};
use crate::job::Part;
use crate::measure::Units;
use proptest::prelude::*;

const FT: f64 = 12.0;

fn takeoff(shape: Shape, measures: &[(&'static str, f64)]) -> Takeoff {
    let measures = measures
        .iter()
        .map(|(field, value)| Measure { field, value: Band::exactly(*value), default: false })
        .collect();
    Takeoff {
        shape,
        way: "",
        landing: "",
        measures,
        times: Band::exactly(1.0),
        framing: Framing::Nothing,
        holes: Vec::new(),
        cavity_in: None,
    }
}

fn framed(shape: Shape, length: f64, up: f64, spacing: f64, member_in: f64, plates: f64) -> Takeoff {
    let field = if shape == Shape::FramedFloor { "width" } else { "height" };
    let framing =
        Framing::Pieces { spacing: Band::exactly(spacing), member_in, plates: Band::exactly(plates) };
    Takeoff { framing, ..takeoff(shape, &[("length", length), (field, up)]) }
}

fn hole(id: u32, width: f64, height: f64, place: Option<(f64, f64)>) -> Hole {
    Hole {
        id,
        name: id.to_string(),
        width: Band::exactly(width),
        height: Band::exactly(height),
        count: Band::exactly(1.0),
        place,
    }
}

fn with(mut takeoff: Takeoff, holes: Vec<Hole>) -> Takeoff {
    takeoff.holes = holes;
    takeoff
}

fn north_wall() -> Takeoff {
    let wall = framed(Shape::FramedWall, 24.0 * FT, 7.5 * FT, 16.0, 1.5, 0.0);
    let (a, b) = (hole(1, 36.0, 48.0, Some((40.0, 32.0))), hole(2, 54.0, 48.0, Some((150.5, 32.0))));
    with(wall, vec![a, b])
}

fn net_of(takeoff: &Takeoff) -> f64 {
    net::area(takeoff).net_ft2.likely.0
}

fn outline_of(takeoff: &Takeoff) -> Outline {
    outline::outline(takeoff, 7, Units::Us)
}

fn close(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * one.abs().max(1.0)
}

/// The tinted area of a drawing in square feet, found cell by cell on the grid of all its edges.
fn tinted(outline: &Outline) -> f64 {
    let solid: Vec<Rect> = outline
        .members
        .iter()
        .map(|one| one.rect)
        .chain(outline.openings.iter().map(|one| one.rect))
        .collect();
    // Under slopes by narrow slices, each cut at its own height: exact where no edge of a piece lies within a slice
    // and the slope crosses none, so the ridge and every crossing are cuts too.
    if let [_, _, (width, eave), (middle, ridge), _] = outline.polygon[..] {
        return under_slopes(&solid, width, eave, middle, ridge);
    }
    let cuts = |edges: Vec<f64>, end: f64| {
        let mut cuts: Vec<f64> = edges.into_iter().map(|at| at.clamp(0.0, end)).chain([0.0, end]).collect();
        cuts.sort_by(f64::total_cmp);
        cuts
    };
    let across = cuts(solid.iter().flat_map(|one| [one.x_in, one.right_in()]).collect(), outline.width_in);
    let up = cuts(solid.iter().flat_map(|one| [one.y_in, one.top_in()]).collect(), outline.height_in);
    let mut area = 0.0;
    for x in across.windows(2) {
        for y in up.windows(2) {
            let (mid_x, mid_y) = ((x[0] + x[1]) / 2.0, (y[0] + y[1]) / 2.0);
            let covered = solid.iter().any(|one| {
                mid_x > one.x_in && mid_x < one.right_in() && mid_y > one.y_in && mid_y < one.top_in()
            });
            if !covered {
                area += (x[1] - x[0]) * (y[1] - y[0]);
            }
        }
    }
    area / 144.0
}

/// The same under two slopes: between two cuts every edge is straight, so the trapezoid of its ends is exact.
fn under_slopes(solid: &[Rect], width: f64, eave: f64, middle: f64, ridge: f64) -> f64 {
    let top = |x: f64| eave + (ridge - eave) * (1.0 - (x - middle).abs() / middle.max(1e-300));
    let mut cuts = vec![0.0, middle, width];
    for one in solid {
        cuts.extend([one.x_in, one.right_in()]);
        for level in [one.y_in, one.top_in()] {
            let in_from = (level - eave) / (ridge - eave) * middle;
            cuts.extend([in_from, width - in_from].into_iter().filter(|at| at.is_finite()));
        }
    }
    cuts.retain(|at| (0.0..=width).contains(at));
    cuts.sort_by(f64::total_cmp);
    let mut area = 0.0;
    for pair in cuts.windows(2) {
        let mid = (pair[0] + pair[1]) / 2.0;
        let mut spans: Vec<(f64, f64)> = solid
            .iter()
            .filter(|one| one.x_in < mid && mid < one.right_in())
            .map(|one| (one.y_in, one.top_in().min(top(mid))))
            .filter(|(low, high)| high > low)
            .collect();
        spans.sort_by(|one, other| one.0.total_cmp(&other.0));
        let (mut open, mut from) = (top(mid), 0.0_f64);
        for (low, high) in spans {
            open -= (high - low.max(from)).max(0.0);
            from = from.max(high);
        }
        area += (pair[1] - pair[0]) * open;
    }
    area / 144.0
}

/// The sample wall: 24′-0″ × 7′-6″ between plates, 2x6 at 16 in, window A 3′-0″ × 4′-0″ at 3′-4″, window B
/// 4′-6″ × 4′-0″ at 12′-6½″, sills 2′-8″. By hand: 17 full members 1½ × 90, 4 jacks 1½ × 80, headers 39 and
/// 57 × 5½, sills 36 and 54 × 1½, 5 cripples 1½ × 30½ below and 4½ above: 3,700.5 in² = 25.70 ft².
#[test]
fn the_sample_wall_is_framed_as_it_is_drawn() {
    let area = net::area(&north_wall());
    assert_eq!(area.gross_ft2, Band::exactly(SquareFeet(180.0)));
    assert_eq!(area.openings_ft2, Band::exactly(SquareFeet(30.0)));
    assert!(close(area.framing_ft2.likely.0, 3_700.5 / 144.0));
    assert!((area.net_ft2.likely.0 - 124.30).abs() < 0.005);
    assert!((area.framing_share_pct.likely - 17.0).abs() < 0.2, "17 % of the clear wall");
    let counts: Vec<(Piece, u32)> = area.pieces.iter().map(|sum| (sum.piece, sum.count)).collect();
    use Piece as P;
    assert_eq!(
        counts,
        [(P::Stud, 13), (P::King, 4), (P::Jack, 4), (P::Header, 2), (P::Sill, 2), (P::Cripple, 10)]
    );
    assert_eq!((area.members, area.framing_by), (35, FramingBy::Pieces));
}

#[test]
fn the_sample_wall_is_dimensioned_as_it_is_drawn() {
    let outline = outline_of(&north_wall());
    assert!(outline.true_shape && outline.net_drawn);
    let line = |side: Side, row: u32| -> Vec<(f64, f64, String, u32)> {
        let lines = outline.dimensions.iter().filter(|one| one.side == side && one.row == row);
        lines.map(|one| (one.from_in, one.to_in, one.at.field.clone(), one.at.id)).collect()
    };
    let named = |from: f64, to: f64, field: &str, id: u32| (from, to, field.to_owned(), id);
    assert_eq!(
        line(Side::Bottom, 0),
        [
            named(0.0, 40.0, "from_left", 1),
            named(40.0, 76.0, "width", 1),
            named(76.0, 150.5, "", 7),
            named(150.5, 204.5, "width", 2),
            named(204.5, 288.0, "", 7),
        ]
    );
    assert_eq!(line(Side::Bottom, 1), [named(0.0, 288.0, "length", 7)]);
    assert_eq!(line(Side::Left, 0), [named(0.0, 90.0, "height", 7)]);
    assert_eq!(
        line(Side::Left, 2),
        [named(0.0, 32.0, "sill", 2), named(32.0, 80.0, "height", 2), named(80.0, 90.0, "", 7)]
    );
    assert_eq!(line(Side::Top, 0), [named(0.0, 150.5, "from_left", 2)]);
    assert_eq!(line(Side::Top, 1), [named(16.0, 32.0, "spacing", 7)]);
}

/// Textbook test question: 123 ft of 8 ft wall is 984 ft²; at 2 in 1,968 board feet, 1,783 with the bare stud
/// share 1.5/16 out.
#[test]
fn a_textbook_wall() {
    let mut wall = framed(Shape::FramedWall, 123.0 * FT, 8.0 * FT, 16.0, 1.5, 0.0);
    wall.framing = Framing::Nothing;
    assert_eq!(net_of(&wall), 984.0);
    assert_eq!(net_of(&wall) * 2.0, 1_968.0);
    wall.framing = Framing::Share(Band::exactly(1.5 / 16.0 * 100.0));
    assert_eq!((net_of(&wall) * 2.0).trunc(), 1_783.0);
    assert!(!outline_of(&wall).net_drawn);
    // Counted piece by piece it is 94 studs: 92 on center, one at each end.
    wall.framing =
        Framing::Pieces { spacing: Band::exactly(16.0), member_in: 1.5, plates: Band::exactly(0.0) };
    assert_eq!(net::area(&wall).members, 94);
    assert!(close(net_of(&wall), 984.0 - 94.0 * 1.5 * 96.0 / 144.0));
}

/// How-to article: 2 × (28 + 30) × 9 = 1,044 ft², × 3 in = 3,132 board feet.
#[test]
fn a_house_from_its_footprint() {
    let measures = [("length", 28.0 * FT), ("width", 30.0 * FT), ("height", 9.0 * FT)];
    let house = takeoff(Shape::Footprint, &measures);
    assert_eq!(net_of(&house), 1_044.0);
    assert_eq!(net_of(&house) * 3.0, 3_132.0);
    let outline = outline_of(&house);
    assert_eq!(outline.width_in * outline.height_in / 144.0, 1_044.0);
    let walls: Vec<f64> = outline
        .dimensions
        .iter()
        .filter(|one| one.side == Side::Bottom && one.row == 0)
        .map(|one| one.to_in)
        .collect();
    assert_eq!(walls, [336.0, 696.0, 1_032.0, 1_392.0]);
}

/// Owners' blogs: an 11 in strip; 12 × 0.85 board feet reach 11.1 ft of it at 1 in, 15 × 0.85 reach 13.9 ft.
/// And 10 m × 4 m under a trailer: 430.6 ft², 423.8 board feet at 25 mm, 847.6 at 50 mm (NIST SP 811: 1 in =
/// 25.4 mm exactly).
#[test]
fn strips_and_meters() {
    let strip = |feet: f64| net_of(&takeoff(Shape::Rectangle, &[("length", feet * FT), ("height", 11.0)]));
    assert_eq!(strip(12.0), 11.0);
    assert!((strip(12.0 * 0.85 / (11.0 / 12.0)) - 10.2).abs() < 1e-9);
    assert!((10.2 / strip(1.0) - 11.1).abs() < 0.05 && (15.0 * 0.85 / strip(1.0) - 13.9).abs() < 0.05);
    let under =
        net_of(&takeoff(Shape::Rectangle, &[("length", 10_000.0 / 25.4), ("height", 4_000.0 / 25.4)]));
    assert!((under - 430.6).abs() < 0.05);
    assert!((under - 40.0 / 9.290_304e-2).abs() < 1e-9, "NIST SP 811: 1 ft² = 9.290 304 E−02 m²");
    assert!((under * 25.0 / 25.4 - 423.8).abs() < 0.05 && (under * 50.0 / 25.4 - 847.6).abs() < 0.05);
}

/// Building-science forum: 83.5 ft × 18 ft × two sides = 3,006 ft²; 43 trusses 1½ in wide take 193.5 ft².
/// Counted on center at 24 in a slope has 43 rafters: the same as the asker's middle figure.
#[test]
fn a_roof_slope() {
    let slope = framed(Shape::FramedSlope, 83.5 * FT, 18.0 * FT, 24.0, 1.5, 0.0);
    let area = net::area(&slope);
    assert_eq!(area.gross_ft2.likely.0 * 2.0, 3_006.0);
    assert_eq!(area.members, 43);
    assert!(close(area.framing_ft2.likely.0 * 2.0, 43.0 * 1.5 / 12.0 * 36.0));
}

#[test]
fn a_typed_area_is_a_square_of_its_size() {
    let typed = takeoff(Shape::TypedArea, &[("area", 62.0)]);
    let outline = outline_of(&typed);
    assert_eq!(net_of(&typed), 62.0);
    assert!(close(outline.width_in * outline.height_in / 144.0, 62.0));
    assert!(!outline.true_shape && outline.dimensions.is_empty());
}

/// An opening in a floor by hand: 12 ft × 10 ft, joists 1½ in at 16 in, a hatch 30 × 54 in at 40, 24 in. Its
/// trimmers stand at 38½ and 70; the joists at 47¼ and 63¼ end as tails under and over it, eight others are
/// whole.
#[test]
fn a_hatch_in_a_floor_has_trimmers_headers_and_tail_joists() {
    let floor = framed(Shape::FramedFloor, 12.0 * FT, 10.0 * FT, 16.0, 1.5, 0.0);
    let area = net::area(&with(floor.clone(), vec![hole(1, 30.0, 54.0, Some((40.0, 24.0)))]));
    let count = |area: &SurfaceArea, piece| {
        area.pieces.iter().find(|sum| sum.piece == piece).map_or(0, |sum| sum.count)
    };
    assert_eq!(count(&area, Piece::Stud), 8);
    assert_eq!(
        (count(&area, Piece::King), count(&area, Piece::Header), count(&area, Piece::Cripple)),
        (2, 2, 4)
    );
    let by_hand = 10.0 * 1.5 * 120.0 + 2.0 * 30.0 * 1.5 + 2.0 * 1.5 * (22.5 + 120.0 - 79.5);
    assert!(close(area.framing_ft2.likely.0, by_hand / 144.0));
    // A header of more than 4 ft is doubled, and so are its trimmers.
    let wide = net::area(&with(floor, vec![hole(1, 54.0, 54.0, Some((40.0, 24.0)))]));
    assert_eq!((count(&wide, Piece::King), count(&wide, Piece::Header)), (4, 2));
    let headers = wide.pieces.iter().find(|sum| sum.piece == Piece::Header).expect("headers");
    assert!(close(headers.area_ft2.likely.0, 2.0 * 54.0 * 3.0 / 144.0));
}

#[test]
fn a_door_has_no_sill_and_cuts_the_lower_plate() {
    let wall = framed(Shape::FramedWall, 12.0 * FT, 8.0 * FT, 16.0, 1.5, 3.0);
    let door = with(wall, vec![hole(1, 36.0, 80.0, Some((50.0, 0.0)))]);
    let area = net::area(&door);
    assert!(area.pieces.iter().all(|sum| sum.piece != Piece::Sill));
    let plates = area.pieces.iter().find(|sum| sum.piece == Piece::Plate).expect("plates");
    assert_eq!(plates.count, 3);
    assert!(close(plates.area_ft2.likely.0, 1.5 * (3.0 * 144.0 - 36.0) / 144.0));
    assert!(close(tinted(&outline_of(&door)), area.net_ft2.likely.0));
}

#[test]
fn openings_without_a_place_take_their_share_of_the_framing_with_them() {
    let wall = framed(Shape::FramedWall, 20.0 * FT, 8.0 * FT, 16.0, 1.5, 0.0);
    let bare = net::area(&wall);
    let area = net::area(&with(wall, vec![hole(1, 36.0, 48.0, None)]));
    assert_eq!(area.framing_by, FramingBy::Estimated);
    assert_eq!(area.openings_ft2.likely, SquareFeet(12.0));
    assert!(close(area.framing_ft2.likely.0, bare.framing_ft2.likely.0 * 148.0 / 160.0));
    assert!(close(area.net_ft2.likely.0, bare.net_ft2.likely.0 * 148.0 / 160.0));
}

#[test]
fn a_range_runs_through_in_columns() {
    let mut back = takeoff(Shape::Rectangle, &[]);
    let measure =
        |field, low, likely, high| Measure { field, value: Band { low, likely, high }, default: false };
    back.measures = vec![measure("length", 342.0, 360.0, 378.0), measure("height", 84.0, 90.0, 96.0)];
    let mut door = hole(1, 36.0, 80.0, None);
    door.count = Band { low: 1.0, likely: 1.5, high: 2.0 };
    let area = net::area(&with(back, vec![door]));
    assert_eq!(area.gross_ft2, Band { low: 199.5, likely: 225.0, high: 252.0 }.map(SquareFeet));
    assert_eq!(area.openings_ft2, Band { low: 40.0, likely: 30.0, high: 20.0 }.map(SquareFeet));
    assert_eq!(area.net_ft2, Band { low: 159.5, likely: 195.0, high: 232.0 }.map(SquareFeet));
}

fn said(takeoff: &Takeoff) -> Vec<Finding> {
    let extent = takeoff.extent(Column::Likely);
    let plane = Rect::between(0.0, 0.0, extent.width_in, extent.height_in);
    let mut reader = Reader::new(Units::Us);
    openings::check(7, &takeoff.holes, plane, takeoff.top(Column::Likely), extent.gross_ft2, &mut reader);
    reader.findings
}

#[test]
fn what_is_wrong_with_openings_is_said_where_it_is() {
    let wall = || framed(Shape::FramedWall, 20.0 * FT, 8.0 * FT, 16.0, 1.5, 0.0);
    let at = |finding: &Finding| (finding.code, finding.at.part, finding.at.id, finding.at.field.clone());
    assert_eq!(said(&north_wall()), []);
    // Flush with all four edges is inside.
    assert_eq!(said(&with(wall(), vec![hole(1, 240.0, 96.0, Some((0.0, 0.0)))])), []);

    let past = with(wall(), vec![hole(1, 36.0, 48.0, Some((205.0, 32.0)))]);
    let found = said(&past);
    assert_eq!(at(&found[0]), (Code::OpeningOutside, Part::Opening, 1, "from_left".into()));
    let area = net::area(&past);
    assert!(close(area.openings_ft2.likely.0, 35.0 * 48.0 / 144.0));
    assert!(close(area.openings[0].whole_ft2.likely.0, 12.0));
    assert!(close(tinted(&outline_of(&past)), area.net_ft2.likely.0));
    let high = said(&with(wall(), vec![hole(1, 36.0, 48.0, Some((5.0, 60.0)))]));
    assert_eq!(at(&high[0]), (Code::OpeningOutside, Part::Opening, 1, "sill".into()));
    let big = said(&with(wall(), vec![hole(1, 250.0, 48.0, None)]));
    assert_eq!(at(&big[0]), (Code::OpeningOutside, Part::Opening, 1, "width".into()));

    let two =
        with(wall(), vec![hole(1, 36.0, 48.0, Some((40.0, 32.0))), hole(2, 36.0, 48.0, Some((70.0, 40.0)))]);
    let found = said(&two);
    assert_eq!(at(&found[0]), (Code::OpeningsOverlap, Part::Opening, 2, "from_left".into()));
    let area = net::area(&two);
    assert!(close(area.openings_ft2.likely.0, (2.0 * 36.0 * 48.0 - 6.0 * 40.0) / 144.0));
    assert!(close(tinted(&outline_of(&two)), area.net_ft2.likely.0));

    let mut many = hole(1, 36.0, 48.0, None);
    many.count = Band::exactly(20.0);
    let too_much = with(wall(), vec![many]);
    assert_eq!(at(&said(&too_much)[0]), (Code::OpeningsExceed, Part::Surface, 7, String::new()));
    let area = net::area(&too_much);
    assert_eq!(
        (area.openings_ft2.likely.0, area.framing_ft2.likely.0, area.net_ft2.likely.0),
        (160.0, 0.0, 0.0)
    );
}

/// Window over door, door against the end, two windows on one king: still every spot once.
#[test]
fn crowded_openings_count_every_spot_once() {
    let wall = framed(Shape::FramedWall, 200.0, 120.0, 16.0, 1.5, 3.0);
    let holes = vec![
        hole(1, 36.0, 80.0, Some((0.0, 0.0))),
        hole(2, 36.0, 16.0, Some((0.0, 90.0))),
        hole(3, 30.0, 40.0, Some((60.0, 32.0))),
        hole(4, 30.0, 40.0, Some((94.5, 32.0))),
        hole(5, 30.0, 84.0, Some((169.0, 32.0))),
    ];
    let crowded = with(wall, holes);
    assert!(close(tinted(&outline_of(&crowded)), net_of(&crowded)));
}

/// A whole takeoff from texts, as a person enters them.
fn entered(shape: Shape, deduct_framing: bool, entries: &[(&str, &str)]) -> (Option<Takeoff>, Vec<Finding>) {
    let entries = entries.iter().map(|(field, text)| crate::job::Entered {
        field: (*field).into(),
        text: (*text).into(),
        unit: None,
        sense: None,
    });
    let surface = Surface {
        id: 7,
        name: String::new(),
        shape,
        entries: entries.collect(),
        deduct_framing,
        openings: Vec::new(),
        patches: Vec::new(),
        depth_way: Default::default(),
        depth_kit: 0,
        foam: 0,
    };
    let mut reader = Reader::new(Units::Us);
    let takeoff = Takeoff::take(&surface, &mut reader);
    (takeoff, reader.findings)
}

fn codes(found: &[Finding]) -> Vec<(Code, &str)> {
    found.iter().map(|one| (one.code, &*one.at.field)).collect()
}

const RIM: &[(&str, &str)] =
    &[("length", "44'"), ("width", "30'"), ("band", "2x10"), ("joists_land", "length"), ("member", "2x10")];

/// By hand: 148 ft × 9¼ in; joists at both ends and on 16 to 512 in land on each 44 ft side, 34 each.
#[test]
fn a_rim_loses_the_joist_ends_on_the_sides_where_they_land() {
    let (rim, found) = entered(Shape::RimRun, true, RIM);
    let rim = rim.expect("complete");
    assert_eq!(codes(&found), []);
    let area = net::area(&rim);
    assert_eq!(area.members, 68);
    assert!(close(area.gross_ft2.likely.0, 148.0 * 9.25 / 12.0));
    assert!(close(area.net_ft2.likely.0, 107.531_25));
    assert!(close(tinted(&outline_of(&rim)), area.net_ft2.likely.0));
    // 24 on each 30 ft side: both ends and 16 to 352 in.
    let across =
        entered(Shape::RimRun, true, &[RIM, &[("joists_land", "width")]].concat()).0.expect("complete");
    assert_eq!(net::area(&across).members, 68, "the first answer of two stands");
    let mut across = RIM.to_vec();
    across[3] = ("joists_land", "width");
    let across = entered(Shape::RimRun, true, &across).0.expect("complete");
    assert_eq!(net::area(&across).members, 2 * 24);
    // Off: the foam covers them.
    assert!(close(net_of(&entered(Shape::RimRun, false, RIM).0.expect("complete")), 148.0 * 9.25 / 12.0));
}

/// A perimeter wins over sides; without a word on the joists nothing is taken out, and that is said.
#[test]
fn a_rim_from_its_perimeter() {
    let typed =
        [("perimeter", "148'"), ("length", "1'"), ("width", "1'"), ("band", "9 1/4"), ("member", "1.5")];
    let (rim, found) = entered(Shape::RimRun, true, &typed);
    assert_eq!(codes(&found), [(Code::JoistsNotSaid, "landing_run")]);
    assert!(close(net_of(&rim.expect("complete")), 148.0 * 9.25 / 12.0));
    let (rim, found) = entered(Shape::RimRun, true, &[&typed[..], &[("landing_run", "88'")]].concat());
    assert_eq!(codes(&found), []);
    // One run of 88 ft: both ends and 16 to 1,040 in.
    assert_eq!(net::area(&rim.expect("complete")).members, 67);
    let past = entered(Shape::RimRun, true, &[&typed[..], &[("landing_run", "149'")]].concat());
    assert_eq!(codes(&past.1), [(Code::AboveLimit, "landing_run")]);
    assert_eq!(
        codes(&entered(Shape::RimRun, true, &[("band", "2x10")]).1),
        [(Code::Needed, "length"), (Code::Needed, "width")]
    );
}

#[test]
fn the_first_parallel_joist_out_of_reach_leaves_its_sides_out() {
    let out = [RIM, &[("first_parallel", "out_of_reach")]].concat();
    let (rim, found) = entered(Shape::RimRun, true, &out);
    assert_eq!(codes(&found), [(Code::ParallelOutOfReach, "first_parallel")]);
    assert_eq!(found[0].figures[0].text, "60′-0″");
    let rim = rim.expect("complete");
    assert!(close(net_of(&rim), (88.0 * 12.0 - 68.0 * 1.5) * 9.25 / 144.0));
    assert!(close(tinted(&outline_of(&rim)), net_of(&rim)));
    let nowhere = [("perimeter", "148'"), ("band", "9"), ("first_parallel", "out_of_reach")];
    let (rim, found) = entered(Shape::RimRun, false, &nowhere);
    assert_eq!((rim.is_none(), codes(&found)), (true, vec![(Code::Needed, "landing_run")]));
}

/// The worked line of common practice: a 3 in lap on 148 ft is 37 board feet at 1 in. Open cores come on top.
#[test]
fn laps_are_strips_along_the_run() {
    let laps = [
        ("perimeter", "148'"),
        ("band", "9 1/4"),
        ("foundation_lap", "3"),
        ("sill_lap", "2"),
        ("core_count", "20"),
        ("core_size", "5 x 6"),
    ];
    let rim = entered(Shape::RimRun, false, &laps).0.expect("complete");
    let area = net::area(&rim);
    let part = |name: &str| area.parts.iter().find(|one| one.field == name).map(|one| one.value.likely);
    assert_eq!(part("lap_ft2"), Some(37.0));
    assert!(close(part("ledge_ft2").expect("ledge"), 148.0 / 6.0));
    assert!(close(part("cores_ft2").expect("cores"), 20.0 * 30.0 / 144.0));
    assert!(close(area.net_ft2.likely.0, 148.0 * 14.25 / 12.0 + 20.0 * 30.0 / 144.0));
    let outline = outline_of(&rim);
    assert_eq!(outline.strips, [3.0, 5.0]);
    assert!(!outline.net_drawn, "cores are not drawn");
}

#[test]
fn bays_by_count_both_ways() {
    let clear = [("rows", "2"), ("bay_width", "14 1/2"), ("bay_height", "7'")];
    let counted = entered(Shape::Bays, false, &[&clear[..], &[("bays", "12")]].concat()).0.expect("complete");
    assert!(close(net_of(&counted), 24.0 * 14.5 * 84.0 / 144.0));
    // 16 ft at 16 in are 12 bays to the inch; an inch more starts another.
    for (run, bays) in [("16'", 12.0), ("16' 1\"", 13.0), ("0", 0.0)] {
        let (found, said) = entered(Shape::Bays, false, &[&clear[..], &[("run", run)]].concat());
        let area = net::area(&found.unwrap_or_else(|| panic!("{said:?}")));
        assert_eq!(area.parts[0].value.likely, bays, "{run}");
        assert!(close(area.net_ft2.likely.0, bays * 2.0 * 14.5 * 84.0 / 144.0));
    }
    assert_eq!(codes(&entered(Shape::Bays, false, &clear).1), [(Code::Needed, "run")]);
    // Each edge between two bays is drawn, and none at the ends.
    let outline = outline_of(&counted);
    assert_eq!(outline.bays.len(), 11);
    assert_eq!((outline.bays[0], outline.bays[10], outline.width_in), (14.5, 159.5, 174.0));
    assert_eq!((outline.strips, outline.height_in), (vec![84.0], 168.0));
}

/// Roofing handbooks' table of pitch multipliers, printed to four places (here in ten-thousandths); in closed form √(1 + (n/12)²).
#[test]
fn slope_factors_are_those_of_the_handbooks() {
    for (pitch, printed) in [
        ("4/12", 10_541.0),
        ("6:12", 11_180.0),
        ("8 in 12", 12_019.0),
        ("12", 14_142.0),
        ("45°", 14_142.0),
        ("50 %", 11_180.0),
    ] {
        let plane = [("length", "30'"), ("plan_run", "10'"), ("pitch", pitch)];
        let (plane, found) = entered(Shape::PitchedPlane, false, &plane);
        assert_eq!(codes(&found), [], "{pitch}");
        assert!((net_of(&plane.expect("complete")) / 300.0 * 1e4 - printed).abs() < 0.5, "{pitch}");
    }
    // 3-4-5: a run of 12 ft at 9 in 12 is a rafter of 15 ft.
    let plane =
        [("length", "20'"), ("plan_run", "12'"), ("pitch", "9/12"), ("member", "2x8"), ("spacing", "24")];
    let plane = entered(Shape::PitchedPlane, true, &plane).0.expect("complete");
    assert!(close(net_of(&plane), 300.0 - 11.0 * 1.5 / 12.0 * 15.0));
}

/// By closed form: a triangle is half its rectangle, a stud under a slope is a trapezoid.
#[test]
fn a_gable_is_half_its_rectangle_and_its_studs_are_cut_along_the_slope() {
    let bare = [("length", "24'"), ("pitch", "8/12"), ("wall_height", "2'")];
    let gable = entered(Shape::Gable, false, &bare).0.expect("complete");
    assert!(close(net_of(&gable), 24.0 * 2.0 + 24.0 * 8.0 / 2.0));
    let typed = entered(Shape::Gable, false, &[("length", "24'"), ("rise", "8'")]).0.expect("complete");
    assert!(close(net_of(&typed), 96.0));
    // Four bays of 16 in under a rise of 24 in: the end studs are triangles 1½ wide, two trapezoids stand around
    // 16 and 48 in, the middle one loses two triangles at the ridge.
    let small = [("length", "64"), ("rise", "24"), ("member", "1.5")]
        .map(|(field, text)| (field, if field == "member" { text.to_owned() } else { format!("{text} in") }));
    let small: Vec<(&str, &str)> = small.iter().map(|(field, text)| (*field, &**text)).collect();
    let area = net::area(&entered(Shape::Gable, true, &small).0.expect("complete"));
    let slope = 24.0 / 32.0;
    let ends = 2.0 * 1.5 * 1.5 * slope / 2.0;
    let quarter = 2.0 * 1.5 * 12.0;
    let middle = 1.5 * 24.0 - 2.0 * 0.75 * 0.75 * slope / 2.0;
    assert_eq!(area.members, 5);
    assert!(close(area.framing_ft2.likely.0 * 144.0, ends + quarter + middle));
}

/// A gable's corners: an opening whose upper corner touches the slope is inside, an inch more is outside.
#[test]
fn an_opening_under_a_slope() {
    let gable = || {
        let mut gable = takeoff(Shape::Gable, &[("length", 240.0), ("rise", 120.0), ("wall_height", 0.0)]);
        gable.way = "rise";
        gable
    };
    assert_eq!(said(&with(gable(), vec![hole(1, 40.0, 60.0, Some((60.0, 0.0)))])), []);
    let past = with(gable(), vec![hole(1, 40.0, 61.0, Some((60.0, 0.0)))]);
    assert_eq!(codes(&said(&past)), [(Code::OpeningOutside, "sill")]);
    // Half a square inch of it is above the slope.
    assert!(close(net::area(&past).openings_ft2.likely.0, (40.0 * 61.0 - 0.5) / 144.0));
}

/// A thread in which the lower 2 ft of a basement wall get 2 in: two kits of 510 usable board feet reach 255 ft.
#[test]
fn a_band_at_part_height() {
    let band =
        entered(Shape::Band, false, &[("perimeter", "255'"), ("to_height", "2'")]).0.expect("complete");
    assert_eq!(net_of(&band) * 2.0, 1_020.0);
    let around = [("length", "28'"), ("width", "30'"), ("from_height", "1' 6\""), ("to_height", "4'")];
    assert!(close(net_of(&entered(Shape::Band, false, &around).0.expect("complete")), 116.0 * 2.5));
    let crossed = [("perimeter", "10'"), ("from_height", "4'"), ("to_height", "2'")];
    let (band, found) = entered(Shape::Band, false, &crossed);
    assert_eq!(
        (net_of(&band.expect("complete")), codes(&found)),
        (0.0, vec![(Code::HeightsCross, "to_height")])
    );
}

/// Common practice: a strip 4 in wide is a third of a square foot for each foot; no R is claimed for it.
#[test]
fn a_strip_that_only_seals() {
    let strip = entered(Shape::Strip, false, &[("length", "60'")]).0.expect("complete");
    let area = net::area(&strip);
    assert!(close(area.net_ft2.likely.0, 20.0));
    assert!(!area.claims_r && Shape::RimRun.claims_r());
}

/// A bus: body about 30 ft × 7.5 ft, flat 225 ft², as in a thread; seven alike are seven times as much.
#[test]
fn so_many_alike() {
    let one = [("length", "30'"), ("height", "7.5'")];
    let many = entered(Shape::Rectangle, false, &[&one[..], &[("times", "7")]].concat()).0.expect("complete");
    let area = net::area(&many);
    assert_eq!((area.one_ft2.likely.0, area.net_ft2.likely.0, area.many), (225.0, 1_575.0, "times"));
    assert_eq!(net::area(&entered(Shape::Rectangle, false, &one).0.expect("complete")).many, "");
}

#[test]
fn every_shape_has_a_form_that_fits_the_table_of_fields() {
    let shapes = [
        Shape::TypedArea,
        Shape::Rectangle,
        Shape::Footprint,
        Shape::FramedWall,
        Shape::FramedFloor,
        Shape::FramedSlope,
        Shape::RimRun,
        Shape::Bays,
        Shape::PitchedPlane,
        Shape::Gable,
        Shape::Band,
        Shape::Strip,
    ];
    assert_eq!(forms().iter().map(|form| form.shape).collect::<Vec<_>>(), shapes);
    for form in forms() {
        for asked in form.entries {
            let field = crate::job::field(Part::Surface, asked.field).expect(asked.field);
            assert!(!asked.needed || field.default.is_empty(), "{}", asked.field);
            assert!(form.framing || !asked.framing, "{}", asked.field);
            for other in [asked.with, asked.without].into_iter().filter(|other| !other.is_empty()) {
                assert!(form.entries.iter().any(|one| one.field == other), "{}: {other}", asked.field);
            }
        }
    }
}

#[test]
fn every_shape_field_and_piece_has_words() {
    for language in ["en", "es"] {
        let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("www/words").join(language);
        let text = std::fs::read_to_string(folder.join("surface.json")).expect("surface.json");
        let words: serde_json::Value = serde_json::from_str(&text).expect("JSON");
        let snake = |one: serde_json::Value| one.as_str().expect("a word").to_owned();
        let mut keys: Vec<String> = Vec::new();
        for form in forms() {
            let shape = snake(serde_json::to_value(form.shape).expect("serializes"));
            keys.extend(["shape", "about", "from"].map(|part| format!("{part}.{shape}")));
            let own = form.entries.iter().filter(|asked| asked.field != "times");
            keys.extend(own.map(|asked| format!("{shape}.{}", asked.field)));
        }
        let fields = crate::job::fields().iter().filter(|field| field.part == Part::Opening);
        keys.extend(fields.map(|field| format!("opening.{}", field.field)));
        let pieces = Piece::ALL.iter().map(|piece| snake(serde_json::to_value(piece).expect("serializes")));
        keys.extend(pieces.map(|piece| format!("piece.{piece}")));
        keys.extend(["nothing", "pieces", "share", "estimated"].map(|by| format!("framing_{by}")));
        for key in keys {
            assert!(!words[&key].is_null(), "{language}: {key}");
        }
    }
}

const COLUMNS: [fn(Band<SquareFeet>) -> f64; 3] =
    [|band| band.low.0, |band| band.likely.0, |band| band.high.0];

fn placed() -> impl Strategy<Value = Vec<Hole>> {
    let one = (1.0..120.0_f64, 1.0..120.0_f64, -5.0..300.0_f64, 0.0..140.0_f64, 0..5_u32);
    proptest::collection::vec(one, 0..5).prop_map(|list| {
        let holes = list.into_iter().zip(1..);
        holes
            .map(|((w, h, x, y, placed), id)| hole(id, w, h, (placed > 0).then_some((x.max(0.0), y))))
            .collect()
    })
}

fn any_gable() -> impl Strategy<Value = Takeoff> {
    (1.0..400.0_f64, 0.0..150.0_f64, 0.0..100.0_f64, 1.0..60.0_f64, 0.1..8.0_f64, placed()).prop_map(
        |(length, rise, wall, spacing, member_in, holes)| {
            let measures = [("length", length), ("rise", rise), ("wall_height", wall)];
            let framing =
                Framing::Pieces { spacing: Band::exactly(spacing), member_in, plates: Band::exactly(0.0) };
            with(Takeoff { framing, way: "rise", ..takeoff(Shape::Gable, &measures) }, holes)
        },
    )
}

fn any_framed() -> impl Strategy<Value = Takeoff> {
    let shape = prop_oneof![Just(Shape::FramedWall), Just(Shape::FramedFloor), Just(Shape::FramedSlope)];
    (shape, 0.0..400.0_f64, 0.0..150.0_f64, 1.0..60.0_f64, 0.1..8.0_f64, 0..5_u32, placed()).prop_map(
        |(shape, length, up, spacing, member, plates, holes)| {
            with(framed(shape, length, up, spacing, member, plates.into()), holes)
        },
    )
}

proptest! {
    #[test]
    fn the_tinted_part_of_a_drawing_is_the_net_area(takeoff in any_framed()) {
        let (area, outline) = (net::area(&takeoff), outline_of(&takeoff));
        prop_assert_eq!(outline.net_drawn, area.openings.iter().all(|one| one.placed));
        if outline.net_drawn {
            prop_assert!((tinted(&outline) - area.net_ft2.likely.0).abs() < 1e-9);
        }
    }

    #[test]
    fn the_tinted_part_of_a_gable_is_the_net_area(gable in any_gable()) {
        let (area, outline) = (net::area(&gable), outline_of(&gable));
        let (gross, net) = (area.gross_ft2.likely.0, area.net_ft2.likely.0);
        prop_assert!((0.0..=gross).contains(&net));
        if outline.net_drawn {
            prop_assert!((tinted(&outline) - net).abs() < 1e-6, "{} {net}", tinted(&outline));
        }
    }

    #[test]
    fn the_tinted_part_of_a_rim_is_the_net_area(
        sides in (1.0..900.0_f64, 1.0..900.0_f64), band in 1.0..16.0_f64, laps in (0.0..6.0_f64, 0.0..6.0_f64),
        layout in (4.0..60.0_f64, 0.5..4.0_f64), which in 0..6_usize,
    ) {
        let (way, landing) = [("sides", "length"), ("sides", "width"), ("sides", ""), ("landing", "length"), ("landing", "width"), ("typed", "run")][which];
        let measures = [("length", sides.0), ("width", sides.1), ("perimeter", sides.0 + sides.1), ("landing_run", sides.0), ("band", band), ("sill_lap", laps.0), ("foundation_lap", laps.1)];
        let framing = match landing {
            "" => Framing::Nothing,
            _ => Framing::Pieces { spacing: Band::exactly(layout.0), member_in: layout.1, plates: Band::exactly(0.0) },
        };
        let rim = Takeoff { way, landing, framing, ..takeoff(Shape::RimRun, &measures) };
        let (area, outline) = (net::area(&rim), outline_of(&rim));
        prop_assert!(area.net_ft2.likely.0 <= area.gross_ft2.likely.0);
        prop_assert!((tinted(&outline) - area.net_ft2.likely.0).abs() < 1e-7);
    }

    #[test]
    fn so_many_alike_are_so_many_times_each_line(takeoff in any_framed(), times in 0..40_u32) {
        let mut many = takeoff.clone();
        many.times = Band::exactly(times.into());
        let (one, all) = (net::area(&takeoff), net::area(&many));
        prop_assert_eq!(all.gross_ft2.likely.0, one.gross_ft2.likely.0 * f64::from(times));
        prop_assert_eq!(all.openings_ft2.likely.0, one.openings_ft2.likely.0 * f64::from(times));
        prop_assert_eq!(all.framing_ft2.likely.0, one.framing_ft2.likely.0 * f64::from(times));
        prop_assert!((all.net_ft2.likely.0 - one.net_ft2.likely.0 * f64::from(times)).abs() < 1e-9);
        prop_assert_eq!(all.one_ft2, one.one_ft2);
    }

    #[test]
    fn the_lines_of_an_area_add_up(takeoff in any_framed()) {
        let area = net::area(&takeoff);
        let (gross, out, framing, net) = (
            area.gross_ft2.likely.0, area.openings_ft2.likely.0, area.framing_ft2.likely.0, area.net_ft2.likely.0,
        );
        prop_assert!(out >= 0.0 && framing >= 0.0 && net >= 0.0 && net <= gross);
        prop_assert!(framing <= gross - out);
        prop_assert_eq!(net, gross - out - framing);
        for member in outline_of(&takeoff).members {
            prop_assert!(member.rect.x_in >= 0.0 && member.rect.right_in() <= takeoff.extent(Column::Likely).width_in + 1e-9);
        }
    }

    #[test]
    fn columns_are_in_order(takeoff in any_framed(), more in 0.0..40.0_f64, less in 0.0..40.0_f64) {
        let mut takeoff = takeoff;
        for measure in &mut takeoff.measures {
            measure.value.low = (measure.value.low - less).max(0.0);
            measure.value.high += more;
        }
        for hole in &mut takeoff.holes {
            hole.width.high += more / 4.0;
        }
        let area = net::area(&takeoff);
        prop_assert!(area.net_ft2.low <= area.net_ft2.likely && area.net_ft2.likely <= area.net_ft2.high);
        for column in COLUMNS {
            let rest = column(area.gross_ft2) - column(area.openings_ft2) - column(area.framing_ft2);
            prop_assert_eq!(column(area.net_ft2), rest);
        }
    }

    #[test]
    fn a_plain_rectangle_cut_in_two_is_the_same_area_and_foam(
        length in 0.0..3_000.0_f64, height in 0.0..500.0_f64, cut in 0.0..1.0_f64, depth in 0.0..12.0_f64,
    ) {
        let area = |length: f64| net_of(&takeoff(Shape::Rectangle, &[("length", length), ("height", height)]));
        let (whole, parts) = (area(length), area(length * cut) + area(length - length * cut));
        prop_assert!(close(whole, parts));
        let foam = |area: f64| (SquareFeet(area) * Inches(depth)).0;
        prop_assert!(close(foam(whole), foam(area(length * cut)) + foam(area(length - length * cut))));
    }
}
