package lugbook.app

import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.ParameterizedRobolectricTestRunner
import org.robolectric.RuntimeEnvironment

/** Every screen as it looks, held against a picture. `LUGBOOK_RENEW=1` renews them: look at each before it is kept. */
@RunWith(ParameterizedRobolectricTestRunner::class)
class PictureTest(private val name: String, private val shot: Shot) {
    /** A room, the page in it, and how the phone is held. */
    class Shot(val room: String, val pages: List<Page>, private val qualifiers: String, private val lettering: Float = 1f, private val reads: Boolean = false, val does: Hands.() -> Unit = {}) {
        /** The window that shows it. */
        fun hands(): Hands {
            RuntimeEnvironment.setQualifiers(qualifiers)
            RuntimeEnvironment.setFontScale(lettering)
            // Where there are models, photos can be read; nothing here is.
            if (reads) (RuntimeEnvironment.getApplication() as TestApp).phone.models = "/"
            return Hands(Demo.room(room), pages)
        }
    }

    @Test
    fun looksAsItDid() {
        val hands = shot.hands()
        shot.does(hands)
        // A caret neither blinks nor stands in a picture.
        hands.shown.filterIsInstance<android.widget.EditText>().forEach { it.isCursorVisible = false }
        idle()
        Pictured.holds(name, hands.main.window.decorView)
    }

    companion object {
        private const val WAGON = "gray wagon"

        private fun at(place: Place, vararg of: String) = listOf(Page(place, of.toList()))

        private val SCREENS: Map<String, Pair<String, List<Page>>> = mapOf(
            "first-run-1" to ("new" to at(Place.FIRST_RUN)),
            "first-run-2" to ("new" to at(Place.FIRST_RUN, "1")),
            "first-run-3" to ("new" to at(Place.FIRST_RUN, "2")),
            "book-empty" to ("empty" to at(Place.BOOK)),
            "book" to ("worn" to at(Place.BOOK)),
            "book-more" to ("worn" to listOf(Page(Place.BOOK), Page(Place.MORE, base = Page(Place.BOOK)))),
            "add-vehicle" to ("empty" to listOf(Page(Place.BOOK), Page(Place.FORM, listOf("add-vehicle", "", "0"), Page(Place.BOOK)))),
            "vehicle" to ("worn" to at(Place.BOOK) + at(Place.VEHICLE, WAGON)),
            "visits" to ("worn" to at(Place.BOOK) + at(Place.VISITS, WAGON)),
            "tire" to ("worn" to at(Place.BOOK) + at(Place.TIRE, WAGON, "FL")),
            "history" to ("worn" to at(Place.BOOK) + at(Place.HISTORY, WAGON)),
            "crew" to ("learner" to at(Place.CREW)),
            "bench" to ("worn" to at(Place.BENCH)),
            "bench-wrench" to ("worn" to listOf(Page(Place.BENCH), Page(Place.FORM, listOf("set-wrench", "", "0"), Page(Place.BENCH)))),
            "bench-marking" to ("worn" to listOf(Page(Place.BENCH), Page(Place.FORM, listOf("read-marking", "", "0"), Page(Place.BENCH)))),
            "settings" to ("worn" to at(Place.SETTINGS)),
            "backups" to ("worn" to at(Place.SETTINGS) + at(Place.BACKUPS)),
            "proof" to ("worn" to at(Place.SETTINGS) + at(Place.PROOF)),
            "about" to ("worn" to at(Place.SETTINGS) + at(Place.ABOUT)),
            "bay-empty" to ("worn" to at(Place.BAY)),
            "bay-more" to ("tread" to listOf(Page.BAY, Page(Place.MORE, base = Page.BAY))),
            "bay-damage" to ("damage" to at(Place.BAY)),
            "bay-approval" to ("approval" to at(Place.BAY)),
            "bay-choice" to ("choice" to at(Place.BAY)),
            "bay-odometer" to ("odometer" to at(Place.BAY)),
            "bay-placard" to ("placard" to at(Place.BAY)),
            "bay-torque" to ("torque" to at(Place.BAY)),
            "bay-drive" to ("drive" to at(Place.BAY)),
            "turn-wheel" to ("drive" to listOf(Page.BAY, Page(Place.FORM, listOf("turn-wheel", "", "0"), Page.BAY))),
            "bay-sidewall-photo" to ("sidewall-photo" to at(Place.BAY)),
            "bay-sidewall" to ("sidewall" to at(Place.BAY)),
            "bay-mark" to ("mark" to at(Place.BAY)),
            "bay-tread" to ("tread" to at(Place.BAY)),
            "bay-plan" to ("plan" to at(Place.BAY)),
            "plans" to ("plan" to at(Place.BAY) + at(Place.PLAN)),
            "why" to ("plan" to at(Place.BAY) + at(Place.WHY, "pattern")),
            "lifts" to ("lifted" to at(Place.BAY) + at(Place.LIFTS)),
            "bay-lifted" to ("lifted" to at(Place.BAY)),
            "bay-weigh" to ("weigh" to at(Place.BAY)),
            "bay-raised" to ("raised-clear" to at(Place.BAY)),
            "bay-wheel-off" to ("wheel-off" to at(Place.BAY)),
            "bay-looks" to ("looks" to at(Place.BAY)),
            "bay-hang" to ("mark-read" to at(Place.BAY)),
            "bay-started" to ("started" to at(Place.BAY)),
            "bay-final" to ("final" to at(Place.BAY)),
            "bay-pressure" to ("pressure" to at(Place.BAY)),
            "bay-signature" to ("signature" to at(Place.BAY)),
            "close-job" to ("tread" to listOf(Page.BAY, Page(Place.FORM, listOf("close-job", "", "0"), Page.BAY))),
            "bay-held" to ("wheel-off" to at(Place.BAY) + at(Place.BAY, "final", "FL")),
            "steps" to ("tread" to at(Place.BAY) + at(Place.STEPS)),
            "findings" to ("worn" to at(Place.BOOK) + at(Place.FINDINGS, "1")),
            "log" to ("signature" to at(Place.BAY) + at(Place.LOG)),
            "photos" to ("signature" to at(Place.BAY) + at(Place.PHOTOS)),
        )

        private val BUSIEST = listOf("bay-tread", "bay-final", "plans", "bay-torque", "vehicle")

        private val HELD = mapOf(
            "light" to "w412dp-h892dp-port-notnight-mdpi", "dark" to "w412dp-h892dp-port-night-mdpi",
            "landscape" to "w892dp-h412dp-land-notnight-mdpi", "large" to "es-w412dp-h892dp-port-notnight-mdpi",
        )

        private const val PHONE = "w412dp-h892dp-port-notnight-mdpi"

        private val SHOTS: Map<String, Shot> = buildMap {
            SCREENS.forEach { (name, screen) ->
                put("$name-light", Shot(screen.first, screen.second, PHONE))
                put("$name-dark", Shot(screen.first, screen.second, "w412dp-h892dp-port-night-mdpi"))
            }
            for ((ground, night) in listOf("light" to "notnight", "dark" to "night")) {
                put("refusal-$ground", Shot("torque", at(Place.BAY), "w412dp-h892dp-port-$night-mdpi") {
                    type("Torque as printed, one a line", "tight")
                    type("Title and page, or label", "a rumor")
                    tap("Give the printed torque")
                })
                put("bench-answer-$ground", Shot("worn", SCREENS.getValue("bench-marking").second, "w412dp-h892dp-port-$night-mdpi") {
                    type("Text", "225/45R17 91W")
                    tap("Read a sidewall text")
                })
            }
            for ((held, qualifiers) in HELD) {
                put("bay-signed-$held", Shot("signature", at(Place.BAY), qualifiers, if (held == "large") 2f else 1f) { sign() })
                put("bay-ring-$held", Shot("sidewall", at(Place.BAY), qualifiers, if (held == "large") 2f else 1f, reads = true) { if (held == "dark") tap("Bigger") })
            }
            BUSIEST.forEach { name ->
                val (room, pages) = SCREENS.getValue(name)
                put("$name-landscape", Shot(room, pages, "w892dp-h412dp-land-notnight-mdpi"))
                put("$name-large", Shot(room, pages, PHONE, 2f))
                put("$name-spanish", Shot(room, pages, "es-$PHONE"))
            }
        }

        @JvmStatic
        @ParameterizedRobolectricTestRunner.Parameters(name = "{0}")
        fun shots(): List<Array<Any>> =
            SHOTS.filterKeys { Regex(System.getProperty("only", "")).containsMatchIn(it) }.map { (name, shot) -> arrayOf(name, shot) }
    }
}
