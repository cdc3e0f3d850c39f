//! From the foam in place to what is sprayed: over-depth and other waste, both shares of the foam in place.

use super::super::Topic;
use super::super::formula::{Formula, at, number, share, step};
use super::super::made::{Ask, Making, plain};
use super::Scene;
use crate::job::Shape;
use crate::measure::Kind;

pub const SCENE: Scene =
    Scene { key: "allowances", levels: &[2], topics: &[Topic::BoardFeet, Topic::Allowances], make };

/// An allowance of a few board feet is met by whoever writes it to a tenth.
const WRITTEN: f64 = 0.06;

fn over() -> Formula {
    at("quantity.allowances.over_depth_pct", Kind::Percent)
}

fn waste() -> Formula {
    at("quantity.allowances.other_waste_pct", Kind::Percent)
}

fn make(m: &mut Making, _level: u8) {
    let ft2 = f64::from(m.draw.whole(110, 300));
    let halves = m.draw.whole(3, 8);
    // Together 8 % at least: dividing by what is left of the whole is then seen at once.
    let over_pct = f64::from(m.draw.whole(6, 10));
    let waste_pct = f64::from(m.draw.whole(2, 5));
    let (area, depth) = (m.area(ft2), m.tape(f64::from(halves) / 2.0, true));
    m.surface(Shape::TypedArea, &[("area", area.clone()), ("depth", depth.clone())]);
    m.of_job("over_depth", plain(over_pct, 0));
    m.of_job("other_waste", plain(waste_pct, 0));
    m.says("area", area);
    m.says("depth", depth);
    m.gives("over_depth", over_pct, Kind::Percent);
    m.gives("other_waste", waste_pct, Kind::Percent);

    let (net, aim) = (at("surfaces.0.area.net_ft2", Kind::Area), at("surfaces.0.depth.aim_in", Kind::Length));
    m.ask(
        Ask::new("board_feet", Topic::BoardFeet, Kind::FoamVolume)
            .at("quantity.in_place")
            .by(net.clone() * aim),
    );
    m.ask(
        Ask::new("over_depth_feet", Topic::Allowances, Kind::FoamVolume)
            .at("quantity.over_depth")
            .within(WRITTEN, 0.5)
            .by(share(over()) * step("board_feet"))
            .slip(
                "allowance_divided",
                step("board_feet") / (number(1.0) - share(over())) - step("board_feet"),
            ),
    );
    let on_both = share(waste()) * (step("board_feet") + step("over_depth_feet"));
    m.ask(
        Ask::new("waste_feet", Topic::Allowances, Kind::FoamVolume)
            .at("quantity.other_waste")
            .within(WRITTEN, 0.5)
            .by(share(waste()) * step("board_feet"))
            .slip("allowance_on_allowance", on_both),
    );
    m.ask(
        Ask::new("to_spray", Topic::Allowances, Kind::FoamVolume)
            .at("quantity.to_spray")
            .by(step("board_feet") + step("over_depth_feet") + step("waste_feet"))
            .slip("allowance_forgotten", step("board_feet"))
            .slip("allowance_forgotten", step("board_feet") + step("over_depth_feet"))
            .slip("allowance_alone", step("over_depth_feet") + step("waste_feet"))
            .slip("allowance_divided", step("board_feet") / (number(1.0) - share(over() + waste()))),
    );
}
