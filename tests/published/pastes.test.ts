import { ownVariation } from '@/lib/calc/analysis/own-variation'
import { checkCase } from '@/tests/support/published-case'
import cases from './data/pastes.json'

// Davies & Goldsmith (1972), Statistical Methods in Research and Production. Balanced and with no variance below zero,
// so that mean squares and REML agree: deliveries stand for blocks, casks for batches, readings for loaves.
for (const c of cases) {
  const got = () =>
    ownVariation({
      readings: c.inputs.rows.map(({ batch, sample, y }, i) => ({
        arm: 'one',
        block: batch,
        batch: sample,
        loaf: String(i),
        value: y,
      })),
      confidence: 0.95,
    })
  checkCase(c, [], 'the mixed model of the reference is fitted in steps', [
    ['mean', c.expected.mean, () => got().mean],
    ['variance between deliveries', c.expected.block, () => got().block!.sd ** 2],
    ['variance between casks', c.expected.batch, () => got().batch.sd ** 2],
    ['variance between readings', c.expected.loaf, () => got().loaf.sd ** 2],
  ])
}
