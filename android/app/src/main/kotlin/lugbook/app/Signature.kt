package lugbook.app

import android.annotation.SuppressLint
import android.content.Context
import android.graphics.Canvas
import android.graphics.Paint
import android.graphics.Path
import android.view.HapticFeedbackConstants
import android.view.MotionEvent
import android.view.View
import android.widget.Button
import android.widget.LinearLayout
import kotlin.math.hypot
import kotlin.math.min
import lugbook.core.EntryField

/**
 * A signature, drawn with a finger or a stylus on a field three times as wide as it is high.
 *
 * What it says are strokes set apart by `;`, points by a blank, each `across,down` in thousandths of the field.
 */
@SuppressLint("ViewConstructor")
class Signature(context: Context, private val pen: Pen) : View(context) {
    private val strokes = mutableListOf<MutableList<Pair<Int, Int>>>()
    private var drawing = false

    /** Told after each stroke, and when one was taken back. */
    var onDrawn: () -> Unit = {}

    private val ink = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        color = pen.ink
        style = Paint.Style.STROKE
        strokeWidth = pen.dp(INK).toFloat()
        strokeCap = Paint.Cap.ROUND
        strokeJoin = Paint.Join.ROUND
    }
    private val line = Paint().apply {
        color = pen.faint
        strokeWidth = pen.dp(2).toFloat()
    }

    init {
        background = pen.box(pen.sheet, pen.line, 2)
        isFocusable = true
    }

    /** How many strokes stand there. */
    val count: Int get() = strokes.size

    /** What was drawn. */
    var value: String
        get() = strokes.joinToString(";") { stroke -> stroke.joinToString(" ") { (across, down) -> "$across,$down" } }
        set(value) {
            strokes.clear()
            value.split(';').forEach { stroke ->
                val points = stroke.trim().split(' ').mapNotNull { point ->
                    point.split(',').mapNotNull { it.toIntOrNull() }.takeIf { it.size == 2 }?.let { (across, down) -> across to down }
                }
                if (points.isNotEmpty()) strokes += points.toMutableList()
            }
            invalidate()
        }

    /** Takes the last stroke back. */
    fun undo() {
        strokes.removeLastOrNull()
        // A dot by itself is nobody's signature.
        if (points < 2) strokes.clear()
        changed()
    }

    fun clear() {
        strokes.clear()
        changed()
    }

    private val points: Int get() = strokes.sumOf { it.size }

    private fun changed() {
        invalidate()
        onDrawn()
    }

    override fun onMeasure(wide: Int, high: Int) {
        val width = min(MeasureSpec.getSize(wide), pen.dp(WIDEST))
        setMeasuredDimension(width, Math.round(width / FORM))
    }

    override fun onDraw(canvas: Canvas) {
        super.onDraw(canvas)
        val edge = width * EDGE
        canvas.drawLine(edge, height * BASE, width - edge, height * BASE, line)
        strokes.forEach { stroke ->
            val path = Path()
            stroke.forEachIndexed { at, (across, down) ->
                val (x, y) = across * width / WHOLE to down * height / WHOLE
                if (at == 0) path.moveTo(x, y) else path.lineTo(x, y)
            }
            // A dot has no length.
            if (stroke.size == 1) path.rLineTo(1f, 0f)
            canvas.drawPath(path, ink)
        }
    }

    @SuppressLint("ClickableViewAccessibility")
    override fun onTouchEvent(event: MotionEvent): Boolean {
        when (event.actionMasked) {
            MotionEvent.ACTION_DOWN -> {
                // The page stands still below the finger.
                parent?.requestDisallowInterceptTouchEvent(true)
                drawing = strokes.size < MOST_STROKES && points < MOST_POINTS
                if (drawing) strokes += mutableListOf(point(event.x, event.y)) else performHapticFeedback(HapticFeedbackConstants.LONG_PRESS)
            }
            MotionEvent.ACTION_MOVE -> if (drawing) {
                for (past in 0 until event.historySize) on(event.getHistoricalX(past), event.getHistoricalY(past))
                on(event.x, event.y)
            }
            MotionEvent.ACTION_UP, MotionEvent.ACTION_CANCEL -> if (drawing) {
                drawing = false
                if (points < 2) strokes.clear()
                changed()
            }
        }
        invalidate()
        return true
    }

    /** Goes on to a point, where that is not nearer than a fingertip can mean. */
    private fun on(x: Float, y: Float) {
        val stroke = strokes.last()
        val (next, last) = point(x, y) to stroke.last()
        val away = hypot((next.first - last.first).toFloat(), (next.second - last.second) / FORM)
        if (away >= NEAR && points < MOST_POINTS) stroke += next
    }

    private fun point(x: Float, y: Float): Pair<Int, Int> =
        Math.round(x / width * WHOLE).coerceIn(0, WHOLE.toInt()) to Math.round(y / height * WHOLE).coerceIn(0, WHOLE.toInt())

    private companion object {
        const val WHOLE = 1000f
        const val FORM = 3f
        const val NEAR = 4f
        const val MOST_STROKES = 60
        const val MOST_POINTS = 2000

        /** It is never wider, dp: a hand signs on no more. */
        const val WIDEST = 600
        const val INK = 3
        const val BASE = 0.72f
        const val EDGE = 0.05f
    }
}

/** A field that is signed: it may stay empty, and is kept after each stroke. */
@SuppressLint("ViewConstructor")
class SignatureField(private val pen: Pen, private val field: EntryField, private val filled: Filled) : LinearLayout(pen.context) {
    private val signature = Signature(context, pen)
    private val undo = button(R.string.signature_undo) { signature.undo() }
    private val clear = button(R.string.signature_clear) { signature.clear() }

    init {
        orientation = VERTICAL
        signature.value = filled[field]
        signature.accessibilityLiveRegion = ACCESSIBILITY_LIVE_REGION_POLITE
        signature.onDrawn = {
            filled[field] = signature.value
            tell()
        }
        addView(signature)
        put(pen.row().apply {
            put(undo, 0, 1f)
            put(clear, 8, 1f)
        }, 8)
        tell()
    }

    private fun button(word: Int, tapped: () -> Unit): Button =
        context.getString(word).let { label -> pen.button(label, "${field.spoken}: $label", tapped = tapped) }

    private fun tell() {
        val count = signature.count
        val state = if (count == 0) context.getString(R.string.signature_empty) else resources.getQuantityString(R.plurals.signature_signed, count, count)
        signature.contentDescription = "${field.spoken}: $state"
        listOf(undo, clear).forEach { button ->
            button.isEnabled = count > 0
            button.alpha = if (count > 0) 1f else Pen.PALE
        }
    }
}
