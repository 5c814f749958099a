import { z } from 'zod'
import { mustBeGiven } from '../checks'
import { calcEntry } from '../entry'
import { frozenMargin } from './frozen-margin'
import { gainVerdict } from './gain-verdict'
import { noWorseVerdict } from './no-worse-verdict'
import { sameAsVerdict } from './same-as-verdict'

const optionalNumber = z.optional(z.number())
const goodDirection = z.enum(['larger', 'smaller'])
const interval = { estimate: z.number(), low: z.number(), high: z.number() }

export const verdictEntries = [
  calcEntry({
    id: 'analysis/frozen-margin',
    input: z.strictObject({
      kind: z.enum(['units', 'pct-of-control', 'pct-on-log-scale']),
      value: optionalNumber,
      pct: optionalNumber,
      controlLevel: optionalNumber,
      goodDirection: z.optional(goodDirection),
    }),
    output: z.strictObject({ margin: z.number() }),
    example: { kind: 'pct-of-control', pct: 5, controlLevel: 2500 },
    source: 'our own declared rule; logarithms of ratios are common practice, no source',
    run: ({ kind, ...q }) => {
      if (kind === 'units') return { margin: frozenMargin({ kind, value: mustBeGiven('value', q.value) }) }
      const pct = mustBeGiven('pct', q.pct)
      if (kind === 'pct-of-control')
        return { margin: frozenMargin({ kind, pct, controlLevel: mustBeGiven('controlLevel', q.controlLevel) }) }
      return { margin: frozenMargin({ kind, pct, goodDirection: mustBeGiven('goodDirection', q.goodDirection) }) }
    },
  }),
  calcEntry({
    id: 'analysis/gain-verdict',
    input: z.strictObject({ ...interval, worthwhile: z.number(), goodDirection }),
    output: z.strictObject({
      verdict: z.enum(['better', 'worse', 'no-worthwhile-difference', 'undecided']),
      clearly: z.boolean(),
    }),
    example: { estimate: 140, low: 35, high: 245, worthwhile: 100, goodDirection: 'larger' },
    source: 'our own declared rule; an interval against a margin as in ICH E9, 1998, section 3.3',
    run: (q) => mustBeGiven('goodDirection', gainVerdict(q)),
  }),
  calcEntry({
    id: 'analysis/no-worse-verdict',
    input: z.strictObject({ ...interval, margin: z.number(), goodDirection }),
    output: z.strictObject({ verdict: z.enum(['no-worse', 'worse', 'undecided']) }),
    example: { estimate: -20, low: -75, high: 35, margin: 100, goodDirection: 'larger' },
    source: 'ICH E9, 1998, section 3.3.2; CPMP/EWP/482/99, 2000',
    run: (q) => ({ verdict: noWorseVerdict(q) }),
  }),
  calcEntry({
    id: 'analysis/same-as-verdict',
    input: z.strictObject({ ...interval, margin: z.number() }),
    output: z.strictObject({ verdict: z.enum(['same', 'different', 'undecided']) }),
    example: { estimate: 12, low: -40, high: 64, margin: 100 },
    source: 'D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15, 1987',
    run: (q) => ({ verdict: sameAsVerdict(q) }),
  }),
] as const
