package lugbook.kit

import java.awt.image.BufferedImage
import java.io.File
import java.util.concurrent.Callable
import java.util.concurrent.Executors
import javax.imageio.ImageIO
import kotlinx.coroutines.runBlocking
import lugbook.core.Engine
import lugbook.core.Entered
import lugbook.core.PhoneHost
import lugbook.core.Refusal
import lugbook.core.TextOnTile
import lugbook.core.TextReader
import lugbook.core.TextTile
import org.junit.Assert.assertEquals
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder

/** What holds of the boundary itself, whatever crosses it. */
class BoundaryTest {
    @get:Rule
    val scratch = TemporaryFolder()

    /** With an open book that is closed at the end. */
    private fun withBook(check: suspend (Engine) -> Unit) = runBlocking {
        openBook(scratch.root).use { book ->
            check(book)
            book.closeBook()
        }
    }

    private inline fun <reified T : Refusal> refused(call: () -> Any?): T {
        val answer =
            try {
                call()
            } catch (refusal: Refusal) {
                return refusal as? T ?: throw AssertionError("another refusal", refusal)
            }
        throw AssertionError("it is not refused: $answer")
    }

    @Test
    fun aNewBookIsEmpty() = withBook { book ->
        assertEquals(0, book.book("", ENGLISH).vehicles.size)
        assertTrue(!book.firstRun(ENGLISH).over)
    }

    @Test
    fun aRefusalHasItsKindAndItsSentence() = withBook { book ->
        assertEquals("There is no such job.", refused<Refusal.MendInput> { book.card(3u, ENGLISH) }.sentence)
    }

    @Test
    fun oneProgramWritesABook() = withBook {
        refused<Refusal.TryAgain> { openBook(scratch.root) }
    }

    @Test
    fun aTapIsTakenOnce() = withBook { book ->
        val add = book.firstRun(ENGLISH).actions.of("add-person")
        assertEquals(1, book.tap(add, "name" to "Sam", "role" to "mechanic").entries.size)
        refused<Refusal.MendInput> { book.tap(add, "name" to "Sam", "role" to "mechanic") }
    }

    @Test
    fun aClosedBookSaysSo() = withBook { book ->
        val actions = book.firstRun(ENGLISH).actions
        book.closeBook()
        book.closeBook()
        refused<Refusal.Closed> { book.book("", ENGLISH) }
        refused<Refusal.Closed> { book.tap(actions.of("add-person"), "name" to "Sam", "role" to "mechanic") }
        refused<Refusal.Closed> { book.pause(ENGLISH) }
        refused<Refusal.Closed> { book.resume(ENGLISH) }
        refused<Refusal.Closed> { book.start(actions.of("add-person").token, emptyList(), ENGLISH).outcome() }
    }

    @Test
    fun aDestroyedBookIsAnErrorAndNoCrash() {
        val book = runBlocking { openBook(scratch.root) }
        book.destroy()
        assertThrows(IllegalStateException::class.java) { runBlocking { book.book("", ENGLISH) } }
    }

    @Test
    fun aPausedBookIsOpenedByTheNextCall() = withBook { book ->
        book.fill(1)
        book.pause(ENGLISH)
        assertEquals(1, book.book("", ENGLISH).vehicles.size)
    }

    @Test
    fun twoThreadsMayAskAndTapAtOnce() = withBook { book ->
        book.fill(0)
        val threads = Executors.newFixedThreadPool(2)
        val work = { name: String ->
            Callable {
                runBlocking {
                    (1..20).count { number ->
                        val add = book.book("", ENGLISH).actions.of("add-vehicle")
                        try {
                            book.tap(add, "name" to "$name $number", "model" to "Hauler 3500", "class" to "car")
                            true
                        } catch (other: Refusal.MendInput) {
                            // The other thread was first: this screen was no longer true.
                            false
                        }
                    }
                }
            }
        }
        val taken = threads.invokeAll(listOf(work("Left"), work("Right"))).map { it.get() }
        threads.shutdown()
        assertTrue("$taken", taken.sum() >= 20)
        assertEquals(taken.sum(), book.book("", ENGLISH).vehicles.size)
    }

    @Test
    fun noWorkIsDoneOnTheCallersThread() = runBlocking {
        val threads = mutableSetOf<String>()
        val phone = object : PhoneHost by SteadyPhone(1_790_000_000_000) {
            private val steady = SteadyPhone(1_790_000_000_000)

            override fun clockMs(): Long {
                synchronized(threads) { threads += Thread.currentThread().name }
                return steady.clockMs()
            }
        }
        Engine.open(scratch.root.path, phone, ENGLISH).use { it.fill(1) }
        assertTrue(threads.isNotEmpty())
        assertTrue("$threads", Thread.currentThread().name !in threads)
    }

    @Test
    fun aHostThatThrowsIsARefusalAndTheBookIsWhole() = runBlocking {
        var broken = false
        val steady = SteadyPhone(1_790_000_000_000)
        val phone = object : PhoneHost by steady {
            override fun random(): ByteArray = if (broken) throw IllegalStateException("no random") else steady.random()
        }
        Engine.open(scratch.root.path, phone, ENGLISH).use { book ->
            book.fill(1)
            broken = true
            val add = book.book("", ENGLISH).actions.of("add-vehicle")
            refused<Refusal.Report> { book.tap(add, "name" to "Second", "model" to "Hauler 3500", "class" to "car") }
            broken = false
            assertEquals(1, book.book("", ENGLISH).vehicles.size)
            book.tap(book.book("", ENGLISH).actions.of("add-vehicle"), "name" to "Second", "model" to "Hauler 3500", "class" to "car")
            assertEquals(2, book.book("", ENGLISH).vehicles.size)
            book.closeBook()
        }
    }

    @Test
    fun aReaderOfThePhonesOwnReadsPhotos() = withBook { book ->
        book.fill(1)
        book.tap(book.vehicle("Truck 1", ENGLISH).actions.of("open-tread-and-age-check"))
        val picture = File(scratch.root, "wall.png")
        check(ImageIO.write(BufferedImage(640, 200, BufferedImage.TYPE_BYTE_GRAY), "png", picture))
        val photo = book.bay("sidewall-photo", "FL", ENGLISH).actions.of("photo")
        book.start(photo.token, listOf(Entered("file", picture.path)), ENGLISH).outcome()
        book.readBy(
            object : TextReader {
                private var tiles = 0

                override fun name() = "phone reader 3"

                override fun read(tile: TextTile): List<TextOnTile> {
                    assertEquals((tile.width * tile.height).toInt(), tile.levels.size)
                    if (tiles++ > 0) return emptyList()
                    val (x, y) = Pair(tile.width.toFloat() / 2, tile.height.toFloat() / 2)
                    return listOf(TextOnTile("LT245/75R16 120/116S", 0.97f, x, y, 160f, 24f))
                }
            },
        )
        val read = book.bay("sidewall", "FL", ENGLISH).actions.of("read-photo")
        book.start(read.token, emptyList(), ENGLISH).outcome()
        val lines = book.bay("sidewall", "FL", ENGLISH).sight!!.lines
        assertEquals("LT245/75R16", lines.first { it.code == "printed-size" }.suggestions.first().text)
    }
}
