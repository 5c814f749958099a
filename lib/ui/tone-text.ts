import type { Tone } from './tone-mark'

/** The text colour of each tone. */
export const toneText: Record<Tone, string> = { plain: 'text-ink', ok: 'text-ok', warn: 'text-warn', stop: 'text-stop' }
