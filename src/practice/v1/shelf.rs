//! Two kit sizes on a shelf: what each really gives, how many of one alone are enough, and the cheapest way.

use super::super::Topic;
use super::super::formula::{Formula, at, step};
use super::super::made::{Ask, Making, plain};
use super::Scene;
use super::trade::usable;
use crate::job::Shape;
use crate::measure::Kind;

pub const SCENE: Scene = Scene { key: "shelf", levels: &[2], topics: &[Topic::Kits, Topic::Price], make };

/// A cent.
pub const CENT: f64 = 1.0;

/// A size of the invented range: its label, and dollars for it.
type Size = (i32, (i32, i32));
const SMALL: Size = (40, (84, 99));
const MEDIUM: Size = (160, (262, 318));
const LARGE: Size = (480, (690, 790));

/// Two sizes and how many board feet are to be sprayed: several kits of the smaller one alone, two to four of the
/// larger one.
const SHELVES: [(Size, Size, (i32, i32)); 2] = [(SMALL, MEDIUM, (140, 430)), (MEDIUM, LARGE, (420, 1_180))];

/// The yield factor and the loss of each kit: drawn, written as entries of the job, said in the question. What stays in
/// the hoses is 5 bd ft at least, and at least 15 % is lost besides: taking the one off before the other is then
/// told from the right order.
pub fn yields(m: &mut Making) {
    let factor = f64::from(m.draw.whole(78, 85));
    let loss = f64::from(m.draw.whole(5, 8));
    m.of_job("yield_factor", plain(factor, 0));
    m.of_job("fixed_loss", plain(loss, 0));
    m.gives("yield_factor", factor, Kind::Percent);
    m.gives("fixed_loss", loss, Kind::FoamVolume);
}

/// The price of one kit of a size.
pub fn price(size: usize) -> Formula {
    at(&format!("purchase.sizes.{size}.price"), Kind::Money)
}

fn make(m: &mut Making, _level: u8) {
    let (small, large, need) = m.draw.one_of(&SHELVES).unwrap_or((SMALL, MEDIUM, (140, 430)));
    let need = f64::from(m.draw.whole(need.0, need.1));
    yields(m);
    for (label, (least, most)) in [small, large] {
        let dollars = m.draw.whole(least, most);
        m.kit(label, dollars);
    }
    // So many square feet an inch deep are so many board feet.
    let area = format!("{} ft²", plain(need, 0));
    m.surface(Shape::TypedArea, &[("area", area), ("depth", "1 in".to_owned())]);
    m.gives("to_spray", need, Kind::FoamVolume);
    m.shows("kits", 0, &[]);

    let need = || at("quantity.to_spray", Kind::FoamVolume);
    m.ask(usable(0, "small_kit"));
    m.ask(usable(1, "large_kit"));
    let sizes = [
        ("small_kit", "usable/small_kit", "kits/small_kit"),
        ("large_kit", "usable/large_kit", "kits/large_kit"),
    ];
    for (at, (thing, gives, _)) in sizes.into_iter().enumerate() {
        m.ask(
            Ask::new("kits", Topic::Kits, Kind::Count)
                .of(thing)
                .at(format!("purchase.alone.{at}.kits"))
                .by((need() / step(gives)).up()),
        );
    }
    for (at, (thing, gives, kits)) in sizes.into_iter().enumerate() {
        m.ask(
            Ask::new("kits_cost", Topic::Price, Kind::Money)
                .of(thing)
                .within(CENT, 0.0)
                .at(format!("purchase.alone.{at}.cost"))
                .by(step(kits) * price(at))
                .slip("one_kit_only", price(at))
                .slip("not_whole", need() / step(gives) * price(at)),
        );
    }
    m.ask(
        Ask::new("least_cost", Topic::Kits, Kind::Money)
            .within(CENT, 0.0)
            .at("purchase.least_cost")
            .slip("one_size_only", step("kits_cost/small_kit").smaller(step("kits_cost/large_kit"))),
    );
}
