package lugbook.app

import java.io.File
import java.util.Collections
import lugbook.core.Entered
import lugbook.core.TextOnTile
import lugbook.core.TextReader
import lugbook.core.TextTile
import org.json.JSONObject
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotEquals
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner

/** The ring over a photo of the book, at the step that asks what stands on a tire. */
@RunWith(RobolectricTestRunner::class)
class RingTest {
    /** A reader that keeps what it was given to read. */
    private class Seen : TextReader {
        val tiles: MutableList<List<Any>> = Collections.synchronizedList(mutableListOf())

        override fun name(): String = "one that looks"

        override fun read(tile: TextTile): List<TextOnTile> {
            tiles += listOf(tile.width, tile.height, tile.levels.contentHashCode())
            return emptyList()
        }
    }

    private val reader = Seen()

    private fun hands(room: File = Demo.room("sidewall")): Hands = Hands(room).also { hands ->
        hands.ask { it.readBy(reader) }
        hands.tap("Bay")
    }

    private val Hands.ring get() = shown.filterIsInstance<Ring>().single()
    private val Hands.sent get() = app.kept["${Sheets.bayKey("1", "sidewall", "FL")}/read-photo@FL.0#ring"]

    /** What is given to the reader for this ring, asked of the core itself. */
    private fun Hands.tiles(ring: String): List<List<Any>> {
        reader.tiles.clear()
        ask { engine ->
            val action = engine.bay(manner = Demo.ENGLISH).actions.first { it.code == "read-photo" }
            engine.start(action.token, if (ring.isEmpty()) emptyList() else listOf(Entered("ring", ring)), Demo.ENGLISH).outcome()
        }
        return reader.tiles.toList().also { reader.tiles.clear() }
    }

    private fun List<String>.near(vararg shares: Double) = zip(shares.toList()).forEach { (said, share) -> assertEquals("$this", share, said.toDouble(), 0.02) }

    @Test
    fun whereNobodyMovedItTheCoreFindsIt() {
        val hands = hands()
        assertEquals("the photo under it", 640 to 480, hands.ring.picture?.let { it.width to it.height })
        assertFalse(hands.ring.moved)
        assertTrue(hands.sees(hands.main.getString(R.string.ring_is_found)))
        hands.tap("Read the photo")
        val read = reader.tiles.toList()
        assertTrue("${read.size}", read.isNotEmpty())
        assertEquals(hands.tiles(""), read)
    }

    @Test
    fun whereItWasDraggedToIsWhatIsRead() {
        val hands = hands()
        val scrolled = hands.main.window.decorView.tree().filterIsInstance<android.widget.ScrollView>().first().scrollY
        // The photo is four wide and three high, and fills the view: down is told in shares of its width.
        hands.drag(hands.ring, listOf(0.5f to 0.5f, 0.48f to 0.5f, 0.45f to 0.44f))
        hands.ring.value.split(' ').near(0.45, 0.33, 0.315)
        hands.drag(hands.ring, listOf(0.45f + 0.315f to 0.44f, 0.72f to 0.44f, 0.65f to 0.44f))
        hands.ring.value.split(' ').near(0.45, 0.33, 0.2)
        assertEquals("the page stands", scrolled, hands.main.window.decorView.tree().filterIsInstance<android.widget.ScrollView>().first().scrollY)
        val value = hands.ring.value
        assertEquals(value, hands.sent)
        assertTrue(hands.sees(hands.main.getString(R.string.ring_is_moved)))
        hands.tap("Read the photo")
        val read = reader.tiles.toList()
        assertEquals(hands.tiles(value), read)
        assertNotEquals(hands.tiles(""), read)
    }

    @Test
    fun twoFingersWidenIt() {
        val hands = hands()
        hands.drag(hands.ring, listOf(0.5f to 0.5f, 0.5f to 0.5f), listOf(0.6f to 0.5f, 0.55f to 0.5f))
        hands.ring.value.split(' ').near(0.5, 0.375, 0.1575)
        assertEquals(hands.ring.value, hands.sent)
    }

    @Test
    fun aFingerElsewhereTurnsThePageAndLeavesIt() {
        val hands = hands()
        hands.drag(hands.ring, listOf(0.5f to 0.24f, 0.5f to 0.2f, 0.5f to 0.15f))
        assertFalse(hands.ring.moved)
        assertEquals("", hands.sent)
    }

    @Test
    fun buttonsDoWhatADragDoes() {
        val hands = hands()
        fun press(word: Int) {
            val label = hands.main.getString(word)
            hands.touch(hands.shown.first { it is android.widget.Button && it.contentDescription.toString().endsWith(": $label") })
        }
        listOf(R.string.ring_left, R.string.ring_left, R.string.ring_up, R.string.ring_bigger).forEach(::press)
        hands.ring.value.split(' ').near(0.46, 0.355, 0.335)
        press(R.string.ring_right)
        press(R.string.ring_down)
        press(R.string.ring_smaller)
        hands.ring.value.split(' ').near(0.48, 0.375, 0.315)
        assertEquals(hands.ring.value, hands.sent)
        press(R.string.ring_alone)
        assertFalse(hands.ring.moved)
        assertEquals("", hands.sent)
    }

    @Test
    fun itSurvivesATurnAndAReadingAndBelongsToItsPhoto() {
        val hands = hands()
        hands.drag(hands.ring, listOf(0.5f to 0.5f, 0.45f to 0.44f))
        val value = hands.ring.value
        hands.becomes("+land")
        assertEquals(value, hands.ring.value)
        hands.becomes("+port")
        hands.tap("Read the photo")
        hands.tap("More")
        hands.tap("Read the photo")
        assertEquals("it can be mended and read again", value, hands.ring.value)
        hands.back()
        hands.back()
        val another = File(newRoom(), "another.png").also { File(hands.app.roomOfTest, "drawn.png").copyTo(it) }
        another.appendBytes(byteArrayOf(0))
        hands.ask { engine -> Demo.say(engine, engine.bay(manner = Demo.ENGLISH).actions, Said("photo", "file" to another.path)) }
        hands.tap("More")
        hands.tap("Read the photo")
        assertFalse("another photo has its own", hands.ring.moved)
    }

    @Test
    fun theCamerasRingIsTakenOverForThePhotoThatCameWithIt() {
        val room = Demo.room("sidewall")
        File(room, "kept.json").writeText(JSONObject().put("typed", JSONObject().put(RingField.key("photo@FL.0"), "\n0.4000 0.3000 0.2000")).toString())
        val hands = hands(room)
        assertEquals("0.4000 0.3000 0.2000", hands.ring.value)
        assertEquals(hands.ring.value, hands.sent)
    }

    @Test
    fun withoutAReaderThereIsNoRing() {
        val hands = Hands(Demo.room("sidewall"))
        assertNull(hands.shown.filterIsInstance<Ring>().firstOrNull())
    }
}
