import { expect, test } from 'vitest'
import { faultOfPlan, planFaults } from '@/lib/kitchen/trials/fault-of-plan'
import { wordsIn } from '@/lib/words/words'

test.each([
  ['flourTempC', 'plan-not-possible-temperatures'],
  ['parts[2].tempC', 'plan-not-possible-temperatures'],
  ['control[3].composition.waterPct', 'plan-not-possible-composition'],
  ['scales[0].resolutionG', 'plan-not-possible-scales'],
  ['control[0].massG', 'plan-not-possible-masses'],
  ['lines', 'plan-not-possible-masses'],
  ['somethingNew', 'plan-not-possible'],
])('%s is looked for in its place', (field, code) => {
  expect(faultOfPlan({ field })).toBe(code)
})

test('no refusal and no fault at a field names a figure as the code does', () => {
  const { refusals, problems } = wordsIn('en')
  for (const code of planFaults) expect(refusals[code]).toMatch(/look at /)
  for (const text of [...Object.values(refusals), ...Object.values(problems)].flatMap((one) => (typeof one === 'string' ? [one] : Object.values(one)))) {
    expect(text).not.toContain('{field}')
    expect(text.replace(/\{\w+\}/g, '')).not.toMatch(/[a-z][A-Z]/)
  }
})
