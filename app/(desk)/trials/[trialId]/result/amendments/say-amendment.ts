import 'server-only'
import { sayPlace } from '@/app/(desk)/say-place'
import { formatDateTime } from '@/lib/words/format/date'
import { withUnit } from '@/lib/words/format/with-unit'
import { say } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import type { ShownBakery } from '../shown-result'
import type { ShownAmendment } from './shown-amendments'

/** An amendment in words: of what it is, what was closed, what should stand. */
export function sayAmendment({ change }: ShownAmendment, language: Language) {
  const words = wordsIn(language)
  const { amendments: text } = words
  if (change.kind === 'not-counted')
    return { of: [text.wholeDough], name: '', place: '', old: text.counts, new: text.countsNot, moved: null }
  const { name, place } = sayPlace(change, words, language)
  const { old } = change
  const isMoved = old !== null && (old.piece !== change.piece || old.repeat !== change.repeat)
  return {
    of: [say(text.place, language, { name, place }), say(text.repeat, language, { repeat: change.repeat })],
    name,
    place,
    old: old === null ? text.none : withUnit(old.valueEntered, old.unitEntered),
    new: withUnit(change.new.valueEntered, change.new.unitEntered),
    moved: isMoved && old.piece !== null ? say(text.from, language, { piece: old.piece, repeat: old.repeat }) : null,
  }
}

/** That a device sent it late, and when it says it was taken; nothing of what was proposed at the desk. */
export function sayLate({ isLate, change }: ShownAmendment, bakery: ShownBakery, language: Language): string[] {
  const { amendments: text } = wordsIn(language)
  if (!isLate) return []
  return change.kind === 'reading' && change.takenAt !== null
    ? [say(text.lateTaken, language, { at: formatDateTime(new Date(change.takenAt), bakery) })]
    : [text.late]
}

/** What a second person said of it, a remark each; that it waits where nobody has said anything. */
export function sayVerdict({ verdict }: ShownAmendment, bakery: ShownBakery, language: Language): string[] {
  const { amendments: text } = wordsIn(language)
  if (!verdict) return [text.waits]
  const { by, at, isAccepted, as, note } = verdict
  return [
    say(isAccepted ? text.accepted : text.turnedDown, language, { who: by, at: formatDateTime(at, bakery) }),
    ...(as === 'second_person' ? [] : [text.as[as]]),
    ...(note === '' ? [] : [note]),
  ]
}
