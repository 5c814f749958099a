import 'server-only'

/**
 * Gathers calls: the first is done at once, those that come within the time after it are done as one at its end.
 * @param ms from one to the next
 */
export function atMostEvery(ms: number, work: () => void): { call(): void; stop(): void } {
  let timer: NodeJS.Timeout | undefined
  let isWanted = false
  const go = () => {
    isWanted = false
    timer = setTimeout(() => {
      timer = undefined
      if (isWanted) go()
    }, ms)
    timer.unref()
    work()
  }
  return {
    call() {
      if (timer) isWanted = true
      else go()
    },
    stop() {
      clearTimeout(timer)
      timer = undefined
      isWanted = false
    },
  }
}
