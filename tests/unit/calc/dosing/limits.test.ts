import { expect, test } from 'vitest'
import { LIMIT_REGIONS, LIMITED_SUBSTANCES } from '@/lib/calc/dosing/limit-rows'
import { limitsOf } from '@/lib/calc/dosing/limits'

test('whatever is asked, the competent authority is named, and nothing stored is never permission', () => {
  for (const substance of LIMITED_SUBSTANCES)
    for (const region of [null, ...LIMIT_REGIONS]) {
      const { rows, cautions } = limitsOf({ substance, region })
      expect(cautions[0]).toBe('ask-competent-authority')
      expect(cautions.includes('nothing-stored-is-no-permission')).toBe(rows.length === 0)
      expect(cautions.includes('never-compared-with-the-text')).toBe(rows.length > 0)
    }
})

test('a figure that several share is found under each of them', () => {
  for (const substance of ['ammonium-persulphate', 'calcium-peroxide', 'potassium-persulphate'] as const)
    expect(
      limitsOf({ substance, region: 'ca' }).rows.some(
        ({ substances, maxMgPerKg }) => substances.length === 3 && maxMgPerKg === 100,
      ),
    ).toBe(true)
})

test('one region shows its own rows only', () => {
  expect(
    limitsOf({ substance: 'potassium-bromate', region: 'uk' }).rows.map(({ region, rule }) => [region, rule]),
  ).toEqual([['uk', 'forbidden']])
})

test('where a dough may bring some by itself, that is said above the rows', () => {
  expect(limitsOf({ substance: 'propionates', region: 'eu' }).cautions).toContain('fermentation-brings-some')
  expect(limitsOf({ substance: 'sorbates', region: 'eu' }).cautions).not.toContain('fermentation-brings-some')
})
