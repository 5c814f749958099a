import { expect, test } from 'vitest'
import { usualMoves } from '@/lib/calc/arms/usual-moves'
import type { ArmLine } from '@/lib/calc/arms/types'

const line = (id: string, kind: ArmLine['kind']): ArmLine => ({
  id,
  massG: 1,
  kind,
  isFlour: kind === 'flour',
  composition: null,
  standsInFor: [],
  resolutionG: 1,
})

test('flour, yeast, salt, improvers and inclusions are locked, also a flour of another kind', () => {
  const bran = { ...line('starch', 'other'), isFlour: true }
  expect(
    usualMoves([
      line('f', 'flour'),
      line('w', 'water'),
      line('y', 'yeast'),
      line('s', 'salt'),
      bran,
      line('b', 'fat'),
      line('i', 'improver'),
      line('raisins', 'other'),
    ]),
  ).toEqual([
    { lineId: 'w', minG: 0, maxG: null },
    { lineId: 'b', minG: 0, maxG: null },
  ])
})
