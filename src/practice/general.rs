//! The mistakes that may happen at any step: with the units of its kind, with whole things, with the decimal point.

use super::formula::Figures;
use super::{Formula, StepForm};
use crate::measure::{Kind, Unit, Units, in_unit};

/// Liters in a board foot: 144 in³ at 2.54 cm to the inch.
const LITERS: f64 = 2.359_737_216;

/// The slips that need no scene: they follow from what the step measures.
pub(super) fn general(
    step: &StepForm,
    formula: Option<&Formula>,
    right: f64,
    from: &dyn Figures,
    units: Units,
) -> Vec<(&'static str, f64)> {
    if !step.choices.is_empty() {
        return Vec::new();
    }
    let mut slips = Vec::new();
    if let Some(Formula::Up(of)) = formula
        && let Some(exact) = of.value(from)
    {
        slips.push(("rounded_down", libm::floor(exact)));
        slips.push(("not_whole", exact));
    }
    match step.kind {
        // A bare number in the other unit of a tape: inches in a box in feet, feet in one in inches.
        Kind::Length if step.unit == Unit::Ft => {
            let feet = libm::floor(right / 12.0 + 1e-9);
            let inches = right - 12.0 * feet;
            // 4′-6″ is written 4.6, and 4′-11″ is written 4.11. With less than an inch there is nothing to write
            // there, and the whole feet are another mistake.
            if inches > 1.0 - 1e-6 {
                let places = if inches < 10.0 { 10.0 } else { 100.0 };
                slips.push(("tenths_for_inches", 12.0 * (feet + inches / places)));
            }
            slips.push(("inches_for_feet", right * 12.0));
        }
        Kind::Length if step.unit == Unit::In => slips.push(("feet_for_inches", right / 12.0)),
        Kind::Area if units == Units::Us => {
            slips.extend([("twelve_for_144", right * 12.0), ("twelve_for_144", right / 12.0)]);
        }
        Kind::FoamVolume => {
            let area = formula.and_then(|formula| formula.area_by_depth(from));
            slips.extend(area.and_then(|area| area.value(from)).into_iter().flat_map(|ft2| match units {
                Units::Us => by_hand_us(ft2, right),
                Units::Metric => by_hand_metric(ft2, right),
            }));
        }
        // The degrees of the other scale, written down as if they were those of this one.
        Kind::Temperature => slips.push((
            "celsius_for_fahrenheit",
            match units {
                Units::Us => (right - 32.0) / 1.8,
                Units::Metric => right * 1.8 + 32.0,
            },
        )),
        _ => {}
    }
    if step.kind != Kind::Clock && step.kind != Kind::Date {
        // In the unit in which it is written: degrees of either scale begin elsewhere.
        let zero = if step.unit == Unit::C && step.kind == Kind::Temperature { 32.0 } else { 0.0 };
        let moved = |by: f64| ("decimal_moved", (right - zero) * by + zero);
        slips.push(moved(10.0));
        // Nobody counts a tenth of what is counted.
        slips.extend((step.kind != Kind::Count).then(|| moved(0.1)));
    }
    slips
}

/// What goes wrong where square feet are multiplied by inches.
fn by_hand_us(ft2: f64, right: f64) -> Vec<(&'static str, f64)> {
    vec![("depth_forgotten", ft2), ("cubic_feet", right / 12.0), ("one_44_for_12", right * 12.0)]
}

/// What goes wrong where square meters are multiplied by millimeters and divided by the liters of a board foot.
fn by_hand_metric(ft2: f64, right: f64) -> Vec<(&'static str, f64)> {
    let m2 = in_unit(ft2, Unit::M2);
    vec![("liters_for_board_feet", right * LITERS), ("depth_forgotten", m2), ("depth_forgotten", m2 / LITERS)]
}
