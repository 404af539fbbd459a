//! Photos, held in the file, with what they show.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use maud::{Markup, html};

use super::Sheet;
use crate::entry::{Fact, Kind};
use crate::ident::Digest;
use crate::words::capital;

impl Sheet<'_> {
    /// Every photo of this job and of the specifications it rests on, once, with its captions.
    pub(super) fn pictures(&self) -> Markup {
        let photos = self.photo_captions();
        let contents = (!photos.is_empty()).then(|| {
            html! { div class="grid" { @for (photo, captions) in &photos { (self.picture(*photo, captions)) } } }
        });
        self.section("photos", "card-photos", contents)
    }

    fn photo_captions(&self) -> Vec<(Digest, Vec<String>)> {
        let mut photos: Vec<(Digest, Vec<String>)> = Vec::new();
        let mut add = |photo: Digest, caption: String| match photos.iter_mut().find(|(known, _)| *known == photo) {
            Some((_, captions)) => captions.push(caption),
            None => photos.push((photo, vec![caption])),
        };
        for line in &self.job.lines {
            if let Some(photo) = line.fact.photo() {
                add(photo, self.caption(&line.fact));
            }
        }
        for kind in [Kind::Torque, Kind::Placard, Kind::LiftPoints, Kind::Drive, Kind::Pattern, Kind::Brakes] {
            let Some(found) = self.book.on_shelf(&self.vehicle.model, kind) else { continue };
            let only_here = |photo: &Digest| !self.job.lines.iter().any(|line| line.fact.photo() == Some(*photo));
            if let Some(photo) = found.photo.filter(only_here) {
                add(photo, capital(&self.words.kind(kind)));
            }
        }
        photos
    }

    fn caption(&self, fact: &Fact) -> String {
        match fact {
            Fact::PhotoTaken { of, at, .. } => {
                let of = self.words.photo_of(*of);
                match at {
                    Some(at) => self.say("fact-at", &[("at", self.place(*at).into()), ("said", of.into())]),
                    None => capital(&of),
                }
            }
            _ => self.words.fact(fact, &self.context()),
        }
    }

    fn picture(&self, photo: Digest, captions: &[String]) -> Markup {
        let caption = captions.join(" · ");
        html! {
            figure id={ "photo-" (photo.short()) } {
                @match (self.photos)(photo) {
                    Some(jpeg) => img src={ "data:image/jpeg;base64," (STANDARD.encode(jpeg)) } alt=(caption) {},
                    None => p class="notice" { (self.t("card-photo-missing")) },
                }
                figcaption {
                    (caption) " " span class="small" {
                        (photo.short())
                        @if !self.book.covers(photo).is_empty() { ". " (self.t("card-covered")) }
                    }
                }
            }
        }
    }

    /// A link to a photo further down.
    pub(super) fn photo_link(&self, photo: Digest) -> Markup {
        html! { a href={ "#photo-" (photo.short()) } { (self.t("card-see-photo")) } }
    }
}
