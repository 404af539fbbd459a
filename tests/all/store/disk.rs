//! A disk that fails when it is told to, below the standard library and below SQLite.
//!
//! This program has `write`, `fsync`, `rename` and so on of its own, which the
//! linker puts before the C library's. They ask the kernel for the real thing,
//! unless the file lies in a folder for which [`fail`] or [`record`] was asked.

#![allow(unsafe_code, reason = "calls of the C library have no other form")]

use std::ffi::{CStr, OsStr, c_char, c_int, c_long, c_void};
use std::os::unix::ffi::OsStrExt;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, MutexGuard, PoisonError};

use libc::{AT_FDCWD, EIO, ENOSPC, O_CREAT, O_TMPFILE, mode_t, off_t, size_t, ssize_t};

/// What goes wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fault {
    /// One thing that changes the disk fails.
    Error,
    /// One read fails.
    Read,
    /// The disk is full from then on.
    Full,
    /// One write writes half of what it should, and the disk is full from then on.
    Short,
    /// One `fsync` of a file or folder fails.
    Sync,
    /// One rename, link or removal fails.
    Rename,
}

pub const FAULTS: [Fault; 6] = [Fault::Error, Fault::Read, Fault::Full, Fault::Short, Fault::Sync, Fault::Rename];

/// Something that was done to a disk.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Op {
    Create {
        path: PathBuf,
    },
    Write {
        path: PathBuf,
        at: u64,
        bytes: Vec<u8>,
    },
    Cut {
        path: PathBuf,
        length: u64,
    },
    Sync {
        path: PathBuf,
    },
    Rename {
        from: PathBuf,
        to: PathBuf,
    },
    Link {
        from: PathBuf,
        to: PathBuf,
    },
    Remove {
        path: PathBuf,
    },
    MakeFolder {
        path: PathBuf,
    },
    /// What the caller noted in between.
    Note {
        what: u64,
    },
}

struct Plan {
    folder: PathBuf,
    fault: Option<(Fault, usize)>,
    seen: usize,
    fired: bool,
    log: Vec<Op>,
}

static PLANS: Mutex<Vec<Plan>> = Mutex::new(Vec::new());
static PLANNED: AtomicUsize = AtomicUsize::new(0);

fn plans() -> MutexGuard<'static, Vec<Plan>> {
    PLANS.lock().unwrap_or_else(PoisonError::into_inner)
}

/// A folder whose disk fails or is recorded, until this is dropped.
pub struct Watched {
    folder: PathBuf,
}

fn watch(folder: &Path, fault: Option<(Fault, usize)>) -> Watched {
    let folder = folder.canonicalize().unwrap();
    plans().push(Plan { folder: folder.clone(), fault, seen: 0, fired: false, log: Vec::new() });
    PLANNED.fetch_add(1, Ordering::SeqCst);
    Watched { folder }
}

/// From the `at`th time on (from 1) that it can, `fault` happens in this folder.
pub fn fail(folder: &Path, fault: Fault, at: usize) -> Watched {
    watch(folder, Some((fault, at)))
}

/// Everything that is done in this folder is recorded.
pub fn record(folder: &Path) -> Watched {
    watch(folder, None)
}

impl Watched {
    /// Whether the fault happened.
    pub fn fired(&self) -> bool {
        plans().iter().any(|plan| plan.folder == self.folder && plan.fired)
    }

    /// Notes something between what is done.
    pub fn note(&self, what: u64) {
        if let Some(plan) = plans().iter_mut().find(|plan| plan.folder == self.folder) {
            plan.log.push(Op::Note { what });
        }
    }

    /// What was done so far.
    pub fn done(&self) -> Vec<Op> {
        plans().iter().find(|plan| plan.folder == self.folder).map(|plan| plan.log.clone()).unwrap_or_default()
    }
}

impl Drop for Watched {
    fn drop(&mut self) {
        plans().retain(|plan| plan.folder != self.folder);
        PLANNED.fetch_sub(1, Ordering::SeqCst);
    }
}

/// What a call does, as far as a fault is concerned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Read,
    Write,
    /// Needs room and is no write: a new file, a longer one, a new folder.
    Room,
    Sync,
    Name,
}

enum Verdict {
    Go,
    Half,
    Fail(c_int),
}

fn verdict(path: &Path, kind: Kind) -> Verdict {
    let mut plans = plans();
    let Some(plan) = plans.iter_mut().find(|plan| path.starts_with(&plan.folder)) else { return Verdict::Go };
    let Some((fault, from)) = plan.fault else { return Verdict::Go };
    let touched = match fault {
        Fault::Error => kind != Kind::Read,
        Fault::Read => kind == Kind::Read,
        Fault::Full => matches!(kind, Kind::Write | Kind::Room),
        Fault::Short => kind == Kind::Write || kind == Kind::Room && plan.fired,
        Fault::Sync => kind == Kind::Sync,
        Fault::Rename => kind == Kind::Name,
    };
    if !touched {
        return Verdict::Go;
    }
    plan.seen += 1;
    let first = plan.seen == from;
    plan.fired |= first;
    match fault {
        Fault::Short if first => Verdict::Half,
        Fault::Full | Fault::Short if plan.seen >= from => Verdict::Fail(ENOSPC),
        _ if first => Verdict::Fail(EIO),
        _ => Verdict::Go,
    }
}

fn note(path: &Path, op: impl FnOnce() -> Op) {
    if let Some(plan) = plans().iter_mut().find(|plan| path.starts_with(&plan.folder) && plan.fault.is_none()) {
        plan.log.push(op());
    }
}

fn planned() -> bool {
    PLANNED.load(Ordering::Relaxed) > 0
}

unsafe fn named(path: *const c_char) -> PathBuf {
    PathBuf::from(OsStr::from_bytes(unsafe { CStr::from_ptr(path) }.to_bytes()))
}

/// The path of an open file.
fn path_of(file: c_int) -> Option<PathBuf> {
    let mut buffer = [0_u8; 4096];
    let link = format!("/proc/self/fd/{file}\0");
    let length =
        unsafe { libc::syscall(libc::SYS_readlinkat, AT_FDCWD, link.as_ptr(), buffer.as_mut_ptr(), buffer.len()) };
    let length = usize::try_from(length).ok()?;
    Some(PathBuf::from(OsStr::from_bytes(&buffer[..length])))
}

fn failed(why: c_int) -> c_int {
    unsafe { *libc::__errno_location() = why };
    -1
}

/// Does `real` unless the disk fails, and notes it when it was done.
unsafe fn done(
    path: Option<PathBuf>,
    kind: Kind,
    op: impl FnOnce(&Path) -> Op,
    real: impl FnOnce() -> c_long,
) -> c_int {
    let Some(path) = path else { return real() as c_int };
    if let Verdict::Fail(why) = verdict(&path, kind) {
        return failed(why);
    }
    let done = real();
    if done >= 0 {
        note(&path, || op(&path));
    }
    done as c_int
}

unsafe fn opened(path: *const c_char, flags: c_int, mode: mode_t) -> c_int {
    let real = || unsafe { libc::syscall(libc::SYS_openat, AT_FDCWD, path, flags, mode) };
    let creates = flags & O_CREAT != 0 && flags & O_TMPFILE != O_TMPFILE;
    if !planned() || !creates {
        return real() as c_int;
    }
    let name = unsafe { named(path) };
    let there = unsafe { libc::syscall(libc::SYS_faccessat, AT_FDCWD, path, libc::F_OK) } == 0;
    let new = (!there).then_some(name.clone());
    let cut = there && flags & libc::O_TRUNC != 0;
    let file = unsafe { done(new, Kind::Room, |path| Op::Create { path: path.to_owned() }, real) };
    if cut && file >= 0 {
        note(&name, || Op::Cut { path: name.clone(), length: 0 });
    }
    file
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn open(path: *const c_char, flags: c_int, mode: mode_t) -> c_int {
    unsafe { opened(path, flags, mode) }
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn open64(path: *const c_char, flags: c_int, mode: mode_t) -> c_int {
    unsafe { opened(path, flags, mode) }
}

unsafe fn written(file: c_int, bytes: *const c_void, length: size_t, at: Option<off_t>) -> ssize_t {
    let real = |length: size_t| match at {
        Some(at) => unsafe { libc::syscall(libc::SYS_pwrite64, file, bytes, length, at) as ssize_t },
        None => unsafe { libc::syscall(libc::SYS_write, file, bytes, length) as ssize_t },
    };
    if !planned() {
        return real(length);
    }
    let Some(path) = path_of(file) else { return real(length) };
    let length = match verdict(&path, Kind::Write) {
        Verdict::Go => length,
        Verdict::Half => length / 2,
        Verdict::Fail(why) => return failed(why) as ssize_t,
    };
    let start = at.unwrap_or_else(|| unsafe { libc::lseek(file, 0, libc::SEEK_CUR) });
    let count = real(length);
    if let (Ok(count), Ok(start)) = (usize::try_from(count), u64::try_from(start)) {
        let bytes = || unsafe { std::slice::from_raw_parts(bytes.cast::<u8>(), count) }.to_vec();
        note(&path, || Op::Write { path: path.clone(), at: start, bytes: bytes() });
    }
    count
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn write(file: c_int, bytes: *const c_void, length: size_t) -> ssize_t {
    unsafe { written(file, bytes, length, None) }
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn pwrite(file: c_int, bytes: *const c_void, length: size_t, at: off_t) -> ssize_t {
    unsafe { written(file, bytes, length, Some(at)) }
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn pwrite64(file: c_int, bytes: *const c_void, length: size_t, at: off_t) -> ssize_t {
    unsafe { written(file, bytes, length, Some(at)) }
}

unsafe fn read_from(file: c_int, bytes: *mut c_void, length: size_t, at: Option<off_t>) -> ssize_t {
    if planned()
        && let Some(path) = path_of(file)
        && let Verdict::Fail(why) = verdict(&path, Kind::Read)
    {
        return failed(why) as ssize_t;
    }
    match at {
        Some(at) => unsafe { libc::syscall(libc::SYS_pread64, file, bytes, length, at) as ssize_t },
        None => unsafe { libc::syscall(libc::SYS_read, file, bytes, length) as ssize_t },
    }
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn read(file: c_int, bytes: *mut c_void, length: size_t) -> ssize_t {
    unsafe { read_from(file, bytes, length, None) }
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn pread(file: c_int, bytes: *mut c_void, length: size_t, at: off_t) -> ssize_t {
    unsafe { read_from(file, bytes, length, Some(at)) }
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn pread64(file: c_int, bytes: *mut c_void, length: size_t, at: off_t) -> ssize_t {
    unsafe { read_from(file, bytes, length, Some(at)) }
}

unsafe fn synced(file: c_int, call: c_long) -> c_int {
    let path = if planned() { path_of(file) } else { None };
    let op = |path: &Path| Op::Sync { path: path.to_owned() };
    unsafe { done(path, Kind::Sync, op, || libc::syscall(call, file)) }
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn fsync(file: c_int) -> c_int {
    unsafe { synced(file, libc::SYS_fsync) }
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn fdatasync(file: c_int) -> c_int {
    unsafe { synced(file, libc::SYS_fdatasync) }
}

unsafe fn cut(file: c_int, length: off_t) -> c_int {
    let path = if planned() { path_of(file) } else { None };
    let op = |path: &Path| Op::Cut { path: path.to_owned(), length: u64::try_from(length).unwrap_or_default() };
    unsafe { done(path, Kind::Room, op, || libc::syscall(libc::SYS_ftruncate, file, length)) }
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn ftruncate(file: c_int, length: off_t) -> c_int {
    unsafe { cut(file, length) }
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn ftruncate64(file: c_int, length: off_t) -> c_int {
    unsafe { cut(file, length) }
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn rename(from: *const c_char, to: *const c_char) -> c_int {
    let real = || unsafe { libc::syscall(libc::SYS_renameat2, AT_FDCWD, from, AT_FDCWD, to, 0) };
    let path = planned().then(|| unsafe { named(to) });
    let op = |to: &Path| Op::Rename { from: unsafe { named(from) }, to: to.to_owned() };
    unsafe { done(path, Kind::Name, op, real) }
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn linkat(
    from_folder: c_int,
    from: *const c_char,
    to_folder: c_int,
    to: *const c_char,
    flags: c_int,
) -> c_int {
    let real = || unsafe { libc::syscall(libc::SYS_linkat, from_folder, from, to_folder, to, flags) };
    let path = planned().then(|| unsafe { named(to) });
    let op = |to: &Path| Op::Link { from: unsafe { named(from) }, to: to.to_owned() };
    unsafe { done(path, Kind::Name, op, real) }
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn unlink(path: *const c_char) -> c_int {
    let real = || unsafe { libc::syscall(libc::SYS_unlinkat, AT_FDCWD, path, 0) };
    let name = planned().then(|| unsafe { named(path) });
    unsafe { done(name, Kind::Name, |path| Op::Remove { path: path.to_owned() }, real) }
}

/// # Safety
/// As the C library's.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn mkdir(path: *const c_char, mode: mode_t) -> c_int {
    let real = || unsafe { libc::syscall(libc::SYS_mkdirat, AT_FDCWD, path, mode) };
    let name = planned().then(|| unsafe { named(path) });
    unsafe { done(name, Kind::Room, |path| Op::MakeFolder { path: path.to_owned() }, real) }
}
