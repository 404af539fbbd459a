package lugbook.app

import java.io.File
import org.junit.Assert.assertEquals
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment

/** Another process, killed with SIGKILL after the ring was dragged: this one finds it where it was put. */
@RunWith(RobolectricTestRunner::class)
class RingKillTest {
    @Test
    fun itStandsWhereItWasPut() {
        val root = newRoom()
        Demo.room("sidewall").copyRecursively(File(root, "room"))
        Second(RingVictim::class.java, root).killWhenReady()
        val hands = ringed(File(root, "room"))
        assertEquals(File(root, "ring").readText(), hands.shown.filterIsInstance<Ring>().single().value)
    }
}

/** A window with a photo that could be read. */
private fun ringed(room: File): Hands {
    (RuntimeEnvironment.getApplication() as TestApp).phone.models = "/"
    return Hands(room)
}

/** Not a test by itself: the process that [RingKillTest] kills. */
@RunWith(RobolectricTestRunner::class)
class RingVictim {
    @Test
    fun drags() {
        val root = Second.root!!
        val hands = ringed(File(root, "room"))
        val ring = hands.shown.filterIsInstance<Ring>().single()
        hands.drag(ring, listOf(0.5f to 0.5f, 0.45f to 0.44f))
        check(ring.moved)
        waitFor({ "the ring on the disk" }) { hands.app.kept.settled }
        File(root, "ring").writeText(ring.value)
        Second.waitForTheEnd()
    }
}
