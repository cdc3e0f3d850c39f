//! Framed planes with and without their members.

use super::super::Topic;
use super::super::formula::{Formula, area, at, figure, number, step};
use super::super::made::{Ask, Making, plain};
use super::{exact, exact_long};
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
    let length = exact_long(m, "123'", 1_476.0);
    let height = exact_long(m, "8'", 96.0);
    let depth = exact(m, "2 in", 2.0);
    let (stud, space) = (1.5, 16.0);
    let (member, spacing) = (exact(m, "1 1/2 in", stud), exact(m, "16 in", space));
    let share = plain(stud / space * 100.0, 4);
    let entries = [
        ("length", length.clone()),
        ("height", height.clone()),
        ("framing_share", share),
        ("depth", depth.clone()),
    ];
    m.surface(Shape::FramedWall, &entries);
    let id = m.job.surfaces.last_mut().map_or(0, |surface| {
        surface.deduct_framing = true;
        surface.id
    });
    for (key, text) in
        [("length", length), ("height", height), ("depth", depth), ("member", member), ("spacing", spacing)]
    {
        m.says(key, text);
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
    let length = exact_long(m, "83' 6\"", 1_002.0);
    let slope = exact_long(m, "18'", 216.0);
    let (spacing, member) = (exact(m, "24 in", 24.0), exact(m, "1 1/2 in", 1.5));
    let depth = exact(m, "7 in", 7.0);
    let entries = [
        ("length", length.clone()),
        ("height", slope.clone()),
        ("spacing", spacing.clone()),
        ("member", member.clone()),
        ("times", "2".to_owned()),
        ("depth", depth.clone()),
    ];
    m.surface(Shape::FramedSlope, &entries);
    let id = m.job.surfaces.last_mut().map_or(0, |surface| {
        surface.deduct_framing = true;
        surface.id
    });
    for (key, text) in
        [("length", length), ("slope", slope), ("spacing", spacing), ("member", member), ("depth", depth)]
    {
        m.says(key, text);
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
