import { mustBeWhole } from '../checks'

export type PieceCount = {
  notScaled: number
  good: number
  goodPct: number
  wasted: number
  soldPct: number
  wastedPct: number
}

/**
 * What became of the pieces: planned, scaled, spoilt, sampled, sold; the rest is wasted. Good pieces are those scaled and
 * not spoilt; a sample was good and is not for sale.
 * @param planned whole, ≥ 1; scaled ≥ 1 (more than planned may come out); spoilt at most scaled; sampled and sold together
 *   at most the good ones; whole, up to a million
 * @returns good in % of planned; sold and wasted in % of good, 0 when none is good
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: definitions; common practice, no source.
 * @example 160 planned, 158 scaled, 3 spoilt, 2 sampled, 148 sold: 155 good, 5 wasted
 */
export function countPieces(q: {
  planned: number
  scaled: number
  spoilt: number
  sampled: number
  sold: number
}): PieceCount {
  const most = 1_000_000
  mustBeWhole('planned', q.planned, { min: 1, max: most })
  mustBeWhole('scaled', q.scaled, { min: 1, max: most })
  mustBeWhole('spoilt', q.spoilt, { min: 0, max: q.scaled })
  const good = q.scaled - q.spoilt
  mustBeWhole('sampled', q.sampled, { min: 0, max: good })
  mustBeWhole('sold', q.sold, { min: 0, max: good - q.sampled })
  const wasted = good - q.sampled - q.sold
  const ofGoodPct = (pieces: number) => (good === 0 ? 0 : (100 * pieces) / good)
  return {
    notScaled: Math.max(0, q.planned - q.scaled),
    good,
    goodPct: (100 * good) / q.planned,
    wasted,
    soldPct: ofGoodPct(q.sold),
    wastedPct: ofGoodPct(wasted),
  }
}
