import { expect, test } from 'vitest'
import { countLight } from '@/lib/calc/net-weight/count-light'

test('a package at a limit is not below it', () =>
  expect(countLight({ nominalG: 500, contentsG: [500, 485, 484.9, 470, 469.9] })).toEqual({
    belowLower: 3,
    belowAbsolute: 1,
  }))
