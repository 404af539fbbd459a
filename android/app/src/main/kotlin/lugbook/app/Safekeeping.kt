package lugbook.app

import android.app.Notification
import android.app.NotificationChannel
import android.app.NotificationManager
import android.app.PendingIntent
import android.content.Context
import android.content.Intent
import android.content.res.Configuration
import android.net.Uri
import android.provider.DocumentsContract
import java.io.File
import java.io.FileNotFoundException
import java.io.FileOutputStream
import java.io.IOException
import java.io.InputStream
import java.security.MessageDigest
import java.util.Locale
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.withContext
import lugbook.core.Engine
import lugbook.core.Entered
import lugbook.core.Language
import lugbook.core.Manner
import org.json.JSONException
import org.json.JSONObject

/** How carrying the last backup went. */
enum class Carried(val sentence: Int) {
    /** It lies there too, and was read back the same. */
    SAME(R.string.carried_same),

    /** The folder is gone, or may not be used any more. */
    NO_FOLDER(R.string.carried_no_folder),

    /** It could not be written. */
    NOT_WRITTEN(R.string.carried_not_written),

    /** What was read back is not what was written. */
    NOT_THE_SAME(R.string.carried_not_the_same),
}

/**
 * Carries the core's verified backup to where the phone's own backup takes it, and to a folder that the person chose.
 *
 * The core makes backups and reads them back; they lie in [made]. What it called good is linked into [phone], the
 * only folder of this app that a phone's backup takes, and is copied to the chosen folder, where it is read back
 * once more. Nothing here is asked on the main thread.
 */
class Safekeeping(private val context: Context) {
    private val note by lazy { File(context.noBackupFilesDir, "carried.json") }

    /** Where the core puts its backups by itself. */
    val made: File get() = File(context.noBackupFilesDir, "backups")

    /** The one folder that a phone's backup takes. */
    val phone: File get() = File(context.filesDir, "phone-backup")

    /** A backup that came with this phone's own backup from an earlier one; none where there is nothing to restore. */
    fun restored(): File? = phone.listFiles()?.filter { it.isFile && !it.name.startsWith(".") }?.maxByOrNull { it.lastModified() }

    /** The folder that was chosen; none where none was. */
    fun chosen(): Uri? = read().optString(FOLDER).ifEmpty { null }?.let(Uri::parse)

    /** How it went last; none where nothing was carried yet. */
    fun last(): Carried? = Carried.entries.firstOrNull { it.name == read().optString(WENT) }

    /** The name of the file that was carried last and read back the same. */
    fun lastName(): String? = read().optString(NAME).ifEmpty { null }

    /** Takes a folder that the person picked, for as long as the person leaves it to us. */
    @Throws(IOException::class)
    fun choose(folder: Uri) {
        val rights = Intent.FLAG_GRANT_READ_URI_PERMISSION or Intent.FLAG_GRANT_WRITE_URI_PERMISSION
        try {
            context.contentResolver.takePersistableUriPermission(folder, rights)
        } catch (_: SecurityException) {
            throw IOException()
        }
        write(JSONObject().put(BEGUN, read().optBoolean(BEGUN)).put(FOLDER, folder.toString()))
    }

    /** No folder from now on. What lies there stays. */
    @Throws(IOException::class)
    fun chooseNone() = write(JSONObject().put(BEGUN, read().optBoolean(BEGUN)))

    /** Puts the good backup where the phone's own backup finds it: that one alone. */
    @Throws(IOException::class)
    fun intoPhone(good: File) {
        phone.mkdirs()
        val there = File(phone, good.name)
        if (there.length() != good.length() || !there.exists()) {
            val half = File(phone, ".half")
            good.inputStream().use { from -> FileOutputStream(half).use { to -> from.copyTo(to); to.fd.sync() } }
            if (!half.renameTo(there)) throw IOException()
        }
        phone.listFiles()?.filter { it != there }?.forEach(File::delete)
    }

    /** Copies the good backup to the chosen folder and reads it back; none where no folder was chosen. */
    fun intoFolder(good: File): Carried? {
        val folder = chosen() ?: return null
        if (last() == Carried.SAME && lastName() == good.name && find(folder, good.name) != null) return Carried.SAME
        val went = carry(good, folder)
        try {
            val told = read().put(WENT, went.name)
            write(told.put(NAME, if (went == Carried.SAME) good.name else lastName()))
        } catch (_: IOException) {
            // The phone is full: the copy lies there or not; it is looked at again next time.
        }
        return went
    }

    /**
     * Has the core make backups by itself inside this app, once, and carries the last good one. Whoever stops them in the
     * settings has said so, and they are not begun again. A copy that fails is told.
     */
    suspend fun carry(engine: Engine, manner: Manner) {
        try {
            val screen = engine.backups(manner)
            if (screen.backups.into == null && withContext(Dispatchers.IO) { !read().optBoolean(BEGUN) }) {
                val into = withContext(Dispatchers.IO) { made.apply { mkdirs() }.path }
                screen.actions.firstOrNull { it.code == "back-up-into" }?.let { engine.act(it.token, listOf(Entered("folder", into)), manner) }
                withContext(Dispatchers.IO) { write(read().put(BEGUN, true)) }
            }
            val good = engine.backups(manner).backups.lastGood?.let(::File) ?: return
            withContext(Dispatchers.IO) {
                intoPhone(good)
                val before = last()
                val went = intoFolder(good)
                if (went != null && went != Carried.SAME && went != before) tell(went, manner)
            }
        } catch (_: IOException) {
            // The phone is full: the core says so itself, with what to do.
        }
    }

    /** Tells that a copy failed, also when nobody looks at this app. */
    private fun tell(went: Carried, manner: Manner) {
        val mine = Configuration(context.resources.configuration)
        mine.setLocale(Locale.forLanguageTag(if (manner.language == Language.SPANISH) "es" else "en"))
        val words = context.createConfigurationContext(mine)
        val notices = context.getSystemService(NotificationManager::class.java)
        notices.createNotificationChannel(NotificationChannel(CHANNEL, words.getString(R.string.away), NotificationManager.IMPORTANCE_DEFAULT))
        val open = PendingIntent.getActivity(context, 1, Intent(context, OutOfPhone::class.java), PendingIntent.FLAG_IMMUTABLE)
        val notice = Notification.Builder(context, CHANNEL)
            .setSmallIcon(R.drawable.icon_told)
            .setContentTitle(words.getString(R.string.carried_trouble))
            .setContentText(words.getString(went.sentence))
            .setStyle(Notification.BigTextStyle().bigText(words.getString(went.sentence)))
            .setContentIntent(open)
            .setAutoCancel(true)
            .build()
        notices.notify(CHANNEL, 1, notice)
    }

    private fun carry(good: File, folder: Uri): Carried {
        val resolver = context.contentResolver
        val to = try {
            find(folder, good.name) ?: DocumentsContract.createDocument(resolver, root(folder), Handover.typeOf(good), good.name)
        } catch (_: FileNotFoundException) {
            null
        } catch (_: SecurityException) {
            null
        } catch (_: IllegalArgumentException) {
            null
        } ?: return Carried.NO_FOLDER
        try {
            val out = resolver.openOutputStream(to, "wt") ?: return Carried.NOT_WRITTEN
            out.use { good.inputStream().use { from -> from.copyTo(it) } }
        } catch (_: IOException) {
            return Carried.NOT_WRITTEN
        } catch (_: SecurityException) {
            return Carried.NO_FOLDER
        }
        val back = try {
            resolver.openInputStream(to)?.use(::digest)
        } catch (_: IOException) {
            null
        }
        return if (back != null && back.contentEquals(good.inputStream().use(::digest))) Carried.SAME else Carried.NOT_THE_SAME
    }

    private fun root(folder: Uri): Uri =
        DocumentsContract.buildDocumentUriUsingTree(folder, DocumentsContract.getTreeDocumentId(folder))

    /** The file of a name in the folder; none where it is not there, or the folder can't be read. */
    private fun find(folder: Uri, name: String): Uri? {
        val children = DocumentsContract.buildChildDocumentsUriUsingTree(folder, DocumentsContract.getTreeDocumentId(folder))
        val columns = arrayOf(DocumentsContract.Document.COLUMN_DOCUMENT_ID, DocumentsContract.Document.COLUMN_DISPLAY_NAME)
        return try {
            context.contentResolver.query(children, columns, null, null)?.use { rows ->
                while (rows.moveToNext()) {
                    if (rows.getString(1) == name) return DocumentsContract.buildDocumentUriUsingTree(folder, rows.getString(0))
                }
                null
            }
        } catch (_: SecurityException) {
            null
        } catch (_: IllegalArgumentException) {
            null
        }
    }

    private fun digest(stream: InputStream): ByteArray {
        val sum = MessageDigest.getInstance("SHA-256")
        val piece = ByteArray(PIECE)
        while (true) {
            val read = stream.read(piece)
            if (read < 0) return sum.digest()
            sum.update(piece, 0, read)
        }
    }

    private fun read(): JSONObject = try {
        JSONObject(note.readText())
    } catch (_: IOException) {
        JSONObject()
    } catch (_: JSONException) {
        JSONObject()
    }

    private fun write(json: JSONObject) {
        val half = File(note.path + ".half")
        FileOutputStream(half).use { out ->
            out.write(json.toString().toByteArray())
            out.fd.sync()
        }
        if (!half.renameTo(note)) throw IOException()
    }

    private companion object {
        const val CHANNEL = "backups"
        const val BEGUN = "begun"
        const val FOLDER = "folder"
        const val WENT = "went"
        const val NAME = "name"
        const val PIECE = 64 * 1024
    }
}
