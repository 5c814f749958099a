import 'server-only'
import { readerOf, type DocumentRead } from '../reader-of'
import { costsOfFormat1, type CostsOfFormat1 } from './costs-of-format-1'
import { costsOfFormat2, type CostsOfFormat2 } from './costs-of-format-2'

/** What doughs cost, whatever the format that it was kept in. */
export type Costs = Omit<CostsOfFormat2, 'format'>

const readFormat1 = readerOf(costsOfFormat1, 1)
const readFormat2 = readerOf(costsOfFormat2, 2)

/** Reads that part of evidence. Format 1 says nothing of a price at which a litre costs the same, nor of what that rests on. */
export function readCosts(text: string, hash: string): DocumentRead<Costs> {
  const read = readFormat2(text, hash)
  if (read.outcome === 'read') {
    const { format: _, ...value } = read.value
    return { ...read, value }
  }
  if (read.outcome === 'damaged' || read.format !== 1) return read
  const former = readFormat1(text, hash)
  return former.outcome === 'read' ? { ...former, value: fromFormat1(former.value) } : former
}

function fromFormat1({ format: _, arms, rests, ...costs }: CostsOfFormat1): Costs {
  return {
    ...costs,
    arms: arms.map((arm) => ({ ...arm, sameVolume: null })),
    rests: { ...rests, arms: rests.arms.map((arm) => ({ ...arm, dosed: [], volume: null })) },
  }
}
