//! Draws wheels of known truth into a folder, with the table that readings are scored against:
//! `cargo run --release -p lugbook-renderer --bin draw-wheels -- FOLDER tuning|held-out FROM TO [MINUTES
//! [WIDTH HEIGHT]]`.
//!
//! What is there already is not drawn again, so that a run that was stopped goes on. `INDEX.csv` names the pictures
//! that are there.

use std::path::Path;
use std::time::{Duration, Instant};

use jpeg_encoder::{ColorType, Encoder};
use renderer::wheels::{SIDES, Set, Styles, wheel};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let usage = "draw-wheels FOLDER tuning|held-out FROM TO [MINUTES [WIDTH HEIGHT]]";
    let [folder, set, from, to, rest @ ..] = words.as_slice() else { return Err(usage.into()) };
    let set = match set.as_str() {
        "tuning" => Set::Tuning,
        "held-out" => Set::HeldOut,
        _ => return Err(usage.into()),
    };
    let minutes: u64 = rest.first().map_or(Ok(u64::MAX / 60), |minutes| minutes.parse())?;
    let side = |at: usize, usual: u32| rest.get(at).map_or(Ok(usual), |side| side.parse());
    let sides: (u32, u32) = (side(1, SIDES.0)?, side(2, SIDES.1)?);
    let until = Duration::from_secs(minutes.saturating_mul(60));
    let (folder, began) = (Path::new(folder), Instant::now());
    std::fs::create_dir_all(folder)?;
    let styles = Styles::load(set)?;
    let mut index = String::from("file,kind,width,height,size,service,tin_body,date,words,arrow,chalk,why\n");
    let mut drawn = 0;
    for number in from.parse::<u32>()?..to.parse::<u32>()? {
        let name = format!("{}-{number:05}.jpg", set.name());
        let (molded, truth) = wheel(&styles, number);
        let file = folder.join(&name);
        if !file.exists() {
            if began.elapsed() > until {
                break;
            }
            let picture = molded.render(sides.0, sides.1);
            let mut bytes = Vec::new();
            let (width, height) = (u16::try_from(sides.0)?, u16::try_from(sides.1)?);
            Encoder::new(&mut bytes, 90).encode(&picture, width, height, ColorType::Luma)?;
            // Whole or not at all.
            let unfinished = file.with_extension("part");
            std::fs::write(&unfinished, bytes)?;
            std::fs::rename(unfinished, &file)?;
            drawn += 1;
        }
        index += &format!(
            "{name},{},{},{},{},{},{},{},{},{},{},{}\n",
            truth.kind,
            sides.0,
            sides.1,
            truth.size,
            truth.service,
            truth.tin_body,
            truth.date,
            truth.words,
            truth.arrow,
            truth.chalk,
            truth.why.join(" ")
        );
        std::fs::write(folder.join("INDEX.csv"), &index)?;
    }
    println!("{drawn} wheels drawn in {:.0} s", began.elapsed().as_secs_f64());
    Ok(())
}
