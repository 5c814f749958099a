import 'server-only'
import type { Entry } from '@/lib/ui/definition-list'
import { formatDate } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownResult } from './shown-result'

/** What the trial is, for the margin of its result. */
export function marginEntries(result: ShownResult, bakery: ShownBakery, forms: ResultForms): Entry[] {
  const { text, language } = forms
  const { trial, declared } = result
  const [approval] = trial.decisions
  const { sealed } = result
  return [
    { term: text.state, detail: stateText(result, bakery, forms), strong: true },
    { term: text.question, detail: trial.question },
    { term: text.kind, detail: text.kinds[declared.kind] },
    {
      term: text.against,
      detail: say(text.version, language, { formula: trial.formula.name, number: trial.controlVersion.number }),
    },
    {
      term: text.declared,
      detail: say(text.declaredText[declared.measure.direction], language, {
        measure: forms.measureName,
        margin: forms.margin,
        confidence: forms.confidence,
      }),
    },
    { term: text.holdsFor, detail: text.holdsForText[declared.holdsFor] },
    {
      term: text.size,
      detail: say(text.sizeText, language, {
        count: declared.mixingDays,
        doughs: declared.batchesPerArm,
        loaves: trial.piecesPerBatch,
      }),
    },
    ...(approval
      ? [
          {
            term: text.approved,
            detail: say(approvedText(approval, text), language, {
              date: formatDate(approval.at, bakery),
              name: approval.personName,
            }),
          },
        ]
      : []),
    ...(trial.planHash === null
      ? []
      : [
          {
            term: text.planSeal,
            detail: say(text.planSealed, language, { seal: trial.planHash.slice(0, sealLetters) }),
          },
        ]),
    ...(sealed.outcome === 'agrees'
      ? [{ term: text.seal.term, detail: say(text.seal.sealed, language, { seal: sealed.hash.slice(0, sealLetters) }) }]
      : []),
  ]
}

/** As much of a hash as people compare by eye; the whole of it is in the record. */
const sealLetters = 12

function approvedText(
  { byProposer, byCoAuthor }: { byProposer: boolean; byCoAuthor: boolean },
  text: ResultForms['text'],
) {
  if (byProposer) return text.approvedByProposer
  return byCoAuthor ? text.approvedByCoAuthor : text.approvedText
}

function stateText({ trial }: ShownResult, bakery: ShownBakery, { text, language }: ResultForms): string {
  if (trial.closedAt === null) return text.states[trial.state]
  const date = formatDate(trial.closedAt, bakery)
  if (trial.state !== 'closed' && trial.state !== 'stopped') return text.states[trial.state]
  return trial.closedWhy === null
    ? say(text.closed, language, { date })
    : say(text[trial.state === 'closed' ? 'closedWhy' : 'stopped'], language, { date, why: trial.closedWhy })
}
