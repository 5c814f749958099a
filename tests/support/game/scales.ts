import type { ActorOf } from '@/lib/auth/rights'
import type { BatchFacts } from '@/lib/kitchen/readings/reading-facts'
import { Refusal } from '@/lib/kitchen/refusal'
import type { TrialContent } from '@/lib/kitchen/results/content-of-trial'
import { judgeWeighing } from '@/lib/kitchen/weighings/judge-weighing'
import type { TrialLine } from '@/lib/kitchen/weighings/lines-of-plan'
import { noteWeighing, standingAt, type WeighingFacts } from '@/lib/kitchen/weighings/weighing-facts'
import { reasonGiven, typed, type LineSaid } from './moves'

type Weighings = NonNullable<TrialContent['weighings']>

/** What was written of what was weighed, by the rules that judge it. */
export class Scales {
  /** By the ids of doughs. */
  private entries = new Map<string, Weighings['entries']>()
  private weighings: WeighingFacts['weighings'] = new Map()

  constructor(private readonly lines: TrialLine[]) {}

  fork(): Scales {
    const other = new Scales(this.lines)
    other.entries = new Map(this.entries)
    other.weighings = new Map(this.weighings)
    return other
  }

  /**
   * Writes lines of one dough from one form: what stands gives way, for a reason; all go in or none does.
   * @param nextId of an entry
   * @throws Refusal as the command
   */
  write(
    batch: BatchFacts,
    said: readonly LineSaid[],
    by: { actor: ActorOf<'log-reading'>; now: Date; nextId: () => string },
  ): void {
    const facts: WeighingFacts = {
      batches: new Map([[batch.id, batch]]),
      lines: new Map([[batch.trialId, this.lines]]),
      weighings: new Map(this.weighings),
      lots: new Map(),
      typed: new Map(),
      aside: new Map(),
    }
    const faults: Refusal[] = []
    const kept = said.flatMap((each) => {
      try {
        return this.judge(batch, each, facts, by)
      } catch (error) {
        if (!(error instanceof Refusal) || error.problems.length === 0) throw error
        faults.push(error)
        return []
      }
    })
    const [first] = faults
    if (first) throw first
    this.weighings = facts.weighings
    this.entries.set(batch.id, [...(this.entries.get(batch.id) ?? []), ...kept])
  }

  /** Of one dough by its id, where it is given. */
  content(dough?: string): Weighings {
    return {
      lines: this.lines,
      entries: dough === undefined ? [...this.entries.values()].flat() : (this.entries.get(dough) ?? []),
    }
  }

  private judge(
    batch: BatchFacts,
    { line, how, massG }: LineSaid,
    facts: WeighingFacts,
    { actor, now, nextId }: { actor: ActorOf<'log-reading'>; now: Date; nextId: () => string },
  ): Weighings['entries'] {
    const { stage, ingredient, part } = this.lines[line]!
    const place = { batchId: batch.id, stageId: stage.id, ingredientId: ingredient.id, part }
    const stands = standingAt(facts, place)
    const verdict = judgeWeighing(
      {
        ...place,
        id: nextId(),
        how,
        takenAt: now.toISOString(),
        confirmed: false,
        ...(how === 'weighed' ? { mass: typed(massG), unit: 'g' } : {}),
        ...(stands ? { supersedesId: stands.id, reason: reasonGiven } : {}),
      },
      facts,
      { actor, now },
    )
    if (verdict.outcome !== 'ready') throw new Refusal('stale')
    const { row } = verdict
    noteWeighing(facts, row)
    const { id, massEntered, unitEntered, reason } = row
    return [
      {
        id,
        dough: batch.id,
        stage: stage.id,
        ingredient: ingredient.id,
        part,
        how,
        massG: row.massG,
        massEntered,
        unitEntered,
        by: { id: actor.personId, name: actor.name },
        takenAt: row.takenAt.toISOString(),
        receivedAt: row.receivedAt.toISOString(),
        supersedes: row.supersedesId,
        reason,
      },
    ]
  }
}
