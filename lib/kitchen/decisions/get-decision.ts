import 'server-only'
import { z } from 'zod'
import type { DeskActor } from '../../auth/actor'
import { levelOf } from '../../auth/rights'
import type { Db } from '../../db/client'
import { readEvidence, type EvidenceRead } from '../../documents/evidence/read-evidence'
import type { Evidence } from '../../documents/evidence/evidence'
import { dayInZone } from '../day-in-zone'
import { sealOfReadings } from './seal-of-readings'
import { compareContents } from '../formulas/compare-contents'
import { contentAsShown } from '../formulas/content-as-shown'
import { pieceCosts } from '../formulas/piece-costs'
import { readVersions, type VersionRead } from '../formulas/read-version'
import { showVersion } from '../formulas/show-version'
import { shownCostChange } from '../formulas/shown-cost-change'
import { costChange } from '../formulas/signing-of-version'
import { versionInProduction } from '../formulas/version-in-production'
import { query } from '../query'
import { recordedHash } from '../recorded-hash'
import { Refusal } from '../refusal'
import { sealsOf } from '../results/judge-readings'
import { sureOf } from '../sure-of'
import { atHeadline } from './at-headline'
import { readDecision, type DecisionRead } from './read-decision'
import { stateOfDecision } from './rules'

/**
 * A decision as a specification sheet: what was decided, why, on which evidence as it was frozen, and what it changes
 * against the control of the trial. Costs only for those who see them. Refuses: not-found; unknown-format and
 * damaged-text of the versions that it is about.
 */
export const getDecision = query({
  name: 'decisions.get-decision',
  input: z.strictObject({ decisionId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, now, input }) {
    const { bakeryId } = actor
    const decision = await readDecision(db, bakeryId, input.decisionId)
    if (!decision) throw new Refusal('not-found')
    const { trial, evidence: kept, version } = decision
    const found = readEvidence(kept.text, kept.hash, kept.parts)
    const [recorded, sealNow, inProduction, changed] = await Promise.all([
      recordedHash(db, bakeryId, decision.id, 'evidence'),
      found.outcome === 'read' ? sealOf(db, bakeryId, trial, found.evidence) : null,
      versionInProduction(db, bakeryId, trial.formula.id, now),
      version && changeBy(db, actor, decision, version.id, now),
    ])
    // Whoever changes it can change its hash with it; what the record noted then stands.
    const read: EvidenceRead = found.outcome === 'read' && recorded !== kept.hash ? { outcome: 'damaged' } : found
    const evidence = read.outcome === 'read' ? read.evidence : null
    return {
      ...factsOf(decision),
      state: stateOfDecision(decision),
      isComing: version?.effectiveAt ? version.effectiveAt > now : false,
      decidedBy: decision.decidedBy.name,
      takenBackBy: decision.takenBackBy?.name ?? null,
      trial: { id: trial.id, number: trial.number, question: trial.question },
      formula: trial.formula,
      /** Of the trial's measure; frozen evidence has its name only. */
      measureCode: trial.measure.code,
      control: trial.controlVersion,
      version,
      /** The drafted version as a sheet, with what it takes to sign it. */
      drafted: changed && changed.drafted,
      inProduction: inProduction && { id: inProduction.id, number: inProduction.number },
      /** Null when it cannot be read; then `unread` says why. */
      evidence: evidence && shownEvidence(evidence, actor),
      unread: read.outcome === 'read' ? null : read,
      evidenceHash: kept.hash,
      haveReadingsChanged: evidence !== null && evidence.readings.hash !== sealNow,
      change: changed && changed.change,
      mayTakeBack: levelOf(actor, 'sign-off-formula') === 'yes' && decision.takenBackAt === null && !version?.signedAt,
    }
  },
})

function factsOf({ id, number, outcome, arm, reason, at, takenBackAt, takenBackWhy, revision }: DecisionRead) {
  return { id, number, outcome, arm, reason, at, takenBackAt, takenBackWhy, revision }
}

/** The seal of a trial's readings at this moment, over what the evidence has it over. */
async function sealOf(db: Db, bakeryId: string, trial: { id: string; measureId: string }, { readings }: Evidence) {
  return readings.over === 'rows'
    ? (await sealsOf(db, bakeryId, trial.id)).rowsNow
    : (await sealOfReadings(db, bakeryId, trial.id, { id: trial.measureId })).hash
}

/** The frozen evidence as its headline says it, without its costs unless for somebody who sees them. */
function shownEvidence({ costs, ...evidence }: Evidence, actor: DeskActor) {
  return { ...atHeadline(evidence), costs: seesCosts(actor) ? costs : null }
}

function seesCosts(actor: DeskActor): boolean {
  return levelOf(actor, 'see-costs') === 'yes'
}

/** The version that was drafted, and what it changes against the trial's control. */
async function changeBy(db: Db, actor: DeskActor, decision: DecisionRead, draftedId: string, now: Date) {
  const versions = await readVersions(db, actor.bakeryId, [decision.trial.controlVersion.id, draftedId])
  const find = (id: string) => {
    const found = versions.find((version) => version.id === id)
    if (!found) throw new Refusal('not-found')
    return found
  }
  const [control, drafted] = [find(decision.trial.controlVersion.id), find(draftedId)]
  const [shown, change] = await Promise.all([
    showVersion(db, actor, now, drafted, [control]),
    changeOf(db, actor, decision, { control, drafted }, now),
  ])
  return { drafted: shown, change }
}

/**
 * What the drafted version changes against the trial's control, and what a loaf of each costs: at today's prices while
 * it waits, later at those of the day on which it was signed or taken back.
 */
async function changeOf(
  db: Db,
  actor: DeskActor,
  decision: DecisionRead,
  versions: { control: VersionRead; drafted: VersionRead },
  now: Date,
) {
  const { timeZone, costChangeLimitPct } = decision.bakery
  const [before, after] = [contentAsShown(versions.control).content, contentAsShown(versions.drafted).content]
  const day = dayInZone(decision.version?.signedAt ?? decision.takenBackAt ?? now, timeZone)
  const [compared, costs] = await Promise.all([
    compareContents(db, before, after),
    seesCosts(actor) ? pieceCosts(db, actor.bakeryId, [before, after], day) : null,
  ])
  const costOf = (at: 0 | 1) => sureOf(costs?.[at], 'what a piece of a version costs')
  return {
    ...compared,
    cost: costs && shownCostChange(costChange(costOf(0), costOf(1), day, costChangeLimitPct)),
  }
}
