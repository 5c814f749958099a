import { detailsOfStep, stepTempC, type StepDetails, type StepKind } from '../../kitchen/steps/step-kinds.input'

/** What is typed of a step, as it was typed. */
export type TypedStep = {
  setting?: string
  chamberTempC?: string
  place?: string
  setTempC?: string
  readTempC?: string
  steam?: boolean | null
  beside?: string
}

export type FieldFault = 'no-number' | 'outside'

const temperatures = ['chamberTempC', 'setTempC', 'readTempC'] as const

/**
 * What was typed of a step, read: a temperature with a comma or a point, in the bakery's unit.
 * @param toCelsius of a number in the bakery's unit
 */
export function readTyped(
  step: StepKind,
  typed: TypedStep,
  toCelsius: (value: number) => number,
): { details: Partial<StepDetails>; faults: Partial<Record<keyof TypedStep, FieldFault>> } {
  const details: Partial<StepDetails> = {}
  const faults: Partial<Record<keyof TypedStep, FieldFault>> = {}
  const fields = detailsOfStep[step] ?? []
  for (const name of temperatures) {
    const text = (typed[name] ?? '').trim().replace(',', '.').replace('\u2212', '-')
    if (!fields.includes(name) || text === '') continue
    const value = toCelsius(Number(text))
    if (!/^-?\d+(\.\d+)?$/.test(text)) faults[name] = 'no-number'
    else if (value < stepTempC.least || value > stepTempC.most) faults[name] = 'outside'
    else details[name] = value
  }
  for (const name of ['setting', 'place', 'beside'] as const) {
    const text = (typed[name] ?? '').trim()
    if (fields.includes(name) && text !== '') details[name] = text
  }
  if (fields.includes('steam') && typeof typed.steam === 'boolean') details.steam = typed.steam
  return { details, faults }
}
