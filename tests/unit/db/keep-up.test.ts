import { expect, it } from 'vitest'
import { keepUp } from '@/lib/db/embedded/keep-up'

it('starts what is down again, waits longer after each failure up to half a minute, and looks every second once it is up', async () => {
  const pauses: number[] = []
  const events: string[] = []
  let failures = 7
  let isUp = true
  let over = () => {}
  const enough = new Promise<void>((resolve) => (over = resolve))
  const watch = keepUp(
    {
      isUp: () => Promise.resolve(isUp),
      start() {
        if (failures-- > 0) return failures % 2 ? Promise.reject(new Error('no room')) : Promise.resolve(false)
        isUp = true
        return Promise.resolve(true)
      },
      say: (event) => events.push(event),
    },
    (ms) => {
      pauses.push(ms)
      if (pauses.length === 2) isUp = false
      if (pauses.length === 11) over()
      return pauses.length > 11 ? enough : Promise.resolve()
    },
  )
  await enough
  await watch.stop()
  expect(pauses.slice(0, 11)).toEqual([1_000, 1_000, 2_000, 4_000, 8_000, 16_000, 30_000, 30_000, 30_000, 1_000, 1_000])
  expect(events.filter((event) => event === 'database-not-started')).toHaveLength(7)
  expect(events.at(-1)).toBe('database-up-again')
})
