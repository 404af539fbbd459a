package lugbook.app

import java.awt.Color
import java.awt.image.BufferedImage
import java.io.File
import javax.imageio.ImageIO
import kotlinx.coroutines.runBlocking
import lugbook.core.ActionPace
import lugbook.core.ActionWeight
import lugbook.core.BayScreen
import lugbook.core.Engine
import lugbook.core.Entered
import lugbook.core.FieldKind
import lugbook.core.Language
import lugbook.core.Manner
import lugbook.core.PositionLetters
import lugbook.core.ScreenAction
import lugbook.core.UnitSystem

/** What is said at a step: an action by its code, with what is filled in. */
class Said(val code: String, vararg val entered: Pair<String, String>)

/** An invented visit: a whole rotation on a lift, as `tests/vectors/journeys` has it, told by the kind of step. */
object Demo {
    val ENGLISH = Manner(Language.ENGLISH, UnitSystem.AS_READ, PositionLetters.FRONT_FIRST, null)

    val PERSON = Said("add-person", "name" to "Nell Varga", "role" to "mechanic")
    val WRENCH = Said("add-wrench", "name" to "long wrench", "accuracy" to "4 %", "scale-step" to "5")
    val VEHICLE = Said("add-vehicle", "name" to "gray wagon", "model" to "Basalt 480, 2015", "class" to "car", "plate" to "TEST 7")
    val VISIT = Said("open-rotation-on-a-lift", "settle-1" to "air")

    /** What answers the step in the bay, at the first visit or a later one. */
    fun answer(bay: BayScreen, visit: Int = 1): Said {
        val step = bay.step ?: throw AssertionError("no step is left: ${bay.empty}")
        // The deeper ones are in front until the rotation has crossed them to the rear.
        val deep = (step.at?.startsWith("F") == true) == (visit == 1)
        return when (step.asks) {
            "vehicle-photo", "sidewall-photo", "finding-photo" -> Said("skip", "reason" to "camera broken")
            "damage" -> Said("damage", "text" to "scrape along the tailgate")
            "approval" -> Said("approve")
            "odometer" -> Said("odometer", "reading" to "${48210 + (visit - 1) * 6400}")
            "lamp", "lamp-before" -> Said("lamp-off", "sensors" to "direct")
            "placard" -> Said("placard", "axles" to "35\n35", "source" to "door label")
            "torque" -> Said("torque", "printed" to "125..150 N.m", "source" to "owner's manual, page 12")
            "studs" -> Said("count", "count" to "5")
            "drive" -> Said("drive-from-manual", "drive" to "rear", "source" to "owner's manual, page 3")
            "sidewall" -> Said("sidewall", "text" to "225/45R17 91W")
            "tread" -> List(3) { "${(if (deep) 8 else 6) - (visit - 1)}" }.joinToString(" ").let { Said("tread", "depths" to it) }
            "plan" -> Said("choose-plan-1")
            "weigh" -> Said("weigh", "weight" to "3200", "rating" to "8000")
            "count" -> Said("count", "count" to if (step.step == "tray") "0" else "20")
            "mark-read" -> Said("hang", "mark-read" to MARKS.getValue(step.at!!))
            "pressure", "pressure-found" -> Said(step.asks, "pressure" to "35", "cold" to "yes")
            "cracked", "started", "snug" -> Said("nuts")
            "final" -> Said(if (step.at == "FL") "nut-moved" else "nuts-moved")
            "equipment" -> Said("has-neither")
            else -> Said(bay.actions.first { it.code.endsWith("none-fitted") || it.weight == ActionWeight.MAIN }.code)
        }
    }

    /** The mark that the plan hangs at a place: rears straight forward, fronts cross to the rear. */
    private val MARKS = mapOf("FL" to "RL", "FR" to "RR", "RL" to "FR", "RR" to "FL")

    /** The kinds of step that this visit comes to, by what they ask. */
    val KINDS = listOf(
        "vehicle-photo", "damage", "approval", "choice", "odometer", "lamp-before", "placard", "torque", "studs", "drive",
        "sidewall-photo", "sidewall", "mark", "tread", "plan", "equipment", "ready", "weigh", "seen", "raised-clear", "rocked",
        "raised-full", "held", "wheel-off", "looks", "mark-read", "started", "snug", "count", "all-clear", "lowered", "final",
        "pressure", "lamp", "recheck", "signature",
    )

    /** Between two visits. */
    const val APART_MS = 200L * 24 * 60 * 60 * 1000

    fun action(actions: List<ScreenAction>, code: String): ScreenAction =
        actions.firstOrNull { it.code == code } ?: throw AssertionError("$code is not among ${actions.map { it.code }}")

    suspend fun say(engine: Engine, actions: List<ScreenAction>, said: Said) {
        val action = action(actions, said.code)
        val entered = said.entered.map { (code, value) -> Entered(code, value) }
        if (action.pace == ActionPace.LONG) engine.start(action.token, entered, ENGLISH).outcome() else engine.act(action.token, entered, ENGLISH)
    }

    /** A drawn photo of a tire. */
    private fun photo(room: File): File {
        val picture = BufferedImage(640, 480, BufferedImage.TYPE_INT_RGB)
        val pen = picture.createGraphics()
        pen.color = Color(0x9A, 0x97, 0x8E)
        pen.fillRect(0, 0, 640, 480)
        for ((reach, shade) in listOf(220 to 0x22, 130 to 0x88, 118 to 0xB8, 30 to 0x55)) {
            pen.color = Color(shade, shade, shade)
            pen.fillOval(320 - reach, 240 - reach, 2 * reach, 2 * reach)
        }
        pen.dispose()
        return File(room, "drawn.png").also { check(ImageIO.write(picture, "png", it)) }
    }

    /** Rooms in which the visit has come to each kind of step, by what it asks; `signed` when it is over. Made once. */
    val rooms: Map<String, File> by lazy {
        val made = linkedMapOf<String, File>()
        val room = newRoom()
        runBlocking {
            File(room, "book").mkdirs()
            val phone = SteadyPhone(drawn = 0)
            val engine = Engine.open(File(room, "book").path, phone, ENGLISH)
            suspend fun keep(name: String) {
                engine.pause(ENGLISH)
                made[name] = newRoom().also { room.copyRecursively(it, overwrite = true) }
            }
            suspend fun walk(visit: Int) {
                while (engine.bay(manner = ENGLISH).job != null) {
                    val bay = engine.bay(manner = ENGLISH)
                    val asks = bay.step?.asks.orEmpty()
                    if (visit == 1 && asks !in made) keep(asks)
                    val photographed = visit == 1 && asks == "sidewall-photo" && bay.step?.at == "FL"
                    val said = if (photographed) Said("photo", "file" to photo(room).path) else answer(bay, visit)
                    say(engine, if (said.code == "choose-plan-1") engine.plan(ENGLISH).actions else bay.actions, said)
                }
            }
            keep("new")
            say(engine, engine.firstRun(ENGLISH).actions, PERSON)
            engine.act(action(engine.firstRun(ENGLISH).actions, "begin").token, emptyList(), ENGLISH)
            keep("empty")
            say(engine, engine.book("", ENGLISH).actions, WRENCH)
            say(engine, engine.book("", ENGLISH).actions, VEHICLE)
            keep("vehicle")
            say(engine, engine.vehicle("gray wagon", ENGLISH).actions, VISIT)
            walk(1)
            keep("signed")
            for (visit in 2..3) {
                phone.clock += APART_MS
                say(engine, engine.vehicle("gray wagon", ENGLISH).actions, Said("open-tread-and-age-check"))
                walk(visit)
            }
            keep("worn")
            val jack = action(engine.vehicle("gray wagon", ENGLISH).actions, "open-rotation-lift-by-lift")
            val settled = jack.fields.filter { it.required }.map { it.code to it.choices.first().code }
            say(engine, engine.vehicle("gray wagon", ENGLISH).actions, Said(jack.code, *settled.toTypedArray()))
            var bay = engine.bay(manner = ENGLISH)
            while (bay.step?.turn == null) {
                val said = answer(bay, 4)
                say(engine, if (said.code == "choose-plan-1") engine.plan(ENGLISH).actions else bay.actions, said)
                bay = engine.bay(manner = ENGLISH)
            }
            keep("lifted")
            say(engine, engine.crew(ENGLISH).actions, Said("add-person", "name" to "Kim Osei", "role" to "apprentice"))
            keep("learner")
            engine.closeBook()
            engine.destroy()
        }
        made
    }

    /** A copy of such a room, that a test may change. */
    fun room(name: String): File {
        val from = rooms[name] ?: throw AssertionError("$name is not among ${rooms.keys}")
        return newRoom().also { from.copyRecursively(it, overwrite = true) }
    }

    /** Fills in and taps what is said, in the window. */
    fun byHand(hands: Hands, actions: List<ScreenAction>, said: Said) {
        val action = action(actions, said.code)
        val first = actions.first { it.weight == ActionWeight.MAIN || it === action }
        val inline = action.fields.isEmpty() ||
            first === action && action.fields.any { field -> hands.shown.any { it.contentDescription?.startsWith(field.grooves.firstOrNull()?.spoken ?: field.spoken) == true } }
        if (!inline) hands.tap(action.label)
        for ((code, value) in said.entered) {
            val field = action.fields.first { it.code == code }
            val there = hands.shown.any { it.contentDescription?.startsWith(field.grooves.firstOrNull()?.spoken ?: field.spoken) == true }
            if (!there) hands.tap("More to fill in")
            when (field.kind) {
                FieldKind.ONE, FieldKind.YES_NO -> hands.choose(field.spoken, field.choices.first { it.code == value }.spoken)
                FieldKind.GROOVES -> value.split(' ').forEachIndexed { at, depth -> hands.type(field.grooves[at].spoken, depth) }
                else -> hands.type(field.spoken, value)
            }
        }
        hands.tap(action.label)
    }
}
