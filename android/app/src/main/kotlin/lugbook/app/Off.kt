package lugbook.app

import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.MainScope
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext

/** What takes its time, off the main thread. */
object Off {
    private val scope = MainScope()

    /** Does something off the main thread, and hands what came of it back on it. */
    fun <T> main(work: () -> T, done: (T) -> Unit) {
        scope.launch { done(withContext(Dispatchers.IO) { work() }) }
    }
}
