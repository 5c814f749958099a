import 'server-only'
import type { Db } from '../../db/client'

/** What a decision's page shows of its evidence; the rest is for whoever checks it, and long. */
const partsShown: string[] = ['shown', 'costs']

const select = {
  id: true,
  number: true,
  outcome: true,
  reason: true,
  at: true,
  revision: true,
  takenBackAt: true,
  takenBackWhy: true,
  bakery: { select: { timeZone: true, costChangeLimitPct: true } },
  decidedBy: { select: { name: true } },
  takenBackBy: { select: { name: true } },
  arm: { select: { id: true, position: true, name: true } },
  version: { select: { id: true, number: true, signedAt: true, effectiveAt: true } },
  trial: {
    select: {
      id: true,
      number: true,
      question: true,
      measureId: true,
      measure: { select: { code: true } },
      formula: { select: { id: true, name: true } },
      controlVersion: { select: { id: true, number: true } },
    },
  },
  evidence: {
    select: {
      text: true,
      hash: true,
      parts: { where: { kind: { in: partsShown } }, select: { kind: true, text: true } },
    },
  },
} as const

/** A decision with everything that belongs to it, or null. */
export function readDecision(from: Db, bakeryId: string, decisionId: string) {
  return from.decision.findUnique({ where: { bakeryId_id: { bakeryId, id: decisionId } }, select })
}

export type DecisionRead = NonNullable<Awaited<ReturnType<typeof readDecision>>>
