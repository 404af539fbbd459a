package lugbook.app

import android.content.ClipData
import android.content.ContentProvider
import android.content.ContentValues
import android.content.Context
import android.content.Intent
import android.database.Cursor
import android.database.MatrixCursor
import android.net.Uri
import android.os.ParcelFileDescriptor
import android.provider.OpenableColumns
import java.io.File
import java.io.FileNotFoundException
import java.io.IOException

/** The folders whose files other apps are handed, one at a time. */
enum class Hand(val path: String) {
    /** What goes out: read, and nothing else. */
    OUT("out"),

    /** Where a camera puts the photo that it was asked for: written, and nothing else. */
    IN("arriving"),
    ;

    fun folder(context: Context): File =
        when (this) {
            OUT -> File(context.cacheDir, path)
            IN -> File(context.noBackupFilesDir, path)
        }.apply { mkdirs() }

    /** A file's name for another app. It means nothing without a grant. */
    fun uri(file: File): Uri =
        Uri.Builder().scheme("content").authority(Handover.AUTHORITY).appendPath(path).appendPath(file.name).build()
}

/** Hands single files to apps that were granted them. */
class Handover : ContentProvider() {
    override fun onCreate(): Boolean = true

    override fun openFile(uri: Uri, mode: String): ParcelFileDescriptor {
        val (hand, file) = named(uri) ?: throw FileNotFoundException()
        val allowed = if (hand == Hand.OUT) mode == "r" else mode.startsWith("w")
        if (!allowed) throw FileNotFoundException()
        // Only what is there is opened: nothing new is made for anybody.
        return ParcelFileDescriptor.open(file, ParcelFileDescriptor.parseMode(mode) and ParcelFileDescriptor.MODE_CREATE.inv())
    }

    override fun query(
        uri: Uri,
        projection: Array<out String>?,
        selection: String?,
        selectionArgs: Array<out String>?,
        sortOrder: String?,
    ): Cursor {
        val columns = projection ?: arrayOf(OpenableColumns.DISPLAY_NAME, OpenableColumns.SIZE)
        val cursor = MatrixCursor(columns)
        val file = named(uri)?.second ?: return cursor
        cursor.addRow(columns.map { if (it == OpenableColumns.SIZE) file.length() else if (it == OpenableColumns.DISPLAY_NAME) file.name else null })
        return cursor
    }

    override fun getType(uri: Uri): String? = named(uri)?.second?.let(::typeOf)

    override fun insert(uri: Uri, values: ContentValues?): Uri? = null

    override fun update(uri: Uri, values: ContentValues?, selection: String?, selectionArgs: Array<out String>?): Int = 0

    override fun delete(uri: Uri, selection: String?, selectionArgs: Array<out String>?): Int = 0

    /** The file that is meant: one that lies in a hand's folder itself, and is no link to elsewhere. */
    private fun named(uri: Uri): Pair<Hand, File>? {
        val parts = uri.pathSegments
        if (parts.size != 2) return null
        val hand = Hand.entries.firstOrNull { it.path == parts[0] } ?: return null
        return try {
            val folder = hand.folder(context ?: return null).canonicalFile
            val file = File(folder, parts[1])
            if (file.canonicalFile == file && file.parentFile == folder && file.isFile) hand to file else null
        } catch (_: IOException) {
            null
        }
    }

    companion object {
        const val AUTHORITY = "lugbook.app.handover"

        /** What a file is, by its ending. */
        fun typeOf(file: File): String =
            when (file.extension) {
                "html" -> "text/html"
                "pdf" -> "application/pdf"
                "csv" -> "text/csv"
                "ics" -> "text/calendar"
                "jpg" -> "image/jpeg"
                "zip" -> "application/zip"
                else -> "application/octet-stream"
            }

        /** What sends a file that was written out to whatever app the person chooses. */
        fun share(file: File): Intent {
            val uri = Hand.OUT.uri(file)
            val send = Intent(Intent.ACTION_SEND)
                .setType(typeOf(file))
                .putExtra(Intent.EXTRA_STREAM, uri)
                .addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION)
            send.clipData = ClipData.newRawUri(null, uri)
            return Intent.createChooser(send, null).addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION)
        }

        /** Forgets what went out before, but for what may still be on its way. */
        fun sweep(context: Context, nowMs: Long) {
            Hand.OUT.folder(context).listFiles()?.filter { nowMs - it.lastModified() > KEPT_MS }?.forEach(File::delete)
        }

        private const val KEPT_MS = 24 * 60 * 60 * 1000L
    }
}
