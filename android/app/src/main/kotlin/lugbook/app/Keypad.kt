package lugbook.app

import android.graphics.Canvas
import android.graphics.Paint
import android.graphics.Typeface
import android.os.Bundle
import android.util.TypedValue
import android.view.Gravity
import android.view.View
import android.view.accessibility.AccessibilityNodeInfo
import android.widget.LinearLayout
import android.widget.TextView
import lugbook.core.EntryField
import lugbook.core.FieldKind

/** One number to be typed with the keypad. */
class NumberBox(private val pen: Pen, private val of: EntryField, val number: Int, private val filled: Filled) : TextView(pen.context) {
    private val caret = Paint().apply { color = pen.ink }
    private val lettering = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        color = pen.faint
        textSize = pen.sp(13)
        textAlign = Paint.Align.RIGHT
    }

    /** Told when it gets the focus. */
    var onFocus: (NumberBox) -> Unit = {}

    /** The key that it is found again under. */
    val key: String get() = "${filled.key}#${of.code}/$number"

    init {
        setTextSize(TypedValue.COMPLEX_UNIT_SP, Pen.STEP.toFloat())
        setTextColor(pen.ink)
        typeface = Typeface.DEFAULT_BOLD
        gravity = Gravity.CENTER
        minimumHeight = pen.dp(Pen.REACH)
        minWidth = pen.dp(Pen.REACH)
        background = pen.face(pen.sheet, pen.pressed, pen.line)
        isFocusable = true
        isFocusableInTouchMode = true
        isClickable = true
        if (of.units.isNotEmpty()) setPadding(0, 0, 0, pen.sp(13).toInt())
        text = filled.box(of, number)
        tell()
    }

    private fun tell() {
        val groove = of.grooves.getOrNull(number)
        val parts = listOfNotNull(groove?.spoken ?: of.spoken, text.toString().ifEmpty { null }, unit()?.spoken, last())
        contentDescription = parts.joinToString(", ")
    }

    /** The last visit's value here. */
    fun last(): String? = of.grooves.getOrNull(number)?.last ?: of.last.takeIf { of.grooves.size <= 1 }

    fun unit() = filled.unit(of)?.let { unit -> of.units.firstOrNull { it.code == unit } }

    /** A digit, or the decimal sign once. */
    fun type(key: Char) {
        val now = text.toString()
        if (!key.isDigit() && (of.kind == FieldKind.COUNT || now.isEmpty() || now.any { !it.isDigit() })) return
        put(now + key)
    }

    fun erase() = put(text.toString().dropLast(1))

    private fun put(value: String) {
        text = value
        filled.setBox(of, number, value)
        tell()
    }

    /** The next of its units. */
    fun nextUnit() {
        if (of.units.size < 2) return
        val at = of.units.indexOfFirst { it.code == filled.unit(of) }
        filled.setUnit(of, of.units[(at + 1) % of.units.size].code)
        tell()
    }

    /** Decimals that a gauge in its unit is read to. */
    private val decimals: Int
        get() = of.units.indexOfFirst { it.code == filled.unit(of) }.let { of.decimals.getOrNull(it)?.toInt() ?: 0 }

    /** Nothing more can be typed: it has all its decimals, or another digit would be out of bounds. */
    val full: Boolean
        get() {
            val typed = text.toString()
            val mark = typed.indexOfFirst { !it.isDigit() }
            val most = of.most.takeIf { filled.unit(of) == of.unit }
            return when {
                mark >= 0 -> typed.length - 1 - mark >= decimals.coerceAtLeast(1)
                decimals > 0 -> false
                else -> most != null && (typed.toDoubleOrNull() ?: 0.0) * 10 > most
            }
        }

    override fun onFocusChanged(focused: Boolean, direction: Int, from: android.graphics.Rect?) {
        super.onFocusChanged(focused, direction, from)
        if (focused) onFocus(this)
    }

    override fun performClick(): Boolean {
        requestFocus()
        return super.performClick()
    }

    override fun onInitializeAccessibilityNodeInfo(info: AccessibilityNodeInfo) {
        super.onInitializeAccessibilityNodeInfo(info)
        info.isEditable = true
    }

    override fun onDraw(canvas: Canvas) {
        super.onDraw(canvas)
        unit()?.let { canvas.drawText(it.text, width - pen.dp(8).toFloat(), height - pen.dp(6).toFloat(), lettering) }
        if (!isFocused) return
        val end = (width + paint.measureText(text.toString())) / 2 + pen.dp(3)
        canvas.drawRect(end, (height - paddingBottom) * 0.22f, end + pen.dp(3), (height - paddingBottom) * 0.85f, caret)
    }
}

/** Our own keypad: three columns that a glove finds, and the next field by itself. */
class Keypad(private val pen: Pen, decimal: Char) : LinearLayout(pen.context) {
    /** The boxes of the page, in the order of the work. */
    var boxes: List<NumberBox> = emptyList()

    /** Told when all boxes are filled. */
    var onLast: () -> Unit = {}

    private var box: NumberBox? = null
    private val unit: TextView

    init {
        orientation = VERTICAL
        val word = { id: Int -> context.getString(id) }
        for (row in listOf("123", "456", "789")) {
            line(row.map { digit -> key(digit.toString(), digit.toString()) { typed(digit) } })
        }
        line(listOf(
            key(decimal.toString(), word(R.string.decimal_sign)) { typed(decimal) },
            key("0", "0") { typed('0') },
            key(word(R.string.erase), word(R.string.erase)) { box?.erase() },
        ))
        unit = key("", word(R.string.unit)) {
            box?.nextUnit()
            named()
        }
        line(listOf(unit, key(word(R.string.next_field), word(R.string.next_field)) { next() }.apply { tag = 2f }))
    }

    private fun line(keys: List<View>) {
        val row = pen.row()
        keys.forEach { row.put(it, 2, (it.tag as? Float) ?: 1f) }
        put(row, 2)
    }

    private fun key(label: String, spoken: String, pressed: () -> Unit): TextView =
        pen.button(label, spoken) { pressed() }.apply {
            setTextSize(TypedValue.COMPLEX_UNIT_SP, if (label.length > 1) Pen.BODY.toFloat() else Pen.STEP.toFloat())
            minWidth = pen.dp(KEY)
            minimumWidth = pen.dp(KEY)
            isFocusable = false
            setPadding(0, 0, 0, 0)
            isSingleLine = true
        }

    /** Types into this box from now on. */
    fun into(box: NumberBox) {
        this.box = box
        named()
    }

    private fun named() {
        unit.text = box?.unit()?.text.orEmpty()
        unit.contentDescription = listOfNotNull(context.getString(R.string.unit), box?.unit()?.spoken).joinToString(": ")
        unit.isEnabled = box?.unit() != null
        boxes.forEach { it.invalidate() }
    }

    private fun typed(key: Char) {
        val box = box ?: return
        box.type(key)
        if (box.full) next()
    }

    private fun next() {
        val next = boxes.getOrNull(boxes.indexOf(box) + 1)
        if (next != null) next.requestFocus() else onLast()
    }

    companion object {
        /** A key is this wide at the least, dp. */
        const val KEY = 112
    }
}
