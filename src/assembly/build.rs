//! From what was entered to what a surface is built of.

use super::Build;
use crate::climate::Component;
use crate::job::{Reader, Surface};
use crate::surfaces::SurfaceArea;

/// Reads what a surface is built of; `None` where it has no layers.
pub fn build(
    _surface: &Surface,
    _component: Option<Component>,
    _area: Option<&SurfaceArea>,
    _reader: &mut Reader,
) -> Option<Build> {
    None
}
