package lugbook.app

import android.content.Context
import android.graphics.Typeface
import android.graphics.drawable.Drawable
import android.graphics.drawable.GradientDrawable
import android.graphics.drawable.InsetDrawable
import android.graphics.drawable.StateListDrawable
import android.util.TypedValue
import android.view.Gravity
import android.view.HapticFeedbackConstants
import android.view.View
import android.view.ViewGroup
import android.widget.Button
import android.widget.LinearLayout
import android.widget.TextView

/** What everything is drawn with: colors of the ground, measures, lettering. */
class Pen(val context: Context) {
    private val density = context.resources.displayMetrics.density
    val ground = context.getColor(R.color.ground)
    val sheet = context.getColor(R.color.sheet)
    val ink = context.getColor(R.color.ink)
    val faint = context.getColor(R.color.faint)
    val line = context.getColor(R.color.line)
    val pressed = context.getColor(R.color.pressed)
    val chalk = context.getColor(R.color.chalk)
    val chalkPressed = context.getColor(R.color.chalk_pressed)
    val onChalk = context.getColor(R.color.on_chalk)

    fun dp(measure: Number): Int = Math.round(measure.toFloat() * density)

    /** The size of lettering in pixels, as large as the person set it. */
    fun sp(size: Number): Float =
        TypedValue.applyDimension(TypedValue.COMPLEX_UNIT_SP, size.toFloat(), context.resources.displayMetrics)

    /** A line of lettering. */
    fun text(text: CharSequence, size: Int = BODY, bold: Boolean = false, color: Int = ink): TextView =
        TextView(context).apply {
            this.text = text
            setTextSize(TypedValue.COMPLEX_UNIT_SP, size.toFloat())
            setTextColor(color)
            if (bold) typeface = Typeface.DEFAULT_BOLD
            setLineSpacing(0f, 1.1f)
        }

    /** A heading. */
    fun heading(text: String, size: Int = HEADING): TextView =
        text(text, size, bold = true).apply { isAccessibilityHeading = true }

    /** A column of views. */
    fun column(): LinearLayout = LinearLayout(context).apply { orientation = LinearLayout.VERTICAL }

    /** A row of views. */
    fun row(): LinearLayout = LinearLayout(context).apply {
        orientation = LinearLayout.HORIZONTAL
        isBaselineAligned = false
    }

    /** A column with a border. */
    fun panel(border: Int = line, width: Int = 1): LinearLayout = column().apply {
        background = box(sheet, border, width)
        setPadding(dp(14), dp(12), dp(14), dp(12))
    }

    fun box(fill: Int, border: Int, width: Int, round: Int = 8): GradientDrawable = GradientDrawable().apply {
        setColor(fill)
        setStroke(dp(width), border)
        cornerRadius = dp(round).toFloat()
    }

    /** A face that shows when it is pressed, and when it has the focus. */
    fun face(fill: Int, down: Int, border: Int): Drawable = StateListDrawable().apply {
        addState(intArrayOf(android.R.attr.state_pressed), box(down, ink, 3))
        addState(intArrayOf(android.R.attr.state_focused), box(fill, ink, 3))
        addState(intArrayOf(), box(fill, border, 2))
    }

    /** A button. A chief one is the next thing to do: chalk behind dark lettering. */
    fun button(label: String, spoken: String, chief: Boolean = false, tapped: () -> Unit): Button = Button(context).apply {
        text = label
        contentDescription = spoken
        isAllCaps = false
        stateListAnimator = null
        setTextSize(TypedValue.COMPLEX_UNIT_SP, (if (chief) CHIEF else BODY).toFloat())
        setTextColor(if (chief) onChalk else ink)
        typeface = Typeface.DEFAULT_BOLD
        gravity = Gravity.CENTER
        background = if (chief) face(chalk, chalkPressed, onChalk) else face(sheet, pressed, line)
        minimumHeight = dp(if (chief) 72 else REACH)
        minHeight = minimumHeight
        minimumWidth = dp(REACH)
        minWidth = minimumWidth
        setPadding(dp(12), dp(8), dp(12), dp(8))
        setOnClickListener { view ->
            view.performHapticFeedback(HapticFeedbackConstants.VIRTUAL_KEY)
            tapped()
        }
    }

    /** The button that leads back from a page. */
    fun back(tapped: () -> Unit): Button = button("‹", context.getString(R.string.back), tapped = tapped).apply {
        background = face(ground, pressed, ground)
        setTextSize(TypedValue.COMPLEX_UNIT_DIP, 36f)
        setPadding(0, 0, 0, dp(6))
    }

    /** Room around a drawable. */
    fun inset(drawable: Drawable, around: Int): Drawable = InsetDrawable(drawable, dp(around))

    companion object {
        /** What is pressed in the middle of a job is this large at the least, dp. */
        const val REACH = 64
        const val SMALL = 15
        const val BODY = 18
        const val HEADING = 20
        const val CHIEF = 21
        const val STEP = 26

        /** How much is left of what can not be pressed now. */
        const val PALE = 0.5f
    }
}

/** Adds a view across the whole width, with room above it. */
fun <V : View> LinearLayout.put(view: V, above: Int = 0, weight: Float = 0f): V {
    val horizontal = orientation == LinearLayout.HORIZONTAL
    val width = if (horizontal && weight > 0) 0 else if (horizontal) ViewGroup.LayoutParams.WRAP_CONTENT else ViewGroup.LayoutParams.MATCH_PARENT
    val height = if (!horizontal && weight > 0) 0 else if (horizontal) ViewGroup.LayoutParams.MATCH_PARENT else ViewGroup.LayoutParams.WRAP_CONTENT
    val room = Math.round(above * resources.displayMetrics.density)
    addView(view, LinearLayout.LayoutParams(width, height, weight).apply { if (horizontal) marginStart = room else topMargin = room })
    return view
}
