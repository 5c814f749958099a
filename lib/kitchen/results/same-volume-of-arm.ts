import 'server-only'
import { Decimal } from '../../calc/cost/decimal'
import { loafCostMinor } from '../../calc/cost/loaf-cost'
import { sameVolumePrice, type SameVolumePrice } from '../../calc/cost/same-volume-price'
import { loafMinorOf, type CostedLine, type Scaling } from '../stores/costed-lines'
import type { VolumeRatio } from './volume-ratios'

export type SameVolume =
  /** Of several ingredients no single price can be told; of loaves without a volume none; nor without the other prices. */
  | { outcome: 'several-doses' | 'not-measured' | 'not-costed' }
  | {
      outcome: 'worked-out'
      ingredient: string
      volume: VolumeRatio
      /** At the ratio, and at the ends of its interval; null where it has none. */
      at: SameVolumePrice
      low: SameVolumePrice | null
      high: SameVolumePrice | null
    }

type Priced = { day: string; currency: string | null; scaling: Scaling }

/**
 * At which price of the ingredient that an arm doses a litre of its bread costs as much as the control's, all other prices
 * as they are; its own may be missing. Null for the control, and for an arm that doses nothing.
 * @throws CalcError as batchCost, loafCostMinor and sameVolumePrice
 */
export function sameVolumeOfArm(
  arm: { lines: readonly CostedLine[]; dosed: readonly string[]; volume: VolumeRatio | null },
  control: { lines: readonly CostedLine[] },
  q: Priced,
): SameVolume | null {
  const [ingredientId, second] = arm.dosed
  if (ingredientId === undefined) return null
  if (second !== undefined) return { outcome: 'several-doses' }
  const { volume } = arm
  if (volume === null) return { outcome: 'not-measured' }
  const [ofControl, ofArm] = [loafWithout(control.lines, ingredientId, q), loafWithout(arm.lines, ingredientId, q)]
  // What was left out whole is in the control alone.
  const ingredient = [...arm.lines, ...control.lines].find((line) => line.ingredientId === ingredientId)?.name
  if (!ofControl || !ofArm || ingredient === undefined) return { outcome: 'not-costed' }
  const priceAt = (volumeRatio: number) =>
    sameVolumePrice({
      volumeRatio,
      controlRestMinor: ofControl.restMinor,
      armRestMinor: ofArm.restMinor,
      controlMassG: ofControl.massG,
      armMassG: ofArm.massG,
    })
  return {
    outcome: 'worked-out',
    ingredient,
    volume,
    at: priceAt(volume.ratio),
    low: volume.low === null ? null : priceAt(volume.low),
    high: volume.high === null ? null : priceAt(volume.high),
  }
}

/** The ingredients that doses are of, each once. */
export function dosedIn(doses: readonly { ingredientId: string }[]): string[] {
  return [...new Set(doses.map(({ ingredientId }) => ingredientId))].sort()
}

/** What a loaf costs without the ingredient, and how much of that is in it; null while another price is missing. */
function loafWithout(
  lines: readonly CostedLine[],
  ingredientId: string,
  { day, currency, scaling }: Priced,
): { restMinor: Decimal; massG: Decimal } | null {
  if (currency === null) return null
  const free = { validFrom: day, perKgMinor: '0', currency }
  const isIt = (line: CostedLine) => line.ingredientId === ingredientId
  const restMinor = loafMinorOf(
    lines.map((line) => (isIt(line) ? { ...line, price: free } : line)),
    day,
    currency,
    scaling,
  )
  if (restMinor === null) return null
  const massG = (those: readonly CostedLine[]) => those.reduce((sum, line) => sum.plus(line.massG), new Decimal(0))
  // At one minor unit a gram its cost is its mass.
  const inLoafG = loafCostMinor({
    totalMinor: massG(lines.filter(isIt)),
    doughMassG: lines.reduce((sum, line) => sum + line.massG, 0),
    ...scaling,
  })
  return { restMinor, massG: inLoafG }
}
