package lugbook.app

import android.content.Context
import java.io.File
import java.io.FileOutputStream
import java.io.IOException
import org.json.JSONException
import org.json.JSONObject

/**
 * A photo whose camera was opened, noted before it opened.
 *
 * The camera, or the system, may end this process before the photo is in the book. The note and the file are on the
 * disk then, and a later process finds both.
 *
 * @property file where the photo comes to lie
 * @property kept the person looked at it and wants it
 */
data class Awaited(val file: File, val kept: Boolean = false) {
    /** The camera wrote something. */
    val came: Boolean get() = file.length() > 0

    companion object {
        private const val NOTE = "awaited.json"
        private const val DAYS_MS = 7 * 24 * 60 * 60 * 1000L

        private fun note(context: Context) = File(Hand.IN.folder(context), NOTE)

        /** Notes that a photo is coming, and makes its file. It is on the disk when this returns. */
        @Throws(IOException::class)
        fun expect(context: Context): Awaited {
            val file = File.createTempFile("photo", ".jpg", Hand.IN.folder(context))
            return Awaited(file).also { write(context, it) }
        }

        /** The person wants it. */
        @Throws(IOException::class)
        fun keep(context: Context, awaited: Awaited): Awaited = awaited.copy(kept = true).also { write(context, it) }

        /** The photo that was awaited when a process ended, or still is. */
        fun found(context: Context): Awaited? {
            val json = try {
                JSONObject(note(context).readText())
            } catch (_: IOException) {
                return null
            } catch (_: JSONException) {
                return null
            }
            val name = json.optString("file").ifEmpty { return null }
            return Awaited(File(Hand.IN.folder(context), File(name).name), json.optBoolean("kept"))
        }

        /** The photo was handed to where it was asked for: its file stays, and no later process looks for it. */
        fun handedOver(context: Context) {
            note(context).delete()
        }

        /** The photo is not wanted. */
        fun forget(context: Context) {
            found(context)?.file?.delete()
            note(context).delete()
        }

        /** Removes what nobody asked for in a week. */
        fun sweep(context: Context, nowMs: Long) {
            val awaited = found(context)?.file
            Hand.IN.folder(context).listFiles()
                ?.filter { it.name != NOTE && it != awaited && nowMs - it.lastModified() > DAYS_MS }
                ?.forEach(File::delete)
        }

        private fun write(context: Context, awaited: Awaited) {
            val json = JSONObject().put("file", awaited.file.name).put("kept", awaited.kept)
            val half = File(note(context).path + ".half")
            FileOutputStream(half).use { out ->
                out.write(json.toString().toByteArray())
                out.fd.sync()
            }
            if (!half.renameTo(note(context))) throw IOException()
        }
    }
}
