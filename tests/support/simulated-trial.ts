import { binomialTail } from '@/lib/calc/distributions/binomial-tail'
import type { DeclaredTrial, MeasuredBatch } from '@/lib/kitchen/results/trial-facts'
import { loafFigures, type FigureReading } from '@/lib/kitchen/readings/loaf-figures'
import { settleRepeats } from '@/lib/kitchen/readings/settle-repeats.input'
import { standardMeasures } from '@/lib/kitchen/stores/standard-measures'
import type { BakedTrial } from '@/seed/baked-trials'
import { simulatedDough, type SimulatedDough } from '@/seed/simulated-bake'

const measures = standardMeasures.map(({ code, repeats }) => ({ id: code, code, repeats, repeatLimit: null }))
const process = { scalingMassG: 760, doughTempC: 26, proofTimeMin: 60 }
const plannedWaterG = 1500

/** A demo trial as it is declared: larger specific volume is better. */
export function declaredOf(trial: BakedTrial): DeclaredTrial {
  return {
    kind: 'gain',
    state: 'closed',
    measure: { name: 'Specific volume', unit: 'mL/g', digits: 2, direction: 'larger' },
    margin: trial.marginPct,
    marginUnit: 'pct',
    confidencePct: trial.confidencePct,
    holdsFor: 'any_day',
    arms: trial.truth.gainShares.map((_, position) => ({ position, name: String(position), plannedWaterG })),
    mixingDays: trial.mixingDays,
    batchesPerArm: trial.batchesPerArm,
    factor: null,
  }
}

/** Every dough of a trial as it would be measured under a seed, its readings settled by the rules of the book. */
export function measuredDoughs(trial: BakedTrial, seed: string): MeasuredBatch[] {
  const days = Array.from({ length: trial.mixingDays }, (_, i) => i + 1)
  const copies = Array.from({ length: trial.batchesPerArm }, (_, i) => i + 1)
  return days.flatMap((day) => {
    const reader = trial.shifts[(day - 1) % trial.shifts.length]!.measures
    return trial.truth.gainShares.flatMap((_, arm) =>
      copies.map((copy) => {
        const id = `${day} ${arm} ${copy}`
        return measured(
          id,
          { arm, day },
          simulatedDough({ ...trial, seed, process }, { arm, day, copy, plannedWaterG, reader }),
        )
      }),
    )
  })
}

function measured(id: string, place: { arm: number; day: number }, dough: SimulatedDough): MeasuredBatch {
  const readings = dough.pieces.flatMap(
    ({ doughMassG, loafMassG, volumesMl: [first, second, third] }, i): FigureReading[] => {
      const read = (measureId: string, value: number, repeat = 1): FigureReading => ({
        batchId: id,
        measureId,
        piece: i + 1,
        factorLevel: null,
        repeat,
        value,
      })
      const two = [first, second]
      const volumes =
        settleRepeats({ values: two, repeats: 2, repeatLimit: null }).needs === 'third' ? [...two, third] : two
      return [
        read('dough-mass', doughMassG),
        read('loaf-mass', loafMassG),
        ...volumes.map((value, repeat) => read('loaf-volume', value, repeat + 1)),
      ]
    },
  )
  const { pieces } = loafFigures({ readings, measures })[0]!
  return {
    id,
    code: id,
    ...place,
    plannedOrder: 1,
    state: 'measured',
    stateWhy: null,
    begunAt: null,
    piecesMade: dough.piecesMade,
    piecesGood: dough.piecesGood,
    pieces: pieces.map(({ piece, figures }) => ({
      piece,
      level: null,
      value: figures['specific-volume'],
      loafMassG: figures['loaf-mass'],
      volumeMl: figures['loaf-volume'],
    })),
    conditions: {
      'dough-temp': dough.doughTempC,
      'proof-time': dough.proofTimeMin * 60,
      'water-added': dough.waterAddedG,
    },
    isOutOfItsArm: false,
    isOutAsLastWeighed: false,
  }
}

/** The smallest count that a binomial number is at or below with a chance of 99 % or more. */
export function mostInNinetyNine(n: number, share: number): number {
  let count = 0
  while (binomialTail({ k: count, n, share, tail: 'lower' }) < 0.99) count++
  return count
}
