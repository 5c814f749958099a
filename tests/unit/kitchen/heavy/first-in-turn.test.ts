import fc from 'fast-check'
import { expect, test } from 'vitest'
import { firstInTurn } from '@/lib/kitchen/heavy/first-in-turn'

/** A work that ends when it is told to. */
function work() {
  let end: (answer: string) => void = () => {}
  let fail: (error: Error) => void = () => {}
  const answer = new Promise<string>((resolve, reject) => {
    end = resolve
    fail = reject
  })
  let begun = 0
  return { run: () => (begun++, answer), begun: () => begun, end, fail }
}
const turns = () => new Promise((resolve) => setImmediate(resolve))

test('what was not done yet waits for its turn, and what was is done at once', async () => {
  const first = firstInTurn(10)
  const [a, b] = [work(), work()]
  const answers = [first('a', a.run), first('b', b.run)]
  await turns()
  expect([a.begun(), b.begun()]).toEqual([1, 0])
  a.end('done')
  expect(await answers[0]).toBe('done')
  await turns()
  expect(b.begun()).toBe(1)
  // b is under way, and a is known by now.
  expect(await first('a', () => Promise.resolve('again'))).toBe('again')
  b.end('done too')
  expect(await answers[1]).toBe('done too')
})

test('one that fails keeps nobody waiting, and waits for its turn again', async () => {
  const first = firstInTurn(10)
  const [a, b, c] = [work(), work(), work()]
  const failed = first('a', a.run)
  const next = first('b', b.run)
  a.fail(new Error('too long'))
  await expect(failed).rejects.toThrow('too long')
  await turns()
  expect(b.begun()).toBe(1)
  const again = first('a', c.run)
  await turns()
  expect(c.begun()).toBe(0)
  b.end('b')
  c.end('c')
  expect(await Promise.all([next, again])).toEqual(['b', 'c'])
})

test('however many are asked for, each is answered with its own, and at most one of the new ones runs', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 40 }), async (keys) => {
      const first = firstInTurn(3)
      let running = 0
      let most = 0
      const fresh = [...new Set(keys)]
      const answers = await Promise.all(
        fresh.map((key) =>
          first(String(key), async () => {
            most = Math.max(most, ++running)
            await turns()
            running--
            return key
          }),
        ),
      )
      expect(answers).toEqual(fresh)
      expect(most).toBeLessThanOrEqual(1)
    }),
    { seed: 9, numRuns: 50 },
  )
})
