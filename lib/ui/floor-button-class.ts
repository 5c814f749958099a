export type FloorTone = 'go' | 'plain' | 'stop'

const shared =
  'inline-flex items-center justify-center text-center font-semibold no-underline disabled:opacity-50 print:hidden'

const tones: Record<FloorTone, string> = {
  go: 'min-h-24 w-full border-2 border-ember bg-ember px-8 py-3 text-head text-on-ember hover:border-ink mid:w-auto mid:min-w-[20rem]',
  plain: 'min-h-14 border-2 border-ink px-5 py-2 text-lead hover:bg-band',
  stop: 'min-h-14 border-2 border-stop px-5 py-2 text-lead text-stop hover:bg-band',
}

/** The classes of buttons that are hit with floury hands: 56 px high, the one main action 96 px. */
export function floorButtonClass(tone: FloorTone): string {
  return `${shared} ${tones[tone]}`
}
