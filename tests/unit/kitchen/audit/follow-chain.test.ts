import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chainStart } from '@/lib/db/append-audit'
import { textOfAuditEntry } from '@/lib/documents/audit-entry/text-of-audit-entry'
import { hashOfText } from '@/lib/documents/hash-of-text'
import {
  beforeFirst,
  faultAtEnd,
  followChain,
  type ChainEntry,
  type ChainPlace,
} from '@/lib/kitchen/audit/follow-chain'

const textOf = (action: string, number: number, previous: string) =>
  textOfAuditEntry({
    bakery: 'b',
    number: String(number),
    at: '2026-03-02T04:00:00.000Z',
    who: null,
    address: 'test',
    action,
    target: null,
    before: null,
    after: null,
    reason: null,
    previous,
  })

function chainOf(actions: readonly string[]): ChainEntry[] {
  let previousHash = chainStart
  return actions.map((action, at) => {
    const { text: entryText, hash } = textOf(action, at + 1, previousHash)
    const entry = { number: BigInt(at + 1), entryText, previousHash, hash }
    previousHash = entry.hash
    return entry
  })
}

/** The fault of a whole chain. */
function findChainFault(chain: readonly ChainEntry[], head: ChainPlace) {
  const reached = followChain(chain, beforeFirst)
  return 'fault' in reached ? reached.fault : faultAtEnd(reached, head)
}

const headOf = (chain: readonly ChainEntry[]) => ({
  number: BigInt(chain.length),
  hash: chain.at(-1)?.hash ?? chainStart,
})
const actions = fc.array(fc.string({ minLength: 1 }), { minLength: 3, maxLength: 12 })

describe('the chain of the record', () => {
  it('is whole when nothing was touched, also when empty', () => {
    fc.assert(
      fc.property(actions, (list) => findChainFault(chainOf(list), headOf(chainOf(list))) === null),
      { seed: 11 },
    )
    expect(findChainFault([], headOf([]))).toBeNull()
  })

  it('names the entry that was left out, altered, swapped or re-hashed', () => {
    fc.assert(
      fc.property(actions, fc.nat(), (list, pick) => {
        const chain = chainOf(list)
        const head = headOf(chain)
        const at = pick % (chain.length - 1)
        const number = BigInt(at + 1)
        const entry = chain[at]!
        expect(findChainFault(chain.toSpliced(at, 1), head)).toEqual({ number, why: 'gap' })
        const other = textOf(`${list[at]!}!`, at + 1, entry.previousHash)
        expect(findChainFault(chain.with(at, { ...entry, entryText: other.text }), head)).toEqual({
          number,
          why: 'altered',
        })
        const rehashed = { ...entry, entryText: other.text, hash: other.hash }
        expect(findChainFault(chain.with(at, rehashed), head)).toEqual({ number: number + 1n, why: 'order' })
        const next = chain[at + 1]!
        const swapped = chain.with(at, { ...next, number }).with(at + 1, { ...entry, number: number + 1n })
        expect(findChainFault(swapped, head)).toEqual({ number, why: 'order' })
      }),
      { seed: 12 },
    )
  })

  it('says the same in pieces as in one go', () => {
    fc.assert(
      fc.property(actions, fc.nat(), fc.boolean(), (list, pick, isAltered) => {
        const whole = chainOf(list)
        const at = pick % whole.length
        const chain = isAltered ? whole.with(at, { ...whole[at]!, entryText: `${whole[at]!.entryText} ` }) : whole
        const first = followChain(chain.slice(0, at), beforeFirst)
        expect('fault' in first ? first : followChain(chain.slice(at), first)).toEqual(followChain(chain, beforeFirst))
      }),
      { seed: 13 },
    )
  })

  it('says which entry is in a format that came after this code, and still whether its text was altered', () => {
    const chain = chainOf(['a', 'b', 'c'])
    const entryText = chain[1]!.entryText.replace(/"format":\d+/, '"format":99')
    const later = { ...chain[1]!, entryText, hash: hashOfText(entryText) }
    expect(findChainFault(chain.with(1, later), headOf(chain))).toEqual({ number: 2n, why: 'unknown-format' })
    expect(findChainFault(chain.with(1, { ...later, entryText: `${entryText} ` }), headOf(chain))).toEqual({
      number: 2n,
      why: 'altered',
    })
    expect(findChainFault(chain.with(1, { ...later, previousHash: chainStart }), headOf(chain))).toEqual({
      number: 2n,
      why: 'order',
    })
  })

  it('takes no text for an entry that is none, though its hash fits', () => {
    const [entry] = chainOf(['a'])
    for (const entryText of [
      '',
      'null',
      '{}',
      '{"format":2}',
      entry!.entryText.replace('"action"', '"deed"'),
      entry!.entryText.replace(/"format":\d+/, '"format":"1"'),
    ]) {
      expect(findChainFault([{ ...entry!, entryText, hash: hashOfText(entryText) }], headOf([entry!]))).toEqual({
        number: 1n,
        why: 'altered',
      })
    }
  })

  it('misses a tail that was cut off only when the head was moved with it', () => {
    const chain = chainOf(['a', 'b', 'c'])
    expect(findChainFault(chain.slice(0, 2), headOf(chain))).toEqual({ number: 3n, why: 'head' })
    expect(findChainFault(chain.slice(0, 2), headOf(chain.slice(0, 2)))).toBeNull()
  })
})
