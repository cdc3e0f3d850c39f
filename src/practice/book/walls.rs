//! Framed planes with and without their members.

use super::super::Topic;
use super::super::formula::{Formula, area, at, figure, number, step};
use super::super::made::{Ask, Making, plain};
use super::{exact, exact_long, said, said_long};
use crate::job::Shape;
use crate::measure::Kind;

fn of(measure: &str) -> Formula {
    at(&format!("surfaces.0.area.measures.{measure}"), Kind::Length)
}

/// Areas, and board feet with the members left in and taken out.
fn ask_feet(m: &mut Making, gross: &dyn Fn() -> Formula, net: &'static str, in_place: &str) {
    let depth = || at("surfaces.0.depth.aim_in", Kind::Length);
    let feet = |of| Ask::new("board_feet", Topic::BoardFeet, Kind::FoamVolume).of(of);
    m.ask(feet("members_in").by(gross() * depth()));
    m.ask(feet("members_out").at(in_place).by(step(net) * depth()).slip("gross_for_net", gross() * depth()));
}

/// 123 ft of wall, 8 ft high, studs 1½ in wide in each 16 in, foamed 2 in deep.
pub fn textbook(m: &mut Making) {
    let (length, height, depth) = (("123'", 1_476.0), ("8'", 96.0), ("2 in", 2.0));
    let (stud, space) = (1.5, 16.0);
    let share = plain(stud / space * 100.0, 4);
    let entries = [
        ("length", exact_long(m, length.0, length.1)),
        ("height", exact_long(m, height.0, height.1)),
        ("framing_share", share),
        ("depth", exact(m, depth.0, depth.1)),
    ];
    m.surface(Shape::FramedWall, &entries);
    let id = m.job.surfaces.last_mut().map_or(0, |surface| {
        surface.deduct_framing = true;
        surface.id
    });
    m.says("length", said_long(m, length.0, length.1));
    m.says("height", said_long(m, height.0, height.1));
    for (key, (text, inches)) in
        [("depth", depth), ("member", ("1 1/2 in", stud)), ("spacing", ("16 in", space))]
    {
        m.says(key, said(m, text, inches));
    }
    m.shows("outline", id, &[]);
    m.ask(
        Ask::new("gross_area", Topic::Areas, Kind::Area)
            .at("surfaces.0.area.gross_ft2")
            .by(area(of("length"), of("height"))),
    );
    let bare = |member: f64| figure(member, Kind::Length) / figure(space, Kind::Length);
    m.ask(
        Ask::new("members_area", Topic::Framing, Kind::Area)
            .at("surfaces.0.area.framing_ft2")
            .by(step("gross_area") * bare(stud))
            .slip("nominal_lumber", step("gross_area") * bare(2.0)),
    );
    ask_rest(m);
}

/// Two slopes of 83½ by 18 ft under trusses 1½ in wide at 24 in, foamed 7 in deep.
pub fn trusses(m: &mut Making) {
    let (length, slope) = (("83' 6\"", 1_002.0), ("18'", 216.0));
    let (spacing, member, depth) = (("24 in", 24.0), ("1 1/2 in", 1.5), ("7 in", 7.0));
    let entries = [
        ("length", exact_long(m, length.0, length.1)),
        ("height", exact_long(m, slope.0, slope.1)),
        ("spacing", exact(m, spacing.0, spacing.1)),
        ("member", exact(m, member.0, member.1)),
        ("times", "2".to_owned()),
        ("depth", exact(m, depth.0, depth.1)),
    ];
    m.surface(Shape::FramedSlope, &entries);
    let id = m.job.surfaces.last_mut().map_or(0, |surface| {
        surface.deduct_framing = true;
        surface.id
    });
    m.says("length", said_long(m, length.0, length.1));
    m.says("slope", said_long(m, slope.0, slope.1));
    for (key, (text, inches)) in [("spacing", spacing), ("member", member), ("depth", depth)] {
        m.says(key, said(m, text, inches));
    }
    m.shows("outline", id, &[]);
    m.ask(
        Ask::new("gross_area", Topic::Areas, Kind::Area)
            .at("surfaces.0.area.gross_ft2")
            .by(number(2.0) * area(of("length"), of("height")))
            .slip("one_plane", area(of("length"), of("height"))),
    );
    let spaces = || (of("length") / of("spacing")).up();
    m.ask(
        Ask::new("truss_count", Topic::Framing, Kind::Count)
            .by(spaces() + number(1.0))
            .slip("last_stud_missing", spaces()),
    );
    let each = || area(of("member"), number(2.0) * of("height"));
    m.ask(
        Ask::new("members_area", Topic::Framing, Kind::Area)
            .at("surfaces.0.area.framing_ft2")
            .by(step("truss_count") * each())
            .slip(
                "nominal_lumber",
                step("truss_count") * area(figure(2.0, Kind::Length), number(2.0) * of("height")),
            )
            .slip("one_plane", step("truss_count") * area(of("member"), of("height"))),
    );
    ask_rest(m);
}

/// What the members leave, and its board feet.
fn ask_rest(m: &mut Making) {
    m.ask(
        Ask::new("net_area", Topic::Areas, Kind::Area)
            .at("surfaces.0.area.net_ft2")
            .by(step("gross_area") - step("members_area"))
            .slip("framing_forgotten", step("gross_area"))
            .slip("framing_twice", step("gross_area") - step("members_area") - step("members_area")),
    );
    ask_feet(m, &|| step("gross_area"), "net_area", "surfaces.0.in_place");
}
