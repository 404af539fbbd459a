//! Work that takes seconds: with progress, and a way to stop it.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

use lugbook::engine::Watch;
use tokio::sync::watch::{Receiver, Sender, channel};

use crate::refusal::Refusal;
use crate::screens::Changed;

/// Progress is told no oftener than this.
const BETWEEN: Duration = Duration::from_millis(100);

/// How far a task is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, uniffi::Record)]
pub struct TaskProgress {
    /// So many pieces are done.
    pub done: u64,
    /// Of so many; 0 until that is known.
    pub of: u64,
    /// It has ended: ask for the outcome.
    pub over: bool,
}

const BEGUN: TaskProgress = TaskProgress { done: 0, of: 0, over: false };

type Outcome = Option<Result<Changed, Refusal>>;

/// A piece of work that was started. Starting the same again is safe.
#[derive(Debug, uniffi::Object)]
pub struct LongTask {
    stopped: Arc<AtomicBool>,
    progress: Receiver<TaskProgress>,
    outcome: Receiver<Outcome>,
}

/// The working end of a task.
pub(crate) struct Working {
    stopped: Arc<AtomicBool>,
    progress: Sender<TaskProgress>,
    outcome: Sender<Outcome>,
}

impl LongTask {
    /// A task, and the end that does it.
    pub(crate) fn begin() -> (Arc<Self>, Working) {
        let stopped = Arc::new(AtomicBool::new(false));
        let (progress_in, progress) = channel(BEGUN);
        let (outcome_in, outcome) = channel(None);
        let working = Working { stopped: Arc::clone(&stopped), progress: progress_in, outcome: outcome_in };
        (Arc::new(Self { stopped, progress, outcome }), working)
    }
}

impl Working {
    /// The task has ended so.
    pub(crate) fn end(self, outcome: Result<Changed, Refusal>) {
        self.outcome.send_replace(Some(outcome));
        self.progress.send_modify(|progress| progress.over = true);
    }
}

impl Watch for Working {
    fn goes_on(&self, done: u64, of: u64) -> bool {
        self.progress.send_replace(TaskProgress { done, of, over: false });
        !self.stopped.load(Ordering::Relaxed)
    }
}

#[uniffi::export]
impl LongTask {
    /// How far it is now.
    ///
    /// # Errors
    /// None; it is a result so that a fault inside comes back as an error.
    pub fn progress(&self) -> Result<TaskProgress, Refusal> {
        Ok(*self.progress.borrow())
    }

    /// Waits until it is further, a tenth of a second at the least, and tells how far; once it is over, at once.
    ///
    /// # Errors
    /// None; it is a result so that a fault inside comes back as an error.
    pub async fn next_progress(&self) -> Result<TaskProgress, Refusal> {
        let mut progress = self.progress.clone();
        let wait = async move {
            if progress.borrow_and_update().over {
                return *progress.borrow();
            }
            tokio::time::sleep(BETWEEN).await;
            // An end that is gone has told its last.
            let _ = tokio::time::timeout(BETWEEN * 10, progress.changed()).await;
            *progress.borrow()
        };
        Ok(crate::runtime().spawn(wait).await.unwrap_or(TaskProgress { over: true, ..BEGUN }))
    }

    /// Stops it before its next piece. What was done so far changes nothing.
    ///
    /// # Errors
    /// None; it is a result so that a fault inside comes back as an error.
    pub fn cancel(&self) -> Result<(), Refusal> {
        self.stopped.store(true, Ordering::Relaxed);
        Ok(())
    }

    /// Waits for its end. Asking again gives the same.
    ///
    /// # Errors
    /// What refused it, or that it was stopped.
    pub async fn outcome(&self) -> Result<Changed, Refusal> {
        let mut outcome = self.outcome.clone();
        let ended = outcome.wait_for(Option::is_some).await.map(|ended| ended.clone());
        ended.ok().flatten().unwrap_or(Err(Refusal::Closed))
    }
}
