import { mustBeWhole, mustBeWithin } from '../checks'
import { dunnettLoadings } from '../distributions/dunnett-loadings'
import { dunnettQuantile } from '../distributions/dunnett-quantile'
import { normalUpper } from '../distributions/normal-tail'
import { tQuantile } from '../distributions/t-quantile'
import { CalcError } from '../error'
import { betterChance } from './better-chance'
import { controlBatches } from './control-batches'
import { type TrialDesign, gainPower } from './gain-power'

export type DesignWanted = {
  layout: TrialDesign['layout']
  testArmCount: number
  trueDifference: number
  worthwhile: number
  confidence: number
  power: number
  blockSd: number
  batchSd: number
  loafSd: number
  blockCostMinor: number
  batchCostMinor: number
  loafCostMinor: number
  leastBlocks: number
  mostBlocks: number
  mostBatchesPerBlock: number
  mostLoavesPerBatch: number
}

export type PricedDesign = Omit<TrialDesign, 'layout'> & {
  batches: number
  loaves: number
  costMinor: number
  residualDf: number
  criticalValue: number
  differenceSe: number
  /** Chance of 'better' for each arm whose true difference is the one asked for; closed form. */
  power: number
}

export type CheapestDesigns = {
  /** The search goes by the closed form with Dunnett's critical value; the first design is then simulated. */
  method: 'closed-form-search-confirmed-by-simulation'
  /** Cheapest first, at most five; each is the fewest loaves for its days and doughs. */
  designs: PricedDesign[]
  simulated: { runs: number; power: number; powerSe: number }
}

const OFFERED = 5
/** As many as gainPower takes. */
const MOST_OF_ARM = 20

type Size = Omit<TrialDesign, 'layout' | 'loavesPerBatch'> & { batches: number; leastCostMinor: number }

/**
 * The cheapest numbers of mixing days, doughs of each arm, extra doughs of the control and loaves of each dough that
 * give every test arm a wanted chance of the verdict 'better'. The control has as many doughs as an arm or up to √k
 * times as many (controlBatches). Sizes are tried in the order of what they cost with one loaf a dough, until no other
 * can be among the cheapest.
 * @param testArmCount k, 1 to 12; @param trueDifference towards the good side, > 0; @param worthwhile > 0
 * @param confidence joint, 0.5 to 0.9999; @param power wanted, 0.01 to 0.9999
 * @param blockSd, batchSd, loafSd spread of days, doughs of a day, loaves of a dough, ≥ 0, in the unit of the
 *   differences; dough or loaf > 0; in complete blocks that of days cancels
 * @param blockCostMinor, batchCostMinor, loafCostMinor of a day, a dough, a loaf read, whole minor units, ≥ 0
 * @param leastBlocks 1 or more: what is seen on one day alone may be that day's; @param mostBlocks up to 100
 * @param mostBatchesPerBlock all doughs of a day, 2 to 100; @param mostLoavesPerBatch 1 to 1000
 * @param seed, runs of the confirming simulation, see gainPower
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'half-fall-short' (a true difference no
 *   larger than the worthwhile one), 'power-out-of-reach' (value: the power of the largest trial allowed);
 *   'out-of-range' with reason 'far-beyond-spread' for a difference of more than 1000 standard errors
 * Source: search over whole designs; betterChance, gainPower; √k by Dunnett (1955), JASA 50.
 */
export function cheapestDesign(q: DesignWanted & { seed: string; runs: number }): CheapestDesigns {
  mustBeGuarded(q)
  const found: PricedDesign[] = []
  const sizes = sizesByCost(q)
  for (const size of sizes) {
    if (found.length === OFFERED && size.leastCostMinor > found.at(-1)!.costMinor) break
    const design = fewestLoaves(q, size)
    if (!design) continue
    found.push(design)
    found.sort((a, b) => a.costMinor - b.costMinor || a.blocks - b.blocks || a.batches - b.batches)
    found.length = Math.min(found.length, OFFERED)
  }
  const first = found[0]
  if (!first)
    throw new CalcError('not-possible', { field: 'power', value: mostPower(q, sizes), reason: 'power-out-of-reach' })
  const { blocks, armBatchesPerBlock, controlBatchesPerBlock, loavesPerBatch } = first
  const { arms, runs } = gainPower({
    seed: q.seed,
    runs: q.runs,
    design: { layout: q.layout, blocks, armBatchesPerBlock, controlBatchesPerBlock, loavesPerBatch },
    spread: { blockSd: q.blockSd, batchSd: q.batchSd, loafSd: q.loafSd },
    trueDifferences: Array.from({ length: q.testArmCount }, () => q.trueDifference),
    worthwhile: q.worthwhile,
    goodDirection: 'larger',
    confidence: q.confidence,
  })
  const { power, powerSe } = arms[0]!
  return { method: 'closed-form-search-confirmed-by-simulation', designs: found, simulated: { runs, power, powerSe } }
}

function mustBeGuarded(q: DesignWanted): void {
  mustBeWhole('testArmCount', q.testArmCount, { min: 1, max: 12 })
  mustBeWithin('worthwhile', q.worthwhile, { over: 0 })
  mustBeWithin('trueDifference', q.trueDifference, { over: 0 })
  mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  mustBeWithin('power', q.power, { min: 0.01, max: 0.9999 })
  for (const field of ['blockSd', 'batchSd', 'loafSd'] as const) mustBeWithin(field, q[field], { min: 0 })
  mustBeWithin('batchSd', q.batchSd + q.loafSd, { over: 0 })
  for (const field of ['blockCostMinor', 'batchCostMinor', 'loafCostMinor'] as const)
    mustBeWhole(field, q[field], { min: 0, max: 1e9 })
  mustBeWhole('leastBlocks', q.leastBlocks, { min: 1, max: 100 })
  mustBeWhole('mostBlocks', q.mostBlocks, { min: q.leastBlocks, max: 100 })
  mustBeWhole('mostBatchesPerBlock', q.mostBatchesPerBlock, { min: q.testArmCount + 1, max: 100 })
  mustBeWhole('mostLoavesPerBatch', q.mostLoavesPerBatch, { min: 1, max: 1000 })
  if (q.trueDifference <= q.worthwhile && q.power >= 0.5) {
    throw new CalcError('not-possible', {
      field: 'trueDifference',
      value: q.trueDifference,
      min: q.worthwhile,
      reason: 'half-fall-short',
    })
  }
}

function sizesByCost(q: DesignWanted): Size[] {
  const sizes: Size[] = []
  for (let blocks = q.leastBlocks; blocks <= q.mostBlocks; blocks++) {
    for (let arm = 1; arm <= MOST_OF_ARM; arm++) {
      const mostControl = Math.min(
        MOST_OF_ARM,
        controlBatches({ testArmCount: q.testArmCount, batchesPerArm: arm }).suggested,
      )
      for (let control = arm; control <= mostControl; control++) {
        const perBlock = q.testArmCount * arm + control
        if (perBlock > q.mostBatchesPerBlock) continue
        const batches = blocks * perBlock
        const leastCostMinor = blocks * q.blockCostMinor + batches * (q.batchCostMinor + q.loafCostMinor)
        if (dfOf(q, blocks, batches) >= 1) {
          sizes.push({ blocks, armBatchesPerBlock: arm, controlBatchesPerBlock: control, batches, leastCostMinor })
        }
      }
    }
  }
  return sizes.sort((a, b) => a.leastCostMinor - b.leastCostMinor || a.blocks - b.blocks || a.batches - b.batches)
}

const dfOf = (q: DesignWanted, blocks: number, batches: number) =>
  batches - q.testArmCount - (q.layout === 'complete-blocks' ? blocks : 1)

/** Standard error of a difference as a function of the loaves. */
function seOf(
  q: DesignWanted,
  { blocks, armBatchesPerBlock, controlBatchesPerBlock }: Size,
): (loaves: number) => number {
  const days = q.layout === 'complete-blocks' ? 0 : q.blockSd ** 2
  const perVariance = (1 / armBatchesPerBlock + 1 / controlBatchesPerBlock) / blocks
  return (loaves) => Math.sqrt((q.batchSd ** 2 + q.loafSd ** 2 / loaves + days) * perVariance)
}

function fewestLoaves(q: DesignWanted, size: Size): PricedDesign | null {
  const df = dfOf(q, size.blocks, size.batches)
  const se = seOf(q, size)
  const chance = (criticalValue: number, loaves: number) =>
    betterChance({ ...q, differenceSe: se(loaves), criticalValue, df })
  const most = q.mostLoavesPerBatch
  // two quick bounds from above, so that few critical values need working out: the estimate alone, and one arm alone
  if (normalUpper((q.worthwhile - q.trueDifference) / se(most)) < q.power) return null
  if (chance(tQuantile({ p: (1 - q.confidence) / 2, df, tail: 'upper' }), most) < q.power) return null
  const criticalValue = criticalOf(q, size, df)
  if (chance(criticalValue, most) < q.power) return null
  let [few, enough] = [0, most]
  while (enough - few > 1) {
    const middle = Math.floor((few + enough) / 2)
    if (chance(criticalValue, middle) < q.power) few = middle
    else enough = middle
  }
  const { leastCostMinor, ...design } = size
  return {
    ...design,
    loavesPerBatch: enough,
    loaves: design.batches * enough,
    costMinor: leastCostMinor + design.batches * (enough - 1) * q.loafCostMinor,
    residualDf: df,
    criticalValue,
    differenceSe: se(enough),
    power: chance(criticalValue, enough),
  }
}

function criticalOf(q: DesignWanted, { blocks, armBatchesPerBlock, controlBatchesPerBlock }: Size, df: number): number {
  const armCounts = Array.from({ length: q.testArmCount }, () => blocks * armBatchesPerBlock)
  const loadings = dunnettLoadings({ controlCount: blocks * controlBatchesPerBlock, armCounts })
  return dunnettQuantile({ p: 1 - q.confidence, df, loadings, sides: 'two' })
}

/** What the largest trial allowed would reach. */
function mostPower(q: DesignWanted, sizes: readonly Size[]): number {
  if (sizes.length === 0) return 0
  const size = sizes.reduce((a, b) => (b.batches > a.batches ? b : a))
  const df = dfOf(q, size.blocks, size.batches)
  return betterChance({
    ...q,
    differenceSe: seOf(q, size)(q.mostLoavesPerBatch),
    criticalValue: criticalOf(q, size, df),
    df,
  })
}
