import 'server-only'
import type { Gap } from '@/lib/kitchen/readings/gaps-of-batch'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { amountInUnits } from './shift/[batchId]/amount-in-units'
import type { BakeryShown } from './shift/[batchId]/batch-view'

/** What is still so with a batch, in one line: on its page, where a trial is closed, and beside the result. */
export function sayGap(gap: Gap, bakery: BakeryShown, { gaps: text, readings }: Words['shift'], language: Language): string {
  switch (gap.kind) {
    case 'fewer-pieces':
      return say(text['fewer-pieces'], language, { have: gap.have, of: gap.of })
    case 'missing':
      return say(text.missing, language, { name: gap.measure.name, have: gap.have, of: gap.of })
    case 'unsettled':
      return say(text.unsettled, language, { name: gap.measure.name, place: placeOf(gap) })
    case 'outside': {
      const { name, unit, digits } = gap.measure
      const shown = (value: number) => amountInUnits(value, unit, digits, bakery)
      return say(text.outside, language, { name, place: placeOf(gap), value: shown(gap.value), least: shown(gap.least), most: shown(gap.most) })
    }
    case 'to-settle':
      return say(text['to-settle'], language, { count: gap.count })
    default:
      return gap satisfies never
  }

  function placeOf({ piece, factorLevel }: { piece: number | null; factorLevel: string | null }): string {
    if (piece === null) return readings.batch
    return factorLevel === null ? say(readings.piece, language, { piece }) : say(readings.pieceLevel, language, { piece, level: factorLevel })
  }
}
