import { Section } from '@/lib/ui/section'
import { formatDateTime } from '@/lib/words/format/date'
import { formatDay } from '@/lib/words/format/day'
import { paragraph } from '@/lib/words/paragraph'
import { fill, say } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import { conditionWarnings } from '../../trials/[trialId]/result/condition-forms'
import { resultForms } from '../../trials/[trialId]/result/result-forms'
import type { ShownBakery } from '../../trials/[trialId]/result/shown-result'
import type { DecisionSeen, EvidenceSeen } from './decision-seen'
import { EvidenceTable } from './evidence-table'

type EvidenceSectionProps = {
  decision: Pick<DecisionSeen, 'evidenceHash' | 'outcome' | 'measureCode'>
  evidence: EvidenceSeen
  bakery: ShownBakery
  language: Language
}

/** What the trial showed when it was decided on: the rule, the arms, what cannot be concluded, the seal. */
export function EvidenceSection({ decision, evidence, bakery, language }: EvidenceSectionProps) {
  const { decisions: text, results: result } = wordsIn(language)
  const { declared, frozen, costs, limits, readings } = evidence
  const forms = resultForms({
    result: { declared, analysis: { comparison: evidence } },
    measureCode: decision.measureCode,
    bakery,
    language,
  })
  const declaredSentences = [
    text.evidenceKinds[declared.kind],
    say(text.evidenceRule[declared.measure.direction], language, {
      measure: forms.measureInText,
      margin: forms.margin,
      confidence: forms.confidence,
    }),
    say(text.evidenceSize, language, {
      count: declared.mixingDays,
      doughs: declared.batchesPerArm,
      loaves: declared.piecesPerBatch,
    }),
  ]
  const restsOn = [
    say(text.evidenceReadings, language, { count: readings.count }),
    costs && say(text.evidenceCosts, language, { day: formatDay(costs.day, bakery.locale) }),
  ]
  return (
    <Section
      id="evidence"
      title={text.evidence}
      note={say(text.evidenceNote, language, { at: formatDateTime(new Date(frozen.at), bakery), name: frozen.by.name })}
    >
      <p className="mb-3 max-w-measure text-small text-ink-2">{paragraph(declaredSentences, language)}</p>
      {evidence.lessFavourableOf.length > 0 ? (
        <p className="mb-3 max-w-measure">
          {paragraph(
            [say(text.lessFavourable, language, { codes: evidence.lessFavourableOf }), text.lessFavourableControl],
            language,
          )}
        </p>
      ) : null}
      <EvidenceTable evidence={evidence} forms={forms} text={text} />
      <ul className="mt-3 max-w-measure list-disc pl-5">
        {limits.map(({ code, arm, facts }) => (
          <li key={`${code} ${arm ?? ''}`}>
            {fill(result.limits[code], language, { ...facts, ...(arm === null ? {} : { dough: forms.dough(arm) }) })}
          </li>
        ))}
        {conditionWarnings(evidence, bakery, forms).map(({ key, sentence }) => (
          <li key={key}>{sentence}</li>
        ))}
      </ul>
      <p className="mt-3 max-w-measure text-small text-ink-2">{paragraph(restsOn, language)}</p>
      <p className="mt-1 text-small text-ink-2">
        {text.evidenceSeal} <span className="break-all select-all">{decision.evidenceHash}</span>
      </p>
      {decision.outcome === 'change' ? <p className="mt-1 text-small text-ink-2">{text.sealCovered}</p> : null}
    </Section>
  )
}
