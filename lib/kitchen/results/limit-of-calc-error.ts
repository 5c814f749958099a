import 'server-only'
import { CalcError } from '../../calc/error'
import type { LimitCode } from './codes'

const byReason: Record<string, LimitCode> = {
  'one-arm': 'no-arms-left',
  'many-arms': 'too-many-doughs',
  'too-large': 'too-many-doughs',
  'zero-variance': 'zero-variance',
  'missing-cell': 'levels-not-balanced',
  'repeated-cell': 'levels-not-balanced',
}

/**
 * The sentence that a calculation's refusal stands for: what cannot be concluded. Anything but a CalcError is a bug
 * and goes on.
 */
export function limitOfCalcError(error: unknown): LimitCode {
  if (!(error instanceof CalcError)) throw error
  return byReason[error.facts.reason ?? ''] ?? 'not-computable'
}
