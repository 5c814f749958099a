import { expect, test } from 'vitest'
import { LIMIT_ROWS, LIMITED_SUBSTANCES } from '@/lib/calc/dosing/limit-rows'

test('a figure is there when the rule is a figure, and only then', () => {
  for (const row of LIMIT_ROWS) expect(row.maxMgPerKg !== null, JSON.stringify(row)).toBe(row.rule === 'at-most')
})

test('each row names its source, and none claims a check that nobody made', () => {
  for (const row of LIMIT_ROWS) {
    expect(row.source.length).toBeGreaterThan(5)
    expect(row.checkedOn).toBeNull()
  }
})

test('no food of a region has two rules for one set of substances, and no substance is without a row', () => {
  const keys = LIMIT_ROWS.map(({ region, substances, food }) => [region, food, ...substances].join(' '))
  expect(new Set(keys).size).toBe(keys.length)
  for (const substance of LIMITED_SUBSTANCES)
    expect(
      LIMIT_ROWS.some(({ substances }) => substances.includes(substance)),
      substance,
    ).toBe(true)
})

test('a figure for a group of acid and salts says that it is for all of them together', () => {
  const shared = LIMIT_ROWS.filter(
    ({ substances, rule }) =>
      rule === 'at-most' && (substances.length > 1 || ['propionates', 'sorbates'].includes(substances[0] ?? '')),
  )
  expect(shared.length).toBeGreaterThan(4)
  for (const row of shared) expect(row.notes, JSON.stringify(row)).toContain('singly-or-together')
})

test('what a fermented product brings by itself is spoken of where propionates have a figure', () => {
  for (const row of LIMIT_ROWS.filter(({ notes }) => notes.includes('may-come-from-fermentation')))
    expect(row).toMatchObject({ substances: ['propionates'], rule: 'at-most' })
  expect(
    LIMIT_ROWS.filter(
      ({ region, substances, rule }) => region === 'eu' && substances.includes('propionates') && rule === 'at-most',
    ).every(({ notes }) => notes.includes('may-come-from-fermentation')),
  ).toBe(true)
})
