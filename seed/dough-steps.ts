import { v7 as uuid } from 'uuid'
import type { Caller } from '../lib/kitchen/caller'
import { correctReading } from '../lib/kitchen/readings/correct-reading'
import { logReading } from '../lib/kitchen/readings/log-reading'
import { beginBatch } from '../lib/kitchen/shifts/begin-batch'
import { countPieces } from '../lib/kitchen/shifts/count-pieces'
import { getBatch } from '../lib/kitchen/shifts/get-batch'
import { moveBatch } from '../lib/kitchen/shifts/move-batch'
import type { Mishap } from './baked-trials'
import { minuteMs } from './bakery-clock'
import type { PersonKey } from './crew'
import { must } from './must'
import type { SimulatedDough, SimulatedPiece } from './simulated-bake'

/** Something that one person does to one dough, at a moment. */
export type Step = { at: Date; who: PersonKey; run(caller: Caller): Promise<unknown> }

export type DoughToBake = {
  batchId: string
  startAt: Date
  mixes: PersonKey
  measures: PersonKey
  process: { mixTimeMin: number; bulkTimeMin: number; bakeTimeMin: number }
  readings: SimulatedDough
  mishap: Mishap | undefined
}

/** From weighing out to the mixer, from scaling to moulded, from the oven to the scale; then each piece, and each reading of its volume. */
const weighOutMin = 9
const mouldMin = 12
const coolMin = 60
const weighPieceMin = 0.5
const readVolumeMin = 1

/**
 * Everything that is done to one dough, in its order: begun, water, dough temperature, scaled pieces, proof, oven,
 * counted, weighed an hour after, measured in seed twice, and a third time where two readings disagree.
 */
export function stepsOfDough(dough: DoughToBake): Step[] {
  const { batchId, readings, process, mishap, mixes, measures } = dough
  let revision = 0
  const measureIds = new Map<string, string>()
  const at = (minutes: number) => new Date(dough.startAt.getTime() + minutes * minuteMs)
  const step = (minutes: number, who: PersonKey, run: Step['run']): Step => ({ at: at(minutes), who, run })

  const move = async (caller: Caller, to: string, why?: string) => {
    must(await moveBatch.call(caller, { batchId, seenRevision: revision++, to, ...(why && { why }) }))
  }
  const log = async (
    caller: Caller,
    code: string,
    value: number,
    unit: string,
    place: { piece?: number; repeat?: number; confirmed?: boolean } = {},
  ) => {
    const { repeat = 1, piece, confirmed } = place
    const entry = {
      id: idAt(caller),
      batchId,
      measureId: measureIds.get(code),
      piece,
      repeat,
      value: String(value),
      unit,
      takenAt: timeOf(caller).toISOString(),
      confirmed,
    }
    return must(await logReading.call(caller, entry))
  }

  const weigh = ({ loafMassG }: SimulatedPiece, piece: number, minutes: number): Step[] => {
    if (mishap?.is !== 'slip' || mishap.piece !== piece)
      return [step(minutes, measures, (caller) => log(caller, 'loaf-mass', loafMassG, 'g', { piece }))]
    let wrongId = ''
    return [
      step(minutes, measures, async (caller) => {
        wrongId = (await log(caller, 'loaf-mass', Math.floor(loafMassG / 10), 'g', { piece, confirmed: true }))
          .readingId
      }),
      step(minutes + weighPieceMin / 2, measures, async (caller) => {
        const correction = {
          id: idAt(caller),
          supersedesId: wrongId,
          piece,
          repeat: 1,
          value: String(loafMassG),
          unit: 'g',
          reason: mishap.reason,
        }
        must(await correctReading.call(caller, correction))
      }),
    ]
  }
  const measure = ({ volumesMl }: SimulatedPiece, piece: number, minutes: number): Step[] => {
    let needsThird = false
    return volumesMl.map((volumeMl, i) =>
      step(minutes + i * readVolumeMin, measures, async (caller) => {
        if (i === 2 && !needsThird) return
        needsThird = (await log(caller, 'loaf-volume', volumeMl, 'mL', { piece, repeat: i + 1 })).needs === 'third'
      }),
    )
  }

  const mixedMin = weighOutMin + process.mixTimeMin
  const scaledMin = mixedMin + process.bulkTimeMin
  const loadedMin = scaledMin + mouldMin + readings.proofTimeMin
  const outMin = loadedMin + process.bakeTimeMin
  const weighedMin = outMin + coolMin
  const inSeedMin = weighedMin + 2 + readings.pieces.length * weighPieceMin

  const toProofer = [
    step(0, mixes, async (caller) => {
      const seen = must(await getBatch.call(caller, { batchId }))
      for (const { id, code } of seen.measures) if (code !== null) measureIds.set(code, id)
      must(await beginBatch.call(caller, { batchId, seenRevision: seen.revision, cleanDownDone: seen.cleanDownFirst }))
      revision = seen.revision + 1
    }),
    step(weighOutMin - 1, mixes, (caller) => log(caller, 'water-added', readings.waterAddedG, 'g')),
    step(weighOutMin, mixes, (caller) => move(caller, 'in_work')),
    step(mixedMin, mixes, (caller) => log(caller, 'dough-temp', readings.doughTempC, '°C')),
    ...readings.pieces.map(({ doughMassG }, i) =>
      step(scaledMin + i * weighPieceMin, mixes, (caller) =>
        log(caller, 'dough-mass', doughMassG, 'g', { piece: i + 1 }),
      ),
    ),
  ]
  if (mishap?.is === 'lost') return [...toProofer, step(loadedMin, mixes, (caller) => move(caller, 'lost', mishap.why))]
  return [
    ...toProofer,
    step(loadedMin, mixes, (caller) => log(caller, 'proof-time', readings.proofTimeMin, 'min')),
    step(outMin, mixes, (caller) => move(caller, 'baked')),
    step(outMin + 2, mixes, async (caller) => {
      must(
        await countPieces.call(caller, {
          batchId,
          seenRevision: revision++,
          piecesMade: readings.piecesMade,
          piecesGood: readings.piecesGood,
        }),
      )
    }),
    ...readings.pieces.flatMap((piece, i) => weigh(piece, i + 1, weighedMin + i * weighPieceMin)),
    ...readings.pieces.flatMap((piece, i) => measure(piece, i + 1, inSeedMin + 3 * i * readVolumeMin)),
    step(inSeedMin + 3 * readings.pieces.length * readVolumeMin, measures, (caller) => move(caller, 'measured')),
  ]
}

/** The moment at which somebody acts. */
function timeOf({ now }: Caller): Date {
  return now ? now() : new Date()
}

/** An id as a device makes one at that moment. */
function idAt(caller: Caller): string {
  return uuid({ msecs: timeOf(caller).getTime() })
}
