//! Slips: each is offered on hundreds of seeds, is named there, and never meets the right answer.

use super::*;
use foamwright::practice::{By, SLIPS, Verdict, book, mark, slips_of};
use std::collections::BTreeMap;

/// On so many exercises each slip has to be named, and on at least a third of them in either units that it comes in.
const WANTED: u32 = 200;
/// After so many exercises of a scene without enough of a slip it is given up, and told.
const MOST: u32 = 900;

/// What was seen of a slip.
#[derive(Debug, Clone, Default)]
struct Seen {
    named: u32,
    /// Asked for by the scene, but its answer was the right one or another slip's.
    hidden: u32,
    scenes: Vec<&'static str>,
}

type Counts = BTreeMap<&'static str, Seen>;

/// What a scene's own steps and kinds may go wrong in: names of the scene, without working anything out.
fn own(made: &Made) -> Vec<&'static str> {
    let mut names: Vec<_> = made.ways.iter().flat_map(|way| way.slips.iter().map(|slip| slip.name)).collect();
    names.sort_unstable();
    names.dedup();
    names
}

/// Every exercise of one system of units that still has a slip to show.
fn seen(units: Units) -> (Counts, Vec<String>) {
    let mut counts = Counts::new();
    let mut faults = Vec::new();
    let mut tried = BTreeMap::<(u8, &'static str), u32>::new();
    // Ten thousand far apart find every slip of every scene often enough; more would only take longer.
    for number in spread().take(10_000) {
        for level in LEVELS {
            let Some(made) = made(level, number, units) else { continue };
            let scene = made.exercise.scene;
            let tries = tried.entry((level, scene)).or_default();
            // What comes in the other units as well is counted there too.
            let other = if units == Units::Us { Units::Metric } else { Units::Us };
            let twin = self::made(level, number, other).map(|twin| own(&twin)).unwrap_or_default();
            let enough = |name: &str| {
                let wanted = if twin.contains(&name) { WANTED / 2 } else { WANTED };
                counts.get(name).is_some_and(|seen| seen.named >= wanted)
            };
            if *tries >= MOST || (*tries >= 20 && own(&made).iter().all(|name| enough(name))) {
                continue;
            }
            *tries += 1;
            one(&made, &mut counts, &mut faults);
        }
    }
    (counts, faults)
}

fn one(made: &Made, counts: &mut Counts, faults: &mut Vec<String>) {
    let mut core = Kept::default();
    let right = right(made, &mut core);
    let scene = made.exercise.scene;
    let told_apart = slips_of(made, &mut core);
    let mut shown: Vec<(usize, &str)> = Vec::new();
    let mut once: Vec<&str> = Vec::new();
    for (at, name, value) in told_apart {
        let step = &made.exercise.steps[at];
        let key = super::name(step);
        if (value - right[at]).abs() <= within(step, right[at]) {
            faults.push(format!(
                "{scene} {key}: {name} is right| {value} for {} [{}]",
                right[at],
                told(made)
            ));
        }
        let mut given = answers(&right);
        given[at].value = Some(value);
        let marked = mark(made, &given, &mut core);
        let step = &marked.steps[at];
        if (step.verdict, step.slip, step.carried, step.points) != (Verdict::Slip, name, false, 0.0) {
            let judged = (step.verdict, step.slip);
            faults.push(format!("{scene} {key}: {name} is not named| {value}: {judged:?} [{}]", told(made)));
        }
        shown.push((at, name));
        if !once.contains(&name) {
            once.push(name);
            let seen = counts.entry(name).or_default();
            seen.named += 1;
            if !seen.scenes.contains(&scene) {
                seen.scenes.push(scene);
            }
        }
    }
    for (at, way) in made.ways.iter().enumerate() {
        for slip in way.slips.iter().filter(|slip| !shown.contains(&(at, slip.name))) {
            let _: &By = &slip.by;
            counts.entry(slip.name).or_default().hidden += 1;
        }
    }
}

/// The slips that are named in a published example.
fn in_the_book(faults: &mut Vec<String>) -> Vec<&'static str> {
    let mut counts = Counts::new();
    for (seed, units) in book().into_iter().flat_map(|seed| BOTH.map(|units| (seed, units))) {
        one(&exercise(seed, units).expect("an example"), &mut counts, faults);
    }
    counts.into_iter().filter(|(_, seen)| seen.named > 0).map(|(name, _)| name).collect()
}

#[test]
fn every_slip_is_named_on_two_hundred_exercises() {
    let [us, metric] = std::thread::scope(|scope| {
        BOTH.map(|units| scope.spawn(move || seen(units)))
            .map(|one| one.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)))
    });
    let mut faults: Vec<String> = us.1.into_iter().chain(metric.1).collect();
    let in_the_book = in_the_book(&mut faults);
    println!("{:26} {:>6} {:>6} {:>7}  scenes", "slip", "US", "metric", "hidden");
    for name in SLIPS {
        let of = |counts: &Counts| counts.get(name).cloned().unwrap_or_default();
        let (us, metric) = (of(&us.0), of(&metric.0));
        let mut scenes = us.scenes.clone();
        scenes.extend(metric.scenes.iter().filter(|scene| !us.scenes.contains(scene)));
        let hidden = us.hidden + metric.hidden;
        println!("{name:26} {:>6} {:>6} {hidden:>7}  {}", us.named, metric.named, scenes.join(" "));
        let named = us.named + metric.named;
        if scenes.is_empty() {
            // There is only one of each published example.
            if !in_the_book.contains(name) {
                faults.push(format!("{name}: no scene knows it|"));
            }
        } else if named < WANTED {
            faults.push(format!("{name}: only on {named} exercises|"));
        }
        // A slip that comes in both units has to be seen in both.
        let either = [us.named, metric.named];
        if either.iter().all(|count| *count > 0) && either.iter().any(|count| *count < WANTED / 3) {
            faults.push(format!("{name}: too seldom in one of the units| {either:?}"));
        }
        if hidden > named {
            faults.push(format!(
                "{name}: hidden behind another answer more often than not| {hidden} of {}",
                hidden + named
            ));
        }
    }
    for name in us.0.keys().chain(metric.0.keys()).filter(|name| !SLIPS.contains(name)) {
        faults.push(format!("{name}: not on the list|"));
    }
    none_of(faults);
}

#[test]
fn names_of_slips_come_once_and_there_are_many() {
    let mut names = SLIPS.to_vec();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), SLIPS.len());
    assert!(names.len() >= 25, "{}", names.len());
}

/// An exercise's slips told with words: the page of words has each, and in both languages alike.
#[test]
fn every_slip_has_words() {
    for language in ["en", "es"] {
        let page = |name: &str| -> BTreeMap<String, serde_json::Value> {
            let path = format!("{}/www/words/{language}/{name}.json", env!("CARGO_MANIFEST_DIR"));
            serde_json::from_str(&std::fs::read_to_string(path).expect("the page of words")).expect("words")
        };
        // What is said to a student, and the few words on a teacher's key.
        let (words, short) = (page("slips"), page("practice"));
        let missing: Vec<_> = SLIPS
            .iter()
            .filter(|name| !words.contains_key(**name) || !short.contains_key(&format!("slip.{name}")))
            .collect();
        assert!(missing.is_empty(), "{language}: no words for {missing:?}");
        let gone: Vec<_> = words.keys().filter(|name| !SLIPS.contains(&name.as_str())).collect();
        assert!(gone.is_empty(), "{language}: no slip is called {gone:?}");
        for (name, words) in words {
            let words = words.as_str().unwrap_or_default();
            let places: Vec<_> = words.split('{').skip(1).filter_map(|rest| rest.split_once('}')).collect();
            let known = places.iter().all(|(place, _)| ["answer", "how"].contains(place));
            assert!(known && !words.is_empty(), "{language} {name}: {words}");
        }
    }
}
