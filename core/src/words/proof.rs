//! What a seal proves, in words, and what it does not.

use super::{Say, Words};
use crate::proof::{CardCheck, CardFault, Device};
use crate::store::SealedStream;

fn counted(number: u64) -> usize {
    usize::try_from(number).unwrap_or(usize::MAX)
}

impl CardFault {
    /// The fault's code in data: `page-changed`, `entry-missing` …
    ///
    /// ```
    /// use lugbook::proof::CardFault;
    /// assert_eq!(CardFault::EntryMoved { line: 3 }.code(), "entry-moved");
    /// ```
    pub fn code(&self) -> &'static str {
        match self {
            Self::NoProof => "no-proof",
            Self::Unreadable => "proof-unreadable",
            Self::Newer { .. } => "newer",
            Self::PageUnsigned => "page-unsigned",
            Self::PageSignature => "page-signature",
            Self::PageChanged => "page-changed",
            Self::EntryChanged { .. } => "entry-changed",
            Self::EntryMissing { .. } => "entry-missing",
            Self::EntryMoved { .. } => "entry-moved",
            Self::EntryAdded { .. } => "entry-added",
            Self::SealSignature => "seal-signature",
            Self::SealOfAnother => "seal-of-another",
            Self::SealUnfit { .. } => "seal-unfit",
            Self::OtherDevice { .. } => "other-device",
        }
    }
}

impl Say for CardFault {
    fn say(&self, words: &Words) -> String {
        let id = format!("card-fault-{}", self.code());
        match self {
            Self::EntryChanged { line }
            | Self::EntryMissing { line }
            | Self::EntryMoved { line }
            | Self::EntryAdded { line } => words.text(&id, &[("line", line.to_string().into())]),
            Self::SealUnfit { stream, number } => {
                words.text(&id, &[("stream", stream.short().into()), ("number", number.to_string().into())])
            }
            Self::OtherDevice { device } => words.text(&id, &[("device", device.short().into())]),
            Self::Newer { version } => words.text(&id, &[("version", version.to_string().into())]),
            _ => words.text(&id, &[]),
        }
    }
}

impl Words {
    /// Where in a card's file something does not hold.
    pub fn fault_place(&self, fault: &CardFault) -> String {
        match fault {
            CardFault::EntryChanged { line }
            | CardFault::EntryMissing { line }
            | CardFault::EntryMoved { line }
            | CardFault::EntryAdded { line } => self.text("proof-at-entry", &[("line", line.to_string().into())]),
            CardFault::SealUnfit { stream, number } => {
                self.text("spot-entry", &[("stream", stream.short().into()), ("number", number.to_string().into())])
            }
            CardFault::PageUnsigned | CardFault::PageSignature | CardFault::PageChanged => {
                self.text("proof-at-page", &[])
            }
            CardFault::SealSignature | CardFault::SealOfAnother => self.text("proof-at-seal", &[]),
            CardFault::NoProof | CardFault::Unreadable | CardFault::Newer { .. } | CardFault::OtherDevice { .. } => {
                self.text("proof-at-end", &[])
            }
        }
    }

    /// What a card's file proves: nothing as soon as something in it does not hold.
    pub fn card_proven(&self, check: &CardCheck) -> Vec<String> {
        let mut proven = Vec::new();
        if !check.ok() {
            return proven;
        }
        if let Some(device) = check.page {
            proven.push(self.text("proof-page", &[("device", device.short().into())]));
            proven.push(self.text("proof-entries", &[("count", check.entries.into())]));
        }
        if let Some((device, entries)) = check.sealed {
            let args = [("device", device.short().into()), ("count", counted(entries).into())];
            proven.push(self.text("proof-sealed", &args));
        }
        proven
    }

    /// What a card's file does not prove, whatever holds in it.
    pub fn card_not_proven(&self, check: &CardCheck) -> Vec<String> {
        let mut not = Vec::new();
        if check.ok() {
            if check.sealed.is_none() {
                not.push(self.text("proof-no-seal", &[]));
            }
            if check.after > 0 {
                not.push(self.text("proof-after", &[("count", check.after.into())]));
            }
            let devices = check.page.into_iter().chain(check.sealed.map(|(device, _)| device));
            let mut devices: Vec<Device> = devices.collect();
            devices.dedup();
            not.extend(
                devices.iter().map(|device| self.text("proof-not-device", &[("device", device.short().into())])),
            );
        }
        not.extend(self.never_proven());
        not
    }

    /// What no seal proves.
    pub fn never_proven(&self) -> [String; 2] {
        [self.text("proof-not-time", &[]), self.text("proof-not-work", &[])]
    }

    /// What is proven of a stream of a book.
    pub fn stream_proven(&self, stream: &SealedStream) -> Option<String> {
        let device = stream.device.filter(|_| stream.sealed > 0)?;
        let args = [
            ("device", device.short().into()),
            ("stream", stream.stream.short().into()),
            ("count", counted(stream.sealed).into()),
        ];
        Some(self.text("proof-stream", &args))
    }

    /// What is not sealed of a stream of a book.
    pub fn stream_not_proven(&self, stream: &SealedStream) -> Option<String> {
        let rest = stream.entries.saturating_sub(stream.sealed);
        let args = [("stream", stream.stream.short().into()), ("count", counted(rest).into())];
        match (rest, stream.device) {
            (0, _) => None,
            (_, None) => Some(self.text("proof-stream-without", &args)),
            (_, Some(_)) => Some(self.text("proof-stream-rest", &args)),
        }
    }

    /// That entries are known to be missing.
    pub fn missing_not_proven(&self, missing: u64) -> Option<String> {
        (missing > 0).then(|| self.text("proof-missing", &[("count", counted(missing).into())]))
    }
}
