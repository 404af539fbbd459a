package lugbook.app

import android.app.DatePickerDialog
import android.graphics.BitmapFactory
import android.text.Editable
import android.text.InputType
import android.text.TextWatcher
import android.util.TypedValue
import android.view.View
import android.widget.CheckBox
import android.widget.CompoundButton
import android.widget.EditText
import android.widget.ImageView
import android.widget.LinearLayout
import android.widget.RadioButton
import android.widget.Space
import java.util.Locale
import lugbook.core.EntryField
import lugbook.core.FieldChoice
import lugbook.core.FieldKind

/** Draws the fields of an action, and keeps what is typed at each key. */
class Fields(private val pen: Pen, private val kept: Kept, private val filled: Filled, private val reach: (EntryField, Reach) -> Unit) {
    /** Another part of the phone that fills a field. */
    enum class Reach { CAMERA, PICTURE, FOLDER, FILE, WAITING }

    private val context = pen.context

    /** Every box for the keypad, in the order of the work. */
    val boxes = mutableListOf<NumberBox>()

    /** Every view that can be typed in, by its key. */
    val typed = linkedMapOf<String, View>()

    private fun word(id: Int): String = context.getString(id)

    /** The fields: those that must be filled first; many that may stay empty are folded away. */
    fun of(fields: List<EntryField>): View {
        val column = pen.column()
        val fold = fields.any { it.required } && fields.count { !it.required } > FEW
        val (first, rest) = fields.partition { it.required || !fold }
        first.forEach { column.put(one(it), 14) }
        if (rest.isEmpty()) return column
        val open = "${filled.key}#/more"
        val folded = pen.column()
        rest.forEach { folded.put(one(it), 14) }
        val unfolds = pen.button("", "") {
            kept[open] = if (kept[open] == null) "yes" else null
            tell(folded, column.findViewWithTag(open), open)
        }
        unfolds.tag = open
        column.put(unfolds, 14)
        column.put(folded)
        tell(folded, unfolds, open)
        return column
    }

    private fun tell(folded: View, fold: android.widget.Button, open: String) {
        val shown = kept[open] != null
        folded.visibility = if (shown) View.VISIBLE else View.GONE
        fold.text = word(if (shown) R.string.fewer_fields else R.string.more_fields)
        fold.contentDescription = fold.text
    }

    private fun one(field: EntryField): View = pen.column().apply {
        // Without its photo there is nothing to drag it over, and the core finds it.
        if (field.kind == FieldKind.RING && field.photo == null) return@apply
        val label = pen.text(field.label, Pen.BODY, bold = true)
        // Its own control says it.
        label.importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_NO
        put(label)
        when (field.kind) {
            FieldKind.READING, FieldKind.GROOVES, FieldKind.COUNT -> put(numbers(field), 4)
            FieldKind.ONE, FieldKind.YES_NO -> put(choices(field, several = false), 4)
            FieldKind.SEVERAL -> put(choices(field, several = true), 4)
            FieldKind.DAY -> put(day(field), 4)
            FieldKind.PHOTO -> {
                files(this, field, R.string.take_photo to Reach.CAMERA, R.string.choose_picture to Reach.PICTURE)
                if (kept[Main.PLATE] != null && filled[field].isEmpty()) files(this, field, R.string.use_waiting to Reach.WAITING)
            }
            FieldKind.FOLDER -> files(this, field, R.string.choose_folder to Reach.FOLDER)
            FieldKind.FILE -> files(this, field, R.string.choose_file to Reach.FILE)
            FieldKind.TEXT, FieldKind.LONG_TEXT, FieldKind.SECRET, FieldKind.LINES -> put(text(field), 4)
            FieldKind.DRAWN -> put(SignatureField(pen, field, filled), 4)
            FieldKind.RING -> field.photo?.let { put(RingField(pen, field, it, kept, filled), 4) }
        }
        if (field.boxes == 0) field.last?.let { put(last(it), 2) }
    }

    private fun last(value: String) = pen.text(context.getString(R.string.last_visit, value), Pen.SMALL, color = pen.faint)

    private fun numbers(field: EntryField): View {
        val row = pen.row()
        row.gravity = android.view.Gravity.BOTTOM
        for (number in 0 until field.boxes) {
            val box = NumberBox(pen, field, number, filled)
            boxes += box
            typed[box.key] = box
            val column = pen.column()
            field.grooves.getOrNull(number)?.let { groove ->
                column.put(pen.text(groove.label, Pen.SMALL, color = pen.faint).apply { importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_NO })
            }
            column.put(box, 2)
            box.last()?.let { last -> column.put(this.last(last).apply { importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_NO }, 2) }
            row.addView(column, LinearLayout.LayoutParams(0, LinearLayout.LayoutParams.WRAP_CONTENT, 1f).apply { if (number > 0) marginStart = pen.dp(8) })
        }
        return row
    }

    private fun text(field: EntryField): EditText = EditText(context).apply {
        val key = "${filled.key}#${field.code}"
        typed[key] = this
        setText(filled[field])
        contentDescription = field.spoken
        setTextColor(pen.ink)
        setTextSize(TypedValue.COMPLEX_UNIT_SP, 20f)
        background = pen.face(pen.sheet, pen.sheet, pen.line)
        setPadding(pen.dp(14), pen.dp(12), pen.dp(14), pen.dp(12))
        minimumHeight = pen.dp(Pen.REACH)
        val many = field.kind == FieldKind.LONG_TEXT || field.kind == FieldKind.LINES
        inputType = when (field.kind) {
            FieldKind.SECRET -> InputType.TYPE_CLASS_TEXT or InputType.TYPE_TEXT_VARIATION_PASSWORD
            FieldKind.LONG_TEXT -> InputType.TYPE_CLASS_TEXT or InputType.TYPE_TEXT_FLAG_MULTI_LINE or InputType.TYPE_TEXT_FLAG_CAP_SENTENCES
            FieldKind.LINES -> InputType.TYPE_CLASS_TEXT or InputType.TYPE_TEXT_FLAG_MULTI_LINE or InputType.TYPE_TEXT_FLAG_NO_SUGGESTIONS
            else -> InputType.TYPE_CLASS_TEXT
        }
        if (many) minLines = 2
        isSaveEnabled = false
        addTextChangedListener(object : TextWatcher {
            override fun beforeTextChanged(text: CharSequence, start: Int, count: Int, after: Int) = Unit

            override fun onTextChanged(text: CharSequence, start: Int, before: Int, count: Int) = Unit

            override fun afterTextChanged(text: Editable) {
                filled[field] = text.toString()
            }
        })
    }

    /** Choices as rows, or two side by side where they are short. */
    private fun choices(field: EntryField, several: Boolean): View {
        val buttons = mutableListOf<CompoundButton>()
        val codes = { filled[field].split(' ').filter { it.isNotEmpty() } }
        field.choices.forEach { choice ->
            buttons += button(choice, several).apply {
                isChecked = choice.code in (if (several) codes() else listOf(filled[field]))
                setOnClickListener {
                    if (several) {
                        filled[field] = (if (isChecked) codes() + choice.code else codes() - choice.code).distinct().joinToString(" ")
                    } else {
                        val again = filled[field] == choice.code && !field.required && field.filled == null
                        filled[field] = if (again) "" else choice.code
                        buttons.forEachIndexed { at, other -> other.isChecked = filled[field] == field.choices[at].code }
                    }
                }
            }
        }
        if (field.code == "hub") {
            buttons.forEachIndexed { at, button -> button.setCompoundDrawablesRelativeWithIntrinsicBounds(null, null, HubShape(pen, field.choices[at].code), null) }
        }
        buttons.forEach { it.contentDescription = "${field.spoken}: ${it.contentDescription}" }
        return grid(pen, buttons, field.choices.all { it.text.length <= SHORT })
    }

    private fun button(choice: FieldChoice, several: Boolean): CompoundButton = choice(pen, choice.text, choice.spoken, several)

    private fun day(field: EntryField): View = pen.button(filled[field].ifEmpty { word(R.string.choose_day) }, field.spoken) {}.apply {
        setOnClickListener { button ->
            val now = filled[field].split('-').mapNotNull { it.toIntOrNull() }.takeIf { it.size == 3 }
            val today = java.time.LocalDate.now()
            DatePickerDialog(context, { _, year, month, day ->
                filled[field] = String.format(Locale.ROOT, "%04d-%02d-%02d", year, month + 1, day)
                (button as android.widget.Button).text = filled[field]
            }, now?.get(0) ?: today.year, (now?.get(1) ?: today.monthValue) - 1, now?.get(2) ?: today.dayOfMonth).show()
        }
    }

    private fun files(column: LinearLayout, field: EntryField, vararg ways: Pair<Int, Reach>) {
        val path = filled[field]
        if (path.isNotEmpty()) {
            if (field.kind == FieldKind.PHOTO) column.put(picture(pen, path, field.spoken), 6)
            else column.put(pen.text(path, Pen.SMALL, color = pen.faint), 4)
        }
        // The first photo is the next thing to do, and stands at the bottom.
        ways.filter { (_, way) -> way != Reach.CAMERA || path.isNotEmpty() }.forEach { (label, way) ->
            column.put(pen.button(word(label), "${word(label)}. ${field.spoken}") { reach(field, way) }, 8)
        }
    }

    companion object {
        /** So many fields that may stay empty are not folded away. */
        private const val FEW = 3

        /** A choice of at most so many letters stands beside another one. */
        private const val SHORT = 14

        /** A choice: marked by its shape, and a thick border when it is taken. */
        fun choice(pen: Pen, text: String, spoken: String, several: Boolean): CompoundButton =
            (if (several) CheckBox(pen.context) else RadioButton(pen.context)).apply {
                this.text = text
                contentDescription = spoken
                setTextColor(pen.ink)
                setTextSize(TypedValue.COMPLEX_UNIT_SP, Pen.BODY.toFloat())
                minimumHeight = pen.dp(Pen.REACH)
                background = android.graphics.drawable.StateListDrawable().apply {
                    addState(intArrayOf(android.R.attr.state_pressed), pen.box(pen.pressed, pen.ink, 3))
                    addState(intArrayOf(android.R.attr.state_checked), pen.box(pen.sheet, pen.ink, 3))
                    addState(intArrayOf(), pen.box(pen.sheet, pen.line, 1))
                }
                setPadding(pen.dp(10), pen.dp(8), pen.dp(10), pen.dp(8))
            }

        /** One below the other, or two side by side. */
        fun grid(pen: Pen, buttons: List<View>, twos: Boolean): View {
            val column = pen.column()
            buttons.chunked(if (twos) 2 else 1).forEach { pair ->
                val row = pen.row()
                pair.forEachIndexed { at, button -> row.put(button, if (at > 0) 8 else 0, 1f) }
                if (twos && pair.size == 1 && buttons.size > 1) row.put(Space(pen.context), 8, 1f)
                column.put(row, 6)
            }
            return column
        }

        /** A picture from a file, drawn once it was read off the main thread. */
        fun picture(pen: Pen, path: String, spoken: String): ImageView = ImageView(pen.context).apply {
            contentDescription = spoken
            adjustViewBounds = true
            minimumHeight = pen.dp(120)
            Off.main({ BitmapFactory.decodeFile(path, BitmapFactory.Options().apply { inSampleSize = 2 }) }) { setImageBitmap(it) }
        }
    }
}
