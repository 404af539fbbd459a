package lugbook.app

import java.io.File
import org.junit.Assert.assertEquals
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner

/** Another process, killed with SIGKILL right after a stroke: it stands there again. */
@RunWith(RobolectricTestRunner::class)
class SignatureKillTest {
    @Test
    fun theStrokesStandThere() {
        val root = newRoom()
        Demo.room("signature").copyRecursively(File(root, "room"))
        Second(SignatureVictim::class.java, root).killWhenReady()
        val hands = Hands(File(root, "room"))
        assertEquals(2, hands.signature.count)
        assertEquals(File(root, "drawn").readText(), hands.signature.value)
    }
}

/** Not a test by itself: the process that [SignatureKillTest] kills. */
@RunWith(RobolectricTestRunner::class)
class SignatureVictim {
    @Test
    fun signs() {
        val root = Second.root!!
        val hands = Hands(File(root, "room"))
        hands.sign()
        waitFor({ "the strokes on the disk" }) { hands.app.kept.settled }
        File(root, "drawn").writeText(hands.signature.value)
        Second.waitForTheEnd()
    }
}
