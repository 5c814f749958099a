import { expect, test } from 'vitest'
import { noSooner } from '@/lib/kitchen/no-sooner'

/** A wait that the test ends. */
function heldWait() {
  const asked: number[] = []
  let end: () => void = () => undefined
  const over = new Promise<void>((resolve) => (end = resolve))
  return { asked, end, waiting: (ms: number) => (asked.push(ms), over) }
}
const settled = async (promise: Promise<unknown>) => {
  const state = await Promise.race([
    promise.then(
      () => 'given',
      () => 'given',
    ),
    new Promise((resolve) => setImmediate(() => resolve('held'))),
  ])
  return state
}

test('an answer that may tell something comes only when the wait is over, whatever it took', async () => {
  for (const work of [() => Promise.resolve(null), () => Promise.reject(new Error('a bug'))]) {
    const { asked, end, waiting } = heldWait()
    const answer = noSooner(300, work(), (value) => value === null, waiting)
    expect(await settled(answer)).toBe('held')
    expect(asked).toEqual([300])
    end()
    expect(await settled(answer)).toBe('given')
  }
})

test('what was let in is not kept waiting', async () => {
  const { waiting } = heldWait()
  expect(await settled(noSooner(300, Promise.resolve('in'), (value) => value === null, waiting))).toBe('given')
})
