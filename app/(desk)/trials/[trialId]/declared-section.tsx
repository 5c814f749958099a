import { DefinitionList } from '@/lib/ui/definition-list'
import { Lines } from '@/lib/ui/lines'
import { Section } from '@/lib/ui/section'
import { withUnit } from '@/lib/words/format/with-unit'
import { listOf } from '@/lib/words/list-of'
import { measureName } from '@/lib/words/measure-name'
import { say } from '@/lib/words/say'
import { choiceWords } from '../choice-words'
import type { PlanPart } from './plan-seen'
import { WarningList } from './warning-list'

/** What is declared before anybody bakes. */
export function DeclaredSection({
  plan,
  measureCode,
  words,
  format,
  language,
}: PlanPart & { measureCode: string | null }) {
  const { trials: text } = words
  const { declared, process, size } = plan
  const chosen = choiceWords(plan, text, language)
  const minutes = (timeS: number) => format.minutes(timeS, text.plan.minutes)
  const worth =
    declared.marginUnit === 'pct'
      ? say(text.plan.worthText, language, { margin: format.pct(declared.margin) })
      : withUnit(format.count(declared.margin), declared.measure.unit)
  return (
    <Section id="declared" title={text.plan.declared}>
      <DefinitionList
        entries={[
          { term: text.plan.kind, detail: text.kinds[declared.kind] },
          {
            term: text.plan.decidedBy,
            detail: say(text.form.measureOption[declared.measure.direction], language, {
              name: measureName({ code: measureCode, name: declared.measure.name }, words),
              unit: declared.measure.unit,
            }),
          },
          { term: text.plan.worth, detail: worth },
          { term: text.plan.sure, detail: format.pct(declared.confidencePct) },
          {
            term: text.plan.holdsFor,
            detail: <Lines texts={[text.holdsFor[declared.holdsFor], text.holdsForHints[declared.holdsFor]]} />,
          },
          ...(declared.blinded === null
            ? []
            : [
                {
                  term: text.plan.blinded,
                  detail:
                    declared.blinded.length === 0
                      ? text.plan.blindedNobody
                      : listOf(
                          declared.blinded.map((task) => text.blindWho[task]),
                          language,
                        ),
                },
              ]),
          {
            term: text.plan.sizeTerm,
            detail: (
              <>
                {say(text.plan.sizeText, language, {
                  days: declared.mixingDays,
                  doughs: declared.batchesPerArm,
                  pieces: declared.piecesPerBatch,
                })}
                <WarningList
                  warnings={plan.warnings.filter(({ code }) => code === 'one-batch-per-arm')}
                  words={words}
                  format={format}
                  language={language}
                />
              </>
            ),
          },
          ...(declared.factor
            ? [
                {
                  term: text.plan.factor,
                  detail: say(text.plan.factorText, language, {
                    name: declared.factor.name,
                    levels: declared.factor.levels,
                  }),
                },
              ]
            : []),
          { term: text.plan.doughInAll, detail: format.mass(size.doughInAllG) },
          {
            term: text.plan.held,
            detail:
              declared.heldTotals.length > 0
                ? listOf(
                    declared.heldTotals.map((total) => text.totals[total]),
                    language,
                  )
                : text.plan.heldNone,
          },
          {
            term: text.plan.process,
            detail: say(text.plan.processText, language, {
              mix: minutes(process.mixTimeS),
              dough: format.temp(process.doughTempC),
              bulk: minutes(process.bulkTimeS),
              proof: minutes(process.proofTimeS),
              oven: format.temp(process.bakeTempC),
              bake: minutes(process.bakeTimeS),
            }),
          },
          {
            term: text.plan.scale,
            detail: (
              <>
                {plan.scale?.name ?? text.plan.none}
                <WarningList
                  warnings={plan.warnings.filter(({ code }) => code === 'no-scale')}
                  words={words}
                  format={format}
                  language={language}
                />
              </>
            ),
          },
          ...(chosen.length > 0 ? [{ term: text.plan.chosen, detail: <Lines texts={chosen} /> }] : []),
          { term: text.plan.mixer, detail: plan.mixer?.name ?? text.plan.none },
          {
            term: text.plan.temperatures,
            detail: say(text.plan.temperaturesText, language, {
              flour: format.temp(declared.flourTempC),
              room: format.temp(declared.roomTempC),
              tap: format.temp(declared.tapTempC),
            }),
          },
          ...(declared.note
            ? [{ term: text.plan.note, detail: <span className="whitespace-pre-line">{declared.note}</span> }]
            : []),
        ]}
      />
      <WarningList
        warnings={plan.warnings.filter(({ code }) => code === 'ingredient-ended' || code === 'chosen-scale-gone')}
        words={words}
        format={format}
        language={language}
      />
    </Section>
  )
}
