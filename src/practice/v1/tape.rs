//! Three lengths read off a tape, one of them held at another line than its end, and their sum: the run of a bead in
//! three stretches.

use super::super::Topic;
use super::super::formula::{Formula, figure, step};
use super::super::made::{Ask, Making, plain};
use super::Scene;
use crate::job::Shape;
use crate::measure::Kind;

pub const SCENE: Scene = Scene { key: "tape", levels: &[1], topics: &[Topic::Tape], make };

const OF: [&str; 3] = ["first", "second", "third"];
/// The steps of the readings, as the sum names them.
const READINGS: [&str; 3] = ["reading/first", "reading/second", "reading/third"];

/// Sixteenths past a whole inch that are drawn: none whose half or double lies within a sixteenth of it.
const SIXTEENTHS: [i32; 10] = [3, 4, 5, 6, 7, 10, 11, 12, 13, 14];

/// Where a mark lies on the tape.
struct Mark {
    /// As the tape gives it, in inches.
    at: f64,
    /// The whole inches of it.
    whole: f64,
    /// The sixteenths past them; 0 on a metric tape.
    sixteenths: i32,
}

fn mark(m: &mut Making) -> Mark {
    let whole = f64::from(m.draw.whole(38, 186));
    let sixteenths = m.draw.one_of(&SIXTEENTHS).unwrap_or_default();
    let at = whole + f64::from(sixteenths) / 16.0;
    match m.metric() {
        true => Mark { at: libm::round(at * 25.4) / 25.4, whole, sixteenths: 0 },
        false => Mark { at, whole, sixteenths },
    }
}

/// A length as it is written down: to the sixteenth, or to the millimeter.
fn text(m: &Making, inches: f64) -> String {
    if m.metric() {
        return format!("{} mm", plain(inches * 25.4, 0));
    }
    let (whole, sixteenths) = (libm::floor(inches), libm::round(inches * 16.0) % 16.0);
    if sixteenths % 2.0 == 0.0 {
        m.tape(inches, true)
    } else {
        format!("{} {}/16 in", plain(whole, 0), plain(sixteenths, 0))
    }
}

fn make(m: &mut Making, _level: u8) {
    let marks = [mark(m), mark(m), mark(m)];
    // The last is held at the 1 in line, or at 10 cm: the hook is bent, or there is nothing to hook on.
    let held = if m.metric() { 100.0 / 25.4 } else { 1.0 };
    // Inches as the tape gives them, or decimal feet to two places.
    let in_inches = m.draw.heads();
    let within = if in_inches { 1.0 / 32.0 } else { 1.0 / 16.0 };
    let off = if m.metric() { 1000.0 / 25.4 } else { 12.0 };
    let length = |inches| figure(inches, Kind::Length);

    m.says("held", text(m, held));
    for (number, mark) in marks.iter().enumerate() {
        let hooked = number == 2;
        let right = if hooked { mark.at - held } else { mark.at };
        let entries = [("length", text(m, right))];
        m.surface(Shape::Strip, &entries);
        match hooked {
            true => m.shows("tape", 0, &[mark.at, held]),
            false => m.shows("tape", 0, &[mark.at]),
        }
        let mut ask = Ask::new("reading", Topic::Tape, Kind::Length)
            .of(OF.get(number).copied().unwrap_or_default())
            .at(format!("surfaces.{number}.area.measures.length"))
            .within(within, 0.0);
        if in_inches {
            ask = ask.short();
        }
        let less = |read: Formula| if hooked { read - length(held) } else { read };
        if hooked {
            ask = ask.by(less(length(mark.at))).slip("hook_inch", length(mark.at));
        }
        // A tape in eighths taken for one in sixteenths, and the other way round.
        let part = f64::from(mark.sixteenths) / 16.0;
        if mark.sixteenths > 0 && mark.sixteenths % 2 == 0 {
            ask = ask.slip("fraction_halved", less(length(mark.whole + part / 2.0)));
        } else if (1..8).contains(&mark.sixteenths) {
            ask = ask.slip("fraction_halved", less(length(mark.whole + part * 2.0)));
        }
        if !m.metric() {
            // Whole inches behind the point of the feet: 6′-4 5/16″ as 6.4 ft, 6′-11″ as 6.11 ft.
            let (feet, inches) = (libm::floor(right / 12.0), libm::floor(right % 12.0));
            let tenths = inches / if inches < 10.0 { 10.0 } else { 100.0 };
            // 13′-0 3/16″ as 13 ft leaves the part of an inch out, and nothing was taken for tenths.
            if inches > 0.0 {
                ask = ask.slip("tenths_for_inches", length(12.0 * (feet + tenths)));
            }
        }
        ask = ask
            .slip("foot_off", less(length(mark.at)) + length(off))
            .slip("foot_off", less(length(mark.at)) - length(off));
        m.ask(ask);
    }
    let [first, second, third] = READINGS.map(step);
    let sum = first + second + third;
    m.ask(
        Ask::new("readings_sum", Topic::Tape, Kind::Length)
            .by(sum.clone())
            .within(0.125, 0.0)
            .slip("hook_inch", sum + length(held)),
    );
}
