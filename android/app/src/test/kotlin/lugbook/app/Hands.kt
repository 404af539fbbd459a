package lugbook.app

import android.os.Looper
import android.os.SystemClock
import android.view.MotionEvent
import android.view.View
import android.view.ViewGroup
import android.view.inputmethod.EditorInfo
import android.widget.Button
import android.widget.CompoundButton
import android.widget.EditText
import android.widget.TextView
import java.io.File
import java.time.Duration
import kotlinx.coroutines.runBlocking
import lugbook.core.Engine
import org.junit.Assert.fail
import org.robolectric.Robolectric
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.android.controller.ActivityController

/** Lets the main thread do what waits for it. */
fun idle() = shadowOf(Looper.getMainLooper()).idle()

/** Waits until something holds, while the main thread goes on: what comes from the core is posted to it. */
fun waitFor(what: () -> String, holds: () -> Boolean) {
    val end = System.nanoTime() + 300_000_000_000
    while (!holds()) {
        if (System.nanoTime() > end) fail("it never came: ${what()}")
        idle()
        Thread.sleep(1)
    }
}

/** Runs what suspends on another thread, while the main one goes on. */
fun <T> aside(work: suspend () -> T): T {
    val done = java.util.concurrent.CompletableFuture.supplyAsync { runBlocking { work() } }
    waitFor({ "an answer" }) { done.isDone }
    return done.get()
}

/** The view and all that is in it, in reading order. */
fun View.tree(): Sequence<View> = sequence {
    yield(this@tree)
    if (this@tree is ViewGroup) for (at in 0 until childCount) yieldAll(getChildAt(at).tree())
}

/** Two hands on the app: they see what is in the window, and touch it where it is. */
class Hands(room: File, at: List<Page> = emptyList()) {
    val app: TestApp = (RuntimeEnvironment.getApplication() as TestApp).also { it.lives(room) }
    private var control: ActivityController<Main> = Robolectric.buildActivity(Main::class.java)
    val main: Main get() = control.get()

    init {
        if (at.isNotEmpty()) app.kept.pages = at
        control.setup()
        settle()
    }

    /** Asks the core itself. */
    fun <T> ask(question: suspend (Engine) -> T): T = aside { question(app.engine()) }

    /** Waits until what was asked for is shown. A window that was made anew is taken over. */
    fun settle() {
        waitFor({ "page ${main.page}, shown: ${read()}" }) {
            main.rests && Off.rests
        }
        idle()
    }

    @Suppress("DEPRECATION")
    fun back() {
        main.onBackPressed()
        settle()
    }

    /** Turns the phone, or changes anything else of it. */
    fun becomes(qualifiers: String) {
        RuntimeEnvironment.setQualifiers(qualifiers)
        control.configurationChange().visible()
        settle()
    }

    fun pause() {
        control.pause().stop()
    }

    fun comesBack() {
        control.restart().start().resume().visible()
        settle()
    }

    /** Lets go of the book, so that another window can open it. */
    fun leave() {
        aside { app.engine().closeBook() }
        control.pause().stop().destroy()
        idle()
    }

    val shown: Sequence<View> get() = main.window.decorView.tree().filter { it.isShown }

    /** Everything that can be read. */
    fun read(): List<String> = shown.mapNotNull { (it as? TextView)?.text?.toString() }.filter { it.isNotEmpty() }.toList()

    fun sees(text: String): Boolean = read().any { text in it }

    private fun find(what: String, fits: (View) -> Boolean): View =
        shown.firstOrNull(fits) ?: throw AssertionError("$what is not on ${main.page}: ${read()}")

    /** Touches a view where it is, as a finger does. */
    fun touch(view: View) {
        view.requestRectangleOnScreen(android.graphics.Rect(0, 0, view.width, view.height), true)
        idle()
        val at = IntArray(2).also(view::getLocationInWindow)
        val (x, y) = at[0] + view.width / 2f to at[1] + view.height / 2f
        check(x >= 0 && y >= 0 && x < main.window.decorView.width && y < main.window.decorView.height) { "it is out of the window: $view" }
        val begun = SystemClock.uptimeMillis()
        val event = { action: Int, after: Long ->
            MotionEvent.obtain(begun, begun + after, action, x, y, 0).also {
                main.window.decorView.dispatchTouchEvent(it)
                it.recycle()
            }
        }
        event(MotionEvent.ACTION_DOWN, 0)
        shadowOf(Looper.getMainLooper()).idleFor(Duration.ofMillis(120))
        event(MotionEvent.ACTION_UP, 120)
        shadowOf(Looper.getMainLooper()).idleFor(Duration.ofMillis(200))
    }

    /** Drags one finger after another along its points, shares of a view's width and height; with two, both at once. */
    fun drag(view: View, vararg fingers: List<Pair<Float, Float>>) {
        view.requestRectangleOnScreen(android.graphics.Rect(0, 0, view.width, view.height), true)
        idle()
        val begun = SystemClock.uptimeMillis()
        val event = { action: Int, step: Int, count: Int ->
            val who = Array(count) { finger -> MotionEvent.PointerProperties().apply { id = finger } }
            val where = Array(count) { finger ->
                val at = IntArray(2).also(view::getLocationInWindow)
                val (right, down) = fingers[finger].let { it[step.coerceAtMost(it.lastIndex)] }
                MotionEvent.PointerCoords().apply {
                    x = at[0] + right * view.width
                    y = at[1] + down * view.height
                    check(x >= 0 && y >= 0 && x < main.window.decorView.width && y < main.window.decorView.height) { "it is out of the window" }
                }
            }
            MotionEvent.obtain(begun, begun + 20L * step, action, count, who, where, 0, 0, 1f, 1f, 0, 0, 0, 0).also {
                main.window.decorView.dispatchTouchEvent(it)
                it.recycle()
            }
        }
        val second = MotionEvent.ACTION_POINTER_DOWN or (1 shl MotionEvent.ACTION_POINTER_INDEX_SHIFT)
        event(MotionEvent.ACTION_DOWN, 0, 1)
        if (fingers.size > 1) event(second, 0, 2)
        val steps = fingers.maxOf { it.size }
        for (step in 1 until steps) event(MotionEvent.ACTION_MOVE, step, fingers.size)
        if (fingers.size > 1) event(MotionEvent.ACTION_POINTER_UP or (1 shl MotionEvent.ACTION_POINTER_INDEX_SHIFT), steps - 1, 2)
        event(MotionEvent.ACTION_UP, steps - 1, 1)
        idle()
    }

    /** Taps what has this label. */
    fun tap(label: String) {
        touch(find("“$label”") { it is Button && it !is CompoundButton && it.text.toString() == label })
        settle()
    }

    /** Taps a row that begins so. */
    fun open(row: String) {
        touch(find("a row “$row”") { it is TextView && it !is Button && it.hasOnClickListeners() && it.text.startsWith(row) })
        settle()
    }

    /** Types in the field that is spoken so, with the letters' or our own keypad. */
    fun type(field: String, text: String, number: Int = 0) {
        val found = shown.filter { (it is EditText || it is NumberBox) && it.contentDescription.toString().let { said -> said == field || said.startsWith("$field,") } }
        when (val view = found.elementAtOrNull(number) ?: throw AssertionError("no field “$field”: ${read()}")) {
            is EditText -> {
                view.requestFocus()
                view.setText("")
                checkNotNull(view.onCreateInputConnection(EditorInfo())).commitText(text, 1)
                idle()
            }
            is NumberBox -> {
                if (!view.isFocused) touch(view)
                while (view.text.isNotEmpty()) key(main.getString(R.string.erase))
                text.forEach { key(it.toString()) }
            }
        }
    }

    /** Presses a key of the keypad. */
    fun key(label: String) {
        val pad = find("the keypad") { it is Keypad }
        touch(pad.tree().first { it is Button && it.text.toString() == label })
        idle()
    }

    /** Takes one of a field's choices. */
    fun choose(field: String, choice: String) {
        val said = "$field: $choice"
        val button = find("“$said”") { it is CompoundButton && it.contentDescription.toString() == said } as CompoundButton
        if (!button.isChecked) touch(button)
        idle()
    }
}
