package lugbook.app

import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner

@RunWith(RobolectricTestRunner::class)
class StartTest {
    @Test
    fun theFirstCardsComeFromTheCore() {
        val main = Robolectric.buildActivity(Main::class.java).setup().get()
        waitFor("the first cards") { main.read().size >= 6 }
    }
}
