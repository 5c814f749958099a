import { expect, test } from 'vitest'
import { onceFor } from '@/lib/kitchen/heavy/once-for'

test('the same thing is worked out once, nothing as well, and another one anew', () => {
  const once = onceFor<string[] | null>()
  const [thing, other] = [{}, {}]
  let works = 0
  const work = (answer: string[] | null) => () => (works++, answer)
  const first = once(thing, work(['a']))
  expect(once(thing, work(['b']))).toBe(first)
  expect(once(other, work(null))).toBeNull()
  expect(once(other, work(['c']))).toBeNull()
  expect(works).toBe(2)
})
