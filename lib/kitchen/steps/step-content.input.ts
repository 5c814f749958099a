import { textOfStep } from '../../documents/step/text-of-step.input'
import type { StepEntry } from './log-step.input'

/** What a step's hash is of: everything that was entered but its id. */
export function stepContentText(entry: StepEntry): string {
  const { agoS, batchId, isDone, step, takenAt } = entry
  return textOfStep({
    agoS,
    batch: batchId,
    beside: entry.beside ?? null,
    chamberTempC: entry.chamberTempC ?? null,
    clockAheadS: entry.clockAheadS ?? null,
    isDone,
    place: entry.place ?? null,
    readTempC: entry.readTempC ?? null,
    reason: entry.reason ?? null,
    setTempC: entry.setTempC ?? null,
    setting: entry.setting ?? null,
    steam: entry.steam ?? null,
    step,
    supersedes: entry.supersedesId ?? null,
    takenAt,
  })
}
