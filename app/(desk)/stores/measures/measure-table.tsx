import { Cell } from '@/lib/ui/cell'
import { Lines } from '@/lib/ui/lines'
import { SheetTable } from '@/lib/ui/sheet-table'
import { plainNumber } from '@/lib/words/format/plain-number'
import { withUnit } from '@/lib/words/format/with-unit'
import { measureMethod } from '@/lib/words/measure-method'
import { measureName } from '@/lib/words/measure-name'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

type Measure = {
  id: string
  code: string | null
  name: string
  unit: string
  level: keyof Words['measures']['levels']
  direction: keyof Words['measures']['directions']
  derivation: string | null
  plausibleLeast: number
  plausibleMost: number
  repeats: number
  repeatLimit: number | null
  method: string
  ageLeastH: number | null
  ageMostH: number | null
}

type MeasureTableProps = {
  measures: readonly Measure[]
  caption: string
  words: Pick<Words, 'measures'>
  locale: string
  language: Language
}

/** Measures with what is read, how often and what is usual, in the measures' own units. */
export function MeasureTable({ measures, caption, words, locale, language }: MeasureTableProps) {
  const { measures: text } = words
  const number = (value: number) => plainNumber(value, { locale, significant: 12 })
  const times = ({ repeats, repeatLimit, unit, derivation }: Measure) => {
    if (derivation !== null) return text.workedOut
    if (repeats === 1) return text.once
    return repeatLimit === null
      ? say(text.times, language, { count: repeats })
      : say(text.limit, language, { count: repeats, limit: withUnit(number(repeatLimit), unit) })
  }
  const age = ({ ageLeastH, ageMostH }: Measure): string[] => {
    if (ageLeastH === null) return []
    const least = number(ageLeastH)
    return [
      ageMostH === null
        ? say(text.ageFrom, language, { least })
        : say(text.ageBetween, language, { least, most: number(ageMostH) }),
    ]
  }
  return (
    <SheetTable
      caption={caption}
      captionHidden
      columns={[
        { key: 'name', label: text.name },
        { key: 'range', label: text.usualRange },
        { key: 'of', label: text.ofWhat },
        { key: 'direction', label: text.direction },
        { key: 'repeats', label: text.repeats },
        { key: 'method', label: text.method },
      ]}
    >
      {measures.map((measure) => (
        <tr key={measure.id}>
          <Cell head>{measureName(measure, words)}</Cell>
          <Cell whole>
            {say(text.range, language, {
              least: number(measure.plausibleLeast),
              most: withUnit(number(measure.plausibleMost), measure.unit),
            })}
          </Cell>
          <Cell>{text.levels[measure.level]}</Cell>
          <Cell>{text.directions[measure.direction]}</Cell>
          <Cell>{times(measure)}</Cell>
          <Cell>
            <Lines texts={[measureMethod(measure, words), ...age(measure)]} />
          </Cell>
        </tr>
      ))}
    </SheetTable>
  )
}
