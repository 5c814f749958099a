import { sayPlace } from '@/app/(desk)/say-place'
import { Cell } from '@/lib/ui/cell'
import { Lines } from '@/lib/ui/lines'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDateTime } from '@/lib/words/format/date'
import { withUnit } from '@/lib/words/format/with-unit'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownResult } from './shown-result'

type Correction = ShownResult['conduct']['corrections'][number]

/** Every reading that was corrected: what it was, what took its place, who, when and why. Nothing where none was. */
export function Corrections({
  result,
  bakery,
  forms,
}: {
  result: ShownResult
  bakery: ShownBakery
  forms: ResultForms
}) {
  const { text, language } = forms
  const { corrections } = result.conduct
  if (corrections.length === 0) return null
  return (
    <Section
      id="corrections"
      title={text.corrections}
      note={say(text.correctionsNote, language, { count: corrections.length })}
    >
      <SheetTable
        caption={text.corrections}
        captionHidden
        columns={[
          { key: 'dough', label: text.correctionDough },
          { key: 'of', label: text.correctionOf },
          { key: 'before', label: text.correctionBefore, numeric: true },
          { key: 'after', label: text.correctionAfter, numeric: true },
          { key: 'who', label: text.correctionWho },
          { key: 'why', label: text.correctionWhy },
        ]}
      >
        {corrections.map((correction) => {
          const { id, code, before, who, at, reason, isOwnSlip, knewKey } = correction
          const { name, place } = sayPlace(correction, wordsIn(language), language)
          return (
            <tr key={id}>
              <Cell head>{code}</Cell>
              <Cell>{say(text.correctionPlace, language, { name, place })}</Cell>
              <Cell numeric>{withUnit(before.value, before.unit)}</Cell>
              <Cell numeric>
                <Lines
                  texts={[withUnit(correction.after.value, correction.after.unit), ...movedTo(correction, forms)]}
                />
              </Cell>
              <Cell>
                <Lines
                  texts={[
                    say(text.correctionWhoAt, language, { who, at: formatDateTime(at, bakery) }),
                    ...(knewKey ? [text.correctionKnew] : []),
                  ]}
                />
              </Cell>
              <Cell>
                <Lines texts={[reason, ...(isOwnSlip ? [text.correctionSlip] : [])]} />
              </Cell>
            </tr>
          )
        })}
      </SheetTable>
    </Section>
  )
}

/** Where the reading went, if it was of something else. */
function movedTo({ before, after }: Correction, { text, language }: ResultForms): string[] {
  if (before.piece === after.piece && before.repeat === after.repeat) return []
  return after.piece === null
    ? [say(text.correctionMovedBatch, language, { repeat: after.repeat })]
    : [say(text.correctionMoved, language, { piece: after.piece, repeat: after.repeat })]
}
