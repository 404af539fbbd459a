//! Draws the demo's photos into the folder where the demo embeds them: `cargo run --release -p lugbook-renderer`.

use std::path::PathBuf;

fn main() -> std::io::Result<()> {
    let folder = match std::env::args_os().nth(1) {
        Some(folder) => PathBuf::from(folder),
        None => PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../bindings/terminal/demo"),
    };
    std::fs::create_dir_all(&folder)?;
    for photo in renderer::demo::photos() {
        let file = photo.file();
        println!("{} {} bytes", photo.name, file.len());
        std::fs::write(folder.join(photo.name), file)?;
    }
    Ok(())
}
