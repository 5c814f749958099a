import { expect, test } from 'vitest'
import { analyseOnce } from '@/lib/kitchen/results/analyse-once'
import { analyseTrial } from '@/lib/kitchen/results/analyse-trial'
import { declaredTrial, maltDoughs } from '@/tests/support/evidence-samples'

test('the same facts, read again, are worked out once, and say what they would say', async () => {
  const first = await analyseOnce(declaredTrial({}), maltDoughs)
  expect(await analyseOnce(structuredClone(declaredTrial({})), structuredClone(maltDoughs))).toBe(first)
  expect(first).toEqual(analyseTrial(declaredTrial({}), maltDoughs))
})

test('two who look at the same moment wait for one answer', async () => {
  const [one, other] = await Promise.all([
    analyseOnce(declaredTrial({ margin: 3 }), maltDoughs),
    analyseOnce(declaredTrial({ margin: 3 }), maltDoughs),
  ])
  expect(one).toBe(other)
})

test('whatever changes in them is another result', async () => {
  const whole = await analyseOnce(declaredTrial({}), maltDoughs)
  const [dough, ...others] = maltDoughs
  const changes = await Promise.all([
    analyseOnce(declaredTrial({ margin: 0.01 }), maltDoughs),
    analyseOnce(declaredTrial({}), [{ ...dough!, state: 'lost' }, ...others]),
    analyseOnce(declaredTrial({}), [
      { ...dough!, pieces: dough!.pieces.map((piece) => ({ ...piece, value: (piece.value ?? 0) + 0.1 })) },
      ...others,
    ]),
    analyseOnce(declaredTrial({}), others),
  ])
  for (const changed of changes) expect(changed).not.toEqual(whole)
})

test('only so many are kept, those that were looked at last', async () => {
  const first = await analyseOnce(declaredTrial({}), maltDoughs)
  for (let margin = 1; margin <= 99; margin++) await analyseOnce(declaredTrial({ margin }), maltDoughs.slice(1))
  expect(await analyseOnce(declaredTrial({}), maltDoughs)).toBe(first)
  for (let margin = 101; margin <= 210; margin++) await analyseOnce(declaredTrial({ margin }), maltDoughs.slice(1))
  expect(await analyseOnce(declaredTrial({}), maltDoughs)).not.toBe(first)
})
