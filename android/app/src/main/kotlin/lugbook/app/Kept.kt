package lugbook.app

import java.io.File
import java.io.FileOutputStream
import java.io.IOException
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.channels.Channel
import kotlinx.coroutines.launch
import kotlinx.coroutines.withContext
import org.json.JSONArray
import org.json.JSONException
import org.json.JSONObject

/**
 * Where the person was, what was typed and not yet sent, and what only the shell can set.
 *
 * Held in memory for the main thread, and written whole after each keystroke by another one. A code or a
 * passphrase never comes here.
 */
class Kept(scope: CoroutineScope, private val file: () -> File) {
    private val values = HashMap<String, String>()
    private val toWrite = Channel<String>(Channel.CONFLATED)

    /** The pages that lead here, the shown one last. */
    var pages: List<Page> = emptyList()
        set(value) {
            field = value
            changed()
        }

    /** Changes that were made, and the last one of them that is on the disk. */
    private var made = 0

    @Volatile
    private var written = 0

    /** Everything is on the disk. */
    val settled: Boolean get() = written == made

    init {
        scope.launch(Dispatchers.IO) {
            for (text in toWrite) {
                val number = text.substringBefore('\n').toInt()
                try {
                    write(text.substringAfter('\n'))
                    written = number
                } catch (_: IOException) {
                    // The phone is full: what was typed is still on the screen, and is written with the next key.
                }
            }
        }
    }

    operator fun get(key: String): String? = values[key]

    /** Keeps a value; none forgets it. */
    operator fun set(key: String, value: String?) {
        val before = if (value == null) values.remove(key) else values.put(key, value)
        if (before != value) changed()
    }

    /** Forgets all that was typed under a key. */
    fun forget(under: String) {
        if (values.keys.removeAll { it.startsWith("$under#") }) changed()
    }

    /** Reads what an earlier process kept. Anything that is no whole file of ours is nothing. */
    suspend fun read() {
        val json = withContext(Dispatchers.IO) {
            try {
                JSONObject(file().readText())
            } catch (_: IOException) {
                JSONObject()
            } catch (_: JSONException) {
                JSONObject()
            }
        }
        val typed = json.optJSONObject("typed") ?: JSONObject()
        typed.keys().forEach { key -> values.putIfAbsent(key, typed.optString(key)) }
        val pages = json.optJSONArray("pages") ?: JSONArray()
        if (this.pages.isEmpty()) {
            this.pages = (0 until pages.length()).mapNotNull { pages.optJSONObject(it)?.let(Page::of) }
        }
    }

    private fun changed() {
        made += 1
        val json = JSONObject().put("typed", JSONObject(values as Map<*, *>)).put("pages", JSONArray(pages.map(Page::json)))
        toWrite.trySend("$made\n$json")
    }

    private fun write(text: String) {
        val whole = file()
        whole.parentFile?.mkdirs()
        val half = File(whole.path + ".half")
        FileOutputStream(half).use { out ->
            out.write(text.toByteArray())
            out.fd.sync()
        }
        if (!half.renameTo(whole)) throw IOException()
    }
}
