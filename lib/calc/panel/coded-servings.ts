import { mustBeWhole, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { threeDigitCodes } from '../plan/three-digit-codes'
import { seededRandom } from '../random/seeded-random'
import { shuffle } from '../random/shuffle'
import type { PanelSample } from './types'

/** One portion for one taster, as the panel leader's key has it. Tasters see the code and nothing else. */
export type Serving = { taster: number; place: number; code: string; sample: string; batch: string; allergens: string }

export type ServingKey = {
  servings: Serving[]
  /** `one-batch`: what is found may be that batch and not the sample. `orders-not-even`: some orders come once more than others. */
  warnings: { code: 'one-batch' | 'orders-not-even'; sample: string | null }[]
  /** What a panel leader heeds every time; all three, always. */
  cautions: ('baked-only' | 'ask-allergens-first' | 'key-with-leader')[]
}

const CAUTIONS = ['baked-only', 'ask-allergens-first', 'key-with-leader'] as const

/**
 * Hands a list of serving orders out to tasters: every order equally often, in random turn; the batches of a sample in
 * turn, so that one taster has one batch of each sample throughout; a three-digit code for each portion, none twice.
 * The same seed and input give the same key. The key names sample and allergens beside each code: a code hides a sample from
 * tasters, never an allergen from the panel leader. Baked samples only: raw dough is not tasted.
 * @param orders names of samples by place, one or more orders of one length
 * @param samples a row for each batch, with its allergens ('none' where there is none)
 * @param tasters whole, 1 or more, at most 900 portions in all
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty' | 'duplicate'; 'not-possible' with reason 'allergens-not-stated'
 * Source: batches in turn and three-digit codes: common practice, no source.
 */
export function codedServings(q: {
  seed: string
  orders: readonly (readonly string[])[]
  samples: readonly PanelSample[]
  tasters: number
}): ServingKey {
  const orders = mustHaveAtLeast('orders', q.orders, 1)
  const places = orders[0]!.length
  const tasters = mustBeWhole('tasters', q.tasters, { min: 1, max: Math.floor(900 / places) })
  const batches = batchesBySample(q.samples)
  const codes = threeDigitCodes({ seed: JSON.stringify([q.seed, 'codes']), count: tasters * places })
  const random = seededRandom(q.seed)
  let turn: (readonly string[])[] = []
  const servings = Array.from({ length: tasters }, (_, i) => {
    if (turn.length === 0) turn = shuffle(random, orders)
    return turn.pop()!.map((sample, place): Serving => {
      const own = batches.get(sample)!
      return { taster: i + 1, place: place + 1, code: codes[i * places + place]!, ...own[i % own.length]! }
    })
  })
  return {
    servings: servings.flat(),
    warnings: [
      ...[...batches].filter(([, own]) => own.length < 2).map(([sample]) => ({ code: 'one-batch' as const, sample })),
      ...(tasters % orders.length === 0 ? [] : [{ code: 'orders-not-even' as const, sample: null }]),
    ],
    cautions: [...CAUTIONS],
  }
}

function batchesBySample(samples: readonly PanelSample[]): Map<string, PanelSample[]> {
  const batches = new Map<string, PanelSample[]>()
  samples.forEach((one, i) => {
    const own = batches.get(one.sample) ?? []
    if (own.some(({ batch }) => batch === one.batch))
      throw new CalcError('duplicate', { field: `samples[${i}].batch`, value: one.batch })
    if (one.allergens.trim() === '')
      throw new CalcError('not-possible', { field: `samples[${i}].allergens`, reason: 'allergens-not-stated' })
    batches.set(one.sample, [...own, one])
  })
  return batches
}
