import 'server-only'
import { z } from 'zod'
import type { Actor } from '../../auth/actor'
import { levelOf } from '../../auth/rights'
import type { Db } from '../../db/client'
import { dayInZone } from '../day-in-zone'
import { sealOfReadings } from '../evidence/seal-of-readings'
import { compareContents } from '../formulas/compare-contents'
import { contentAsShown } from '../formulas/content-as-shown'
import { pieceCosts } from '../formulas/piece-costs'
import { readVersion, type VersionRead } from '../formulas/read-version'
import { shownCostChange } from '../formulas/shown-cost-change'
import { costChange } from '../formulas/signing-of-version'
import { versionInProduction } from '../formulas/version-in-production'
import { query } from '../query'
import { Refusal } from '../refusal'
import { readEvidenceText, type Evidence } from './evidence-text'
import { readDecision, type DecisionRead } from './read-decision'
import { stateOfDecision } from './rules'

/**
 * A decision as a specification sheet: what was decided, why, on which evidence as it was frozen, and what it changes
 * against the control of the trial. Costs only for those who see them. Refuses: not-found.
 */
export const getDecision = query({
  name: 'decisions.get-decision',
  input: z.strictObject({ decisionId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, now, input }) {
    const { bakeryId } = actor
    const decision = await readDecision(db, bakeryId, input.decisionId)
    if (!decision) throw new Refusal('not-found')
    const { trial, evidence: kept, version, takenBackBy, decidedBy, ...rest } = decision
    const evidence = readEvidenceText(kept.text, kept.hash)
    const [readings, inProduction, change] = await Promise.all([
      sealOfReadings(db, bakeryId, trial.id, { id: trial.measureId }),
      versionInProduction(db, bakeryId, trial.formula.id, now),
      version && changeOf(db, actor, decision, now),
    ])
    return {
      ...rest,
      state: stateOfDecision(decision),
      isComing: version?.effectiveAt ? version.effectiveAt > now : false,
      decidedBy: decidedBy.name,
      takenBackBy: takenBackBy?.name ?? null,
      trial: { id: trial.id, number: trial.number, question: trial.question },
      formula: trial.formula,
      control: trial.controlVersion,
      version,
      inProduction: inProduction && { id: inProduction.id, number: inProduction.number },
      /** Null when what is kept is not what was frozen. */
      evidence: evidence && shownEvidence(evidence, actor),
      evidenceHash: kept.hash,
      haveReadingsChanged: evidence !== null && evidence.readings.hash !== readings.hash,
      change,
      mayTakeBack: levelOf(actor.role, 'sign-off-formula') === 'yes' && decision.takenBackAt === null && !version?.signedAt,
    }
  },
})

/** The frozen evidence without its costs, unless for somebody who sees them. */
function shownEvidence({ costs, ...evidence }: Evidence, actor: Actor) {
  return { ...evidence, costs: seesCosts(actor) ? costs : null }
}

function seesCosts({ role }: Actor): boolean {
  return levelOf(role, 'see-costs') === 'yes'
}

/**
 * What the drafted version changes against the trial's control, and what a loaf of each costs: at today's prices while
 * it waits, later at those of the day on which it was signed or taken back.
 */
async function changeOf(db: Db, actor: Actor, decision: DecisionRead, now: Date) {
  const { bakeryId } = actor
  const read = async (id: string | undefined): Promise<VersionRead> => {
    const version = id === undefined ? null : await readVersion(db, bakeryId, id)
    if (!version) throw new Refusal('not-found')
    return version
  }
  const [control, drafted, { timeZone, costChangeLimitPct }] = await Promise.all([
    read(decision.trial.controlVersion.id),
    read(decision.version?.id),
    db.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { timeZone: true, costChangeLimitPct: true } }),
  ])
  const [before, after] = [contentAsShown(control).content, contentAsShown(drafted).content]
  const day = dayInZone(decision.version?.signedAt ?? decision.takenBackAt ?? now, timeZone)
  const [compared, costs] = await Promise.all([
    compareContents(db, before, after),
    seesCosts(actor) ? pieceCosts(db, bakeryId, [before, after], day) : null,
  ])
  return {
    ...compared,
    cost: costs && shownCostChange(costChange(costs[0]!, costs[1]!, day, costChangeLimitPct)),
  }
}
