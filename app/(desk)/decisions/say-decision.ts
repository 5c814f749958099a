import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

type Decided = { arm: string | null; versionNumber: number | null; formula: string; trialNumber: number }

/** What was decided, in a few words: 'Wholemeal tin: buttermilk, 8 % into version 3'. */
export function sayDecision(
  { arm, versionNumber, formula, trialNumber }: Decided,
  text: Words['decisions'],
  language: Language,
): string {
  return arm !== null && versionNumber !== null
    ? say(text.change, language, { formula, arm, number: versionNumber })
    : say(text.keep, language, { formula, trial: trialNumber })
}
