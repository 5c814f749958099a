import 'server-only'
import { chainStart } from '../../db/append-audit'
import { readAuditEntry } from '../../documents/audit-entry/read-audit-entry'
import { hashOfText } from '../../documents/hash-of-text'

export type ChainEntry = { number: bigint; entryText: string; previousHash: string; hash: string }
/** An entry that others follow from, and the one that the head says is the last. */
export type ChainPlace = { number: bigint; hash: string }
/** `unknown-format` is no sign of harm: the entry came after this code, which cannot say what it follows from. */
export type ChainFault = { number: bigint; why: 'gap' | 'order' | 'altered' | 'head' | 'unknown-format' }

/** Before a bakery's first entry. */
export const beforeFirst: ChainPlace = { number: 0n, hash: chainStart }

/**
 * Follows a piece of the chain from the place before it.
 * @param entries in order
 * @returns where the piece ends, or the first entry that does not follow: a number left out, a text that does not give
 * its hash, a predecessor's hash that differs, or a format that is not known
 */
export function followChain(entries: readonly ChainEntry[], from: ChainPlace): ChainPlace | { fault: ChainFault } {
  let { number, hash } = from
  for (const entry of entries) {
    if (entry.number !== number + 1n) return { fault: { number: number + 1n, why: 'gap' } }
    const why = faultOf(entry, hash)
    if (why) return { fault: { number: entry.number, why } }
    number = entry.number
    hash = entry.hash
  }
  return { number, hash }
}

function faultOf({ number, entryText, previousHash, hash }: ChainEntry, previous: string): ChainFault['why'] | null {
  if (hashOfText(entryText) !== hash) return 'altered'
  const read = readAuditEntry(entryText)
  if (read.outcome === 'damaged') return 'altered'
  if (previousHash !== previous) return 'order'
  if (read.outcome === 'unknown-format') return 'unknown-format'
  return read.entry.previous === previous && read.entry.number === number.toString() ? null : 'order'
}

/**
 * Whether the chain ends where its head says.
 * A chain alone cannot show that it was written anew as a whole.
 */
export function faultAtEnd(end: ChainPlace, head: ChainPlace): ChainFault | null {
  return head.number === end.number && head.hash === end.hash ? null : { number: head.number, why: 'head' }
}
