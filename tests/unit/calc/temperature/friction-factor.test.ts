import { expect, test } from 'vitest'
import { frictionFactor } from '@/lib/calc/temperature/friction-factor'
import { waterTempByFactor } from '@/lib/calc/temperature/water-temp-by-factor'

test('the water that the factor asks for gives the dough it was learned from', () => {
  for (const preFermentTemp of [null, 21]) {
    const seen = { actualTemp: 27, roomTemp: 23, flourTemp: 21, waterTemp: 17, preFermentTemp }
    const factor = frictionFactor(seen)
    expect(
      waterTempByFactor({ wantedTemp: 27, roomTemp: 23, flourTemp: 21, preFermentTemp, frictionFactor: factor }),
    ).toBeCloseTo(17, 10)
  }
})
