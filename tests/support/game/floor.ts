import { whyNotTakenOut } from '@/lib/kitchen/conduct/why-not-taken-out'
import { signsFoundCause } from '@/lib/kitchen/conduct/signs-found-cause'
import { isOutState } from '@/lib/kitchen/conduct/is-out-state'
import { isOver, mayMove, whyNoUndo } from '@/lib/kitchen/batches/rules'
import { gapsOfBatch } from '@/lib/kitchen/readings/gaps-of-batch'
import type { ImportFacts } from '@/lib/kitchen/readings/import/load-import-facts'
import { readImport } from '@/lib/kitchen/readings/import/read-import'
import { judgeReading, type ReadingVerdict } from '@/lib/kitchen/readings/judge-reading'
import type { ReadingRow } from '@/lib/kitchen/readings/keep-readings'
import type { RangeFacts } from '@/lib/kitchen/readings/plausible-range'
import type { ReadingEntry } from '@/lib/kitchen/readings/reading-content.input'
import { keyOfPlace, noteReading, type BatchFacts, type ReadingFacts } from '@/lib/kitchen/readings/reading-facts'
import { tellingMeasures } from '@/lib/kitchen/readings/telling-measures'
import { Refusal } from '@/lib/kitchen/refusal'
import type { TrialContent } from '@/lib/kitchen/results/content-of-trial'
import type { DeclaredTrial } from '@/lib/kitchen/results/trial-facts'
import { mayBeFoundOut } from '@/lib/kitchen/shifts/may-be-found-out'
import { firstNotAsPlanned } from '@/lib/kitchen/repairs/first-not-as-planned'
import type { PlannedOrder } from '@/lib/kitchen/repairs/order-of-added-day'
import type { TrialLine } from '@/lib/kitchen/weighings/lines-of-plan'
import type { ActorOf } from '@/lib/auth/rights'
import type { TrialState } from '@/lib/db/generated/enums'
import { causeNoted, msOf, reasonGiven, typed, units, type Move, type Outcome, type ReadingSpot } from './moves'
import { Repairs } from './repairs'
import { Scales } from './scales'

type Dough = TrialContent['doughs'][number]

export type FloorSetup = {
  trialId: string
  declared: Omit<DeclaredTrial, 'state'>
  primary: { id: string; code: string | null; level: 'batch' | 'piece' }
  piecesPerBatch: number
  measures: TrialContent['measures']
  ranges: RangeFacts
  doughs: readonly Pick<Dough, 'id' | 'code' | 'arm' | 'day' | 'plannedOrder'>[]
  /** As it was approved: what it draws next, and what is weighed. */
  plan: PlannedOrder
  lines: TrialLine[]
  timeZone: string
  /** A head baker, who may correct any reading, import and settle. */
  player: { bakeryId: string; id: string; name: string }
  begin: Date
}

/** A second person of the bakery, who does what the player wants. */
const secondId = 'second'

type Moved = Pick<
  Parameters<typeof whyNoUndo>[0]['batch'],
  'revision' | 'movedFrom' | 'movedAt' | 'movedById' | 'movedRevision'
>
type Aside = { dough: string; entry: Extract<ReadingEntry, { batchId: string }> }

/**
 * A bakery's floor of nothing but its pure rules: what a move changes is what they say, so that thousands of trials can
 * be played in seconds. The commands are played against it in tests/database/conduct.
 */
export class Floor {
  now: Date
  state: TrialState = 'approved'
  private doughs: Map<string, Dough>
  private moved = new Map<string, Moved>()
  private readings: TrialContent['readings'] = []
  private aside: Aside[] = []
  causes: { dough: string; at: Date }[] = []
  found: { dough: string; at: Date; isSigned: boolean }[] = []
  private facts: ReadingFacts
  private entries = 0
  private scales: Scales
  private repairs: Repairs

  constructor(readonly setup: FloorSetup) {
    this.now = setup.begin
    this.doughs = new Map(setup.doughs.map((dough) => [dough.code, waiting(dough)]))
    this.scales = new Scales(setup.lines)
    const { id, name } = setup.player
    this.repairs = new Repairs({ plan: setup.plan, timeZone: setup.timeZone, by: { id, name } })
    this.facts = {
      batches: new Map(),
      measures: new Map(setup.measures.map((measure) => [measure.id, measure])),
      readings: new Map(),
      places: new Map(),
      ranges: new Map([[setup.trialId, setup.ranges]]),
      aside: new Map(),
    }
  }

  /** Another floor where everything is as it is here. */
  fork(): Floor {
    const other = new Floor(this.setup)
    other.now = this.now
    other.state = this.state
    other.doughs = new Map(this.doughs)
    other.moved = new Map(this.moved)
    other.readings = [...this.readings]
    other.aside = [...this.aside]
    other.causes = [...this.causes]
    other.found = [...this.found]
    other.entries = this.entries
    other.scales = this.scales.fork()
    other.repairs = this.repairs.fork()
    other.facts = {
      ...this.facts,
      readings: new Map(this.facts.readings),
      places: new Map(this.facts.places),
    }
    return other
  }

  dough(code: string): Dough {
    return this.doughs.get(code)!
  }

  /** Everything as it would be closed now; of one dough where it is named, with every repair. */
  content(code?: string): TrialContent {
    // What was found later is listed by `outcomeOf`.
    const rest = { measures: this.setup.measures, found: [], repairs: this.repairs.done }
    if (code === undefined)
      return { ...rest, doughs: this.inOrder(), readings: this.readings, weighings: this.scales.content() }
    const dough = this.dough(code)
    return {
      ...rest,
      doughs: [dough],
      readings: this.readings.filter((reading) => reading.dough === dough.id),
      weighings: this.scales.content(dough.id),
    }
  }

  /** Doughs that wait, those of each mixing day in their turn. */
  waiting(): Dough[] {
    const doughs = [...this.doughs.values()]
    const turnOf = this.repairs.turns(doughs)
    return doughs.filter(({ state }) => state === 'waiting').sort((a, b) => a.day - b.day || turnOf(a) - turnOf(b))
  }

  /** What holds at a place; undefined where nothing does. */
  holding(code: string, spot: ReadingSpot): { id: string; value: number } | undefined {
    return this.atPlace(code, spot).find(({ repeat }) => repeat === spot.repeat)
  }

  play(move: Move): Outcome {
    this.now = new Date(this.now.getTime() + msOf(move))
    try {
      this.doIt(move)
      return 'done'
    } catch (error) {
      if (error instanceof Refusal) return error.problems[0]?.code ?? error.code
      throw error
    }
  }

  private doIt(move: Move): void {
    switch (move.do) {
      case 'wait':
        return
      case 'begin': {
        this.begin(move.dough, move.early === true)
        return
      }
      case 'move': {
        this.move(move.dough, move.to)
        return
      }
      case 'undo': {
        this.undo(move.dough)
        return
      }
      case 'note':
        this.mustBeOpen()
        this.causes.push({ dough: move.dough, at: this.now })
        return
      case 'find':
        this.mustBeOpen()
        mayBeFoundOut(this.dough(move.dough).state)
        this.found.push({ dough: move.dough, at: this.now, isSigned: false })
        return
      case 'sign':
        this.sign(move.dough, move.by)
        return
      case 'count':
        this.mustBeOpen()
        if (this.dough(move.dough).state === 'waiting') throw new Refusal('batch-not-begun')
        if (this.dough(move.dough).state === 'not_baked') throw new Refusal('batch-not-baked')
        {
          this.change(move.dough, { piecesMade: move.made, piecesGood: move.made })
          return
        }
      case 'read': {
        this.atDesk(this.judge(move.dough, this.entryOf(move.dough, move, move.value)))
        return
      }
      case 'send': {
        const entry = this.entryOf(move.dough, move, move.value)
        const verdict = this.judge(move.dough, entry)
        if (verdict.outcome !== 'aside') {
          this.keep(verdict)
          return
        }
        this.aside.push({ dough: move.dough, entry })
        this.countAside(move.dough)
        return
      }
      case 'correct': {
        const wrong = this.holding(move.dough, move.at)
        if (!wrong) throw new Refusal('not-found')
        this.atDesk(this.judge(move.dough, this.correctionOf(wrong.id, move, move.value)))
        return
      }
      case 'settle': {
        this.settle(move.dough, move.take)
        return
      }
      case 'file': {
        this.file(move.dough, move.piece, move.values)
        return
      }
      case 'weigh':
        this.scales.write(this.batchFacts(move.dough), move.lines, {
          actor: this.actor(),
          now: this.now,
          nextId: () => this.nextId(),
        })
        return
      case 'again':
        this.mustBeOpen()
        this.take([this.repairs.bakeAgain(this.dough(move.dough), this.asked())])
        return
      case 'day':
        this.mustBeOpen()
        this.take(this.repairs.addDay(move.day, this.asked()))
        return
      case 'swap':
        this.mustBeOpen()
        this.repairs.swap(this.dough(move.dough), this.dough(move.other), this.now)
        return
      case 'date':
        this.mustBeOpen()
        this.repairs.date(move.day, move.date, this.inOrder())
        return
      case 'close': {
        this.close()
        return
      }
      default:
        return move satisfies never
    }
  }

  private begin(code: string, isEarly: boolean): void {
    this.mustBeOpen()
    const dough = this.dough(code)
    if (dough.state !== 'waiting') throw new Refusal('stale')
    if (!isEarly && this.waiting()[0]!.code !== code)
      throw new Refusal('before-its-turn', {}, [{ path: 'swapWhy', code: 'missing', facts: {} }])
    this.goes(dough, { state: 'weighing', begunAt: this.now.toISOString() })
    this.state = 'baking'
  }

  private move(code: string, to: Extract<Move, { do: 'move' }>['to']): void {
    this.mustBeOpen()
    const dough = this.dough(code)
    if (isOutState(to) && !isOver(dough.state)) {
      const telling = tellingMeasures(this.setup.measures, this.setup.primary.id)
      const read = this.content(code)
        .readings.filter(({ measure }) => telling.has(measure))
        .map(({ receivedAt }) => Date.parse(receivedAt))
      const fault = whyNotTakenOut({
        to,
        begunAt: dough.begunAt === null ? null : new Date(dough.begunAt),
        firstReadAt: read.length === 0 ? null : new Date(Math.min(...read)),
        causesNotedAt: this.causes.filter((cause) => cause.dough === code).map(({ at }) => at),
      })
      if (fault) throw new Refusal(fault)
    }
    if (!mayMove(dough.state, to)) throw new Refusal('not-the-next-step')
    const needsWhy = isOutState(to) || (to === 'measured' && this.hasGaps(dough))
    this.goes(dough, {
      state: to,
      stateWhy: needsWhy ? reasonGiven : null,
      doneAt: isOver(to) ? this.now.toISOString() : null,
    })
  }

  private sign(code: string, by: 'self' | 'second'): void {
    const cause = this.found.find(({ dough, isSigned }) => dough === code && !isSigned)
    if (!cause) throw new Refusal('not-found')
    this.mustBeOpen()
    mayBeFoundOut(this.dough(code).state)
    const { id } = this.setup.player
    const signs = signsFoundCause({ personId: by === 'self' ? id : secondId, foundById: id, people: [id, secondId] })
    if ('bar' in signs) throw new Refusal(signs.bar)
    this.found = this.found.map((each) => (each === cause ? { ...each, isSigned: true } : each))
    this.change(code, { state: 'set_aside', stateWhy: causeNoted, doneAt: this.now.toISOString() })
    this.moved.set(code, {
      ...this.movedOf(code),
      movedFrom: null,
      movedAt: null,
      movedById: null,
      movedRevision: null,
    })
  }

  private undo(code: string): void {
    this.mustBeOpen()
    const dough = this.dough(code)
    const moved = this.movedOf(code)
    const fault = whyNoUndo({ batch: moved, personId: this.setup.player.id, now: this.now })
    if (fault) throw new Refusal(fault)
    const { movedFrom, movedAt } = moved
    const left = movedFrom === 'waiting'
    const built =
      this.repairs.isBuiltOn(dough, movedAt!) ||
      this.content(code).readings.some(({ receivedAt }) => left || Date.parse(receivedAt) >= movedAt!.getTime()) ||
      (left &&
        [...this.doughs.values()].some(
          (other) => other.code !== code && other.begunAt !== null && Date.parse(other.begunAt) >= movedAt!.getTime(),
        ))
    if (built) throw new Refusal('undo-built-on')
    this.doughs.set(code, {
      ...dough,
      state: movedFrom!,
      stateWhy: null,
      doneAt: null,
      begunAt: left ? null : dough.begunAt,
    })
    this.moved.set(code, {
      ...moved,
      revision: moved.revision + 1,
      movedFrom: null,
      movedAt: null,
      movedById: null,
      movedRevision: null,
    })
    if (this.state === 'baking' && [...this.doughs.values()].every(({ begunAt }) => begunAt === null))
      this.state = 'approved'
  }

  private settle(code: string, take: boolean): void {
    this.mustBeOpen()
    const found = this.aside.find(({ dough }) => dough === code)
    if (!found) throw new Refusal('not-found')
    if (take) {
      const { entry } = found
      const spot = { piece: entry.piece ?? null, repeat: entry.repeat }
      const measure = this.setup.measures.find(({ id }) => id === entry.measureId)!.code!
      const there = this.holding(code, { ...spot, measure })
      this.atDesk(
        this.judge(
          code,
          there
            ? this.correctionOf(there.id, { ...spot, measure }, Number(entry.value))
            : { ...entry, id: this.nextId(), confirmed: true },
        ),
      )
    }
    this.aside = this.aside.filter((each) => each !== found)
    this.countAside(code)
  }

  private file(code: string, piece: number, values: readonly number[]): void {
    this.mustBeOpen()
    const dough = this.dough(code)
    if (dough.state === 'waiting') throw new Refusal('batch-not-begun')
    const { id: measureId } = this.measure('loaf-volume')
    const read = readImport({
      facts: this.importFacts(),
      match: {
        separator: ',',
        decimal: '.',
        arms: [],
        columns: values.map(() => ({ as: 'measure', measureId, unit: 'mL' })),
      },
      placed: [
        {
          line: 2,
          cells: values.map(typed),
          batchId: dough.id,
          piece: { piece, factorLevel: null },
          takenAt: this.now,
        },
      ],
      keepOdd: true,
    })
    const [fault] = read.faults
    if (fault) throw new Refusal('rows-at-fault', {}, [{ path: '', code: fault.code, facts: {} }])
    for (const { line: _, range, ...reading } of read.fresh)
      this.put({
        ...reading,
        supersedesId: null,
        reason: null,
        contentHash: reading.id,
        plausibleLeast: range.least,
        plausibleMost: range.most,
      })
  }

  /** As much of them as the rules of a file look at. */
  private importFacts(): ImportFacts {
    const { trialId, piecesPerBatch, measures, ranges } = this.setup
    return {
      trial: { id: trialId, piecesPerBatch, factorName: null, factorLevels: [] },
      measures,
      ranges,
      readings: this.readings.map(({ dough, measure, supersedes, receivedAt, ...reading }) => ({
        ...reading,
        batchId: dough,
        measureId: measure,
        supersedesId: supersedes,
        receivedAt: new Date(receivedAt),
      })),
    } as unknown as ImportFacts
  }

  private close(): void {
    if (this.state !== 'baking') throw new Refusal('stale')
    if (firstNotAsPlanned(this.inOrder(), this.setup.plan) !== null) throw new Refusal('not-as-planned')
    const isEarly = [...this.doughs.values()].some(({ state }) => !isOver(state))
    this.state = isEarly ? 'stopped' : 'closed'
  }

  private mustBeOpen(): void {
    if (this.state === 'closed') throw new Refusal('trial-closed')
    if (this.state === 'stopped') throw new Refusal('trial-stopped')
  }

  private change(code: string, change: Partial<Dough>): void {
    this.doughs.set(code, { ...this.dough(code), ...change })
    const moved = this.movedOf(code)
    this.moved.set(code, { ...moved, revision: moved.revision + 1 })
  }

  private goes(dough: Dough, change: Partial<Dough>): void {
    this.change(dough.code, change)
    const { revision } = this.movedOf(dough.code)
    this.moved.set(dough.code, {
      revision,
      movedFrom: dough.state,
      movedAt: this.now,
      movedById: this.setup.player.id,
      movedRevision: revision,
    })
  }

  private movedOf(code: string): Moved {
    return this.moved.get(code) ?? { revision: 1, movedFrom: null, movedAt: null, movedById: null, movedRevision: null }
  }

  private countAside(code: string): void {
    const keptAside = this.aside.filter(({ dough }) => dough === code).length
    this.doughs.set(code, { ...this.dough(code), keptAside })
  }

  private hasGaps(dough: Dough): boolean {
    const { measures, primary, piecesPerBatch } = this.setup
    return (
      gapsOfBatch({
        measures,
        decidingMeasureId: primary.id,
        piecesPerBatch,
        piecesMade: dough.piecesMade,
        readings: this.readings
          .filter(({ id, dough: of }) => of === dough.id && !this.facts.readings.get(id)!.isCorrected)
          .map((reading) => ({ ...reading, measureId: reading.measure })),
        toSettle: dough.keptAside,
      }).length > 0
    )
  }

  private atPlace(code: string, { measure, piece }: ReadingSpot) {
    return (
      this.facts.places.get(
        keyOfPlace({ batchId: this.dough(code).id, measureId: this.measure(measure).id, piece, factorLevel: null }),
      ) ?? []
    )
  }

  private measure(code: string): TrialContent['measures'][number] {
    return this.setup.measures.find((measure) => measure.code === code)!
  }

  private nextId(): string {
    return `01900000-0000-7000-8000-${String((this.entries += 1)).padStart(12, '0')}`
  }

  private entryOf(code: string, { measure, piece, repeat }: ReadingSpot, value: number) {
    return {
      id: this.nextId(),
      batchId: this.dough(code).id,
      measureId: this.measure(measure).id,
      piece,
      repeat,
      value: typed(value),
      unit: units[measure]!,
      takenAt: this.now.toISOString(),
    }
  }

  private correctionOf(supersedesId: string, { piece, repeat, measure }: ReadingSpot, value: number) {
    return {
      id: this.nextId(),
      supersedesId,
      piece,
      repeat,
      value: typed(value),
      unit: units[measure]!,
      reason: reasonGiven,
      confirmed: true,
    }
  }

  private judge(code: string, entry: ReadingEntry): ReadingVerdict {
    const batch = this.batchFacts(code)
    this.facts.batches = new Map([[batch.id, batch]])
    return judgeReading(entry, this.facts, { actor: this.actor(), now: this.now })
  }

  private batchFacts(code: string): BatchFacts {
    const { setup } = this
    const { id, state } = this.dough(code)
    const trial = {
      state: this.state,
      isSealed: false,
      piecesPerBatch: setup.piecesPerBatch,
      factorName: null,
      factorLevels: [],
      createdAt: setup.begin,
    }
    return { id, code, state, trialId: setup.trialId, trial }
  }

  private actor(): ActorOf<'log-reading'> {
    const { bakeryId, id, name } = this.setup.player
    return {
      kind: 'desk',
      bakeryId,
      personId: id,
      name,
      role: 'head_baker',
      language: null,
      email: '',
      sessionId: '',
      sessionSeenAt: this.now,
    }
  }

  private asked(): { doughs: Dough[]; now: Date } {
    return { doughs: this.inOrder(), now: this.now }
  }

  private take(made: readonly Pick<Dough, 'code' | 'arm' | 'day' | 'plannedOrder'>[]): void {
    for (const dough of made) this.doughs.set(dough.code, waiting({ ...dough, id: `dough ${dough.code}` }))
  }

  private inOrder(): Dough[] {
    return [...this.doughs.values()].sort((a, b) => a.day - b.day || a.plannedOrder - b.plannedOrder)
  }

  /** At the desk nothing is kept aside: somebody is there to be told. */
  private atDesk(verdict: ReadingVerdict): void {
    if (verdict.outcome !== 'aside') {
      this.keep(verdict)
      return
    }
    const codes = {
      place_taken: 'reading-there',
      id_taken: 'reading-clash',
      reading_aside: 'not-found',
      corrected_meanwhile: 'stale',
      trial_closed: 'trial-closed',
    } as const
    throw new Refusal(codes[verdict.why])
  }

  private keep(verdict: ReadingVerdict): void {
    if (verdict.outcome === 'ready') this.put(verdict.row)
  }

  private put(row: Omit<ReadingRow, 'bakeryId' | 'trialId' | 'personId' | 'receivedAt'>): void {
    const { player, trialId } = this.setup
    const receivedAt = this.now
    noteReading(this.facts, { ...row, bakeryId: player.bakeryId, trialId, personId: player.id, receivedAt })
    this.readings.push({
      id: row.id,
      dough: row.batchId,
      measure: row.measureId,
      piece: row.piece,
      factorLevel: row.factorLevel,
      repeat: row.repeat,
      value: row.value,
      valueEntered: row.valueEntered,
      unitEntered: row.unitEntered,
      by: { id: player.id, name: player.name },
      takenAt: row.takenAt.toISOString(),
      receivedAt: receivedAt.toISOString(),
      supersedes: row.supersedesId,
      reason: row.reason,
      plausibleLeast: row.plausibleLeast,
      plausibleMost: row.plausibleMost,
    })
  }
}

function waiting(dough: FloorSetup['doughs'][number]): Dough {
  return {
    ...dough,
    state: 'waiting',
    stateWhy: null,
    begunAt: null,
    doneAt: null,
    piecesMade: null,
    piecesGood: null,
    keptAside: 0,
  }
}
