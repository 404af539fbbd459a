package lugbook.app

import android.graphics.Bitmap
import android.graphics.Canvas
import android.graphics.Rect
import android.view.View
import android.view.ViewGroup
import android.widget.EditText
import android.widget.ScrollView
import android.widget.TextView
import kotlin.math.pow

/** What a window is to fingers, ears and eyes: measured on its views and on its pixels. */
class Access(private val root: View, private val inWork: Boolean) {
    private val density = root.resources.displayMetrics.density
    private val night = root.resources.configuration.isNightModeActive
    private val shown = root.tree().filter { it.isShown && it.width > 0 && it.height > 0 }.toList()
    private val pressed = shown.filter { it.isClickable && it.isEnabled || it is EditText }

    /** Everything that is wrong, in words. */
    fun wrong(): List<String> = unspoken() + small() + disorder() + pale()

    private fun name(view: View) = "${view.javaClass.simpleName} “${view.contentDescription ?: (view as? TextView)?.text ?: ""}”"

    /** Each control says what it is. */
    private fun unspoken() = pressed
        .filter { it.contentDescription.isNullOrBlank() && (it as? TextView)?.text.isNullOrBlank() && (it as? TextView)?.hint.isNullOrBlank() }
        .map { "it says nothing: ${name(it)} at ${place(it)}" }

    /** Each is as large as a gloved thumb needs: 48 dp, and 64 dp in the middle of a job. */
    private fun small(): List<String> {
        val least = if (inWork) 64 else 48
        return pressed.filter { it.width / density < least - 0.5 || it.height / density < least - 0.5 }
            .map { "it is small: ${name(it)} is ${(it.width / density).toInt()} × ${(it.height / density).toInt()} dp" }
    }

    /** One control after another, in the order that a screen reader takes, goes on down and to the right. */
    private fun disorder(): List<String> = pressed.groupBy { scroll(it) }.values.flatMap { group ->
        group.zipWithNext().mapNotNull { (a, b) ->
            val (before, after) = place(a) to place(b)
            val above = after.bottom <= before.top && after.left < before.right && before.left < after.right
            val left = after.right <= before.left && after.top < before.bottom && before.top < after.bottom
            if (above || left) "${name(b)} stands ${if (above) "above" else "left of"} ${name(a)}, and comes after it" else null
        }
    }

    private fun scroll(view: View): View? = generateSequence(view.parent as? View) { it.parent as? View }.firstOrNull { it is ScrollView }

    private fun place(view: View): Rect = Rect(0, 0, view.width, view.height).also { (root as ViewGroup).offsetDescendantRectToMyCoords(view, it) }

    /** Lettering stands out from its ground: 4.5 : 1 on light, 7 : 1 on dark. */
    private fun pale(): List<String> {
        val least = if (night) 7.0 else 4.5
        val canvases = HashMap<View, Bitmap>()
        return shown.filterIsInstance<TextView>().filter { it.text.isNotBlank() && it.isEnabled }.mapNotNull { text ->
            val base = scroll(text)?.let { (it as ViewGroup).getChildAt(0) } ?: root
            val bitmap = canvases.getOrPut(base) {
                Bitmap.createBitmap(base.width, base.height, Bitmap.Config.ARGB_8888).also { picture ->
                    picture.eraseColor(root.context.getColor(R.color.ground))
                    base.draw(Canvas(picture))
                }
            }
            val found = contrast(text, base, bitmap) ?: return@mapNotNull null
            if (found < least) "it is pale: ${name(text)}: %.1f : 1".format(found) else null
        }
    }

    /** The contrast of the lettering that was drawn with what is around it; none where nothing was drawn. */
    private fun contrast(text: TextView, base: View, bitmap: Bitmap): Double? {
        val at = Rect(text.compoundPaddingLeft, text.extendedPaddingTop, text.width - text.compoundPaddingRight, text.height - text.extendedPaddingBottom)
        if (base !== text) (base as ViewGroup).offsetDescendantRectToMyCoords(text, at)
        if (!at.intersect(0, 0, bitmap.width, bitmap.height) || at.isEmpty) return null
        val pixels = IntArray(at.width() * at.height())
        bitmap.getPixels(pixels, 0, at.width(), at.left, at.top, at.width(), at.height())
        val counted = HashMap<Int, Int>()
        pixels.forEach { counted.merge(it, 1, Int::plus) }
        val ground = counted.maxBy { it.value }.key
        return counted.keys.maxOf { ratio(it, ground) }
    }

    companion object {
        /** The contrast ratio of WCAG 2.2. */
        fun ratio(a: Int, b: Int): Double {
            val (light, dark) = listOf(luminance(a), luminance(b)).sortedDescending()
            return (light + 0.05) / (dark + 0.05)
        }

        /** The relative luminance of WCAG 2.2, 0 to 1. */
        private fun luminance(color: Int): Double {
            val (r, g, b) = listOf(16, 8, 0).map { shift ->
                val part = (color shr shift and 0xFF) / 255.0
                if (part <= 0.04045) part / 12.92 else ((part + 0.055) / 1.055).pow(2.4)
            }
            return 0.2126 * r + 0.7152 * g + 0.0722 * b
        }
    }
}
