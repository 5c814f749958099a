import { describe, expect, test } from 'vitest'
import type { ChartMark } from '@/lib/ui/charts/chart-mark'
import { effectMarks, type EffectRow } from '@/lib/ui/charts/effect-marks'

const rows: EffectRow[] = [
  { arm: 'control', name: 'Control', word: '', effect: null, isHollow: false, batches: [{ mean: 0, loaves: [-1, 1] }] },
  {
    arm: 'A',
    name: 'Malt 0.3 %',
    word: 'undecided',
    effect: { estimate: 2, low: -2, high: 6 },
    isHollow: false,
    batches: [{ mean: 2, loaves: [1, 3] }],
  },
  {
    arm: 'B',
    name: 'A very long name of a second test arm',
    word: 'look only',
    effect: { estimate: 9, low: null, high: null },
    isHollow: true,
    batches: [],
  },
]
const words = { control: 'control', tick: (value: number, digits: number) => value.toFixed(digits) }
const picture = (size: 'wide' | 'narrow') => effectMarks({ rows, band: 4, size, words })
const mark = (key: string, size: 'wide' | 'narrow' = 'wide') => picture(size).marks.find((each) => each.key === key)
const linesOf = (marks: readonly ChartMark[], key: string) =>
  marks.flatMap((each) => (each.kind === 'lines' && each.key.includes(key) ? each.at : []))
const lineOf = (key: string) => linesOf(picture('wide').marks, key)[0]!

function placesOf(mark: ChartMark): { xs: number[]; ys: number[] } {
  switch (mark.kind) {
    case 'lines':
      return { xs: mark.at.flatMap(({ x1, x2 }) => [x1, x2]), ys: mark.at.flatMap(({ y1, y2 }) => [y1, y2]) }
    case 'band':
      return { xs: [mark.x, mark.x + mark.width], ys: [mark.y, mark.y + mark.height] }
    case 'arm':
      return { xs: mark.at.map(({ x }) => x), ys: mark.at.map(({ y }) => y) }
    case 'text':
      return { xs: [mark.x], ys: [mark.y] }
  }
}

describe.each(['wide', 'narrow'] as const)('the %s picture', (size) => {
  test('has one mark for each key, all within its frame', () => {
    const { marks, width, height } = picture(size)
    expect(new Set(marks.map(({ key }) => key)).size).toBe(marks.length)
    for (const each of marks) {
      const { xs, ys } = placesOf(each)
      for (const x of xs) expect(x >= 0 && x <= width, each.key).toBe(true)
      for (const y of ys) expect(y >= 0 && y <= height, each.key).toBe(true)
    }
  })

  test('shows a dot for each loaf, a line for each dough, an estimate for each arm', () => {
    const { marks } = picture(size)
    expect(marks.flatMap((each) => (each.kind === 'arm' && each.key.includes('loaves') ? each.at : []))).toHaveLength(4)
    expect(linesOf(marks, 'means')).toHaveLength(2)
    expect(marks.filter(({ key }) => key.endsWith('estimate'))).toHaveLength(2)
  })
})

test('the control’s line stands in the middle of the band, and the interval where its limits are', () => {
  const band = mark('band') as Extract<ChartMark, { kind: 'band' }>
  const control = lineOf('control')
  const interval = lineOf('A interval')
  expect(control.x1).toBeCloseTo(band.x + band.width / 2, 9)
  const unit = band.width / 8
  expect(interval.x1).toBeCloseTo(control.x1 - 2 * unit, 9)
  expect(interval.x2).toBeCloseTo(control.x1 + 6 * unit, 9)
})

test('an effect without an interval has none, and one that is not to be trusted is hollow', () => {
  expect(mark('B interval')).toBeUndefined()
  expect(mark('B estimate')).toMatchObject({ look: 'hollow' })
  expect(mark('A estimate')).toMatchObject({ look: 'full' })
})

test('a long name is shortened', () => {
  expect(mark('B name')).toMatchObject({ text: 'A very long name of…' })
})

test('a picture without any value still has an axis', () => {
  const empty = effectMarks({ rows: [{ ...rows[0]!, batches: [] }], band: null, size: 'wide', words })
  expect(empty.marks.filter(({ key }) => key.startsWith('tick text')).length).toBeGreaterThan(1)
})
