//! Photographs of a job, read from beside it: turned upright, made smaller, and without what the camera wrote into them.

use std::io::Cursor;
use std::path::Path;

use base64::Engine;
use image::imageops::FilterType;
use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder, ImageError, ImageFormat, ImageReader, Limits};

use super::beside;
use crate::job::Photograph;
use crate::report::Embedded;
use crate::rules;
use crate::written::{Fault, Faults, Page};

/// Largest photograph that is read, in bytes: more than any camera writes as JPEG.
const LARGEST: u64 = 40 << 20;
/// Longest side of a picture in a page, in pixels: it fills a sheet of paper at 200 to the inch.
const LONGEST_SIDE: u32 = 1600;
/// Memory for one picture while it is made smaller, in bytes: 40 megapixels.
const MOST_MEMORY: u64 = 160 << 20;

/// How photographs go into a page.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Shown {
    /// Upright, smaller, without place and time.
    Report,
    /// As the camera wrote them.
    AsTaken,
}

/// The photographs, with their pictures where those are to be shown.
pub(super) fn embedded(
    photographs: &[Photograph],
    page: &Page,
    job: &Path,
    shown: Option<Shown>,
) -> Result<Vec<Embedded>, Faults> {
    let folder = job.parent().unwrap_or(Path::new(""));
    let mut faults: Vec<Fault> = Vec::new();
    let mut all = Vec::new();
    for (i, photograph) in photographs.iter().enumerate() {
        let mut fault = |field: &str, message, help: &str| {
            faults.push(page.fault(&format!("photographs[{i}].{field}"), message, help));
        };
        if let Some(id) = photograph.finding.as_ref().filter(|id| rules::find(id).is_none()) {
            fault("finding", format!("there is no check `{id}`"), "`sternknee rules` lists them");
        }
        let address = shown.map(|shown| picture(folder, &photograph.file, shown)).transpose();
        let address = address.unwrap_or_else(|(message, help)| {
            fault("file", message, &help);
            None
        });
        let Photograph { file, caption, finding } = photograph.clone();
        all.push(Embedded { address, file, caption, finding });
    }
    if faults.is_empty() { Ok(all) } else { Err(Faults::new(page, faults)) }
}

/// The picture as a data address, or what is wrong and what would do.
fn picture(folder: &Path, name: &str, shown: Shown) -> Result<String, (String, String)> {
    let bytes = beside::bytes(folder, name, LARGEST)
        .map_err(|why| (why, "give its path from the job's folder, or leave --photographs out".to_owned()))?;
    let format = match image::guess_format(&bytes) {
        Ok(format @ (ImageFormat::Png | ImageFormat::Jpeg)) => format,
        _ => {
            return Err((
                format!("`{name}` is neither a PNG nor a JPEG picture"),
                "save the photograph as JPEG or PNG".to_owned(),
            ));
        }
    };
    let made = upright_and_small(&bytes, format).map_err(|error| {
        let help = "open it and save it anew, or take it out of the job".to_owned();
        (format!("`{name}` cannot be read as a picture: {error}"), help)
    })?;
    let picture = if shown == Shown::AsTaken { &bytes } else { &made };
    let encoded = base64::engine::general_purpose::STANDARD.encode(picture);
    Ok(format!("data:{};base64,{encoded}", format.to_mime_type()))
}

/// The picture alone: what a camera writes beside it, place and time with it, stays behind.
fn upright_and_small(bytes: &[u8], format: ImageFormat) -> Result<Vec<u8>, ImageError> {
    let mut reader = ImageReader::with_format(Cursor::new(bytes), format);
    let mut limits = Limits::default();
    limits.max_alloc = Some(MOST_MEMORY);
    reader.limits(limits);
    let mut decoder = reader.into_decoder()?;
    let orientation = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    let mut picture = DynamicImage::from_decoder(decoder)?;
    picture.apply_orientation(orientation);
    if picture.width().max(picture.height()) > LONGEST_SIDE {
        picture = picture.resize(LONGEST_SIDE, LONGEST_SIDE, FilterType::CatmullRom);
    }
    if format == ImageFormat::Jpeg {
        picture = picture.into_rgb8().into();
    }
    let mut made = Cursor::new(Vec::new());
    picture.write_to(&mut made, format)?;
    Ok(made.into_inner())
}
