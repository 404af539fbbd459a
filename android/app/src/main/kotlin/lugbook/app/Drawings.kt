package lugbook.app

import android.content.Context
import android.graphics.Canvas
import android.graphics.Paint
import android.graphics.Path
import android.graphics.RectF
import android.graphics.Typeface
import android.graphics.drawable.Drawable
import android.view.Gravity
import android.view.View
import android.view.ViewGroup
import android.widget.TextView
import kotlin.math.atan2
import kotlin.math.cos
import kotlin.math.hypot
import kotlin.math.max
import kotlin.math.min
import kotlin.math.sin
import lugbook.core.ChartSeries
import lugbook.core.NutCircle
import lugbook.core.NutShape
import lugbook.core.VehicleDrawing

/** Drawings with parts that can be touched: each part is a view with its own spoken label. */
abstract class Drawing(protected val pen: Pen, private val height: Float, private val most: Int) : ViewGroup(pen.context) {
    protected val stroke = Paint(Paint.ANTI_ALIAS_FLAG).apply { style = Paint.Style.STROKE }
    protected val fill = Paint(Paint.ANTI_ALIAS_FLAG)

    private var drawnWide = 0

    /** A pixel's share: the drawing is 1 wide. */
    protected val scale: Float get() = drawnWide.toFloat()

    /** Where the drawing begins: it stands in the middle. */
    private val begin: Float get() = (width - drawnWide) / 2f

    override fun onMeasure(width: Int, height: Int) {
        val room = MeasureSpec.getSize(width)
        drawnWide = minOf(room, Math.round(pen.dp(most) / this.height))
        setMeasuredDimension(room, Math.round(drawnWide * this.height))
        for (at in 0 until childCount) getChildAt(at).measure(0, 0)
    }

    override fun dispatchDraw(canvas: Canvas) {
        canvas.save()
        canvas.translate(begin, 0f)
        sketch(canvas)
        canvas.restore()
        super.dispatchDraw(canvas)
    }

    /** Draws what lies under its parts. */
    protected abstract fun sketch(canvas: Canvas)

    /** Puts a view's middle at a point, with a size in pixels. */
    protected fun place(view: View, x: Double, y: Double, wide: Int, high: Int) {
        view.measure(MeasureSpec.makeMeasureSpec(wide, MeasureSpec.EXACTLY), MeasureSpec.makeMeasureSpec(high, MeasureSpec.EXACTLY))
        val left = Math.round(begin + x.toFloat() * scale) - wide / 2
        val top = Math.round(y.toFloat() * scale) - high / 2
        view.layout(left, top, left + wide, top + high)
    }
}

/** A vehicle from above with its moves. */
class CarView(
    pen: Pen,
    private val drawing: VehicleDrawing,
    private val inHand: String?,
    tapped: ((String) -> Unit)?,
) : Drawing(pen, drawing.height.toFloat(), if (inHand != null) 230 else 420) {
    private val lettering = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        color = pen.ink
        typeface = Typeface.DEFAULT_BOLD
    }

    init {
        contentDescription = drawing.spoken
        drawing.wheels.forEach { wheel ->
            val view = View(context)
            view.contentDescription = wheel.spoken
            if (tapped != null) {
                view.isFocusable = true
                view.background = pen.face(0, pen.pressed and 0x60FFFFFF, 0)
                view.setOnClickListener { tapped(wheel.at) }
            }
            addView(view)
        }
    }

    override fun onLayout(changed: Boolean, left: Int, top: Int, right: Int, bottom: Int) {
        val least = pen.dp(Pen.REACH)
        drawing.wheels.forEachIndexed { at, wheel ->
            val wide = max(least, Math.round(wheel.width.toFloat() * scale))
            val high = max(least, Math.round(wheel.length.toFloat() * scale))
            place(getChildAt(at), wheel.middle.x, wheel.middle.y, wide, high)
        }
    }

    override fun sketch(canvas: Canvas) {
        stroke.color = pen.line
        stroke.strokeWidth = pen.dp(2).toFloat()
        stroke.pathEffect = null
        val body = RectF(at(drawing.bodyFrom.x), at(drawing.bodyFrom.y), at(drawing.bodyTo.x), at(drawing.bodyTo.y))
        canvas.drawRoundRect(body, body.width() / 4, body.width() / 4, stroke)
        // Which end is the front.
        val nose = Path().apply {
            moveTo(body.centerX() - pen.dp(12), body.top + pen.dp(26))
            lineTo(body.centerX(), body.top + pen.dp(12))
            lineTo(body.centerX() + pen.dp(12), body.top + pen.dp(26))
        }
        canvas.drawPath(nose, stroke)
        drawing.axles.forEach { axle ->
            val of = drawing.wheels.filter { kotlin.math.abs(it.middle.y - axle) < 1e-6 }
            if (of.size > 1) canvas.drawLine(at(of.minOf { it.middle.x }), at(axle), at(of.maxOf { it.middle.x }), at(axle), stroke)
        }
        drawing.wheels.forEach { wheel ->
            val half = Pair(wheel.width / 2, wheel.length / 2)
            val shape = RectF(
                at(wheel.middle.x - half.first), at(wheel.middle.y - half.second),
                at(wheel.middle.x + half.first), at(wheel.middle.y + half.second),
            )
            val mine = wheel.at == inHand
            fill.color = if (mine) pen.chalk else pen.sheet
            val round = min(shape.width(), shape.height()) / if (wheel.width == wheel.length) 2 else 4
            canvas.drawRoundRect(shape, round, round, fill)
            stroke.color = pen.ink
            stroke.strokeWidth = pen.dp(if (mine) 4 else 2).toFloat()
            canvas.drawRoundRect(shape, round, round, stroke)
            lettering.textSize = min(pen.sp(17), at(0.075))
            lettering.color = pen.ink
            lettering.textAlign = when (wheel.nameAnchor) {
                "start" -> Paint.Align.LEFT
                "end" -> Paint.Align.RIGHT
                else -> Paint.Align.CENTER
            }
            canvas.drawText(wheel.at, at(wheel.nameAt.x), at(wheel.nameAt.y), lettering)
            wheel.mark?.let { mark ->
                lettering.textAlign = Paint.Align.CENTER
                lettering.color = if (mine) pen.onChalk else pen.ink
                lettering.textSize = min(at(wheel.width) * 0.8f / max(1, mark.length) * 1.6f, at(wheel.width) * 0.6f)
                canvas.drawText(mark, at(wheel.middle.x), at(wheel.middle.y) + lettering.textSize * 0.36f, lettering)
            }
        }
        drawing.arrows.forEach { arrow ->
            val (from, first, second, to) = arrow.points
            stroke.color = pen.ink
            stroke.strokeWidth = pen.dp(if (arrow.done) 2 else 4).toFloat()
            val path = Path().apply {
                moveTo(at(from.x), at(from.y))
                cubicTo(at(first.x), at(first.y), at(second.x), at(second.y), at(to.x), at(to.y))
            }
            // A border of the ground, so that crossing arrows stay apart.
            val ink = stroke.color
            stroke.color = pen.ground
            stroke.strokeWidth += pen.dp(4)
            canvas.drawPath(path, stroke)
            stroke.color = ink
            stroke.strokeWidth -= pen.dp(4)
            if (arrow.done) stroke.pathEffect = android.graphics.DashPathEffect(floatArrayOf(pen.dp(6).toFloat(), pen.dp(5).toFloat()), 0f)
            canvas.drawPath(path, stroke)
            stroke.pathEffect = null
            val angle = atan2(at(to.y) - at(second.y), at(to.x) - at(second.x))
            val long = pen.dp(14)
            val head = Path().apply {
                moveTo(at(to.x), at(to.y))
                lineTo(at(to.x) - long * cos(angle - 0.5f), at(to.y) - long * sin(angle - 0.5f))
                lineTo(at(to.x) - long * cos(angle + 0.5f), at(to.y) - long * sin(angle + 0.5f))
                close()
            }
            fill.color = pen.ink
            canvas.drawPath(head, fill)
        }
    }

    private fun at(share: Double): Float = share.toFloat() * scale
}

/** A wheel's nuts seen from outside: the order inside, the next one in chalk. */
class NutsView(pen: Pen, private val circle: NutCircle, tapped: ((NutShape) -> Unit)?) : Drawing(pen, 1f, if (circle.radius * 2 * USUAL < Pen.REACH) MOST else USUAL) {
    private val target = pen.text(circle.target?.text ?: circle.at, Pen.STEP, bold = true).apply {
        gravity = Gravity.CENTER
        contentDescription = circle.target?.spoken ?: circle.at
        setAutoSizeTextTypeUniformWithConfiguration(pen.dp(14), pen.dp(40), pen.dp(1), android.util.TypedValue.COMPLEX_UNIT_PX)
        setLineSpacing(0f, 1f)
    }

    init {
        circle.nuts.forEach { nut ->
            addView(NutFace(pen, nut, tapped != null).apply {
                if (tapped != null && nut.state == "next") setOnClickListener { tapped(nut) }
            })
        }
        addView(target)
    }

    override fun onLayout(changed: Boolean, left: Int, top: Int, right: Int, bottom: Int) {
        val wide = Math.round(circle.radius.toFloat() * 2 * scale)
        circle.nuts.forEachIndexed { at, nut -> place(getChildAt(at), nut.middle.x, nut.middle.y, wide, wide) }
        place(target, 0.5, 0.5, Math.round(scale * 0.4f), Math.round(scale * 0.2f))
    }

    override fun sketch(canvas: Canvas) {
        stroke.color = pen.line
        stroke.strokeWidth = pen.dp(2).toFloat()
        canvas.drawCircle(scale / 2, scale / 2, scale * 0.48f, stroke)
        // The way from the last nut to the next one.
        val order = circle.nuts.sortedBy { it.turn }
        val next = order.indexOfFirst { it.state == "next" }
        if (next > 0) {
            val (from, to) = order[next - 1].middle to order[next].middle
            canvas.drawLine(from.x.toFloat() * scale, from.y.toFloat() * scale, to.x.toFloat() * scale, to.y.toFloat() * scale, stroke)
        }
    }

    private companion object {
        /** How large the circle is, dp, and where more nuts stand on it: each is found by a finger. */
        const val USUAL = 292
        const val MOST = 380
    }
}

/** One nut: its turn in the order; done with a tick across, next in chalk where it can be turned now, waiting with a thin border. */
class NutFace(private val pen: Pen, private val nut: NutShape, private val live: Boolean) : TextView(pen.context) {
    private val paint = Paint(Paint.ANTI_ALIAS_FLAG)

    init {
        text = nut.turn.toString()
        contentDescription = nut.spoken
        gravity = Gravity.CENTER
        typeface = Typeface.DEFAULT_BOLD
        setTextColor(when {
            nut.state == "next" && live -> pen.onChalk
            nut.state == "done" -> pen.ground
            else -> pen.ink
        })
        isFocusable = true
    }

    override fun onMeasure(width: Int, height: Int) {
        super.onMeasure(width, height)
        setTextSize(android.util.TypedValue.COMPLEX_UNIT_PX, MeasureSpec.getSize(width) * 0.42f)
    }

    override fun onDraw(canvas: Canvas) {
        val middle = width / 2f
        val edge = middle - pen.dp(3)
        val hex = Path().apply {
            for (corner in 0 until 6) {
                val angle = Math.PI / 3 * corner
                val (x, y) = (middle + edge * cos(angle)).toFloat() to (middle + edge * sin(angle)).toFloat()
                if (corner == 0) moveTo(x, y) else lineTo(x, y)
            }
            close()
        }
        paint.style = Paint.Style.FILL
        paint.color = when {
            isPressed -> pen.pressed
            nut.state == "next" && live -> pen.chalk
            nut.state == "done" -> pen.ink
            else -> pen.sheet
        }
        canvas.drawPath(hex, paint)
        paint.style = Paint.Style.STROKE
        paint.color = pen.ink
        paint.strokeWidth = pen.dp(if (nut.state == "next") 5 else 2).toFloat()
        canvas.drawPath(hex, paint)
        super.onDraw(canvas)
        if (nut.state == "done") {
            paint.color = pen.ground
            paint.strokeWidth = pen.dp(3).toFloat()
            val low = middle + edge * 0.52f
            canvas.drawLine(middle - edge * 0.22f, low, middle - edge * 0.05f, low + edge * 0.16f, paint)
            canvas.drawLine(middle - edge * 0.05f, low + edge * 0.16f, middle + edge * 0.26f, low - edge * 0.16f, paint)
        }
    }

    override fun drawableStateChanged() {
        super.drawableStateChanged()
        invalidate()
    }
}

/** A tire's tread over distance: readings, forecast, and the least depth that is allowed. */
class ChartView(private val pen: Pen, private val series: ChartSeries, private val units: Pair<String, String>, private val decimal: Char) :
    View(pen.context) {
    private val paint = Paint(Paint.ANTI_ALIAS_FLAG)
    private val lettering = Paint(Paint.ANTI_ALIAS_FLAG).apply { color = pen.ink }

    init {
        contentDescription = series.told
    }

    override fun onMeasure(width: Int, height: Int) {
        val mine = MeasureSpec.getSize(width)
        setMeasuredDimension(mine, min(Math.round(mine * 0.6f), pen.dp(260)))
    }

    private fun worded(value: Double): String {
        val tenths = Math.round(value * 10)
        return if (tenths % 10 == 0L) "${tenths / 10}" else "${tenths / 10}$decimal${tenths % 10}"
    }

    override fun onDraw(canvas: Canvas) {
        lettering.textSize = pen.sp(13)
        val low = series.readings.minOfOrNull { it.distance } ?: return
        val far = max(series.readings.maxOf { it.distance }, series.band.maxOfOrNull { it.distance } ?: low)
        val deep = max(series.readings.maxOf { it.depth }, series.limit) * 1.1
        val left = pen.sp(13) * 3.2f
        val foot = height - pen.sp(13) * 1.8f
        val right = width - pen.dp(10).toFloat()
        val top = pen.sp(13) * 1.2f
        val x = { distance: Double -> if (far == low) (left + right) / 2 else left + ((distance - low) / (far - low)).toFloat() * (right - left) }
        val y = { depth: Double -> foot - (depth / deep).toFloat() * (foot - top) }
        paint.style = Paint.Style.STROKE
        paint.strokeWidth = pen.dp(1).toFloat()
        paint.color = pen.line
        canvas.drawLine(left, foot, right, foot, paint)
        canvas.drawLine(left, top, left, foot, paint)
        if (series.band.isNotEmpty()) {
            canvas.save()
            canvas.clipRect(left, top, right, foot)
            val band = Path().apply {
                series.band.forEachIndexed { at, point -> if (at == 0) moveTo(x(point.distance), y(point.high)) else lineTo(x(point.distance), y(point.high)) }
                series.band.asReversed().forEach { lineTo(x(it.distance), y(it.low)) }
                close()
            }
            paint.style = Paint.Style.FILL
            paint.color = pen.pressed
            canvas.drawPath(band, paint)
            paint.style = Paint.Style.STROKE
            paint.color = pen.faint
            paint.strokeWidth = pen.dp(2).toFloat()
            series.band.zipWithNext { a, b -> canvas.drawLine(x(a.distance), y(a.mid), x(b.distance), y(b.mid), paint) }
            canvas.restore()
        }
        paint.color = pen.ink
        paint.strokeWidth = pen.dp(2).toFloat()
        paint.pathEffect = android.graphics.DashPathEffect(floatArrayOf(pen.dp(8).toFloat(), pen.dp(6).toFloat()), 0f)
        canvas.drawLine(left, y(series.limit), right, y(series.limit), paint)
        paint.pathEffect = null
        paint.strokeWidth = pen.dp(3).toFloat()
        series.readings.zipWithNext { a, b -> canvas.drawLine(x(a.distance), y(a.depth), x(b.distance), y(b.depth), paint) }
        paint.style = Paint.Style.FILL
        series.readings.forEach { canvas.drawCircle(x(it.distance), y(it.depth), pen.dp(5).toFloat(), paint) }
        lettering.textAlign = Paint.Align.RIGHT
        (series.readings.map { it.depth } + series.limit).distinct().let { depths ->
            listOf(depths.max(), depths.min()).distinct().forEach { canvas.drawText(worded(it), left - pen.dp(6), y(it) + pen.sp(13) * 0.36f, lettering) }
        }
        lettering.textAlign = Paint.Align.LEFT
        canvas.drawText(units.second, 0f, top - pen.dp(2) + pen.sp(3), lettering)
        canvas.drawText(worded(Math.rint(low)), left, height - pen.dp(4).toFloat(), lettering)
        lettering.textAlign = Paint.Align.RIGHT
        canvas.drawText("${worded(Math.rint(far))} ${units.first}", right, height - pen.dp(4).toFloat(), lettering)
    }
}

/** How deep a tread is beside a new one. The number stands beside it. */
class DepthBar(private val pen: Pen, private val share: Double) : View(pen.context) {
    private val paint = Paint(Paint.ANTI_ALIAS_FLAG)

    init {
        importantForAccessibility = IMPORTANT_FOR_ACCESSIBILITY_NO
    }

    override fun onMeasure(width: Int, height: Int) = setMeasuredDimension(MeasureSpec.getSize(width), pen.dp(16))

    override fun onDraw(canvas: Canvas) {
        val edge = pen.dp(2).toFloat()
        paint.style = Paint.Style.FILL
        paint.color = pen.ink
        canvas.drawRect(edge, edge, edge + (width - 2 * edge) * share.toFloat(), height - edge, paint)
        paint.style = Paint.Style.STROKE
        paint.strokeWidth = edge
        paint.color = pen.line
        canvas.drawRect(edge, edge, width - edge, height - edge, paint)
    }
}

/**
 * How something stands, as a shape beside its word: ring, half disc, square, diamond, octagon.
 *
 * The four signal words have four shapes: a triangle wherever somebody may be hurt, the more of it filled the worse, and
 * a square where nobody is (ANSI Z535.4 keeps its alert sign, a triangle, for what can hurt; from memory).
 */
class StateShape(private val pen: Pen, private val state: String) : Drawable() {
    private val paint = Paint(Paint.ANTI_ALIAS_FLAG).apply { color = pen.ink }

    override fun getIntrinsicWidth() = pen.dp(24)

    override fun getIntrinsicHeight() = pen.dp(24)

    override fun draw(canvas: Canvas) {
        val (x, y) = bounds.exactCenterX() to bounds.exactCenterY()
        val reach = min(bounds.width(), bounds.height()) / 2f - pen.dp(2)
        paint.strokeWidth = pen.dp(3).toFloat()
        paint.style = Paint.Style.STROKE
        when (state) {
            "sound", "done" -> {
                canvas.drawCircle(x, y, reach, paint)
                if (state == "done") {
                    canvas.drawLine(x - reach * 0.5f, y, x - reach * 0.1f, y + reach * 0.45f, paint)
                    canvas.drawLine(x - reach * 0.1f, y + reach * 0.45f, x + reach * 0.55f, y - reach * 0.4f, paint)
                }
            }
            "watch" -> {
                canvas.drawCircle(x, y, reach, paint)
                paint.style = Paint.Style.FILL
                canvas.drawArc(RectF(x - reach, y - reach, x + reach, y + reach), 90f, 180f, true, paint)
            }
            "at-limit" -> {
                canvas.drawRect(x - reach, y - reach, x + reach, y + reach, paint)
                canvas.drawLine(x - reach, y, x + reach, y, paint)
            }
            "below-limit" -> {
                paint.style = Paint.Style.FILL
                canvas.drawPath(corners(x, y, reach, 4, 0.0), paint)
            }
            "unsafe" -> {
                paint.style = Paint.Style.FILL
                canvas.drawPath(corners(x, y, reach * 1.08f, 8, Math.PI / 8), paint)
                paint.style = Paint.Style.STROKE
                paint.color = pen.ground
                canvas.drawLine(x - reach * 0.4f, y - reach * 0.4f, x + reach * 0.4f, y + reach * 0.4f, paint)
                canvas.drawLine(x - reach * 0.4f, y + reach * 0.4f, x + reach * 0.4f, y - reach * 0.4f, paint)
                paint.color = pen.ink
            }
            "skipped" -> canvas.drawLine(x - reach, y, x + reach, y, paint)
            "held" -> {
                canvas.drawLine(x - reach * 0.5f, y - reach, x - reach * 0.5f, y + reach, paint)
                canvas.drawLine(x + reach * 0.5f, y - reach, x + reach * 0.5f, y + reach, paint)
            }
            "ready" -> canvas.drawPath(corners(x, y, reach, 3, 0.0), paint)
            "danger" -> {
                alert(canvas, x, y - reach * 0.1f, reach * 0.92f, filled = true)
                canvas.drawLine(x - reach, y + reach * 0.9f, x + reach, y + reach * 0.9f, paint)
            }
            "warning" -> alert(canvas, x, y + reach * 0.2f, reach * 1.08f, filled = true)
            "caution" -> alert(canvas, x, y + reach * 0.2f, reach * 1.08f, filled = false)
            "notice" -> {
                canvas.drawRect(x - reach * 0.9f, y - reach * 0.9f, x + reach * 0.9f, y + reach * 0.9f, paint)
                canvas.drawPoint(x, y - reach * 0.45f, paint)
                canvas.drawLine(x, y - reach * 0.1f, x, y + reach * 0.55f, paint)
            }
            // It is asked once more.
            "asked" -> {
                canvas.drawCircle(x, y, reach, paint)
                canvas.drawArc(RectF(x - reach * 0.36f, y - reach * 0.6f, x + reach * 0.36f, y + reach * 0.1f), 180f, 250f, false, paint)
                canvas.drawPoint(x, y + reach * 0.5f, paint)
            }
            else -> canvas.drawRect(x - reach * 0.8f, y - reach * 0.8f, x + reach * 0.8f, y + reach * 0.8f, paint)
        }
    }

    /** A triangle with its mark: outlined, or filled and the mark left out. */
    private fun alert(canvas: Canvas, x: Float, y: Float, reach: Float, filled: Boolean) {
        val triangle = corners(x, y, reach, 3, -Math.PI / 2)
        if (filled) {
            paint.style = Paint.Style.FILL_AND_STROKE
            paint.strokeWidth = pen.dp(1).toFloat()
            canvas.drawPath(triangle, paint)
            paint.color = pen.ground
        } else {
            paint.strokeWidth = pen.dp(2).toFloat()
            canvas.drawPath(triangle, paint)
        }
        paint.style = Paint.Style.STROKE
        paint.strokeWidth = pen.dp(MARK).toFloat()
        canvas.drawLine(x, y - reach * 0.45f, x, y + reach * 0.1f, paint)
        canvas.drawLine(x, y + reach * 0.24f, x, y + reach * 0.36f, paint)
        paint.color = pen.ink
        paint.strokeWidth = pen.dp(3).toFloat()
    }

    private fun corners(x: Float, y: Float, reach: Float, count: Int, turned: Double) = Path().apply {
        for (corner in 0 until count) {
            val angle = turned + 2 * Math.PI * corner / count
            val (a, b) = (x + reach * cos(angle)).toFloat() to (y + reach * sin(angle)).toFloat()
            if (corner == 0) moveTo(a, b) else lineTo(a, b)
        }
        close()
    }

    override fun setAlpha(alpha: Int) {
        paint.alpha = alpha
    }

    override fun setColorFilter(filter: android.graphics.ColorFilter?) {
        paint.colorFilter = filter
    }

    @Deprecated("Deprecated in Java")
    override fun getOpacity() = android.graphics.PixelFormat.TRANSLUCENT

    private companion object {
        /** The mark in a triangle, dp. */
        const val MARK = 2.6f
    }
}

/** What a hub shows, seen from outside: its disc and studs, and what stands in its middle. */
class HubShape(private val pen: Pen, private val hub: String) : Drawable() {
    private val paint = Paint(Paint.ANTI_ALIAS_FLAG).apply { color = pen.ink }

    override fun getIntrinsicWidth() = pen.dp(48)

    override fun getIntrinsicHeight() = pen.dp(48)

    override fun draw(canvas: Canvas) {
        val (x, y) = bounds.exactCenterX() to bounds.exactCenterY()
        val reach = min(bounds.width(), bounds.height()) / 2f - pen.dp(2)
        paint.style = Paint.Style.STROKE
        paint.strokeWidth = pen.dp(2).toFloat()
        canvas.drawCircle(x, y, reach, paint)
        for (stud in 0 until 5) {
            val angle = 2 * Math.PI * stud / 5 - Math.PI / 2
            canvas.drawCircle((x + reach * 0.72f * cos(angle)).toFloat(), (y + reach * 0.72f * sin(angle)).toFloat(), pen.dp(2).toFloat(), paint)
        }
        val middle = reach * 0.36f
        when (hub) {
            // A shaft comes through from behind: its end, and the shaft beside the disc.
            "shaft" -> {
                paint.style = Paint.Style.FILL
                canvas.drawCircle(x, y, middle, paint)
                canvas.drawRect(x - pen.dp(2), y, x + pen.dp(2), y + reach + pen.dp(2), paint)
            }
            "no-shaft" -> {
                canvas.drawCircle(x, y, middle, paint)
                canvas.drawLine(x - reach, y + reach, x + reach, y - reach, paint)
            }
            // A splined end with its nut.
            "shaft-end" -> {
                val nut = Path()
                for (corner in 0 until 6) {
                    val (a, b) = (x + middle * cos(Math.PI / 3 * corner)).toFloat() to (y + middle * sin(Math.PI / 3 * corner)).toFloat()
                    if (corner == 0) nut.moveTo(a, b) else nut.lineTo(a, b)
                }
                nut.close()
                canvas.drawPath(nut, paint)
                paint.style = Paint.Style.FILL
                canvas.drawCircle(x, y, middle * 0.5f, paint)
            }
            "capless-unit" -> {
                canvas.drawCircle(x, y, middle, paint)
                canvas.drawCircle(x, y, middle * 0.55f, paint)
            }
            else -> {
                paint.style = Paint.Style.FILL
                canvas.drawCircle(x, y, middle * 1.2f, paint)
            }
        }
    }

    override fun setAlpha(alpha: Int) {
        paint.alpha = alpha
    }

    override fun setColorFilter(filter: android.graphics.ColorFilter?) {
        paint.colorFilter = filter
    }

    @Deprecated("Deprecated in Java")
    override fun getOpacity() = android.graphics.PixelFormat.TRANSLUCENT
}
