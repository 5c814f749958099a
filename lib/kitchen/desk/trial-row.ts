import 'server-only'

export const trialColumns = {
  id: true,
  number: true,
  question: true,
  proposedAt: true,
  closedAt: true,
  createdAt: true,
  formula: { select: { name: true } },
} as const

type TrialRead = { id: string; number: number; question: string; createdAt: Date; formula: { name: string } }

/** A trial that waits for something. @param since when it began to wait, where that is known */
export function trialRow({ id, number, question, createdAt, formula }: TrialRead, since: Date | null) {
  return { trialId: id, number, question, formula: formula.name, since: since ?? createdAt }
}
