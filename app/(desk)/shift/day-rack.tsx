import type { getShift } from '@/lib/kitchen/shifts/get-shift'
import type { AnswerOf } from '@/lib/kitchen/query'
import { Rack } from '@/lib/ui/rack'
import type { DateForm } from '@/lib/words/format/date'
import { measureName } from '@/lib/words/measure-name'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { BatchStateWord } from './batch-state-word'
import { sayDue } from './say-due'
import { sayRuns } from './say-runs'

export type ShiftBatch = AnswerOf<typeof getShift>['trials']['rows'][number]['batches'][number]

type DayRackProps = {
  dayNumber: number
  batches: readonly ShiftBatch[]
  bakery: DateForm
  words: Words
  language: Language
}

/** The batches of one mixing day in their drawn order, with what is still to be read of each, and what falls due when. */
export function DayRack({ dayNumber, batches, bakery, words: allWords, language }: DayRackProps) {
  const words = allWords.shift
  const text = words.rack
  return (
    <Rack
      label={say(text.day, language, { number: dayNumber })}
      slots={batches.map((batch) => {
        const toCome = batch.missing.reduce((sum, { have, of }) => sum + of - have, 0)
        return {
          key: batch.id,
          href: `/shift/${batch.id}`,
          code: batch.code,
          state: <BatchStateWord state={batch.state} words={words} />,
          nextWord: batch.isNext ? text.next : undefined,
          remarks: [
            ...(batch.kind === 'preparation' ? [text.preparation] : []),
            ...(batch.state !== 'waiting' || batch.turn === batch.plannedOrder
              ? []
              : [say(text.exchanged, language, { place: batch.plannedOrder })]),
            ...(batch.againAs === null ? [] : [say(text.againAs, language, { code: batch.againAs })]),
            ...(batch.runs ? [sayRuns(batch.runs, bakery, allWords, language)] : []),
            ...(batch.cleanDownFirst ? [text.cleanDown] : []),
            ...(toCome > 0 ? [say(text.toCome, language, { count: toCome })] : []),
            ...batch.missing.flatMap(({ due, ...measure }) =>
              due === null ? [] : [sayDue(due, measureName(measure, allWords), bakery, text.due, language)],
            ),
          ],
        }
      })}
    />
  )
}
