import 'server-only'
import type { WorkedOut } from '../calculators/work-out'
import { workOutById } from '../calculators/work-out-by-id'
import { checkFile } from '../evidence/check-file'
import type { Finding, PaperAnchor } from '../evidence/finding'
import { analyseTrial, type TrialAnalysis } from '../results/analyse-trial'
import type { DeclaredTrial, MeasuredBatch } from '../results/trial-facts'
import { drawUpOrFault, type DrawnUp } from '../trials/draw-up-or-fault'
import type { PlanFacts } from '../trials/plan-types'

/** What is asked and answered, by the name of the work; both must be data that can be handed from thread to thread. */
export type Works = {
  'analyse-trial': { asked: { declared: DeclaredTrial; batches: readonly MeasuredBatch[] }; answer: TrialAnalysis }
  'check-file': { asked: { text: string; paper: PaperAnchor | null }; answer: Finding[] }
  'draw-up-plan': { asked: { facts: PlanFacts; seed: string | null }; answer: DrawnUp }
  'work-out': { asked: { id: string; given: unknown }; answer: WorkedOut }
}

export type WorkName = keyof Works

const works: { readonly [Name in WorkName]: (asked: Works[Name]['asked']) => Works[Name]['answer'] } = {
  'analyse-trial': ({ declared, batches }) => analyseTrial(declared, batches),
  'check-file': ({ text, paper }) => checkFile(text, paper),
  'draw-up-plan': ({ facts, seed }) => drawUpOrFault(facts, seed),
  'work-out': ({ id, given }) => workOutById(id, given),
}

/** Does a work here and now. For the worker: the app asks for it by `inPool`. */
export function doWork<Name extends WorkName>(name: Name, asked: Works[Name]['asked']): Works[Name]['answer'] {
  return works[name](asked)
}
