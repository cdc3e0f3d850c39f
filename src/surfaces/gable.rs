//! A gable: a triangle with its ridge over the middle, with or without the wall under it.

use super::cover::Top;
use super::{Asked, Extent, MemberRect, Rect, ShapeForm};
use crate::job::Shape;
use crate::measure::held_between;

pub(super) const FORM: ShapeForm = ShapeForm {
    shape: Shape::Gable,
    entries: &[
        Asked::needed("length"),
        Asked::may("rise"),
        Asked::needed("pitch").without("rise"),
        Asked::may("wall_height"),
        Asked::framing("spacing", false),
        Asked::framing("member", true),
        Asked::framing("framing_share", false),
        Asked::may("times"),
    ],
    openings: true,
    framing: true,
    places: true,
};

/// From the eaves to the ridge, in inches: typed, or half the base × pitch.
pub(super) fn rise(measure: &dyn Fn(&str) -> f64, way: &str) -> f64 {
    if way == "rise" { measure("rise") } else { measure("length") / 2.0 * measure("pitch") }
}

/// The slopes over the wall.
pub(super) fn top(measure: &dyn Fn(&str) -> f64, way: &str) -> Top {
    Top { eave: measure("wall_height"), rise: rise(measure, way), width: measure("length") }
}

/// Base × wall height + base × rise ÷ 2.
pub(super) fn extent(measure: &dyn Fn(&str) -> f64, way: &str) -> Extent {
    let (base, eave, rise) = (measure("length"), measure("wall_height"), rise(measure, way));
    Extent { width_in: base, height_in: eave + rise, gross_ft2: base * (eave + rise / 2.0) / 144.0 }
}

/// The members cut off at the highest point that the slopes have over each; what lies wholly above is left out.
/// The drawing and the areas cut the rest of them along the slope.
pub(super) fn cut(members: Vec<MemberRect>, top: Top) -> Vec<MemberRect> {
    let under = members.into_iter().filter_map(|one| {
        let rect = one.rect;
        let (left, right) = (rect.x_in, rect.right_in());
        let middle = held_between(top.width / 2.0, left, right);
        let high = rect.top_in().min(top.at(middle));
        let rect = Rect::between(left, rect.y_in, right, high);
        (rect.h_in > 0.0).then_some(MemberRect { rect, ..one })
    });
    under.collect()
}
