import { checkContentText } from '../../kitchen/checks/check-content.input'
import { noteContentText } from '../../kitchen/notes/note-content.input'
import { readingContentText } from '../../kitchen/readings/reading-content.input'
import { stepContentText } from '../../kitchen/steps/step-content.input'
import { causeContentText } from '../../kitchen/shifts/cause-content.input'
import { countContentText } from '../../kitchen/shifts/count-content.input'
import { weighingContentText } from '../../kitchen/weighings/weighing-content.input'
import { sayName } from '../../words/say'
import { station as words } from '../../words/en/station'
import { stationCauses } from '../../words/en/station-causes'
import { stationChecks } from '../../words/en/station-checks'
import { stationCounts } from '../../words/en/station-counts'
import { stationMixing } from '../../words/en/station-mixing'
import { stationNotes } from '../../words/en/station-notes'
import { stationSteps } from '../../words/en/station-steps'
import type { EntryKind, EntryOf, OutboxEntry } from '../outbox/entry'
import { shownValue } from '../ui/figures'
import { placeName } from '../ui/place-name'
import { saidOfCount } from '../ui/said-of-count'
import { valueWithLots } from '../ui/value-with-lots'
import type { KindFacts } from './kind-facts'

type KindOf<Kind extends EntryKind> = {
  /** The one text of its content, whose hash the book echoes. */
  textOf(payload: KindFacts[Kind]['payload']): string
  /** What it says, in a line. */
  said(entry: EntryOf<Kind>, locale: string): string
  /** The same without what tells which dough it is, of a kind that can. */
  saidToAnybody?(entry: EntryOf<Kind>): string
  /** When it was made, of a kind whose payload has no time of its own. */
  at?(entry: EntryOf<Kind>): string
}

/** What the tablet can do with an entry of each kind; the book has a handler for each. */
const kinds: { [Kind in EntryKind]: KindOf<Kind> } = {
  reading: {
    textOf: readingContentText,
    said: ({ payload, shown }, locale) =>
      sayName(words.list.row, 'en', {
        code: shown.code,
        measure: shown.measure,
        place: placeName(shown),
        value: shownValue(payload.value, payload.unit, locale),
      }),
  },
  correction: {
    textOf: readingContentText,
    said: ({ payload: { piece = null, repeat, value, unit }, shown }, locale) =>
      sayName(words.list.correction, 'en', {
        code: shown.code,
        measure: shown.measure,
        place: placeName({ piece, level: shown.level, repeat }),
        was: shown.was,
        value: shownValue(value, unit, locale),
      }),
    at: ({ shown }) => shown.at,
  },
  weighing: {
    textOf: weighingContentText,
    said: ({ payload: { how, mass, unit }, shown: { code, line, was, lots = [] } }, locale) => {
      const { list, how: said } = stationMixing
      const value = valueWithLots(how === 'weighed' ? shownValue(mass ?? '', unit ?? '', locale) : said[how], lots)
      return was === null
        ? sayName(list.row, 'en', { code, line, value })
        : sayName(list.correction, 'en', { code, line, value, was })
    },
    saidToAnybody: ({ shown: { code, line, was } }) =>
      sayName(was === null ? stationMixing.list.written : stationMixing.list.corrected, 'en', { code, line }),
  },
  step: {
    textOf: stepContentText,
    said: ({ payload: { step, isDone }, shown: { code, isFix } }) =>
      sayName(isFix ? (isDone ? stationSteps.corrected : stationSteps.notDone) : stationSteps.row, 'en', {
        code,
        step: stationSteps.done[step],
      }),
  },
  cause: {
    textOf: causeContentText,
    said: ({ payload: { what }, shown: { code } }) => sayName(stationCauses.row, 'en', { code, what }),
  },
  count: {
    textOf: countContentText,
    said: ({ payload, shown: { code } }) => sayName(stationCounts.row, 'en', { code, said: saidOfCount(payload) }),
  },
  check: {
    textOf: checkContentText,
    said: ({ payload: { shown: value, unit }, shown: { instrument } }, locale) =>
      sayName(stationChecks.row, 'en', { instrument, value: shownValue(value, unit, locale) }),
  },
  note: {
    textOf: noteContentText,
    said: ({ payload: { text }, shown: { code } }) =>
      code === null
        ? sayName(stationNotes.row, 'en', { text })
        : sayName(stationNotes.rowOfDough, 'en', { code, text }),
  },
}

/** The one text of what an entry of a kind says. */
export function textOfEntry<Kind extends EntryKind>(kind: Kind, payload: KindFacts[Kind]['payload']): string {
  return kinds[kind].textOf(payload)
}

/**
 * What an entry says, in a line.
 * @param knows whether whoever reads it knows what the dough is; who does not is told no weight of it
 */
export function saidOfEntry<Kind extends EntryKind>(
  entry: EntryOf<Kind> & OutboxEntry,
  locale: string,
  knows: boolean,
): string {
  const kind: KindOf<Kind> = kinds[entry.kind]
  return (knows ? undefined : kind.saidToAnybody?.(entry)) ?? kind.said(entry, locale)
}

/** Whether what is sent of a kind says when it was made. */
export function isTimed(kind: EntryKind): boolean {
  return kinds[kind].at === undefined
}

/** When an entry was made, by the tablet's clock. */
export function momentOfEntry<Kind extends EntryKind>(entry: EntryOf<Kind> & OutboxEntry): string {
  const kind: KindOf<Kind> = kinds[entry.kind]
  return kind.at?.(entry) ?? ('takenAt' in entry.payload ? entry.payload.takenAt : '')
}
