import { Cell } from '@/lib/ui/cell'
import { Lines } from '@/lib/ui/lines'
import { FloorDisclosure } from '@/lib/ui/floor-disclosure'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDateTime } from '@/lib/words/format/date'
import { withUnit } from '@/lib/words/format/with-unit'
import { measureName } from '@/lib/words/measure-name'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { sayPlace } from '../say-place'
import { amountInUnits } from './amount-in-units'
import type { BatchPart } from './batch-view'

/** Every reading as it was entered, corrected ones beside what took their place. */
export function ReadingLog({ batch, bakery, words, language }: BatchPart) {
  const { log: text, readings: readingWords } = words
  const { paper } = wordsIn(language)
  if (batch.readings.length === 0) return null
  const names = new Map(batch.measures.map((measure) => [measure.id, measureName(measure, wordsIn(language))]))
  const oddOf = (measureId: string, { least, most }: { least: number; most: number }) => {
    const { unit, digits } = batch.measures.find(({ id }) => id === measureId) ?? { unit: '', digits: 0 }
    return say(text.odd, language, {
      least: amountInUnits(least, unit, digits, bakery),
      most: amountInUnits(most, unit, digits, bakery),
    })
  }
  return (
    <div className="mt-9 border-t-2 border-rule">
      <FloorDisclosure title={text.title}>
        <SheetTable
          caption={text.title}
          captionHidden
          columns={[
            { key: 'taken', label: text.taken },
            { key: 'who', label: text.who },
            { key: 'measure', label: text.measure },
            { key: 'place', label: text.place },
            { key: 'value', label: text.value, numeric: true },
            { key: 'remark', label: text.remark },
          ]}
        >
          {batch.readings.map(
            ({
              id,
              takenAt,
              receivedAt,
              person,
              measureId,
              piece,
              factorLevel,
              valueEntered,
              unitEntered,
              holds,
              reason,
              outside,
              oddTime,
              offAge,
              paperBy,
            }) => (
              <tr key={id}>
                <Cell whole>{formatDateTime(takenAt, bakery)}</Cell>
                <Cell>{person.name}</Cell>
                <Cell>{names.get(measureId)}</Cell>
                <Cell whole>{sayPlace({ piece, factorLevel }, readingWords, language)}</Cell>
                <Cell numeric>
                  {holds ? withUnit(valueEntered, unitEntered) : <s>{withUnit(valueEntered, unitEntered)}</s>}
                </Cell>
                <Cell>
                  <Lines
                    texts={[
                      ...(paperBy === null
                        ? []
                        : [
                            say(paper.fromPaper, language, {
                              who: paperBy,
                              keyed: person.name,
                              at: formatDateTime(receivedAt, bakery),
                            }),
                          ]),
                      ...(reason ? [say(text.reason, language, { reason })] : []),
                      ...(outside ? [oddOf(measureId, outside)] : []),
                      ...(oddTime ? [text.oddTimes[oddTime]] : []),
                      ...(offAge ? [text.offAge[offAge]] : []),
                      holds ? text.holds : text.gaveWay,
                    ]}
                  />
                </Cell>
              </tr>
            ),
          )}
        </SheetTable>
      </FloorDisclosure>
    </div>
  )
}
