/**
 * Before the digits of a badge's secret. Its letters and the digits lie on the same keys of most keyboards, so that a hand
 * scanner which is set to another one than the tablet reads a badge all the same.
 */
const prefix = 'EVENDOUGH'
const ofBadge = new RegExp(`^${prefix}(\\d{39})$`)

/** What stands in the code of a badge. */
export function badgeText(secret: string): string {
  return `${prefix}${secret}`
}

/** The secret of a badge out of what its code said; null for what is no badge. */
export function readBadge(text: string): string | null {
  return ofBadge.exec(text.trim().toUpperCase())?.[1] ?? null
}
