import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { draftKey, dropDraft, dropDraftsOf, keepDraft, readDraft, type KeptDraft } from '@/lib/ui/kept-drafts'

/** A browser's store, as the standard describes it. */
function newStore(): Storage {
  const held = new Map<string, string>()
  return {
    get length() {
      return held.size
    },
    key: (i) => [...held.keys()][i] ?? null,
    getItem: (key) => held.get(key) ?? null,
    setItem: (key, value) => void held.set(key, value),
    removeItem: (key) => void held.delete(key),
    clear: () => held.clear(),
  }
}

const now = new Date('2031-03-04T05:00:00Z')
const draft: KeptDraft = {
  at: now.toISOString(),
  formId: null,
  given: '{}',
  values: { question: 'Does malt raise the loaf?' },
}
const key = draftKey('ida', '/trials/new', '')
const later = (days: number) => new Date(now.getTime() + days * 24 * 60 * 60_000)

describe('drafts in the browser', () => {
  it('come back as they were kept, whatever is typed', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.string()), fc.option(fc.uuid()), (values, formId) => {
        const store = newStore()
        keepDraft(store, key, { ...draft, values: { ...values }, formId })
        expect(readDraft(store, key, now)).toEqual({ ...draft, values: { ...values }, formId })
      }),
    )
  })

  it('are of one person, one page and one form', () => {
    const store = newStore()
    keepDraft(store, key, draft)
    for (const other of [
      draftKey('jon', '/trials/new', ''),
      draftKey('ida', '/trials', ''),
      draftKey('ida', '/trials/new', 'stop-'),
    ])
      expect(readDraft(store, other, now)).toBeNull()
  })

  it('are gone when they are dropped, and all of a person’s when that person signs out, others’ and other things left', () => {
    const store = newStore()
    const others = [draftKey('jon', '/trials/new', ''), draftKey('idamay', '/trials/new', '')]
    store.setItem('something else', 'stays')
    for (const each of [key, draftKey('ida', '/account', ''), draftKey('ida', '/team', ''), ...others])
      keepDraft(store, each, draft)
    dropDraft(store, key)
    expect(readDraft(store, key, now)).toBeNull()
    dropDraftsOf(store, 'ida')
    expect(Array.from({ length: store.length }, (_, i) => store.key(i))).toEqual(['something else', ...others])
  })

  it('are not kept any more of a person who signed out, whatever their forms still want to write', () => {
    const store = newStore()
    dropDraftsOf(store, 'ida')
    keepDraft(store, key, draft)
    keepDraft(store, draftKey('idamay', '/trials/new', ''), draft)
    expect(Array.from({ length: store.length }, (_, i) => store.key(i))).toEqual([
      draftKey('idamay', '/trials/new', ''),
    ])
  })

  it('of over thirty days do not come back', () => {
    const store = newStore()
    keepDraft(store, key, draft)
    expect(readDraft(store, key, later(29))).toEqual(draft)
    expect(readDraft(store, key, later(31))).toBeNull()
  })

  it.each([
    '',
    'no draft',
    'null',
    '[]',
    '{}',
    JSON.stringify({ ...draft, values: { question: 7 } }),
    JSON.stringify({ ...draft, values: null }),
    JSON.stringify({ ...draft, formId: 7 }),
    JSON.stringify({ ...draft, at: 'once' }),
  ])('that cannot be read are none: %s', (text) => {
    const store = newStore()
    store.setItem(key, text)
    expect(readDraft(store, key, now)).toBeNull()
  })

  it('are lost without a fault where the browser keeps nothing', () => {
    const refuse = () => {
      throw new DOMException('no room', 'QuotaExceededError')
    }
    const store: Storage = {
      length: 1,
      getItem: refuse,
      setItem: refuse,
      removeItem: refuse,
      key: refuse,
      clear: refuse,
    }
    keepDraft(store, key, draft)
    dropDraft(store, key)
    dropDraftsOf(store, 'ida')
    expect(readDraft(store, key, now)).toBeNull()
  })
})
