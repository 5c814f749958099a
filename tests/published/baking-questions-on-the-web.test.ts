import { blendFallingNumber } from '@/lib/calc/flour/blend-falling-number'
import { CalcError } from '@/lib/calc/error'
import { publishedCheck } from '@/tests/support/published-check'

/** The reason of the refusal, or the answer in s. */
function answer(fallingNumberS: number): string {
  try {
    return String(blendFallingNumber({ parts: [{ massG: 1, fallingNumberS }] }).fallingNumberS)
  } catch (error) {
    if (error instanceof CalcError) return error.facts.reason ?? error.code
    throw error
  }
}
publishedCheck({
  id: 'Q-3.3',
  of: ['flour/blend-falling-number'],
  what: 'a reading of 59 s: 60 s of stirring are part of a falling number',
  source: 'Baking questions and answers on the web',
  status: 'published',
  expected: 'falling-number-below-60',
  got: () => answer(59),
})
