//! The page at the boat: form, style, engine and job in one HTML file that opens without a network, and asks for none.

use base64::Engine;
use sha2::{Digest, Sha256};

use crate::report::{self, GENERATOR};

const STYLE: &str = include_str!("style.css");
const BODY: &str = include_str!("body.html");
const WORKER: &str = include_str!("worker.js");
/// The modules of the page, name and text, each behind those that it uses.
const MODULES: [(&str, &str); 9] = [
    ("beside", include_str!("beside.js")),
    ("dom", include_str!("dom.js")),
    ("engine", include_str!("engine.js")),
    ("job", include_str!("job.js")),
    ("walk", include_str!("walk.js")),
    ("fields", include_str!("fields.js")),
    ("answer", include_str!("answer.js")),
    ("files", include_str!("files.js")),
    ("main", include_str!("main.js")),
];

/// A job that goes along in the page.
pub struct Given<'a> {
    /// Name of its file.
    pub name: &'a str,
    /// Its text.
    pub text: &'a str,
    /// The files that it names, as far as they go along.
    pub files: &'a [(String, Vec<u8>)],
}

/// The page, with the engine (a WebAssembly module, packed by gzip) and the job in it, where one is given.
pub fn page(engine: &[u8], given: Option<&Given>) -> String {
    let script = joined();
    let style = format!("{}{STYLE}", report::style());
    let base64 = |bytes: &[u8]| base64::engine::general_purpose::STANDARD.encode(bytes);
    let given = given.map(|given| {
        let files: serde_json::Map<_, _> =
            given.files.iter().map(|(name, bytes)| (name.clone(), base64(bytes).into())).collect();
        serde_json::json!({ "name": given.name, "text": given.text, "files": files })
    });
    // Nothing is fetched from anywhere, and no script runs but this one and the workers that it makes.
    let policy = format!(
        "default-src 'none'; script-src {} 'wasm-unsafe-eval'; worker-src blob:; style-src {}; img-src data: blob:; base-uri 'none'; form-action 'none'",
        hash(&script),
        hash(&style),
    );
    let marks = report::marks();
    let engine = base64(engine);
    let (worker, given) = (data(&WORKER.into()), data(&given.into()));
    format!(
        "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"generator\" content=\"{GENERATOR}\">\
         <meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1, interactive-widget=resizes-content\"><meta name=\"referrer\" content=\"no-referrer\">\
         <link rel=\"icon\" href=\"data:,\"><title>sternknee at the boat</title><style>{style}</style></head>\n\
         <body>{marks}\n{BODY}\
         <script type=\"application/json\" id=\"given\">{given}</script>\n\
         <script type=\"application/json\" id=\"worker\">{worker}</script>\n\
         <script type=\"application/octet-stream\" id=\"engine\">{engine}</script>\n\
         <script type=\"module\">{script}</script>\n</body></html>\n"
    )
}

/// The modules as one script: a page that may not fetch cannot import. Each keeps a scope of its own and gives what it
/// exports; the last one runs.
fn joined() -> String {
    let (last, others) = MODULES.split_last().map_or((("", ""), &MODULES[..]), |(last, others)| (*last, others));
    let mut script = String::new();
    for (name, text) in others {
        let exported: Vec<&str> = text.lines().filter_map(exported).collect();
        let gives = exported.join(", ");
        script.push_str(&format!("const {name}_js = (() => {{\n{}return {{ {gives} }};\n}})();\n", scoped(text)));
    }
    script + &scoped(last.1)
}

/// A module's text with its imports taken from the scopes of the others.
fn scoped(text: &str) -> String {
    let line = |line: &str| match imported(line) {
        Some((what, from)) => format!("const {} = {from}_js;\n", what.strip_prefix("* as ").unwrap_or(what)),
        None => format!("{}\n", line.strip_prefix("export ").unwrap_or(line)),
    };
    text.lines().map(line).collect()
}

/// What a line imports, and from which module.
fn imported(line: &str) -> Option<(&str, &str)> {
    let (what, from) = line.strip_prefix("import ")?.split_once(" from \"./")?;
    Some((what, from.strip_suffix(".js\";")?))
}

/// The name that a line exports.
fn exported(line: &str) -> Option<&str> {
    let declared = line.strip_prefix("export ")?;
    let declared = declared.strip_prefix("async ").unwrap_or(declared);
    let name = ["function ", "const ", "class "].iter().find_map(|kind| declared.strip_prefix(kind))?;
    name.split(|c: char| !c.is_alphanumeric() && c != '_').next()
}

/// A value that a script of the page reads; nothing in it can end the element that it stands in.
fn data(value: &serde_json::Value) -> String {
    value.to_string().replace('<', "\\u003c")
}

fn hash(text: &str) -> String {
    format!("'sha256-{}'", base64::engine::general_purpose::STANDARD.encode(Sha256::digest(text)))
}
