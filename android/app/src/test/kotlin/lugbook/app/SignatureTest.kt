package lugbook.app

import android.widget.Button
import android.widget.ScrollView
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment

/** What is drawn on the field for a signature. */
val Hands.signature: Signature get() = shown.filterIsInstance<Signature>().first()

/** Two strokes, as a hand draws them. */
fun Hands.sign() {
    drag(signature, listOf(0.1f to 0.7f, 0.15f to 0.3f, 0.2f to 0.7f, 0.25f to 0.3f, 0.3f to 0.7f, 0.38f to 0.5f, 0.46f to 0.72f, 0.6f to 0.66f, 0.7f to 0.7f))
    drag(signature, listOf(0.2f to 0.82f, 0.5f to 0.8f, 0.75f to 0.85f))
}

/** A signature drawn with a finger, over the real core. */
@RunWith(RobolectricTestRunner::class)
class SignatureTest {
    private val Hands.sent get() = app.kept["${Sheets.bayKey("1", "sign", null)}/sign@.0#drawn"].orEmpty()
    private val Hands.said get() = signature.contentDescription.toString().substringAfterLast(": ")

    private fun Hands.press(word: Int) {
        val label = main.getString(word)
        touch(shown.first { it is Button && it.text.toString() == label })
    }

    private fun signing() = Hands(Demo.room("signature"))

    private fun points(stroke: String) = stroke.split(' ').map { point -> point.split(',').map { it.toInt() } }

    @Test
    fun eachStrokeIsKeptAtOnceAndTheCardShowsThem() {
        val hands = signing()
        assertEquals("empty", hands.said)
        hands.drag(hands.signature, listOf(0.1f to 0.5f, 0.3f to 0.9f, 0.3f to 0.1f))
        assertEquals("signed, 1 stroke", hands.said)
        val (first, second, third) = points(hands.sent)
        for ((seen, drawn) in listOf(first to listOf(100, 500), second to listOf(300, 900), third to listOf(300, 100))) {
            assertTrue("$seen", seen.zip(drawn).all { (a, b) -> kotlin.math.abs(a - b) <= 4 })
        }
        hands.drag(hands.signature, listOf(0.6f to 0.5f, 0.8f to 0.5f))
        assertEquals(2, hands.sent.split(';').size)
        assertEquals("signed, 2 strokes", hands.said)
        hands.becomes("+land")
        assertEquals("signed, 2 strokes", hands.said)
        hands.becomes("+port")
        hands.tap("Sign the job")
        assertEquals(Place.CARD, hands.main.page.place)
        assertTrue(hands.ask { it.card(1u, Demo.ENGLISH) }.contains("Drawn signature: Nell Varga"))
        assertEquals("it was sent", "", hands.sent)
    }

    @Test
    fun strokesAreTakenBackOneByOneOrAllAtOnce() {
        val hands = signing()
        hands.sign()
        val first = hands.sent.substringBefore(';')
        assertEquals(hands.signature.value, hands.sent)
        hands.press(R.string.signature_undo)
        assertEquals(first, hands.sent)
        assertEquals("signed, 1 stroke", hands.said)
        hands.press(R.string.signature_clear)
        assertEquals("", hands.sent)
        assertEquals("empty", hands.said)
        assertTrue(hands.shown.filter { it is Button && it.text.toString() == hands.main.getString(R.string.signature_clear) }.none { it.isEnabled })
    }

    @Test
    fun aDotByItselfIsNobodysSignature() {
        val hands = signing()
        hands.drag(hands.signature, listOf(0.5f to 0.5f, 0.501f to 0.5f))
        assertEquals("", hands.sent)
        assertEquals("empty", hands.said)
    }

    @Test
    fun itNeverGrowsBeyondWhatTheCoreTakes() {
        val hands = signing()
        val scribble = List(2_600) { step -> 0.05f + 0.9f * (step % 40) / 40 to if (step / 40 % 2 == 0) 0.2f else 0.8f }
        hands.drag(hands.signature, scribble)
        assertEquals(2_000, hands.sent.split(' ', ';').size)
        hands.press(R.string.signature_clear)
        repeat(61) { hands.drag(hands.signature, listOf(0.2f to 0.5f, 0.4f to 0.5f)) }
        assertEquals(60, hands.sent.split(';').size)
        hands.tap("Sign the job")
        assertEquals(Place.CARD, hands.main.page.place)
    }

    @Test
    fun pointsNearerThanAFingertipCanMeanAreLeftOut() {
        val hands = signing()
        hands.drag(hands.signature, List(401) { step -> 0.2f + step * 0.001f to 0.5f })
        val across = points(hands.sent).map { it[0] }
        assertTrue("$across", across.zipWithNext().all { (a, b) -> b - a >= 4 } && across.size > 60)
    }

    @Test
    fun thePageStandsStillBelowTheFinger() {
        RuntimeEnvironment.setFontScale(2f)
        val hands = Hands(Demo.room("approval"))
        val page = hands.shown.filterIsInstance<ScrollView>().first { it.tree().any { view -> view is Signature } }
        hands.touch(hands.signature)
        val before = page.scrollY
        assertTrue("the page could scroll", page.getChildAt(0).height > page.height)
        hands.drag(hands.signature, listOf(0.4f to 0.95f, 0.41f to 0.6f, 0.42f to 0.3f, 0.43f to 0.05f))
        assertEquals(before, page.scrollY)
        assertEquals(1, hands.signature.count)
        assertFalse("a stroke is no page", hands.signature.value.isEmpty())
    }
}
