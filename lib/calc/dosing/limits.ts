import { LIMIT_ROWS, type LimitedSubstance, type LimitRegion, type LimitRow } from './limit-rows'

/** What has to be read beside any limit. */
export const LIMIT_CAUTIONS = [
  'ask-competent-authority',
  'never-compared-with-the-text',
  'some-from-memory',
  'fermentation-brings-some',
  'nothing-stored-is-no-permission',
] as const
export type LimitCaution = (typeof LIMIT_CAUTIONS)[number]

/**
 * Stored legal limits of a substance, in one region or in all: figure, form, food, basis, source and when it was compared
 * with the text in force. A look-up and no advice: nothing found says nothing about what is allowed.
 * @param region null for all; @param substance one of those that are stored, also where several share a figure
 * @returns rows in stored order; 'ask-competent-authority' is always among the cautions
 * Source: each row has its own.
 */
export function limitsOf(q: { region: LimitRegion | null; substance: LimitedSubstance }): {
  rows: LimitRow[]
  cautions: LimitCaution[]
} {
  const rows = LIMIT_ROWS.filter(
    (row) => row.substances.includes(q.substance) && (q.region === null || row.region === q.region),
  )
  const cautions: LimitCaution[] = ['ask-competent-authority']
  if (rows.some((row) => row.checkedOn === null)) cautions.push('never-compared-with-the-text')
  if (rows.some((row) => row.origin === 'from-memory')) cautions.push('some-from-memory')
  if (rows.some(({ notes }) => notes.includes('may-come-from-fermentation'))) cautions.push('fermentation-brings-some')
  if (rows.length === 0) cautions.push('nothing-stored-is-no-permission')
  return { rows, cautions }
}
