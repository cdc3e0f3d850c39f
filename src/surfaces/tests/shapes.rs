//! Rims, bays, pitched planes, gables, bands and strips, from texts as a person enters them.

use super::*;

/// A whole takeoff from texts, as a person enters them.
pub(super) fn entered(
    shape: Shape,
    deduct_framing: bool,
    entries: &[(&str, &str)],
) -> (Option<Takeoff>, Vec<Finding>) {
    let surface = Surface { deduct_framing, ..Surface::typed(7, shape, entries) };
    let mut reader = Reader::new(Units::Us);
    let takeoff = Takeoff::take(&surface, &mut reader);
    (takeoff, reader.findings)
}

pub(super) fn codes(found: &[Finding]) -> Vec<(Code, &str)> {
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
        gable.ways.way = "rise";
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

/// By hand: 60 ft × ½ in is 2.5 ft². Its depth is the depth's business: a blank one leaves the area as it is.
#[test]
fn a_gap_and_its_bead() {
    let (gap, found) = entered(Shape::Gap, false, &[("length", "60'"), ("gap_width", "1/2 in")]);
    assert_eq!(codes(&found), []);
    let area = net::area(&gap.expect("complete"));
    assert!(close(area.net_ft2.likely.0, 2.5) && !area.claims_r);
    let form = forms().find(|form| form.shape == Shape::Gap).expect("a form");
    assert!(form.entries.iter().any(|asked| asked.field == "depth" && asked.elsewhere));
}

const HOLES: &[(&str, &str)] = &[("holes", "12"), ("hole_size", "2 in"), ("pipe_size", "1 1/4 in")];

/// By hand: π/4 × (4 − 1.5625) in² each, twelve of them; the drawn rings are that area. A thicker pipe leaves less,
/// so its range runs against the area's.
#[test]
fn rings_around_pipes() {
    let (pipes, found) = entered(Shape::Penetrations, false, HOLES);
    assert_eq!(codes(&found), []);
    let pipes = pipes.expect("complete");
    let area = net::area(&pipes);
    assert!(close(area.net_ft2.likely.0, 22.972_896_280_553_8 / 144.0) && !area.claims_r);
    let drawn = outline_of(&pipes);
    assert_eq!(drawn.faces.len(), 12);
    let tinted: f64 = drawn.faces.iter().map(|face| shoelace(&face.corners)).sum();
    assert!(close(tinted / 144.0, area.net_ft2.likely.0));
    let inside =
        |(x, y): &(f64, f64)| (0.0..=drawn.width_in).contains(x) && (0.0..=drawn.height_in).contains(y);
    assert!(drawn.faces.iter().all(|face| face.corners.iter().all(inside)));

    let wide = [HOLES[0], HOLES[1], ("pipe_size", "1 to 1 1/2 in")];
    let net = net::area(&entered(Shape::Penetrations, false, &wide).0.expect("complete")).net_ft2;
    let rings = |pipe: f64| 12.0 * core::f64::consts::PI / 4.0 * (4.0 - pipe * pipe) / 144.0;
    assert!(close(net.low.0, rings(1.5)) && close(net.high.0, rings(1.0)));

    let (none, found) = entered(Shape::Penetrations, false, &[HOLES[0], HOLES[1], ("pipe_size", "2 in")]);
    assert!(none.is_none());
    assert_eq!(codes(&found), [(Code::PipeFillsHole, "pipe_size")]);
    // So many are not drawn one by one.
    let many = entered(Shape::Penetrations, false, &[("holes", "400"), ("hole_size", "1 in")]).0;
    assert!(!outline_of(&many.expect("complete")).true_shape);
}

/// The area inside a closed line of corners, in square inches: Gauss's formula.
fn shoelace(corners: &[(f64, f64)]) -> f64 {
    let next = corners.iter().cycle().skip(1);
    corners.iter().zip(next).map(|(one, two)| one.0 * two.1 - two.0 * one.1).sum::<f64>() / 2.0
}

const COOLER: &[(&str, &str)] = &[("length", "10'"), ("width", "14'"), ("height", "8'")];

/// A walk-in cooler of 10 × 14 × 8 ft, as in a thread: walls 384, ceiling 140, floor 140 ft².
#[test]
fn a_room_face_by_face() {
    let (room, found) = entered(Shape::Room, false, COOLER);
    assert_eq!(codes(&found), []);
    let room = room.expect("complete");
    assert_eq!(net_of(&room), 384.0 + 140.0 + 140.0);
    let drawn = outline_of(&room);
    assert_eq!((drawn.view, drawn.net_drawn, drawn.faces.len()), (View::Unfolded, true, 6));
    let areas: Vec<f64> = drawn.faces.iter().map(|face| shoelace(&face.corners) / 144.0).collect();
    assert_eq!(areas, [140.0, 140.0, 80.0, 112.0, 80.0, 112.0]);

    // One face off: it is drawn, and takes no foam.
    let (bare, _) = entered(Shape::Room, false, &[COOLER, &[("floor", "no")]].concat());
    let bare = bare.expect("complete");
    assert_eq!(net_of(&bare), 524.0);
    let drawn = outline_of(&bare);
    let foamed = drawn.faces.iter().filter(|face| face.foamed).map(|face| shoelace(&face.corners));
    assert_eq!(foamed.sum::<f64>() / 144.0, 524.0);
    assert!(drawn.faces.iter().any(|face| face.name == "floor" && !face.foamed));
}

/// A door of 3 × 7 ft out of the cooler, then openings larger than the walls that are on: the ceiling gives none.
#[test]
fn openings_come_out_of_the_walls_that_are_on() {
    let room = entered(Shape::Room, false, COOLER).0.expect("complete");
    assert_eq!(net_of(&with(room, vec![hole(1, 36.0, 84.0, None)])), 643.0);
    let one_wall = [("front_wall", "no"), ("back_wall", "no"), ("left_wall", "no")];
    let room = || entered(Shape::Room, false, &[COOLER, &one_wall].concat()).0.expect("complete");
    let area = net::area(&with(room(), vec![hole(1, 168.0, 96.0, None), hole(2, 36.0, 84.0, None)]));
    assert_eq!((area.openings_ft2.likely.0, area.net_ft2.likely.0), (112.0, 280.0));
    // The front wall is off and 10 ft long, the right one on and 14.
    assert_eq!(room().opened(Column::Likely), Extent { width_in: 168.0, height_in: 96.0, gross_ft2: 112.0 });
}

proptest! {
    /// Faces are what they are in any combination: twice the three products, less those that are off.
    #[test]
    fn any_faces_of_a_room_add_up(
        length in 1.0..500.0_f64, width in 1.0..500.0_f64, height in 1.0..200.0_f64, off in any::<[bool; 6]>(),
    ) {
        let measures = [("length", length), ("width", width), ("height", height)];
        let mut room = takeoff(Shape::Room, &measures);
        room.ways.off = off;
        let own = [length * width, length * width, length * height, width * height, length * height, width * height];
        let on: f64 = own.iter().zip(off).filter(|(_, off)| !off).map(|(area, _)| area / 144.0).sum();
        prop_assert!(close(net_of(&room), on));
        let drawn = outline_of(&room);
        let tinted: f64 = drawn.faces.iter().filter(|face| face.foamed).map(|face| shoelace(&face.corners)).sum();
        prop_assert!(close(tinted / 144.0, on));
        // No two faces lie over each other, and none leaves the drawing.
        let boxes: Vec<_> = drawn.faces.iter().map(|face| (face.corners[0], face.corners[2])).collect();
        for (at, (low, high)) in boxes.iter().enumerate() {
            prop_assert!(low.0 >= 0.0 && low.1 >= 0.0);
            prop_assert!(high.0 <= drawn.width_in + 1e-9 && high.1 <= drawn.height_in + 1e-9);
            for (other_low, other_high) in &boxes[..at] {
                let apart = low.0 >= other_high.0 - 1e-9 || other_low.0 >= high.0 - 1e-9
                    || low.1 >= other_high.1 - 1e-9 || other_low.1 >= high.1 - 1e-9;
                prop_assert!(apart);
            }
        }
    }
}
