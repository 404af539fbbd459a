package lugbook.kit

import java.io.File
import kotlinx.coroutines.runBlocking
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Assume.assumeTrue
import org.junit.Before
import org.junit.Rule
import org.junit.Test
import org.junit.rules.TemporaryFolder

/** Asking and opening again and again leaves nothing behind. The long form is `tests/growth`. */
class GrowthTest {
    @get:Rule
    val scratch = TemporaryFolder()

    /** What the process holds, as Linux tells it. The JVM's own heap is of one size, and all of it is held from the start. */
    private class Footing(folder: File) {
        val memoryKb: Int =
            File("/proc/self/status").readLines().first { it.startsWith("VmRSS:") }.filter(Char::isDigit).toInt()
        val files: Int = File("/proc/self/fd").listFiles()!!.count { it.canonicalFile.startsWith(folder.canonicalFile) }
    }

    @Before
    fun onLinux() = assumeTrue("this is read from Linux's /proc", File("/proc/self/status").exists())

    private fun grown(what: String, times: Int, before: Footing) {
        val after = Footing(scratch.root)
        println("$times $what in Kotlin: ${after.memoryKb - before.memoryKb} kB more")
        assertTrue("${after.memoryKb - before.memoryKb} kB more", after.memoryKb - before.memoryKb < MARGIN_KB)
        assertEquals(before.files, after.files)
    }

    @Test
    fun screensLeaveNothingBehind() = runBlocking {
        val calls = Integer.getInteger("lugbook.views", 1_500)
        openBook(scratch.root).use { book ->
            book.fill(1)
            repeat(500) { book.vehicle("Truck 1", ENGLISH) }
            val before = Footing(scratch.root)
            repeat(calls) { book.vehicle("Truck 1", ENGLISH) }
            grown("screens", calls, before)
            book.closeBook()
        }
    }

    @Test
    fun openingLeavesNothingBehind() = runBlocking {
        val openings = Integer.getInteger("lugbook.opens", 20)
        suspend fun open() = openBook(scratch.root).use { book ->
            book.firstRun(ENGLISH)
            book.closeBook()
        }
        repeat(10) { open() }
        val before = Footing(scratch.root)
        repeat(openings) { open() }
        grown("openings", openings, before)
    }

    private companion object {
        /** More than this is growth: a screen that is kept at each call comes to several times as much. */
        const val MARGIN_KB = 8 * 1024
    }
}
