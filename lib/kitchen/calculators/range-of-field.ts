import 'server-only'
import type { CalcEntry } from '../../calc/entry'
import { CalcError, type CalcErrorFacts } from '../../calc/error'

export type FieldRange = { min?: number; max?: number; isMinIn: boolean; isMaxIn: boolean }
type Path = readonly (string | number)[]

/** Beyond any bound that a field has. */
const FAR = 1e300
/** An end up to here is tried itself; a larger one may be a count that takes long to work out, and is taken to belong. */
const QUICK = 1000

/**
 * The range of a number of a calculation's question, found by asking it: the example is put with a value far outside,
 * and what it refuses says the bound. The guards of the calculation stay the only place where a bound is written.
 * @param path of a number that is in the example
 * @returns no end where the calculation refuses none by itself, or by another field first
 */
export function rangeOfField(entry: CalcEntry, path: Path): FieldRange {
  const [low, high] = [-FAR, FAR].map((value) => refusalAt(entry, path, value))
  const [min, max] = [low?.min, high?.max]
  const belongs = (end: number | undefined) =>
    end === undefined || Math.abs(end) > QUICK || refusalAt(entry, path, end) === undefined
  return {
    ...(min === undefined ? {} : { min }),
    ...(max === undefined ? {} : { max }),
    isMinIn: belongs(min),
    isMaxIn: belongs(max),
  }
}

/** The facts when the calculation refuses this value as out of the range of this field. */
function refusalAt(entry: CalcEntry, path: Path, value: number): CalcErrorFacts | undefined {
  const read = entry.input.safeParse(replaced(entry.example, path, value))
  if (!read.success) return undefined
  try {
    entry.run(read.data)
  } catch (error) {
    const field = path.map((step, i) => (typeof step === 'number' ? `[${step}]` : i === 0 ? step : `.${step}`)).join('')
    if (error instanceof CalcError && error.code === 'out-of-range' && error.facts.field === field) return error.facts
    if (!(error instanceof CalcError)) throw error
  }
  return undefined
}

function replaced(whole: unknown, [step, ...rest]: Path, value: number): unknown {
  if (step === undefined) return value
  if (Array.isArray(whole)) return whole.map((each: unknown, i) => (i === step ? replaced(each, rest, value) : each))
  const fields = Object.entries(whole ?? {})
  return Object.fromEntries(
    fields.map(([name, each]: [string, unknown]) => [name, name === step ? replaced(each, rest, value) : each]),
  )
}
