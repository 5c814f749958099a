import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getReadingLog } from '@/lib/kitchen/readings/get-reading-log'
import { Cell } from '@/lib/ui/cell'
import { FloorLink } from '@/lib/ui/floor-link'
import { FloorSheet } from '@/lib/ui/floor-sheet'
import { Lines } from '@/lib/ui/lines'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDateTime } from '@/lib/words/format/date'
import { withUnit } from '@/lib/words/format/with-unit'
import { measureName } from '@/lib/words/measure-name'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { KeepCurrent } from '../../../keep-current'
import { sayPlace } from '../../say-place'
import { amountInUnits } from '../amount-in-units'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).shift.log.title }
}

/** Every reading as it was entered, corrected ones beside what took their place. */
export default async function ReadingLogPage({ params }: { params: Promise<{ batchId: string }> }) {
  const { batchId } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { paper, shift, desk } = words
  const text = shift.log
  const [{ bakery, record }, { code, dayNumber, trialNumber, formulaName, measures, readings }] = await Promise.all([
    ask(getDesk),
    ask(getReadingLog, { batchId }),
  ])
  const measureOf = new Map(measures.map((measure) => [measure.id, measure]))
  const oddOf = (measureId: string, { least, most }: { least: number; most: number }) => {
    const { unit, digits } = measureOf.get(measureId) ?? { unit: '', digits: 0 }
    return say(text.odd, language, {
      least: amountInUnits(least, unit, digits, bakery),
      most: amountInUnits(most, unit, digits, bakery),
    })
  }
  return (
    <FloorSheet
      headline={say(text.headline, language, { code })}
      under={say(paper.place, language, { number: trialNumber, formula: formulaName, day: dayNumber })}
    >
      <div className="mt-4 mb-6 print:hidden">
        <FloorLink href={`/shift/${batchId}`}>{say(paper.back, language, { code })}</FloorLink>
      </div>
      {readings.length === 0 ? (
        <p>{text.none}</p>
      ) : (
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
          {readings.map((reading) => {
            const { id, takenAt, receivedAt, who, measureId, holds, reason, outside, oddTime, offAge, paperBy } =
              reading
            const measure = measureOf.get(measureId)
            const value = withUnit(reading.valueEntered, reading.unitEntered)
            return (
              <tr key={id}>
                <Cell whole>{formatDateTime(takenAt, bakery)}</Cell>
                <Cell>{who}</Cell>
                <Cell>{measure ? measureName(measure, words) : null}</Cell>
                <Cell whole>{sayPlace(reading, shift.readings, language)}</Cell>
                <Cell numeric>{holds ? value : <s>{value}</s>}</Cell>
                <Cell>
                  <Lines
                    texts={[
                      ...(paperBy === null
                        ? []
                        : [
                            say(paper.fromPaper, language, {
                              who: paperBy,
                              keyed: who,
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
            )
          })}
        </SheetTable>
      )}
      <KeepCurrent seen={record.number} words={desk.live} />
    </FloorSheet>
  )
}
