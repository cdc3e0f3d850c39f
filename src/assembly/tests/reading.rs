//! From what was entered to what a surface is built of.

use super::*;

/// A surface with these entries and layers: material, position, thickness, R.
fn surface(entries: &[(&str, &str)], layers: &[[&str; 4]]) -> Surface {
    let fields = |all: &[(&str, &str)]| -> Vec<_> {
        let filled = all.iter().filter(|(_, text)| !text.is_empty());
        filled.map(|(field, text)| json!({"field": field, "text": text})).collect()
    };
    let layer = |(at, [made_of, position, thickness, r]): (usize, &[&str; 4])| {
        let entries =
            fields(&[("made_of", made_of), ("position", position), ("thickness", thickness), ("layer_r", r)]);
        json!({ "id": 100 + at, "entries": entries })
    };
    let layers: Vec<_> = layers.iter().enumerate().map(layer).collect();
    serde_json::from_value(json!({
        "id": 1, "shape": "typed_area", "entries": fields(entries), "layers": layers, "depth_way": "typed"
    }))
    .expect("a surface")
}

fn read(
    entries: &[(&str, &str)],
    layers: &[[&str; 4]],
    component: Option<Component>,
) -> (Option<Build>, Vec<Finding>) {
    let mut reader = Reader::new(Units::Us);
    let built = build(&surface(entries, layers), component, None, &mut reader);
    (built, reader.findings)
}

fn codes(findings: &[Finding]) -> Vec<(Code, &str)> {
    findings.iter().map(|one| (one.code, one.at.field.as_str())).collect()
}

const SIDING: [&str; 4] = ["hollow_siding", "outside", "", ""];

/// Every material of the table of fields has a published R, or says that its own is on its label.
#[test]
fn every_material_is_known() {
    let labels = ["typed", "batt", "loose_fill", "rigid_board", "second_foam"];
    let words = field(Part::Layer, "made_of").expect("the field").choices;
    assert!(words.len() > labels.len());
    for word in words {
        assert_eq!(material(word).is_none(), labels.contains(word), "{word}");
        if let Some(one) = material(word) {
            // Not every one has an R of its own: then it needs a thickness.
            assert!(one.r.or(one.r_per_in).is_some_and(|r| r > 0.0), "{word}");
        }
    }
}

/// A piece counts as published, what is cut to any thickness by the inch, a board in proportion to it.
#[test]
fn published_and_by_thickness() {
    let layers = [
        SIDING,
        ["softwood", "outside", "1 1/2 in", ""],
        ["gypsum_1_2", "inside", "", ""],
        ["gypsum_1_2", "inside", "1 in", ""],
        ["bevel_siding", "outside", "1/2 in", ""],
    ];
    let (built, findings) = read(&[("framing_share", "25 %")], &layers, Some(Component::Wall));
    assert_eq!(findings, []);
    let built = built.expect("complete");
    let r: Vec<f64> = built.layers.iter().map(|layer| layer.r.0).collect();
    assert_eq!(r, [0.62, 1.875, 0.80, 0.45, 0.90], "outside first");
    assert_eq!(built.layers.get(3).and_then(|layer| layer.thickness_in), Some(Inches(0.5)));
    assert_eq!(built.framing_share, Some(0.25));
}

/// R from the label wins over what is published, and is needed where nothing is.
#[test]
fn the_label_wins() {
    let share = [("framing_share", "25")];
    let (built, findings) = read(&share, &[["fiberboard_1_2", "outside", "", "R-1.4"]], None);
    assert_eq!(findings, []);
    assert_eq!(built.expect("complete").layers.first().map(|layer| layer.r), Some(RValue(1.4)));
    for (name, field) in [("batt", "layer_r"), ("typed", "layer_r"), ("softwood", "thickness")] {
        let (built, findings) = read(&share, &[[name, "cavity", "", ""]], None);
        assert_eq!(built, None, "{name}");
        assert_eq!(codes(&findings), [(Code::Needed, field)], "{name}");
    }
    // A label that cannot be read is no R, not the published one.
    let (built, findings) = read(&share, &[["gypsum_1_2", "inside", "", "much"]], None);
    assert_eq!((built, codes(&findings)), (None, vec![(Code::NotANumber, "layer_r")]));
    let (built, findings) = read(&share, &[["", "", "", "R-2"]], None);
    assert_eq!(built, None);
    assert_eq!(codes(&findings), [(Code::Needed, "made_of"), (Code::Needed, "position")]);
}

#[test]
fn air_and_insulation() {
    let layers = [
        ["rigid_board", "outside", "1 in", "R-5"],
        ["batt", "cavity", "3 1/2 in", "R-13"],
        ["loose_fill", "inside", "", "R-10"],
        ["second_foam", "cavity", "", "R-4"],
        ["typed", "cavity", "", "R-1"],
    ];
    let (built, _) = read(&[("framing_share", "25")], &layers, Some(Component::RoofDeck));
    let built = built.expect("complete");
    assert_eq!(built.fill_r(), RValue(17.0));
    assert_eq!(built.airy_r(), RValue(23.0));
    assert_eq!(built.continuous_r(), RValue(15.0));
}

#[test]
fn films_by_where_the_heat_goes() {
    use Component as C;
    for (component, outside, inside) in [
        (Some(C::Wall), 0.17, 0.68),
        (Some(C::Rim), 0.17, 0.68),
        (Some(C::RoofDeck), 0.17, 0.61),
        (Some(C::AtticFloor), 0.61, 0.61),
        (Some(C::Floor), 0.92, 0.92),
        (Some(C::BasementWall), 0.17, 0.68),
        (None, 0.17, 0.61),
    ] {
        let built = read(&[("framing_share", "0")], &[SIDING], component).0.expect("complete");
        assert_eq!((built.outside_film.0, built.inside_film.0), (outside, inside), "{component:?}");
        assert_eq!(built.from_outside, matches!(component, Some(C::AtticFloor | C::Floor)), "{component:?}");
    }
}

/// A plain wall has no members, unbroken foam none that matter; elsewhere the share has to be said.
#[test]
fn the_share_of_framing() {
    let share = |entries: &[(&str, &str)], layers: &[[&str; 4]], component| {
        let (built, findings) = read(entries, layers, Some(component));
        (built.expect("complete").framing_share, codes(&findings).into_iter().map(|(code, _)| code).collect())
    };
    let not_said = (None, vec![Code::ShareNotSaid]);
    let none: (Option<f64>, Vec<Code>) = (Some(0.0), Vec::new());
    let studs = [SIDING, ["batt", "cavity", "3 1/2 in", "R-13"]];
    assert_eq!(share(&[], &[SIDING], Component::Wall), not_said);
    assert_eq!(share(&[], &[SIDING], Component::BasementWall), none);
    assert_eq!(share(&[], &studs, Component::BasementWall), not_said);
    assert_eq!(share(&[("runs", "between")], &[SIDING], Component::BasementWall), not_said);
    assert_eq!(share(&[("runs", "across")], &[SIDING], Component::Wall), none);
    assert_eq!(share(&[("runs", "across")], &studs, Component::Wall), not_said);
    assert_eq!(share(&[("framing_share", "9.4")], &[SIDING], Component::Rim).0, Some(0.094));
    assert_eq!(share(&[("framing_share", "20-25")], &[SIDING], Component::Wall).0, Some(0.25));
    let (built, findings) = read(&[("framing", "steel")], &[SIDING], Some(Component::Wall));
    assert!(built.is_some_and(|built| built.steel));
    assert_eq!(codes(&findings), [(Code::SteelFraming, "framing")]);
}

/// Nothing is said of steel where nothing of the whole was asked, and a wall without layers is no build.
#[test]
fn no_layers_no_build() {
    assert_eq!(read(&[("framing", "steel")], &[], Some(Component::Wall)), (None, Vec::new()));
}

/// Of a range of bays the shallowest counts; what cannot be read is said where the depth is chosen, once.
#[test]
fn the_depth_of_the_members() {
    let member = |text: &str| {
        let (built, findings) =
            read(&[("cavity", text), ("framing_share", "25")], &[SIDING], Some(Component::Wall));
        assert_eq!(findings, []);
        built.expect("complete").member_in
    };
    assert_eq!(member("3 1/2 in"), Some(Inches(3.5)));
    assert_eq!(member("3-5 in"), Some(Inches(3.0)));
    assert_eq!(member("deep"), None);
    assert_eq!(member(""), None);
}

/// A batt of 3½ in finds room in a 2x6 behind 2 in of foam, and not behind more.
#[test]
fn fill_that_finds_no_room() {
    let said = |cavity: &str, runs: &str, foam_in: f64| {
        let entries = [("cavity", cavity), ("framing_share", "25"), ("runs", runs)];
        let batt = ["batt", "cavity", "3 1/2 in", "R-13"];
        let (built, findings) = read(&entries, &[batt], Some(Component::Wall));
        assert_eq!(findings, []);
        let mut reader = Reader::new(Units::Us);
        built.expect("complete").fits(1, Inches(foam_in), &mut reader);
        reader.findings
    };
    assert_eq!(said("5 1/2 in", "between", 2.0), []);
    let squeezed = said("5 1/2 in", "between", 2.01);
    assert_eq!(codes(&squeezed), [(Code::FillSqueezed, "cavity")]);
    // Deeper than the cavity by itself, not in one, or in one that was not measured: nothing to say here.
    assert_eq!(said("5 1/2 in", "between", 5.51), []);
    assert_eq!(said("5 1/2 in", "across", 2.01), []);
    assert_eq!(said("", "between", 2.01), []);
}
