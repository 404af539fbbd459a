//! The tables, and how an older book comes to have those of today.

use std::fs::File;
use std::path::Path;

use rusqlite::config::DbConfig;
use rusqlite::{Connection, OpenFlags, TransactionBehavior};

use super::error::StoreError;
use super::folder::{APPLICATION, BEFORE, Folder};
use super::problem::{Problem, ProblemKind, Spot};
use crate::calendar::Moment;

/// What each version adds to the one before; the first makes a new book.
pub(super) const STEPS: &[&str] =
    &[include_str!("schema/1.sql"), include_str!("schema/2.sql"), include_str!("schema/3.sql")];

/// The version of the book that this build writes, and the newest it reads.
///
/// ```
/// assert_eq!(lugbook::store::VERSION, 3);
/// ```
pub const VERSION: u32 = 3;

/// The oldest SQLite that may write a book: earlier ones can lose a log that
/// is reset while another connection checkpoints.
const OLDEST_SQLITE: i32 = 3_051_003;

/// Refuses an SQLite that is too old.
pub(super) fn sound_sqlite() -> Result<(), StoreError> {
    if rusqlite::version_number() >= OLDEST_SQLITE {
        Ok(())
    } else {
        Err(StoreError::report(format!("SQLite {} is too old", rusqlite::version())))
    }
}

/// The connection that writes.
pub(super) fn writing(path: &Path) -> rusqlite::Result<Connection> {
    let conn = Connection::open_with_flags(path, OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX)?;
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_DEFENSIVE, true)?;
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_TRUSTED_SCHEMA, false)?;
    conn.busy_timeout(std::time::Duration::from_secs(2))?;
    conn.execute_batch(
        "PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA recursive_triggers = ON;
         PRAGMA cell_size_check = ON; PRAGMA secure_delete = ON;",
    )?;
    Ok(conn)
}

/// A connection that only reads. `alone` is for a folder that can't be written
/// and has no log: nobody can change the file then.
pub(super) fn reading(path: &Path, alone: bool) -> rusqlite::Result<Connection> {
    let flags = OpenFlags::SQLITE_OPEN_READ_ONLY | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let conn = if alone {
        let mut uri = String::from("file:");
        for byte in path.as_os_str().as_encoded_bytes() {
            match byte {
                b'/' | b'.' | b'-' | b'_' => uri.push(char::from(*byte)),
                _ if byte.is_ascii_alphanumeric() => uri.push(char::from(*byte)),
                _ => uri.push_str(&format!("%{byte:02x}")),
            }
        }
        uri.push_str("?immutable=1");
        Connection::open_with_flags(uri, flags | OpenFlags::SQLITE_OPEN_URI)?
    } else {
        Connection::open_with_flags(path, flags)?
    };
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_TRUSTED_SCHEMA, false)?;
    conn.busy_timeout(std::time::Duration::from_secs(2))?;
    conn.execute_batch("PRAGMA query_only = ON; PRAGMA cell_size_check = ON;")?;
    Ok(conn)
}

/// Makes an empty database with the tables of today at `path`, outside the log.
pub(super) fn create(path: &Path) -> rusqlite::Result<Connection> {
    let conn = Connection::open_with_flags(
        path,
        OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_CREATE | OpenFlags::SQLITE_OPEN_NO_MUTEX,
    )?;
    conn.execute_batch("PRAGMA synchronous = FULL; PRAGMA secure_delete = ON; BEGIN IMMEDIATE;")?;
    conn.pragma_update(None, "application_id", APPLICATION)?;
    for step in STEPS {
        conn.execute_batch(step)?;
    }
    conn.pragma_update(None, "user_version", VERSION)?;
    conn.execute_batch("COMMIT;")?;
    Ok(conn)
}

/// The version of an open book.
pub(super) fn version(conn: &Connection) -> rusqlite::Result<u32> {
    conn.query_row("PRAGMA user_version", [], |row| row.get(0))
}

/// The stored text of every table, index and trigger.
pub(super) fn tables(conn: &Connection) -> rusqlite::Result<Vec<(String, String, Option<String>)>> {
    let mut stmt = conn.prepare("SELECT type, name, sql FROM sqlite_schema ORDER BY type, name")?;
    let rows = stmt.query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?;
    rows.collect()
}

/// Whether the tables are those that `steps` make.
pub(super) fn tables_hold(conn: &Connection, steps: &[&str]) -> rusqlite::Result<bool> {
    let fresh = Connection::open_in_memory()?;
    for step in steps {
        fresh.execute_batch(step)?;
    }
    Ok(tables(conn)? == tables(&fresh)?)
}

/// Brings an older book to the tables of today, in one transaction, with a
/// whole copy of the older one beside it first. Gives back the version it had,
/// when it was older.
pub(super) fn migrate(
    conn: &mut Connection,
    folder: &Folder,
    now: Moment,
    steps: &[&str],
) -> Result<Option<u32>, StoreError> {
    let fault = |why: rusqlite::Error| StoreError::database(&why, folder.path());
    let had = version(conn).map_err(fault)?;
    let tables = Problem { kind: ProblemKind::Tables, at: Spot::Book };
    let done = usize::try_from(had).unwrap_or(usize::MAX);
    let (Some(old), Some(new)) = (steps.get(..done), steps.get(done..)) else {
        return Err(StoreError::Restore { problem: tables });
    };
    if old.is_empty() || !tables_hold(conn, old).map_err(fault)? {
        return Err(StoreError::Restore { problem: tables });
    }
    if new.is_empty() {
        return Ok(None);
    }
    let copy = folder.dated(&format!("{BEFORE}{had}"), now, ".db");
    conn.execute("VACUUM INTO ?1", [copy.to_string_lossy()]).map_err(fault)?;
    File::open(&copy).and_then(|file| file.sync_all()).map_err(|why| StoreError::io(&why, &copy))?;
    folder.sync()?;
    let transaction = conn.transaction_with_behavior(TransactionBehavior::Immediate).map_err(fault)?;
    for step in new {
        transaction.execute_batch(step).map_err(fault)?;
    }
    let reached = u32::try_from(steps.len()).unwrap_or(u32::MAX);
    transaction.pragma_update(None, "user_version", reached).map_err(fault)?;
    transaction.commit().map_err(fault)?;
    // The version must stand in the file itself, where the next program looks for it.
    conn.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |_| Ok(())).map_err(fault)?;
    Ok(Some(had))
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::*;
    use crate::store::{Opening, Store};

    /// A step that a later version could bring, and one that fails half-way.
    const LATER: &[&str] =
        &[STEPS[0], STEPS[1], STEPS[2], "CREATE TABLE later (what TEXT) STRICT; INSERT INTO later VALUES ('new');"];
    const FAILING: &[&str] =
        &[STEPS[0], STEPS[1], STEPS[2], "CREATE TABLE later (what TEXT) STRICT; INSERT INTO nowhere VALUES (1);"];

    fn now() -> Moment {
        Moment::from_unix_ms(1_777_886_100_000)
    }

    /// A folder with a closed book.
    fn book(name: &str) -> Folder {
        let path = std::env::temp_dir().join(format!("lugbook-schema-{name}-{}", std::process::id()));
        let _ = fs::remove_dir_all(&path);
        let stream = crate::ident::StreamId::from_parts(1, [1; 10]);
        let (store, _) = Store::open(&path, Opening { stream, now: now() }).unwrap();
        store.close().unwrap();
        Folder::new(&path)
    }

    fn copies(folder: &Folder) -> Vec<std::path::PathBuf> {
        let names = fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().path());
        names.filter(|path| path.to_string_lossy().contains(&format!("{BEFORE}{VERSION}"))).collect()
    }

    #[test]
    fn a_migration_keeps_a_whole_copy_of_the_older_book_and_gives_the_tables_of_a_fresh_one() {
        let folder = book("later");
        let mut conn = writing(&folder.book()).unwrap();
        assert_eq!(migrate(&mut conn, &folder, now(), STEPS), Ok(None));
        assert_eq!(copies(&folder).len(), 0);
        assert_eq!(migrate(&mut conn, &folder, now(), LATER), Ok(Some(VERSION)));
        assert!(tables_hold(&conn, LATER).unwrap());
        assert_eq!(version(&conn).unwrap(), VERSION + 1);
        // The version stands in the file itself.
        assert_eq!(fs::read(folder.book()).unwrap()[60..64], (VERSION + 1).to_be_bytes());
        assert_eq!(migrate(&mut conn, &folder, now(), LATER), Ok(None));
        let copies = copies(&folder);
        assert_eq!(copies.len(), 1);
        let copy = reading(&copies[0], false).unwrap();
        assert!(tables_hold(&copy, STEPS).unwrap());
        assert_eq!(version(&copy).unwrap(), VERSION);
        fs::remove_dir_all(folder.path()).unwrap();
    }

    #[test]
    fn a_migration_that_fails_leaves_the_older_book() {
        let folder = book("failing");
        let mut conn = writing(&folder.book()).unwrap();
        assert!(migrate(&mut conn, &folder, now(), FAILING).is_err());
        assert_eq!(version(&conn).unwrap(), VERSION);
        assert!(tables_hold(&conn, STEPS).unwrap());
        drop(conn);
        let opening = Opening { stream: crate::ident::StreamId::from_parts(2, [2; 10]), now: now() };
        let (store, opened) = Store::open(folder.path(), opening).unwrap();
        assert_eq!(opened.rescued, None);
        assert!(store.check().unwrap().ok());
        drop(store);
        fs::remove_dir_all(folder.path()).unwrap();
    }

    #[test]
    fn tables_that_somebody_changed_are_damage_and_not_migrated() {
        let folder = book("changed");
        let mut conn = writing(&folder.book()).unwrap();
        conn.execute_batch("DROP TRIGGER entry_stays").unwrap();
        let problem = Problem { kind: ProblemKind::Tables, at: Spot::Book };
        assert_eq!(migrate(&mut conn, &folder, now(), LATER), Err(StoreError::Restore { problem }));
        assert_eq!(version(&conn).unwrap(), VERSION);
        assert_eq!(copies(&folder).len(), 0);
        drop(conn);
        fs::remove_dir_all(folder.path()).unwrap();
    }

    #[test]
    fn the_version_counts_the_steps() {
        assert_eq!(usize::try_from(VERSION), Ok(STEPS.len()));
    }
}
