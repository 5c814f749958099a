import type { StepOfFormat1 } from './step-of-format-1.input'

/** What was entered of a step, whatever the format of its text. */
export type StepContent = Omit<StepOfFormat1, 'format'>

/** A step in its one text: canonical JSON (RFC 8785), as `textOfReading`. */
export function textOfStep(content: StepContent): string {
  const { agoS, batch, beside, chamberTempC, clockAheadS, isDone, place, readTempC, reason } = content
  const { setTempC, setting, steam, step, supersedes, takenAt } = content
  // The keys stand in alphabetical order.
  return JSON.stringify({
    agoS,
    batch,
    beside,
    chamberTempC,
    clockAheadS,
    format: 1,
    isDone,
    place,
    readTempC,
    reason,
    setTempC,
    setting,
    steam,
    step,
    supersedes,
    takenAt,
  } satisfies StepOfFormat1)
}
