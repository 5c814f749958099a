import { v7 as uuid } from 'uuid'
import { openSession } from '@/lib/auth/sessions'
import { db } from '@/lib/db/client'
import { inTransaction } from '@/lib/db/transaction'
import type { DeskCaller } from '@/lib/kitchen/caller'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { correctReading } from '@/lib/kitchen/readings/correct-reading'
import { importReadings } from '@/lib/kitchen/readings/import/import-readings'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { settleEntry } from '@/lib/kitchen/readings/settle-entry'
import type { Refused, Result } from '@/lib/kitchen/result'
import { addDay } from '@/lib/kitchen/repairs/add-day'
import { bakeAgain } from '@/lib/kitchen/repairs/bake-again'
import { swapDoughs } from '@/lib/kitchen/repairs/swap-doughs'
import { closeTrial } from '@/lib/kitchen/results/close-trial'
import { unfinishedStates } from '@/lib/kitchen/batches/rules'
import { isOutState } from '@/lib/kitchen/conduct/is-out-state'
import { gapsOfDough } from '@/lib/kitchen/readings/gaps-of-trial'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { countPieces } from '@/lib/kitchen/shifts/count-pieces'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { noteCause } from '@/lib/kitchen/shifts/note-cause'
import { noteFoundCause } from '@/lib/kitchen/shifts/note-found-cause'
import { signFoundCause } from '@/lib/kitchen/shifts/sign-found-cause'
import { undoMove } from '@/lib/kitchen/shifts/undo-move'
import { mixedBatches } from '@/lib/kitchen/batches/mixed-batches'
import { dayOfDate } from '@/lib/kitchen/day-of-date'
import { dateMixingDays } from '@/lib/kitchen/trials/date-mixing-days'
import type { TrialLine } from '@/lib/kitchen/weighings/lines-of-plan'
import { logWeighings } from '@/lib/kitchen/weighings/log-weighings'
import type { ApprovedTrial } from '../approved-trial'
import { callerOf, type TestBakery, type TestPerson } from '../bakery'
import {
  causeNoted,
  foundBy,
  msOf,
  reasonGiven,
  typed,
  units,
  type LineSaid,
  type Move,
  type Outcome,
  type ReadingSpot,
} from './moves'

/** The moves of the floor as the commands of a bakery's head baker, against the database, by the same clock. */
export class Book {
  private secret: string | null = null

  constructor(
    private readonly bakery: TestBakery,
    private readonly trial: ApprovedTrial,
    private readonly lines: readonly TrialLine[],
    public now: Date,
  ) {}

  async play(move: Move): Promise<Outcome> {
    this.now = new Date(this.now.getTime() + msOf(move))
    // A session is of one morning; the next one signs in anew.
    if (move.do === 'wait' || this.secret === null) await this.signIn()
    if (move.do === 'wait') return 'done'
    if (move.do === 'send') return this.send(move.dough, move, move.value)
    const result = await this.command(move)
    return result.ok ? 'done' : codeOf(result.refusal)
  }

  /** Whoever plays, at this moment. */
  caller(): DeskCaller {
    return callerOf(this.secret, this.now)
  }

  private async command(move: Exclude<Move, { do: 'wait' | 'send' }>): Promise<Result<unknown>> {
    if (move.do === 'close') return this.close()
    const caller = this.caller()
    if (move.do === 'day') return addDay.call(caller, { trialId: this.trial.trialId, number: move.day })
    if (move.do === 'date') return this.date(move.day, move.date)
    const batch = await this.batch(move.dough)
    const which = { batchId: batch.id, seenRevision: batch.revision }
    switch (move.do) {
      case 'begin':
        return beginBatch.call(caller, {
          ...which,
          cleanDownDone: true,
          ...(move.early ? { swapWhy: reasonGiven } : {}),
        })
      case 'move': {
        const gaps = await gapsOfDough(db(), this.bakery.bakeryId, this.trial.trialId, batch.id)
        const needsWhy = isOutState(move.to) || (move.to === 'measured' && gaps.length > 0)
        return moveBatch.call(caller, { ...which, to: move.to, ...(needsWhy ? { why: reasonGiven } : {}) })
      }
      case 'undo':
        return undoMove.call(caller, which)
      case 'note':
        return noteCause.call(caller, { batchId: batch.id, what: causeNoted, noticedMinAgo: 0 })
      case 'find':
        return noteFoundCause.call(caller, { batchId: batch.id, object: foundBy, what: causeNoted })
      case 'sign':
        return this.sign(which, move.by)
      case 'count':
        return countPieces.call(caller, { ...which, piecesMade: move.made, piecesGood: move.made })
      case 'read':
        return logReading.call(caller, this.entryOf(batch.id, move, move.value))
      case 'correct':
        return correctReading.call(caller, {
          id: uuid(),
          supersedesId: (await this.holding(batch.id, move.at)) ?? uuid(),
          piece: move.piece,
          repeat: move.repeat,
          value: typed(move.value),
          unit: units[move.measure],
          reason: reasonGiven,
          confirmed: true,
        })
      case 'settle':
        return this.settle(batch.id, move.take)
      case 'file':
        return this.file(move.dough, move.piece, move.values)
      case 'weigh':
        return this.weigh(batch.id, move.lines)
      case 'again':
        return bakeAgain.call(caller, { batchId: batch.id })
      case 'swap':
        return this.swap(batch.id, move.other)
      default:
        return move satisfies never
    }
  }

  private async sign(
    { batchId, seenRevision }: { batchId: string; seenRevision: number },
    by: 'self' | 'second',
  ): Promise<Result<unknown>> {
    const { bakeryId } = this.bakery
    const cause = await db().foundCause.findFirst({
      where: { bakeryId, batchId, signature: null },
      orderBy: { at: 'asc' },
      select: { id: true },
    })
    const caller = by === 'self' ? this.caller() : callerOf(await this.sessionOf(this.bakery.late), this.now)
    return signFoundCause.call(caller, { foundCauseId: cause?.id ?? nobodys.entryId, seenRevision })
  }

  private async send(dough: string, spot: ReadingSpot, value: number): Promise<Outcome> {
    const { id } = await this.batch(dough)
    const sent = { kind: 'reading', ...this.entryOf(id, spot, value) }
    const result = await takeEntries.call(this.caller(), { entries: [sent] })
    if (!result.ok) return codeOf(result.refusal)
    const [answer] = result.value.entries
    return answer?.outcome === 'refused' ? codeOf(answer.refusal) : 'done'
  }

  private async settle(batchId: string, take: boolean): Promise<Result<unknown>> {
    const entry = await db().entryToSettle.findFirst({
      where: { bakeryId: this.bakery.bakeryId, batchId, settled: null },
      orderBy: { receivedAt: 'asc' },
      select: { entryId: true, hash: true, text: true },
    })
    if (!entry) return settleEntry.call(this.caller(), { ...nobodys, take, seenReadingId: null, reason: reasonGiven })
    const { measure, piece, repeat } = JSON.parse(entry.text) as { measure: string; piece: number; repeat: number }
    const code = Object.entries(this.trial.measures).find(([, id]) => id === measure)![0]
    const { entryId, hash } = entry
    const seenReadingId = take ? await this.holding(batchId, { measure: code, piece, repeat }) : null
    return settleEntry.call(this.caller(), { entryId, hash, take, seenReadingId, reason: reasonGiven })
  }

  private file(dough: string, piece: number, values: readonly number[]): Promise<Result<unknown>> {
    const measureId = this.trial.measures['loaf-volume']!
    const rows = [
      ['code', 'piece', 'time', ...values.map((_, i) => `volume ${i + 1}`)],
      [dough, piece, this.now.toISOString(), ...values.map(typed)],
    ]
    return importReadings.call(this.caller(), {
      trialId: this.trial.trialId,
      file: { name: 'loaves.csv', bytes: Buffer.from(rows.map((row) => row.join(',')).join('\n')) },
      day: null,
      keepOdd: true,
      outside: null,
      match: {
        separator: ',',
        decimal: '.',
        arms: [],
        columns: [
          { as: 'code' },
          { as: 'piece' },
          { as: 'time' },
          ...values.map(() => ({ as: 'measure', measureId, unit: 'mL' })),
        ],
      },
    })
  }

  private async weigh(batchId: string, said: readonly LineSaid[]): Promise<Result<unknown>> {
    const written = await db().weighing.findMany({ where: { bakeryId: this.bakery.bakeryId, batchId } })
    const corrected = new Set(written.map(({ supersedesId }) => supersedesId))
    return logWeighings.call(this.caller(), {
      batchId,
      lines: said.map(({ line, how, massG }) => {
        const { stage, ingredient, part } = this.lines[line]!
        const stands = written.find(
          (each) =>
            each.stageId === stage.id &&
            each.ingredientId === ingredient.id &&
            each.part === part &&
            !corrected.has(each.id),
        )
        return {
          stageId: stage.id,
          ingredientId: ingredient.id,
          part,
          seenId: stands?.id ?? null,
          how,
          ...(how === 'weighed' ? { mass: typed(massG) } : {}),
        }
      }),
      unit: 'g',
      reason: reasonGiven,
      confirmed: false,
    })
  }

  private async swap(batchId: string, other: string): Promise<Result<unknown>> {
    const { bakeryId } = this.bakery
    const ofTrial = await mixedBatches(db(), bakeryId, this.trial.trialId)
    return swapDoughs.call(this.caller(), {
      batchId,
      seenTurn: ofTrial.find(({ id }) => id === batchId)!.turn,
      otherId: (await this.batch(other)).id,
      why: reasonGiven,
    })
  }

  private async date(number: number, date: string | null): Promise<Result<unknown>> {
    const { bakeryId } = this.bakery
    const { trialId } = this.trial
    const there = await db().mixingDay.findFirst({ where: { bakeryId, trialId, number }, select: { day: true } })
    return dateMixingDays.call(this.caller(), {
      trialId,
      days: [{ number, seen: there ? dayOfDate(there.day) : null, day: date }],
    })
  }

  private async close(): Promise<Result<unknown>> {
    const key = { bakeryId: this.bakery.bakeryId, trialId: this.trial.trialId }
    const { revision } = await db().trial.findUniqueOrThrow({
      where: { bakeryId_id: { bakeryId: key.bakeryId, id: key.trialId } },
    })
    const open = await db().batch.count({ where: { ...key, state: { in: unfinishedStates } } })
    return closeTrial.call(this.caller(), {
      trialId: key.trialId,
      seenRevision: revision,
      early: open > 0,
      reason: reasonGiven,
    })
  }

  private batch(code: string) {
    return db().batch.findFirstOrThrow({
      where: { bakeryId: this.bakery.bakeryId, trialId: this.trial.trialId, code },
      select: { id: true, revision: true },
    })
  }

  private async holding(batchId: string, { measure, piece, repeat }: ReadingSpot): Promise<string | null> {
    const found = await db().readingPlace.findFirst({
      where: {
        bakeryId: this.bakery.bakeryId,
        batchId,
        measureId: this.trial.measures[measure]!,
        piece,
        repeat,
        factorLevel: null,
      },
      select: { readingId: true },
    })
    return found?.readingId ?? null
  }

  private entryOf(batchId: string, { measure, piece, repeat }: ReadingSpot, value: number) {
    return {
      id: uuid(),
      batchId,
      measureId: this.trial.measures[measure],
      piece,
      repeat,
      value: typed(value),
      unit: units[measure],
      takenAt: this.now.toISOString(),
    }
  }

  private async signIn(): Promise<void> {
    this.secret = await this.sessionOf(this.bakery.head)
  }

  private sessionOf({ personId }: TestPerson): Promise<string> {
    const { bakeryId } = this.bakery
    return inTransaction((tx) => openSession(tx, { bakeryId, personId }, 'test', this.now))
  }
}

/** An entry that nobody sent. */
const nobodys = { entryId: '01900000-0000-7000-8000-000000000000', hash: '0'.repeat(64) }

function codeOf({ code, problems }: Pick<Refused, 'code' | 'problems'>): Outcome {
  return problems[0]?.code ?? code
}
