import 'server-only'
import { CalcError } from '../../calc/error'
import type { LimitCode } from './codes'

const byReason: Record<string, LimitCode> = {
  'one-batch-in-arm': 'one-batch-in-arm',
  'one-arm': 'no-arms-left',
  'arm-without-rows': 'arm-without-batches',
  'arm-confounded-with-block': 'confounded-with-days',
  'no-residual-df': 'no-degrees',
  'zero-variance': 'zero-variance',
  'too-large': 'too-many-doughs',
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
