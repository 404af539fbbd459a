//! Times again, without instruments, each text that was slow under them.
//! `retime TARGET FILE-OR-FOLDER...` fails when one is truly over the bar.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use lugbook_fuzz::{allowed, best_of, camera, strict};

fn files(path: &Path) -> Vec<PathBuf> {
    match std::fs::read_dir(path) {
        Ok(entries) => entries.map(|entry| entry.expect("the folder can be read").path()).collect(),
        Err(_) => vec![path.to_owned()],
    }
}

fn main() -> ExitCode {
    let mut arguments = std::env::args().skip(1);
    let read = match arguments.next().as_deref() {
        Some("sidewall_strict") => strict,
        Some("sidewall_camera") => camera,
        other => panic!("no target {other:?}"),
    };
    let (mut timed, mut over, mut worst) = (0, 0, (0.0, String::new()));
    for file in arguments.flat_map(|path| files(Path::new(&path))) {
        let Ok(text) = String::from_utf8(std::fs::read(&file).expect("a kept text can be read")) else { continue };
        timed += 1;
        let took = best_of(20, &text, read);
        let share = took.as_secs_f64() / allowed(&text).as_secs_f64();
        if share > worst.0 {
            worst = (share, file.display().to_string());
        }
        if share > 1.0 {
            over += 1;
            println!("OVER: {took:?} for {} bytes: {}", text.len(), file.display());
        }
    }
    println!(
        "{timed} timed again, {over} over the bar; the slowest took at most {:.2} of its time: {}",
        worst.0, worst.1
    );
    if over == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
