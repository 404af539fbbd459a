package lugbook.kit

import java.io.File
import java.util.concurrent.Callable
import java.util.concurrent.Executors
import lugbook.core.Device
import lugbook.core.JobLine
import lugbook.core.Language
import lugbook.core.Logbook
import lugbook.core.Manner
import lugbook.core.PositionLetters
import lugbook.core.Refusal
import lugbook.core.UnitSystem
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertThrows
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder

/** A phone with a clock that stands still. */
class Phone : Device {
    override fun clockMs(): Long = 1_780_000_000_000

    override fun random(): ByteArray = ByteArray(10) { it.toByte() }

    override fun secret(): ByteArray = ByteArray(32) { 4 }
}

val ENGLISH = Manner(Language.ENGLISH, UnitSystem.METRIC, PositionLetters.FRONT_FIRST)

/** What holds of the boundary itself, whatever crosses it. */
class BoundaryTest {
    @get:Rule
    val scratch = TemporaryFolder()

    private fun open(folder: File = scratch.root): Logbook = Logbook.open(folder.path, Phone(), ENGLISH)

    @Test
    fun aNewBookIsEmpty() {
        open().use { book ->
            assertNull(book.nextStep(ENGLISH))
            assertEquals(emptyList<JobLine>(), book.jobs(ENGLISH))
        }
    }

    @Test
    fun aRefusalHasItsKindAndItsSentence() {
        open().use { book ->
            val refusal = assertThrows(Refusal.MendInput::class.java) { book.card(3u, ENGLISH) }
            assertEquals("There is no such job.", refusal.sentence)
        }
    }

    @Test
    fun oneProgramWritesABook() {
        open().use {
            assertThrows(Refusal.TryAgain::class.java) { open() }
        }
    }

    @Test
    fun aClosedBookSaysSo() {
        open().use { book ->
            book.closeBook()
            book.closeBook()
            assertThrows(Refusal.Closed::class.java) { book.jobs(ENGLISH) }
        }
    }

    @Test
    fun aDestroyedBookIsAnErrorAndNoCrash() {
        val book = open()
        book.destroy()
        assertThrows(IllegalStateException::class.java) { book.jobs(ENGLISH) }
    }

    @Test
    fun twoThreadsMayAskAtOnce() {
        open().use { book ->
            val threads = Executors.newFixedThreadPool(2)
            val asked = Callable { (1..500).sumOf { book.jobs(ENGLISH).size } }
            assertEquals(listOf(0, 0), threads.invokeAll(listOf(asked, asked)).map { it.get() })
            threads.shutdown()
        }
    }
}
