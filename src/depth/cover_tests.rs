//! What fire asks over foam, by the use of the room: which cover is enough, and what it costs.

use super::*;
use crate::findings::{Code, Trust};
use crate::job::Now;
use crate::measure::Cents;
use serde_json::{Value, json};

const NOW: Now = Now { ms: 1_792_012_200_000.0, offset_min: -300 };

/// 100 ft² at 2 in with these answers, in a job whose room is used so, and what is said of fire.
fn surface(room_use: &str, answers: &[(&str, &str)]) -> (Depth, Option<Cents>, Vec<Code>) {
    in_edition("", room_use, answers)
}

fn in_edition(edition: &str, room_use: &str, answers: &[(&str, &str)]) -> (Depth, Option<Cents>, Vec<Code>) {
    let entries = |all: &[(&str, &str)]| -> Vec<Value> {
        all.iter().map(|(field, text)| json!({"field": field, "text": text})).collect()
    };
    let mut own = vec![("area", "100"), ("depth", "2")];
    own.retain(|(field, _)| !answers.iter().any(|(other, _)| other == field));
    own.extend(answers);
    let own = entries(&own);
    let sheet = [("density", "1.85"), ("flame", "20"), ("smoke", "400"), ("tested_thickness", "4")];
    let job: Job = serde_json::from_value(json!({
        "format": "foamwright-job", "version": 4, "id": "test", "next_id": 100, "foam": 10,
        "entries": entries(&[("room_use", room_use), ("edition", edition)]),
        "surfaces": [{"id": 1, "shape": "typed_area", "entries": own}],
        "foams": [{"id": 10, "entries": entries(&sheet), "r_at": [
            {"id": 11, "entries": entries(&[("thickness", "1"), ("r", "6")])},
            {"id": 12, "entries": entries(&[("thickness", "4"), ("r", "24")])},
        ]}],
    }))
    .expect("a job");
    let estimate = crate::estimate(&job, NOW);
    let codes = estimate.findings.iter().map(|one| one.code).filter(|code| {
        matches!(
            code,
            Code::CoverAsked
                | Code::IgnitionAsked
                | Code::BareInWeather
                | Code::CoverNotEnough
                | Code::CoverByReport
                | Code::CoverSinceNewer
                | Code::CoverUnclear
                | Code::ExposedNotAvailable
        )
    });
    let codes = codes.collect();
    (estimate.surfaces[0].depth.clone().expect("depths"), estimate.cover_cost, codes)
}

fn stands(depth: &Depth, rule: Rule) -> Option<Stands> {
    depth.marks.iter().find(|mark| mark.rule == rule).map(|mark| mark.stands)
}

/// IRC 2018: a thermal barrier (R316.4) but where an attic or crawlspace is entered only for service (R316.5.3,
/// R316.5.4), or a rim is within its exception (R316.5.11). The surface's own room counts before the job's.
#[test]
fn what_is_asked() {
    for (room_use, answers, wanted) in [
        ("living", vec![], CoverAsked::Thermal),
        ("storage", vec![], CoverAsked::Thermal),
        ("service", vec![], CoverAsked::Ignition),
        ("weather", vec![], CoverAsked::Weather),
        ("", vec![], CoverAsked::NotSaid),
        ("service", vec![("room", "storage")], CoverAsked::Thermal),
        ("living", vec![("room", "service")], CoverAsked::Ignition),
        ("service", vec![("room", "garage")], CoverAsked::Thermal),
        ("living", vec![("spot", "rim")], CoverAsked::Nothing),
        ("", vec![("spot", "rim")], CoverAsked::Nothing),
        ("weather", vec![("spot", "rim")], CoverAsked::Weather),
    ] {
        let (depth, ..) = surface(room_use, &answers);
        assert_eq!(depth.cover.asked, wanted, "{room_use} {answers:?}");
    }
    // Past the rim's exception the room decides again.
    let thick = [("spot", "rim"), ("depth", "3.26")];
    assert_eq!(surface("living", &thick).0.cover.asked, CoverAsked::Thermal);
}

/// 23/32 in wood panel is a thermal barrier since 2015: by the book of 2009 it is not, by that of 2021 nothing is said.
#[test]
fn a_cover_of_newer_editions() {
    for (edition, enough, said) in [
        ("", true, vec![Code::CoverSinceNewer]),
        ("2009", false, vec![Code::CoverNotEnough]),
        ("2012_2018", true, vec![Code::CoverSinceNewer]),
        ("2021", true, vec![]),
    ] {
        let (depth, _, found) = in_edition(edition, "living", &[("cover", "wood_panel")]);
        assert_eq!((depth.cover.enough, found), (Some(enough), said), "{edition}");
    }
    let (.., found) = in_edition("2012_2018", "service", &[("cover", "fiber_cement")]);
    assert_eq!(found, [Code::CoverSinceNewer]);
}

/// Every cover of the table of fields in every room: R316.4 and the list of R316.5.3.
#[test]
fn which_cover_is_enough() {
    let yes = Some(true);
    let no = Some(false);
    let (read, retold) = (Some(Trust::Read), Some(Trust::Retold));
    for (cover, living, service, not_said, trust) in [
        ("gypsum", yes, yes, yes, read),
        ("wood_panel", yes, yes, yes, retold),
        ("tested_barrier", yes, yes, yes, retold),
        ("mineral_fiber", no, yes, None, retold),
        ("thin_panel", no, yes, None, retold),
        ("particleboard", no, yes, None, read),
        ("hardboard", no, yes, None, read),
        ("thin_gypsum", no, yes, None, read),
        ("steel_sheet", no, yes, None, read),
        ("fiber_cement", no, yes, None, read),
        ("tested_coating", None, None, None, None),
        ("none", no, no, None, None),
    ] {
        for (room, wanted) in [
            ("living", living),
            ("storage", living),
            ("garage", living),
            ("service", service),
            ("", not_said),
            ("weather", None),
        ] {
            let answers = [("room", room), ("cover", cover)];
            let answers: Vec<_> = answers.into_iter().filter(|(_, text)| !text.is_empty()).collect();
            let (depth, ..) = surface("", &answers);
            assert_eq!((depth.cover.enough, depth.cover.trust), (wanted, trust), "{room} {cover}");
        }
    }
    assert_eq!(surface("living", &[]).0.cover.enough, None);
}

/// The rules stand or fall with the cover, and what is said agrees with them.
#[test]
fn marks_and_findings_follow_the_cover() {
    use Stands::{Applies, Covered, Excepted, NotSaid};
    for (room, answers, barrier, ignition, said) in [
        ("living", vec![], NotSaid, None, vec![]),
        ("living", vec![("exposure", "covered")], Covered, None, vec![]),
        ("living", vec![("exposure", "exposed")], Applies, None, vec![Code::CoverAsked]),
        ("living", vec![("cover", "gypsum")], Covered, None, vec![]),
        ("living", vec![("cover", "wood_panel")], Covered, None, vec![Code::CoverSinceNewer]),
        ("living", vec![("cover", "hardboard")], Applies, None, vec![Code::CoverNotEnough]),
        ("living", vec![("cover", "tested_coating")], Applies, None, vec![Code::CoverByReport]),
        ("living", vec![("cover", "none")], Applies, None, vec![Code::CoverAsked]),
        ("service", vec![("cover", "hardboard")], Covered, Some(Covered), vec![]),
        ("service", vec![("cover", "none")], Excepted, Some(Applies), vec![Code::IgnitionAsked]),
        ("service", vec![("exposure", "exposed")], Excepted, Some(Applies), vec![Code::IgnitionAsked]),
        ("service", vec![], NotSaid, Some(NotSaid), vec![]),
        ("", vec![("cover", "hardboard")], Applies, None, vec![]),
        ("", vec![("exposure", "exposed")], Applies, None, vec![Code::CoverAsked]),
        ("weather", vec![("exposure", "exposed")], Excepted, None, vec![Code::BareInWeather]),
        (
            "living",
            vec![("exposure", "exposed"), ("cover", "gypsum")],
            Applies,
            None,
            vec![Code::CoverUnclear, Code::CoverAsked],
        ),
        (
            "living",
            vec![("exposure", "covered"), ("cover", "none")],
            Applies,
            None,
            vec![Code::CoverUnclear, Code::CoverAsked],
        ),
        ("living", vec![("spot", "rim"), ("cover", "none")], Excepted, None, vec![]),
        ("living", vec![("spot", "rim"), ("cover", "hardboard")], Covered, None, vec![]),
    ] {
        let (depth, _, found) = surface(room, &answers);
        assert_eq!(found, said, "{room} {answers:?}");
        assert_eq!(stands(&depth, Rule::Barrier), Some(barrier), "{room} {answers:?}");
        assert_eq!(stands(&depth, Rule::Ignition), ignition, "{room} {answers:?}");
    }
    let (depth, ..) = surface("weather", &[("exposure", "exposed")]);
    assert_eq!(stands(&depth, Rule::Weather), Some(Applies));
    assert_eq!(stands(&depth, Rule::Garage), None);
    let (depth, ..) = surface("living", &[("room", "garage")]);
    let garage = depth.marks.iter().find(|mark| mark.rule == Rule::Garage).expect("the mark");
    assert!(!garage.trust.decides());
}

/// Where the ignition barrier's rule is printed, and the reminders of a crawlspace and a cold room.
#[test]
fn sections_and_reminders() {
    for (component, section, reminders) in [
        ("attic_floor", "R316.5.3", vec![]),
        ("roof_deck", "R316.5.3", vec![]),
        ("crawl_wall", "R316.5.4", vec![Rule::CrawlGround, Rule::CrawlAir]),
        ("cold_room", "R316.5.3, R316.5.4", vec![Rule::ColdRoom]),
        ("floor", "R316.5.3, R316.5.4", vec![]),
    ] {
        let (depth, ..) = surface("service", &[("component", component)]);
        let ignition = depth.marks.iter().find(|mark| mark.rule == Rule::Ignition).expect("the mark");
        assert_eq!((ignition.section, ignition.edition), (section, "IRC 2018"), "{component}");
        let found = depth.marks.iter().map(|mark| mark.rule);
        let found = found.filter(|rule| matches!(rule, Rule::CrawlGround | Rule::CrawlAir | Rule::ColdRoom));
        assert_eq!(found.collect::<Vec<_>>(), reminders, "{component}");
    }
}

/// Price for a square foot × area, to the cent: 100 ft² at $0.60 are $60.
#[test]
fn what_a_cover_costs() {
    for (answers, wanted) in [
        (vec![("cover", "gypsum"), ("cover_price", "0.60")], Some(6_000)),
        (vec![("cover_price", "1")], Some(10_000)),
        (vec![("cover", "none"), ("cover_price", "1")], None),
        (vec![("cover", "gypsum")], None),
    ] {
        let (depth, sum, _) = surface("living", &answers);
        assert_eq!(depth.cover.cost, wanted.map(Cents), "{answers:?}");
        assert_eq!(sum, wanted.map(Cents), "{answers:?}");
        assert_eq!(depth.cover.area_ft2, Some(SquareFeet(100.0)));
    }
    assert_eq!(surface("living", &[]).0.cover.area_ft2, None);
}
