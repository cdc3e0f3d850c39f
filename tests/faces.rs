//! The faces of every drawing against the areas beside them: the shoelace formula (Gauss) over the corners.

#![allow(clippy::expect_used, clippy::panic)]

mod job_folders;

use foamwright::job::{Job, Reader};
use foamwright::surfaces::{self, View};

/// Twice the signed area would be negative for corners that run clockwise.
fn shoelace(corners: &[(f64, f64)]) -> f64 {
    let next = corners.iter().cycle().skip(1);
    corners.iter().zip(next).map(|((x, y), (u, v))| x * v - u * y).sum::<f64>() / 2.0
}

#[test]
fn the_faces_of_a_drawing_are_its_area() {
    let mut drawn = 0;
    for folder in job_folders::all() {
        let job: Job = job_folders::opened(&folder.join("job.json"));
        for surface in &job.surfaces {
            let Some(area) = surfaces::measure(surface, &mut Reader::new(job.units)) else { continue };
            let outline =
                surfaces::outline(surface, &mut Reader::new(job.units)).expect("measured, so drawn");
            if outline.faces.is_empty() || outline.view == View::Section {
                continue;
            }
            let at = format!("{}: {}", folder.display(), surface.id);
            let mut foamed = 0.0;
            for face in &outline.faces {
                let inches = shoelace(&face.corners);
                assert!(inches > 0.0, "{at}: {} runs clockwise or has no area", face.name);
                foamed += if face.foamed { inches / 144.0 } else { 0.0 };
                // A round face of the circle's area reaches a thousandth of its radius further than the circle.
                let past = 1e-3 * outline.width_in.max(outline.height_in);
                for (x, y) in &face.corners {
                    let inside = *x >= -past
                        && *y >= -past
                        && *x <= outline.width_in + past
                        && *y <= outline.height_in + past;
                    assert!(inside, "{at}: {} stands out of the drawing", face.name);
                }
            }
            let gross = area.one_ft2.likely.0;
            assert!((foamed - gross).abs() <= 1e-9 * gross.max(1.0), "{at}: {foamed} drawn, {gross} counted");
            drawn += 1;
        }
    }
    assert!(drawn > 0, "no job has a surface with faces");
}
