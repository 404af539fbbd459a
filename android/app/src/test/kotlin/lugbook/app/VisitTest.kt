package lugbook.app

import android.view.KeyEvent
import android.webkit.WebView
import android.widget.Button
import java.io.File
import org.json.JSONObject
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotSame
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf

/** A visit by taps on the real views, over the real core. */
@RunWith(RobolectricTestRunner::class)
class VisitTest {
    @Test
    fun fromTheFirstCardsToTheSharedCard() {
        val hands = Hands(newRoom())
        hands.tap("Next")
        hands.tap("Next")
        val first = hands.ask { it.firstRun(Demo.ENGLISH) }
        Demo.byHand(hands, first.actions, Demo.PERSON)
        hands.tap("Begin")
        assertEquals(Page(Place.BOOK), hands.main.page)
        hands.tap("More")
        Demo.byHand(hands, hands.ask { it.book("", Demo.ENGLISH) }.actions, Demo.WRENCH)
        hands.tap("Book")
        Demo.byHand(hands, hands.ask { it.book("", Demo.ENGLISH) }.actions, Demo.VEHICLE)
        hands.open("gray wagon")
        hands.tap("Start a visit")
        Demo.byHand(hands, hands.ask { it.vehicle("gray wagon", Demo.ENGLISH) }.actions, Demo.VISIT)
        var steps = 0
        while (hands.main.page == Page.BAY) {
            val bay = hands.ask { it.bay(manner = Demo.ENGLISH) }
            val said = Demo.answer(bay)
            if (said.code == "choose-plan-1") hands.tap("See the plans")
            Demo.byHand(hands, if (said.code == "choose-plan-1") hands.ask { it.plan(Demo.ENGLISH) }.actions else bay.actions, said)
            check(++steps < 200) { "the visit does not end: ${hands.read()}" }
        }
        assertEquals(Place.CARD, hands.main.page.place)
        val card = hands.shown.filterIsInstance<WebView>().single()
        assertFalse(card.settings.javaScriptEnabled)
        assertTrue(shadowOf(card).lastLoadDataWithBaseURL.data.contains("gray wagon"))
        hands.tap("Share as a page")
        waitFor({ "the share sheet" }) { shadowOf(hands.main).peekNextStartedActivity() != null }
        println("Android: the demo visit by taps took $steps steps")
    }

    @Test
    fun aRefusalIsToldAndWhatWasTypedStays() {
        val hands = Hands(Demo.room("torque"))
        hands.type("Torque as printed, one a line", "as tight as it goes")
        hands.type("Title and page, or label", "a rumor")
        hands.tap("Give the printed torque")
        assertTrue("${hands.read()}", hands.sees("as tight as it goes"))
        val refusal = hands.shown.filterIsInstance<android.widget.TextView>().single { it.accessibilityLiveRegion == android.view.View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE }
        assertTrue(refusal.text.isNotEmpty())
        assertTrue(hands.sees("a rumor"))
        hands.tap("Close")
        assertFalse(hands.sees(refusal.text.toString()))
    }

    @Test
    fun aGateHoldsAndOpensOnlyWithAReason() {
        val hands = Hands(Demo.room("mark-read"))
        // A wrong mark at the hub is held.
        hands.choose("Mark read on the tire", "FR")
        hands.tap("Read the mark")
        assertTrue("${hands.read()}", hands.shown.any { it.accessibilityLiveRegion == android.view.View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE })
        assertEquals("mark-read", hands.ask { it.bay(manner = Demo.ENGLISH) }.step?.asks)
    }

    @Test
    fun undoComesBackToTheStepWithWhatWasSaid() {
        val hands = Hands(Demo.room("odometer"))
        hands.type("Reading", "48210")
        hands.tap("Give the odometer")
        assertEquals("lamp-before", hands.ask { it.bay(manner = Demo.ENGLISH) }.step?.asks)
        hands.tap("Undo")
        assertEquals(Place.BAY, hands.main.page.place)
        val box = hands.shown.filterIsInstance<NumberBox>().first()
        assertTrue("${box.text}", box.text.startsWith("48210"))
    }

    @Test
    fun turningThePhoneKeepsPageAndTyping() {
        val hands = Hands(Demo.room("damage"))
        hands.tap("Damage seen")
        hands.type("Text", "dent, left")
        val before = hands.main
        hands.becomes("+land")
        assertNotSame(before, hands.main)
        assertTrue(hands.main.window.decorView.width > hands.main.window.decorView.height)
        assertTrue("${hands.read()}", hands.sees("dent, left"))
        hands.becomes("+port")
        assertTrue(hands.sees("dent, left"))
    }

    @Test
    fun inTheBackgroundTheBookIsLetGoOfAndFoundAgain() {
        val hands = Hands(Demo.room("tread"))
        hands.type("outer groove", "7")
        hands.pause()
        hands.comesBack()
        assertEquals("7", hands.shown.filterIsInstance<NumberBox>().first().text.toString())
    }

    @Test
    fun theVolumeKeyPressesTheMainButtonWhenItWasChosen() {
        val hands = Hands(Demo.room("approval"))
        hands.main.dispatchKeyEvent(KeyEvent(KeyEvent.ACTION_DOWN, KeyEvent.KEYCODE_VOLUME_DOWN))
        hands.settle()
        assertEquals("approval", hands.ask { it.bay(manner = Demo.ENGLISH) }.step?.asks)
        hands.tap("Settings")
        hands.choose("Volume-down key presses the main button", "Yes")
        hands.settle()
        hands.tap("Bay")
        hands.main.dispatchKeyEvent(KeyEvent(KeyEvent.ACTION_DOWN, KeyEvent.KEYCODE_VOLUME_DOWN))
        hands.settle()
        assertFalse("approval" == hands.ask { it.bay(manner = Demo.ENGLISH) }.step?.asks)
    }

    @Test
    fun settingsSpeakSpanishAtOnce() {
        val hands = Hands(Demo.room("approval"))
        hands.tap("Settings")
        hands.choose("Language", "Español")
        hands.tap("Keep settings")
        hands.tap("Bahía")
        assertTrue("${hands.read()}", hands.sees("Deshacer"))
    }

    @Test
    fun aPhotoThatWasKeptBeforeTheAppEndedIsFoundAgain() {
        val room = Demo.room("sidewall-photo")
        val key = "${Sheets.bayKey("1", "sidewall-photo", "FL")}/photo@FL.0#file"
        File(room, "kept.json").writeText(JSONObject().put("typed", JSONObject().put("phone#waits", "CAMERA\n$key")).toString())
        val context = RuntimeEnvironment.getApplication()
        Awaited.keep(context, Awaited.expect(context).also { it.file.writeText("a photo") })
        val hands = Hands(room)
        assertEquals("Photo: sidewall", (hands.shown.first { it.tag == Main.CHIEF } as Button).text.toString())
    }

    @Test
    fun twoHundredVehiclesAreSearched() {
        val room = Demo.room("empty")
        val hands = Hands(room)
        hands.ask { engine ->
            repeat(200) { number ->
                Demo.say(engine, engine.book("", Demo.ENGLISH).actions, Said("add-vehicle", "name" to "Truck ${number + 1}", "model" to "Hauler 3500", "class" to "car"))
            }
        }
        hands.tap("Book")
        assertTrue(hands.sees("200 vehicles"))
        hands.type("Search name, model or plate", "truck 200")
        hands.settle()
        assertTrue("${hands.read()}", hands.sees("1 vehicle"))
        hands.open("Truck 200")
        assertEquals(Place.VEHICLE, hands.main.page.place)
    }
}
