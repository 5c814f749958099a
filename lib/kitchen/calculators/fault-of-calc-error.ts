import 'server-only'
import type { CalcError, CalcErrorFacts } from '../../calc/error'
import type { ProblemCode } from '../messages'
import type { Problem } from '../refusal'

/** What is wrong at one field; `reason` is the calculation's own word for it, where it has one. */
export type Fault = Problem & { reason?: string }

/** A calculation's refusal as a fault at a field of its question; `lines[2].massG` becomes the path `lines.2.massG`. */
export function faultOfCalcError({ code, facts }: CalcError): Fault {
  const { value, min, max, reason } = facts
  const known = Object.fromEntries(
    Object.entries({ value, min, max }).flatMap(([name, fact]) => (fact === undefined ? [] : [[name, fact]])),
  )
  return { path: facts.field.replace(/\[(\w+)\]/g, '.$1'), code: problemCode(code, facts), facts: known, reason }
}

function problemCode(code: CalcError['code'], facts: CalcErrorFacts): ProblemCode {
  switch (code) {
    case 'not-finite':
      return 'not-a-number'
    case 'out-of-range':
      return rangeCode(facts)
    case 'empty':
      return facts.min === undefined ? 'missing' : 'too-few'
    case 'wrong-shape':
      return shapeCode(facts)
    case 'duplicate':
      return 'there-twice'
    case 'not-possible':
      return 'cannot-be-worked-out'
    case 'no-convergence':
      return 'did-not-settle'
    default:
      return code satisfies never
  }
}

/** The facts do not say whether a bound belongs to the range; a value that lies on it and was refused does. */
function rangeCode({ value, min, max, reason }: CalcErrorFacts): ProblemCode {
  const at = Number(value)
  if (reason === 'not-whole') return 'not-whole'
  if (min !== undefined && at <= min) return at < min ? 'below-range' : 'not-above'
  if (max !== undefined && at >= max) return at > max ? 'above-range' : 'not-below'
  return 'outside-range'
}

function shapeCode({ value, min, max }: CalcErrorFacts): ProblemCode {
  if (min !== undefined && max !== undefined) {
    if (min < max) return 'not-between'
    return value === undefined ? 'wrong-form' : 'list-length'
  }
  if (min !== undefined) return 'too-few'
  return max === undefined ? 'wrong-form' : 'too-many'
}
