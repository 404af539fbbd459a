package lugbook.app

import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.MainScope
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext

/** What takes its time, off the main thread. */
object Off {
    private val scope = MainScope()
    private var going = 0

    /** Nothing is waited for. */
    val rests: Boolean get() = going == 0

    /** Does something off the main thread, and hands what came of it back on it. */
    fun <T> main(work: () -> T, done: (T) -> Unit) {
        going += 1
        scope.launch {
            try {
                done(withContext(Dispatchers.IO) { work() })
            } finally {
                going -= 1
            }
        }
    }
}
