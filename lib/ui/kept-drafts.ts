/** What somebody has typed into a form and not yet sent; without passwords. */
export type KeptDraft = {
  /** When it was last typed at. */
  at: string
  /** The form's id, so that sending it again counts once. */
  formId: string | null
  /** The form as its page gave it, in one text: by it a page that has changed since is told. */
  given: string
  values: Record<string, string>
}

const prefix = 'evendough.typed.'
/** Older ones are thrown away unseen. */
const keptForMs = 30 * 24 * 60 * 60_000

/** Who signed out on this page: nothing that a form there still wants to write for them is kept. */
const signedOut = new WeakMap<Storage, Set<string>>()

/** Name of a form's place in the browser's store: whose it is, on which page, which form there. */
export function draftKey(personId: string, path: string, idPrefix: string): string {
  return `${startOf(personId)}${path}#${idPrefix}`
}

/** The draft that is kept under a key, or null: where there is none, it is too old, cannot be read, or the browser keeps nothing. */
export function readDraft(store: Storage, key: string, now: Date): KeptDraft | null {
  try {
    const kept: unknown = JSON.parse(store.getItem(key) ?? 'null')
    return isDraft(kept) && now.getTime() - Date.parse(kept.at) < keptForMs ? kept : null
  } catch {
    return null
  }
}

/** Keeps a draft. A browser that keeps nothing, or has no room, loses it on the next page as it would without. */
export function keepDraft(store: Storage, key: string, draft: KeptDraft): void {
  if ([...(signedOut.get(store) ?? [])].some((personId) => key.startsWith(startOf(personId)))) return
  try {
    store.setItem(key, JSON.stringify(draft))
  } catch {
    // The form itself still holds what was typed.
  }
}

export function dropDraft(store: Storage, key: string): void {
  try {
    store.removeItem(key)
  } catch {
    // Nothing is kept where nothing can be removed.
  }
}

/** Drops every draft of one person who signs out at this browser, and keeps none of theirs from this page any more. */
export function dropDraftsOf(store: Storage, personId: string): void {
  signedOut.set(store, (signedOut.get(store) ?? new Set()).add(personId))
  try {
    const own = Array.from({ length: store.length }, (_, i) => store.key(i)).filter((key) =>
      key?.startsWith(startOf(personId)),
    )
    for (const key of own) if (key !== null) store.removeItem(key)
  } catch {
    // As above.
  }
}

function startOf(personId: string): string {
  return `${prefix}${personId}.`
}

function isDraft(kept: unknown): kept is KeptDraft {
  if (typeof kept !== 'object' || kept === null) return false
  const { at, formId, given, values } = kept as Partial<Record<keyof KeptDraft, unknown>>
  return (
    typeof at === 'string' &&
    (formId === null || typeof formId === 'string') &&
    typeof given === 'string' &&
    typeof values === 'object' &&
    values !== null &&
    Object.values(values).every((value) => typeof value === 'string')
  )
}
