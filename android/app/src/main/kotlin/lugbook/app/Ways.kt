package lugbook.app

import android.content.ClipData
import android.content.Context
import android.content.Intent
import android.provider.MediaStore
import java.io.File
import java.io.IOException

/** Ways out of the app and back: the camera, the picker, folders, files, and sharing. */
open class Ways(private val context: Context) {
    /** What opens to fill a field; none where this phone has no such part. Asked off the main thread. */
    open fun open(way: Fields.Reach): Intent? = when (way) {
        Fields.Reach.CAMERA -> camera()
        Fields.Reach.PICTURE -> Intent(Intent.ACTION_OPEN_DOCUMENT).setType("image/*").addCategory(Intent.CATEGORY_OPENABLE)
        Fields.Reach.FILE -> Intent(Intent.ACTION_OPEN_DOCUMENT).setType("*/*").addCategory(Intent.CATEGORY_OPENABLE)
        Fields.Reach.FOLDER -> null
    }

    /** The phone's camera. Where its photo comes to lie is on the disk before it opens. */
    private fun camera(): Intent? = try {
        val photo = Hand.IN.uri(Awaited.expect(context).file)
        val intent = Intent(MediaStore.ACTION_IMAGE_CAPTURE).putExtra(MediaStore.EXTRA_OUTPUT, photo)
        intent.clipData = ClipData.newRawUri(null, photo)
        intent.addFlags(Intent.FLAG_GRANT_WRITE_URI_PERMISSION)
    } catch (_: IOException) {
        null
    }

    /** What came back, as the path that a field takes; none when nothing came. Asked off the main thread. */
    open fun path(way: Fields.Reach, came: Intent?): String? {
        if (way == Fields.Reach.CAMERA) return Awaited.found(context)?.takeIf { it.came }?.file?.path
        val from = came?.data ?: return null
        return try {
            val copy = File.createTempFile("picked", way.name.lowercase(), context.cacheDir)
            context.contentResolver.openInputStream(from)?.use { input -> copy.outputStream().use(input::copyTo) }
            copy.path
        } catch (_: IOException) {
            null
        } catch (_: SecurityException) {
            null
        }
    }

    /** Where files that go out are written. Asked off the main thread. */
    open fun outgoing(): File = Hand.OUT.folder(context)

    /** What shares a file of [outgoing]. */
    open fun share(file: File): Intent = Handover.share(file)
}
