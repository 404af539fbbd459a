package lugbook.app

import android.content.Context
import android.content.Intent
import java.io.File
import java.io.IOException

/** Ways out of the app and back: the camera, the picker, folders, files, and sharing. */
open class Ways(private val context: Context) {
    /** What opens to fill a field. */
    open fun open(way: Fields.Reach): Intent? = when (way) {
        Fields.Reach.CAMERA -> Intent(context, Camera::class.java)
        Fields.Reach.PICTURE -> Camera.picker()
        Fields.Reach.FILE -> Intent(Intent.ACTION_OPEN_DOCUMENT).setType("*/*").addCategory(Intent.CATEGORY_OPENABLE)
        Fields.Reach.FOLDER -> Intent(Intent.ACTION_OPEN_DOCUMENT_TREE)
        Fields.Reach.WAITING -> null
    }

    /**
     * What came back, as the path that a field takes; none when nothing came. Asked off the main thread.
     *
     * A folder elsewhere has no path: backups are made in this app's own, and copies go there.
     */
    open fun path(way: Fields.Reach, came: Intent?): String? {
        if (way == Fields.Reach.CAMERA) return came?.getStringExtra(Camera.PATH)?.also { Awaited.handedOver(context) }
        val from = came?.data ?: return null
        return try {
            if (way == Fields.Reach.FOLDER) {
                val safe = Safekeeping(context)
                safe.choose(from)
                return safe.made.apply { mkdirs() }.path
            }
            val copy = File.createTempFile("picked", ".copy", Hand.IN.folder(context))
            context.contentResolver.openInputStream(from)?.use { input -> copy.outputStream().use(input::copyTo) } ?: return null
            copy.path
        } catch (_: IOException) {
            null
        } catch (_: SecurityException) {
            null
        }
    }

    /** The photo that was taken and wanted when the system ended the app; none where there is none. Asked off the main thread. */
    open fun found(): String? = Awaited.found(context)?.takeIf { it.came && it.kept }?.file?.path?.also { Awaited.handedOver(context) }

    /** Whether a photo was taken that nobody has looked at yet. Asked off the main thread. */
    open fun unseen(): Boolean = Awaited.found(context)?.let { it.came && !it.kept } ?: false

    /** Where files that go out are written. Asked off the main thread. */
    open fun outgoing(): File = Hand.OUT.folder(context)

    /** What shares a file of [outgoing]. */
    open fun share(file: File): Intent = Handover.share(file)
}
