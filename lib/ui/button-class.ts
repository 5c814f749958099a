export type ButtonTone = 'go' | 'plain' | 'quiet' | 'stop-quiet'

const shared = 'inline-flex items-center justify-center text-center disabled:opacity-50 print:hidden'

const tones: Record<ButtonTone, string> = {
  go: 'min-h-11 border-2 border-ember font-semibold no-underline bg-ember px-5 py-2 text-control text-on-ember hover:border-ink',
  plain: 'min-h-10 border-[1.5px] font-semibold no-underline border-ink px-4 py-1.5 hover:bg-band',
  quiet: 'min-h-8 underline decoration-1 underline-offset-[0.2em] hover:decoration-2',
  'stop-quiet': 'min-h-8 text-stop underline decoration-1 underline-offset-[0.2em] hover:decoration-2',
}

/** The classes that a button and a link dressed as a button share. */
export function buttonClass(tone: ButtonTone): string {
  return `${shared} ${tones[tone]}`
}
