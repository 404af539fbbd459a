package lugbook.app

import android.graphics.Bitmap
import android.graphics.BitmapFactory
import android.graphics.Canvas
import android.view.View
import java.awt.image.BufferedImage
import java.awt.image.DataBuffer
import java.awt.image.IndexColorModel
import java.io.File
import javax.imageio.ImageIO
import kotlin.math.abs
import org.junit.Assert.assertTrue

/** A window held against its picture in the tree. `LUGBOOK_RENEW=1` renews it: look at it before it is kept. */
object Pictured {
    /** At most such a share of the pixels may differ. */
    private const val MOST = 0.005

    /** Two shades this near are the same. */
    private const val NEAR = 8

    fun holds(name: String, window: View) {
        val drawn = Bitmap.createBitmap(window.width, window.height, Bitmap.Config.ARGB_8888)
        window.draw(Canvas(drawn))
        val kept = File(System.getProperty("lugbook.pictures"), "$name.png")
        if (System.getenv("LUGBOOK_RENEW") == "1") {
            kept.parentFile!!.mkdirs()
            keep(drawn, kept)
            return
        }
        assertTrue("there is no picture $kept: LUGBOOK_RENEW=1 makes it", kept.exists())
        val share = apart(BitmapFactory.decodeFile(kept.path), drawn)
        if (share > MOST) {
            val folder = File(System.getProperty("lugbook.drawn")).apply { mkdirs() }
            keep(drawn, File(folder, "$name.png"))
        }
        assertTrue("$name: %.2f %% of the pixels differ; the new one is in ${System.getProperty("lugbook.drawn")}".format(share * 100), share <= MOST)
    }

    /** Writes a picture small: with its 256 usual colors, the rest as the nearest of them. */
    private fun keep(drawn: Bitmap, file: File) {
        val pixels = IntArray(drawn.width * drawn.height).also { drawn.getPixels(it, 0, drawn.width, 0, 0, drawn.width, drawn.height) }
        val usual = pixels.toTypedArray().groupingBy { it }.eachCount().entries.sortedByDescending { it.value }.take(256).map { it.key }
        val numbers = HashMap<Int, Int>()
        val number = { color: Int -> numbers.getOrPut(color) { usual.indices.minByOrNull { far(usual[it], color) }!! } }
        val model = IndexColorModel(8, usual.size, usual.toIntArray(), 0, false, -1, DataBuffer.TYPE_BYTE)
        val picture = BufferedImage(drawn.width, drawn.height, BufferedImage.TYPE_BYTE_INDEXED, model)
        picture.raster.setPixels(0, 0, drawn.width, drawn.height, IntArray(pixels.size) { number(pixels[it]) })
        check(ImageIO.write(picture, "png", file))
    }

    private fun far(a: Int, b: Int): Int = listOf(0, 8, 16).sumOf { shift -> abs((a shr shift and 0xFF) - (b shr shift and 0xFF)) }

    private fun apart(before: Bitmap, now: Bitmap): Double {
        if (before.width != now.width || before.height != now.height) return 1.0
        val (a, b) = listOf(before, now).map { picture -> IntArray(picture.width * picture.height).also { picture.getPixels(it, 0, picture.width, 0, 0, picture.width, picture.height) } }
        val differ = a.indices.count { at -> listOf(0, 8, 16).any { abs((a[at] shr it and 0xFF) - (b[at] shr it and 0xFF)) > NEAR } }
        return differ.toDouble() / a.size
    }
}
