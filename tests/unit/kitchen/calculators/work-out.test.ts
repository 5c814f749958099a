import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { calcEntry } from '@/lib/calc/entry'
import { CalcError, type CalcErrorCode, type CalcErrorFacts } from '@/lib/calc/error'
import { workOut } from '@/lib/kitchen/calculators/work-out'
import { wordsOfFault } from '@/lib/kitchen/calculators/words-of-fault'

/** An entry that does what the test says. */
const entryThat = (run: (q: { massesG: number[] }) => { meanG: number }) =>
  calcEntry({
    id: 'invented/mean',
    input: z.strictObject({ massesG: z.array(z.number()) }),
    output: z.strictObject({ meanG: z.number() }),
    example: { massesG: [1] },
    source: 'invented for this test',
    run,
  })

const refusing = (code: CalcErrorCode, facts: CalcErrorFacts) =>
  entryThat(() => {
    throw new CalcError(code, facts)
  })

const words = (code: CalcErrorCode, facts: Omit<CalcErrorFacts, 'field'>, locale = 'en-GB') => {
  const worked = workOut(refusing(code, { field: 'massesG[2]', ...facts }), { massesG: [1] })
  if (worked.ok) throw new Error('was not refused')
  expect(worked.faults).toMatchObject([{ path: 'massesG.2' }])
  return worked.faults.map((fault) => wordsOfFault(fault, { language: 'en', locale })).join()
}

test('an answer is given as it comes', () => {
  expect(
    workOut(
      entryThat(({ massesG }) => ({ meanG: massesG.length })),
      { massesG: [3, 4] },
    ),
  ).toEqual({ ok: true, answer: { meanG: 2 } })
})

test('an answer that is not finite is not given', () => {
  for (const meanG of [Number.NaN, Infinity, -Infinity]) {
    expect(
      workOut(
        entryThat(() => ({ meanG })),
        { massesG: [1] },
      ),
    ).toMatchObject({ ok: false, faults: [{ path: 'massesG', reason: 'beyond-numbers' }] })
  }
})

test('what breaks is a bug, and is no fault of a field', () => {
  const broken = entryThat(() => {
    throw new TypeError('broken')
  })
  expect(() => workOut(broken, { massesG: [1] })).toThrow('broken')
})

test.each([undefined, null, 4, 'text', [], { massesG: 'one' }, { massesG: [1, 'b', null] }, { massesG: [Number.NaN] }])(
  'what is not of the shape is refused at its field: %j',
  (given) => {
    const worked = workOut(
      entryThat(() => ({ meanG: 0 })),
      given,
    )
    expect(worked.ok).toBe(false)
  },
)

test('every fault of the shape comes at once, each by its path', () => {
  const worked = workOut(
    entryThat(() => ({ meanG: 0 })),
    { massesG: [1, 'b', 3, null], tare: 1 },
  )
  expect(worked).toMatchObject({
    ok: false,
    faults: [
      { path: 'massesG.1', code: 'not-a-number' },
      { path: 'massesG.3', code: 'missing' },
      { path: 'tare', code: 'unknown-field' },
    ],
  })
})

describe('a calculation that refuses is put into words', () => {
  test.each<[CalcErrorCode, Omit<CalcErrorFacts, 'field'>, string]>([
    ['not-finite', { value: 'NaN' }, 'Write a number here, such as 12.5, without marks for thousands.'],
    ['out-of-range', { value: -1, min: 0, max: 1 }, 'Must not be below 0.'],
    ['out-of-range', { value: 0, min: 0, max: 1 }, 'Must be more than 0.'],
    ['out-of-range', { value: 1, min: 0, max: 1 }, 'Must be less than 1.'],
    ['out-of-range', { value: 2, min: 0, max: 1 }, 'Must not be above 1.'],
    ['out-of-range', { value: '-3.5', min: 0 }, 'Must not be below 0.'],
    ['out-of-range', { value: 1.5, min: 1, reason: 'not-whole' }, 'Write a whole number here.'],
    ['out-of-range', { value: 7 }, 'This is not a value that is possible here.'],
    ['empty', { value: 0, min: 2 }, 'At least 2 are needed.'],
    ['empty', {}, 'This is needed.'],
    ['wrong-shape', { value: 3, min: 4, max: 4 }, 'There are 3 here, and 4 are needed.'],
    ['wrong-shape', { value: 3, min: 4, max: 5 }, 'Must lie between 4 and 5.'],
    ['wrong-shape', { value: 3, min: 4 }, 'At least 4 are needed.'],
    ['wrong-shape', { value: 4, max: 3 }, 'At most 3 are possible.'],
    ['wrong-shape', {}, 'This is not in the form that is asked for.'],
    ['duplicate', { value: 'a' }, 'This is there twice. Each may be there once.'],
    ['not-possible', { reason: 'one-arm' }, 'There is only one dough. Nothing can be compared.'],
    ['not-possible', { reason: 'never-heard-of' }, 'This cannot be worked out from what is given.'],
    ['not-possible', { reason: 'constructor' }, 'This cannot be worked out from what is given.'],
    [
      'no-convergence',
      { value: 40 },
      'The search for the answer did not come to an end. Look whether the figures are as they were measured.',
    ],
  ])('%s %j', (code, facts, expected) => {
    expect(words(code, facts)).toBe(expected)
  })

  test('its numbers are in the reader’s own marks', () => {
    expect(words('out-of-range', { value: 2, min: 0.5, max: 1234.5 }, 'de-DE')).toBe(
      'This is not a value that is possible here.',
    )
    expect(words('out-of-range', { value: 0.25, min: 0.5 }, 'de-DE')).toBe('Must not be below 0,5.')
    expect(words('out-of-range', { value: -9, min: -1.5 }, 'en-GB')).toBe('Must not be below −1.5.')
  })
})
