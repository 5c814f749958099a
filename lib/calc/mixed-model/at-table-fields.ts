import { CalcError, type CalcErrorFacts } from '../error'

/** What the model's own refusals are in words of the table: the field, and the reason where the table knows a plainer one. */
const PLAINER: readonly (readonly [RegExp, (facts: CalcErrorFacts) => Partial<CalcErrorFacts>])[] = [
  [
    /^(rows\[\d+\])\.(?:factors|covariates)\.(\w+)$/,
    ({ field }) => ({ field: field.replace(/\.(factors|covariates)\./, '.') }),
  ],
  [/^levelOrder\.block$/, () => ({ field: 'blockOrder' })],
  [/^levelOrder\.level$/, () => ({ field: 'levelOrder' })],
  [/^(fixed\.)?block$/, () => ({ field: 'blocks' })],
  [/^((fixed\.)?level|arm-by-level)$/, () => ({ field: 'levels' })],
  [/^covariate$/, () => ({ field: 'covariates' })],
  [
    /^arm$/,
    ({ value, reason }) =>
      reason === 'confounded' && value === 'block'
        ? { field: 'blocks', reason: 'arm-confounded-with-block' }
        : { field: 'arms' },
  ],
  [
    /^random\.batch$/,
    ({ value, reason }) => ({
      field: 'rows',
      reason: reason === 'one-piece-each' ? 'one-loaf-per-batch' : batchReason(value),
    }),
  ],
  [
    /^random\.block$/,
    ({ value, reason }) => ({
      field: 'blocks',
      reason: value === 'arm' ? 'arm-confounded-with-block' : value === 'batch' ? 'one-batch-per-block' : reason,
    }),
  ],
  [/^correlation\.length$/, () => ({ field: 'arms', reason: 'many-arms' })],
  [/^df\b/, () => ({ field: 'rows', min: undefined, max: undefined, reason: 'no-residual-df' })],
  [
    /^(fit|random|fixed|differences|correlation|names)\b/,
    ({ reason }) => ({ field: reason === 'one-arm' ? 'arms' : 'rows' }),
  ],
]

function batchReason(value: CalcErrorFacts['value']): string {
  if (value === 'arm') return 'one-batch-in-arm'
  return value === 'block' ? 'one-batch-per-block' : 'confounded'
}

/**
 * Runs a fit whose rows and model were made from a plain table (tableModel), so that what it refuses names a column or
 * a choice of the table, which is all that whoever asked has seen.
 * @throws CalcError of the fit, its field one of the table's own
 */
export function atTableFields<Answer>(run: () => Answer): Answer {
  try {
    return run()
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    const found = PLAINER.find(([pattern]) => pattern.test(error.facts.field))
    throw found ? new CalcError(error.code, { ...error.facts, ...found[1](error.facts) }) : error
  }
}
