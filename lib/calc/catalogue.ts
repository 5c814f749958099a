import type { CalcEntry } from './entry'
import { acidityEntries } from './acidity/entries'
import { analysisEntries } from './analysis/entries'
import { armsEntries } from './arms/entries'
import { colourEntries } from './colour/entries'
import { comparisonEntries } from './comparison/entries'
import { costEntries } from './cost/entries'
import { distributionsEntries } from './distributions/entries'
import { doseResponseEntries } from './dose-response/entries'
import { dosingEntries } from './dosing/entries'
import { fermentationEntries } from './fermentation/entries'
import { flourEntries } from './flour/entries'
import { formulaEntries } from './formula/entries'
import { labelEntries } from './label/entries'
import { loafEntries } from './loaf/entries'
import { mixedModelEntries } from './mixed-model/entries'
import { netWeightEntries } from './net-weight/entries'
import { panelEntries } from './panel/entries'
import { planEntries } from './plan/entries'
import { prefermentEntries } from './preferment/entries'
import { squaresEntries } from './squares/entries'
import { stalingEntries } from './staling/entries'
import { temperatureEntries } from './temperature/entries'
import { tinEntries } from './tin/entries'
import { weighingEntries } from './weighing/entries'

/** Every public calculation once. A calculation that is not here is not public. */
export const catalogue = [
  ...formulaEntries,
  ...prefermentEntries,
  ...flourEntries,
  ...tinEntries,
  ...armsEntries,
  ...dosingEntries,
  ...weighingEntries,
  ...temperatureEntries,
  ...fermentationEntries,
  ...acidityEntries,
  ...loafEntries,
  ...stalingEntries,
  ...netWeightEntries,
  ...labelEntries,
  ...costEntries,
  ...planEntries,
  ...squaresEntries,
  ...analysisEntries,
  ...comparisonEntries,
  ...doseResponseEntries,
  ...mixedModelEntries,
  ...distributionsEntries,
  ...panelEntries,
  ...colourEntries,
] as const

export type CalcId = (typeof catalogue)[number]['id']

/** The entry of that id, or undefined: an id comes from an address or a command line. */
export function findEntry(id: string): CalcEntry | undefined {
  const entries: readonly CalcEntry[] = catalogue
  return entries.find((entry) => entry.id === id)
}
