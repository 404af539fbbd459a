package lugbook.app

import android.app.Activity
import android.content.ActivityNotFoundException
import android.content.Context
import android.content.Intent
import android.os.Build
import android.os.Bundle
import android.view.View
import android.view.WindowInsets
import android.widget.LinearLayout
import android.widget.ScrollView
import java.io.IOException
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.SupervisorJob
import kotlinx.coroutines.cancel
import kotlinx.coroutines.launch
import lugbook.core.Refusal

/** A window beside the book's: what is the phone's own affair, on one page that scrolls. */
abstract class Beside : Activity() {
    protected val scope = CoroutineScope(SupervisorJob() + Dispatchers.Main.immediate)
    protected val app get() = application as App
    protected lateinit var pen: Pen
    protected lateinit var content: LinearLayout

    /** What stands above. */
    protected abstract val title: Int

    /** Draws the page anew. */
    protected abstract suspend fun fill()

    /** It was drawn to the end: a test waits for it. */
    var drawn = false
        private set

    override fun attachBaseContext(base: Context) {
        super.attachBaseContext(base)
        val look = (base.applicationContext as? App)?.look ?: return
        applyOverrideConfiguration(look.over(base.resources.configuration))
    }

    override fun onCreate(state: Bundle?) {
        super.onCreate(state)
        pen = Pen(this)
        content = pen.column().apply { setPadding(pen.dp(16), pen.dp(4), pen.dp(16), pen.dp(24)) }
        val root = pen.column().apply { setBackgroundColor(pen.ground) }
        val head = pen.row()
        head.put(pen.back { finish() })
        head.put(pen.heading(getString(title)).apply { setPadding(pen.dp(4), pen.dp(16), pen.dp(16), pen.dp(8)) }, weight = 1f)
        root.put(head)
        root.put(ScrollView(this).apply { addView(content) }, weight = 1f)
        root.setOnApplyWindowInsetsListener { view, insets ->
            pad(view, insets)
            insets
        }
        setContentView(root)
    }

    private fun pad(view: View, insets: WindowInsets) {
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.R) {
            val bars = insets.getInsets(WindowInsets.Type.systemBars() or WindowInsets.Type.displayCutout() or WindowInsets.Type.ime())
            view.setPadding(bars.left, bars.top, bars.right, bars.bottom)
        } else {
            @Suppress("DEPRECATION")
            view.setPadding(insets.systemWindowInsetLeft, insets.systemWindowInsetTop, insets.systemWindowInsetRight, insets.systemWindowInsetBottom)
        }
    }

    override fun onStart() {
        super.onStart()
        asking { fill() }
    }

    override fun onDestroy() {
        scope.cancel()
        super.onDestroy()
    }

    /** Does something, and tells what went wrong above all else. */
    protected fun asking(work: suspend () -> Unit) {
        drawn = false
        scope.launch {
            try {
                work()
            } catch (refusal: Refusal) {
                tell(refusal.told(this@Beside))
            } catch (_: IOException) {
                tell(getString(R.string.phone_full))
            }
            drawn = true
        }
    }

    protected fun tell(sentence: String) {
        content.findViewWithTag<View>(TOLD)?.let(content::removeView)
        val panel = pen.panel(pen.ink, 3).apply {
            tag = TOLD
            put(pen.text(sentence, bold = true).apply { accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE })
        }
        content.addView(panel, 0)
    }

    @Suppress("DEPRECATION")
    protected fun reach(intent: Intent, request: Int = 0) {
        try {
            startActivityForResult(intent, request)
        } catch (_: ActivityNotFoundException) {
            tell(getString(R.string.no_such_part))
        }
    }

    companion object {
        private const val TOLD = "told"

        /** The window that stands for a page; none where it is one of the book's. */
        fun of(context: Context, page: Page): Intent? = when (page.place) {
            Place.REMINDERS -> Reminding.of(context, page.of.getOrNull(0)?.ifEmpty { null }, page.of.getOrNull(1)?.toIntOrNull())
            Place.COPIES -> Intent(context, OutOfPhone::class.java)
            else -> null
        }
    }
}
