//! Photographs of a job, read from beside it.

use std::path::Path;

use base64::Engine;

use super::beside;
use crate::job::Photograph;
use crate::report::Embedded;
use crate::written::{Fault, Faults, Page};

/// Largest photograph that goes into a page, in bytes: beyond it the page is too large to be mailed.
const LARGEST: u64 = 3 << 20;
/// First bytes of the two kinds that every browser shows.
const PNG: &[u8] = b"\x89PNG\r\n\x1a\n";
const JPEG: &[u8] = b"\xff\xd8\xff";

/// The photographs by name alone.
pub(super) fn named(photographs: &[Photograph]) -> Vec<Embedded> {
    photographs
        .iter()
        .map(|photograph| Embedded {
            address: None,
            file: photograph.file.clone(),
            caption: photograph.caption.clone(),
        })
        .collect()
}

/// The photographs with their pictures.
pub(super) fn embedded(photographs: &[Photograph], page: &Page, job: &Path) -> Result<Vec<Embedded>, Faults> {
    let folder = job.parent().unwrap_or(Path::new(""));
    let mut faults: Vec<Fault> = Vec::new();
    let mut all = Vec::new();
    for (i, photograph) in photographs.iter().enumerate() {
        match picture(folder, &photograph.file) {
            Ok(address) => all.push(Embedded {
                address: Some(address),
                file: photograph.file.clone(),
                caption: photograph.caption.clone(),
            }),
            Err((message, help)) => {
                faults.push(page.fault(&format!("photographs[{i}].file"), message, help));
            }
        }
    }
    if faults.is_empty() { Ok(all) } else { Err(Faults::new(page, faults)) }
}

/// The picture as a data address, or what is wrong and what would do.
fn picture(folder: &Path, name: &str) -> Result<String, (String, String)> {
    let bytes = beside::bytes(folder, name, LARGEST).map_err(|why| {
        let help = "give its path from the job's folder, save a smaller copy (1,600 pixels across show all that a report \
            needs), or leave --photographs out";
        (why, help.to_owned())
    })?;
    let kind = if bytes.starts_with(PNG) {
        "png"
    } else if bytes.starts_with(JPEG) {
        "jpeg"
    } else {
        return Err((
            format!("`{name}` is neither a PNG nor a JPEG picture"),
            "save the photograph as JPEG or PNG".to_owned(),
        ));
    };
    let encoded = base64::engine::general_purpose::STANDARD.encode(&bytes);
    Ok(format!("data:image/{kind};base64,{encoded}"))
}
