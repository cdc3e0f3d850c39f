//! From a wall to what is to be paid: area, board feet, over-depth, kits, their cost, sales tax, delivery.

use super::super::Topic;
use super::super::formula::{area, at, number, share, step};
use super::super::made::{Ask, Making, plain};
use super::Scene;
use super::shelf::{CENT, price, yields};
use super::trade::usable;
use crate::job::Shape;
use crate::measure::Kind;

pub const SCENE: Scene = Scene {
    key: "bill",
    levels: &[3],
    topics: &[Topic::Areas, Topic::BoardFeet, Topic::Allowances, Topic::Kits, Topic::Price],
    make,
};

/// From so many board feet on the larger size is offered: two kits at least of either.
const LARGER_FROM: f64 = 520.0;

fn make(m: &mut Making, _level: u8) {
    // A wall of 16 to 32 ft by 7½ to 9½ ft.
    let length = f64::from(m.draw.whole(192, 384));
    let height = f64::from(m.draw.whole(180, 228)) / 2.0;
    let depth = f64::from(m.draw.whole(4, 8)) / 2.0;
    let over_pct = f64::from(m.draw.whole(8, 12));
    yields(m);
    let dollars = m.draw.whole(0, 60);
    // Quarters of a percent, 5 to 9½ %; whole dollars.
    let tax_pct = f64::from(m.draw.whole(20, 38)) / 4.0;
    let delivery = m.draw.whole(35, 95);
    let (label, dollars) = if length * height / 144.0 * depth < LARGER_FROM {
        (160, 262 + dollars)
    } else {
        (480, 690 + dollars)
    };

    let said = [
        ("length", m.tape(length, false)),
        ("height", m.tape(height, false)),
        ("depth", m.tape(depth, true)),
    ];
    let wall = m.surface(Shape::Rectangle, &said);
    for (key, text) in said {
        m.says(key, text);
    }
    m.of_job("over_depth", plain(over_pct, 0));
    m.of_job("sales_tax", plain(tax_pct, 2));
    m.of_job("delivery", format!("{delivery}"));
    m.gives("over_depth", over_pct, Kind::Percent);
    m.gives("sales_tax", tax_pct, Kind::Percent);
    m.gives("delivery", f64::from(delivery) * 100.0, Kind::Money);
    m.kit(label, dollars);
    let wall = m.job.surfaces.get(wall).map_or(0, |one| one.id);
    m.shows("outline", wall, &[]);
    m.shows("kits", 0, &[]);
    ask_foam(m);
    ask_pay(m);
}

/// The steps to what is sprayed.
fn ask_foam(m: &mut Making) {
    let side = |name: &str| at(&format!("surfaces.0.area.measures.{name}"), Kind::Length);
    let over = || share(at("quantity.allowances.over_depth_pct", Kind::Percent));
    m.ask(
        Ask::new("net_area", Topic::Areas, Kind::Area)
            .at("surfaces.0.area.net_ft2")
            .by(area(side("length"), side("height"))),
    );
    m.ask(Ask::new("board_feet", Topic::BoardFeet, Kind::FoamVolume).at("quantity.in_place").by(step(
        "net_area",
    ) * at(
        "surfaces.0.depth.aim_in",
        Kind::Length,
    )));
    m.ask(
        Ask::new("to_spray", Topic::Allowances, Kind::FoamVolume)
            .at("quantity.to_spray")
            .by(step("board_feet") + over() * step("board_feet"))
            .slip("allowance_forgotten", step("board_feet"))
            .slip("allowance_alone", over() * step("board_feet"))
            .slip("allowance_divided", step("board_feet") / (number(1.0) - over())),
    );
}

/// The steps to what is paid.
fn ask_pay(m: &mut Making) {
    let rate = || share(at("purchase.price.tax_pct", Kind::Percent));
    let delivery = || at("purchase.price.delivery", Kind::Money);
    m.ask(usable(0, ""));
    m.ask(
        Ask::new("kits", Topic::Kits, Kind::Count)
            .at("purchase.buy.kits")
            .by((step("to_spray") / step("usable")).up()),
    );
    m.ask(
        Ask::new("kits_cost", Topic::Price, Kind::Money)
            .within(CENT, 0.0)
            .at("purchase.price.kits")
            .by(step("kits") * price(0))
            .slip("one_kit_only", price(0))
            .slip("not_whole", step("to_spray") / step("usable") * price(0)),
    );
    m.ask(
        Ask::new("sales_tax", Topic::Price, Kind::Money)
            .within(CENT, 0.0)
            .at("purchase.price.tax")
            .by(rate() * step("kits_cost"))
            .slip("tax_on_delivery", rate() * (step("kits_cost") + delivery())),
    );
    m.ask(
        Ask::new("total", Topic::Price, Kind::Money)
            .within(CENT, 0.0)
            .at("purchase.price.total")
            .by(step("kits_cost") + step("sales_tax") + delivery())
            .slip("tax_forgotten", step("kits_cost") + delivery())
            .slip("delivery_forgotten", step("kits_cost") + step("sales_tax"))
            .slip("tax_on_delivery", (number(1.0) + rate()) * (step("kits_cost") + delivery())),
    );
}
