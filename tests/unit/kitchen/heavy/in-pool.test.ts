import path from 'node:path'
import { isDeepStrictEqual } from 'node:util'
import { afterAll, afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { catalogue } from '@/lib/calc/catalogue'
import type { CalcEntry } from '@/lib/calc/entry'
import { workOut } from '@/lib/kitchen/calculators/work-out'
import { workOutInPool } from '@/lib/kitchen/calculators/work-out-in-pool'
import { wordsOfFault } from '@/lib/kitchen/calculators/words-of-fault'
import { analyseTrial } from '@/lib/kitchen/results/analyse-trial'
import { closePool, inPool } from '@/lib/kitchen/heavy/in-pool'
import { Refusal } from '@/lib/kitchen/refusal'
import { drawUpPlan } from '@/lib/kitchen/trials/draw-up-plan'
import { wordsOfRefusal } from '@/lib/kitchen/words-of-refusal'
import { declaredTrial, maltDoughs, measuredBatch } from '@/tests/support/evidence-samples'
import { plannedFacts } from '@/tests/support/plan-facts'

const entries: readonly CalcEntry[] = catalogue
const unruly = path.resolve(import.meta.dirname, '../../../support/unruly-worker.mjs')

afterAll(closePool)

/** Every bit of every number, −0 and the absent beside the null. */
const expectSame = (got: unknown, wanted: unknown) =>
  expect(isDeepStrictEqual(got, wanted), JSON.stringify({ got, wanted })).toBe(true)

describe('a worker answers what the same work answers here', () => {
  test('each calculation of the catalogue, asked its example', async () => {
    for (const entry of entries) expectSame(await workOutInPool(entry.id, entry.example), workOut(entry, entry.example))
  })

  test('a question that is refused, at the field', async () => {
    for (const entry of entries.slice(0, 20)) {
      const wrong = Object.fromEntries(Object.keys(entry.example).map((name) => [name, -1]))
      const worked = await workOutInPool(entry.id, wrong)
      expect(worked.ok).toBe(false)
      expectSame(worked, workOut(entry, wrong))
    }
  })

  test.each([
    ['three days of three doughs', declaredTrial(), maltDoughs],
    [
      'a dough that was lost',
      declaredTrial({ kind: 'no_worse' }),
      maltDoughs.map((dough, i) => (i === 4 ? { ...dough, state: 'lost' as const } : dough)),
    ],
    [
      'doughs that were not begun',
      declaredTrial({ state: 'baking' }),
      [measuredBatch({ arm: 0, day: 1, values: [], change: { state: 'waiting' } })],
    ],
  ])('what a trial showed: %s', async (_, declared, batches) => {
    expectSame(await inPool('analyse-trial', { declared, batches }), analyseTrial(declared, batches))
  })

  test.each([null, 'a seed'])('the plan of a draft, seed %s', async (seed) => {
    const facts = plannedFacts()
    expectSame(await inPool('draw-up-plan', { facts, seed }), { ok: true, plan: drawUpPlan(facts, seed) })
  })

  test('a plan that no dough can have, by the figure at fault', async () => {
    expect(
      await inPool('draw-up-plan', { facts: plannedFacts({ process: { scalingMassG: -1 } }), seed: null }),
    ).toMatchObject({ ok: false, field: expect.any(String) })
  })
})

test('a bug of the work is one here too, with where it happened', async () => {
  await expect(inPool('work-out', { id: 'no/such-calculation', given: {} })).rejects.toThrow(
    /work-out broke in its worker: Error: there is no calculation no\/such-calculation[^]*\n {4}at /,
  )
})

describe('what a person gets when there is no answer', () => {
  beforeEach(async () => {
    await closePool()
    vi.stubEnv('EVENDOUGH_WORKER', unruly)
  })
  afterEach(async () => {
    vi.restoreAllMocks()
    vi.unstubAllEnvs()
    await closePool()
  })

  // The unruly worker reads of the question alone what it is to do.
  const tell = (does: string) => inPool('work-out', { does } as unknown as { id: string; given: unknown })
  const refusalOf = (asked: Promise<unknown>) =>
    asked.then(
      () => undefined,
      (error: unknown) => error,
    )

  test('words where it takes too long', async () => {
    const limit = new AbortController()
    vi.spyOn(AbortSignal, 'timeout').mockReturnValue(limit.signal)
    const told = refusalOf(tell('go-on-for-ever'))
    limit.abort()
    const refusal = await told
    expect(refusal).toBeInstanceOf(Refusal)
    expect(wordsOfRefusal(refusal as Refusal, 'en').sentence).toMatch(/^This was not worked out within 30 seconds/)
  })

  test('words where the worker came to its end', async () => {
    const refusal = await refusalOf(tell('leave'))
    expect(refusal).toBeInstanceOf(Refusal)
    expect(wordsOfRefusal(refusal as Refusal, 'en').sentence).toMatch(/^This could not be worked out just now/)
  })

  test('of a calculation words beside its question', async () => {
    const worked = await workOutInPool('weighing/least-net-mass', { does: 'leave' })
    expect(
      worked.ok
        ? []
        : worked.faults.map((fault) => [fault.path, wordsOfFault(fault, { language: 'en', locale: 'en-GB' })]),
    ).toEqual([['', expect.stringMatching(/^This could not be worked out just now/)]])
  })
})

test('without the setting that names the file it says so', async () => {
  await closePool()
  vi.stubEnv('EVENDOUGH_WORKER', '')
  await expect(inPool('work-out', { id: '', given: {} })).rejects.toThrow(/^EVENDOUGH_WORKER: /)
  vi.unstubAllEnvs()
})
