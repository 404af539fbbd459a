package lugbook.app

import org.junit.Assert.assertEquals
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.ParameterizedRobolectricTestRunner

/** Every screen of the book, light and dark, large and turned. */
@RunWith(ParameterizedRobolectricTestRunner::class)
class AccessTest(private val name: String, private val shot: PictureTest.Shot) {
    @Test
    fun canBeHeardTouchedAndRead() {
        val hands = shot.hands()
        val inWork = hands.ask { it.bay(manner = Demo.ENGLISH).job } != null && shot.pages.first().place == Place.BAY
        assertEquals(name, "", Access(hands.main.window.decorView, inWork).wrong().joinToString("\n"))
    }

    companion object {
        @JvmStatic
        @ParameterizedRobolectricTestRunner.Parameters(name = "{0}")
        fun shots(): List<Array<Any>> = PictureTest.shots()
    }
}
