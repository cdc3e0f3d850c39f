//! What a surface is made of, how it was read, and the moisture of wood.

use super::*;

fn moisture(name: &str, text: &str) -> SiteReading {
    SiteReading { name: name.to_owned(), ..reading(WoodMoisture, text) }
}

#[test]
fn nothing_is_asked_of_a_surface_about_which_nothing_was_said() {
    assert_eq!(good().blamed(), GO);
    assert_eq!(good().surface(&[("how", "infrared")]).blamed(), GO);
    for material in ["old_foam", "other"] {
        assert_eq!(good().surface(&[("material", material)]).blamed(), GO, "{material}");
    }
}

/// Standard Work Specifications 2017: wood below 19 %, defer at or above.
#[test]
fn wood_has_to_be_below_its_limit() {
    let wood = |text| good().surface(&[("material", "wood")]).and(moisture("Rim, north", text));
    for (text, verdict) in [
        ("13", GO),
        ("18.9", GO),
        ("19", hold(Code::WoodWet)),
        ("24 %", hold(Code::WoodWet)),
        ("", not_read(Code::SpotNotRead)),
    ] {
        assert_eq!(wood(text).blamed(), verdict, "{text}");
    }
    // A range counts by its wetter end.
    assert_eq!(wood("16-20").blamed(), hold(Code::WoodWet));
    let check = wood("13").check(WoodMoisture);
    assert_eq!(
        (check.value, check.most, check.inside_by, check.value_f),
        (Some(13.0), Some(19.0), Some(6.0), None)
    );
    // Other versions of the specifications say 18 or 20 %.
    assert_eq!(wood("18.5").limit("wood_most", "18").blamed(), hold(Code::WoodWet));
    assert_eq!(wood("19.5").limit("wood_most", "20").blamed(), GO);
    assert_eq!(wood("13").limit("wood_most", "dry").verdict(), Verdict::NotRead);
}

#[test]
fn each_spot_of_wood_has_a_reading_of_its_own() {
    let wood = good().surface(&[("material", "wood")]);
    assert_eq!(wood.clone().blamed(), not_read(Code::MoistureNotRead));
    assert_eq!(wood.clone().and(moisture("Rim, south", "12")).blamed(), not_read(Code::MoistureNotRead));
    assert_eq!(wood.clone().and(moisture(" rim, NORTH ", "12")).blamed(), GO);
    // A wet spot holds, also one that no surface names.
    let two = wood.and(moisture("Rim, north", "12")).and(moisture("Sill", "21"));
    assert_eq!(two.blamed(), hold(Code::WoodWet));
    assert_eq!(figure(&two.finding(Code::WoodWet).unwrap(), "name"), "Sill");
    // Without anything said about material a reading of wood counts all the same.
    assert_eq!(good().and(moisture("", "25")).blamed(), hold(Code::WoodWet));
}

#[test]
fn wood_grows_old_by_its_own_limit() {
    let wood = |minutes| good().and(SiteReading { taken: ago(minutes), ..moisture("Rim, north", "12") });
    assert_eq!(wood(120.0).blamed(), GO);
    assert_eq!(wood(121.0).blamed(), not_read(Code::ReadingOld));
    assert_eq!(wood(121.0).limit("wood_age", "4 h").blamed(), GO);
    assert_eq!(wood(121.0).limit("site_age", "4 h").blamed(), not_read(Code::ReadingOld));
}

/// Bare metal reflects: an infrared thermometer reads the room in it, so the figure says nothing.
#[test]
fn infrared_on_bare_metal_is_no_reading() {
    let metal =
        |how: &str, text: &str| good().surface(&[("material", "metal"), ("how", how)]).text(Surface, text);
    assert_eq!(metal("infrared", "66").blamed(), not_read(Code::InfraredOnMetal));
    assert_eq!(metal("infrared", "66").state(Surface), ReadState::NotRead);
    assert_eq!(metal("", "66").blamed(), not_read(Code::Unanswered));
    assert_eq!(metal("contact", "66").blamed(), GO);
    assert!(metal("contact", "66").finding(Code::MetalSkin).is_some());
    assert_eq!(metal("contact", "41").blamed(), hold(Code::SurfaceCold));
    // It is no reading in either direction, but no pass: what else is outside still holds.
    assert_eq!(metal("infrared", "41").blamed(), not_read(Code::InfraredOnMetal));
    assert_eq!(metal("infrared", "41").text(CylinderB, "63").blamed(), hold(Code::CylinderCold));
    assert!(!metal("infrared", "66").said().0.next.iter().any(|one| one.id == 5));
    // Of other things infrared is as good as a probe.
    assert_eq!(good().surface(&[("material", "old_foam"), ("how", "infrared")]).blamed(), GO);
}

#[test]
fn masonry_has_to_be_clean_and_dry() {
    let masonry = |dry: &str| good().surface(&[("material", "masonry"), ("masonry_dry", dry)]);
    assert_eq!(masonry("").blamed(), not_read(Code::Unanswered));
    assert_eq!(masonry("no").blamed(), hold(Code::MasonryDamp));
    assert_eq!(masonry("yes").blamed(), GO);
    // The answer of another material is not asked for.
    assert_eq!(good().surface(&[("material", "other"), ("masonry_dry", "no")]).blamed(), GO);
    let asked = masonry("").finding(Code::Unanswered).unwrap();
    assert_eq!((figure(&asked, "name").as_str(), asked.at.id), ("Rim, north", 5));
}
