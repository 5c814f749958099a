/** What is read before a dough is mixed, to tell its water by, in the order in which it is read. */
export const beforeMixing = ['flour-temp', 'room-temp', 'water-temp'] as const
export type BeforeMixing = (typeof beforeMixing)[number]

/** Whether a measure is one of them. */
export function isBeforeMixing(code: string | null): code is BeforeMixing {
  return beforeMixing.some((each) => each === code)
}

/**
 * Whether a dough is not read whole without a measure, whatever its trial is about: what every bakery reads of a whole
 * dough. What is read before mixing serves the water, and no result misses it.
 */
export function isReadOfEveryDough({ code, level }: { code: string | null; level: 'batch' | 'piece' }): boolean {
  return code !== null && level === 'batch' && !isBeforeMixing(code)
}
