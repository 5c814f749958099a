import path from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { heavyPool, NotWorkedOut, TookTooLong, type HeavyPool } from '@/lib/kitchen/heavy/heavy-pool'

const file = path.resolve(import.meta.dirname, '../../../support/unruly-worker.mjs')
const limits = { file, threads: 1, limitMs: 60_000, mostWaiting: 10, mostMemoryMb: 32 }

let pool: HeavyPool
beforeEach(() => void (pool = heavyPool(limits)))
afterEach(() => pool.close())

const run = (does: string, more: { with?: unknown; signal?: AbortSignal } = {}) =>
  pool.run({ asked: { does, with: more.with } }, more.signal)
const answers = async (value: unknown) =>
  expect(await run('answer', { with: value })).toEqual({ ok: true, answer: value })
/** With one thread it would wait for ever behind work that was not ended. */
const goesOn = () => answers('the next one')

test('an answer comes back as it was made', async () => {
  await answers({ numbers: [-0, 1e-320, 0.1 + 0.2, Number.MAX_VALUE], at: new Date(0), nothing: null })
})

test('a worker is told nothing of the environment, where the secrets are', async () => {
  process.env.EVENDOUGH_TEST_SECRET = 'secret'
  expect(await run('tell-environment')).toEqual({ ok: true, answer: [] })
  delete process.env.EVENDOUGH_TEST_SECRET
})

describe('what takes too long', () => {
  beforeEach(async () => {
    await pool.close()
    pool = heavyPool({ ...limits, limitMs: 1500 })
  })

  test.each(['go-on-for-ever', 'never-answer'])('ends at the limit (%s), and the pool goes on', async (does) => {
    await expect(run(does)).rejects.toThrow(TookTooLong)
    await goesOn()
  })

  test('has its turn counted in, so that nobody waits longer than the limit', async () => {
    const all = await Promise.allSettled([run('go-on-for-ever'), run('go-on-for-ever'), run('answer')])
    expect(all.map((each) => each.status === 'rejected' && each.reason instanceof TookTooLong)).toEqual([
      true,
      true,
      true,
    ])
  })
})

describe('what is cancelled', () => {
  test('ends while it is worked at, for the reason that was given, and the pool goes on', async () => {
    const asked = new AbortController()
    const running = run('go-on-for-ever', { signal: asked.signal })
    await Promise.resolve()
    asked.abort(new Error('nobody looks any more'))
    await expect(running).rejects.toThrow('nobody looks any more')
    await goesOn()
  })

  test('loses its turn while it waits', async () => {
    const [first, second] = [new AbortController(), new AbortController()]
    const running = run('go-on-for-ever', { signal: first.signal })
    const waiting = run('leave', { signal: second.signal })
    second.abort(new Error('second'))
    await expect(waiting).rejects.toThrow('second')
    first.abort(new Error('first'))
    await expect(running).rejects.toThrow('first')
    await goesOn()
  })

  test('is not begun when it is over before', async () => {
    await expect(run('leave', { signal: AbortSignal.abort(new Error('before')) })).rejects.toThrow('before')
    await goesOn()
  })
})

describe('a worker that comes to its end', () => {
  test.each(['leave', 'eat-memory', 'break-later', 'answer-what-no-thread-can-hand-over', 'something-unknown'])(
    'is an error (%s), and the next work is done',
    async (does) => {
      await expect(run(does)).rejects.toThrow(NotWorkedOut)
      await goesOn()
    },
  )

  test('takes nobody along who waits behind it', async () => {
    const [gone, ...others] = await Promise.allSettled([
      run('leave'),
      run('answer', { with: 1 }),
      run('answer', { with: 2 }),
    ])
    expect(gone.status).toBe('rejected')
    expect(others).toEqual([1, 2].map((answer) => ({ status: 'fulfilled', value: { ok: true, answer } })))
  })

  test('is an error where the file is not there, each time at once', async () => {
    await pool.close()
    pool = heavyPool({ ...limits, file: `${file}.nowhere` })
    for (let i = 0; i < 3; i++) await expect(run('answer')).rejects.toThrow(NotWorkedOut)
  }, 20_000)
})

test('who comes first is served first', async () => {
  const done: number[] = []
  await Promise.all(
    [1, 2, 3, 4, 5].map(async (number) =>
      done.push(((await run('answer', { with: number })) as { answer: number }).answer),
    ),
  )
  expect(done).toEqual([1, 2, 3, 4, 5])
})

test('beyond so many that wait one more is told so at once', async () => {
  const asked = new AbortController()
  const all = Array.from({ length: limits.mostWaiting + 1 }, () => run('go-on-for-ever', { signal: asked.signal }))
  // One is worked at by now, the others wait.
  await Promise.resolve()
  await Promise.resolve()
  await expect(run('answer')).rejects.toThrow(NotWorkedOut)
  asked.abort(new Error('enough'))
  expect((await Promise.allSettled(all)).map(({ status }) => status)).not.toContain('fulfilled')
  await goesOn()
})

test('what is under way when the pool is closed ends', async () => {
  const running = run('go-on-for-ever').catch((error: unknown) => error)
  await Promise.resolve()
  await pool.close()
  expect(await running).toBeInstanceOf(NotWorkedOut)
})
