//! The boundary to the page: each export decodes, calls one room and encodes. No arithmetic here.
