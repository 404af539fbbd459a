# What is proven of a card's file or a book.
proof-page = This page is as device { $device } wrote it.
proof-entries = { $count ->
    [0] It carries no entry.
    [one] The one entry of the job is unchanged since then.
   *[other] All { $count } entries of the job are unchanged since then.
}
proof-sealed = { $count ->
    [one] One entry is unchanged since device { $device } sealed the job at its end.
   *[other] { $count } entries are unchanged since device { $device } sealed the job at its end.
}
proof-stream = { $count ->
    [one] Stream { $stream }: its first entry is unchanged since device { $device } sealed it.
   *[other] Stream { $stream }: entries 1 to { $count } are unchanged since device { $device } sealed them.
}

# What is not proven.
proof-no-seal = The job carries no seal of its end.
proof-after = { $count ->
    [one] One entry came after the job was sealed; only the page’s signature covers it.
   *[other] { $count } entries came after the job was sealed; only the page’s signature covers them.
}
proof-not-device = Whose device { $device } is: compare it with the paper copy, or ask the shop.
proof-not-time = When it was: the times are what the device’s clock told.
proof-not-work = That a nut was really tightened: only that it was written so.
proof-stream-rest = { $count ->
    [one] Stream { $stream }: the last entry is not sealed yet.
   *[other] Stream { $stream }: the last { $count } entries are not sealed yet.
}
proof-stream-without = { $count ->
    [one] Stream { $stream }: its one entry carries no seal.
   *[other] Stream { $stream }: its { $count } entries carry no seal.
}
proof-missing = { $count ->
    [one] One entry is known to be missing.
   *[other] { $count } entries are known to be missing.
}

# Where something does not hold.
proof-at-page = the page
proof-at-entry = entry { $line } on the card
proof-at-seal = the seal
proof-at-end = the end of the file

# What does not hold in a card's file.
card-fault-no-proof = This file carries no proof: it is no HTML card of a device that seals, or it was cut. Ask for the card’s HTML file.
card-fault-proof-unreadable = The proof at the end of the file was changed or cut. Ask for the card’s HTML file again.
card-fault-newer = A newer program wrote this card (version { $version }). Update this program.
card-fault-page-unsigned = The page is not signed by the device that wrote it.
card-fault-page-signature = The signature under the page is not that of the device it names.
card-fault-page-changed = The page was changed after the device signed it.
card-fault-entry-changed = Entry { $line } was changed after the device signed it.
card-fault-entry-missing = Entry { $line } was taken out after the device signed it.
card-fault-entry-moved = Entry { $line } does not stand where it stood when the device signed it.
card-fault-entry-added = Entry { $line } was put in after the device signed it.
card-fault-seal-signature = The seal is not that of the device it names.
card-fault-seal-of-another = The seal belongs to another job.
card-fault-seal-unfit = Entry { $number } of device { $stream } is not what was sealed at the job’s end.
card-fault-other-device = Device { $device } signed this, not the one that was asked for.
