package lugbook.app

import android.widget.Button
import android.widget.TextView
import java.io.File
import lugbook.core.Engine
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.ParameterizedRobolectricTestRunner
import org.robolectric.RuntimeEnvironment

/** However the phone is held and set, the next thing to do is in the window whole, and nothing is cut off. */
@RunWith(ParameterizedRobolectricTestRunner::class)
class ModesTest(@Suppress("unused") private val name: String, private val room: String, private val mode: Mode) {
    /** How the phone is held and set. */
    class Mode(val qualifiers: String, val lettering: Float = 1f, val left: Boolean = false)

    @Test
    fun theNextThingIsWhole() {
        RuntimeEnvironment.setQualifiers(mode.qualifiers)
        RuntimeEnvironment.setFontScale(mode.lettering)
        val lived = Demo.room(room)
        if (mode.left) holdLeft(lived)
        look(Hands(lived))
    }

    private fun look(hands: Hands) {
        val window = hands.main.window.decorView
        val chief = hands.shown.first { it.tag == Main.CHIEF } as Button
        val at = IntArray(2).also(chief::getLocationInWindow)
        assertTrue("${chief.text}", at[0] >= 0 && at[1] >= 0 && at[0] + chief.width <= window.width && at[1] + chief.height <= window.height)
        hands.shown.filterIsInstance<TextView>().forEach { text ->
            val layout = text.layout ?: return@forEach
            assertTrue("${text.text} is cut off", (0 until layout.lineCount).all { layout.getEllipsisCount(it) == 0 })
            if (text.height > 0) assertTrue("${text.text} is cut off below", layout.height <= text.height)
        }
    }

    private fun holdLeft(room: File) {
        aside {
            val engine = Engine.open(File(room, "book").path, SteadyPhone(), Demo.ENGLISH)
            Demo.say(engine, engine.settings(Demo.ENGLISH).actions, Said("settings", "hand" to "left"))
            engine.closeBook()
            engine.destroy()
        }
    }

    companion object {
        private const val PORTRAIT = "w412dp-h892dp-port-notnight-mdpi"
        private const val LANDSCAPE = "w892dp-h412dp-land-notnight-mdpi"

        private val MODES = mapOf(
            "night" to Mode("w412dp-h892dp-port-night-mdpi"),
            "Spanish" to Mode("es-$PORTRAIT"),
            "large lettering" to Mode(PORTRAIT, 2f),
            "large Spanish lettering" to Mode("es-$PORTRAIT", 2f),
            "landscape" to Mode(LANDSCAPE),
            "left hand" to Mode(PORTRAIT, left = true),
            "left hand, landscape" to Mode(LANDSCAPE, left = true),
            "half a screen" to Mode("w412dp-h440dp-port-notnight-mdpi"),
            "narrow" to Mode("w360dp-h640dp-port-notnight-mdpi"),
        )

        private val ROOMS = listOf("tread", "torque", "final", "approval")

        @JvmStatic
        @ParameterizedRobolectricTestRunner.Parameters(name = "{0}")
        fun modes(): List<Array<Any>> =
            MODES.flatMap { (name, mode) -> ROOMS.map { room -> arrayOf<Any>("$name: $room", room, mode) } }
    }
}
