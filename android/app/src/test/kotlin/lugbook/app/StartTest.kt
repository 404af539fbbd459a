package lugbook.app

import android.app.Activity
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.annotation.Config

@RunWith(RobolectricTestRunner::class)
class StartTest {
    @Test
    @Config(application = App::class)
    fun theAppAsItIsShowsTheFirstCard() {
        val control = Robolectric.buildActivity(Main::class.java).setup()
        waitFor({ "the first card" }) { control.get().rests }
        val main = control.get()
        val read = main.window.decorView.tree().mapNotNull { (it as? android.widget.TextView)?.text?.toString() }.toList()
        assertTrue("$read", "1/3" in read)
    }

    @Test
    fun theFirstFrameWaitsForNothing() {
        // What the framework takes for its first window is not ours.
        Robolectric.buildActivity(Activity::class.java).setup()
        // No room is chosen yet: whatever wanted a file would wait for ever.
        val begun = System.nanoTime()
        val control = Robolectric.buildActivity(Main::class.java).setup()
        val framed = System.nanoTime()
        val main = control.get()
        assertTrue(main.window.decorView.width > 0)
        assertEquals(5, main.window.decorView.tree().count { it is android.widget.Button && it.isShown })
        val room = Demo.room("vehicle")
        (RuntimeEnvironment.getApplication() as TestApp).lives(room)
        val opened = System.nanoTime()
        waitFor({ "the book" }) { control.get().rests }
        println("Android: first frame after %.0f ms, content %.0f ms after its files can be read".format((framed - begun) / 1e6, (System.nanoTime() - opened) / 1e6))
    }
}
