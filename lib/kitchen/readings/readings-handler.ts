import 'server-only'
import { z } from 'zod'
import type { Json } from '../../documents/canonical-text'
import { entryHandler } from '../intake/entry-handler'
import type { ReadingAnswer } from './answer-of-reading'
import { correctReadingInput } from './correct-reading.input'
import { judgeReading } from './judge-reading'
import { keepReadings, type ReadingRow } from './keep-readings'
import { loadReadingFacts } from './load-reading-facts'
import { logReadingInput } from './log-reading.input'
import { readingContentText, type ReadingEntry } from './reading-content.input'
import { noteReading, type ReadingFacts } from './reading-facts'

const answer = z.strictObject({
  /** Outside its plausible range, and kept because somebody confirmed it. */
  outOfRange: z.boolean(),
  /** What this place still asks for: another repeat, or a third reading because two disagree. */
  needs: z.enum(['repeat', 'third']).nullable(),
})

/** Readings and their corrections: one handler, because a correction may stand behind its reading in one request. */
export const readingsHandler = entryHandler<ReadingEntry, ReadingFacts, ReadingRow>({
  kinds: {
    reading: { input: logReadingInput, right: 'log-reading', answer },
    correction: { input: correctReadingInput, right: 'correct-reading', answer },
  },
  textOf: readingContentText,
  load: loadReadingFacts,
  judge(entry, facts, by) {
    const verdict = judgeReading(entry, facts, by)
    switch (verdict.outcome) {
      case 'ready': {
        const { row, note } = verdict
        const corrects: { [name: string]: Json } =
          'supersedesId' in entry
            ? { corrects: row.supersedesId, before: note.before ?? null, reason: entry.reason }
            : {}
        return {
          outcome: 'ready',
          row,
          at: whereOf(row),
          about: aboutOf(verdict.answer),
          note: { ...corrects, ...note.after },
        }
      }
      case 'again':
        return { outcome: 'again', about: aboutOf(verdict.answer) }
      case 'aside':
        return { outcome: 'aside', at: whereOf(verdict), why: verdict.why, isAgain: verdict.isAgain }
      default:
        return verdict satisfies never
    }
  },
  note: noteReading,
  noteAside(facts, entryId, aside) {
    facts.aside.set(entryId, [...(facts.aside.get(entryId) ?? []), aside])
  },
  keep: keepReadings,
  held: (from, bakeryId, ids) =>
    from.reading.findMany({ where: { bakeryId, id: { in: ids } }, select: { id: true, contentHash: true } }),
  whyAside: {
    reading_pkey: 'id_taken',
    reading_place_taken: 'place_taken',
    reading_superseded_once: 'corrected_meanwhile',
  },
})

function whereOf({ trialId, batchId }: { trialId: string; batchId: string }) {
  return { trialId, batchId }
}

function aboutOf({ outOfRange, needs }: ReadingAnswer): z.output<typeof answer> {
  return { outOfRange, needs }
}
