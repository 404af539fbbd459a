//! States as shape and word: a person who sees no color, or a gray print, reads the same.

use maud::{Markup, html};

use super::Sheet;
use crate::finding::State;
use crate::logbook::Status;

impl Sheet<'_> {
    /// A state's shape and word.
    pub(super) fn state(&self, state: State) -> Markup {
        html! {
            span class={ "state state-" (state.code()) } {
                svg class="shape" viewBox="0 0 20 20" aria-hidden="true" { (shape(state)) }
                (self.words.state(state))
            }
        }
    }

    /// How the job stands: shape and word.
    pub(super) fn status(&self) -> Markup {
        html! {
            span class="status" {
                svg class="shape" viewBox="0 0 20 20" aria-hidden="true" { (status_shape(self.job.status)) }
                (self.words.status(self.job.status))
            }
        }
    }
}

/// Sound a ring, watch an eye, at limit a bar through a ring, below limit an
/// arrow down, unsafe a crossed-out square.
fn shape(state: State) -> Markup {
    html! {
        @match state {
            State::Sound => circle cx="10" cy="10" r="7" class="line" {},
            State::Watch => {
                path d="M2 10 Q10 2 18 10 Q10 18 2 10 Z" class="line" {}
                circle cx="10" cy="10" r="2.6" class="solid" {}
            },
            State::AtLimit => {
                circle cx="10" cy="10" r="7" class="line" {}
                path d="M1 10 H19" class="line" {}
            },
            State::BelowLimit => {
                path d="M2 4 H18" class="line" {}
                path d="M10 7 V12" class="line" {}
                path d="M4 11 H16 L10 19 Z" class="solid" {}
            },
            State::Unsafe => {
                rect x="1" y="1" width="18" height="18" rx="2" class="solid" {}
                path d="M5 5 L15 15 M15 5 L5 15" class="cut" {}
            },
        }
    }
}

fn status_shape(status: Status) -> Markup {
    html! {
        @match status {
            Status::Open => circle cx="10" cy="10" r="7" class="line" {},
            Status::Parked => path d="M6 3 V17 M14 3 V17" class="line" {},
            Status::Signed => path d="M3 11 L8 16 L17 4" class="line" {},
            Status::Closed => path d="M4 4 H16 V16 H4 Z M4 16 L16 4" class="line" {},
        }
    }
}
