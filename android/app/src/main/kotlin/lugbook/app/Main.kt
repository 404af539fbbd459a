package lugbook.app

import android.app.Activity
import android.os.Bundle
import android.widget.LinearLayout
import android.widget.TextView
import kotlinx.coroutines.CoroutineScope
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.SupervisorJob
import kotlinx.coroutines.cancel
import kotlinx.coroutines.launch
import lugbook.core.Refusal

/** The one window: it shows a page of the book, and hands back what is tapped on it. */
class Main : Activity() {
    private val scope = CoroutineScope(SupervisorJob() + Dispatchers.Main.immediate)
    private lateinit var content: LinearLayout

    override fun onCreate(state: Bundle?) {
        super.onCreate(state)
        content = LinearLayout(this)
        content.orientation = LinearLayout.VERTICAL
        setContentView(content)
        scope.launch { show() }
    }

    override fun onDestroy() {
        scope.cancel()
        super.onDestroy()
    }

    private suspend fun show() {
        val lines =
            try {
                val engine = (application as App).engine()
                val manner = Speech.ofDevice(resources.configuration)
                engine.firstRun(manner).cards.flatMap { listOf(it.heading, it.text) }
            } catch (refusal: Refusal) {
                listOfNotNull(refusal.message)
            }
        content.removeAllViews()
        lines.forEach { line -> content.addView(TextView(this).apply { text = line }) }
    }
}
