/** Text that PostgreSQL and JSON can both hold: no NUL, no half of a surrogate pair. */
export const isKeepable = (text: string) => !text.includes('\u0000') && text.isWellFormed()
/** What no reader sees, and what turns the text around it: only joiners and emoji styles have honest uses in a line. */
const isUnseen = /\p{Cc}|[\u2028\u2029]|[^\P{Default_Ignorable_Code_Point}\u200c\u200d\ufe0e\ufe0f]/u
const isVisible = /[^\p{Z}\p{C}\p{M}\p{Default_Ignorable_Code_Point}\u2800]/u

/** Whether there is something in a text that can be seen. */
export function hasVisible(text: string): boolean {
  return isVisible.test(text)
}

/** Whether all of a line can be seen, and something is there. */
export function isSeenLine(text: string): boolean {
  return hasVisible(text) && !isUnseen.test(text)
}
