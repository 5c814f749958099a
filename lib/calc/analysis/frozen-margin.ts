import { mustBeWithin } from '../checks'
import type { GoodDirection } from './gain-verdict'

export type DeclaredMargin =
  | { kind: 'units'; value: number }
  | { kind: 'pct-of-control'; pct: number; controlLevel: number }
  | { kind: 'pct-on-log-scale'; pct: number; goodDirection: GoodDirection }

/**
 * The worthwhile difference or margin on the scale that decides, fixed once at approval.
 * `units` stay as they are; `pct-of-control` becomes units of the control's expected level; `pct-on-log-scale` becomes
 * ln(1 + m/100) where larger is better, −ln(1 − m/100) where smaller is, used with the same width on the other side.
 * @param margin value > 0; pct over 0 and below 100; controlLevel > 0, in the measure's unit
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: the project's declared rule.
 * @example frozenMargin({ kind: 'pct-of-control', pct: 5, controlLevel: 2500 }) // 125
 */
export function frozenMargin(margin: DeclaredMargin): number {
  switch (margin.kind) {
    case 'units':
      return mustBeWithin('value', margin.value, { over: 0 })
    case 'pct-of-control':
      return shareOf(margin.pct) * mustBeWithin('controlLevel', margin.controlLevel, { over: 0 })
    case 'pct-on-log-scale':
      return margin.goodDirection === 'larger' ? Math.log1p(shareOf(margin.pct)) : -Math.log1p(-shareOf(margin.pct))
    default:
      return margin satisfies never
  }
}

function shareOf(pct: number): number {
  return mustBeWithin('pct', pct, { over: 0, under: 100 }) / 100
}
