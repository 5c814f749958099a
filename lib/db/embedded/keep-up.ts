import { setTimeout as wait } from 'node:timers/promises'

type Kept = {
  isUp(): Promise<boolean>
  /** Starts it once; false or a throw when that failed. */
  start(): Promise<boolean>
  say(event: string, facts: object): void
}

const lookEveryMs = 1_000
const longestPauseMs = 30_000

/**
 * Looks every second whether something is up, and starts it again when it is not. After a start that failed it
 * waits twice as long as before, at most half a minute, and goes on for ever: a disk may have room again.
 * @returns what ends the watch, after a start that is under way
 */
export function keepUp(
  kept: Kept,
  pause: (ms: number, signal: AbortSignal) => Promise<void> = pauseFor,
): { stop(): Promise<void> } {
  const ending = new AbortController()
  const watching = watch(kept, ending.signal, pause)
  return {
    async stop() {
      ending.abort()
      await watching
    },
  }
}

async function watch(
  kept: Kept,
  ending: AbortSignal,
  pause: (ms: number, signal: AbortSignal) => Promise<void>,
): Promise<void> {
  let pauseMs = lookEveryMs
  for (;;) {
    await pause(pauseMs, ending)
    if (ending.aborted) return
    if (await kept.isUp()) {
      pauseMs = lookEveryMs
      continue
    }
    kept.say('database-down', {})
    const started = await kept.start().catch(() => false)
    if (started) {
      kept.say('database-up-again', {})
      pauseMs = lookEveryMs
      continue
    }
    pauseMs = Math.min(pauseMs * 2, longestPauseMs)
    kept.say('database-not-started', { againInMs: pauseMs })
  }
}

async function pauseFor(ms: number, signal: AbortSignal): Promise<void> {
  // A watch that is ended while it waits is no fault.
  await wait(ms, undefined, { signal, ref: false }).catch(() => undefined)
}
