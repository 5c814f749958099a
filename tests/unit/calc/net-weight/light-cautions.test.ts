import { expect, test } from 'vitest'
import { lightCautions } from '@/lib/calc/net-weight/light-cautions'

test('it speaks only when there is such a package', () => {
  expect(lightCautions({ belowAbsolute: 0 })).toEqual([])
  expect(lightCautions({ belowAbsolute: 1 })).toEqual(['light-package-not-for-sale'])
})
