package lugbook.app

import android.content.Intent
import android.provider.DocumentsContract
import java.io.File
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.withContext

/** Where copies of backups go outside this app: a folder that the person chooses, and the phone's own backup. */
class OutOfPhone : Beside() {
    private val safe by lazy { Safekeeping(applicationContext) }

    override val title = R.string.away

    override suspend fun fill() {
        val chosen = withContext(Dispatchers.IO) { safe.chosen() }
        val went = withContext(Dispatchers.IO) { safe.last() }
        val name = withContext(Dispatchers.IO) { safe.lastName() }
        content.removeAllViews()
        content.put(pen.text(getString(R.string.away_why)), 12)
        content.put(pen.text(getString(R.string.away_phone)), 8)
        if (chosen != null) {
            val folder = DocumentsContract.getTreeDocumentId(chosen).substringAfterLast(':').ifEmpty { chosen.authority.orEmpty() }
            content.put(pen.text(getString(R.string.away_into, folder), bold = true), 16)
        }
        if (chosen != null && went != null) {
            val panel = pen.panel(pen.ink, if (went == Carried.SAME) 1 else 3)
            panel.put(pen.text(getString(went.sentence), bold = went != Carried.SAME))
            name?.let { panel.put(pen.text(it, Pen.SMALL), 4) }
            content.put(panel, 8)
        }
        if (chosen != null) {
            content.put(pen.button(getString(R.string.away_now), getString(R.string.away_now), chief = true) { asking { carry() } }, 16)
        }
        content.put(pen.button(getString(R.string.away_choose), getString(R.string.away_choose), chief = chosen == null) {
            reach(Intent(Intent.ACTION_OPEN_DOCUMENT_TREE), CHOSEN)
        }, 12)
        if (chosen != null) {
            content.put(pen.button(getString(R.string.away_none), getString(R.string.away_none)) {
                asking {
                    withContext(Dispatchers.IO) { safe.chooseNone() }
                    fill()
                }
            }, 12)
        }
    }

    private suspend fun carry() {
        val good = app.ready().backups(app.manner).backups.lastGood
        if (good == null) {
            tell(getString(R.string.away_nothing))
            return
        }
        withContext(Dispatchers.IO) { safe.intoFolder(File(good)) }
        fill()
    }

    @Deprecated("Deprecated in Java")
    override fun onActivityResult(request: Int, result: Int, came: Intent?) {
        val folder = came?.data ?: return
        if (request != CHOSEN || result != RESULT_OK) return
        asking {
            withContext(Dispatchers.IO) { safe.choose(folder) }
            fill()
            if (app.ready().backups(app.manner).backups.lastGood != null) carry()
        }
    }

    private companion object {
        const val CHOSEN = 1
    }
}
