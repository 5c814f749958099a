import { rulesOf } from '@/lib/ui/rules-of'
import { signOffVersionInput } from '@/lib/kitchen/formulas/sign-off-version.input'
import { mostTimeLength } from '@/lib/kitchen/moment-of'
import { ActionForm } from '@/lib/ui/action-form'
import { DefinitionList } from '@/lib/ui/definition-list'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormField } from '@/lib/ui/form-field'
import { FormRadioGroup } from '@/lib/ui/form-radio-group'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import { formatDateTime } from '@/lib/words/format/date'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { allergenChangeWords } from '../allergen-change-words'
import { signOff } from '../[formulaId]/versions/[versionId]/actions'
import { costChangeWords } from '../cost-change-words'
import { formulaFormat } from '@/lib/words/format/formula-format'
import type { OwnUnits } from '@/lib/words/format/own-units'
import { neededKey } from '@/lib/words/needed-key'
import type { VersionSeen } from './version-seen'

type SignFormProps = {
  /** Other words over it, where it stands beside its evidence. */
  title?: { text: string; note: string }
  version: VersionSeen
  signing: NonNullable<VersionSeen['signing']>
  words: Words
  bakery: OwnUnits & { timeZone: string; currency: string }
  language: Language
}

/** What exactly is signed, in which words, from when; or why it is not for this person now. */
export function SignForm({ title, version, signing, words, bakery, language }: SignFormProps) {
  const { formulas: text, desk } = words
  const { sign, sheet } = text
  const { content, figures, number } = version
  const format = formulaFormat(bakery, text.units)
  const needed = neededKey(signing.needed)
  const missing = neededKey(signing.missing)
  const summary = [
    {
      term: sign.content,
      detail: say(sign.contentText, language, {
        number,
        name: version.formula.name,
        lines: content.stages.reduce((sum, stage) => sum + stage.lines.length, 0),
        stages: content.stages.length,
        dough: figures?.batch ? format.mass(figures.batch.doughMassG) : text.notThere,
        pieces: format.count(content.batch.pieces),
        mass: format.massShort(content.batch.scalingMassG),
      }),
    },
    {
      term: sign.change,
      detail: signing.change
        ? paragraph(allergenChangeWords(signing.change, text, words.stores, language), language)
        : sign.first,
    },
    ...(signing.cost
      ? [
          {
            term: sign.cost,
            detail: (
              <>
                {costChangeWords(signing.cost, words, bakery, language)}
                {signing.cost.against.isOwners ? (
                  <span className="block">
                    {say(sign.costSinceOwner, language, { number: signing.cost.against.number })}
                  </span>
                ) : null}
              </>
            ),
          },
        ]
      : []),
    {
      term: sign.needed,
      detail: (
        <>
          {needed && sign.needs[needed]}
          {missing === needed || !missing ? null : <span className="block">{sign.stillMissing[missing]}</span>}
        </>
      ),
    },
    { term: sheet.seal, detail: <span className="break-all">{version.contentHash}</span> },
    ...(signing.bar === null ? [{ term: sign.words, detail: text.meanings[signing.meaning], strong: true }] : []),
  ]

  return (
    <Section id="sign" title={title?.text ?? sign.title} note={title?.note ?? sign.note} screenOnly>
      <DefinitionList entries={summary} />
      {version.coming.map((coming) => (
        <Notice key={coming.id} tone="warn" word={desk.attention}>
          {say(sign.coming, language, { number: coming.number, at: formatDateTime(coming.from, bakery) })}
        </Notice>
      ))}
      {signing.hasMovedOn ? (
        <Notice tone="stop" word={desk.attention}>
          {sign.movedOn}
        </Notice>
      ) : signing.bar !== null ? (
        <Notice tone="plain" word={desk.attention}>
          {barText(signing.bar)}
        </Notice>
      ) : (
        <div className="mt-5">
          <ActionForm
            rules={rulesOf(signOffVersionInput)}
            action={signOff.bind(null, {
              versionId: version.id,
              seenRevision: version.revision,
              seenHash: version.contentHash,
              timeZone: bakery.timeZone,
            })}
            idPrefix="sign-"
          >
            <FieldStack>
              {signing.isLast ? (
                <>
                  <FormRadioGroup
                    name="when"
                    label={sign.when}
                    options={[
                      { value: 'now', label: sign.whenNow },
                      { value: 'later', label: sign.whenLater, hint: sign.laterHint },
                    ]}
                    defaultValue="now"
                    required
                  />
                  <div className="flex flex-wrap gap-x-8 gap-y-4">
                    <FormField name="effectiveAt" type="date" label={sign.day} width="short" />
                    <FormField
                      name="time"
                      type="text"
                      label={sign.time}
                      hint={sign.timeHint}
                      width="short"
                      maxLength={mostTimeLength}
                      autoComplete="off"
                    />
                  </div>
                </>
              ) : null}
              <FormField
                name="password"
                type="password"
                label={sign.password}
                hint={sign.passwordHint}
                autoComplete="current-password"
              />
            </FieldStack>
            <div className="mt-6">
              <SubmitButton tone="go">{say(signing.isLast ? sign.go : sign.goPart, language, { number })}</SubmitButton>
            </div>
          </ActionForm>
        </div>
      )}
    </Section>
  )

  function barText(bar: NonNullable<typeof signing.bar>): string {
    if (missing && bar === 'already-signed') return sign.alreadySigned[missing]
    if (missing && bar === 'not-your-signature') return sign.notYourSignature[missing]
    return sign.bars[bar === 'own-proposal' ? bar : 'no-right']
  }
}
