import { describe } from 'vitest'
import { checkSplitPlot } from '@/tests/support/split-plot-figures'
import cases from './data/oats-yates-1935.json'

describe.each(cases)('$title', (c) =>
  checkSplitPlot(c, {
    rows: c.inputs.rows.map((row) => ({ block: row.block, arm: row.arm, level: row.sub, y: row.y })),
    arms: c.inputs.arms,
    levels: ['0.0cwt', '0.2cwt', '0.4cwt', '0.6cwt'],
  }),
)
