import type { ChartMark, ChartPicture, Stroke } from './chart-mark'
import { linearScale } from './linear-scale'
import { niceTicks, type Ticks } from './nice-ticks'

export type OrderRow = {
  code: string
  day: number
  /** What was read of each loaf, and their mean; none of a dough that is not read yet. */
  loaves: readonly number[]
  mean: number | null
}

export type OrderWords = { day(number: number): string; tick(value: number, digits: number): string }

const forms = {
  wide: { width: 580, left: 130, ticks: 6 },
  narrow: { width: 330, left: 110, ticks: 3 },
} as const
const right = 14
const top = 12
const rowHeight = 26
const axisHeight = 30

/**
 * Doughs in their order as marks, each under its code: a short line for each loaf, a long one for their mean. Nothing
 * in it tells one arm from another.
 * @param rows in the drawn order
 */
export function orderMarks(q: { rows: readonly OrderRow[]; size: 'wide' | 'narrow'; words: OrderWords }): ChartPicture {
  const form = forms[q.size]
  const ticks = ticksFor(q.rows, form.ticks)
  const x = linearScale({
    domain: [ticks.values[0] ?? 0, ticks.values.at(-1) ?? 1],
    range: [form.left, form.width - right],
  })
  const bottom = top + q.rows.length * rowHeight
  const rules = ticks.values.map((value) => upright(x(value), bottom, bottom + 5))
  const marks = ticks.values.map(
    (value): ChartMark => ({
      kind: 'text',
      key: `tick text ${value}`,
      x: x(value),
      y: bottom + 20,
      text: q.words.tick(value, ticks.digits),
      anchor: value === ticks.values.at(-1) ? 'end' : 'middle',
      tone: 'quiet',
    }),
  )
  const ofLoaves: Stroke[] = []
  const ofMeans: Stroke[] = []
  q.rows.forEach(({ code, day, loaves, mean }, i) => {
    const y = top + i * rowHeight
    const middle = y + rowHeight / 2
    if (day !== q.rows[i - 1]?.day) {
      if (i > 0) rules.push({ x1: 0, y1: y, x2: form.width - right, y2: y })
      marks.push({ ...text(`day text ${day}`, middle + 5, q.words.day(day)), x: 2, tone: 'quiet' })
    }
    marks.push({ ...text(`code ${code}`, middle + 5, code), x: form.left - 14, anchor: 'end', tone: 'strong' })
    ofLoaves.push(...loaves.map((loaf) => upright(x(loaf), middle - 5, middle + 5)))
    if (mean !== null) ofMeans.push(upright(x(mean), middle - 11, middle + 11))
  })
  marks.push(
    { kind: 'lines', key: 'rules', at: rules, ink: 'rule', weight: 'fine' },
    { kind: 'lines', key: 'loaves', at: ofLoaves, ink: 'ink', weight: 'plain' },
    { kind: 'lines', key: 'means', at: ofMeans, ink: 'ink', weight: 'heavy' },
  )
  return { width: form.width, height: bottom + axisHeight, marks }
}

function ticksFor(rows: readonly OrderRow[], most: number): Ticks {
  const values = rows.flatMap(({ loaves, mean }) => (mean === null ? loaves : [...loaves, mean]))
  if (values.length === 0) return niceTicks({ low: 0, high: 1, most })
  const [low, high] = [Math.min(...values), Math.max(...values)]
  // Around a single value there is nothing to measure by; a tenth of it to either side is.
  const around = low === high ? Math.abs(low) / 10 || 1 : 0
  return niceTicks({ low: low - around, high: high + around, most })
}

function upright(x: number, y1: number, y2: number): Stroke {
  return { x1: x, y1, x2: x, y2 }
}

function text(key: string, y: number, said: string) {
  return { kind: 'text', key, y, text: said, anchor: 'start' } as const
}
