import { expect, test } from 'vitest'
import { flatScaleTarget, type FlatScaleTarget } from '@/lib/calc/formula/flat-scale-target'

test.each<[FlatScaleTarget, unknown]>([
  [
    { by: 'flour', flourMassG: 1000 },
    { by: 'flour', flourMassG: 1000 },
  ],
  [
    { by: 'dough-mass', doughMassG: 1700 },
    { by: 'dough-mass', doughMassG: 1700 },
  ],
  [
    { by: 'pieces', pieces: 10, pieceMassG: 500, lossShares: [0.1], lossesOn: 'baked', lossesCombine: 'compounded' },
    { by: 'pieces', pieces: 10, pieceMassG: 500, lossShares: [0.1], losses: { on: 'baked', combine: 'compounded' } },
  ],
])('%j', (flat, target) => expect(flatScaleTarget(flat)).toEqual(target))

test('pieces without losses need no convention', () =>
  expect(flatScaleTarget({ by: 'pieces', pieces: 10, pieceMassG: 500 })).toMatchObject({ lossShares: [] }))

test.each<[FlatScaleTarget, string]>([
  [{ by: 'flour', doughMassG: 1700 }, 'flourMassG'],
  [{ by: 'dough-mass' }, 'doughMassG'],
  [{ by: 'pieces', pieceMassG: 500 }, 'pieces'],
  [{ by: 'pieces', pieces: 10 }, 'pieceMassG'],
  [{ by: 'pieces', pieces: 10, pieceMassG: 500, lossShares: [0.1], lossesCombine: 'added' }, 'lossesOn'],
  [{ by: 'pieces', pieces: 10, pieceMassG: 500, lossShares: [0.1], lossesOn: 'dough' }, 'lossesCombine'],
])('%j lacks %s', (flat, field) =>
  expect(() => flatScaleTarget(flat)).toThrow(
    expect.objectContaining({ code: 'not-possible', facts: { field, reason: 'not-given' } }),
  ),
)
