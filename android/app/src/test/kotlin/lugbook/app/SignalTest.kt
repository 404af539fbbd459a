package lugbook.app

import android.graphics.Bitmap
import android.graphics.Canvas
import android.graphics.Color
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment

/** The four signal words are told apart by their shapes, whatever the colors are. */
@RunWith(RobolectricTestRunner::class)
class SignalTest {
    /** Where ink is. */
    private fun shape(state: String): BooleanArray {
        RuntimeEnvironment.setQualifiers("+xhdpi")
        val pen = Pen(RuntimeEnvironment.getApplication())
        val drawn = StateShape(pen, state).let { shape ->
            shape.setBounds(0, 0, shape.intrinsicWidth, shape.intrinsicHeight)
            Bitmap.createBitmap(shape.intrinsicWidth, shape.intrinsicHeight, Bitmap.Config.ARGB_8888).also {
                it.eraseColor(pen.ground)
                shape.draw(Canvas(it))
            }
        }
        return BooleanArray(drawn.width * drawn.height) { Color.luminance(drawn.getPixel(it % drawn.width, it / drawn.width)) < 0.5f }
    }

    @Test
    fun noTwoShapesAreAlike() {
        val signals = listOf("danger", "warning", "caution", "notice")
        val states = listOf("sound", "watch", "at-limit", "below-limit", "unsafe", "done", "skipped", "held", "ready", "asked")
        val shapes = (signals + states).associateWith(::shape)
        for (one in signals) {
            for ((other, seen) in shapes - one) {
                val apart = shapes.getValue(one).indices.count { shapes.getValue(one)[it] != seen[it] }.toDouble() / seen.size
                assertTrue("$one and $other: %.1f %%".format(apart * 100), apart > 0.08)
            }
        }
    }

    @Test
    fun eachCautionHasTheShapeOfItsWord() {
        val hands = Hands(Demo.room("looks"))
        val (cautions, shown) = hands.ask { engine ->
            engine.bay(manner = Demo.ENGLISH).step!!.cautions to Sheets(hands.main.resources, engine, Demo.ENGLISH, "").of(Page.BAY).pieces
        }
        val warns = shown.filterIsInstance<Piece.Stated>().filter { it.warns }
        assertEquals(cautions.map { it.signalCode to it.signal }, warns.map { it.state to it.word })
        assertTrue("$cautions", cautions.map { it.signalCode }.toSet().size > 1)
    }
}
