import { expect, test } from 'vitest'
import { CalcError } from '@/lib/calc/error'
import { crossProducts } from '@/lib/calc/mixed-model/cross-products'
import { designMatrix } from '@/lib/calc/mixed-model/design-matrix'
import { mustBeIdentified } from '@/lib/calc/mixed-model/must-be-identified'
import type { MixedModel, MixedRow } from '@/lib/calc/mixed-model/types'

function factsOf(
  factors: readonly Record<string, string>[],
  model: Partial<MixedModel> & { random: string[] },
): unknown {
  const rows = factors.map((own, i): MixedRow => ({ arm: own.arm!, factors: own, y: i }))
  const q = { rows, model: { arms: [...new Set(rows.map(({ arm }) => arm))], ...model } }
  const design = designMatrix(q)
  const u = design.x.map((row, i) => [...row, Math.sin(i)])
  const cross = crossProducts({
    u,
    random: model.random.map((name) => ({ name, levels: factors.map((own) => own[name]!) })),
  })
  try {
    mustBeIdentified(cross, design)
    return null
  } catch (error) {
    return error instanceof CalcError ? [error.code, error.facts.field, error.facts.value, error.facts.reason] : error
  }
}

const batches = ['a', 'a', 'b', 'b'].flatMap((arm, i) =>
  [1, 2, 3].map((piece) => ({
    arm,
    batch: String(i),
    twin: `twin ${i}`,
    block: String(i % 2),
    piece: `${i} ${piece}`,
  })),
)

test('batches within arms, and blocks across them, can be told apart', () => {
  expect(factsOf(batches, { random: ['batch'] })).toBeNull()
  const three = [...batches, ...batches.map((own) => ({ ...own, block: '2', batch: `more ${own.batch} ${own.block}` }))]
  expect(factsOf(three, { random: ['batch', 'block'] })).toBeNull()
})

test('a batch that is the arm, or the fixed block and arm together, is named', () => {
  expect(
    factsOf(
      batches.map((own) => ({ ...own, batch: own.arm })),
      { random: ['batch'] },
    ),
  ).toEqual(['not-possible', 'random.batch', 'arm', 'confounded'])
  expect(factsOf(batches, { fixed: ['block'], random: ['batch'] })).toBeNull()
  expect(
    factsOf(
      batches.map((own) => ({ ...own, day: own.block })),
      { fixed: ['block'], random: ['day'] },
    ),
  ).toEqual(['not-possible', 'random.day', 'block', 'confounded'])
  const same = batches.map((own) => ({ ...own, cell: `${own.arm}${own.block}` }))
  expect(factsOf(same, { fixed: ['block'], byArm: 'block', random: ['cell'] })).toEqual([
    'not-possible',
    'random.cell',
    'arm-by-block',
    'confounded',
  ])
})

test('a factor of one level is the intercept', () => {
  expect(
    factsOf(
      batches.map((own) => ({ ...own, batch: 'one' })),
      { random: ['batch'] },
    ),
  ).toEqual(['not-possible', 'random.batch', 'intercept', 'confounded'])
})

test('one piece a batch leaves nothing to tell the batch from', () => {
  expect(factsOf(batches, { random: ['piece'] })).toEqual(['not-possible', 'random.piece', undefined, 'one-piece-each'])
})

test('two random factors that are one are named', () => {
  expect(factsOf(batches, { random: ['batch', 'twin'] })).toEqual([
    'not-possible',
    'random.batch',
    'twin',
    'confounded',
  ])
})

test('two random factors that only together are told from nothing are named', () => {
  // two batches by two ovens: the fixed factor takes what neither explains, and with it the residual
  const rows = [0, 1, 2, 3].map((i) => ({
    arm: 'a',
    batch: String(i >> 1),
    oven: String(i % 2),
    diagonal: String(Number(i === 1 || i === 2)),
  }))
  expect(factsOf(rows, { random: ['batch', 'oven'] })).toBeNull()
  expect(factsOf(rows, { fixed: ['diagonal'], random: ['batch', 'oven'] })).toEqual([
    'not-possible',
    'random.batch',
    'oven',
    'confounded',
  ])
})
