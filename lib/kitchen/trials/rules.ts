import type { PlanVerdict, TrialState } from '../../db/generated/enums'

const followers: Record<TrialState, readonly TrialState[]> = {
  draft: ['proposed'],
  proposed: ['approved', 'draft', 'declined'],
  approved: ['baking', 'stopped'],
  baking: ['closed', 'stopped'],
  closed: [],
  declined: [],
  stopped: [],
}

/** Whether a trial may go from one state straight to another. */
export function mayFollow(from: TrialState, to: TrialState): boolean {
  return followers[from].includes(to)
}

const states = Object.keys(followers) as TrialState[]

/** Whether doughs may be baked and read: the plan is approved, and the baking has not ended. */
export function isOpen(state: TrialState): boolean {
  return state === 'approved' || state === 'baking'
}

/** The states of a trial that is open. */
export const openStates = states.filter(isOpen)

/** Whether nothing more is baked of a trial, so that somebody can decide on it. */
export function isEnded(state: TrialState): boolean {
  return state === 'closed' || state === 'stopped'
}

/** The states of a trial that has ended. */
export const endedStates = states.filter(isEnded)

/** Whether the plan stands as it was approved, for good. */
export function isFrozen(state: TrialState): boolean {
  return isOpen(state) || isEnded(state)
}

/**
 * Whether everybody may see which dough a code stands for. From the proposal, which draws the codes, until the readings
 * are closed only those do who opened the key, because they weigh out: nobody who measures a coded loaf should have it
 * before their eyes.
 */
export function isKeyOpen(state: TrialState): boolean {
  return state !== 'proposed' && !isOpen(state)
}

/** Where a trial stands as people say it: a draft whose plan was sent back is no fresh draft. */
export type Standing = TrialState | 'sent_back'

/** @param lastVerdict of the latest decision on its plan; null before the first */
export function standingOf({ state, lastVerdict }: { state: TrialState; lastVerdict: PlanVerdict | null }): Standing {
  return state === 'draft' && lastVerdict === 'sent_back' ? 'sent_back' : state
}

/**
 * On which of its pages a trial opens: one that is baked or over on what it shows, which also says what is still to be
 * measured; any other on its plan, which says what it waits for.
 */
export function opensOn(state: TrialState): 'plan' | 'result' {
  return state === 'baking' || isEnded(state) ? 'result' : 'plan'
}

/** Why somebody may not withdraw a proposed plan, or null. Who decides sends it back instead. */
export function withdrawalBar(q: { personId: string; proposedById: string }): 'not-your-proposal' | null {
  return q.personId === q.proposedById ? null : 'not-your-proposal'
}

/** What a proposed plan becomes by a decision. */
export function stateAfter(verdict: PlanVerdict): TrialState {
  switch (verdict) {
    case 'approved':
      return 'approved'
    case 'sent_back':
      return 'draft'
    case 'declined':
      return 'declined'
    default:
      return verdict satisfies never
  }
}

/** Who had a hand in a plan, and who could decide on it. */
export type PlanHands = {
  proposedById: string
  /** Everybody who wrote content of its draft. */
  authorIds: readonly string[]
  /** Everybody who may approve plans and is there. */
  approverIds: readonly string[]
  worksAlone: boolean
}

/**
 * Why somebody may not decide on a plan, or null. Nobody decides on what they proposed, and no author decides as long
 * as there is an approver with no hand in it; unless the bakery lets people work alone.
 */
export function decisionBar(q: PlanHands & { personId: string }): 'own-plan' | 'co-author' | null {
  if (q.worksAlone) return null
  if (q.personId === q.proposedById) return 'own-plan'
  if (!q.authorIds.includes(q.personId)) return null
  const hasSecond = q.approverIds.some((id) => id !== q.proposedById && !q.authorIds.includes(id))
  return hasSecond ? 'co-author' : null
}

/** What hand somebody had in a plan that they decide on. */
export function handIn(q: Pick<PlanHands, 'proposedById' | 'authorIds'> & { personId: string }): {
  byProposer: boolean
  byCoAuthor: boolean
} {
  const byProposer = q.personId === q.proposedById
  return { byProposer, byCoAuthor: !byProposer && q.authorIds.includes(q.personId) }
}

export type DecisionMeaning = 'approved' | 'approved-by-proposer' | 'approved-by-co-author' | 'sent_back' | 'declined'

/** In what words a decision is given: the key of its meaning. */
export function meaningOfDecision(q: {
  verdict: PlanVerdict
  byProposer: boolean
  byCoAuthor: boolean
}): DecisionMeaning {
  if (q.verdict !== 'approved') return q.verdict
  if (q.byProposer) return 'approved-by-proposer'
  return q.byCoAuthor ? 'approved-by-co-author' : 'approved'
}

/** The letters of arms, by position: 0 is the control. */
export const armLetters = ['control', 'A', 'B', 'C', 'D', 'E', 'F'] as const

/** The letter of an arm. @throws RangeError above six arms */
export function armLetter(position: number): (typeof armLetters)[number] {
  const letter = armLetters[position]
  if (letter === undefined) throw new RangeError(`no letter for arm ${String(position)}`)
  return letter
}
