//! What holds for every shape: its form, its words, and that what is drawn is what is counted.

use super::*;

#[test]
fn every_shape_has_a_form_that_fits_the_table_of_fields() {
    for (at, form) in forms().enumerate() {
        assert!(forms().skip(at + 1).all(|other| other.shape != form.shape), "{:?} twice", form.shape);
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
        let page = |name: &str| -> serde_json::Value {
            let text = std::fs::read_to_string(folder.join(name)).expect("a page of words");
            serde_json::from_str(&text).expect("JSON")
        };
        let (words, named) = (page("surface.json"), page("takeoff.json"));
        let snake = |one: serde_json::Value| one.as_str().expect("a word").to_owned();
        let mut keys: Vec<String> = Vec::new();
        for form in forms() {
            let shape = snake(serde_json::to_value(form.shape).expect("serializes"));
            keys.push(format!("group.{}", form.group));
            assert!(!named[format!("shape.{shape}")].is_null(), "{language}: {shape}");
            keys.extend(["about", "from"].map(|part| format!("{part}.{shape}")));
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
            with(Takeoff { framing, ways: Ways::by("rise"), ..takeoff(Shape::Gable, &measures) }, holes)
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
        let rim = Takeoff { ways: Ways { landing, ..Ways::by(way) }, framing, ..takeoff(Shape::RimRun, &measures) };
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
