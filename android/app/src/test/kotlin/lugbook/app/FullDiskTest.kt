package lugbook.app

import android.view.View
import android.widget.TextView
import java.io.File
import java.io.FileOutputStream
import java.io.IOException
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNotEquals
import org.junit.Assert.assertTrue
import org.junit.Assume.assumeTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner

/** A phone whose storage is full: a small file system, filled to its last byte. */
@RunWith(RobolectricTestRunner::class)
class FullDiskTest {
    private fun does(vararg command: String): Boolean = try {
        ProcessBuilder(*command).redirectErrorStream(true).start().waitFor() == 0
    } catch (_: IOException) {
        false
    }

    private fun fill(file: File) = FileOutputStream(file).use { out ->
        for (size in listOf(1 shl 20, 4096, 1)) {
            try {
                while (true) out.write(ByteArray(size))
            } catch (_: IOException) {
                // Not another one of this size.
            }
        }
    }

    private val Hands.refusal get() = shown.filterIsInstance<TextView>().firstOrNull { it.accessibilityLiveRegion == View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE }?.text?.toString()

    @Test
    fun anAnswerIsRefusedWithAWayOutAndGoesInOnceThereIsRoom() {
        val room = newRoom()
        val mounted = does("mount", "-t", "tmpfs", "-o", "size=48m", "tmpfs", room.path)
        if (!mounted) println("Android: skipped a phone that is full: no file system can be mounted here")
        assumeTrue(mounted)
        try {
            Demo.room("odometer").copyRecursively(room, overwrite = true)
            val hands = Hands(room)
            val filler = File(room, "filler")
            fill(filler)
            var answers = 0
            var before = ""
            while (hands.refusal == null) {
                // What the book's files hold already may take one or another.
                check(++answers < 30) { "the disk is not full" }
                val bay = hands.ask { it.bay(manner = Demo.ENGLISH) }
                before = "${bay.step?.step} ${bay.step?.at} ${bay.progress}"
                Demo.byHand(hands, bay.actions, Demo.answer(bay))
            }
            assertTrue("${hands.refusal}", hands.refusal!!.startsWith("No space is left."))
            val bay = hands.ask { it.bay(manner = Demo.ENGLISH) }
            assertEquals("nothing went in", before, "${bay.step?.step} ${bay.step?.at} ${bay.progress}")
            assertTrue(filler.delete())
            hands.tap("Close")
            Demo.byHand(hands, bay.actions, Demo.answer(bay))
            assertEquals(null, hands.refusal)
            val after = hands.ask { it.bay(manner = Demo.ENGLISH) }
            assertNotEquals(before, "${after.step?.step} ${after.step?.at} ${after.progress}")
            hands.leave()
        } finally {
            does("umount", "-l", room.path)
        }
    }
}
