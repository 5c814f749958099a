import { inOne, recall, remember } from './tablet'

/**
 * Silences timers on this tablet, and forgets those that run no more.
 * @param steps what the timers run from
 * @param running what all timers run from that there are
 */
export function silence(steps: readonly string[], running: readonly string[]): Promise<void> {
  return inOne(async () => {
    const former = (await recall('silenced')) ?? []
    await remember('silenced', [...new Set([...former.filter((step) => running.includes(step)), ...steps])])
  })
}
