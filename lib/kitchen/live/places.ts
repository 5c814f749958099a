import 'server-only'

/** As many open pages as anybody looks at; a further one asks now and then instead. */
const mostOfOne = 8

const taken = new Map<string, Set<() => void>>()
let isEnding = false
let isHeard = false

/**
 * Takes one of the places that a person or a tablet has to follow the book at; all end when the process is asked to,
 * which waits for them.
 * @returns how to free it, or null where all are taken or the process ends
 */
export function takePlace(key: string, end: () => void): (() => void) | null {
  hearOfTheEnd()
  const own = taken.get(key) ?? new Set()
  if (isEnding || own.size >= mostOfOne) return null
  taken.set(key, own.add(end))
  return () => {
    own.delete(end)
    if (own.size === 0 && taken.get(key) === own) taken.delete(key)
  }
}

function hearOfTheEnd(): void {
  if (isHeard) return
  isHeard = true
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.once(signal, () => {
      isEnding = true
      for (const end of [...taken.values()].flatMap((each) => [...each])) end()
    })
}
