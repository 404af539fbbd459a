package lugbook.app

import kotlinx.coroutines.CancellationException
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.launch
import lugbook.core.ActionPace
import lugbook.core.Changed
import lugbook.core.Engine
import lugbook.core.Entered
import lugbook.core.LongTask
import lugbook.core.Manner
import lugbook.core.Refusal
import lugbook.core.TaskProgress

/** A tap that is being carried out. It goes on when the screen turns, and is told to whichever window is there. */
class Work(val offered: Offered, val page: Page, private val scope: CoroutineScope) {
    private var task: LongTask? = null

    /** How far it is; none for what is done at once. */
    var progress: TaskProgress? = null
        private set

    var changed: Changed? = null
        private set

    var refusal: Refusal? = null
        private set

    /** Told at each change. */
    var told: (Work) -> Unit = {}
        set(value) {
            field = value
            value(this)
        }

    val over: Boolean get() = changed != null || refusal != null

    fun begin(engine: Engine, entered: List<Entered>, manner: Manner) {
        scope.launch {
            try {
                val token = offered.action.token
                changed = if (offered.action.pace == ActionPace.LONG) long(engine.start(token, entered, manner)) else engine.act(token, entered, manner)
            } catch (refused: Refusal) {
                refusal = refused
            } catch (left: CancellationException) {
                throw left
            }
            told(this@Work)
        }
    }

    private suspend fun long(task: LongTask): Changed {
        this.task = task
        do {
            val now = task.nextProgress()
            progress = now
            if (!now.over) told(this)
        } while (!now.over)
        return task.outcome()
    }

    fun stop() {
        task?.cancel()
    }
}
