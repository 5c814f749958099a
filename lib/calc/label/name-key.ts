/**
 * What two spellings of one ingredient have in common: case, and white space around and between words, do not count.
 * @param name as somebody wrote it
 * Source: common practice, no source.
 * @example nameKey(' Wheat  Flour') // 'wheat flour'
 */
export function nameKey(name: string): string {
  return name.normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase()
}
