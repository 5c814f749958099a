import { v7 as uuid } from 'uuid'
import type { Caller } from '../lib/kitchen/caller'
import { takeEntries } from '../lib/kitchen/intake/take-entries'
import { correctReading } from '../lib/kitchen/readings/correct-reading'
import { beginBatch } from '../lib/kitchen/shifts/begin-batch'
import { countPieces } from '../lib/kitchen/shifts/count-pieces'
import { getBatch } from '../lib/kitchen/shifts/get-batch'
import { moveBatch } from '../lib/kitchen/shifts/move-batch'
import { logWeighings } from '../lib/kitchen/weighings/log-weighings'
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
  /** Whether it is written line by line what was weighed. */
  isWritten: boolean
  mishap: Mishap | undefined
}

/** From weighing out to the mixer, from scaling to moulded, from the oven to the scale; then each piece, and each reading of its volume. */
const weighOutMin = 9
const mouldMin = 12
const coolMin = 60
const weighPieceMin = 0.5
const readVolumeMin = 1

/** A value as an instrument shows it; `id` is the device's own. */
type Read = {
  id: string
  code: string
  value: number
  unit: string
  piece?: number
  repeat?: number
  /** Minutes after the dough was begun. */
  minutes: number
  confirmed?: boolean
}

/**
 * Everything that is done to one dough, in its order: begun, weighed out, water, dough temperature, scaled pieces, proof, oven,
 * counted, weighed an hour after, measured in seed twice, and a third time where two readings disagree. What is read
 * one after another is sent together, as devices send it.
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
  const reading = (read: Omit<Read, 'id'>): Read => ({ ...read, id: uuid({ msecs: at(read.minutes).getTime() }) })
  /** Sends readings; answers for each whether its place asks for a third because two disagree. */
  const send = async (caller: Caller, reads: readonly Read[]): Promise<boolean[]> => {
    const entries = reads.map(({ code, value, minutes, repeat = 1, ...rest }) => ({
      ...rest,
      kind: 'reading',
      batchId,
      measureId: measureIds.get(code),
      repeat,
      value: String(value),
      takenAt: at(minutes).toISOString(),
    }))
    return must(await takeEntries.call(caller, { entries })).entries.map((entry) => {
      if (entry.outcome !== 'kept') throw new Error(`a reading of the demo was ${entry.outcome}`)
      return entry.about.needs === 'third'
    })
  }
  /** Readings one after another, sent with the last of them. */
  const read = (who: PersonKey, reads: readonly Read[]): Step =>
    step(Math.max(...reads.map(({ minutes }) => minutes)), who, (caller) => send(caller, reads))
  const readOne = (who: PersonKey, code: string, value: number, unit: string, minutes: number): Step =>
    read(who, [reading({ code, value, unit, minutes })])
  const ofPieces = (what: (piece: SimulatedPiece) => Pick<Read, 'code' | 'value' | 'unit'>, begin: number): Read[] =>
    readings.pieces.map((piece, i) => reading({ ...what(piece), piece: i + 1, minutes: begin + i * weighPieceMin }))

  const mixedMin = weighOutMin + process.mixTimeMin
  const scaledMin = mixedMin + process.bulkTimeMin
  const loadedMin = scaledMin + mouldMin + readings.proofTimeMin
  const outMin = loadedMin + process.bakeTimeMin
  const weighedMin = outMin + coolMin
  const inSeedMin = weighedMin + 2 + readings.pieces.length * weighPieceMin
  const measuredMin = inSeedMin + 3 * readings.pieces.length * readVolumeMin

  const weighLoaves = (): Step[] => {
    const loaves = ofPieces(({ loafMassG }) => ({ code: 'loaf-mass', value: loafMassG, unit: 'g' }), weighedMin)
    if (mishap?.is !== 'slip') return [read(measures, loaves)]
    const { piece, reason } = mishap
    const typed = loaves.map((loaf) =>
      loaf.piece === piece ? { ...loaf, value: Math.floor(loaf.value / 10), confirmed: true } : loaf,
    )
    const corrections = loaves
      .filter((loaf) => loaf.piece === piece)
      .map((loaf) =>
        step(loaf.minutes + 1, measures, async (caller) => {
          const id = uuid({ msecs: at(loaf.minutes + 1).getTime() })
          const { unit, value } = loaf
          const correction = { id, supersedesId: loaf.id, piece, repeat: 1, value: String(value), unit, reason }
          must(await correctReading.call(caller, correction))
        }),
      )
    return [read(measures, typed), ...corrections]
  }
  const measureLoaves = async (caller: Caller) => {
    const volumes = readings.pieces.map(({ volumesMl }, i) =>
      volumesMl.map((value, repeat) =>
        reading({
          code: 'loaf-volume',
          value,
          unit: 'mL',
          piece: i + 1,
          repeat: repeat + 1,
          minutes: inSeedMin + (3 * i + repeat) * readVolumeMin,
        }),
      ),
    )
    const twice = volumes.flatMap((ofPiece) => ofPiece.slice(0, 2))
    const disagree = await send(caller, twice)
    const third = volumes.flatMap((ofPiece, i) => (disagree[2 * i + 1] ? ofPiece.slice(2) : []))
    if (third.length > 0) await send(caller, third)
  }

  /** A tap for what every dough has the same of, and what the scale showed for the rest. */
  const writeWeighed = async (caller: Caller) => {
    const { weighed } = must(await getBatch.call(caller, { batchId }))
    const lines = (weighed ?? []).map(({ stage, ingredient, part, isSame, target }) => {
      const place = { stageId: stage.id, ingredientId: ingredient.id, part, seenId: null }
      if (!target) throw new Error('whoever mixes knows the dough')
      const isOff = mishap?.is === 'line-off' && mishap.ingredient === ingredient.name
      if (isOff) return { ...place, how: 'weighed', mass: onScale(mishap.times * target.massG, target.stepG) }
      if (isSame) return { ...place, how: 'ticked' }
      return target.massG > 0
        ? { ...place, how: 'weighed', mass: onScale(target.massG, target.stepG) }
        : { ...place, how: 'left_out' }
    })
    must(await logWeighings.call(caller, { batchId, lines, unit: 'g', confirmed: false }))
  }

  const toProofer = [
    step(0, mixes, async (caller) => {
      const seen = must(await getBatch.call(caller, { batchId }))
      for (const { id, code } of seen.measures) if (code !== null) measureIds.set(code, id)
      must(await beginBatch.call(caller, { batchId, seenRevision: seen.revision, cleanDownDone: seen.cleanDownFirst }))
      revision = seen.revision + 1
    }),
    readOne(mixes, 'water-added', readings.waterAddedG, 'g', weighOutMin - 1),
    ...(dough.isWritten ? [step(weighOutMin - 0.5, mixes, writeWeighed)] : []),
    step(weighOutMin, mixes, (caller) => move(caller, 'in_work')),
    readOne(mixes, 'dough-temp', readings.doughTempC, '°C', mixedMin),
    read(
      mixes,
      ofPieces(({ doughMassG }) => ({ code: 'dough-mass', value: doughMassG, unit: 'g' }), scaledMin),
    ),
  ]
  if (mishap?.is === 'lost') return [...toProofer, step(loadedMin, mixes, (caller) => move(caller, 'lost', mishap.why))]
  return [
    ...toProofer,
    readOne(mixes, 'proof-time', readings.proofTimeMin, 'min', loadedMin),
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
    ...weighLoaves(),
    step(measuredMin, measures, measureLoaves),
    step(measuredMin, measures, (caller) => move(caller, 'measured')),
  ]
}

/** A mass as a scale of these steps shows it, g. */
function onScale(massG: number, stepG: number): string {
  return String(Number((Math.round(massG / stepG) * stepG).toPrecision(12)))
}
