//! Folders that are not what they should be.

use std::fs;
use std::os::unix::fs::PermissionsExt;

use lugbook::store::{Again, Mend, StoreError, VERSION};
use rusqlite::Connection;
use tempfile::tempdir;

use super::{at, book, draft, open};

fn mend(result: Result<impl std::fmt::Debug, StoreError>) -> Mend {
    match result.unwrap_err() {
        StoreError::MendInput { why } => why,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_new_folder_belongs_to_its_owner_only() {
    let dir = tempdir().unwrap();
    let folder = dir.path().join("a").join("book");
    book(&folder, 1);
    assert_eq!(fs::metadata(&folder).unwrap().permissions().mode() & 0o777, 0o700);
    assert_eq!(fs::metadata(folder.join("book.db")).unwrap().permissions().mode() & 0o777, 0o600);
}

#[test]
fn a_strangers_file_is_refused_untouched() {
    let foreign = tempdir().unwrap();
    let database = foreign.path().join("foreign.db");
    Connection::open(&database).unwrap().execute_batch("CREATE TABLE shopping (what TEXT)").unwrap();
    let contents = [b"grocery list".to_vec(), Vec::new(), fs::read(&database).unwrap(), vec![0; 8192]];
    for content in contents {
        let dir = tempdir().unwrap();
        let path = dir.path().join("book.db");
        fs::write(&path, &content).unwrap();
        assert_eq!(mend(open(dir.path())), Mend::NotABook { path: path.clone() });
        assert_eq!(fs::read(&path).unwrap(), content);
        assert_eq!(fs::read_dir(dir.path()).unwrap().count(), 1, "nothing is left beside it");
    }
}

#[test]
fn a_newer_book_is_refused_untouched() {
    let dir = tempdir().unwrap();
    book(dir.path(), 2);
    let path = dir.path().join("book.db");
    Connection::open(&path).unwrap().pragma_update(None, "user_version", VERSION + 1).unwrap();
    let before = fs::read(&path).unwrap();
    assert_eq!(mend(open(dir.path())), Mend::Newer { version: VERSION + 1, known: VERSION });
    assert_eq!(fs::read(&path).unwrap(), before);
}

#[test]
fn a_newer_version_that_stands_only_in_the_log_is_refused_untouched() {
    let dir = tempdir().unwrap();
    book(dir.path(), 2);
    let newer = tempdir().unwrap();
    let conn = Connection::open(dir.path().join("book.db")).unwrap();
    conn.pragma_update(None, "user_version", VERSION + 1).unwrap();
    for name in ["book.db", "book.db-wal", "book.seen"] {
        fs::copy(dir.path().join(name), newer.path().join(name)).unwrap();
    }
    drop(conn);
    let files = || ["book.db", "book.db-wal"].map(|name| fs::read(newer.path().join(name)).unwrap());
    let before = files();
    assert_eq!(before[0][60..64], VERSION.to_be_bytes());
    assert_eq!(mend(open(newer.path())), Mend::Newer { version: VERSION + 1, known: VERSION });
    assert_eq!(files(), before);
}

#[test]
fn a_path_that_is_no_folder_is_told() {
    let dir = tempdir().unwrap();
    let file = dir.path().join("notes.txt");
    fs::write(&file, "x").unwrap();
    assert_eq!(mend(open(&file)), Mend::NotAFolder { path: file.clone() });
    let below = file.join("book");
    assert_eq!(mend(open(&below)), Mend::NotAFolder { path: below.clone() });
}

#[test]
fn a_folder_with_other_things_in_it_keeps_its_permissions() {
    let dir = tempdir().unwrap();
    fs::write(dir.path().join("notes.txt"), "x").unwrap();
    fs::set_permissions(dir.path(), fs::Permissions::from_mode(0o755)).unwrap();
    book(dir.path(), 1);
    assert_eq!(fs::metadata(dir.path()).unwrap().permissions().mode() & 0o777, 0o755);
}

#[test]
fn the_second_to_open_a_book_is_told() {
    let dir = tempdir().unwrap();
    let (first, _) = open(dir.path()).unwrap();
    assert_eq!(open(dir.path()).unwrap_err(), StoreError::TryAgain { why: Again::OpenElsewhere });
    first.append(vec![draft(1)], at(1)).unwrap();
    first.close().unwrap();
    open(dir.path()).unwrap();
}
