import { expect, test } from 'vitest'
import { namingOf } from '@/lib/calc/label/naming-of'
import { ADDITIVE_CLASSES } from '@/lib/calc/label/types'

test('every class but modified starch stands before a name, or a number where there is one', () => {
  for (const additiveClass of ADDITIVE_CLASSES.filter((one) => one !== 'modified-starch')) {
    expect(namingOf({ additiveClass, eNumber: null, present: null })).toBe('class-then-name')
    expect(namingOf({ additiveClass, eNumber: 'E 471', present: [] })).toBe('class-then-name-or-number')
  }
  expect(namingOf({ additiveClass: null, eNumber: null, present: ['wheat'] })).toBe('name')
})

test('modified starch that nobody has judged is not taken to be without gluten', () => {
  const starch = { additiveClass: 'modified-starch' as const, eNumber: 'E 1422' }
  expect(namingOf({ ...starch, present: null })).toBe('class-then-grain')
  expect(namingOf({ ...starch, present: ['barley'] })).toBe('class-then-grain')
  expect(namingOf({ ...starch, present: ['sulphites'] })).toBe('class-alone')
})
