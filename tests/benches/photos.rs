//! Taking in a photo of 12 megapixels, beside libvips making the same two renditions.
//!
//! `cargo bench -p lugbook-tests --bench photos`. The reference needs Python
//! with `pyvips` and libvips (the wheels `pyvips` and `pyvips-binary` have both);
//! `LUGBOOK_PYTHON` names that Python.

use std::fs;
use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Child, ChildStdin, ChildStdout, Command, Stdio};
use std::time::{Duration, Instant};

use jpeg_encoder::{ColorType, Encoder};
use lugbook::calendar::Moment;
use lugbook::photos::{LARGE, Photos, SMALL};

const WIDTH: u16 = 4_000;
const HEIGHT: u16 = 3_000;
const ROUNDS: usize = 15;

/// libvips at its quickest: shrinking while decoding, on one core, the small rendition from the large one.
const SCRIPT: &str = r"
import sys, time
import pyvips
source, large, small = sys.argv[1:4]
wide, narrow = int(sys.argv[4]), int(sys.argv[5])
pyvips.cache_set_max(0)
for _ in sys.stdin:
    begun = time.perf_counter()
    picture = pyvips.Image.thumbnail(source, wide, height=wide, size='down').copy_memory()
    picture.write_to_file(large, Q=82, strip=True)
    picture.thumbnail_image(narrow, height=narrow).write_to_file(small, Q=82, strip=True)
    print(time.perf_counter() - begun, flush=True)
";

/// A picture with large shapes and fine grain, as a photo of rubber has.
fn picture(path: &Path) {
    let (width, height) = (usize::from(WIDTH), usize::from(HEIGHT));
    let mut seed = 7_u32;
    let mut pixels = Vec::with_capacity(width * height * 3);
    for y in 0..height {
        for x in 0..width {
            seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            let grain = (seed >> 27) as usize;
            let rings = ((x * x + y * y) / 90_000) % 60;
            let shade = 40 + rings + grain + (x / 40) % 30;
            pixels.extend([shade, shade + 6, shade + 12].map(|value| u8::try_from(value.min(255)).unwrap()));
        }
    }
    let mut bytes = Vec::new();
    Encoder::new(&mut bytes, 90).encode(&pixels, WIDTH, HEIGHT, ColorType::Rgb).unwrap();
    fs::write(path, bytes).unwrap();
}

struct Vips {
    child: Child,
    ask: ChildStdin,
    said: BufReader<ChildStdout>,
}

impl Vips {
    fn start(source: &Path, folder: &Path) -> Option<Self> {
        let python = std::env::var("LUGBOOK_PYTHON").unwrap_or_else(|_| "python3".to_owned());
        let mut child = Command::new(python)
            .args(["-c", SCRIPT])
            .arg(source)
            .args([folder.join("large.jpg"), folder.join("small.jpg")])
            .args([LARGE.to_string(), SMALL.to_string()])
            .env("VIPS_CONCURRENCY", "1")
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .ok()?;
        let (ask, said) = (child.stdin.take()?, BufReader::new(child.stdout.take()?));
        let mut vips = Self { child, ask, said };
        vips.time().map(|_| vips)
    }

    fn time(&mut self) -> Option<Duration> {
        writeln!(self.ask, "again").ok()?;
        let mut line = String::new();
        self.said.read_line(&mut line).ok()?;
        line.trim().parse().ok().map(Duration::from_secs_f64)
    }
}

fn take_in(source: &Path) -> Duration {
    let folder = tempfile::tempdir().unwrap();
    let photos = Photos::open(folder.path().join("photos")).unwrap();
    let begun = Instant::now();
    photos.intake_file(source, Moment::from_unix_ms(1_777_886_100_000)).unwrap();
    begun.elapsed()
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times[times.len() / 2]
}

/// A line of what the system says of this process's memory, in MiB.
fn memory(name: &str) -> Option<f64> {
    let status = fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix(name))?;
    line.split_whitespace().nth(1)?.parse::<f64>().ok().map(|kib| kib / 1024.0)
}

fn main() {
    // In a process of its own, so that nothing else counts.
    if let Some(source) = std::env::var_os("LUGBOOK_PHOTO") {
        let before = memory("VmRSS").unwrap_or_default();
        take_in(Path::new(&source));
        println!("{:.1}", memory("VmHWM").unwrap_or_default() - before);
        return;
    }
    // `cargo test` and `cargo clippy` run benches too; only `cargo bench` measures.
    if !std::env::args().any(|arg| arg == "--bench") {
        return;
    }
    let dir = tempfile::tempdir().unwrap();
    let source = dir.path().join("photo.jpg");
    picture(&source);
    let peak = Command::new(std::env::current_exe().unwrap()).env("LUGBOOK_PHOTO", &source).output().unwrap();
    println!("one intake takes {} MiB at its peak", String::from_utf8_lossy(&peak.stdout).trim());
    let Some(mut vips) = Vips::start(&source, dir.path()) else {
        println!("SKIPPED: libvips: this Python has no pyvips; an intake takes {:.1?}", take_in(&source));
        return;
    };
    let (mut ours, mut reference) = (Vec::new(), Vec::new());
    for _ in 0..ROUNDS {
        ours.push(take_in(&source));
        reference.extend(vips.time());
    }
    let _ = vips.child.kill();
    let _ = vips.child.wait();
    let (ours, reference) = (median(ours), median(reference));
    let ratio = ours.as_secs_f64() / reference.as_secs_f64();
    println!("12 megapixels in, two renditions: {ours:.1?} beside libvips {reference:.1?} = {ratio:.2} x");
}
