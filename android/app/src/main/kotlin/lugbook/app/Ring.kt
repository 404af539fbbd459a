package lugbook.app

import android.annotation.SuppressLint
import android.content.Context
import android.graphics.Bitmap
import android.graphics.BitmapFactory
import android.graphics.Canvas
import android.graphics.ColorFilter
import android.graphics.DashPathEffect
import android.graphics.Paint
import android.graphics.Path
import android.graphics.PixelFormat
import android.graphics.RectF
import android.graphics.drawable.Drawable
import android.view.Gravity
import android.view.HapticFeedbackConstants
import android.view.MotionEvent
import android.view.View
import android.widget.Button
import android.widget.LinearLayout
import java.util.Locale
import kotlin.math.abs
import kotlin.math.hypot
import kotlin.math.min
import lugbook.core.EntryField

/**
 * A ring over a picture: dragged by its middle, widened by its edge or by two fingers.
 *
 * What it says is a share of the picture's width, so that it fits the photo in any size. Until somebody moved it, it is
 * dashed. On a page that [scrolls] it is taken by its middle or its edge alone; anywhere else the page is.
 */
@SuppressLint("ViewConstructor")
class Ring(context: Context, private val pen: Pen, private val scrolls: Boolean = false) : View(context) {
    /** The picture under it; none over a camera. */
    var picture: Bitmap? = null
        set(value) {
            field = value
            requestLayout()
            lay()
            invalidate()
        }

    /** Somebody moved it. */
    var moved = false
        private set

    /** Told when it was let go of. */
    var onMoved: () -> Unit = {}

    private val frame = RectF()
    private var across = MIDDLE
    private var down = MIDDLE
    private var radius = WIDE
    private var held = Held.NOTHING
    private var fromX = 0f
    private var fromY = 0f
    private var fromRadius = 0f
    private var apart = 0f
    private val dark = stroke(DARK_WIDTH, DARK)
    private val chalk = stroke(CHALK_WIDTH, pen.chalk)

    private enum class Held { NOTHING, MIDDLE, EDGE, TWO }

    init {
        contentDescription = context.getString(R.string.ring)
        isFocusable = true
    }

    /** Middle across, middle down and radius, each as a share of the picture's width; empty until somebody moved it. */
    var value: String
        get() = if (moved) listOf(across, down, radius).joinToString(" ") { String.format(Locale.ROOT, "%.4f", it) } else ""
        set(value) {
            val shares = value.split(' ').mapNotNull { it.toFloatOrNull() }
            moved = shares.size == 3
            if (moved) {
                across = shares[0]
                down = shares[1]
                radius = shares[2]
            }
            lay()
            invalidate()
        }

    /** Moves it, and widens it, by shares of the picture's width. */
    fun by(right: Float, down: Float, wider: Float) {
        moveTo(across + right, this.down + down)
        widenTo(radius + wider)
        onMoved()
    }

    /** It only shows where the tire goes, and can't be dragged. */
    fun guides() {
        isEnabled = false
        isFocusable = false
        importantForAccessibility = IMPORTANT_FOR_ACCESSIBILITY_NO
    }

    /** On a page it is as wide as that, and as high as the picture, but never higher than most of the screen. */
    override fun onMeasure(wide: Int, high: Int) {
        if (MeasureSpec.getMode(high) != MeasureSpec.UNSPECIFIED) return super.onMeasure(wide, high)
        val width = MeasureSpec.getSize(wide)
        val form = picture?.let { it.height.toFloat() / it.width } ?: USUAL_FORM
        setMeasuredDimension(width, min(width * form, resources.displayMetrics.heightPixels * MOST_OF_SCREEN).toInt())
    }

    override fun onSizeChanged(width: Int, height: Int, oldWidth: Int, oldHeight: Int) {
        super.onSizeChanged(width, height, oldWidth, oldHeight)
        lay()
    }

    /** Where the picture lies: whole, in the middle. */
    private fun lay() {
        val shown = picture
        if (width == 0 || height == 0) return
        if (shown == null) {
            frame.set(0f, 0f, width.toFloat(), height.toFloat())
        } else {
            val scale = min(width / shown.width.toFloat(), height / shown.height.toFloat())
            val (wide, high) = shown.width * scale to shown.height * scale
            frame.set((width - wide) / 2, (height - high) / 2, (width + wide) / 2, (height + high) / 2)
        }
        if (!moved) {
            across = MIDDLE
            down = frame.height() / frame.width() / 2
            radius = WIDE * min(1f, frame.height() / frame.width())
        }
    }

    override fun onDraw(canvas: Canvas) {
        super.onDraw(canvas)
        picture?.let { canvas.drawBitmap(it, null, frame, null) }
        val x = frame.left + across * frame.width()
        val y = frame.top + down * frame.width()
        val r = radius * frame.width()
        // What can be moved and was not is only where it might be.
        chalk.pathEffect = if (moved || !isEnabled) null else DashPathEffect(floatArrayOf(pen.dp(DASH).toFloat(), pen.dp(DASH).toFloat()), 0f)
        for (paint in listOf(dark, chalk)) {
            canvas.drawCircle(x, y, r, paint)
            canvas.drawLine(x - pen.dp(CROSS), y, x + pen.dp(CROSS), y, paint)
            canvas.drawLine(x, y - pen.dp(CROSS), x, y + pen.dp(CROSS), paint)
            canvas.drawCircle(x + r, y, pen.dp(GRIP).toFloat(), paint)
            canvas.drawCircle(x - r, y, pen.dp(GRIP).toFloat(), paint)
        }
    }

    @SuppressLint("ClickableViewAccessibility")
    override fun onTouchEvent(event: MotionEvent): Boolean {
        if (!isEnabled) return false
        val x = (event.x - frame.left) / frame.width()
        val y = (event.y - frame.top) / frame.width()
        when (event.actionMasked) {
            MotionEvent.ACTION_DOWN -> {
                held = at(hypot(x - across, y - down))
                fromX = x - across
                fromY = y - down
                if (held != Held.NOTHING) {
                    parent?.requestDisallowInterceptTouchEvent(true)
                    performHapticFeedback(HapticFeedbackConstants.VIRTUAL_KEY)
                }
                return held != Held.NOTHING
            }
            MotionEvent.ACTION_POINTER_DOWN -> if (event.pointerCount == 2) {
                held = Held.TWO
                apart = apart(event)
                fromRadius = radius
            }
            MotionEvent.ACTION_MOVE -> when (held) {
                Held.MIDDLE -> moveTo(x - fromX, y - fromY)
                Held.EDGE -> widenTo(hypot(x - across, y - down))
                Held.TWO -> if (event.pointerCount > 1 && apart > 0) widenTo(fromRadius * apart(event) / apart)
                Held.NOTHING -> return false
            }
            // The finger that is left does not pull it along.
            MotionEvent.ACTION_POINTER_UP -> held = Held.NOTHING.also { tell() }
            MotionEvent.ACTION_UP, MotionEvent.ACTION_CANCEL -> {
                if (held != Held.NOTHING) tell()
                held = Held.NOTHING
            }
        }
        return true
    }

    /** What a finger takes hold of, so far from the middle. */
    private fun at(away: Float): Held {
        val reach = pen.dp(if (scrolls) Pen.REACH / 2 else Pen.REACH) / frame.width()
        return when {
            abs(away - radius) < reach && away > radius / 2 -> Held.EDGE
            away < if (scrolls) pen.dp(CORE) / frame.width() else radius -> Held.MIDDLE
            else -> Held.NOTHING
        }
    }

    private fun apart(event: MotionEvent): Float = hypot(event.getX(0) - event.getX(1), event.getY(0) - event.getY(1))

    private fun tell() {
        if (moved) onMoved()
    }

    private fun moveTo(x: Float, y: Float) {
        across = x.coerceIn(0f, 1f)
        down = y.coerceIn(0f, frame.height() / frame.width())
        dragged()
    }

    private fun widenTo(r: Float) {
        radius = r.coerceIn(LEAST, 1f)
        dragged()
    }

    private fun dragged() {
        moved = true
        invalidate()
    }

    private fun stroke(width: Int, color: Int) = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        style = Paint.Style.STROKE
        strokeWidth = pen.dp(width).toFloat()
        this.color = color
    }

    private companion object {
        const val MIDDLE = 0.5f
        const val WIDE = 0.42f
        const val LEAST = 0.05f
        const val CROSS = 10
        const val GRIP = 12
        const val CHALK_WIDTH = 3
        const val DARK_WIDTH = 7
        const val DARK = 0xFF171816.toInt()
        const val DASH = 9

        /** On a page that scrolls, its middle reaches so far, dp. */
        const val CORE = 48

        /** The form of a picture that is not there yet. */
        const val USUAL_FORM = 0.75f
        const val MOST_OF_SCREEN = 0.55f
    }
}

/**
 * The ring over a photo of the book, with buttons for whoever would rather not drag.
 *
 * It is kept for its photo: another one has its own. Where nobody moved it, nothing is said of it, and the core finds it.
 */
@SuppressLint("ViewConstructor")
class RingField(private val pen: Pen, private val field: EntryField, photo: String, private val kept: Kept, private val filled: Filled) : LinearLayout(pen.context) {
    private val at = key(filled.key)
    private val ring = Ring(context, pen, scrolls = true)
    private val state = pen.text("", Pen.SMALL, color = pen.faint).apply { accessibilityLiveRegion = ACCESSIBILITY_LIVE_REGION_POLITE }
    private val alone = button(R.string.ring_alone) {
        ring.value = ""
        keep(photo)
    }

    init {
        orientation = VERTICAL
        val (of, where) = kept[at].orEmpty().split('\n').let { it.first() to it.getOrElse(1) { "" } }
        ring.value = if (of.isEmpty() || of == photo) where else ""
        ring.onMoved = { keep(photo) }
        Off.main({ BitmapFactory.decodeFile(photo) }) { ring.picture = it }
        put(ring)
        put(state, 6)
        put(pen.row().apply {
            put(button(R.string.ring_smaller) { ring.by(0f, 0f, -STEP) }, 0, 1f)
            put(button(R.string.ring_bigger) { ring.by(0f, 0f, STEP) }, 8, 1f)
        }, 8)
        val ways = listOf(
            Triple(R.string.ring_left, 180f, -1 to 0), Triple(R.string.ring_up, 270f, 0 to -1),
            Triple(R.string.ring_down, 90f, 0 to 1), Triple(R.string.ring_right, 0f, 1 to 0),
        )
        put(pen.row().apply {
            ways.forEachIndexed { number, (word, turned, way) ->
                val button = button(word) { ring.by(way.first * STEP, way.second * STEP, 0f) }
                button.text = ""
                button.foreground = Arrow(pen, turned)
                button.foregroundGravity = Gravity.CENTER
                put(button, if (number > 0) 8 else 0, 1f)
            }
        }, 8)
        put(alone, 8)
        keep(photo)
    }

    private fun button(word: Int, tapped: () -> Unit): Button =
        context.getString(word).let { label -> pen.button(label, "${field.spoken}: $label", tapped = tapped) }

    private fun keep(photo: String) {
        val value = ring.value
        filled[field] = value
        kept[at] = if (value.isEmpty()) null else "$photo\n$value"
        state.text = context.getString(if (ring.moved) R.string.ring_is_moved else R.string.ring_is_found)
        alone.isEnabled = ring.moved
        alone.alpha = if (ring.moved) 1f else Pen.PALE
    }

    companion object {
        /** What the ring of a wheel is kept under; told by the key of an action there. */
        fun key(action: String) = "phone#ring@${action.substringAfter('@').substringBefore('.')}"

        /** A tap moves it so far, as a share of the photo's width. */
        private const val STEP = 0.02f
    }
}

/** An arrow, turned clockwise from the right. */
class Arrow(private val pen: Pen, private val turned: Float) : Drawable() {
    private val paint = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        color = pen.ink
        style = Paint.Style.STROKE
        strokeWidth = pen.dp(4).toFloat()
        strokeJoin = Paint.Join.MITER
    }

    override fun getIntrinsicWidth() = pen.dp(32)

    override fun getIntrinsicHeight() = pen.dp(32)

    override fun draw(canvas: Canvas) {
        val (x, y) = bounds.exactCenterX() to bounds.exactCenterY()
        val reach = min(bounds.width(), bounds.height()) / 2f - pen.dp(3)
        canvas.save()
        canvas.rotate(turned, x, y)
        canvas.drawLine(x - reach, y, x + reach, y, paint)
        val head = Path().apply {
            moveTo(x + reach * 0.2f, y - reach * 0.7f)
            lineTo(x + reach, y)
            lineTo(x + reach * 0.2f, y + reach * 0.7f)
        }
        canvas.drawPath(head, paint)
        canvas.restore()
    }

    override fun setAlpha(alpha: Int) {
        paint.alpha = alpha
    }

    override fun setColorFilter(filter: ColorFilter?) {
        paint.colorFilter = filter
    }

    @Deprecated("Deprecated in Java")
    override fun getOpacity() = PixelFormat.TRANSLUCENT
}
