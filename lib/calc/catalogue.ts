import { analysisEntries } from './analysis/entries'
import { armsEntries } from './arms/entries'
import { costEntries } from './cost/entries'
import { distributionsEntries } from './distributions/entries'
import { dosingEntries } from './dosing/entries'
import type { CalcEntry } from './entry'
import { fermentationEntries } from './fermentation/entries'
import { formulaEntries } from './formula/entries'
import { labelEntries } from './label/entries'
import { loafEntries } from './loaf/entries'
import { netWeightEntries } from './net-weight/entries'
import { planEntries } from './plan/entries'
import { stalingEntries } from './staling/entries'
import { temperatureEntries } from './temperature/entries'
import { weighingEntries } from './weighing/entries'

/** Every public calculation once. A calculation that is not here is not public. */
export const catalogue = [
  ...formulaEntries,
  ...armsEntries,
  ...dosingEntries,
  ...weighingEntries,
  ...temperatureEntries,
  ...fermentationEntries,
  ...loafEntries,
  ...stalingEntries,
  ...netWeightEntries,
  ...labelEntries,
  ...costEntries,
  ...planEntries,
  ...analysisEntries,
  ...distributionsEntries,
] as const

export type CalcId = (typeof catalogue)[number]['id']

/** The entry of that id, or undefined: an id comes from an address or a command line. */
export function findEntry(id: string): CalcEntry | undefined {
  const entries: readonly CalcEntry[] = catalogue
  return entries.find((entry) => entry.id === id)
}
