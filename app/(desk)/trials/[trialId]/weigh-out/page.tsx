import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { askToRead } from '@/app/ask-to-read'
import { currentLanguage } from '@/app/language'
import { noteLook } from '@/app/note-look'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getWeighOut } from '@/lib/kitchen/trials/get-weigh-out'
import { armLetter } from '@/lib/kitchen/trials/rules'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { Lines } from '@/lib/ui/lines'
import { Button } from '@/lib/ui/button'
import { Cell } from '@/lib/ui/cell'
import { GroupRow } from '@/lib/ui/group-row'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SheetTable } from '@/lib/ui/sheet-table'
import { listOf } from '@/lib/words/list-of'
import { say, sayName } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { lineName } from '../../../mixing/line-name'
import { MixingWater } from '../../../mixing/mixing-water'
import { PremixSteps } from '../../../mixing/premix-steps'
import { UnreadDocument } from '../../../unread-document'
import { doseWords } from '../../dose-words'
import { choiceWords } from '../../choice-words'
import { DoughName } from '../../dough-name'
import { allergenList } from '@/lib/words/allergen-list'
import { planFormat } from '@/lib/words/format/plan-format'

import { open } from './actions'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).trials.weighOut.title }
}

export default async function WeighOutPage({ params }: { params: Promise<{ trialId: string }> }) {
  const { trialId } = await params
  const language = await currentLanguage()
  const { trials, stores, mixing } = wordsIn(language)
  const { weighOut: text, plan } = trials
  const { bakery } = await ask(getDesk)
  const asked = await askToRead(getWeighOut, { trialId })
  if (!asked.ok)
    return (
      <UnreadDocument
        kicker={text.title}
        refusal={asked.refusal}
        ways={[{ href: `/trials/${trialId}`, label: text.back }]}
        language={language}
      />
    )
  const { trial, arms, isKey, doughTempC, chosen } = asked.value
  if (isKey && arms) await noteLook('key', trialId)
  const format = planFormat(bakery)
  const scales = new Map(
    (arms ?? [])
      .flatMap(({ toWeigh }) => toWeigh.stages.flatMap(({ lines }) => lines.flatMap(({ scale }) => scale ?? [])))
      .map(({ id, name }) => [id, name]),
  )
  const words = choiceWords(chosen, trials, language)
  const isOver = trial.state === 'closed' || trial.state === 'stopped' || trial.state === 'declined'

  return (
    <Sheet
      kicker={say(text.kicker, language, { number: trial.number })}
      headline={text.title}
      lead={trial.question}
      margin={{
        label: text.about,
        entries: [
          ...(arms
            ? [{ term: text.scale, detail: scales.size > 0 ? listOf(scales.values(), language) : text.noScale }]
            : []),
          ...(words.length > 0 ? [{ term: plan.chosen, detail: <Lines texts={words} /> }] : []),
          { term: text.doughTemp, detail: format.temp(doughTempC), strong: true },
        ],
      }}
    >
      {isOver ? (
        <Notice tone="stop" word={text.endedWord}>
          {text.endedText}
        </Notice>
      ) : trial.isFrozen ? null : (
        <Notice tone="stop" word={text.notApprovedWord}>
          {text.notApprovedText}
        </Notice>
      )}
      {!arms ? (
        <Section id="key" title={text.key.title}>
          <div className="grid max-w-measure gap-3">
            <p>{text.key.note}</p>
            <p>{text.key.record}</p>
          </div>
          <div className="mt-4 print:hidden">
            <ActionForm action={open.bind(null, { trialId: trial.id, planHash: trial.planHash })} idPrefix="key-">
              <Button tone="go">{text.key.open}</Button>
            </ActionForm>
          </div>
        </Section>
      ) : isKey ? (
        <Notice tone="plain" word={text.key.knownWord}>
          {text.key.knownText}
        </Notice>
      ) : null}
      {arms?.map((arm, a) => {
        const title =
          arm.position === 0 ? trials.control : say(trials.dough, language, { letter: armLetter(arm.position) })
        return (
          <div key={arm.position} className={a > 0 ? 'print:break-before-page' : undefined}>
            <Section
              id={`sheet-${arm.position}`}
              title={title}
              note={
                arm.position === 0 ? (
                  plan.outcomes.control
                ) : (
                  <DoughName position={arm.position} name={arm.name} text={trials} />
                )
              }
            >
              <p>
                <span className="text-ink-2">{text.codes}</span>{' '}
                <b>
                  {listOf(
                    arm.batches.map(({ code, day }) => sayName(text.codeOnDay, language, { code, day })),
                    language,
                  )}
                </b>
              </p>
              <p>
                <span className="text-ink-2">{plan.allergens}</span>{' '}
                {arm.allergens.length > 0
                  ? say(plan.allergensOf, language, { list: allergenList(arm.allergens, stores, language) })
                  : plan.allergensNone}{' '}
                {arm.addedAllergens.length > 0 ? (
                  <strong className="text-warn">
                    {say(plan.allergensAdded, language, { list: allergenList(arm.addedAllergens, stores, language) })}
                  </strong>
                ) : null}{' '}
                {arm.uncheckedIngredients.length > 0 ? (
                  <strong className="text-warn">
                    {say(plan.allergensUnchecked, language, { list: arm.uncheckedIngredients })}
                  </strong>
                ) : null}
              </p>
              {arm.doses.map((dose, d) => {
                const { asked, comesTo } = doseWords(dose, { text: trials, format, language, locale: bakery.locale })
                return (
                  <p key={d}>
                    <b>{asked}</b> <span className="block">{comesTo}</span>
                  </p>
                )
              })}
              {arm.toConsistency.map((ingredient) => (
                <p key={`consistency-${ingredient}`}>
                  <strong>{say(trials.warnings['water-to-consistency'], language, { ingredient })}</strong>
                </p>
              ))}
              {arm.dusty.map((ingredient) => (
                <p key={ingredient}>
                  <strong>{say(trials.warnings.dust, language, { ingredient })}</strong>
                </p>
              ))}
              {arm.toWeigh.premixes.map((premix, p) => (
                <PremixSteps
                  key={p}
                  premix={premix}
                  namesScales={arm.toWeigh.hasSeveralScales}
                  words={mixing}
                  format={format}
                  language={language}
                />
              ))}
              <div className="mt-3">
                <SheetTable
                  caption={text.sheet}
                  columns={[
                    { key: 'ingredient', label: plan.ingredient },
                    { key: 'target', label: format.massHead(text.target), numeric: true },
                    { key: 'weighed', label: format.massHead(text.weighed) },
                    { key: 'lot', label: text.lot },
                  ]}
                >
                  {arm.toWeigh.stages.flatMap((stage) => [
                    <GroupRow key={stage.id} label={stage.name || trials.stages[stage.kind]} columns={4} />,
                    ...stage.lines.map((line) => (
                      <tr key={line.key}>
                        <Cell head>
                          <span className="text-lead">{lineName(line, mixing, language)}</span>
                          {arm.toWeigh.hasSeveralScales && line.scale ? (
                            <span className="block text-small font-normal text-ink-2 print:ml-2 print:inline">
                              {say(text.onScale, language, { scale: line.scale.name })}
                            </span>
                          ) : null}
                        </Cell>
                        <Cell numeric>
                          <b className="text-lead">{format.weighed(line.weighedG, line.resolutionG)}</b>
                          {line.parts.map(({ isDose, massG }, part) => (
                            <span key={part} className="block text-small">
                              {say(isDose ? text.partDose : text.partFormula, language, {
                                mass: format.weighed(massG, line.resolutionG),
                              })}
                            </span>
                          ))}
                        </Cell>
                        <Cell />
                        <Cell />
                      </tr>
                    )),
                  ])}
                  <tr>
                    <Cell head>{text.total}</Cell>
                    <Cell numeric>
                      <b>{format.weighed(arm.toWeigh.totalG, arm.toWeigh.totalResolutionG)}</b>
                    </Cell>
                    <Cell />
                    <Cell />
                  </tr>
                </SheetTable>
              </div>
              <div className="mt-4 max-w-measure break-inside-avoid text-lead print:mt-2">
                <h3 className="text-control font-bold">{mixing.water.title}</h3>
                <MixingWater
                  water={arm.water}
                  doughTempC={doughTempC}
                  words={mixing}
                  format={format}
                  language={language}
                />
              </div>
              <p className="mt-2 text-small text-ink-2">
                {text.order} {plan.cautionRaw}
              </p>
            </Section>
          </div>
        )
      })}
      <ActionRow>
        <LinkButton tone="plain" href={`/trials/${trial.id}`}>
          {text.back}
        </LinkButton>
      </ActionRow>
    </Sheet>
  )
}
