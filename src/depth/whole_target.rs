//! The R that somebody wants of the whole, framing and films included, as a depth of foam.

use super::parts::of_another_kind;
use super::{Around, Bound, Mark, Rule, Stands};
use crate::findings::Trust;
use crate::measure::Inches;

/// The mark of an effective R that was entered; `None` where none was. It is met on the mean: U adds up over the area.
///
/// In words: the least mean depth at which 1 ÷ U of the whole is no less than the target, over old foam whose R is not
/// known.
pub(super) fn whole_target(around: &Around<'_>) -> Option<Mark> {
    let foam = around.foam.filter(|_| around.surface.shape.claims_r())?;
    let build = around.build?;
    let target = build.whole_r.filter(|r| r.0 > 0.0)?;
    let old = of_another_kind(around.existing).map_or(0.0, |there| there.depth_in.likely.0);
    let at = build.depth_for_u(foam, 1.0 / target.0).map(|depth| Inches(depth.0 + old));
    let stands = match (at, build.with(foam, Inches(0.0))) {
        (Some(_), _) => Stands::Applies,
        (None, Some(_)) => Stands::BeyondSheet,
        (None, None) => Stands::NotSaid,
    };
    Some(Mark {
        asks: Some(target.0),
        stands,
        ..Mark::new(Rule::WholeTarget, Bound::Mean, at, Trust::YourTarget)
    })
}

#[cfg(test)]
mod tests {
    use super::super::{Depth, Rule, Stands};
    use crate::job::{Job, Now};
    use serde_json::{Value, json};

    const NOW: Now = Now { ms: 1_792_012_200_000.0, offset_min: -300 };

    /// A roof with ½ in gypsum inside and foam at R-6.0 an inch, listed to 8 in.
    fn roof(entries: &[(&str, &str)], layers: bool) -> Depth {
        let fields = |all: &[(&str, &str)]| -> Vec<Value> {
            all.iter().map(|(field, text)| json!({"field": field, "text": text})).collect()
        };
        let mut own =
            vec![("area", "70"), ("depth", "7 in"), ("cavity", "7 1/4 in"), ("component", "roof_deck")];
        own.extend(entries);
        let layer =
            json!({"id": 20, "entries": fields(&[("made_of", "gypsum_1_2"), ("position", "inside")])});
        let rows = [("1", "6"), ("8", "48")].map(|(thickness, r)| {
            let id = if r == "6" { 11 } else { 12 };
            json!({"id": id, "entries": fields(&[("thickness", thickness), ("r", r)])})
        });
        let job: Job = serde_json::from_value(json!({
            "format": "foamwright-job", "version": 4, "id": "test", "next_id": 100, "foam": 10, "entries": [],
            "surfaces": [{
                "id": 1, "shape": "typed_area", "entries": fields(&own), "layers": if layers { vec![layer] } else { vec![] }
            }],
            "foams": [{"id": 10, "entries": [], "r_at": rows}],
        }))
        .expect("a job");
        let estimate = crate::estimate(&job, NOW);
        estimate.surfaces.first().and_then(|one| one.depth.clone()).expect("depths")
    }

    fn mark(depth: &Depth) -> Option<(Stands, Option<f64>)> {
        let mark = depth.marks.iter().find(|mark| mark.rule == Rule::WholeTarget)?;
        Some((mark.stands, mark.at_in.map(|at| at.0)))
    }

    /// By hand: films 0.17 and 0.61, gypsum 0.45, rafters of 7¼ in: rafter path 10.2925. R-28.5 at 13 %: U 0.035088 less
    /// 0.13 ÷ 10.2925 leaves 0.022457 for 87 % of foam: 38.741 less 1.23 is R-37.511, 6.252 in.
    #[test]
    fn effective_r() {
        let depth = roof(&[("framing_share", "13"), ("whole_r", "R-28.5")], true);
        let (stands, at) = mark(&depth).expect("a mark");
        assert_eq!(stands, Stands::Applies);
        assert!(at.is_some_and(|at| (at - 6.2518).abs() < 5e-4), "{at:?}");
        assert!(depth.assembly.is_some_and(|whole| whole.effective_r.0 > 28.5));
    }

    /// Blank: no mark. No share: not known. More than the sheet lists: beyond it. Over an inch of unknown foam: an inch more.
    #[test]
    fn where_it_names_no_depth() {
        let of = |entries: &[(&str, &str)]| mark(&roof(entries, true));
        assert_eq!(of(&[("framing_share", "13")]), None);
        assert_eq!(of(&[("framing_share", "13"), ("whole_r", "0")]), None);
        assert_eq!(of(&[("whole_r", "28.5")]), Some((Stands::NotSaid, None)));
        assert_eq!(of(&[("framing_share", "13"), ("whole_r", "60")]), Some((Stands::BeyondSheet, None)));
        assert_eq!(mark(&roof(&[("framing_share", "13"), ("whole_r", "28.5")], false)), None);
        let old =
            [("framing_share", "13"), ("whole_r", "28.5"), ("existing", "1 in"), ("existing_same", "no")];
        let over = of(&old).and_then(|(_, at)| at);
        assert!(over.is_some_and(|at| (at - 7.2518).abs() < 5e-4), "{over:?}");
    }
}
