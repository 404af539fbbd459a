//! The device's key: a file of its own, for its owner only, away from the book.
//!
//! It stands in the state folder (`$XDG_STATE_HOME`, or `~/.local/state`), which the
//! XDG Base Directory Specification sets apart for what is not to be carried to another
//! machine. So no backup and no copy of a book takes the key along.

use std::fs::{self, DirBuilder, File, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use lugbook::calendar::Moment;
use lugbook::engine::{Host, SystemHost};
use lugbook::proof::DeviceKey;

use crate::options::named;
use crate::tongue::say;

/// What the file begins with.
const HEAD: &str = "lugbook device key 1\n";

/// The machine that the terminal runs on, with its key.
#[derive(Debug, Clone, Copy)]
pub struct Machine(pub SystemHost);

impl Host for Machine {
    fn now(&self) -> Moment {
        self.0.now()
    }

    fn random(&self) -> [u8; 10] {
        self.0.random()
    }

    fn device_key(&self) -> Option<DeviceKey> {
        let path = place()?;
        match kept(&path) {
            Ok(secret) => Some(DeviceKey::from_secret(secret)),
            Err(why) => {
                // The work goes on: cards say that they are not sealed.
                eprintln!("{}", say("no-key", &[("name", named(&path).into()), ("why", why.to_string().into())]));
                None
            }
        }
    }
}

/// Where the key stands; nowhere without a home.
fn place() -> Option<PathBuf> {
    let state = std::env::var_os("XDG_STATE_HOME").map(PathBuf::from).filter(|path| path.is_absolute());
    let home = || std::env::var_os("HOME").map(|home| Path::new(&home).join(".local/state"));
    Some(state.or_else(home)?.join("lugbook/device.key"))
}

/// The secret in the file; made when there is none.
fn kept(path: &Path) -> io::Result<[u8; 32]> {
    match fs::read_to_string(path) {
        Ok(text) => {
            keep_to_owner(path)?;
            read(&text).ok_or_else(|| io::Error::new(io::ErrorKind::InvalidData, say("key-damaged", &[])))
        }
        Err(why) if why.kind() == io::ErrorKind::NotFound => make(path),
        Err(why) => Err(why),
    }
}

fn read(text: &str) -> Option<[u8; 32]> {
    let digits = text.strip_prefix(HEAD)?.strip_suffix('\n')?.as_bytes();
    let pairs: Option<Vec<u8>> = digits
        .chunks(2)
        .map(|pair| u8::from_str_radix(std::str::from_utf8(pair).ok().filter(|pair| pair.len() == 2)?, 16).ok())
        .collect();
    pairs?.try_into().ok()
}

/// Makes the key under another name, and gives it its name unless another program was first.
fn make(path: &Path) -> io::Result<[u8; 32]> {
    let mut secret = [0; 32];
    getrandom::fill(&mut secret).map_err(|why| io::Error::other(why.to_string()))?;
    let folder = path.parent().unwrap_or(Path::new("."));
    let mut builder = DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(folder)?;
    let part = path.with_extension(format!("{}.part", std::process::id()));
    let mut options = OpenOptions::new();
    options.write(true).create(true).truncate(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let digits: String = secret.iter().map(|byte| format!("{byte:02x}")).collect();
    let written = options
        .open(&part)
        .and_then(|mut file| file.write_all(format!("{HEAD}{digits}\n").as_bytes()).and_then(|()| file.sync_all()))
        .and_then(|()| fs::hard_link(&part, path));
    let removed = fs::remove_file(&part);
    match written {
        Ok(()) => {
            removed?;
            #[cfg(unix)]
            File::open(folder)?.sync_all()?;
            Ok(secret)
        }
        Err(why) if why.kind() == io::ErrorKind::AlreadyExists => kept(path),
        Err(why) => Err(why),
    }
}

/// A key that others could read is closed to them.
fn keep_to_owner(path: &Path) -> io::Result<()> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        if fs::metadata(path)?.permissions().mode() & 0o077 != 0 {
            fs::set_permissions(path, fs::Permissions::from_mode(0o600))?;
        }
    }
    Ok(())
}
