import { expect, test } from 'vitest'
import { learnFriction, type MixedBatch } from '@/lib/calc/temperature/learn-friction'

const mixed = (
  batch: string,
  doughKg: number,
  firstSpeedMin: number,
  secondSpeedMin: number,
  offJPerKg = 0,
): MixedBatch => ({
  batch,
  doughMassG: 1000 * doughKg,
  frictionJ: doughKg * (150 * firstSpeedMin + 420 * secondSpeedMin + offJPerKg),
  firstSpeedMin,
  secondSpeedMin,
})
const batches = [
  mixed('a', 8, 4, 5, 20),
  mixed('b', 12, 4, 7, -15),
  mixed('c', 10, 3, 6, 10),
  mixed('d', 9, 5, 4, -25),
  mixed('e', 11, 3, 8, 5),
  mixed('f', 10, 5, 5, -10),
]
const plan = { plannedDoughMassG: 10_000, plannedFirstSpeedMin: 4, plannedSecondSpeedMin: 6 }

test('both speeds are learned from batches of different minutes', () => {
  const learned = learnFriction({ ...plan, batches })
  expect(Math.abs(learned.firstSpeedJPerKgMin! - 150)).toBeLessThan(10)
  expect(Math.abs(learned.secondSpeedJPerKgMin! - 420)).toBeLessThan(10)
  expect(Math.abs(learned.frictionJPerKg - 3120)).toBeLessThan(20)
  expect(learned).toMatchObject({
    batches: 6,
    isGuess: false,
    reasons: [],
    setAside: [],
    leastDoughMassG: 8000,
    mostDoughMassG: 12_000,
  })
})

test('a thermometer read wrong by ten degrees is set aside and moves the answer little', () => {
  const bad = { ...mixed('bad', 30, 4, 6, 28_000) }
  const learned = learnFriction({ ...plan, batches: [...batches, bad] })
  expect(learned.setAside.map(({ batch }) => batch)).toEqual(['bad'])
  expect(Math.abs(learned.frictionJPerKg - 3120)).toBeLessThan(60)
  expect(learned.mostDoughMassG).toBe(12_000)
})

test.each([
  ['a larger dough', { plannedDoughMassG: 12_001 }, 'outside-dough-sizes'],
  ['a smaller dough', { plannedDoughMassG: 7999 }, 'outside-dough-sizes'],
  ['longer mixing', { plannedSecondSpeedMin: 9 }, 'longer-than-learned'],
] as const)('%s than any learned from is a guess', (_what, change, reason) =>
  expect(learnFriction({ ...plan, ...change, batches })).toMatchObject({ isGuess: true, reasons: [reason] }),
)

test('batches that were all mixed alike do not tell the speeds apart', () => {
  const alike = ['a', 'b', 'c', 'd', 'e'].map((name, i) => mixed(name, 10, 4, 6, 10 * (i - 2)))
  const learned = learnFriction({ ...plan, batches: alike })
  expect(learned.reasons).toEqual(['speeds-not-told-apart'])
  expect(learned.firstSpeedJPerKgMin).toBe(learned.secondSpeedJPerKgMin)
  expect(learned.frictionJPerKg).toBeCloseTo(3120, 6)
})

test('two batches are few, and one speed alone is learned alone', () => {
  const two = [mixed('a', 10, 5, 0), mixed('b', 10, 6, 0)]
  const learned = learnFriction({ ...plan, plannedSecondSpeedMin: 0, batches: two })
  expect(learned).toMatchObject({ secondSpeedJPerKgMin: null, isGuess: true, reasons: ['few-batches'] })
  expect(learned.firstSpeedJPerKgMin).toBeCloseTo(150, 6)
  expect(() => learnFriction({ ...plan, batches: two })).toThrow(
    expect.objectContaining({
      facts: expect.objectContaining({ field: 'plannedSecondSpeedMin', reason: 'speed-never-mixed' }),
    }),
  )
})

test('one batch, one name twice, no minutes and no number are refused; 10,000 batches are answered', () => {
  expect(() => learnFriction({ ...plan, batches: batches.slice(0, 1) })).toThrow(
    expect.objectContaining({ code: 'empty' }),
  )
  expect(() => learnFriction({ ...plan, batches: [batches[0]!, batches[0]!] })).toThrow(
    expect.objectContaining({ code: 'duplicate' }),
  )
  expect(() => learnFriction({ ...plan, batches: [...batches, mixed('z', 10, 0, 0)] })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'batches[6].firstSpeedMin' }) }),
  )
  expect(() =>
    learnFriction({ ...plan, batches: [...batches, { ...batches[0]!, batch: 'z', frictionJ: Number.NaN }] }),
  ).toThrow(expect.objectContaining({ code: 'not-finite' }))
  const many = Array.from({ length: 10_000 }, (_, i) =>
    mixed(String(i), 10, 3 + (i % 3), 4 + (i % 5), 30 * Math.sin(i)),
  )
  expect(learnFriction({ ...plan, batches: many }).secondSpeedJPerKgMin).toBeCloseTo(420, 0)
})
