import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { stateBySteps, type Whereabouts } from '@/lib/kitchen/steps/state-by-steps.input'
import { stepKinds, type StepKind } from '@/lib/kitchen/steps/step-kinds.input'

type Entered = Parameters<typeof stateBySteps>[1][number]

const moment = (minute: number) => new Date(Date.UTC(2026, 2, 2, 4, minute))
const step = (id: string, kind: StepKind, minute: number, more: Partial<Entered> = {}): Entered => ({
  id,
  step: kind,
  isDone: true,
  supersedesId: null,
  at: moment(minute),
  ...more,
})
const at = (state: Whereabouts['state'], minute: number | null = null): Whereabouts => ({
  state,
  bakedAt: minute === null ? null : moment(minute),
})

/** Steps in the order in which they came, each of which may put right one before it, or say that it had not been done. */
const arriving = fc
  .array(
    fc.record({
      step: fc.constantFrom(...stepKinds),
      minute: fc.nat(59),
      corrects: fc.option(fc.nat(20), { nil: null }),
      isDone: fc.boolean(),
    }),
    { maxLength: 14 },
  )
  .map((rows) => {
    const entered: Entered[] = []
    for (const [place, { step: kind, minute, corrects, isDone }] of rows.entries()) {
      const wrong = corrects === null ? undefined : entered[corrects % Math.max(1, place)]
      entered.push(
        step(`${place}`, wrong?.step ?? kind, minute, {
          isDone: wrong ? isDone : true,
          supersedesId: wrong?.id ?? null,
        }),
      )
    }
    return entered
  })

describe('where a dough is by its steps', () => {
  it.each<[string, Whereabouts, Entered[], Whereabouts]>([
    ['nowhere new without any', at('weighing'), [], at('weighing')],
    ['in work once it is mixed', at('weighing'), [step('a', 'mixing_begun', 1)], at('in_work')],
    ['baked when it is out of the oven', at('in_work'), [step('a', 'out_of_oven', 50)], at('baked', 50)],
    [
      'baked from the earlier of two that say it',
      at('baked', 50),
      [step('a', 'out_of_oven', 50), step('b', 'out_of_oven', 48)],
      at('baked', 48),
    ],
    [
      'baked from the step, also where the desk said it a while later',
      at('baked', 57),
      [step('a', 'out_of_oven', 50)],
      at('baked', 50),
    ],
    [
      'back in work where the step that moved it had not been done',
      at('baked', 50),
      [step('a', 'out_of_oven', 50), step('b', 'out_of_oven', 51, { isDone: false, supersedesId: 'a' })],
      at('in_work'),
    ],
    [
      'baked since the desk said so, where another step had not been done',
      at('baked', 57),
      [step('a', 'out_of_oven', 50), step('b', 'out_of_oven', 51, { isDone: false, supersedesId: 'a' })],
      at('baked', 57),
    ],
    ['measured, with its moment put right', at('measured', 57), [step('a', 'out_of_oven', 50)], at('measured', 50)],
    [
      'measured without a moment, as it was read from a file',
      at('measured'),
      [step('a', 'out_of_oven', 50)],
      at('measured'),
    ],
  ])('%s', (_, now, steps, then) => {
    expect(stateBySteps(now, steps)).toEqual(then)
  })

  it('one after another or all at once comes to the same, whatever is put right', () => {
    fc.assert(
      fc.property(arriving, (entered) => {
        const oneByOne = entered.reduce(
          (now, _, place) => stateBySteps(now, entered.slice(0, place + 1)),
          at('in_work'),
        )
        expect(oneByOne).toEqual(stateBySteps(at('in_work'), entered))
      }),
    )
  })

  it('no step brings back what is out or moves what is not begun', () => {
    fc.assert(
      fc.property(
        arriving,
        fc.constantFrom<Whereabouts['state']>('waiting', 'lost', 'set_aside', 'not_baked'),
        fc.option(fc.nat(59), { nil: null }),
        (entered, state, baked) => {
          expect(stateBySteps(at(state, baked), entered)).toEqual(at(state, baked))
        },
      ),
    )
  })
})
