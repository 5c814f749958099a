import { findEntry, type CalcId } from '@/lib/calc/catalogue'
import { workOut } from '@/lib/kitchen/calculators/work-out'

/** A calculation's answer as the screen and the command line get it; its faults as an error. */
export function answerOf(id: CalcId, question: unknown): Readonly<Record<string, unknown>> {
  const entry = findEntry(id)
  if (!entry) throw new Error(`no calculation ${id}`)
  const worked = workOut(entry, question)
  if (!worked.ok) throw new Error(JSON.stringify(worked.faults))
  return worked.answer as Readonly<Record<string, unknown>>
}
