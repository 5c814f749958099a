import { performance } from 'node:perf_hooks'
import { compareMixedModelArms } from '../../../calc/mixed-model/compare-mixed-model-arms'
import { fitMixedModel } from '../../../calc/mixed-model/fit-mixed-model'
import { median } from '../../../calc/median'
import type { MixedRow } from '../../../calc/mixed-model/types'
import { normalDeviate } from '../../../calc/random/normal-deviate'
import { seededRandom } from '../../../calc/random/seeded-random'
import { within } from '../figures'
import { besidePeer, peerMs } from '../peer-ms'
import type { Subject } from '../subject'
import { setTable } from '../table'

const mostMs = 20
const rounds = 21

/** How long a trial's mixed model takes with Dunnett's comparison of its arms. */
export const mixedModel: Subject = {
  name: 'mixed-model',
  measure() {
    const whole = madeUpTrial({ arms: 4, blocks: 6, loaves: 4 })
    const rows: [string, MixedRow[]][] = [
      ['4 arms × 6 blocks × 4 loaves', whole],
      ['the same, every seventh loaf missing', whole.filter((_, i) => i % 7 !== 3)],
      ['4 arms × 6 blocks × 400 loaves', madeUpTrial({ arms: 4, blocks: 6, loaves: 400 })],
    ]
    return Promise.resolve(
      setTable({
        title: 'Mixed model',
        notes: [
          `Milliseconds of a fit by REML and Dunnett's comparison, blocks fixed and batches random; first call, and median of ${rounds} more.`,
          `Target: at most ${mostMs} ms for 4 arms × 6 blocks × 4 loaves.`,
          'Peer: R with lme4 and multcomp (lmer, glht with its summary and limits), where they are installed.',
        ],
        columns: ['trial', 'first', 'ms', 'target', 'peer ms', 'ratio'],
        rows: rows.map(([name, own], i) => {
          const first = timeOf(own)
          const ms = median(Array.from({ length: rounds }, () => timeOf(own)))
          return [
            name,
            first.toFixed(1),
            ms.toFixed(1),
            i < 2 ? within(ms, mostMs) : '',
            ...besidePeer(ms, peerMs('mixed-model.R', asCsv(own))),
          ]
        }),
      }),
    )
  },
}

function timeOf(rows: readonly MixedRow[]): number {
  const begun = performance.now()
  const fit = fitMixedModel({ rows, model: { arms: ['0', '1', '2', '3'], fixed: ['block'], random: ['batch'] } })
  compareMixedModelArms({ fit, dfMethod: 'kenward-roger', confidence: 0.95, alternative: 'two-sided' })
  return performance.now() - begun
}

function asCsv(rows: readonly MixedRow[]): string {
  return [
    'arm,block,batch,y',
    ...rows.map(({ arm, factors, y }) => [arm, factors.block, factors.batch, y].join(',')),
  ].join('\n')
}

/** Made-up values; batches differ about twice as much as their loaves. */
function madeUpTrial({ arms, blocks, loaves }: { arms: number; blocks: number; loaves: number }): MixedRow[] {
  const random = seededRandom('mixed-model bench')
  return Array.from({ length: blocks }, (_, block) =>
    Array.from({ length: arms }, (__, arm) => {
      const batch = 2 * normalDeviate(random)
      return Array.from({ length: loaves }, () => ({
        arm: String(arm),
        factors: { block: String(block), batch: `${block} ${arm}` },
        y: 50 + arm + block + batch + normalDeviate(random),
      }))
    }),
  ).flat(2)
}
