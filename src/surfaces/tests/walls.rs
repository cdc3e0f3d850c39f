//! Rectangles, footprints and framed planes, with and without openings.

use super::*;

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

/// A wall 16 ft × 8 ft, studs 1½ at 24 in: 9 places, 9 × 1½ × 96 = 1,296 in² = 9 ft²; doubled 18 ft², tripled 27.
/// Around an opening the pieces stay single, and the drawing still is the net area.
#[test]
fn doubled_members_stand_on_the_same_centers() {
    let of = |plies: Option<Band<f64>>, holes: Vec<Hole>| {
        let mut wall = framed(Shape::FramedWall, 192.0, 96.0, 24.0, 1.5, 0.0);
        if let Some(value) = plies {
            wall.measures.push(Measure { field: "plies", value, default: false });
        }
        with(wall, holes)
    };
    let framing = |plies| net::area(&of(plies, Vec::new())).framing_ft2;
    let single = Band::exactly(1.0);
    assert_eq!(framing(None), Band::exactly(SquareFeet(9.0)));
    assert_eq!(framing(Some(single)), framing(None));
    assert_eq!(framing(Some(Band::exactly(2.0))), Band::exactly(SquareFeet(18.0)));
    assert_eq!(framing(Some(Band::exactly(3.0))), Band::exactly(SquareFeet(27.0)));
    // One or two: the low net area has two.
    let one_or_two = net::area(&of(Some(Band { low: 1.0, likely: 2.0, high: 2.0 }), Vec::new()));
    assert_eq!(one_or_two.net_ft2.low, SquareFeet(110.0));
    assert_eq!(one_or_two.net_ft2.high, SquareFeet(119.0));
    let part = one_or_two.parts.iter().find(|part| part.field == "built_length").expect("a width");
    assert_eq!(part.value, Band { low: 3.0, likely: 3.0, high: 1.5 });

    let window = || vec![hole(1, 36.0, 48.0, Some((60.0, 32.0)))];
    let doubled = of(Some(Band::exactly(2.0)), window());
    assert!(close(tinted(&outline_of(&doubled)), net_of(&doubled)));
    assert!(net_of(&doubled) < net_of(&of(None, window())));
    let jacks =
        net::area(&doubled).pieces.iter().find(|sum| sum.piece == Piece::Jack).map(|sum| sum.area_ft2);
    let alone = net::area(&of(None, window()));
    assert_eq!(jacks, alone.pieces.iter().find(|sum| sum.piece == Piece::Jack).map(|sum| sum.area_ft2));
}
