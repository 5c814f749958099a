import { readerVariation } from '@/lib/calc/comparison/reader-variation'
import { publishedCheck } from '@/tests/support/published-check'
import data from './data/thermal-impedance-1988.json'

// Three readings of each power module by each of three operators; the columns are reader by reader.
const rows = data.readings.flatMap((readings, loaf) =>
  readings.map((y, i) => ({ loaf: String(loaf + 1), reader: 'ABC'.charAt(Math.floor(i / 3)), y })),
)
const got = () => readerVariation({ rows, confidence: 0.95 })

const figures: [string, number, () => number, number][] = [
  ['variance of repeated readings', data.printed.repeat, () => got().repeat.sd ** 2, 0.0005],
  ['variance between readers', data.printed.reader, () => got().reader.sd ** 2, 0.0005],
  ['variance of reader by part', data.printed.readerByLoaf, () => got().readerByLoaf.sd ** 2, 0.0005],
  ['variance between parts', data.printed.loaf, () => got().loaf.sd ** 2, 0.0005],
  ['variance of a reading', data.printed.reading, () => got().readingSd ** 2, 0.0005],
  ['its share of the whole, %', data.printed.readingPct, () => 100 * got().readingShare, 0.005],
]
for (const [what, expected, value, absolute] of figures) {
  publishedCheck({
    of: ['comparison/reader-variation'],
    what,
    source: data.source,
    status: 'published',
    expected,
    got: value,
    tolerance: { absolute },
    why: 'half of the last printed digit',
  })
}
