import { normalDeviate } from '../lib/calc/random/normal-deviate'
import { seededRandom } from '../lib/calc/random/seeded-random'
import { processSpread, readerSpread, readTo, spoiltPieceShare, volumeSpread, type BakeTruth } from './bake-truth'

export type SimulatedTrial = {
  seed: string
  truth: BakeTruth
  process: { scalingMassG: number; doughTempC: number; proofTimeMin: number }
  piecesPerBatch: number
}

/** Which dough it is: the same arm of the same mixing day (from 1), its first or a later one (`copy`, from 1). */
export type SimulatedDoughFacts = { arm: number; day: number; copy: number; plannedWaterG: number; reader: string }

/** As the instruments show it. */
export type SimulatedDough = {
  waterAddedG: number
  doughTempC: number
  proofTimeMin: number
  pieces: readonly SimulatedPiece[]
  piecesMade: number
  piecesGood: number
}
export type SimulatedPiece = {
  doughMassG: number
  loafMassG: number
  /** Repeat readings; the third is there to be read when the first two disagree. */
  volumesMl: readonly [number, number, number]
}

/**
 * What would be read of one dough, from the seed alone. It does not depend on the order of baking, which is drawn anew
 * for each install: streams are named by day, dough and reader.
 *
 * Specific volume is truth plus parts with expectation zero, and a loaf's volume is that times its weight *as the scale
 * shows it*, so volume over weight has exactly the expectation control × (1 + gain): no bias of a ratio. Rounding the
 * volume to the gauge adds less than 1e-6 of it, because the step is small beside the spread.
 */
export function simulatedDough(trial: SimulatedTrial, dough: SimulatedDoughFacts): SimulatedDough {
  const { truth, process } = trial
  const named = (stream: string) => deviates(`${trial.seed}/${stream}`)
  const ofDay = named(`day ${dough.day}`)
  const day = {
    volume: ofDay(volumeSpread.dayShare),
    tempC: ofDay(processSpread.doughTempDayC),
    loss: ofDay(processSpread.bakeLossDayShare),
  }
  const readerMl = named(`reader ${dough.reader}`)(readerSpread.readerMl)

  const own = named(`dough ${dough.day} ${dough.arm} ${dough.copy}`)
  const offTempC = day.tempC + own(processSpread.doughTempBatchC)
  const doughShare =
    1 +
    (truth.gainShares[dough.arm] ?? 0) +
    day.volume +
    own(volumeSpread.batchShare) +
    volumeSpread.sharePerC * offTempC
  const waterAddedG = roundTo(readTo.massG, dough.plannedWaterG * (1 + own(processSpread.waterShare)))
  const proofTimeMin = roundTo(readTo.timeMin, process.proofTimeMin + own(processSpread.proofTimeMin))
  const pieces = Array.from({ length: trial.piecesPerBatch }, (): SimulatedPiece => {
    const doughMassG = roundTo(readTo.massG, process.scalingMassG + own(processSpread.scalingG))
    const loafMassG = roundTo(
      readTo.massG,
      doughMassG * (1 - truth.bakeLossShare - day.loss - own(processSpread.bakeLossLoafShare)),
    )
    const volumeMl = truth.controlMlPerG * (doughShare + own(volumeSpread.loafShare)) * loafMassG
    const read = () => roundTo(readTo.volumeMl, volumeMl + readerMl + own(readerSpread.repeatMl))
    return { doughMassG, loafMassG, volumesMl: [read(), read(), read()] }
  })
  const random = seededRandom(`${trial.seed}/fit to sell ${dough.day} ${dough.arm} ${dough.copy}`)
  const piecesGood = pieces.filter(() => random() >= spoiltPieceShare).length
  return {
    waterAddedG,
    doughTempC: roundTo(readTo.tempC, process.doughTempC + offTempC),
    proofTimeMin,
    pieces,
    piecesMade: pieces.length,
    piecesGood,
  }
}

/** What an arm truly is above the control, % of the control. */
export function trueDifferencePct(truth: BakeTruth, arm: number): number {
  return 100 * ((1 + (truth.gainShares[arm] ?? 0)) / (1 + (truth.gainShares[0] ?? 0)) - 1)
}

/** Normal deviates of a named stream, with expectation zero and the SD that is asked for. */
function deviates(seed: string): (sd: number) => number {
  const random = seededRandom(seed)
  return (sd) => sd * normalDeviate(random)
}

/** To the nearest step that an instrument shows; the step's own digits leave no tail of binary fractions. */
function roundTo(step: number, value: number): number {
  return Number((Math.round(value / step) * step).toFixed(3))
}
