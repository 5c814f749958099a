import { performance } from 'node:perf_hooks'
import { setTimeout as wait } from 'node:timers/promises'
import { spawnStart } from '../spawn-start'

const longestStartMs = 15 * 60_000
const betweenLooksMs = 10

export type TimedStart = {
  /** Gives the seconds until the first page answered with 200. @throws Error with what the start said, when none did */
  answered: Promise<number>
  stop(): Promise<void>
}

/** Runs `npm start` on a data folder. */
export function timeStart(port: number, dataFolder: string): TimedStart {
  const begun = performance.now()
  const { child, ended, output } = spawnStart({ PORT: String(port), EVENDOUGH_DATA: dataFolder, EVENDOUGH_URL: undefined, EVENDOUGH_SECRET: undefined })
  const untilAnswered = async () => {
    while (child.exitCode === null && child.signalCode === null && performance.now() - begun < longestStartMs) {
      const status = await fetch(`http://127.0.0.1:${port}/sign-in`).then((response) => response.status, () => undefined)
      if (status === 200) return (performance.now() - begun) / 1000
      await wait(betweenLooksMs)
    }
    throw new Error(`The demo bakery did not start:\n${output()}`)
  }
  return {
    answered: untilAnswered(),
    async stop() {
      child.kill('SIGTERM')
      await ended
    },
  }
}
