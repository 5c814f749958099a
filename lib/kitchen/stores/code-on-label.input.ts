import { isKeepable, isSeenLine } from '../seen-text.input'

/** So many characters a lot's code has at most. */
export const mostCode = 60

/** A code as the book holds it: without the blanks at its ends and in one form of Unicode. */
export function codeAsKept(typed: string): string {
  return typed.trim().normalize('NFC')
}

/** Why a typed or scanned text can be no lot's code; null for one that can. */
export function faultOfCode(typed: string): 'too-long' | 'unreadable' | null {
  if (!isKeepable(typed)) return 'unreadable'
  const code = codeAsKept(typed)
  if (code.length > mostCode) return 'too-long'
  return isSeenLine(code) ? null : 'unreadable'
}

/** An article's number as labels of goods say it first: in brackets or not, behind the sign of its kind of code or not. */
const articleFirst = /^(?:\][A-Za-z]\d)?\(?01\)?(\d{14})/

/**
 * The article that a label's code names first, as GS1 labels do by their part (01); null for a code without one. Two
 * ingredients are never one article.
 */
export function articleOf(code: string): string | null {
  return articleFirst.exec(codeAsKept(code))?.[1] ?? null
}

type Known = { ingredientId: string; code: string }

/**
 * The lot of another ingredient that a code points to which no lot of this one has: the very code is its own, or the
 * article is. Capitals do not matter.
 */
export function lotOfOther<Lot extends Known>(typed: string, ingredientId: string, lots: readonly Lot[]): Lot | null {
  const code = codeAsKept(typed).toLowerCase()
  const article = articleOf(code)
  const others = lots.filter((lot) => lot.ingredientId !== ingredientId)
  const own = lots.filter((lot) => lot.ingredientId === ingredientId)
  const isArticle = (lot: Known) => article !== null && articleOf(lot.code) === article
  return (
    others.find((lot) => codeAsKept(lot.code).toLowerCase() === code) ??
    (own.some(isArticle) ? null : others.find(isArticle)) ??
    null
  )
}
