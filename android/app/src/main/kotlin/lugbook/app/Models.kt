package lugbook.app

import java.io.File
import java.io.FileNotFoundException
import java.io.FileOutputStream
import java.io.IOException
import java.io.InputStream

/** The models that read photos: the app brings them packed, and the core reads files. */
object Models {
    private val NAMES = listOf("PP-OCRv6_det_small.onnx", "PP-OCRv6_rec_small.onnx")
    private const val STAMP = "stamp"

    /**
     * Lays them into a folder, whole or not at all, once for each version of the app. Without them, or on a full phone, there is
     * no folder, and sidewalls are typed.
     */
    fun lay(folder: File, version: String, packed: (String) -> InputStream) {
        try {
            if (File(folder, STAMP).takeIf { it.exists() }?.readText() == version) return
            folder.deleteRecursively()
            val half = File(folder.path + ".half")
            half.deleteRecursively()
            if (!half.mkdirs()) return
            for (name in NAMES) packed(name).use { from -> FileOutputStream(File(half, name)).use { to -> from.copyTo(to) } }
            File(half, STAMP).writeText(version)
            half.renameTo(folder)
        } catch (_: FileNotFoundException) {
            // This package brings none.
        } catch (_: IOException) {
            // The phone is full: it is tried again at the next start.
        }
    }
}
