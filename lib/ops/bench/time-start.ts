import { performance } from 'node:perf_hooks'
import { setTimeout as wait } from 'node:timers/promises'
import { spawnStart } from '../spawn-start'

const longestStartMs = 15 * 60_000
const betweenLooksMs = 10

/**
 * Runs `npm start` on a data folder until the first page answers with 200, and stops it again.
 * @param asked ends it early
 * @returns seconds from the start to the answer
 * @throws Error with what the start said, when there was no answer
 */
export async function timeStart(port: number, dataFolder: string, asked: AbortSignal): Promise<number> {
  const begun = performance.now()
  const { child, ended, output } = spawnStart({
    PORT: String(port),
    EVENDOUGH_DATA: dataFolder,
    EVENDOUGH_URL: undefined,
    EVENDOUGH_SECRET: undefined,
  })
  const isRunning = () => child.exitCode === null && child.signalCode === null
  try {
    while (isRunning() && !asked.aborted && performance.now() - begun < longestStartMs) {
      const status = await fetch(`http://127.0.0.1:${port}/sign-in`).then(
        (response) => response.status,
        () => undefined,
      )
      if (status === 200) return (performance.now() - begun) / 1000
      await wait(betweenLooksMs)
    }
  } finally {
    child.kill('SIGTERM')
    await ended
  }
  asked.throwIfAborted()
  throw new Error(`The demo bakery did not start:\n${output()}`)
}
