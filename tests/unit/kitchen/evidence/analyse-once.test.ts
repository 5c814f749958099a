import { expect, test } from 'vitest'
import { analyseOnce } from '@/lib/kitchen/evidence/analyse-once'
import { analyseTrial } from '@/lib/kitchen/evidence/analyse-trial'
import { declaredTrial, maltDoughs } from '@/tests/support/evidence-samples'

test('the same facts, read again, are worked out once, and say what they would say', () => {
  const first = analyseOnce(declaredTrial({}), maltDoughs)
  expect(analyseOnce(structuredClone(declaredTrial({})), structuredClone(maltDoughs))).toBe(first)
  expect(first).toEqual(analyseTrial(declaredTrial({}), maltDoughs))
})

test('whatever changes in them is another result', () => {
  const whole = analyseOnce(declaredTrial({}), maltDoughs)
  const [dough, ...others] = maltDoughs
  const changes = [
    analyseOnce(declaredTrial({ margin: 0.01 }), maltDoughs),
    analyseOnce(declaredTrial({}), [{ ...dough!, state: 'lost' }, ...others]),
    analyseOnce(declaredTrial({}), [{ ...dough!, pieces: dough!.pieces.map((piece) => ({ ...piece, value: (piece.value ?? 0) + 0.1 })) }, ...others]),
    analyseOnce(declaredTrial({}), others),
  ]
  for (const changed of changes) expect(changed).not.toEqual(whole)
})

test('only so many are kept, those that were looked at last', () => {
  const first = analyseOnce(declaredTrial({}), maltDoughs)
  for (let margin = 1; margin <= 99; margin++) analyseOnce(declaredTrial({ margin }), maltDoughs.slice(1))
  expect(analyseOnce(declaredTrial({}), maltDoughs)).toBe(first)
  for (let margin = 101; margin <= 210; margin++) analyseOnce(declaredTrial({ margin }), maltDoughs.slice(1))
  expect(analyseOnce(declaredTrial({}), maltDoughs)).not.toBe(first)
})
