import type { LineToWeigh } from '@/lib/kitchen/trials/lines-to-weigh'
import { sayName } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

/** The name of a line to weigh: a premix is called one. */
export function lineName(
  { ingredient, isPremix }: LineToWeigh,
  { premix }: Words['mixing'],
  language: Language,
): string {
  return isPremix ? sayName(premix.line, language, { ingredient }) : ingredient
}
