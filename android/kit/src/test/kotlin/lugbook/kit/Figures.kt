package lugbook.kit

import java.io.File
import kotlinx.coroutines.runBlocking
import lugbook.core.Engine
import lugbook.core.Entered
import lugbook.core.uniffiEnsureInitialized
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder

/** What crossing costs on the JVM. No test: `tests/figures` runs it, over the release library. */
class Figures {
    @get:Rule
    val scratch = TemporaryFolder()

    private fun timed(what: String, times: Int, call: suspend (Int) -> Unit) = runBlocking {
        val took = LongArray(times) { turn ->
            val begun = System.nanoTime()
            call(turn)
            System.nanoTime() - begun
        }
        took.sort()
        val at = { share: Double -> took[(share * (times - 1)).toInt()] / 1e6 }
        println("Kotlin: %-30s %9.4f ms in the middle, %9.4f ms p95 of %d".format(what, at(0.5), at(0.95), times))
    }

    private suspend fun Engine.fillUpTo(vehicles: Int) {
        for (number in book("", ENGLISH).vehicles.size until vehicles) {
            tap(book("", ENGLISH).actions.of("add-vehicle"), "name" to "Truck $number", "model" to "Hauler 3500", "class" to "car")
        }
    }

    @Test
    fun print() = runBlocking {
        timed("library load", 1) { uniffiEnsureInitialized() }
        val book = openBook(scratch.root)
        val task = book.start("", emptyList(), ENGLISH)
        repeat(20_000) { task.progress() }
        timed("empty call", 20_000) { task.progress() }
        repeat(2_000) { book.resume(ENGLISH) }
        timed("empty call, on its own thread", 5_000) { book.resume(ENGLISH) }
        book.fill(0)
        book.fillUpTo(50)
        repeat(200) { book.book("", ENGLISH) }
        timed("screen of 50 rows", 1_000) { book.book("", ENGLISH) }
        book.tap(book.vehicle("Truck 1", ENGLISH).actions.of("open-tread-and-age-check"))
        timed("photo by path", photos.size) { turn ->
            val photo = book.bay("sidewall", "FL", ENGLISH).actions.of("photo")
            book.start(photo.token, listOf(Entered("file", photos[turn].path)), ENGLISH).outcome()
        }
        book.fillUpTo(500)
        repeat(50) { book.book("", ENGLISH) }
        timed("screen of 500 rows", 300) { book.book("", ENGLISH) }
        book.closeBook()
    }

    private val photos = File(System.getProperty("lugbook.photos", ".")).listFiles { file -> file.extension == "jpg" }!!
}
