import type { listKeptAside } from '@/lib/kitchen/readings/list-kept-aside'
import type { AnswerOf } from '@/lib/kitchen/query'
import { Cell } from '@/lib/ui/cell'
import { Lines } from '@/lib/ui/lines'
import { Notice } from '@/lib/ui/notice'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDateTime } from '@/lib/words/format/date'
import { withUnit } from '@/lib/words/format/with-unit'
import { measureName } from '@/lib/words/measure-name'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { amountInUnits } from '../[batchId]/amount-in-units'
import type { BakeryShown } from '../[batchId]/batch-view'
import { sayPlace } from '../say-place'
import { keptAsideAnchor } from './kept-aside-anchor'
import { SettleForm } from './settle-form'

export type KeptEntryShown = AnswerOf<typeof listKeptAside>['rows'][number]

type KeptEntryProps = {
  entry: KeptEntryShown
  bakery: BakeryShown
  words: Words
  language: Language
}

/** One entry that is kept aside, above the reading that stands where it belongs, and the way to settle it. */
export function KeptEntry({ entry, bakery, words, language }: KeptEntryProps) {
  const { keptAside: text, readings: ofReadings } = words.shift
  const { batch, trial, sentBy, receivedAt, why, entered, standing, bar } = entry
  const { columns } = text
  const titleId = `${keptAsideAnchor(entry)}-title`
  const title = entered?.measure
    ? say(text.entry, language, { code: batch.code, measure: measureName(entered.measure, words) })
    : say(text.entryOfBatch, language, { code: batch.code })
  const correction = (reason: string | null) => (reason === null ? [] : [say(text.correction, language, { reason })])
  const odd =
    entered?.outside && entered.measure
      ? [
          say(words.shift.log.odd, language, {
            least: amountInUnits(entered.outside.least, entered.measure.unit, entered.measure.digits, bakery),
            most: amountInUnits(entered.outside.most, entered.measure.unit, entered.measure.digits, bakery),
          }),
        ]
      : []
  const takenAt = entered?.takenAt ?? standing?.takenAt ?? null
  return (
    <article
      id={keptAsideAnchor(entry)}
      aria-labelledby={titleId}
      className="mt-6 border-t border-rule pt-4 first:mt-0 first:border-t-0 first:pt-0"
    >
      <h3 id={titleId} className="text-lead font-bold">
        {title}
      </h3>
      <p>{bar === 'weighing' ? text.whyWeighing[why] : text.why[why]}</p>
      <p className="mb-2 text-ink-2">
        {say(text.about, language, {
          number: trial.number,
          formula: trial.formula,
          who: sentBy,
          at: formatDateTime(receivedAt, bakery),
        })}
      </p>
      {entered ? (
        <SheetTable
          caption={title}
          captionHidden
          columns={[
            { key: 'where', label: columns.where },
            { key: 'value', label: columns.value, numeric: true },
            { key: 'place', label: columns.place },
            { key: 'repeat', label: columns.repeat, numeric: true },
            { key: 'taken', label: columns.taken },
            { key: 'who', label: columns.who },
            { key: 'remark', label: columns.remark },
          ]}
        >
          <tr>
            <Cell head>{text.aside}</Cell>
            <Cell numeric>
              <strong>{withUnit(entered.value, entered.unit)}</strong>
            </Cell>
            <Cell whole>{sayPlace(entered, ofReadings, language)}</Cell>
            <Cell numeric>{entered.repeat}</Cell>
            <Cell whole>{takenAt === null ? null : formatDateTime(takenAt, bakery)}</Cell>
            <Cell>{sentBy}</Cell>
            <Cell>
              <Lines texts={[...correction(entered.reason), ...odd]} />
            </Cell>
          </tr>
          {standing ? (
            <tr>
              <Cell head>{text.inTheBook}</Cell>
              <Cell numeric>
                <strong>{withUnit(standing.valueEntered, standing.unitEntered)}</strong>
              </Cell>
              <Cell whole>{sayPlace(standing, ofReadings, language)}</Cell>
              <Cell numeric>{standing.repeat}</Cell>
              <Cell whole>{formatDateTime(standing.takenAt, bakery)}</Cell>
              <Cell>{standing.by}</Cell>
              <Cell>
                <Lines texts={correction(standing.reason)} />
              </Cell>
            </tr>
          ) : (
            <tr>
              <Cell head>{text.inTheBook}</Cell>
              <td colSpan={6}>{bar === 'settle-reading-first' ? text.correctedNotThere : text.nothingThere}</td>
            </tr>
          )}
        </SheetTable>
      ) : null}
      {bar === null ? null : (
        <Notice tone={bar === 'damaged-text' ? 'stop' : 'warn'} word={words.desk.attention}>
          {text.bars[bar]}
        </Notice>
      )}
      <SettleForm entry={entry} words={text} language={language} />
    </article>
  )
}
