import { expect, test } from 'vitest'
import { fitMixedModel } from '@/lib/calc/mixed-model/fit-mixed-model'
import { tableModel, type TrialTable } from '@/lib/calc/mixed-model/table-model'

const row = { arm: 'a', batch: '1', block: 'x', level: 'hot', covariate: 25, y: 3 }
const plain: TrialTable = { rows: [row], arms: ['a', 'b'], blocks: 'none', levels: 'none', covariates: 'none' }

test('only what the choices name is in the model', () => {
  expect(tableModel(plain).model).toEqual({ arms: ['a', 'b'], fixed: [], random: ['batch'] })
  expect(tableModel(plain).rows).toEqual([{ arm: 'a', factors: { batch: '["a",null,"1"]' }, y: 3 }])
  expect(tableModel({ ...plain, blocks: 'fixed', levels: 'by-arm', covariates: 'common-slope' }).model).toEqual({
    arms: ['a', 'b'],
    fixed: ['block', 'level'],
    covariates: ['covariate'],
    byArm: 'level',
    random: ['batch'],
  })
  expect(tableModel({ ...plain, blocks: 'random', levels: 'additive' }).model).toEqual({
    arms: ['a', 'b'],
    fixed: ['level'],
    random: ['batch', 'block'],
  })
})

test('a batch of the same name under another arm or block is another batch', () => {
  const rows = [row, { ...row, arm: 'b' }, { ...row, block: 'y' }]
  const names = (blocks: TrialTable['blocks']) =>
    new Set(
      tableModel({ ...plain, rows: blocks === 'none' ? rows.slice(0, 2) : rows, blocks }).rows.map(
        ({ factors }) => factors.batch,
      ),
    ).size
  expect([names('none'), names('fixed')]).toEqual([2, 3])
})

test('where blocks are left out, a name that is there in two of them is asked about, never taken as one batch', () => {
  const rows = [row, { ...row, block: 'y' }]
  expect(() => tableModel({ ...plain, rows })).toThrow('do-batches-restart')
  const names = (change: Partial<TrialTable>) =>
    new Set(tableModel({ ...plain, rows, ...change }).rows.map(({ factors }) => factors.batch)).size
  expect(names({ batchNames: 'restart-in-each-block' })).toBe(2)
  expect(names({ batchNames: 'once-in-all' })).toBe(1)
  expect(names({ rows: [row, { ...row, block: 'y', batch: '2' }] })).toBe(2)
})

test('a stated order is of what is in the model', () => {
  const stated = { blockOrder: ['y', 'x'], levelOrder: ['mild', 'hot'] }
  expect(tableModel({ ...plain, ...stated }).model.levelOrder).toBeUndefined()
  expect(tableModel({ ...plain, ...stated, blocks: 'fixed', levels: 'additive' }).model.levelOrder).toEqual({
    block: ['y', 'x'],
    level: ['mild', 'hot'],
  })
  expect(tableModel({ ...plain, ...stated, blocks: 'random' }).model.levelOrder).toBeUndefined()
})

test.each<[Partial<TrialTable>, string]>([
  [{ blocks: 'fixed' }, 'rows[1].factors.block'],
  [{ levels: 'additive' }, 'rows[1].factors.level'],
  [{ covariates: 'common-slope' }, 'rows[1].covariates.covariate'],
])('a row that lacks what %j asks for is refused by name', (change, field) => {
  const rows = [row, { arm: 'b', batch: '1', y: 4 }]
  expect(() => fitMixedModel(tableModel({ ...plain, rows, ...change }))).toThrow(field)
})
