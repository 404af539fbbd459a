package lugbook.app

import android.graphics.Typeface
import android.text.Editable
import android.text.SpannableStringBuilder
import android.text.Spanned
import android.text.TextWatcher
import android.text.style.RelativeSizeSpan
import android.text.style.StyleSpan
import android.util.TypedValue
import android.view.Gravity
import android.view.View
import android.view.inputmethod.EditorInfo
import android.webkit.WebView
import android.widget.EditText
import android.widget.TextView
import lugbook.core.DecimalSign
import lugbook.core.NutShape

/** Draws what stands on a page. */
class Pieces(
    private val pen: Pen,
    private val look: Look,
    private val kept: Kept,
    private val go: (Page) -> Unit,
    private val out: (Piece.Out) -> Unit,
    private val nut: ((NutShape) -> Unit)?,
    private val again: () -> Unit,
) {
    private val context = pen.context

    fun draw(piece: Piece): View = when (piece) {
        is Piece.Heading -> pen.heading(piece.text)
        is Piece.Line -> pen.text(piece.text, if (piece.faint) Pen.SMALL else Pen.BODY, color = if (piece.faint) pen.faint else pen.ink)
            .apply { if (piece.spoken != piece.text) contentDescription = piece.spoken }
        is Piece.Told -> pen.panel(pen.ink, 3).apply {
            put(pen.text(piece.text, Pen.BODY, bold = true))
            accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_POLITE
        }
        is Piece.Step -> step(piece)
        is Piece.Stated -> stated(piece)
        is Piece.Row -> row(piece)
        is Piece.Car -> CarView(pen, piece.drawing, piece.inHand, piece.to?.let { to -> { at: String -> go(to(at)) } })
        is Piece.Nuts -> NutsView(pen, piece.circle, nut)
        is Piece.Chart -> ChartView(pen, piece.series, piece.distance to piece.depth, look.decimal)
        is Piece.Depth -> DepthBar(pen, piece.share)
        is Piece.Suggested -> suggested(piece)
        is Piece.Picture -> Fields.picture(pen, piece.path, piece.caption)
        is Piece.Card -> card(piece)
        is Piece.Go -> pen.button(piece.label, piece.label) { go(piece.to) }
        is Piece.Out -> pen.button(piece.label, piece.label) { out(piece) }
        is Piece.Choice -> choice(piece)
        is Piece.Search -> search(piece)
    }

    private fun step(step: Piece.Step): View = pen.column().apply {
        step.at?.let { at ->
            val place = pen.text(at, Pen.STEP, bold = true).apply {
                background = pen.box(pen.sheet, pen.ink, 3)
                setPadding(pen.dp(12), pen.dp(2), pen.dp(12), pen.dp(2))
                importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_NO
            }
            addView(place, android.widget.LinearLayout.LayoutParams(-2, -2))
        }
        put(pen.heading(step.text, Pen.STEP).apply { contentDescription = step.spoken }, if (step.at == null) 0 else 6)
    }

    private fun stated(stated: Piece.Stated): View = lined(stated.state, stated.quiet).apply {
        val text = SpannableStringBuilder()
        if (stated.word.isNotEmpty()) {
            text.append(stated.word, StyleSpan(Typeface.BOLD), Spanned.SPAN_EXCLUSIVE_EXCLUSIVE)
            text.append(if (stated.word.length > 12 || !stated.warns) "\n" else "  ")
        }
        text.append(stated.text)
        this.text = text
        contentDescription = stated.spoken
        if (!stated.quiet) {
            background = pen.box(pen.sheet, pen.ink, 2)
            setPadding(pen.dp(12), pen.dp(10), pen.dp(12), pen.dp(10))
        }
    }

    private fun suggested(suggested: Piece.Suggested): View = pen.panel().apply {
        contentDescription = suggested.spoken
        suggested.cut?.let { cut ->
            val picture = android.widget.ImageView(context)
            picture.adjustViewBounds = true
            Off.main({ android.graphics.BitmapFactory.decodeByteArray(cut, 0, cut.size) }) { picture.setImageBitmap(it) }
            put(picture)
        }
        put(pen.text(suggested.text, Pen.HEADING, bold = true), 4)
        put(pen.text(suggested.odds, Pen.SMALL, color = pen.faint))
    }

    private fun lined(state: String?, quiet: Boolean): TextView = pen.text("", if (quiet) Pen.SMALL else Pen.BODY, color = if (quiet) pen.faint else pen.ink).apply {
        gravity = Gravity.CENTER_VERTICAL
        state?.let {
            val shape = StateShape(pen, it)
            shape.setBounds(0, 0, shape.intrinsicWidth, shape.intrinsicHeight)
            setCompoundDrawablesRelative(shape, null, null, null)
            compoundDrawablePadding = pen.dp(12)
        }
    }

    private fun row(row: Piece.Row): View = lined(row.state, quiet = false).apply {
        val text = SpannableStringBuilder()
        text.append(row.title, StyleSpan(Typeface.BOLD), Spanned.SPAN_EXCLUSIVE_EXCLUSIVE)
        row.lines.forEach { line ->
            text.append("\n")
            text.append(line, RelativeSizeSpan(0.84f), Spanned.SPAN_EXCLUSIVE_EXCLUSIVE)
        }
        this.text = text
        contentDescription = row.spoken
        setPadding(pen.dp(12), pen.dp(10), pen.dp(12), pen.dp(10))
        row.to?.let { to ->
            minimumHeight = pen.dp(Pen.REACH)
            background = pen.face(pen.sheet, pen.pressed, pen.line)
            isFocusable = true
            setOnClickListener { go(to) }
        }
    }

    /** The card as the core writes it: no script runs, and nothing is fetched. */
    private fun card(card: Piece.Card): View = WebView(context).apply {
        settings.javaScriptEnabled = false
        settings.blockNetworkLoads = true
        settings.allowFileAccess = false
        settings.allowContentAccess = false
        settings.builtInZoomControls = true
        settings.displayZoomControls = false
        isVerticalScrollBarEnabled = true
        setBackgroundColor(pen.ground)
        minimumHeight = pen.dp(480)
        loadDataWithBaseURL(null, card.html, "text/html", "utf-8", null)
    }

    private fun choice(choice: Piece.Choice): View = pen.column().apply {
        put(pen.text(choice.label, Pen.BODY, bold = true))
        val now = kept[choice.key] ?: choice.usual
        val buttons = choice.options.map { (code, label) ->
            Fields.choice(pen, label, "${choice.label}: $label", several = false).apply {
                isChecked = code == now
                setOnClickListener {
                    kept[choice.key] = code
                    again()
                }
            }
        }
        put(Fields.grid(pen, buttons, choice.options.all { it.second.length <= 14 }), 4)
    }

    private fun search(search: Piece.Search): View = EditText(context).apply {
        setText(kept[search.key].orEmpty())
        hint = search.label
        setHintTextColor(pen.faint)
        setTextColor(pen.ink)
        contentDescription = search.label
        setTextSize(TypedValue.COMPLEX_UNIT_SP, 20f)
        background = pen.face(pen.sheet, pen.sheet, pen.line)
        minimumHeight = pen.dp(Pen.REACH)
        setPadding(pen.dp(14), pen.dp(10), pen.dp(14), pen.dp(10))
        isSingleLine = true
        imeOptions = EditorInfo.IME_ACTION_SEARCH
        isSaveEnabled = false
        tag = search.key
        addTextChangedListener(object : TextWatcher {
            override fun beforeTextChanged(text: CharSequence, start: Int, count: Int, after: Int) = Unit

            override fun onTextChanged(text: CharSequence, start: Int, before: Int, count: Int) = Unit

            override fun afterTextChanged(text: Editable) {
                kept[search.key] = text.toString()
                again()
            }
        })
    }
}

/** The decimal sign that is shown and typed. */
val Look.decimal: Char get() = if (manner.decimal == DecimalSign.COMMA) ',' else '.'
