import 'server-only'
import type { z } from 'zod'
import type { ProblemCode } from './messages'
import type { Problem } from './refusal'

/** Turns what zod found wrong into our own codes, one for each field, all at once. */
export function problemsOfInput(error: z.ZodError): Problem[] {
  const found = new Map<string, Problem>()
  for (const issue of error.issues) {
    for (const problem of problemsOfIssue(issue)) if (!found.has(problem.path)) found.set(problem.path, problem)
  }
  return [...found.values()]
}

function problemsOfIssue(issue: z.core.$ZodIssue): Problem[] {
  const path = issue.path.map(String).join('.')
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({ path: path ? `${path}.${key}` : key, code: 'unknown-field', facts: {} }))
    case 'too_small':
      return [
        {
          path,
          code: sizeCode(issue.origin, 'small', issue.inclusive ?? true, Number(issue.minimum)),
          facts: { min: Number(issue.minimum) },
        },
      ]
    case 'too_big':
      return [
        {
          path,
          code: sizeCode(issue.origin, 'big', issue.inclusive ?? true, Number(issue.maximum)),
          facts: { max: Number(issue.maximum) },
        },
      ]
    case 'invalid_type':
      return [{ path, code: typeCode(issue), facts: {} }]
    case 'invalid_format':
      return [{ path, code: issue.format === 'email' ? 'not-email' : 'wrong-form', facts: {} }]
    case 'invalid_value':
      return [
        {
          path,
          ...(issue.input === undefined
            ? { code: 'missing', facts: {} }
            : { code: 'wrong-choice', facts: { choices: issue.values.map(String).join(', ') } }),
        },
      ]
    case 'custom':
      return [{ path, code: (issue.params?.code as ProblemCode | undefined) ?? 'wrong-form', facts: {} }]
    default:
      return [{ path, code: 'wrong-form', facts: {} }]
  }
}

function sizeCode(origin: string, side: 'small' | 'big', inclusive: boolean, bound: number): ProblemCode {
  if (origin === 'string') return side === 'big' ? 'too-long' : bound <= 1 ? 'missing' : 'too-short'
  if (origin === 'array' || origin === 'set') return side === 'big' ? 'too-many' : 'too-few'
  if (side === 'small') return inclusive ? 'too-small' : 'not-above'
  return inclusive ? 'too-big' : 'not-below'
}

function typeCode(issue: z.core.$ZodIssueInvalidType): ProblemCode {
  if (issue.input === undefined || issue.input === null || issue.input === '') return 'missing'
  if (issue.expected === 'int') return 'not-whole'
  return issue.expected === 'number' ? 'not-a-number' : 'wrong-form'
}
