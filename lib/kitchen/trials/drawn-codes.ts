import 'server-only'
import { threeDigitCodes } from '../../calc/plan/three-digit-codes'

/** All codes there are. */
export const codesInAll = 900

/** The first codes of a trial's draw; a longer draw begins with the same ones. @param count whole, 0 to 900 */
export function drawnCodes(seed: string, count: number): string[] {
  return threeDigitCodes({ seed: `${seed}/codes`, count })
}
