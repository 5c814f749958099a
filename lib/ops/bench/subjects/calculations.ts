import { performance } from 'node:perf_hooks'
import { balanceArm } from '../../../calc/arms/balance-arm'
import type { ArmLine } from '../../../calc/arms/types'
import { powerEntries } from '../../../calc/plan/power-entries'
import { dunnettQuantile } from '../../../calc/distributions/dunnett-quantile'
import { median } from '../../../calc/median'
import { sureOf } from '../../../kitchen/sure-of'
import { within } from '../figures'
import { besidePeer, peerMs } from '../peer-ms'
import type { Subject } from '../subject'
import { setTable } from '../table'

const warmUps = 20
const rounds = 101

const search = sureOf(
  powerEntries.find((entry) => entry.id === 'plan/cheapest-design'),
  'plan/cheapest-design',
)

type Timed = { what: string; mostMs: number; run(round: number): unknown; peer?: string }

/** A calculation with a target is a row here; the figures differ a little from round to round, so that none is foreseen. */
const timed: readonly Timed[] = [
  {
    what: 'balanced arms: four lines may move, four totals held',
    mostMs: 1,
    run: (round) =>
      balanceArm({
        control,
        added: [cream(50 + (round % 20))],
        hold: ['water', 'fat', 'sugars', 'dough-mass'],
        moves,
        how: 'balanced',
      }),
  },
  {
    what: 'Dunnett quantile: four arms, 15 degrees of freedom',
    mostMs: 2,
    run: (round) =>
      dunnettQuantile({
        p: 0.05 + (round % 20) / 1000,
        df: 15,
        loadings: new Array<number>(4).fill(Math.SQRT1_2),
        sides: 'two',
      }),
    peer: 'dunnett-quantile.R',
  },
  {
    what: 'search for the cheapest design: two arms, up to 12 days',
    mostMs: 200,
    run: (round) => search.run({ ...search.example, trueDifference: 7 + (round % 20) / 20 }),
  },
]

/** How long single calculations take. */
export const calculations: Subject = {
  name: 'calculations',
  async measure() {
    return setTable({
      title: 'Calculations',
      notes: [
        `Milliseconds of one call, median of ${rounds} after ${warmUps} to warm up. Peer: R with mvtnorm, where it is installed and computes the same.`,
      ],
      columns: ['calculation', 'ms', 'target ms', 'target', 'peer ms', 'ratio'],
      rows: timed.map(({ what, mostMs, run, peer }) => {
        const ms = timeOf(run)
        return [
          what,
          ms.toFixed(3),
          String(mostMs),
          within(ms, mostMs),
          ...besidePeer(ms, peer === undefined ? null : peerMs(peer)),
        ]
      }),
    })
  },
}

function timeOf(run: (round: number) => unknown): number {
  const times: number[] = []
  for (let round = -warmUps; round < rounds; round++) {
    const begun = performance.now()
    run(round + warmUps)
    if (round >= 0) times.push(performance.now() - begun)
  }
  return median(times)
}

const stated = {
  proteinPct: 0,
  fatPct: 0,
  carbohydratePct: 0,
  sugarsPct: 0,
  fibrePct: 0,
  ashPct: 0,
  sodiumMgPer100g: 0,
}
const line = (
  id: string,
  massG: number,
  kind: ArmLine['kind'],
  waterPct: number,
  rest: Partial<NonNullable<ArmLine['composition']>> = {},
): ArmLine => ({
  id,
  massG,
  kind,
  isFlour: kind === 'flour',
  composition: { ...stated, waterPct, ...rest },
  standsInFor: ['water', 'fat', 'sugars'],
  resolutionG: 0,
})
/** Invented figures. */
const control = [
  line('flour', 1000, 'flour', 14),
  line('water', 560, 'water', 100),
  line('butter', 80, 'fat', 16, { fatPct: 82 }),
  line('sugar', 60, 'sugar', 0, { sugarsPct: 100 }),
  line('salt', 18, 'salt', 0),
]
const cream = (massG: number) => line('cream', massG, 'dairy', 58, { fatPct: 36, sugarsPct: 3 })
const moves = ['flour', 'water', 'butter', 'sugar'].map((lineId) => ({ lineId, minG: 0, maxG: null }))
