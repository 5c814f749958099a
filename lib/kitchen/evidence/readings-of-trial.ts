import 'server-only'
import { loafLosses } from '../../calc/loaf/loaf-losses'
import { specificVolumeMlPerG } from '../../calc/loaf/specific-volume'
import { summariseReadings } from '../../calc/loaf/summarise-readings'
import type { Db, Tx } from '../../db/client'
import type { ConditionCode, MeasuredBatch } from './trial-facts'

type Measure = { id: string; code: string | null; level: 'batch' | 'piece' }
type Read = Pick<MeasuredBatch, 'pieces' | 'conditions'>

const usedCodes = ['dough-temp', 'proof-time', 'water-added', 'dough-mass', 'loaf-mass', 'loaf-volume'] as const

/**
 * What was read of each batch, by its id: the primary measure of each piece, and the conditions. A corrected reading
 * gives way to its correction, and repeats of one piece are averaged. A measure of the whole batch counts as one piece.
 */
export async function readingsOfTrial(from: Db | Tx, bakeryId: string, trialId: string, primary: Measure): Promise<Map<string, Read>> {
  const rows = await from.reading.findMany({
    where: { bakeryId, trialId, supersededBy: { none: {} }, measure: { OR: [{ id: primary.id }, { code: { in: [...usedCodes] } }] } },
    select: { batchId: true, piece: true, factorLevel: true, value: true, measure: { select: { id: true, code: true } } },
    orderBy: [{ batchId: 'asc' }, { piece: 'asc' }, { repeat: 'asc' }, { id: 'asc' }],
  })
  const byBatch = grouped(rows, ({ batchId }) => batchId)
  return new Map([...byBatch].map(([batchId, ofBatch]) => [batchId, readOf(ofBatch, primary)]))
}

type Row = { piece: number | null; factorLevel: string | null; value: number; measure: { id: string; code: string | null } }

function readOf(rows: readonly Row[], primary: Measure): Read {
  const ofBatch = rows.filter(({ piece }) => piece === null)
  const condition = (code: ConditionCode) => mean(ofBatch.filter(({ measure }) => measure.code === code))
  const conditions = { 'dough-temp': condition('dough-temp'), 'proof-time': condition('proof-time'), 'water-added': condition('water-added') }
  if (primary.level === 'batch') {
    const value = mean(ofBatch.filter(({ measure }) => measure.id === primary.id))
    return { pieces: value === null ? [] : [{ piece: 1, level: null, value, loafMassG: null, volumeMl: null }], conditions }
  }
  const pieces = grouped(
    rows.filter(({ piece }) => piece !== null),
    ({ piece, factorLevel }) => `${piece} ${factorLevel ?? ''}`,
  )
  return { pieces: [...pieces.values()].map((readings) => pieceOf(readings, primary)), conditions }
}

function pieceOf(readings: readonly Row[], primary: Measure): MeasuredBatch['pieces'][number] {
  const byCode = (code: (typeof usedCodes)[number]) => mean(readings.filter(({ measure }) => measure.code === code))
  const [doughMassG, loafMassG, volumeMl] = [byCode('dough-mass'), byCode('loaf-mass'), byCode('loaf-volume')]
  const value = () => {
    switch (primary.code) {
      case 'specific-volume':
        return volumeMl !== null && loafMassG !== null && volumeMl > 0 && loafMassG > 0 ? specificVolumeMlPerG({ volumeMl, massG: loafMassG }) : null
      case 'bake-loss':
        if (doughMassG === null || loafMassG === null || loafMassG <= 0 || loafMassG > doughMassG) return null
        return 100 * loafLosses({ doughMassG, hotMassG: loafMassG, cooledMassG: loafMassG }).totalLossShare
      default:
        return mean(readings.filter(({ measure }) => measure.id === primary.id))
    }
  }
  return { piece: readings[0]?.piece ?? 0, level: readings[0]?.factorLevel ?? null, value: value(), loafMassG, volumeMl }
}

function mean(readings: readonly { value: number }[]): number | null {
  return readings.length === 0 ? null : summariseReadings(readings.map(({ value }) => value)).mean
}

function grouped<T>(list: readonly T[], keyOf: (each: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>()
  for (const each of list) {
    const group = groups.get(keyOf(each))
    if (group) group.push(each)
    else groups.set(keyOf(each), [each])
  }
  return groups
}
