package lugbook.kit

import java.awt.image.BufferedImage
import java.io.File
import java.nio.ByteBuffer
import java.util.concurrent.locks.ReentrantLock
import javax.imageio.ImageIO
import kotlin.concurrent.withLock
import kotlinx.serialization.json.JsonArray
import kotlinx.serialization.json.JsonElement
import kotlinx.serialization.json.JsonObject
import kotlinx.serialization.json.JsonPrimitive
import kotlinx.serialization.json.boolean
import kotlinx.serialization.json.contentOrNull
import kotlinx.serialization.json.double
import kotlinx.serialization.json.int
import kotlinx.serialization.json.jsonArray
import kotlinx.serialization.json.jsonObject
import kotlinx.serialization.json.jsonPrimitive
import kotlinx.serialization.json.long
import lugbook.core.DecimalSign
import lugbook.core.Engine
import lugbook.core.Entered
import lugbook.core.Language
import lugbook.core.Manner
import lugbook.core.Outgoing
import lugbook.core.OutgoingOf
import lugbook.core.PhoneHost
import lugbook.core.PositionLetters
import lugbook.core.Refusal
import lugbook.core.UnitSystem

/**
 * A phone whose clock goes on by a second each time it is read, and whose random bytes are counted.
 *
 * While it is held, whoever reads its clock waits. Work reads it before it does anything, so what was started
 * can be stopped before its first piece, however fast it is.
 */
class SteadyPhone(private var clockMs: Long) : PhoneHost {
    private var drawn = 0L
    private val held = ReentrantLock()

    override fun clockMs(): Long = held.withLock { clockMs.also { clockMs += 1_000 } }

    @Synchronized
    override fun random(): ByteArray = ByteBuffer.allocate(10).putLong(++drawn).array()

    override fun secret(): ByteArray = ByteArray(32) { 4 }

    override fun models(): String? = null

    override fun log(line: String) {}

    fun <T> whileHeld(work: () -> T): T = held.withLock(work)
}

val ENGLISH = Manner(Language.ENGLISH, UnitSystem.AS_READ, PositionLetters.FRONT_FIRST, null)

/** The manner that a journey names. */
fun manner(named: JsonObject): Manner {
    only(named, "language", "units", "letters", "decimal")
    return Manner(
        one<Language>(named.getValue("language")),
        one<UnitSystem>(named.getValue("units")),
        one<PositionLetters>(named.getValue("letters")),
        named["decimal"]?.let { one<DecimalSign>(it) },
    )
}

private inline fun <reified T : Enum<T>> one(named: JsonElement): T =
    enumValueOf<T>(named.jsonPrimitive.content.uppercase().replace('-', '_'))

private fun only(told: JsonObject, vararg keys: String) =
    require(keys.toSet().containsAll(told.keys)) { "what is ${told.keys - keys.toSet()}?" }

private fun JsonObject.word(key: String): String? = (this[key] as? JsonPrimitive)?.contentOrNull

/** What a journey does, step by step, in a folder of its own. */
class Journey(private val told: JsonObject, private val folder: File) {
    private val phone = SteadyPhone(told.getValue("clock_ms").jsonPrimitive.long)
    private var manner = manner(told.getValue("manner").jsonObject)
    private lateinit var engine: Engine

    /** Goes all of it. Throws at the first step that does not come out as told, and names it. */
    suspend fun go() {
        only(told, "name", "source", "by_hand", "clock_ms", "manner", "steps")
        open()
        told.getValue("steps").jsonArray.forEachIndexed { at, step ->
            val differences =
                try {
                    take(step.jsonObject)
                } catch (failure: Exception) {
                    throw AssertionError("step ${at + 1} $step", failure)
                }
            if (differences.isNotEmpty()) {
                throw AssertionError("step ${at + 1} $step\n" + differences.joinToString("\n"))
            }
        }
        engine.closeBook()
        engine.destroy()
    }

    private suspend fun open() {
        engine = Engine.open(File(folder, "book").path, phone, manner)
    }

    /** Takes a step, and tells what differs from what it expects. */
    private suspend fun take(step: JsonObject): List<String> {
        val kinds =
            setOf("screen", "act", "start", "manner", "reopen", "pause", "resume", "photo", "folder", "out")
        val kind = step.keys.singleOrNull { it in kinds } ?: throw IllegalArgumentException("one of $kinds in a step")
        when (kind) {
            "screen" -> {
                only(step, "screen", "of", "expect", "refused")
                return held(step) { screen(step.word("screen")!!, of(step)) }
            }
            "act", "start" -> {
                only(step, kind, "on", "of", "at", "enter", "expect", "refused", "offered", "cancel_at")
                return act(step, kind)
            }
            "manner" -> manner = manner(step.getValue("manner").jsonObject)
            "reopen" -> {
                engine.closeBook()
                engine.destroy()
                open()
            }
            "pause" -> engine.pause(manner)
            "resume" -> engine.resume(manner)
            "photo" -> draw(step.getValue("photo").jsonObject)
            "out" -> {
                only(step, "out", "begins")
                return out(step)
            }
            "folder" -> check(File(folder, step.word("folder")!!).mkdir())
        }
        only(step, kind)
        return emptyList()
    }

    /** Writes a file out, and tells when it begins otherwise. */
    private suspend fun out(step: JsonObject): List<String> {
        val nothing = OutgoingOf(null, null, null, null, null, false)
        val file = engine.writeOut(one<Outgoing>(step.getValue("out")), nothing, folder.path, manner)
        val begins = step.word("begins")!!.toByteArray()
        val found = File(file).inputStream().use { it.readNBytes(begins.size) }
        return if (found.contentEquals(begins)) emptyList() else listOf("$file begins with ${String(found)}")
    }

    private suspend fun act(step: JsonObject, kind: String): List<String> {
        val shown = tree(screen(step.word("on") ?: "bay", of(step))) as JsonObject
        val code = step.word(kind)
        val offered =
            shown.getValue("actions").jsonArray.map { it.jsonObject }.filter {
                it.word("code") == code && ("at" !in step || it.word("at") == step.word("at"))
            }
        if (step["offered"]?.jsonPrimitive?.boolean == false) {
            return offered.map { "it is offered: $it" }
        }
        val action = offered.firstOrNull()
            ?: return listOf("it is not offered: " + shown.getValue("actions").jsonArray.map { it.jsonObject.word("code") })
        val token = action.word("token")!!
        val entered = step["enter"]?.jsonObject.orEmpty().map { (field, value) -> Entered(field, entry(value)) }
        return held(step) {
            if (kind == "act" && action.word("pace") == "quick") {
                engine.act(token, entered, manner)
            } else if ("cancel_at" in step) {
                check(step.getValue("cancel_at").jsonPrimitive.double == 0.0) { "a task is stopped as it begins" }
                phone.whileHeld { engine.start(token, entered, manner).also { it.cancel() } }.outcome()
            } else {
                engine.start(token, entered, manner).outcome()
            }
        }
    }

    /** Holds what comes out against what the step expects: an answer, or a refusal. */
    private suspend fun held(step: JsonObject, outcome: suspend () -> Any?): List<String> {
        val refused = step["refused"]
        val answer =
            try {
                tree(outcome())
            } catch (refusal: Refusal) {
                return if (refused != null) differences(refused, tree(refusal)) else listOf("refused: ${tree(refusal)}")
            }
        if (refused != null) return listOf("it is not refused: $answer")
        return step["expect"]?.let { differences(it, answer) }.orEmpty()
    }

    private fun entry(value: JsonElement): String {
        val text = value.jsonPrimitive.content
        val name = listOf("photo:", "folder:").firstOrNull(text::startsWith)?.let(text::removePrefix)
        return if (name == null) text else File(folder, name).path
    }

    private fun draw(photo: JsonObject) {
        only(photo, "name", "width", "height", "shade")
        val number = { key: String -> photo.getValue(key).jsonPrimitive.int }
        val picture = BufferedImage(number("width"), number("height"), BufferedImage.TYPE_BYTE_GRAY)
        val shade = IntArray(picture.width * picture.height) { number("shade") }
        picture.raster.setPixels(0, 0, picture.width, picture.height, shade)
        check(ImageIO.write(picture, "png", File(folder, photo.word("name")!!)))
    }

    private fun of(step: JsonObject): JsonObject = step["of"]?.jsonObject ?: JsonObject(emptyMap())

    private suspend fun screen(name: String, of: JsonObject): Any? {
        val job = of["job"]?.jsonPrimitive?.int?.toUInt()
        return when (name) {
            "book" -> engine.book(of.word("search") ?: "", manner)
            "crew" -> engine.crew(manner)
            "bay" -> engine.bay(of.word("step"), of.word("at"), manner)
            "vehicle" -> engine.vehicle(of.word("vehicle")!!, manner)
            "tire" -> engine.tire(of.word("vehicle")!!, of.word("at")!!, manner)
            "history" -> engine.history(of.word("vehicle")!!, manner)
            "plan" -> engine.plan(manner)
            "lifts" -> engine.lifts(manner)
            "findings" -> engine.findings(job, manner)
            "log" -> engine.log(job, manner)
            "card" -> engine.card(job, manner)
            "bench" -> engine.bench(manner)
            "settings" -> engine.settings(manner)
            "first-run" -> engine.firstRun(manner)
            "backups" -> engine.backups(manner)
            "photos" -> engine.photos(job, manner)
            "why" -> engine.why(of.word("decision") ?: "", manner)
            "verify" -> engine.verify(manner)
            else -> throw IllegalArgumentException("there is no screen $name")
        }
    }
}
