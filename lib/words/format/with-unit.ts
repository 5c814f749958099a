/**
 * A formatted number and its unit as one text, joined by a no-break space (U+00A0).
 * Source: SI Brochure, 9th ed., 5.4.3: a space between number and unit, before % as well.
 * @example withUnit('8.9', '%') // '8.9\u00a0%'
 */
export function withUnit(number: string, unit: string): string {
  return `${number}\u00a0${unit}`
}
