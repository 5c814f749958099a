let isOnline = true
const listeners = new Set<() => void>()

/** Says whether the book answered when it was last asked. */
export function tellOnline(now: boolean): void {
  if (now === isOnline) return
  isOnline = now
  for (const listen of listeners) listen()
}

/** Whether the book answered when it was last asked. */
export function readOnline(): boolean {
  return isOnline
}

/** @returns how to stop listening */
export function listenOnline(listen: () => void): () => void {
  listeners.add(listen)
  return () => listeners.delete(listen)
}
