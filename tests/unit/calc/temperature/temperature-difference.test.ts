import { expect, test } from 'vitest'
import { differenceFToC } from '@/lib/calc/temperature/temperature-difference'

test('no difference is no difference: the 32 does not enter', () => expect(differenceFToC(0)).toBe(0))
