package lugbook.app

import android.annotation.SuppressLint
import android.content.Context
import android.graphics.Bitmap
import android.graphics.Canvas
import android.graphics.Paint
import android.graphics.RectF
import android.view.HapticFeedbackConstants
import android.view.MotionEvent
import android.view.View
import java.util.Locale
import kotlin.math.abs
import kotlin.math.hypot
import kotlin.math.min

/**
 * A ring over a picture: dragged by its middle, widened by its edge.
 *
 * What it says is a share of the picture's width, so that it fits the photo in any size.
 */
@SuppressLint("ViewConstructor")
class Ring(context: Context, private val pen: Pen) : View(context) {
    /** The picture under it; none over a camera. */
    var picture: Bitmap? = null
        set(value) {
            field = value
            lay()
            invalidate()
        }

    /** Somebody dragged it. */
    var moved = false
        private set

    /** Told after each drag. */
    var onMoved: () -> Unit = {}

    private val frame = RectF()
    private var across = MIDDLE
    private var down = MIDDLE
    private var radius = WIDE
    private var held = Held.NOTHING
    private var fromX = 0f
    private var fromY = 0f
    private val dark = stroke(DARK_WIDTH, DARK)
    private val chalk = stroke(CHALK_WIDTH, pen.chalk)

    private enum class Held { NOTHING, MIDDLE, EDGE }

    init {
        contentDescription = context.getString(R.string.ring)
        isFocusable = true
    }

    /** Middle across, middle down and radius, each as a share of the picture's width. */
    val value: String
        get() = listOf(across, down, radius).joinToString(" ") { String.format(Locale.ROOT, "%.4f", it) }

    /** It only shows where the tire goes, and can't be dragged. */
    fun guides() {
        isEnabled = false
        isFocusable = false
        importantForAccessibility = IMPORTANT_FOR_ACCESSIBILITY_NO
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
                val away = hypot(x - across, y - down)
                val reach = pen.dp(Pen.REACH) / frame.width()
                held = when {
                    abs(away - radius) < reach && away > radius / 2 -> Held.EDGE
                    away < radius -> Held.MIDDLE
                    else -> Held.NOTHING
                }
                fromX = x - across
                fromY = y - down
                if (held != Held.NOTHING) {
                    parent?.requestDisallowInterceptTouchEvent(true)
                    performHapticFeedback(HapticFeedbackConstants.VIRTUAL_KEY)
                }
                return held != Held.NOTHING
            }
            MotionEvent.ACTION_MOVE -> when (held) {
                Held.MIDDLE -> moveTo(x - fromX, y - fromY)
                Held.EDGE -> widenTo(hypot(x - across, y - down))
                Held.NOTHING -> return false
            }
            MotionEvent.ACTION_UP, MotionEvent.ACTION_CANCEL -> held = Held.NOTHING
        }
        return true
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
        onMoved()
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
    }
}
