package lugbook.app

import org.junit.Assert.assertEquals
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.ParameterizedRobolectricTestRunner
import org.robolectric.RuntimeEnvironment

/** Every screen of the book, light and dark, large and turned. */
@RunWith(ParameterizedRobolectricTestRunner::class)
class AccessTest(private val name: String, private val shot: PictureTest.Shot) {
    @Test
    fun canBeHeardTouchedAndRead() {
        RuntimeEnvironment.setQualifiers(shot.qualifiers)
        RuntimeEnvironment.setFontScale(shot.lettering)
        val hands = Hands(Demo.room(shot.room), shot.pages)
        val inWork = hands.ask { it.bay(manner = Demo.ENGLISH).job } != null && shot.pages.first().place == Place.BAY
        assertEquals(name, "", Access(hands.main.window.decorView, inWork).wrong().joinToString("\n"))
    }

    companion object {
        @JvmStatic
        @ParameterizedRobolectricTestRunner.Parameters(name = "{0}")
        fun shots(): List<Array<Any>> = PictureTest.shots().filter { Regex(System.getProperty("only", "")).containsMatchIn(it[0] as String) }
    }
}
