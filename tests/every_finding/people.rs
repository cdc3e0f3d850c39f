//! The cases of moist air and of the people around.

use crate::jobs::set;
use foamwright::findings::Code;
use serde_json::Value;

/// The change that raises each of their codes.
pub fn change(code: Code, job: &mut Value) {
    let room = |job: &mut Value| {
        for field in ["room_length", "room_width", "room_height"] {
            set(job, field, "12 ft");
        }
    };
    match code {
        Code::HeaterWets => {
            room(job);
            set(job, "outdoor_air", "30 F");
            set(job, "outdoor_humidity", "80");
            set(job, "heater_fuel", "propane");
            set(job, "heater_power", "30000");
        }
        Code::OccupantsIn => set(job, "occupants", "in_house"),
        Code::ExtraCare => set(job, "asthma", "yes"),
        Code::Sensitized => set(job, "sensitized", "yes"),
        Code::NotIsolated => set(job, "isolated", "no"),
        Code::AirHandlerOn => set(job, "air_handler_off", "no"),
        Code::FluePulled => set(job, "flue_near", "not_known"),
        Code::VehicleOver => {
            for kit in job["kits"].as_array_mut().expect("kits") {
                set(kit, "gross_weight", "90 lb");
            }
            set(job, "vehicle_most", "100 lb");
        }
        _ => {}
    }
}
