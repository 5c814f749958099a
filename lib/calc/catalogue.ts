import type { CalcEntry } from './entry'
import { fermentationEntries } from './fermentation/entries'
import { labelEntries } from './label/entries'
import { netWeightEntries } from './net-weight/entries'
import { stalingEntries } from './staling/entries'
import { weighingEntries } from './weighing/entries'

/** Every public calculation once. A calculation that is not here is not public. */
export const catalogue = [
  ...weighingEntries,
  ...fermentationEntries,
  ...stalingEntries,
  ...netWeightEntries,
  ...labelEntries,
] as const

export type CalcId = (typeof catalogue)[number]['id']

/** The entry of that id, or undefined: an id comes from an address or a command line. */
export function findEntry(id: string): CalcEntry | undefined {
  const entries: readonly CalcEntry[] = catalogue
  return entries.find((entry) => entry.id === id)
}
