//! Published walls, and what holds of every wall.

use super::*;
use Position::{Cavity, Inside, Outside};

/// A framed wall whose cavity is full of something at R; its studs' R is typed by their depth.
fn filled(outside: f64, cavity: f64, stud: f64, inside: f64, share: f64) -> Assembly {
    let build = wall(&[(Outside, outside), (Cavity, cavity), (Inside, inside)], share, stud / SOFTWOOD_R_IN);
    build.with(&six(), Inches(0.0)).expect("a U")
}

/// ASHRAE Handbook—Fundamentals, the frame wall of the chapter on U-factors (2x4, 16 in on center): film 0.17, bevel
/// siding 0.81, R-4 sheathing, batt 13 or stud 4.38, gypsum 0.45, film 0.68; 75 to 25. U 0.063 (from memory).
#[test]
fn handbook_frame_wall() {
    let wall = filled(0.81 + 4.0, 13.0, 4.38, 0.45, 0.25);
    close(wall.foam_path_r.0, 19.11, 1e-9);
    close(wall.member_path_r.expect("studs").0, 10.49, 1e-9);
    close(wall.u, 0.063, 0.0005);
}

/// *Heat and Mass Transfer*, the example "U-factor of a wood frame wall" (inputs read, answer from memory), in
/// m²·K/W: 0.03, bevel 0.14, fiberboard 0.23, glass fiber 2.45 or stud 0.63, gypsum 0.079, 0.12; 75 to 25; 50 by
/// 2.5 m, a fifth of it glazed, 24 K: U 0.449, R 2.23, 1078 W. One RSI is R-5.678263 (NIST SP 811).
#[test]
fn textbook_wood_frame_wall() {
    const RSI: f64 = 5.678_263_341;
    let mut build = wall(
        &[(Outside, (0.14 + 0.23) * RSI), (Cavity, 2.45 * RSI), (Inside, 0.079 * RSI)],
        0.25,
        0.63 * RSI / SOFTWOOD_R_IN,
    );
    (build.outside_film, build.inside_film) = (RValue(0.03 * RSI), RValue(0.12 * RSI));
    let wall = build.with(&six(), Inches(0.0)).expect("a U");
    let u = wall.u * RSI;
    close(u, 0.449, 0.001);
    close(wall.effective_r.0 / RSI, 2.23, 0.01);
    close(u * 50.0 * 2.5 * 0.8 * 24.0, 1078.0, 2.0);
}

/// A state energy office's table wall (totals and answer read): siding 0.80, ½ in plywood sheathing 0.63, batt 11
/// or stud 4.38, drywall 0.45, films; 85 to 15: paths 7.11 and 13.73, R-12.05.
#[test]
fn energy_office_wall() {
    let wall = filled(0.80 + 0.63, 11.0, 4.38, 0.45, 0.15);
    close(wall.member_path_r.expect("studs").0, 7.11, 0.01);
    close(wall.foam_path_r.0, 13.73, 0.01);
    close(wall.effective_r.0, 12.05, 0.01);
}

/// The energy code's U-factors beside its R-values (IECC 2021 tables R402.1.2 and R402.1.3, read; the layers are those
/// of published example walls): siding 0.62, OSB 0.62, gypsum 0.45, films, studs at an inch, 25 %.
#[test]
fn code_u_factors() {
    let u = |cavity, stud_in: f64, continuous| {
        filled(0.62 + 0.62 + continuous, cavity, stud_in * SOFTWOOD_R_IN, 0.45, 0.25).u
    };
    close(u(13.0, 3.5, 0.0), 0.084, 0.0005);
    close(u(20.0, 5.5, 0.0), 0.060, 0.0005);
    close(u(20.0, 5.5, 5.0), 0.045, 0.0005);
    close(u(13.0, 3.5, 10.0), 0.044, 0.0005);
    // R-30 of foam fills a 2x6: it meets the row of R-30 and is far from that row's U-factor, 0.045.
    let full = wall(&[(Outside, 1.24), (Inside, 0.45)], 0.25, 5.5);
    close(super::u(&full, &foam(&[(5.5, 30.0)]), 5.5), 0.0496, 0.00005);
}

/// A trade journal's wall (read): opaque R-18 over 85 %, windows of U 0.30 over 15 %, "R-11" on the whole. The
/// windows are a path of their own: as a bay at R 1 ÷ 0.30, so that the sum of areas × U is what is checked.
#[test]
fn wall_with_windows() {
    let mut build = wall(&[(Cavity, 18.0)], 0.15, 1.0 / 0.30 / SOFTWOOD_R_IN);
    (build.outside_film, build.inside_film) = (RValue(0.0), RValue(0.0));
    close(build.with(&six(), Inches(0.0)).expect("a U").effective_r.0, 10.84, 0.01);
}

fn kept(name: &str) -> Vec<Value> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/published").join(name);
    let kept: Value = serde_json::from_str(&std::fs::read_to_string(path).expect("kept")).expect("json");
    kept["rows"].as_array().expect("rows").clone()
}

/// U by three methods: by parallel paths and by isothermal planes (ASHRAE Handbook—Fundamentals, worked apart from this
/// code), and by the heat flow in the plan of one bay, which neither of the two knows of. Seven closed walls, and two rims
/// whose joists stand free in the room.
#[test]
fn two_bounds_and_a_field_between_them() {
    let rows = kept("assembly.json");
    assert_eq!(rows.len(), 9);
    for row in rows {
        let of = |name: &str| row[name].as_f64().unwrap_or_else(|| panic!("{name}: {row}"));
        let mut build = wall(&[(Outside, of("outside_r"))], of("framing_share"), of("member_in"));
        build.layers.extend(row["inside_r"].as_f64().map(|r| at(Inside, r)));
        let foam = foam(&[(of("fill_in"), of("fill_r"))]);
        let given = build.with(&foam, Inches(of("fill_in"))).expect("a U");
        close(given.u, of("parallel"), 1e-6);
        close(given.u_isothermal, of("isothermal"), 1e-6);
        // Between the two, and within 3 % of the parallel paths: those are what wood is judged by.
        let field = of("finite_volumes");
        assert!(given.u < field && field < given.u_isothermal, "{row}");
        assert!(field / given.u < 1.03, "{row}");
    }
}

/// Two walls in a building-simulation engine, which works in SI by conduction transfer functions until nothing changes: the
/// flux through bay and stud, what the whole lets through, and the temperature of both faces.
#[test]
fn whole_walls_in_a_simulation_engine() {
    let rows = kept("whole_wall.json");
    assert_eq!(rows.len(), 2);
    for row in rows {
        let of = |name: &str| row[name].as_f64().unwrap_or_else(|| panic!("{name}: {row}"));
        let list = |name: &str| -> Vec<(f64, f64)> {
            let all = row[name].as_array().expect("layers").iter();
            all.map(|one| (one[1].as_f64().expect("inches"), one[2].as_f64().expect("R"))).collect()
        };
        let mut build = wall(&[], of("framing_share"), of("stud_in"));
        let (outside, bay, inside) = (list("outside"), list("bay"), list("inside"));
        build.layers.extend(outside.iter().map(|(_, r)| at(Outside, *r)));
        build.layers.extend(bay.iter().skip(1).map(|(_, r)| at(Cavity, *r)));
        build.layers.extend(inside.iter().map(|(_, r)| at(Inside, *r)));
        let (depth, r) = bay[0];
        let given = build.with(&foam(&[(depth, r)]), Inches(depth)).expect("a U");
        let stud_path = given.member_path_r.expect("studs");
        let between = of("room_f") - of("outdoors_f");
        close(between, 70.0, 1e-9);
        for (path, name) in [(given.foam_path_r, "bay"), (stud_path, "stud")] {
            close(between / path.0, of(&format!("{name}_btu_h_ft2")), 2e-5);
            let (cold, warm) = (given.outside_film_r.0 / path.0, given.inside_film_r.0 / path.0);
            close(of("outdoors_f") + cold * between, of(&format!("{name}_outside_f")), 2e-4);
            close(of("room_f") - warm * between, of(&format!("{name}_inside_f")), 2e-4);
        }
        let share = of("framing_share");
        let whole = (1.0 - share) * of("bay_btu_h_ft2") + share * of("stud_btu_h_ft2");
        close(given.u, whole / between, 1e-6);
    }
}

/// A rim with open bays (worked by hand): films 0.85, siding 0.62, a band of 1½ in 1.875, R-6.0 an inch,
/// joist ends 9.4 % as deep as the foam. At 3 in: 0.906 ÷ 21.345 + 0.094 ÷ 7.095 = 0.0557; at 2¾ in: 0.906 ÷
/// 19.845 + 0.094 ÷ 6.7825 = 0.0595.
#[test]
fn rim_with_open_bays() {
    let rim = wall(&[(Outside, 0.62 + 1.875)], 0.094, 9.25);
    close(u(&rim, &six(), 3.0), 0.0557, 0.00005);
    close(u(&rim, &six(), 2.75), 0.0595, 0.00005);
    let enough = rim.depth_for_u(&six(), 0.060).expect("within the sheet");
    assert!(enough.0 > 2.71 && enough.0 < 2.75, "{enough:?}");
    close(u(&rim, &six(), enough.0), 0.060, 1e-10);
    // Closed with board the joist counts as deep as it is.
    let closed = wall(&[(Outside, 0.62 + 1.875), (Inside, 0.0)], 0.094, 9.25);
    close(
        closed.with(&six(), Inches(3.0)).expect("a U").member_path_r.expect("joists").0,
        3.345 + 11.5625,
        1e-9,
    );
    assert!(u(&closed, &six(), 3.0) < u(&rim, &six(), 3.0));
}

/// Under a floor the bays open to the crawlspace: its boards are what the foam is sprayed on and close nothing.
#[test]
fn floor_with_open_bays() {
    let floor = Build { from_outside: true, ..wall(&[(Inside, 0.94)], 0.10, 9.25) };
    let member_in = |build: &Build| build.with(&six(), Inches(3.0)).expect("a U").member_in;
    assert_eq!(member_in(&floor), Some(Inches(3.0)));
    let mut closed = floor.clone();
    closed.layers.push(at(Outside, 0.62));
    assert_eq!(member_in(&closed), Some(Inches(9.25)));
    let mut filled = floor;
    filled.layers.push(at(Cavity, 19.0));
    assert_eq!(member_in(&filled), Some(Inches(9.25)));
}

/// A forum's roof with 7 in of foam at in 2x8 rafters and a local code that asks for an effective, its arithmetic
/// checked by hand: rafters of 7¼ in at an inch, no layers, no films, 30.8, 28.9 and 28.5 at 9.4, 10,
/// 12.5 and 13 % framing. It passes up to 13 %.
#[test]
fn roof_by_its_effective_r() {
    let roof = |share| {
        let bare = wall(&[(Inside, 0.0)], share, 7.25);
        Build { outside_film: RValue(0.0), inside_film: RValue(0.0), ..bare }
    };
    for (share, r) in [(0.094, 31.3), (0.10, 30.8), (0.125, 28.9), (0.13, 28.5)] {
        close(roof(share).with(&six(), Inches(7.0)).expect("a U").effective_r.0, r, 0.05);
    }
    let needed = |share| roof(share).depth_for_u(&six(), 1.0 / 28.5);
    assert!(needed(0.13).is_some_and(|depth| depth.0 <= 7.0));
    assert!(needed(0.14).is_some_and(|depth| depth.0 > 7.0));
}

/// Foam beyond the members' depth covers their edges where that was said, and lies in both paths then.
#[test]
fn foam_over_the_edges() {
    let mut wall = wall(&[(Outside, 1.24)], 0.25, 3.5);
    let bare = wall.with(&six(), Inches(4.5)).expect("a U");
    close(bare.foam_path_r.0, 0.85 + 1.24 + 27.0, 1e-9);
    close(bare.member_path_r.expect("studs").0, 0.85 + 1.24 + 4.375, 1e-9);
    wall.over_edges = true;
    let covered = wall.with(&six(), Inches(4.5)).expect("a U");
    assert_eq!(covered.foam_path_r, bare.foam_path_r);
    close(covered.foam_over_r.0, 6.0, 1e-9);
    close(covered.member_path_r.expect("studs").0, 0.85 + 1.24 + 4.375 + 6.0, 1e-9);
    // 1 ÷ (0.85 + 1.24 + 6 + 1 ÷ (0.75 ÷ 21 + 0.25 ÷ 4.375))
    close(covered.u_isothermal, 1.0 / (8.09 + 1.0 / (0.75 / 21.0 + 0.25 / 4.375)), 1e-12);
}

/// Unbroken foam lies in both paths; batts between the studs in front of it in one.
#[test]
fn foam_across_the_members() {
    let mut wall = wall(&[(Outside, 1.24), (Cavity, 13.0), (Inside, 0.45)], 0.25, 3.5);
    wall.across = true;
    let given = wall.with(&six(), Inches(1.0)).expect("a U");
    close(given.foam_path_r.0, 0.85 + 1.69 + 6.0 + 13.0, 1e-9);
    close(given.member_path_r.expect("studs").0, 0.85 + 1.69 + 6.0 + 4.375, 1e-9);
    let plain = Build { framing_share: Some(0.0), ..super::wall(&[(Outside, 1.24)], 0.0, 0.0) };
    let plain = Build { across: true, ..plain }.with(&six(), Inches(2.0)).expect("a U");
    assert_eq!(plain.member_path_r, None);
    close(plain.u, 1.0 / (0.85 + 1.24 + 12.0), 1e-12);
    assert_eq!(plain.u, plain.u_isothermal);
}

#[test]
fn no_u_without_what_it_hangs_on() {
    let known = wall(&[(Outside, 1.24)], 0.25, 3.5);
    assert!(known.with(&six(), Inches(2.0)).is_some());
    for lacks in [Build { steel: true, ..known.clone() }, Build { framing_share: None, ..known.clone() }] {
        assert_eq!(lacks.with(&six(), Inches(2.0)), None);
        assert_eq!(lacks.depth_for_u(&six(), 0.08), None);
    }
    assert_eq!(known.with(&foam(&[]), Inches(2.0)), None);
    assert_eq!(known.with(&six(), Inches(f64::NAN)), None);
    assert_eq!(known.depth_for_u(&foam(&[]), 0.08), None);
    for most in [f64::NAN, 0.0, -1.0, 0.01] {
        assert_eq!(known.depth_for_u(&six(), most), None, "{most}");
    }
    // Met without foam.
    assert_eq!(known.depth_for_u(&six(), 1.0), Some(Inches(0.0)));
}

/// Beyond the thickest listed nothing is promised, though planning R goes on.
#[test]
fn no_depth_beyond_the_sheet() {
    let wall = wall(&[(Outside, 1.24)], 0.0, 0.0);
    let most = u(&wall, &six(), 8.0);
    close(wall.depth_for_u(&six(), most).expect("the thickest listed").0, 8.0, 1e-9);
    assert_eq!(wall.depth_for_u(&six(), most - 1e-9), None);
}

fn any_wall() -> impl Strategy<Value = Build> {
    let r = || proptest::collection::vec(0.0..8.0, 0..3);
    let member = proptest::option::of(0.5..12.0);
    (r(), r(), r(), 0.0..0.6, member, proptest::bool::ANY, proptest::bool::ANY, proptest::bool::ANY).prop_map(
        |(outside, cavity, inside, share, member, across, over_edges, from_outside)| {
            let all = [(Outside, outside), (Cavity, cavity), (Inside, inside)];
            let layers = all.iter().flat_map(|(position, r)| r.iter().map(|r| at(*position, *r))).collect();
            let member_in = member.map(Inches);
            Build { layers, member_in, across, over_edges, from_outside, ..wall(&[], share, 0.0) }
        },
    )
}

/// A sheet whose R never falls with thickness.
fn any_foam() -> impl Strategy<Value = Foam> {
    proptest::collection::vec((0.25..2.0, 0.0..12.0), 1..6).prop_map(|steps| {
        let mut rows = Vec::new();
        let (mut thickness, mut r) = (0.0_f64, 0.0_f64);
        for (inches, more) in steps {
            let (inches, more): (f64, f64) = (inches, more);
            thickness += (inches * 100.0).round() / 100.0;
            r += 0.1 + (more * 10.0).round() / 10.0;
            rows.push((thickness, r));
        }
        foam(&rows)
    })
}

proptest! {
    #[test]
    fn thicker_foam_never_raises_u(build in any_wall(), foam in any_foam(), thin in 0.0..12.0, more in 0.0..4.0) {
        prop_assert!(u(&build, &foam, thin + more) <= u(&build, &foam, thin) + 1e-12);
    }

    #[test]
    fn isothermal_planes_bound_it_from_above(build in any_wall(), foam in any_foam(), depth in 0.0..12.0) {
        let given = build.with(&foam, Inches(depth)).expect("a U");
        prop_assert!(given.u_isothermal >= given.u - 1e-12);
        prop_assert!((given.effective_r.0 * given.u - 1.0).abs() < 1e-12);
    }

    #[test]
    fn without_members_it_is_the_foam_path(build in any_wall(), foam in any_foam(), depth in 0.0..12.0) {
        let given = Build { framing_share: Some(0.0), ..build }.with(&foam, Inches(depth)).expect("a U");
        prop_assert!((given.u * given.foam_path_r.0 - 1.0).abs() < 1e-12);
        prop_assert_eq!(given.member_path_r, None);
    }

    #[test]
    fn foam_over_the_edges_never_raises_u(build in any_wall(), foam in any_foam(), depth in 0.0..12.0) {
        let bare = u(&Build { over_edges: false, ..build.clone() }, &foam, depth);
        let covered = u(&Build { over_edges: true, ..build }, &foam, depth);
        prop_assert!(covered <= bare + 1e-12);
    }

    /// The depth that is found is enough, and a billionth of an inch less is not.
    #[test]
    fn the_least_depth_for_u(build in any_wall(), foam in any_foam(), depth in 0.1..8.0) {
        let most = u(&build, &foam, depth);
        let thickest = foam.thickest().expect("rows").thickness_in.0;
        match build.depth_for_u(&foam, most) {
            None => prop_assert!(depth > thickest, "{} of {}", depth, thickest),
            Some(found) => {
                prop_assert!(u(&build, &foam, found.0) <= most);
                prop_assert!(found.0 <= thickest.min(depth) + 1e-9);
                if found.0 > 1e-9 {
                    prop_assert!(u(&build, &foam, found.0 - 1e-9) > most - 1e-15);
                }
            }
        }
    }
}
