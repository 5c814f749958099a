import 'server-only'
import type { ActorOf } from '../../auth/rights'
import type { Json } from '../../documents/canonical-text'
import { hashOfText } from '../../documents/hash-of-text'
import { readEnteredValue } from '../readings/read-entered-value'
import { toBaseUnit } from '../readings/to-base-unit'
import { Refusal } from '../refusal'
import { momentOfStep } from '../steps/moment-of-step.input'
import { sureOf } from '../sure-of'
import { checkContentText } from './check-content.input'
import type { CheckFacts, CheckRow, InstrumentRow } from './check-facts'
import { icePointC, judgeShown, offMostOfGauge, offMostOfScale, offMostOfThermometer } from './judge-shown.input'
import type { CheckEntry } from './log-check.input'

export type CheckVerdict = { outcome: 'ready'; row: CheckRow; note: { [name: string]: Json } } | { outcome: 'again' }

/**
 * Judges one check. It is kept whatever it shows, also of an instrument that is no longer in use: it was made while it
 * was. A later one stands beside it and changes nothing of it.
 * @throws Refusal not-found, check-clash, and what is wrong at a field
 */
export function judgeCheck(
  entry: CheckEntry,
  facts: CheckFacts,
  { actor, now }: { actor: ActorOf<'log-reading'>; now: Date },
): CheckVerdict {
  const id = entry.id.toLowerCase()
  const contentHash = hashOfText(checkContentText(entry))
  const known = facts.hashes.get(id)
  if (known === contentHash) return { outcome: 'again' }
  if (known !== undefined) throw new Refusal('check-clash')
  const instrument = facts.equipment.get(entry.equipmentId.toLowerCase())
  if (!instrument) throw new Refusal('not-found')
  const judged = shownOf(entry, instrument)
  const takenAt = new Date(entry.takenAt)
  const clockAheadS = entry.clockAheadS ?? null
  const moment = { takenAt: takenAt.getTime(), clockAheadS, agoS: 0, receivedAt: now.getTime(), begunAt: null }
  return {
    outcome: 'ready',
    row: {
      bakeryId: actor.bakeryId,
      id,
      equipmentId: instrument.id,
      ...judged,
      shownEntered: entry.shown,
      unitEntered: entry.unit,
      at: new Date(momentOfStep(moment)),
      clockAheadS,
      personId: actor.personId,
      takenAt,
      receivedAt: now,
      contentHash,
    },
    note: { equipment: instrument.name, isGood: judged.isGood, hash: contentHash },
  }
}

/** What was shown and what was known, in base units, and whether the one was near enough to the other. */
function shownOf(entry: CheckEntry, of: InstrumentRow) {
  const none = {
    massG: null,
    shownG: null,
    offMostG: null,
    shownC: null,
    offMostC: null,
    blockMl: null,
    shownMl: null,
    offMostMl: null,
  }
  if (of.kind !== 'volume_gauge' && isSaid(entry.block)) throw Refusal.at('block', 'no-block')
  switch (of.kind) {
    case 'scale': {
      const massG = knownMass(entry, of)
      const shownG = inBase('shown', entry.shown, entry.unit, 'g')
      const offMostG = offMostOfScale({ ...of, resolutionG: sureOf(of.resolutionG, 'the steps of a scale') })
      return { ...none, massG, shownG, offMostG, ...goodOf({ shown: shownG, known: massG, offMost: offMostG }) }
    }
    case 'thermometer': {
      if (isSaid(entry.mass)) throw Refusal.at('mass', 'no-weight-in-ice')
      const shownC = inBase('shown', entry.shown, entry.unit, '°C')
      const offMostC = offMostOfThermometer({ ...of, resolutionC: sureOf(of.resolutionC, 'its steps') })
      return { ...none, shownC, offMostC, ...goodOf({ shown: shownC, known: icePointC, offMost: offMostC }) }
    }
    case 'volume_gauge': {
      if (isSaid(entry.mass)) throw Refusal.at('mass', 'no-weight-in-gauge')
      const blockMl = knownVolume(entry, of)
      const shownMl = inBase('shown', entry.shown, entry.unit, 'mL')
      const offMostMl = offMostOfGauge({ offMostMl: of.offMostMl, blockMl })
      return { ...none, blockMl, shownMl, offMostMl, ...goodOf({ shown: shownMl, known: blockMl, offMost: offMostMl }) }
    }
    default:
      throw Refusal.at('equipmentId', 'wrong-choice')
  }
}

function goodOf(q: Parameters<typeof judgeShown>[0]): { isGood: boolean } {
  return { isGood: judgeShown(q).isGood }
}

/** The mass on a scale: what was said, otherwise what the bakery keeps for it. */
function knownMass({ mass, unit }: CheckEntry, { testMassG, mostG }: InstrumentRow): number {
  if (!isSaid(mass)) {
    if (testMassG === null) throw Refusal.at('mass', 'missing')
    return testMassG
  }
  const massG = inBase('mass', mass, unit, 'g')
  const most = sureOf(mostG, 'the most of a scale')
  if (massG <= 0) throw Refusal.at('mass', 'not-above', { min: 0 })
  if (massG > most) throw Refusal.at('mass', 'too-big', { max: most })
  return massG
}

/** The volume of the block in a gauge: what was said, otherwise what the bakery keeps for it. */
function knownVolume({ block, unit }: CheckEntry, { blockMl: kept, volumeMl }: InstrumentRow): number {
  if (!isSaid(block)) {
    if (kept === null) throw Refusal.at('block', 'missing')
    return kept
  }
  const blockMl = inBase('block', block, unit, 'mL')
  const most = sureOf(volumeMl, 'the volume of a gauge')
  if (blockMl <= 0) throw Refusal.at('block', 'not-above', { min: 0 })
  if (blockMl > most) throw Refusal.at('block', 'too-big', { max: most })
  return blockMl
}

function isSaid(text: string | null | undefined): text is string {
  return text !== null && text !== undefined
}

function inBase(field: 'mass' | 'block' | 'shown', typed: string, unit: string, baseUnit: string): number {
  const read = readEnteredValue(typed)
  if ('fault' in read) throw Refusal.at(field, read.fault)
  const value = toBaseUnit({ number: read.number, unit, baseUnit })
  if (value === undefined) throw Refusal.at('unit', 'unit-not-of-measure', { unit: baseUnit })
  return value
}
