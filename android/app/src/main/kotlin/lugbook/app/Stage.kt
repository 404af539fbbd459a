package lugbook.app

import android.content.res.Configuration
import android.graphics.Typeface
import android.os.Build
import android.view.View
import android.view.ViewGroup
import android.view.WindowInsets
import android.widget.Button
import android.widget.LinearLayout
import android.widget.ScrollView
import android.widget.TextView
import lugbook.core.HoldingHand

/** The parts of the window: heading, content, what was said, keypad, the next thing to do, and the five places. */
class Stage(private val pen: Pen, hand: HoldingHand, private val chosen: (Place) -> Unit) {
    private val context = pen.context
    private val wide = context.resources.configuration.orientation == Configuration.ORIENTATION_LANDSCAPE
    private val low = !wide && context.resources.configuration.screenHeightDp < LOW
    private val leftHand = hand == HoldingHand.LEFT

    val head = pen.row()
    val content = pen.column().apply { setPadding(pen.dp(16), pen.dp(4), pen.dp(16), pen.dp(24)) }
    private val page = pen.column().apply { put(content) }
    val scroll = ScrollView(context).apply {
        isFillViewport = true
        clipToPadding = false
        addView(page)
    }
    val bar = pen.column()
    private val pair = pen.row()
    val pad = pen.column()
    val foot = pen.column()
    private val places = if (wide) pen.column() else pen.row()

    /** The whole window. */
    val root: View = if (wide) beside() else below()

    init {
        val room = pen.dp(if (wide) 2 else 6)
        foot.setPadding(pen.dp(12), room, pen.dp(12), room)
        root.setBackgroundColor(pen.ground)
        // Where the focus rests when no field has it.
        root.isFocusableInTouchMode = true
        root.setOnApplyWindowInsetsListener { view, insets ->
            if (Build.VERSION.SDK_INT >= 30) {
                val bars = insets.getInsets(WindowInsets.Type.systemBars() or WindowInsets.Type.displayCutout() or WindowInsets.Type.ime())
                view.setPadding(bars.left, bars.top, bars.right, bars.bottom)
            } else {
                @Suppress("DEPRECATION")
                view.setPadding(insets.systemWindowInsetLeft, insets.systemWindowInsetTop, insets.systemWindowInsetRight, insets.systemWindowInsetBottom)
            }
            insets
        }
    }

    private fun below(): View = pen.column().apply {
        put(head)
        put(scroll, weight = 1f)
        put(bar)
        // Where the window is low, keys scroll with the page.
        if (low) page.put(pad) else put(pad)
        put(foot)
        put(places)
    }

    private fun beside(): View = pen.row().apply {
        val main = pen.column().apply {
            put(head)
            put(scroll, weight = 1f)
        }
        val side = pen.column().apply {
            val upper = pen.column().apply {
                put(bar)
                put(pad)
            }
            put(ScrollView(context).apply { addView(upper) }, weight = 1f)
            put(foot)
        }
        val wheel = ScrollView(context).apply { addView(places) }
        val parts = listOf(
            wheel to LinearLayout.LayoutParams(pen.dp(96), ViewGroup.LayoutParams.MATCH_PARENT),
            main to LinearLayout.LayoutParams(0, ViewGroup.LayoutParams.MATCH_PARENT, 1f),
            side to LinearLayout.LayoutParams(pen.dp(352), ViewGroup.LayoutParams.MATCH_PARENT),
        )
        // What is pressed lies under the thumb that holds it.
        (if (leftHand) parts.asReversed() else parts).forEach { (part, measures) -> addView(part, measures) }
    }

    /** The five places, the one that is in front marked by a bar and bold lettering. */
    fun places(at: Place?) {
        places.removeAllViews()
        PLACES.forEach { (place, label) ->
            val here = place == at
            val word = context.getString(label)
            val button = Button(context).apply {
                text = word
                contentDescription = word
                isAllCaps = false
                stateListAnimator = null
                setTextColor(pen.ink)
                setTextSize(android.util.TypedValue.COMPLEX_UNIT_SP, 15f)
                maxLines = 1
                setAutoSizeTextTypeUniformWithConfiguration(pen.dp(10), pen.dp(16), pen.dp(1), android.util.TypedValue.COMPLEX_UNIT_PX)
                typeface = if (here) Typeface.DEFAULT_BOLD else Typeface.DEFAULT
                isSelected = here
                background = pen.face(if (here) pen.sheet else pen.ground, pen.pressed, if (here) pen.ink else pen.ground)
                minWidth = 0
                minimumWidth = 0
                minHeight = pen.dp(Pen.REACH)
                setPadding(pen.dp(3), 0, pen.dp(3), 0)
                setOnClickListener { chosen(place) }
            }
            places.addView(button, if (wide) LinearLayout.LayoutParams(pen.dp(96), pen.dp(Pen.REACH))
            else LinearLayout.LayoutParams(0, pen.dp(Pen.REACH), 1f))
        }
    }

    /** The keypad is shown. */
    val typing: Boolean get() = pad.childCount > 0

    /** Shows the keypad, or takes it away. */
    fun keypad(keypad: Keypad?) {
        if (pad.getChildAt(0) === keypad) return
        pad.removeAllViews()
        keypad?.let { pad.put(it) }
        places.visibility = if (keypad != null && !wide) View.GONE else View.VISIBLE
    }

    /** Two buttons beside the work, the second under the thumb: above the main one, or in the heading where the window is low. */
    fun pair(first: View?, second: View?) {
        pair.removeAllViews()
        val both = listOfNotNull(first, second).let { if (leftHand) it.asReversed() else it }
        both.forEachIndexed { at, view -> if (wide || low) pair.put(view, 8) else pair.put(view, if (at > 0) 8 else 0, 1f) }
        if (both.isNotEmpty() && !wide && !low) foot.put(pair)
    }

    /** The heading of the page. */
    fun heading(title: String, back: (() -> Unit)?) {
        head.removeAllViews()
        back?.let { head.put(pen.back(it)) }
        val text = pen.heading(title, Pen.HEADING).apply {
            setPadding(pen.dp(if (back == null) 16 else 4), pen.dp(10), pen.dp(16), pen.dp(6))
            gravity = android.view.Gravity.CENTER_VERTICAL
            maxLines = 2
            minimumHeight = pen.dp(52)
        }
        head.put<TextView>(text, weight = 1f)
        if (wide || low) head.put(pair)
    }

    companion object {
        /** A window lower than this, dp, has no room for keys below the page. */
        private const val LOW = 600

        val PLACES = listOf(
            Place.BAY to R.string.bay, Place.BOOK to R.string.book, Place.CREW to R.string.crew,
            Place.BENCH to R.string.bench, Place.SETTINGS to R.string.settings,
        )
    }
}
