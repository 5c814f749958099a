import 'server-only'
import type { UncountedCode } from './codes'
import type { DeclaredTrial, MeasuredBatch } from './trial-facts'

export type CountedBatch = {
  batch: MeasuredBatch
  /** One value for each loaf; of a factor within batches one for each level, in the order of the levels. */
  values: number[]
  mean: number
}

export type BatchCount = {
  counted: CountedBatch[]
  /** Those that were read and are of their arm, on whatever day. */
  measured: CountedBatch[]
  uncounted: { batch: MeasuredBatch; why: UncountedCode }[]
  /** Mixing days with a measured dough of the control and of another arm, in order. */
  daysCounted: number[]
  open: number
}

const openStates = new Set(['waiting', 'weighing', 'in_work', 'baked'])

/** Whether a batch is still to be baked or measured. */
function isOpen(batch: Pick<MeasuredBatch, 'state'>): boolean {
  return openStates.has(batch.state)
}

/**
 * Which batches the comparison rests on: those measured, with the primary measure read (at every level of a factor
 * within batches), that by what was weighed are of their arm, on a mixing day that has such a batch of the control and of another arm. The others are named with the
 * reason.
 */
export function countBatches(q: { factor: DeclaredTrial['factor']; batches: readonly MeasuredBatch[] }): BatchCount {
  const uncounted: BatchCount['uncounted'] = []
  const measured: CountedBatch[] = []
  for (const batch of q.batches) {
    const values = valuesOf(batch, q.factor)
    const why = whyNot(batch, values)
    if (why) uncounted.push({ batch, why })
    else measured.push({ batch, values: values as number[], mean: meanOf(values as number[]) })
  }
  const daysOf = (isIt: (arm: number) => boolean) =>
    new Set(measured.flatMap(({ batch }) => (isIt(batch.arm) ? batch.day : [])))
  const [controlDays, otherDays] = [daysOf((arm) => arm === 0), daysOf((arm) => arm > 0)]
  const counts = (day: number) => controlDays.has(day) && otherDays.has(day)
  for (const { batch } of measured)
    if (!counts(batch.day))
      uncounted.push({ batch, why: controlDays.has(batch.day) ? 'day-without-others' : 'day-without-control' })
  return {
    counted: measured.filter(({ batch }) => counts(batch.day)),
    measured,
    uncounted,
    daysCounted: [...controlDays].filter(counts).sort((a, b) => a - b),
    open: q.batches.filter(isOpen).length,
  }
}

/** Mean of one or more values, in two passes, so that a large common part costs no digits. */
export function meanOf(values: readonly number[]): number {
  const first = values.reduce((sum, value) => sum + value, 0) / values.length
  return first + values.reduce((sum, value) => sum + (value - first), 0) / values.length
}

/** Null stands for a level without a value. */
function valuesOf(batch: MeasuredBatch, factor: DeclaredTrial['factor']): (number | null)[] {
  const read = batch.pieces.flatMap(({ level, value }) => (value === null ? [] : [{ level, value }]))
  if (!factor) return read.map(({ value }) => value)
  return factor.levels.map((level) => {
    const values = read.filter((piece) => piece.level === level).map(({ value }) => value)
    return values.length === 0 ? null : meanOf(values)
  })
}

function whyNot(batch: MeasuredBatch, values: readonly (number | null)[]): UncountedCode | null {
  if (batch.state === 'lost') return 'lost'
  if (batch.state === 'set_aside') return 'set-aside'
  if (batch.state === 'not_baked') return 'not-baked'
  if (isOpen(batch)) return 'open'
  const missing = values.filter((value) => value === null).length
  if (missing === values.length) return 'no-reading'
  if (missing > 0) return 'level-missing'
  return batch.isOutOfItsArm ? 'out-of-its-arm' : null
}
