package lugbook.app

import android.content.res.Resources
import kotlinx.coroutines.Dispatchers
import kotlinx.coroutines.withContext
import lugbook.core.ActionWeight
import lugbook.core.BayScreen
import lugbook.core.CautionLine
import lugbook.core.Engine
import lugbook.core.JobLine
import lugbook.core.Manner
import lugbook.core.Outgoing
import lugbook.core.OutgoingOf
import lugbook.core.ScreenAction
import lugbook.core.TireLine

/** Asks the core for a page, and lays out what comes. */
class Sheets(private val words: Resources, private val engine: Engine, private val manner: Manner, private val search: String) {
    private fun word(id: Int): String = words.getString(id)

    /** The page as it stands now. */
    suspend fun of(page: Page): Sheet = withContext(Dispatchers.Default) { laid(page) }

    private suspend fun laid(page: Page): Sheet = when (page.place) {
        Place.FIRST_RUN -> firstRun(page)
        Place.BAY -> bay(page)
        Place.STEPS -> steps(page)
        Place.PLAN -> plan(page)
        Place.LIFTS -> lifts(page)
        Place.FINDINGS -> findings(page)
        Place.LOG -> log(page)
        Place.PHOTOS -> photos(page)
        Place.CARD -> card(page)
        Place.WHY -> why(page)
        Place.BOOK -> book(page)
        Place.VEHICLE -> vehicle(page)
        Place.VISITS -> visits(page)
        Place.TIRE -> tire(page)
        Place.HISTORY -> history(page)
        Place.CREW -> crew(page)
        Place.BENCH -> bench(page)
        Place.SETTINGS -> settings(page)
        Place.BACKUPS -> backups(page)
        Place.PROOF -> proof(page)
        Place.ABOUT -> about(page)
        Place.MORE, Place.FORM, Place.REMINDERS, Place.COPIES -> laid(page.base ?: Page.BAY)
    }

    private suspend fun firstRun(page: Page): Sheet {
        val screen = engine.firstRun(manner)
        val at = page.of.firstOrNull()?.toIntOrNull() ?: 0
        val card = screen.cards[at.coerceIn(screen.cards.indices)]
        val pieces = listOf(
            Piece.Line("${at + 1}/${screen.cards.size}", faint = true),
            Piece.Heading(card.heading),
            Piece.Line(card.text),
        )
        val last = at >= screen.cards.size - 1
        // The last card is where somebody begins; on the others only the settings and a backup are at hand.
        val actions = if (last) screen.actions else screen.actions.filter { it.weight != ActionWeight.MAIN && it.code != "add-vehicle" }
        val onward = if (last) null else Piece.Go(word(R.string.next), Page(Place.FIRST_RUN, listOf("${at + 1}")))
        return Sheet(word(R.string.app_name), page.key, pieces, actions, onward)
    }

    private suspend fun bay(page: Page): Sheet {
        val screen = engine.bay(page.of.getOrNull(0), page.of.getOrNull(1)?.ifEmpty { null }, manner)
        val step = screen.step
        val pieces = buildList {
            screen.told.forEach { add(Piece.Told(it)) }
            if (screen.job != null) {
                add(Piece.Line("${screen.progress} · ${screen.title} · ${screen.hands}", faint = true))
            }
            step?.let { step ->
                step.cautions.forEach { add(caution(it)) }
                add(Piece.Step(step.at, step.sentence, step.spoken))
                step.turn?.let { add(Piece.Line(it.detail, faint = true)) }
                step.gate.forEach { add(Piece.Stated("held", "", it, it)) }
                step.notes.forEach { add(Piece.Line(it)) }
                step.nuts?.let {
                    add(Piece.Nuts(it))
                    add(Piece.Line(it.told, faint = true))
                }
            }
            screen.sight?.let { sight ->
                sight.lines.forEach { line ->
                    add(Piece.Heading(line.label))
                    line.suggestions.forEach { add(Piece.Suggested(it.text, it.oddsText, it.spoken, it.cut)) }
                    line.empty?.let { add(Piece.Line(it)) }
                }
                sight.words.forEach { add(Piece.Line(it)) }
                sight.arrow?.let { add(Piece.Line(it)) }
                sight.chalk?.let { add(Piece.Line(it)) }
                sight.hints.forEach { add(Piece.Line(it)) }
                add(Piece.Line(sight.sentence))
            }
            screen.empty?.let { add(Piece.Line(it)) }
            screen.pendingPhoto?.let { add(Piece.Told(it)) }
        }
        val after = buildList {
            screen.last?.let { add(Piece.Stated("done", "", it, it, quiet = true)) }
            if (step?.at != null && step.asks in listOf("mark", "mark-read")) add(Piece.Car(engine.vehicle(screen.vehicle, manner).drawing, step.at))
        }
        val plan = when {
            step?.asks == "plan" && step.state == "ready" -> Piece.Go(word(R.string.see_plans), Page(Place.PLAN))
            screen.job == null && screen.actions.none { it.weight == ActionWeight.MAIN } -> Piece.Go(word(R.string.book), Page(Place.BOOK))
            else -> null
        }
        return Sheet(screen.vehicle.ifEmpty { word(R.string.bay) }, key(screen), pieces, screen.actions, plan, screen.job != null, after, step?.turn != null)
    }

    /** A caution, by its signal word and that word's shape. */
    private fun caution(line: CautionLine, quiet: Boolean = line.again) = Piece.Stated(line.signalCode, line.signal, line.sentence, quiet = quiet)

    private fun key(screen: BayScreen): String = bayKey(screen.job?.toString(), screen.step?.step, screen.step?.at)

    private suspend fun steps(page: Page): Sheet {
        val screen = engine.bay(null, null, manner)
        val rows = screen.tasks.map { task ->
            val title = listOfNotNull(task.at, task.sentence).joinToString(" · ")
            Piece.Row(title, task.why, listOf(title, *task.why.toTypedArray()).joinToString(". "), Page(Place.BAY, listOf(task.step, task.at.orEmpty())), task.state)
        }
        return Sheet(word(R.string.steps), page.key, listOf(Piece.Line(screen.progress, faint = true)) + rows, inWork = screen.job != null)
    }

    private suspend fun plan(page: Page): Sheet {
        val screen = engine.plan(manner)
        val pieces = buildList {
            add(Piece.Heading(screen.shout))
            screen.plans.forEach { plan ->
                if (plan.chosen) add(Piece.Stated("done", "", plan.name, plan.name)) else add(Piece.Heading(plan.name))
                add(Piece.Car(plan.drawing))
                plan.left?.let { add(Piece.Line(it)) }
                plan.why.forEach { add(Piece.Line(it, faint = true)) }
            }
            screen.refused.forEach { add(Piece.Stated("skipped", "", it, it)) }
            screen.notes.forEach { add(Piece.Line(it)) }
            add(Piece.Go(word(R.string.why), Page(Place.WHY, listOf("pattern"))))
        }
        return Sheet(word(R.string.plan), page.key, pieces, screen.actions, inWork = true)
    }

    private suspend fun lifts(page: Page): Sheet {
        val screen = engine.lifts(manner)
        val pieces = buildList {
            add(Piece.Heading(screen.sentence))
            screen.notes.forEach { add(Piece.Line(it)) }
            screen.lifts.forEach { act ->
                act.caution.forEach { add(caution(it, quiet = true)) }
                val title = "${act.n}  ${act.sentence}"
                add(Piece.Row(title, emptyList(), title, null, if (act.done) "done" else "ready"))
            }
            add(Piece.Go(word(R.string.why), Page(Place.WHY, listOf("lifts"))))
        }
        return Sheet(word(R.string.lifts), page.key, pieces, inWork = true)
    }

    private suspend fun findings(page: Page): Sheet {
        val screen = engine.findings(page.of.firstOrNull()?.toUIntOrNull(), manner)
        val pieces = screen.findings.map { Piece.Stated(it.state, listOfNotNull(it.at, it.stateText).joinToString(" · "), it.sentence, it.spoken) } +
            listOfNotNull(screen.empty?.let { Piece.Line(it) }, Piece.Line(screen.limits, faint = true))
        return Sheet(word(R.string.findings), page.key, pieces)
    }

    private suspend fun log(page: Page): Sheet {
        val screen = engine.log(page.of.firstOrNull()?.toUIntOrNull(), manner)
        val pieces = screen.lines.map { line ->
            Piece.Row("${line.line}  ${line.sentence}", listOf("${line.saidAt} · ${line.author}"), line.sentence, null, "skipped".takeIf { line.corrected })
        }
        return Sheet(word(R.string.log), page.key, pieces, screen.actions)
    }

    private suspend fun photos(page: Page): Sheet {
        val job = page.of.firstOrNull()?.toUIntOrNull()
        val screen = engine.photos(job, manner)
        val pieces = screen.photos.flatMap { photo ->
            val shown = photo.large?.let { Piece.Picture(it, photo.caption) } ?: photo.trouble?.let { Piece.Told(it) }
            listOfNotNull(Piece.Heading(photo.caption), shown, Piece.Out(word(R.string.share_photo), Outgoing.PHOTO, OutgoingOf(job = job, photo = photo.photo)))
        }
        return Sheet(word(R.string.photos), page.key, pieces + listOfNotNull(screen.empty?.let { Piece.Line(it) }))
    }

    private suspend fun card(page: Page): Sheet {
        val job = page.of.firstOrNull()?.toUIntOrNull()
        val of = OutgoingOf(job = job)
        val pieces = listOf(
            Piece.Card(engine.card(job, manner)),
            Piece.Out(word(R.string.share_page), Outgoing.CARD, of),
            Piece.Out(word(R.string.share_paper), Outgoing.CARD_PAPER, of),
            Piece.Out(word(R.string.share_labels), Outgoing.LABELS_PAPER, of),
            Piece.Go(word(R.string.findings), Page(Place.FINDINGS, page.of)),
            Piece.Go(word(R.string.log), Page(Place.LOG, page.of)),
            Piece.Go(word(R.string.photos), Page(Place.PHOTOS, page.of)),
            Piece.Go(word(R.string.proof), Page(Place.PROOF)),
        ) + listOfNotNull(page.of.firstOrNull()?.let { Piece.Go(word(R.string.reminders), Page(Place.REMINDERS, listOf("", it))) })
        return Sheet(word(R.string.card), page.key, pieces)
    }

    private suspend fun why(page: Page): Sheet {
        val view = engine.why(page.of.first(), manner)
        val pieces = listOf(Piece.Heading(view.answer)) + view.evidence.map { Piece.Line(it) } +
            view.against.map { Piece.Stated("skipped", "", it, it) } + Piece.Line(view.rule) + view.source.map { Piece.Line(it, faint = true) }
        return Sheet(word(R.string.why), page.key, pieces)
    }

    private suspend fun book(page: Page): Sheet {
        val screen = engine.book(search, manner)
        val pieces = buildList {
            add(Piece.Search(word(R.string.search), SEARCH))
            add(Piece.Line(screen.told, faint = true))
            screen.empty?.let { add(Piece.Line(it)) }
            screen.vehicles.forEach { row ->
                val lines = listOfNotNull(listOfNotNull(row.model, row.plate).joinToString(" · "), row.stateText, row.lastVisit, row.due)
                add(Piece.Row(row.name, lines, row.spoken, Page(Place.VEHICLE, listOf(row.name)), row.state))
            }
            jobs(screen.jobs)
            if (screen.tools.isNotEmpty()) add(Piece.Heading(word(R.string.tools)))
            screen.tools.forEach { add(Piece.Line(it)) }
            screen.archived.forEach { add(Piece.Line(it, faint = true)) }
            add(Piece.Line(screen.limits, faint = true))
            add(Piece.Out(word(R.string.share_readings), Outgoing.READINGS, OutgoingOf()))
            add(Piece.Out(word(R.string.share_jobs), Outgoing.JOBS, OutgoingOf()))
        }
        return Sheet(word(R.string.book), page.key, pieces, screen.actions)
    }

    private fun MutableList<Piece>.jobs(jobs: List<JobLine>) {
        if (jobs.isNotEmpty()) add(Piece.Heading(word(R.string.jobs)))
        jobs.forEach { job ->
            val lines = listOf("${job.title} · ${job.statusText} · ${job.opened}")
            val spoken = "${job.vehicle}. ${lines.single()}"
            add(Piece.Row("${job.job}  ${job.vehicle}", lines, spoken, Page(Place.CARD, listOf(job.job.toString()))))
        }
    }

    private suspend fun vehicle(page: Page): Sheet {
        val name = page.of.first()
        val screen = engine.vehicle(name, manner)
        val pieces = buildList {
            add(Piece.Line(listOfNotNull(screen.model, screen.plate, screen.`class`).joinToString(" · "), faint = true))
            screen.due?.let { add(Piece.Line(it)) }
            val to = { at: String -> Page(Place.TIRE, listOf(name, at)) }
            add(Piece.Car(screen.drawing, to = to))
            screen.tires.forEach { tire(it, to(it.at)) }
            add(Piece.Go(word(R.string.history), Page(Place.HISTORY, listOf(name))))
            add(Piece.Go(word(R.string.reminders), Page(Place.REMINDERS, listOf(name))))
            (screen.shelf + screen.stored).forEach { add(Piece.Line(it)) }
            jobs(screen.jobs)
        }
        val visits = screen.actions.any { it.weight == ActionWeight.MAIN }
        val onward = if (visits) Piece.Go(word(R.string.begin_visit), Page(Place.VISITS, page.of)) else null
        return Sheet(screen.name, page.key, pieces, screen.actions.filter { it.weight != ActionWeight.MAIN }, onward)
    }

    private fun MutableList<Piece>.tire(tire: TireLine, to: Page?) {
        val lines = listOfNotNull(tire.sidewall, tire.measured, tire.age, tire.sensor)
        add(Piece.Row(listOfNotNull(tire.at, tire.depth?.text).joinToString("   "), lines, tire.spoken, to))
        tire.bar?.let { add(Piece.Depth(it)) }
    }

    private suspend fun visits(page: Page): Sheet {
        val screen = engine.vehicle(page.of.first(), manner)
        val actions = screen.actions.filter { it.weight == ActionWeight.MAIN }
        return Sheet(screen.name, page.key, listOf(Piece.Heading(word(R.string.begin_visit))), actions)
    }

    private suspend fun tire(page: Page): Sheet {
        val screen = engine.tire(page.of[0], page.of[1], manner)
        val pieces = buildList {
            tire(screen.tire, null)
            screen.wear?.let { add(Piece.Line(it)) }
            screen.empty?.let { add(Piece.Line(it)) }
            screen.readings.forEach { read ->
                val lines = listOfNotNull(read.grooves, listOfNotNull(read.day, read.at, read.odometer?.text).joinToString(" · "))
                add(Piece.Row(read.lowest.text, lines, listOf(read.lowest.spoken, read.day, read.at).joinToString(". "), null))
            }
        }
        return Sheet("${page.of[0]} · ${screen.tire.at}", page.key, pieces)
    }

    private suspend fun history(page: Page): Sheet {
        val name = page.of.first()
        val screen = engine.history(name, manner)
        val of = OutgoingOf(vehicle = name)
        val pieces = buildList {
            screen.nextVisit?.let { add(Piece.Line(it)) }
            screen.empty?.let { add(Piece.Line(it)) }
            screen.charts.forEach { chart ->
                add(Piece.Heading(chart.at))
                add(Piece.Chart(chart, screen.distanceUnit, screen.depthUnit))
                add(Piece.Line(chart.told))
            }
            add(Piece.Out(word(R.string.share_page), Outgoing.HISTORY, of))
            add(Piece.Out(word(R.string.share_paper), Outgoing.HISTORY_PAPER, of))
            add(Piece.Out(word(R.string.share_readings), Outgoing.READINGS, of))
        }
        return Sheet("$name · ${word(R.string.history)}", page.key, pieces)
    }

    private suspend fun crew(page: Page): Sheet {
        val screen = engine.crew(manner)
        val pieces = buildList {
            screen.people.forEach { add(Piece.Row(it.name, listOf(it.role), "${it.name}. ${it.role}", null)) }
            screen.waiting.forEach { waits ->
                val title = listOfNotNull(waits.learner, waits.at).joinToString(" · ")
                add(Piece.Row(title, listOf(waits.text), "$title. ${waits.text}", null, "held"))
            }
            screen.learners.forEach { learner ->
                add(Piece.Heading(learner.person.name))
                learner.competences.forEach { add(Piece.Row(it.name, listOf(it.text), "${it.name}. ${it.text}", null)) }
                learner.answers.forEach { add(Piece.Line(it.text)) }
                val of = OutgoingOf(person = learner.person.name)
                add(Piece.Out(word(R.string.share_page), Outgoing.LEARNER, of))
                add(Piece.Out(word(R.string.share_paper), Outgoing.LEARNER_PAPER, of))
                add(Piece.Out(word(R.string.share_bundle), Outgoing.LEARNER_BUNDLE, of))
            }
        }
        return Sheet(word(R.string.crew), page.key, pieces, screen.actions)
    }

    private suspend fun bench(page: Page): Sheet {
        val screen = engine.bench(manner)
        return Sheet(word(R.string.bench), page.key, screen.notes.map { Piece.Line(it) }, screen.actions)
    }

    private suspend fun settings(page: Page): Sheet {
        val screen = engine.settings(manner)
        val yesNo = listOf("yes" to word(R.string.yes), "no" to word(R.string.no))
        val after = buildList {
            add(Piece.Choice(word(R.string.text_size), Lettering.KEY, Lettering.entries.map { it.name to word(it.label) }, Lettering.AS_DEVICE.name))
            add(Piece.Choice(word(R.string.volume_key), Look.VOLUME_KEY, yesNo, "no"))
            add(Piece.Go(word(R.string.backups), Page(Place.BACKUPS)))
            add(Piece.Go(word(R.string.away), Page(Place.COPIES)))
            add(Piece.Go(word(R.string.reminders), Page(Place.REMINDERS)))
            add(Piece.Go(word(R.string.proof), Page(Place.PROOF)))
            add(Piece.Go(word(R.string.about), Page(Place.ABOUT)))
        }
        return Sheet(word(R.string.settings), page.key, screen.notes.map { Piece.Line(it) }, screen.actions, after = after)
    }

    private suspend fun backups(page: Page): Sheet {
        val screen = engine.backups(manner)
        val pieces = listOfNotNull(screen.backups.trouble?.let { Piece.Told(it) }) + screen.backups.sentences.map { Piece.Line(it) }
        return Sheet(word(R.string.backups), page.key, pieces, screen.actions)
    }

    private suspend fun proof(page: Page): Sheet {
        val view = engine.verify(manner)
        val pieces = view.refused.map { Piece.Stated("unsafe", it.at, it.sentence) } +
            view.proven.map { Piece.Stated("done", "", it, it) } + view.notProven.map { Piece.Stated("skipped", "", it, it) }
        return Sheet(word(R.string.proof), page.key, pieces)
    }

    private suspend fun about(page: Page): Sheet {
        val notes = engine.settings(manner).notes.map { Piece.Line(it) }
        val license = words.openRawResource(R.raw.license).bufferedReader().use { it.readText() }
        val parts = listOf(Piece.Line(word(R.string.licenses)), Piece.Line(word(R.string.parts), faint = true), Piece.Line(flowing(license), faint = true))
        return Sheet(word(R.string.about), page.key, notes + parts)
    }

    /** Paragraphs without their line ends. */
    private fun flowing(text: String): String =
        text.trim().split("\n\n").joinToString("\n\n") { it.trim().replace(Regex("\\s+"), " ") }

    companion object {
        const val SEARCH = "book#search"

        /** What is typed at a step belongs to it, whichever way it was come to. */
        fun bayKey(job: String?, step: String?, at: String?): String = "bay/${job.orEmpty()}/${step.orEmpty()}/${at.orEmpty()}"

        /** The ways that lead from a job in the bay. */
        fun ways(words: Resources, inOrder: Boolean): List<Piece.Go> = listOf(
            R.string.steps to Place.STEPS, R.string.plan to Place.PLAN, R.string.lifts to Place.LIFTS, R.string.findings to Place.FINDINGS,
            R.string.photos to Place.PHOTOS, R.string.log to Place.LOG, R.string.card to Place.CARD,
        ).filter { (_, place) -> inOrder || place != Place.LIFTS }.map { (label, place) -> Piece.Go(words.getString(label), Page(place)) } +
            listOf("drive", "order", "target").zip(listOf(R.string.why_drive, R.string.why_order, R.string.why_target))
            .map { (code, label) -> Piece.Go(words.getString(label), Page(Place.WHY, listOf(code))) }
    }
}
