import { describe, expect, test } from 'vitest'
import { CalcError } from '@/lib/calc/error'
import { atTableFields } from '@/lib/calc/mixed-model/at-table-fields'
import { mixedModelEntries } from '@/lib/calc/mixed-model/entries'

type Question = (typeof mixedModelEntries)[number]['example']
const entry = mixedModelEntries[0]
type Row = Question['rows'][number]

const refusalOf = (change: Partial<Question>, by: { run: (q: never) => unknown } = entry) => {
  try {
    by.run({ ...entry.example, ...change } as never)
  } catch (error) {
    if (error instanceof CalcError) return [error.facts.field, error.facts.reason]
    throw error
  }
  return 'answered'
}

const rows: Row[] = ['plain', 'malt'].flatMap((arm, i) =>
  ['Monday', 'Tuesday', 'Friday'].flatMap((block, j) =>
    [0, 1].map((loaf) => ({
      arm,
      batch: `${i}${j}`,
      block,
      level: loaf ? 'late' : 'early',
      covariate: 24 + ((3 * i + 5 * j) % 7),
      y: 2400 + 40 * i + 31 * j * (i + 1) + 17 * loaf * (j + 1),
    })),
  ),
)
const arms = ['plain', 'malt']

describe('a refusal names what was asked for', () => {
  test.each<[string, Partial<Question>, string, string | undefined]>([
    [
      'a row without its block',
      { rows: rows.map(({ block: _, ...row }) => row), blocks: 'fixed' },
      'rows[0].block',
      'missing-level',
    ],
    [
      'a row without its level',
      { rows: rows.map(({ level: _, ...row }) => row), levels: 'additive' },
      'rows[0].level',
      'missing-level',
    ],
    [
      'a row without its condition',
      { rows: rows.map(({ covariate: _, ...row }) => row), covariates: 'common-slope' },
      'rows[0].covariate',
      'missing-value',
    ],
    ['one block', { rows: rows.map((row) => ({ ...row, block: 'Monday' })), blocks: 'fixed' }, 'blocks', 'one-level'],
    ['one level', { rows: rows.map((row) => ({ ...row, level: 'late' })), levels: 'additive' }, 'levels', 'one-level'],
    [
      'a condition that never changes',
      { rows: rows.map((row) => ({ ...row, covariate: 25 })), covariates: 'common-slope' },
      'covariates',
      'constant',
    ],
    [
      'a cell that was never baked',
      { rows: rows.filter(({ arm, level }) => arm === 'plain' || level === 'early'), levels: 'by-arm' },
      'levels',
      'empty-cell',
    ],
    [
      'days of an arm’s own',
      { rows: rows.map((row) => ({ ...row, block: `${row.arm} ${row.block}` })), blocks: 'fixed' },
      'blocks',
      'arm-confounded-with-block',
    ],
    [
      'random days, one for each arm',
      { rows: rows.map((row) => ({ ...row, block: row.arm })), blocks: 'random' },
      'blocks',
      'arm-confounded-with-block',
    ],
    [
      'one batch a day',
      { rows: rows.map((row) => ({ ...row, block: row.batch })), blocks: 'random' },
      'rows',
      'one-batch-per-block',
    ],
    ['one loaf of each batch', { rows: rows.filter(({ level }) => level === 'late') }, 'rows', 'one-loaf-per-batch'],
    [
      'one batch of each arm',
      { rows: rows.map((row) => ({ ...row, batch: row.arm })), batchNames: 'once-in-all' },
      'rows',
      'one-batch-in-arm',
    ],
    [
      'an order with a level that is not there',
      { rows, levels: 'additive', levelOrder: ['early', 'late', 'later'] },
      'levelOrder',
      'unknown-level',
    ],
    [
      'an order that leaves out a block',
      { rows, blocks: 'fixed', blockOrder: ['Tuesday', 'Friday'] },
      'blockOrder',
      'level-not-ordered',
    ],
    [
      'an order with a block twice',
      { rows, blocks: 'fixed', blockOrder: ['Monday', 'Tuesday', 'Friday', 'Monday'] },
      'blockOrder',
      undefined,
    ],
    ['batch 1 on two days', { rows: rows.map((row) => ({ ...row, batch: '1' })) }, 'batchNames', 'do-batches-restart'],
    ['a confidence of nothing', { confidence: 0.2 }, 'confidence', undefined],
  ])('%s', (_, change, field, reason) => {
    expect(refusalOf({ arms, rows, blocks: 'none', ...change })).toEqual([field, reason])
  })

  test('one arm, and more arms than can be compared by the lattice', () => {
    const compare = { run: (q: object) => mixedModelEntries[1].run({ ...mixedModelEntries[1].example, ...q }) }
    expect(
      refusalOf({ arms: ['plain'], rows: rows.filter(({ arm }) => arm === 'plain'), blocks: 'none' }, compare),
    ).toEqual(['arms', 'one-arm'])
    const many = Array.from({ length: 15 }, (_, i) => `arm ${i}`)
    // every arm lacks another day, so that the correlation is no product
    const ofMany = many.flatMap((arm, i) =>
      [0, 1, 2, 3]
        .filter((j) => j !== i % 4)
        .flatMap((j) =>
          [0, 1].map((loaf) => ({
            arm,
            batch: '1',
            block: `${j}`,
            y: ((7 * i + 13 * j) % 11) * 3 + loaf * ((i + j) % 3) + i,
          })),
        ),
    )
    expect(refusalOf({ arms: many, rows: ofMany, blocks: 'fixed' }, compare)).toEqual(['arms', 'many-arms'])
  })
})

test('what is no refusal passes as it is', () => {
  expect(() =>
    atTableFields(() => {
      throw new TypeError('broken')
    }),
  ).toThrow(TypeError)
  expect(atTableFields(() => 3)).toBe(3)
})
