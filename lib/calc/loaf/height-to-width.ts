import { mustBeWithin } from '../checks'

/**
 * Form ratio of a slice or hearth loaf: height over width.
 * @param heightMm, widthMm greatest, > 0
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: definition; common practice, no source.
 */
export function heightToWidth(q: { heightMm: number; widthMm: number }): number {
  return mustBeWithin('heightMm', q.heightMm, { over: 0 }) / mustBeWithin('widthMm', q.widthMm, { over: 0 })
}
