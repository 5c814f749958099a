import { expect, test } from 'vitest'
import { flatArmLine, flatHold, flatMoves, flatSets, type FlatControlLine } from '@/lib/calc/arms/flat-arm'

const butter: FlatControlLine = {
  id: 'butter',
  massG: 150,
  kind: 'fat',
  fatPct: 82,
  waterPct: 16,
  waterCounts: true,
  standsInForFat: true,
  standsInForSugars: false,
  standsInForProtein: false,
  resolutionG: 1,
  mayMove: true,
}

test('a line keeps what it states, and what it does not state is not zero', () => {
  expect(flatArmLine(butter)).toMatchObject({
    id: 'butter',
    isFlour: false,
    standsInFor: ['water', 'fat'],
    composition: { fatPct: 82, waterPct: 16, sugarsPct: null, sodiumMgPer100g: null },
  })
  expect(flatArmLine({ ...butter, kind: 'flour', standsInForSugars: true, standsInForProtein: true })).toMatchObject({
    isFlour: true,
    standsInFor: ['water', 'fat', 'sugars', 'protein'],
  })
})

test('a line that is set is so, also to nothing', () => {
  expect(flatSets([butter, { ...butter, id: 'lard', setG: 0 }])).toEqual([{ lineId: 'lard', massG: 0 }])
})

test('a line that may move does so from nothing without end, or between its bounds', () => {
  expect(
    flatMoves([
      butter,
      { ...butter, id: 'flour', mayMove: false, minG: 10 },
      { ...butter, id: 'lard', minG: 100, maxG: 200 },
    ]),
  ).toEqual([
    { lineId: 'butter', minG: 0, maxG: null },
    { lineId: 'lard', minG: 100, maxG: 200 },
  ])
})

test.each([{ minG: 151 }, { minG: -1 }, { maxG: 149 }, { maxG: Number.NaN }])(
  'bounds that shut the line out are refused by its place: %j',
  (bounds) =>
    expect(() =>
      flatMoves([
        { ...butter, mayMove: false },
        { ...butter, ...bounds },
      ]),
    ).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field: `control[1].${Object.keys(bounds)[0]}` }) }),
    ),
)

test('what is ticked is held', () => {
  const none = {
    holdDoughMass: false,
    holdFlour: false,
    holdWater: false,
    holdFat: false,
    holdSugars: false,
    holdProtein: false,
    holdSalt: false,
  }
  expect(flatHold(none)).toEqual([])
  expect(flatHold({ ...none, holdWater: true, holdDoughMass: true, holdSalt: true })).toEqual([
    'dough-mass',
    'water',
    'salt',
  ])
})
