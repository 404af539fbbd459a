//! Reads what the phone library exports, and writes the Kotlin and the Swift that call it.
//!
//! Everything is read from the built library itself, so that the shells can't be given names that it lacks.

mod surface;

use std::fs;

use anyhow::{Context, Result};
use camino::{Utf8Path, Utf8PathBuf};
use uniffi_bindgen::bindings::{GenerateOptions, TargetLanguage, generate_with_bindgen_paths};
use uniffi_bindgen::{BindgenPaths, BindgenPathsLayer};

pub use surface::surface;

/// The package in Swift that the generated files stand in.
const SWIFT_PACKAGE: &str = include_str!("Package.swift");

/// Where the settings of the generated code lie: `bindings/phone/uniffi.toml`.
struct PhoneCrate;

impl BindgenPathsLayer for PhoneCrate {
    fn get_crate_root(&self, crate_name: &str) -> Option<Utf8PathBuf> {
        (crate_name == "lugbook_phone").then(|| Utf8PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../phone")))
    }
}

/// The phone library that was built beside a program of this workspace: a program lies in the folder of its
/// profile or, as tests do, in `deps` there.
///
/// # Errors
/// When it is not there.
pub fn library_beside(program: &Utf8Path) -> Result<Utf8PathBuf> {
    let folder = program.parent().context("a program lies in a folder")?;
    let name = format!("{}lugbook_phone{}", std::env::consts::DLL_PREFIX, std::env::consts::DLL_SUFFIX);
    let library = if folder.ends_with("deps") { folder.join(name) } else { folder.join("deps").join(name) };
    anyhow::ensure!(library.exists(), "{library} is not there: build the workspace first");
    Ok(library)
}

/// Writes into a folder:
///
/// - `kotlin/`: the Kotlin, by package;
/// - `swift/`: a Swift package `LugbookCore`;
/// - `shared/`: the library as a JVM loads it;
/// - `static/`: the library as Swift links it.
///
/// A file that would stay the same keeps its time, so that nothing is built anew for it.
///
/// # Errors
/// When the library can't be read, or a folder not written.
pub fn generate(library: &Utf8Path, out: &Utf8Path) -> Result<()> {
    let fresh = out.join("fresh");
    if fresh.exists() {
        fs::remove_dir_all(&fresh)?;
    }
    for (language, folder) in [(TargetLanguage::Kotlin, "kotlin"), (TargetLanguage::Swift, "swift")] {
        let mut paths = BindgenPaths::default();
        paths.add_layer(PhoneCrate);
        let options = GenerateOptions {
            languages: vec![language],
            source: library.to_owned(),
            out_dir: fresh.join(folder),
            ..GenerateOptions::default()
        };
        generate_with_bindgen_paths(options, paths)?;
    }

    replace(&fresh.join("kotlin/lugbook/core/lugbook_phone.kt"), &out.join("kotlin/lugbook/core/lugbook_phone.kt"))?;
    let swift = out.join("swift");
    replace(&fresh.join("swift/LugbookCore.swift"), &swift.join("Sources/LugbookCore/LugbookCore.swift"))?;
    let c_side = swift.join("Sources/LugbookCoreFFI");
    replace(&fresh.join("swift/LugbookCoreFFI.h"), &c_side.join("LugbookCoreFFI.h"))?;
    replace(&fresh.join("swift/LugbookCoreFFI.modulemap"), &c_side.join("module.modulemap"))?;
    fs::write(fresh.join("Package.swift"), SWIFT_PACKAGE)?;
    replace(&fresh.join("Package.swift"), &swift.join("Package.swift"))?;
    fs::remove_dir_all(&fresh)?;

    let name = library.file_name().context("the library has a name")?;
    link(library, &out.join("shared").join(name))?;
    let archive = library.with_file_name("liblugbook_phone.a");
    if archive.exists() {
        link(&archive, &out.join("static/liblugbook_phone.a"))?;
    }
    Ok(())
}

/// Puts a file in its place, unless what lies there is the same.
fn replace(fresh: &Utf8Path, place: &Utf8Path) -> Result<()> {
    let content = fs::read(fresh).with_context(|| format!("{fresh} was not generated"))?;
    if fs::read(place).is_ok_and(|there| there == content) {
        return Ok(());
    }
    if let Some(folder) = place.parent() {
        fs::create_dir_all(folder)?;
    }
    fs::write(place, content).with_context(|| format!("writing {place}"))
}

/// Puts a large file in a second place without a copy, where the disk allows.
fn link(file: &Utf8Path, place: &Utf8Path) -> Result<()> {
    if let Some(folder) = place.parent() {
        fs::create_dir_all(folder)?;
    }
    if place.exists() {
        fs::remove_file(place)?;
    }
    if fs::hard_link(file, place).is_err() {
        fs::copy(file, place).with_context(|| format!("writing {place}"))?;
    }
    Ok(())
}
