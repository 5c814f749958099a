import type { Arm } from '../arm-shape'
import type { ChartMark, ChartPicture } from './chart-mark'
import { linearScale } from './linear-scale'
import { niceTicks, type Ticks } from './nice-ticks'

export type EffectRow = {
  arm: Arm
  name: string
  /** The verdict, or what stands instead; none for the control. */
  word: string
  /** Arm less control on the axis, with its interval where there is one. */
  effect: { estimate: number; low: number | null; high: number | null } | null
  isHollow: boolean
  /** Each batch and its loaves against the control of their day, on the axis. */
  batches: readonly { mean: number; loaves: readonly number[] }[]
}

export type EffectWords = {
  control: string
  tick(value: number, digits: number): string
}

const wide = { width: 580, left: 190, right: 14, rowHeight: 62, nameLength: 21, ticks: 6 }
const narrow = { width: 330, left: 10, right: 10, rowHeight: 84, nameLength: 24, ticks: 4 }
const top = 12
const axisHeight = 30

/**
 * Arms against the control as marks: the control's line, the band within which a difference is not worth having, for
 * each arm its interval and estimate, below it its loaves and the means of its doughs.
 * @param rows the control first; @param band half its width on the axis, null without one
 */
export function effectMarks(q: {
  rows: readonly EffectRow[]
  band: number | null
  size: 'wide' | 'narrow'
  words: EffectWords
}): ChartPicture {
  const form = q.size === 'wide' ? wide : narrow
  const ticks = ticksFor(q.rows, q.band, form.ticks)
  const x = linearScale({
    domain: [Math.min(...ticks.values), Math.max(...ticks.values)],
    range: [form.left, form.width - form.right],
  })
  const bottom = top + q.rows.length * form.rowHeight
  const marks: ChartMark[] = []
  if (q.band !== null)
    marks.push({
      kind: 'band',
      key: 'band',
      x: x(-q.band),
      y: top,
      width: x(q.band) - x(-q.band),
      height: bottom - top,
    })
  marks.push({
    kind: 'lines',
    key: 'ticks',
    at: ticks.values.map((value) => ({ x1: x(value), y1: bottom, x2: x(value), y2: bottom + 5 })),
    ink: 'rule',
    weight: 'fine',
  })
  for (const value of ticks.values) {
    const isZero = value === 0
    const text = isZero ? q.words.control : q.words.tick(value, ticks.digits)
    marks.push({
      kind: 'text',
      key: `tick text ${value}`,
      x: x(value),
      y: bottom + 20,
      text,
      anchor: anchorAt(value, ticks, q.size),
      tone: 'quiet',
    })
  }
  marks.push({
    kind: 'lines',
    key: 'control',
    at: [{ x1: x(0), y1: top - 6, x2: x(0), y2: bottom + 5 }],
    ink: 'ink',
    weight: 'plain',
  })
  q.rows.forEach((row, i) => marks.push(...marksOfRow(row, top + i * form.rowHeight, x, q.size)))
  return { width: form.width, height: bottom + axisHeight, marks }
}

function ticksFor(rows: readonly EffectRow[], band: number | null, most: number): Ticks {
  const values = rows.flatMap(({ effect, batches }) => [
    ...(effect ? [effect.estimate, effect.low ?? effect.estimate, effect.high ?? effect.estimate] : []),
    ...batches.flatMap(({ mean, loaves }) => [mean, ...loaves]),
  ])
  const reach = band === null ? [0] : [-band, band]
  const [low, high] = [Math.min(0, ...reach, ...values), Math.max(0, ...reach, ...values)]
  return niceTicks(low < high ? { low, high, most } : { low: -1, high: 1, most })
}

/** At the ends of a narrow picture a middled text would be cut off. */
function anchorAt(value: number, ticks: Ticks, size: 'wide' | 'narrow'): 'start' | 'middle' | 'end' {
  if (value === ticks.values.at(-1)) return 'end'
  return size === 'narrow' && value === ticks.values[0] ? 'start' : 'middle'
}

function marksOfRow(row: EffectRow, y: number, x: (value: number) => number, size: 'wide' | 'narrow'): ChartMark[] {
  const key = (part: string) => `${row.arm} ${part}`
  const form = size === 'wide' ? wide : narrow
  const name = shortened(row.name, form.nameLength)
  const marks: ChartMark[] = []
  const nameY = size === 'wide' ? y + 25 : y + 17
  const effectY = size === 'wide' ? y + 20 : y + 36
  const loavesY = effectY + 22
  if (row.arm !== 'control')
    marks.push({ kind: 'text', key: key('letter'), x: 2, y: nameY, text: row.arm, anchor: 'start', tone: 'strong' })
  marks.push({
    kind: 'text',
    key: key('name'),
    x: row.arm === 'control' ? 2 : 18,
    y: nameY,
    text: name,
    anchor: 'start',
    tone: 'plain',
  })
  if (row.word) {
    const place =
      size === 'wide'
        ? ({ x: 18, y: nameY + 17, anchor: 'start' } as const)
        : ({ x: form.width - 2, y: nameY, anchor: 'end' } as const)
    marks.push({ kind: 'text', key: key('word'), ...place, text: row.word, tone: 'strong' })
  }
  if (row.batches.length > 0)
    marks.push({
      kind: 'lines',
      key: key('means'),
      at: row.batches.map(({ mean }) => ({ x1: x(mean), y1: loavesY - 8, x2: x(mean), y2: loavesY + 8 })),
      ink: row.arm,
      weight: 'plain',
    })
  const loaves = row.batches.flatMap((batch) =>
    batch.loaves.map((loaf, i) => ({ x: x(loaf), y: loavesY + ((i % 3) - 1) * 3 })),
  )
  if (loaves.length > 0)
    marks.push({ kind: 'arm', key: key('loaves'), arm: row.arm, at: loaves, size: 7, look: 'faint' })
  if (row.effect) {
    const { estimate, low, high } = row.effect
    if (low !== null && high !== null)
      marks.push({
        kind: 'lines',
        key: key('interval'),
        at: [{ x1: x(low), y1: effectY, x2: x(high), y2: effectY }],
        ink: row.arm,
        weight: 'heavy',
      })
    marks.push({
      kind: 'arm',
      key: key('estimate'),
      arm: row.arm,
      at: [{ x: x(estimate), y: effectY }],
      size: 16,
      look: row.isHollow ? 'hollow' : 'full',
    })
  }
  return marks
}

function shortened(text: string, length: number): string {
  const letters = Array.from(text)
  return letters.length <= length
    ? text
    : `${letters
        .slice(0, length - 1)
        .join('')
        .trimEnd()}…`
}
