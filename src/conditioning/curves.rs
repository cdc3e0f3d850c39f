//! The curves of one group, made only while they are shown.

use super::cool_down::outside;
use super::group::Setup;
use super::room::{LONGEST_MIN, Room, march};
use super::shells::{NODES, Shells, State, core, skin};
use super::{WarmCurves, learn};
use crate::foam::{self, Foam};
use crate::job::{Job, Now, Reader};
use crate::measure::{Band, held_between};

/// Stretches between the points of a curve.
const STRETCHES: f64 = 96.0;

/// The curves of one group; none where no group has this id, or too little of it is known.
pub fn curves(job: &Job, id: u32, now: Now) -> Option<WarmCurves> {
    // Whatever is wrong with an entry is said by the estimate.
    let mut quiet = Reader::new(job.units);
    let sheets: Vec<Foam> = job.foams.iter().filter_map(|one| foam::sheet(one, &mut quiet)).collect();
    let used = |foam: &&Foam| foam.id == job.foam || job.surfaces.iter().any(|one| one.foam == foam.id);
    let used: Vec<&Foam> = sheets.iter().filter(used).collect();
    let setups: Vec<Setup> = job.warming.iter().map(|one| Setup::read(job, one, now, &mut quiet)).collect();
    let at = job.warming.iter().position(|one| one.id == id)?;
    let setup = setups.get(at)?;
    let circulation = learn::circulation(&setups);
    let label = super::label(&used, &mut quiet);
    let warm_up = super::warm_up(setup, &circulation, label, now.wall().0, job.begins().map(|at| at.0))?;
    let (starts, rooms) = (setup.start?, setup.room?);

    // A little beyond what is planned on, or five lumped times where the room never does it.
    let (_, most) = setup.shells(1.0, starts.likely, rooms.day.likely, 1.0);
    let long = warm_up.plan_min.map_or(most / 8.0, |plan| plan.0 * 1.1);
    let long = held_between(long, 60.0, LONGEST_MIN);
    let from = setup.moved_in.or(warm_up.in_by.map(|by| by.0)).unwrap_or(now.wall().0);
    let each = long / STRETCHES;
    let run = |end: fn(Band<f64>) -> f64| {
        let (start, room) = (end(starts), rooms.end(end));
        let (shells, _) = setup.shells(end(circulation.m), start, room.day, super::PARTS);
        points(&shells, start, &room, from, each)
    };
    let likely = run(|band| band.likely);
    let slow = run(|band| band.low);
    let room = rooms.end(|band| band.likely);
    let minutes =
        |points: &[State], each: f64| (0..points.len()).map(|at| at as f64 * each).collect::<Vec<_>>();
    let of = |points: &[State], of: fn(&State) -> f64| points.iter().map(of).collect::<Vec<_>>();
    let warm_min = minutes(&likely, each);

    let (mut cool_min, mut cool_mean_f, mut cool_skin_f) = (Vec::new(), Vec::new(), Vec::new());
    if let Some(air) = setup.out_air
        && let Some(cool) = super::cool_down(setup, &circulation, label, Some(warm_up))
    {
        let long = cool.use_by_min.map_or(720.0, |minutes| minutes.0 * 1.5);
        let long = held_between(long, 60.0, 2_880.0);
        let each = long / STRETCHES;
        let shells = outside(&setup.body, setup.out_pack, circulation.m.likely, cool.from_f.0, air.likely);
        let cooling = points(&shells, cool.from_f.0, &Room::steady(air.likely), 0.0, each);
        cool_min = minutes(&cooling, each);
        cool_mean_f = cooling.iter().map(|one| shells.mean(one)).collect();
        cool_skin_f = of(&cooling, skin);
    }
    Some(WarmCurves {
        warm_slow_f: of(&slow, core),
        warm_likely_f: of(&likely, core),
        warm_skin_f: of(&likely, skin),
        warm_air_f: warm_min.iter().map(|minutes| room.at(from + minutes)).collect(),
        warm_min,
        cool_min,
        cool_mean_f,
        cool_skin_f,
    })
}

/// What stands at each of the stretches' ends, from the beginning on: the nearest step's.
fn points(shells: &Shells, start: f64, room: &Room, from_wall: f64, each: f64) -> Vec<State> {
    let mut points = vec![[start; NODES]];
    let mut wanted = each;
    march(shells, start, room, from_wall, LONGEST_MIN, &mut |minutes, before, after| {
        while minutes >= wanted && points.len() as f64 <= STRETCHES {
            let share = 1.0 - (minutes - wanted) / shells.step_min;
            let mut between = *before;
            for (one, after) in between.iter_mut().zip(after) {
                *one += share * (after - *one);
            }
            points.push(between);
            wanted += each;
        }
        points.len() as f64 > STRETCHES
    });
    points
}
