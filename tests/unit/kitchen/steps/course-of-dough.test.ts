import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  byMoment,
  outOfOrder,
  stepOf,
  stepsToCome,
  timerOf,
  type StoodStep,
} from '@/lib/kitchen/steps/course-of-dough.input'
import { standingSteps } from '@/lib/kitchen/steps/standing-steps.input'
import { stepKinds, type StepKind } from '@/lib/kitchen/steps/step-kinds.input'

const planned = { mixTimeS: 600, bulkTimeS: 5400, proofTimeS: 3600, bakeTimeS: 2400 }
const min = 60_000
let count = 0
const at = (minute: number, step: StepKind): StoodStep => ({ id: `${count++}`, step, atMs: minute * min })
const stood = fc.record({
  id: fc.uuid(),
  step: fc.constantFrom(...stepKinds),
  atMs: fc.integer({ min: 0, max: 1e9 }),
})
const steps = fc.array(stood, { maxLength: 16 })

describe('what runs for a dough', () => {
  it.each([
    ['nothing before anything was done', [], null],
    ['the mixing', [at(0, 'mixing_begun')], ['mix', 0, 10]],
    ['bulk from when it was mixed', [at(0, 'mixing_begun'), at(9, 'mixed')], ['bulk', 9, 99]],
    ['the same bulk whenever it is folded', [at(9, 'mixed'), at(39, 'folded'), at(69, 'folded')], ['bulk', 9, 99]],
    ['nothing between scaling and the proof', [at(9, 'mixed'), at(99, 'scaled'), at(120, 'moulded')], null],
    ['nothing in the retarder, of which a plan says no time', [at(120, 'retarding_begun')], null],
    ['the proof, also once it is scored', [at(130, 'proof_begun'), at(185, 'scored')], ['proof', 130, 190]],
    ['the bake', [at(130, 'proof_begun'), at(190, 'in_oven')], ['bake', 190, 230]],
    ['nothing when it is out', [at(190, 'in_oven'), at(230, 'out_of_oven')], null],
    ['nothing of a fold alone: nobody said when it was mixed', [at(39, 'folded')], null],
    ['the earliest of two that were entered', [at(11, 'mixed'), at(9, 'mixed')], ['bulk', 9, 99]],
    [
      'the bake, also where a clock put the oven before the mixer',
      [at(500, 'mixed'), at(2, 'in_oven')],
      ['bake', 2, 42],
    ],
  ] as const)('is %s', (_, given, expected) => {
    const timer = timerOf(given, planned)
    expect(timer && [timer.phase, timer.fromMs / min, timer.endsMs / min]).toEqual(expected)
  })

  it('runs from a step that stands, for what the plan gives, in whatever order steps came', () => {
    fc.assert(
      fc.property(steps, fc.integer({ min: 0, max: 15 }), (given, turn) => {
        const timer = timerOf(given, planned)
        expect(timerOf([...given.slice(turn), ...given.slice(0, turn)], planned)).toEqual(timer)
        if (!timer) return
        expect(given).toContainEqual(expect.objectContaining({ id: timer.stepId, atMs: timer.fromMs }))
        expect(timer.endsMs - timer.fromMs).toBe(timer.plannedS * 1000)
      }),
      { seed: 71 },
    )
  })

  it('is over for good when the dough is out of the oven', () => {
    fc.assert(
      fc.property(steps, stood, (given, out) => {
        expect(timerOf([...given, { ...out, step: 'out_of_oven' }], planned)).toBeNull()
      }),
      { seed: 72 },
    )
  })
})

describe('what is to come', () => {
  it('goes through the trade’s order, without what not every dough has', () => {
    const done: StoodStep[] = []
    const walked: StepKind[] = []
    for (let { next } = stepsToCome(done); next; { next } = stepsToCome(done)) {
      walked.push(next)
      done.push(at(walked.length, next))
    }
    expect(walked).toEqual([
      'mixing_begun',
      'mixed',
      'scaled',
      'moulded',
      'proof_begun',
      'in_oven',
      'out_of_oven',
      'cooled',
    ])
  })

  it('offers each step that does not stand once, a forgotten one too, and a fold always', () => {
    fc.assert(
      fc.property(steps, (given) => {
        const { next, others } = stepsToCome(given)
        const offered = [...(next ? [next] : []), ...others]
        const missing = stepKinds.filter((step) => step === 'folded' || !given.some((each) => each.step === step))
        expect(offered.toSorted()).toEqual([...missing].sort())
      }),
      { seed: 73 },
    )
  })
})

describe('steps that were entered', () => {
  const entered = fc
    .array(fc.record({ isDone: fc.boolean(), replaces: fc.option(fc.nat({ max: 9 })) }), { maxLength: 10 })
    .map((rows) =>
      rows.map(({ isDone, replaces }, place) => ({
        id: `${place}`,
        isDone,
        supersedesId: replaces !== null && replaces < place ? `${replaces}` : null,
      })),
    )

  it('stand where nothing took their place and they were done, in whatever order they are read', () => {
    fc.assert(
      fc.property(entered, (rows) => {
        const stand = standingSteps(rows).map(({ id }) => id)
        for (const { id, isDone } of rows)
          expect(stand.includes(id)).toBe(isDone && !rows.some(({ supersedesId }) => supersedesId === id))
        expect(
          standingSteps(rows.toReversed())
            .map(({ id }) => id)
            .sort(),
        ).toEqual([...stand].sort())
      }),
      { seed: 74 },
    )
  })

  it('have one that counts, the earliest, and stand by the clock', () => {
    fc.assert(
      fc.property(steps, (given) => {
        for (const kind of stepKinds) {
          const own = given.filter(({ step }) => step === kind)
          expect(stepOf(given, kind)?.atMs ?? null).toBe(
            own.length === 0 ? null : Math.min(...own.map(({ atMs }) => atMs)),
          )
        }
        const times = given.toSorted(byMoment).map(({ atMs }) => atMs)
        expect(times).toEqual(times.toSorted((a, b) => a - b))
      }),
      { seed: 75 },
    )
  })

  it('are told to be out of order where one comes before what it follows, and a late fold is not', () => {
    const [mixed, fold, scaled] = [at(50, 'mixed'), at(45, 'folded'), at(30, 'scaled')]
    expect(outOfOrder([mixed, fold, scaled])).toEqual([fold, scaled])
    expect(outOfOrder([at(9, 'mixed'), at(100, 'folded'), at(99, 'scaled')])).toEqual([])
  })
})
