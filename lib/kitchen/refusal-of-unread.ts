import 'server-only'
import type { Unread } from '../documents/open-document'
import { Refusal } from './refusal'

/** The no for a document that cannot be read, where nothing can be shown without it. */
export function refusalOfUnread(unread: Unread): Refusal {
  return unread.outcome === 'damaged'
    ? new Refusal('damaged-text')
    : new Refusal('unknown-format', { format: unread.format })
}
