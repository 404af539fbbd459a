# What went wrong with a book: what is safe, what is missing, what to do now.
book-not-a-folder = “{ $path }” is not a folder. Name a folder for the book.
book-unreachable = “{ $path }” can't be reached. Check the path.
book-not-a-book = “{ $path }” is not a Lugbook book and was left as it is. Name another folder.
book-newer = This book was written by a newer program (version { $version }; this one knows { $known }). It was left as it is. Update this program.
book-newer-entry = The book holds an entry that only a newer program can read. Nothing was changed. Update this program.
book-not-writable = “{ $path }” can't be written, so nothing was added. Give this program the right to write there, or copy the book.
book-same-id = The id { $id } already names another entry. Nothing was added. Use a new id.
book-unwritable = Entry { $id } can't be written down. Nothing was added. Check its numbers.
book-unchained = Entry { $number } of device { $stream } does not follow the one before it. Nothing was taken in. Ask for its entries again, all of them.
book-forked = Device { $stream } tells two different entries { $number }. Nothing was taken in. Keep both copies and ask who changed one.
book-seal-unfit = The seal at entry { $number } of device { $stream } is not over the entries that are there. Nothing was taken in. Ask for its entries again, all of them.
book-resealed = Entry { $number } of device { $stream } is sealed by another device than before. Nothing was taken in. Keep both copies and ask who signed one.
book-not-a-backup = “{ $path }” is not a backup of a book. Choose another file.
book-newer-backup = This backup was written by a newer program (version { $version }; this one knows { $known }). Update this program.
book-backup-damaged = The backup “{ $path }” does not hold ({ $at }). Nothing was taken from it. Try an older backup.
book-no-backup-folder = “{ $path }” can't be reached as a folder for backups. Connect what it is on, or choose another folder.
book-backup-locked = The backup “{ $path }” is locked. Give its passphrase.
book-wrong-passphrase = That passphrase does not open “{ $path }”. Type it again, as it was when this backup was made.
book-short-passphrase = A passphrase needs at least { $least } characters. Four words that only you put together hold well.
book-no-entry = There is no entry { $id } in this book.
book-stream-in-use = The new stream { $stream } is in the book already. Nothing was changed. Open it again.

book-free-space = No space is left. Every saved entry is safe; this one was not saved. Free some space and save it again.
book-open-elsewhere = Another program has this book open. Close it there, then try again.
book-held = Another program is holding this book's file. Try again in a moment.
book-storage = The storage failed to read or write. Every saved entry is safe. Try again; if it fails again, back up to another place.
book-damaged = The book is damaged: { $problem }. Saved entries stay as they are and nothing more is written. Open the book again to bring back what holds.
book-unforeseen = Something unforeseen happened ({ $what }). Saved entries are safe. Report this.

# What a check found, as a phrase.
problem-digest = an entry's bytes have changed
problem-unreadable = an entry can't be read by this program
problem-newer-entry = an entry was written by a newer program
problem-personal = a name or number does not belong to its entry
problem-personal-gone = a name or number is gone that nobody erased
problem-row = an entry's place or time was changed
problem-chain = an entry does not follow the one before it
problem-gap = { $count ->
    [one] entry { $first } is missing
   *[other] entries { $first } to { $last } are missing
}
problem-head = the end of a device's entries is not where it was
problem-forgotten = saved entries are gone from the end: there were { $had }, there are { $has }
problem-tables = the book's tables were changed
problem-file = the file is broken inside
problem-interrupted = bringing the book back was interrupted
problem-header = the file's beginning is broken
problem-file-gone = the book's file is gone
problem-seal = a seal is not over the entries that are there
problem-other-device = a device's entries are sealed by another device
problem-at = { $problem } ({ $at })
spot-book = the whole book
spot-row = row { $row }
spot-stream = device { $stream }
spot-entry = device { $stream }, entry { $number }

# What came back from a damaged book.
rescued-found = The book was damaged: { $problem }.
rescued-safe = { $count ->
    [0] No entry could be brought back.
    [one] One entry was brought back and holds.
   *[other] { $count } entries were brought back, and each holds.
}
rescued-of = The book had { $had }.
rescued-missing = { $count ->
    [one] One entry is missing.
   *[other] { $count } entries are missing.
}
rescued-unfit = { $count ->
    [one] One entry does not fit its chain and stayed in the damaged files.
   *[other] { $count } entries do not fit their chain and stayed in the damaged files.
}
rescued-personal = { $count ->
    [one] One name or number did not come back.
   *[other] { $count } names or numbers did not come back.
}
rescued-unknown = How many it had is not known.
rescued-whole = Nothing is known to be missing.
rescued-now = The damaged files are kept in “{ $aside }”. If something is missing, take in a backup now.

# What a backup brought back.
restored = { $count ->
    [0] The book had every entry of the backup.
    [one] One entry came back from the backup.
   *[other] { $count } entries came back from the backup.
}
restored-counts = Entries before: { $before }. Entries now: { $after }.
restored-photos = { $count ->
    [one] One photo came back.
   *[other] { $count } photos came back.
}
restored-photos-missing = { $count ->
    [one] One photo of the backup does not hold and was left out. Try an older backup for it.
   *[other] { $count } photos of the backup do not hold and were left out. Try an older backup for them.
}
rescued-from-backup = The newest good backup was taken in.

# How backups stand.
backup-none = There is no backup yet. A lost phone would take this book with it.
backup-last-good = Last good backup: { $day }, { $clock } UTC, { $entries ->
    [one] 1 entry
   *[other] { $entries } entries
}, { $photos ->
    [one] 1 photo
   *[other] { $photos } photos
}, in “{ $file }”. It was read back.
backup-not-in-it = { $count ->
    [one] One entry came after it.
   *[other] { $count } entries came after it.
}
backup-into = Backups go to “{ $folder }” by themselves after changes.
backup-nowhere = No folder is chosen for backups. Choose one that outlives this device.
backup-locked = New backups are locked. Without the passphrase nobody can open them, not even you.
backup-failed = The last backup failed. { $why } Every entry is safe on this device; { $count ->
    [0] none is missing from the last good backup.
    [one] one is in no good backup yet.
   *[other] { $count } are in no good backup yet.
}
backup-note-unreadable = The note of where backups go can't be read. Choose the folder for backups again.
stopped = Stopped. Nothing was changed.
