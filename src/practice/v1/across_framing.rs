//! A framed wall: heat takes the path through the foam and the path through the studs, and U, not R, is their mean.

use super::super::Topic;
use super::super::formula::{at, figure, number, share, step};
use super::super::made::{Ask, Making, R_OF_RSI, plain};
use super::{Scene, sheet};
use crate::assembly::{SOFTWOOD_R_IN, material};
use crate::job::Shape;
use crate::measure::Kind;

pub const SCENE: Scene = Scene { key: "across_framing", levels: &[3], topics: &[Topic::TrueR], make };

const FOAM_PATH: &str = "surfaces.0.depth.assembly.foam_path_r";
const STUD_PATH: &str = "surfaces.0.depth.assembly.member_path_r";
const WHOLE: &str = "surfaces.0.depth.assembly.effective_r";
const SHARE: &str = "surfaces.0.depth.assembly.framing_pct";
const FOAM: &str = "surfaces.0.depth.assembly.foam_r";
/// What both paths go through: film, siding, sheathing, gypsum board, film.
const BOTH: [&str; 5] = [
    "surfaces.0.depth.assembly.outside_film_r",
    "surfaces.0.depth.assembly.layers.0.r",
    "surfaces.0.depth.assembly.layers.1.r",
    "surfaces.0.depth.assembly.layers.2.r",
    "surfaces.0.depth.assembly.inside_film_r",
];
/// Within so many points of the right one a loss is right.
const WITHIN_POINTS: f64 = 1.5;
/// Films and gypsum board are about so much R, whatever the siding and sheathing.
const ABOUT_BOTH_R: f64 = 1.3;
const LISTED: [f64; 9] = [1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0];

fn make(m: &mut Making, _level: u8) {
    let (foam, rows) = sheet::drawn(m, &LISTED);
    let deep = m.draw.heads();
    let cavity = if deep { 5.5 } else { 3.5 };
    let mut depth = f64::from(if deep { m.draw.whole(6, 9) } else { m.draw.whole(4, 6) }) / 2.0;
    let siding = m.draw.one_of(&["hollow_siding", "bevel_siding"]).unwrap_or("hollow_siding");
    let sheathing = m.draw.one_of(&["osb_7_16", "plywood_1_2", "fiberboard_1_2"]).unwrap_or("osb_7_16");
    let framing = m.draw.whole(18, 26);
    // Deeper, where the framing's share would pass for the loss: the loss grows with the foam. By inches in either system
    // of units, so that both have one wall; in millimeters the loss is half a point off at most.
    let both = ABOUT_BOTH_R
        + [siding, sheathing]
            .map(|name| material(name).and_then(|one| one.r).unwrap_or_default())
            .iter()
            .sum::<f64>();
    let share_is_near = |depth: f64| {
        let foam = both + sheet::r_at(&rows, depth).unwrap_or_default();
        let stud = both + cavity * SOFTWOOD_R_IN;
        let share = f64::from(framing) / 100.0;
        let loss = 1.0 - 1.0 / ((1.0 - share) + share * foam / stud);
        (loss - share).abs() * 100.0 < WITHIN_POINTS + 0.6
    };
    while depth < cavity && share_is_near(depth) {
        depth += 0.5;
    }
    let (length, height) = (f64::from(m.draw.whole(10, 24)), 8.0);
    let entries = [
        ("length", m.tape(length * 12.0, false)),
        ("height", m.tape(height * 12.0, false)),
        ("depth", m.tape(depth, true)),
        ("cavity", m.tape(cavity, true)),
        ("component", "wall".to_owned()),
        ("framing", "wood".to_owned()),
        ("runs", "between".to_owned()),
        ("framing_share", framing.to_string()),
    ];
    m.surface(Shape::Rectangle, &entries);
    for (name, position) in [(siding, "outside"), (sheathing, "outside"), ("gypsum_1_2", "inside")] {
        let thickness = material(name).and_then(|one| one.thickness_in);
        let mut entries = vec![("made_of", name.to_owned()), ("position", position.to_owned())];
        entries.extend(thickness.map(|inches| ("thickness", format!("{} in", plain(inches, 4)))));
        m.layer(&entries);
    }
    let stud_r = sheet::taped(m, cavity) * SOFTWOOD_R_IN;
    m.says("depth", m.tape(depth, true));
    m.says("cavity", m.tape(cavity, true));
    m.gives("framing", f64::from(framing), Kind::Percent);
    let id = m.job.surfaces.first().map_or(0, |one| one.id);
    m.shows("layers", id, &[]);
    m.shows("foam", foam, &[]);

    let r = |path| at(path, Kind::Resistance);
    // Layer by layer, as they stand on the card.
    let [film, siding, sheathing, inside, inner_film] = BOTH;
    let layers = |between| r(siding) + r(sheathing) + between + r(inside);
    let path = |between| r(film) + layers(between) + r(inner_film);
    let stud = || figure(stud_r, Kind::Resistance);
    let resistance = |key| Ask::new(key, Topic::TrueR, Kind::Resistance).within(0.06, 0.5);
    m.ask(resistance("foam_path_r").at(FOAM_PATH).by(path(r(FOAM))).slip("films_forgotten", layers(r(FOAM))));
    m.ask(
        resistance("stud_path_r")
            .at(STUD_PATH)
            .by(path(stud()))
            .slip("films_forgotten", layers(stud()))
            .slip("foam_in_stud", path(stud() + r(FOAM))),
    );
    let percent = || at(SHARE, Kind::Percent);
    let rest = || number(1.0) - share(percent());
    let units = if m.metric() { R_OF_RSI } else { 1.0 };
    let (of_foam, of_stud) = (|| step("foam_path_r"), || step("stud_path_r"));
    m.ask(
        Ask::new("u_value", Topic::TrueR, Kind::Number)
            .within(0.0, 1.2)
            .by((rest() / of_foam() + share(percent()) / of_stud()).scaled(units))
            .slip("studs_forgotten", (number(1.0) / of_foam()).scaled(units))
            .slip("shares_swapped", (share(percent()) / of_foam() + rest() / of_stud()).scaled(units))
            .slip(
                "r_across_framing",
                (number(1.0) / (rest() * of_foam() + share(percent()) * of_stud())).scaled(units),
            ),
    );
    m.ask(
        Ask::new("whole_r", Topic::TrueR, Kind::Resistance)
            .within(0.0, 1.0)
            .at(WHOLE)
            .by((number(1.0) / step("u_value")).scaled(units))
            .slip("r_across_framing", rest() * of_foam() + share(percent()) * of_stud())
            .slip("studs_forgotten", of_foam()),
    );
    m.ask(
        Ask::new("framing_loss", Topic::TrueR, Kind::Percent)
            .within(WITHIN_POINTS, 0.0)
            .by((number(1.0) - step("whole_r") / of_foam()).scaled(100.0))
            .slip("framing_share_for_loss", percent())
            .slip("loss_of_whole", (of_foam() / step("whole_r") - number(1.0)).scaled(100.0)),
    );
}
