import 'server-only'
import { chainStart, hashOfEntry } from '../../db/append-audit'

export type ChainEntry = { number: bigint; entryText: string; previousHash: string; hash: string }
/** An entry that others follow from, and the one that the head says is the last. */
export type ChainPlace = { number: bigint; hash: string }
export type ChainFault = { number: bigint; why: 'gap' | 'order' | 'altered' | 'head' }

/** Before a bakery's first entry. */
export const beforeFirst: ChainPlace = { number: 0n, hash: chainStart }

/**
 * Follows a piece of the chain from the place before it.
 * @param entries in order
 * @returns where the piece ends, or the first entry that does not follow: a number left out, a predecessor's hash that
 * differs, or a text that does not give its hash
 */
export function followChain(entries: readonly ChainEntry[], from: ChainPlace): ChainPlace | { fault: ChainFault } {
  let { number, hash } = from
  for (const entry of entries) {
    if (entry.number !== number + 1n) return { fault: { number: number + 1n, why: 'gap' } }
    const said = readPrevious(entry.entryText)
    if (entry.previousHash !== hash || said.previous !== hash || said.number !== entry.number.toString()) return { fault: { number: entry.number, why: 'order' } }
    if (hashOfEntry(entry.entryText) !== entry.hash) return { fault: { number: entry.number, why: 'altered' } }
    number = entry.number
    hash = entry.hash
  }
  return { number, hash }
}

/**
 * Whether the chain ends where its head says.
 * A chain alone cannot show that it was written anew as a whole.
 */
export function faultAtEnd(end: ChainPlace, head: ChainPlace): ChainFault | null {
  return head.number === end.number && head.hash === end.hash ? null : { number: head.number, why: 'head' }
}

function readPrevious(entryText: string): { previous?: unknown; number?: unknown } {
  try {
    return JSON.parse(entryText) as { previous?: unknown; number?: unknown }
  } catch {
    return {}
  }
}
