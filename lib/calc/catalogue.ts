import type { CalcEntry } from './entry'
import { analysisEntries } from './analysis/entries'
import { armsEntries } from './arms/entries'
import { colourEntries } from './colour/entries'
import { comparisonEntries } from './comparison/entries'
import { costEntries } from './cost/entries'
import { distributionsEntries } from './distributions/entries'
import { jointDistributionsEntries } from './distributions/joint-entries'
import { doseResponseEntries } from './dose-response/entries'
import { dosingEntries } from './dosing/entries'
import { formulaEntries } from './formula/entries'
import { loafEntries } from './loaf/entries'
import { mixedModelEntries } from './mixed-model/entries'
import { panelEntries } from './panel/entries'
import { planEntries } from './plan/entries'
import { powerEntries } from './plan/power-entries'
import { squaresEntries } from './squares/entries'
import { temperatureEntries } from './temperature/entries'
import { weighingEntries } from './weighing/entries'

/** Every public calculation once. A calculation that is not here is not public. */
export const catalogue = [
  ...formulaEntries,
  ...armsEntries,
  ...dosingEntries,
  ...weighingEntries,
  ...temperatureEntries,
  ...loafEntries,
  ...costEntries,
  ...planEntries,
  ...powerEntries,
  ...squaresEntries,
  ...analysisEntries,
  ...comparisonEntries,
  ...doseResponseEntries,
  ...mixedModelEntries,
  ...distributionsEntries,
  ...jointDistributionsEntries,
  ...panelEntries,
  ...colourEntries,
] as const

export type CalcId = (typeof catalogue)[number]['id']

/** The entry of that id, or undefined: an id comes from an address or a command line. */
export function findEntry(id: string): CalcEntry | undefined {
  const entries: readonly CalcEntry[] = catalogue
  return entries.find((entry) => entry.id === id)
}
