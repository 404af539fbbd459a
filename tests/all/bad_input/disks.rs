//! Folders and disks that a book can't be kept on, and files that are no book.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::program::{Said, done, lugbook, pictures, say};
use crate::skipped::skipped;

/// Every file below a folder with its bytes.
fn bytes(folder: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let mut files = BTreeMap::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files.extend(bytes(&path));
        } else {
            files.insert(path.clone(), std::fs::read(&path).unwrap());
        }
    }
    files
}

const TRIES: &[&str] = &[
    "lugbook job --json",
    "lugbook book check --json",
    "lugbook person add 'Ilse Marwitz' --json",
    "lugbook complain words --json",
];

#[test]
fn a_strangers_file_as_book_is_refused_and_not_touched() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("letter.txt");
    std::fs::write(&file, "Dear Sir or Madam").unwrap();

    let text = folder.path().join("text");
    std::fs::create_dir(&text).unwrap();
    std::fs::write(text.join("book.db"), "Dear Sir or Madam, ".repeat(400)).unwrap();

    let foreign = folder.path().join("foreign");
    std::fs::create_dir(&foreign).unwrap();
    let database = rusqlite::Connection::open(foreign.join("book.db")).unwrap();
    database.execute_batch("create table recipes (name text); insert into recipes values ('plum cake')").unwrap();
    database.close().unwrap();

    let newer = folder.path().join("newer");
    done(&newer, "lugbook person add 'Ilse Marwitz'");
    let database = rusqlite::Connection::open(newer.join("book.db")).unwrap();
    database.pragma_update(None, "user_version", 9_999).unwrap();
    database.close().unwrap();

    let before = bytes(folder.path());
    for book in [&file, &text, &foreign, &newer] {
        for line in TRIES {
            let said = say(book, line);
            assert_eq!(said.code, Some(2), "{}: {line}: {said:?}", book.display());
            said.sentence();
            assert_eq!(said.json()["error"]["kind"], "mend-input");
        }
    }
    let after = bytes(folder.path());
    for (path, old) in &before {
        // The program may leave its own lock beside the file; the file itself stays as it was.
        assert_eq!(after.get(path), Some(old), "{}", path.display());
    }
}

#[test]
fn a_book_that_is_not_there_is_not_made_by_a_question() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("nowhere");
    for line in TRIES.iter().filter(|line| !line.contains("person add")) {
        let said = say(&book, line);
        assert_eq!(said.code, Some(2), "{line}: {said:?}");
        assert!(said.sentence().contains("There is no book in"), "{said:?}");
    }
    assert!(!book.exists());
}

#[test]
fn a_damaged_entry_is_told_with_exit_code_4() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    done(&book, "lugbook person add 'Ilse Marwitz'");
    done(&book, "lugbook vehicle add 'Red coupe' --model 'Lerche 30, 2018' --own");
    done(&book, "lugbook job open 'Red coupe' rotation-on-a-lift air");
    done(&book, &format!("lugbook photo sidewall {} FL", pictures().join("sidewall-front-left.jpg").display()));
    let originals = book.join("photos/originals");
    let photo = bytes(&originals).into_keys().next().unwrap();
    let mut flipped = std::fs::read(&photo).unwrap();
    let middle = flipped.len() / 2;
    flipped[middle] ^= 1;
    std::fs::write(&photo, flipped).unwrap();
    let check = say(&book, "lugbook book check --json");
    assert_eq!(check.code, Some(4), "{check:?}");
    let view = check.json();
    assert_eq!(view["ok"], false);
    let problem = &view["problems"][0];
    assert!(problem["kind"].is_string() && problem["sentence"].is_string() && problem["at"].is_string(), "{view}");
}

/// Runs a script in a mount namespace of its own; none, with the reason, where that can't be had.
fn in_namespace(script: &str, reason: &str) -> Option<Said> {
    let probe = Command::new("unshare").args(["--mount", "sh", "-c", "mount -t tmpfs none /mnt"]).output();
    if !probe.is_ok_and(|probe| probe.status.success()) {
        skipped(reason);
        return None;
    }
    let output = Command::new("unshare")
        .args(["--mount", "sh", "-c", script])
        .env("LUGBOOK", lugbook())
        .env_remove("LUGBOOK_AS")
        .output()
        .expect("the script runs");
    Some(output.into())
}

#[test]
fn a_folder_that_can_only_be_read_can_be_read_and_takes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    done(&book, "lugbook person add 'Ilse Marwitz'");
    done(&book, "lugbook vehicle add 'Red coupe' --model 'Lerche 30, 2018' --own");
    done(&book, "lugbook job open 'Red coupe' rotation-on-a-lift air");
    let before = bytes(&book);
    let script = format!(
        r#"set -e
mount --bind '{0}' '{0}'
mount -o remount,ro,bind '{0}'
export LUGBOOK_BOOK='{0}'
set +e
"$LUGBOOK" job --json > /dev/null; echo "job $?"
"$LUGBOOK" book check --json > /dev/null; echo "check $?"
"$LUGBOOK" complain words --json; echo "complain $?"
"$LUGBOOK" photo placard '{1}' --json; echo "photo $?"
LUGBOOK_BOOK='{0}/new' "$LUGBOOK" person add 'Ilse Marwitz' --json; echo "new $?"
"#,
        book.display(),
        pictures().join("placard.jpg").display(),
    );
    let Some(said) = in_namespace(&script, "a read-only folder: no mount namespace can be made here") else { return };
    for answer in ["job 0", "check 0", "complain 2", "photo 2", "new 2"] {
        assert!(said.out.lines().any(|line| line == answer), "{answer}: {said:#?}");
    }
    assert_eq!(said.err.lines().count(), 3, "one sentence each: {said:#?}");
    assert_eq!(bytes(&book), before);
}

#[test]
fn a_disk_that_fills_up_is_told_and_keeps_what_was_acknowledged() {
    let script = format!(
        r#"set -e
mount -t tmpfs -o size=1m none /mnt
export LUGBOOK_BOOK=/mnt/book
"$LUGBOOK" person add 'Ilse Marwitz' --json > /dev/null
"$LUGBOOK" vehicle add 'Red coupe' --model 'Lerche 30, 2018' --own --json > /dev/null
"$LUGBOOK" job open 'Red coupe' rotation-on-a-lift air --json > /dev/null
set +e
try() {{
  "$LUGBOOK" "$@" --json > /tmp/lugbook-full.$$ 2> /tmp/lugbook-full-err.$$; code=$?
  [ $code -eq 0 ] || echo "full $1 $code $(wc -l < /tmp/lugbook-full-err.$$) $(cat /tmp/lugbook-full.$$)"
  return $code
}}
for picture in '{0}'/*.jpg; do
  try photo sidewall "$picture" || break
done
# What is left but for some pages.
dd if=/dev/zero of=/mnt/rest bs=1k count=$(($(df -k --output=avail /mnt | tail -n 1) - 48)) 2> /dev/null
said=0
for n in $(seq 200); do
  try complain "number $n of many complaints $(printf %0400d 7)" || break
  said=$((said + 1))
done
rm -f /tmp/lugbook-full.$$ /tmp/lugbook-full-err.$$
echo "said $said"
"$LUGBOOK" book check --json; echo "check $?"
echo "kept $("$LUGBOOK" job log --json | grep -o 'of many complaints' | wc -l)"
dd if=/dev/zero of=/mnt/full bs=1k 2> /dev/null
LUGBOOK_BOOK=/mnt/new "$LUGBOOK" person add 'Ilse Marwitz' --json; echo "new $?"
"#,
        pictures().display(),
    );
    let Some(said) = in_namespace(&script, "a full disk: no mount namespace can be made here") else { return };
    let full: Vec<_> = said.out.lines().filter(|line| line.starts_with("full ")).collect();
    let complaint = full.iter().find(|line| line.starts_with("full complain")).unwrap_or_else(|| panic!("{said:#?}"));
    assert!(full.iter().any(|line| line.starts_with("full photo 4 1")), "{said:#?}");
    assert!(complaint.starts_with("full complain 4 1") && complaint.contains("free-space"), "{said:#?}");
    let number = |name: &str| said.out.lines().find_map(|line| line.strip_prefix(name)).map(str::to_owned);
    assert_eq!(number("said "), number("kept "), "{said:#?}");
    assert_eq!(number("check "), Some("0".to_owned()), "{said:#?}");
    assert_eq!(number("new "), Some("4".to_owned()), "{said:#?}");
}
