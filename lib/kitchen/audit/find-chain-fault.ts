import 'server-only'
import { chainStart, hashOfEntry } from '../../db/append-audit'

export type ChainEntry = { number: bigint; entryText: string; previousHash: string; hash: string }
export type ChainFault = { number: bigint; why: 'gap' | 'order' | 'altered' | 'head' }

/**
 * Finds the first entry that does not follow from the one before: a number left out, a predecessor's hash that
 * differs, a text that does not give its hash, or an end that is not where the head says.
 * A chain alone cannot show that it was written anew as a whole.
 * @param entries the whole chain from number 1, in order
 */
export function findChainFault(entries: readonly ChainEntry[], head: { number: bigint; hash: string }): ChainFault | undefined {
  let number = 0n
  let hash = chainStart
  for (const entry of entries) {
    if (entry.number !== number + 1n) return { number: number + 1n, why: 'gap' }
    const said = readPrevious(entry.entryText)
    if (entry.previousHash !== hash || said.previous !== hash || said.number !== entry.number.toString()) return { number: entry.number, why: 'order' }
    if (hashOfEntry(entry.entryText) !== entry.hash) return { number: entry.number, why: 'altered' }
    number = entry.number
    hash = entry.hash
  }
  return head.number === number && head.hash === hash ? undefined : { number: head.number, why: 'head' }
}

function readPrevious(entryText: string): { previous?: unknown; number?: unknown } {
  try {
    return JSON.parse(entryText) as { previous?: unknown; number?: unknown }
  } catch {
    return {}
  }
}
