import { readBadge } from '../../kitchen/badge-text.input'
import { readSlip } from '../talk/open-slip'

/** What a tablet does about a code: open a dough or a piece of it, or say why not. */
export type CodeSays =
  | { says: 'dough'; batchId: string; piece: number | null }
  | { says: 'not-here' | 'elsewhere' | 'several' | 'empty' | 'badge' }
  | { says: 'same-code' | 'no-slip'; text: string }

type Doughs = readonly { id: string; code: string }[]

/** Longer than this nobody reads what a code said. */
const mostShown = 40
/** An address as the slips have it, by whatever name the install is reached. */
const addressOfSlip = /^(https?:\/\/[^/?#\s]+)\/station(#\S*)$/i

/**
 * What a code says that was scanned or typed: a slip's address opens its piece, a dough's code that dough.
 * @param doughs those that are on the tablet
 * @param origin where this page is from
 */
export function whatCodeSays(text: string, doughs: Doughs, origin: string): CodeSays {
  const read = text.trim()
  if (read === '') return { says: 'empty' }
  // Shown, it could be read off the screen.
  if (readBadge(read) !== null) return { says: 'badge' }
  const [, from, hash] = addressOfSlip.exec(read) ?? []
  const slip = hash === undefined ? null : readSlip(hash.toLowerCase())
  if (slip) {
    // A slip that was printed before the install got another name is still of its dough.
    if (doughs.some(({ id }) => id === slip.batchId)) return { says: 'dough', ...slip }
    return { says: from?.toLowerCase() === origin.toLowerCase() ? 'not-here' : 'elsewhere' }
  }
  const [only, ...more] = doughs.filter(({ code }) => code === read)
  if (only && more.length === 0) return { says: 'dough', batchId: only.id, piece: null }
  return { says: only ? 'same-code' : 'no-slip', text: shownText(read) }
}

/** What the codes of one picture say together: a single one that opens something does so, two are nobody's guess. */
export function whatCodesSay(texts: readonly string[], doughs: Doughs, origin: string): CodeSays | null {
  const all = [...new Set(texts)].map((text) => whatCodeSays(text, doughs, origin))
  const opening = all.filter(({ says }) => says === 'dough')
  if (opening.length > 1) return { says: 'several' }
  return opening[0] ?? all[0] ?? null
}

/** Whether it is a slip of whichever piece. */
export function isSlip(text: string): boolean {
  const hash = addressOfSlip.exec(text.trim())?.[2]
  return hash !== undefined && readSlip(hash.toLowerCase()) !== null
}

/** A code's text as it can be shown: one line, without signs that nobody sees, and cut where it is long. */
export function shownText(text: string): string {
  const signs = Array.from(text.replace(/[\p{C}\s]+/gu, ' ').trim())
  return signs.length > mostShown ? `${signs.slice(0, mostShown).join('')}…` : signs.join('')
}
