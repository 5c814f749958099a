export type ButtonTone = 'go' | 'plain' | 'stop-quiet'

const shared = 'inline-flex items-center justify-center text-center font-semibold no-underline disabled:opacity-50 print:hidden'

const tones: Record<ButtonTone, string> = {
  go: 'min-h-11 border-2 border-ember bg-ember px-5 py-2 text-control text-on-ember hover:border-ink',
  plain: 'min-h-10 border-[1.5px] border-ink px-4 py-1.5 hover:bg-band',
  'stop-quiet': 'min-h-8 px-1 text-stop underline decoration-1 underline-offset-4 hover:decoration-2',
}

/** The classes that a button and a link dressed as a button share. */
export function buttonClass(tone: ButtonTone): string {
  return `${shared} ${tones[tone]}`
}
