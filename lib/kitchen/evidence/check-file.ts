import 'server-only'
import { readClosing, type ClosingRead } from '../../documents/closing/read-closing'
import type { Closing } from '../../documents/closing/closing'
import { readManifest } from '../../documents/evidence/read-manifest'
import { readCosts } from '../../documents/evidence-costs/read-costs'
import { readAmendments } from '../../documents/evidence-amendments/read-amendments'
import { readFile } from '../../documents/evidence-file/read-file'
import type { FileOfFormat1 } from '../../documents/evidence-file/file-of-format-1'
import { readShown, type Shown } from '../../documents/evidence-shown/read-shown'
import { hashOfText } from '../../documents/hash-of-text'
import { readPlan, type PlanRead } from '../../documents/plan/read-plan'
import { readVersionContent } from '../../documents/version-content/read-version-content'
import { firstNotAsPlanned } from '../repairs/first-not-as-planned'
import { analyseTrial } from '../results/analyse-trial'
import { calculations } from '../results/calculations'
import { countedOtherwise, foundLaterCounted } from '../results/counted-otherwise'
import { headlineFrom } from '../results/headline-from'
import { linesOfPlan } from '../weighings/lines-of-plan'
import { amendmentsAgain } from './amendments-again'
import { amendmentsByRecord } from './amendments-by-record'
import { checkRecord } from './check-record'
import { costsAgain, volumesAgain } from './costs-again'
import { figuresShown, headlineShown } from './figures-shown'
import { firstUnlike } from './first-unlike'
import { judgedAgain } from './judged-again'
import { plain } from './plain'
import type { CheckOutcome, Finding, PaperAnchor } from './finding'

/**
 * Checks a file of evidence by itself: every hash in it, every figure worked out again from the readings, what was
 * declared against the plan, what was signed on it, and the entries of the record.
 * @param paper number and first digits of a hash from the foot of a print
 * @returns one finding a check, in the order of the checks; the first that does not agree is what to look at
 */
export function checkFile(text: string, paper: PaperAnchor | null = null): Finding[] {
  const read = readFile(text)
  if (read.outcome !== 'read') return [{ what: 'file', outcome: unreadable(read.outcome), facts: {} }]
  const { file } = read
  const manifest = readManifest(file.manifest.text, file.manifest.hash)
  if (manifest.outcome !== 'read') return [{ what: 'manifest', outcome: unreadable(manifest.outcome), facts: {} }]
  const named = manifest.value.parts
  const textOf = (kind: string) => file.parts.find((part) => part.kind === kind)?.text ?? null
  const hashOf = (kind: string) => named.find((part) => part.kind === kind)?.hash ?? ''
  const parts = named.map(({ kind, version, hash }): Finding => {
    const own = file.parts.find((part) => part.kind === kind)
    const isNamed = own?.hash === hash && own.version === version
    const outcome = !own ? 'left-out' : !isNamed ? 'differs' : own.text === null ? 'left-out' : agreeing(own.text, hash)
    return { what: 'part', outcome, facts: { kind } }
  })
  const stray = file.parts.find(({ kind }) => named.every((part) => part.kind !== kind))
  const shown = readShown(textOf('shown') ?? '', hashOf('shown'))
  const closing = readClosing(textOf('closing') ?? '', hashOf('closing'))
  const plan = readPlan(textOf('plan') ?? '', hashOf('plan'))
  const costs = readCosts(textOf('costs') ?? '', hashOf('costs'))
  const amendments = readAmendments(textOf('amendments') ?? '', hashOf('amendments'))
  return [
    { what: 'manifest', outcome: 'agrees', facts: {} },
    ...parts,
    ...(stray ? [{ what: 'part', outcome: 'differs', facts: { kind: stray.kind } } satisfies Finding] : []),
    ...(shown.outcome === 'read'
      ? closing.outcome === 'read'
        ? [
            belongs(manifest.value, shown.value, closing.closing, hashOf('plan')),
            declaredAlike(shown.value, closing.closing, plan),
            doughsAsPlanned(closing.closing, textOf('plan'), hashOf('plan')),
            figuresAgain(shown.value, closing.closing),
            weighedByPlan(closing.closing, plan),
            amendedAgain(hashOf('amendments') === '' ? null : amendments, {
              hash: hashOf('closing'),
              closing: closing.closing,
            }),
          ]
        : [
            {
              what: 'figures',
              outcome: hashOf('closing') === '' ? 'not-there' : unreadable(closing.outcome),
              facts: {},
            } satisfies Finding,
          ]
      : [{ what: 'figures', outcome: unreadable(shown.outcome), facts: {} } satisfies Finding]),
    costsChecked(costs, textOf('costs') === null, {
      closing,
      plan,
      by: shown.outcome === 'read' ? shown.value.calculations : calculations,
    }),
    signedOn(file),
    amendmentsByRecord(file.record, amendments.outcome === 'read' ? amendments.value : null, {
      trial: manifest.value.trial.id,
      evidence: file.manifest.hash,
    }),
    ...checkRecord(file, { evidence: file.manifest.hash, closing: hashOf('closing') || null }, paper),
  ]
}

function unreadable(outcome: 'damaged' | 'unknown-format'): CheckOutcome {
  return outcome === 'damaged' ? 'differs' : 'unknown-format'
}

function agreeing(text: string, hash: string): CheckOutcome {
  return hashOfText(text) === hash ? 'agrees' : 'differs'
}

/** All parts are of one trial, and of the plan that was approved for it. */
function belongs(
  manifest: { bakery: string; trial: { id: string; number: number } },
  { trial }: Shown,
  closing: Closing,
  planHash: string,
): Finding {
  const first = firstUnlike(
    {
      bakery: manifest.bakery,
      trial: manifest.trial.id,
      number: manifest.trial.number,
      state: trial.state,
      plan: trial.planHash,
    },
    {
      bakery: closing.bakery,
      trial: closing.trial.id,
      number: trial.number === closing.trial.number ? closing.trial.number : trial.number,
      state: closing.closed.state,
      plan: closing.trial.planHash,
    },
  )
  if (first) return { what: 'belongs', outcome: 'differs', facts: first }
  return {
    what: 'belongs',
    outcome: planHash !== '' && planHash !== closing.trial.planHash ? 'differs' : 'agrees',
    facts: {},
  }
}

/** What was shown as declared is what was closed, and what the plan says; a plan that cannot be read is found as a part. */
function declaredAlike(shown: Shown, { declared }: Closing, plan: PlanRead): Finding {
  const { measure, arms, ...rule } = declared
  const { name, unit, digits, direction } = measure
  const first =
    firstUnlike(shown.declared, { ...rule, measure: { name, unit, digits, direction } }) ??
    firstUnlike(
      shown.arms.map((arm) => arm.name),
      arms.map((arm) => arm.name),
      'arms',
    ) ??
    (plan.outcome === 'read' ? firstUnlike(ruleOf(rule), ruleOf(plan.plan.declared), 'plan') : null)
  return first
    ? { what: 'declared', outcome: 'differs', facts: first }
    : { what: 'declared', outcome: 'agrees', facts: {} }
}

/** The rule by which a trial is judged, as far as plan and closing both have it. */
function ruleOf(said: Omit<Closing['declared'], 'measure' | 'arms' | 'factor'>) {
  const { kind, margin, marginUnit, confidencePct, holdsFor, mixingDays, batchesPerArm, piecesPerBatch } = said
  return { kind, margin, marginUnit, confidencePct, holdsFor, mixingDays, batchesPerArm, piecesPerBatch }
}

/** Every dough is one that the plan drew, or one that a repair has made beside it. */
function doughsAsPlanned({ doughs, repairs }: Closing, planText: string | null, planHash: string): Finding {
  if (planHash === '') return { what: 'doughs', outcome: 'not-there', facts: {} }
  if (planText === null) return { what: 'doughs', outcome: 'left-out', facts: {} }
  const plan = readPlan(planText, planHash)
  if (plan.outcome !== 'read') return { what: 'doughs', outcome: unreadable(plan.outcome), facts: {} }
  const drawn = new Set(plan.plan.order?.batches.map((batch) => batch.code))
  const isMade = (dough: Closing['doughs'][number]) =>
    repairs.some(({ otherCode, otherDay }) => otherCode === dough.code || otherDay === dough.day)
  const code =
    firstNotAsPlanned(doughs, plan.plan) ??
    doughs.find((dough) => !drawn.has(dough.code) && !isMade(dough))?.code ??
    null
  return code === null
    ? { what: 'doughs', outcome: 'agrees', facts: {} }
    : { what: 'doughs', outcome: 'differs', facts: { code } }
}

/** Every figure that was shown, worked out again from the readings alone. */
function figuresAgain(shown: Shown, closing: Closing): Finding {
  const { calculations: by, trial: _, declared: __, readings, arms, headline, ...was } = shown
  const first =
    firstUnlike(
      { ...was, arms: arms.map(({ id: _id, name: _name, good: _good, ...arm }) => arm) },
      figuresOf(closing),
    ) ??
    // Former figures do not say it.
    (headline && firstUnlike({ headline }, { headline: headlineOf(closing) })) ??
    firstUnlike({ readings: readings.count }, { readings: closing.readings.length })
  if (!first) return { what: 'figures', outcome: 'agrees', facts: {} }
  const outcome = by === calculations ? 'differs' : 'other-calculations'
  return { what: 'figures', outcome, facts: { ...first, by, now: calculations } }
}

/** The lines that weighings were judged by are those of the plan that was approved. */
function weighedByPlan({ weighings }: Closing, plan: PlanRead): Finding {
  if (!weighings) return { what: 'weighings', outcome: 'not-there', facts: {} }
  if (plan.outcome !== 'read') return { what: 'weighings', outcome: unreadable(plan.outcome), facts: {} }
  const first = firstUnlike({ lines: weighings.lines }, plain({ lines: linesOfPlan(plan.plan) }))
  return first
    ? { what: 'weighings', outcome: 'differs', facts: first }
    : { what: 'weighings', outcome: 'agrees', facts: {} }
}

/** What the readings of a closing come to, as it is after it was written and read. */
function figuresOf(closing: Closing): unknown {
  const { declared, judged, compared } = judgedAgain(closing)
  const { withTakenOut, asLastWeighed } = countedOtherwise(judged.batches, declared.batchesPerArm)
  return plain(
    figuresShown({
      analysis: analyseTrial(declared, judged.batches),
      otherwise: { withTakenOut: compared(withTakenOut), asLastWeighed: compared(asLastWeighed) },
    }),
  )
}

/** What the headline over the readings of a closing rests on, in the same way. */
function headlineOf(closing: Closing): unknown {
  const {
    declared,
    judged: { batches, conduct },
    compared,
  } = judgedAgain(closing)
  const { comparison } = analyseTrial(declared, batches)
  const withThem = compared(foundLaterCounted(batches, conduct.foundCauses, declared.batchesPerArm))
  return plain(headlineShown(headlineFrom(comparison, withThem)))
}

/** What came after the closing; nothing did where the file names no such part. */
function amendedAgain(
  read: ReturnType<typeof readAmendments> | null,
  closed: { hash: string; closing: Closing },
): Finding {
  if (read === null) return { what: 'amendments', outcome: 'not-there', facts: {} }
  return read.outcome === 'read'
    ? amendmentsAgain(read.value, closed, figuresOf)
    : { what: 'amendments', outcome: unreadable(read.outcome), facts: {} }
}

function costsChecked(
  costs: ReturnType<typeof readCosts>,
  isLeftOut: boolean,
  rest: { closing: ClosingRead; plan: PlanRead; by: number },
): Finding {
  if (isLeftOut) return { what: 'costs', outcome: 'left-out', facts: {} }
  if (costs.outcome !== 'read') return { what: 'costs', outcome: unreadable(costs.outcome), facts: {} }
  const { closing, plan, by } = rest
  const first = costsAgain(costs, plan.outcome === 'read' ? plan.plan : null)
  if (first) return { what: 'costs', outcome: 'differs', facts: first }
  const volume = volumesAgain(costs, closing.outcome === 'read' ? closing.closing : null)
  if (!volume) return { what: 'costs', outcome: 'agrees', facts: {} }
  const outcome = by === calculations ? 'differs' : 'other-calculations'
  return { what: 'costs', outcome, facts: { ...volume, by, now: calculations } }
}

/** What was signed says on which evidence. */
function signedOn({ signed, manifest }: Pick<FileOfFormat1, 'signed' | 'manifest'>): Finding {
  if (!signed) return { what: 'signed', outcome: 'not-there', facts: {} }
  if (hashOfText(signed.text) !== signed.hash) return { what: 'signed', outcome: 'differs', facts: {} }
  const read = readVersionContent(signed.text)
  const isOnIt = read.outcome === 'read' && read.content.evidence?.hash === manifest.hash
  return { what: 'signed', outcome: isOnIt ? 'agrees' : 'differs', facts: {} }
}
