import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { CheckGroup } from '@/lib/ui/check-group'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormCheck } from '@/lib/ui/form-check'
import { FormField } from '@/lib/ui/form-field'
import { FormRadioGroup } from '@/lib/ui/form-radio-group'
import { FormSelect } from '@/lib/ui/form-select'
import { FormTextArea } from '@/lib/ui/form-text-area'
import type { FormAction } from '@/lib/ui/form-state'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import { rulesOf } from '@/lib/ui/rules-of'
import { draftTrialInput } from '@/lib/kitchen/trials/draft-trial.input'
import { resolutionWithoutScaleG } from '@/lib/kitchen/trials/resolution-of-line'
import { blindTask, heldTotal, mostLevelsText, type TrialContent } from '@/lib/kitchen/trials/trial-content.input'
import { massInUnit, smallMassUnit } from '@/lib/words/format/mass'
import { plainNumber } from '@/lib/words/format/plain-number'
import { temperatureFigure } from '@/lib/words/format/figure-in-field'
import { withUnit } from '@/lib/words/format/with-unit'
import { measureName } from '@/lib/words/measure-name'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { ArmsEditor } from './arms-editor'
import { emptyDose } from './empty-dose'
import { howShown } from './how-shown'
import { FormAnchor } from '@/lib/ui/form-anchor'
import type { OwnUnits } from '@/lib/words/format/own-units'

type Choices = {
  formulas: readonly { id: string; name: string; number: number }[]
  measures: readonly {
    id: string
    code: string | null
    name: string
    unit: string
    direction: keyof Words['trials']['form']['measureOption']
  }[]
  /** Those that the draft holds. */
  ingredients: readonly { id: string; name: string }[]
  scales: readonly { id: string; name: string }[]
  mixers: readonly { id: string; name: string }[]
  /** Of the equipment; none where no tap is written down. */
  tapTempC: number | null
}

type Present = Omit<TrialContent, 'kind'> & { kind: keyof Words['trials']['kinds'] }
type TrialFormProps = {
  action: FormAction
  present: Present | null
  choices: Choices
  units: OwnUnits
  words: Pick<Words, 'trials' | 'desk' | 'measures'>
  language: Language
  backHref: string
}

/** What stands in the form of a new trial: usual choices, all of which can be changed. */
const usual = {
  confidencePct: 95,
  mixingDays: 3,
  batchesPerArm: 1,
  piecesPerBatch: 4,
  margin: 5,
  flourTempC: 20,
  roomTempC: 22,
} as const
const usuallyHeld = ['water', 'fat', 'sugars']
const usuallyBlind = ['baking', 'measuring', 'tasting']

/** The form of a trial: question, size, test doughs, weighing, temperatures. */
export function TrialForm({ action, present, choices, units, words, language, backHref }: TrialFormProps) {
  const { trials: text, desk } = words
  const { form } = text
  const plain = (value: number) => plainNumber(value, { locale: units.locale, significant: 12, grouped: false })
  const temp = temperatureFigure(units.temperatureUnits)
  const inDegrees = (tempC: number) => temp.write(tempC, units.locale)
  const small = smallMassUnit(units.massUnits)
  const smallStep = withUnit(
    plainNumber(massInUnit(resolutionWithoutScaleG, small), { locale: units.locale, significant: 1 }),
    small,
  )
  const number = (name: keyof typeof usual, label: string, hint?: string, unit?: string, range?: true) => (
    <FormField
      name={`content.${name}`}
      type="number"
      label={label}
      hint={hint}
      unit={unit}
      range={range}
      width="short"
      defaultValue={plain(present?.[name] ?? usual[name])}
    />
  )
  const degrees = (name: 'flourTempC' | 'roomTempC', label: string) => (
    <FormField
      name={`content.${name}`}
      type="number"
      label={label}
      unit={temp.unit}
      width="short"
      required
      defaultValue={inDegrees(present?.[name] ?? usual[name])}
    />
  )
  const chosen = (wanted: string | null) => ({
    id: wanted ?? '',
    text: choices.ingredients.find(({ id }) => id === wanted)?.name ?? '',
  })
  const named = (list: readonly { id: string; name: string }[]) =>
    list.map(({ id, name }) => ({ value: id, label: name }))

  return (
    <ActionForm action={action} rules={rulesOf(draftTrialInput)}>
      <Section id="ask" title={form.ask}>
        <FieldStack>
          <FormField
            name="content.question"
            type="text"
            label={form.question}
            hint={form.questionHint}
            defaultValue={present?.question}
            autoComplete="off"
          />
          <FormRadioGroup
            name="content.kind"
            label={form.kind}
            options={[
              { value: 'gain', label: text.kinds.gain, hint: text.kindHints.gain },
              { value: 'look_only', label: text.kinds.look_only, hint: text.kindHints.look_only },
            ]}
            defaultValue={present?.kind ?? 'gain'}
          />
          <FormSelect
            name="content.formulaId"
            label={form.formula}
            hint={form.formulaHint}
            emptyLabel={form.choose}
            options={choices.formulas.map(({ id, name, number: version }) => ({
              value: id,
              label: say(form.formulaOption, language, { name, number: version }),
            }))}
            defaultValue={present?.formulaId}
            width="full"
          />
          <FormSelect
            name="content.measureId"
            label={form.measure}
            hint={form.measureHint}
            options={choices.measures.map((measure) => ({
              value: measure.id,
              label: say(form.measureOption[measure.direction], language, {
                name: measureName(measure, words),
                unit: measure.unit,
              }),
            }))}
            defaultValue={present?.measureId ?? choices.measures.find(({ code }) => code === 'specific-volume')?.id}
            width="full"
          />
          <div className="flex flex-wrap items-start gap-x-8 gap-y-5">
            {number('margin', form.margin, form.marginHint)}
            <FormSelect
              name="content.marginUnit"
              label={form.marginUnit}
              options={[
                { value: 'pct', label: form.marginUnits.pct },
                { value: 'unit', label: form.marginUnits.unit },
              ]}
              defaultValue={present?.marginUnit ?? 'pct'}
            />
            {number('confidencePct', form.confidence, form.confidenceHint, '%', true)}
          </div>
        </FieldStack>
      </Section>

      <Section id="arms" title={form.arms} note={form.armsNote}>
        <ArmsEditor
          present={(present?.arms ?? [{ name: '', onTop: false, doses: [null] }]).map((arm) => ({
            name: arm.name,
            how: arm.onTop ? 'on-top' : 'balanced',
            doses: arm.doses.map((dose) =>
              dose
                ? {
                    ...dose,
                    ingredient: chosen(dose.ingredientId),
                    value: plain(dose.value),
                    how: howShown(dose),
                    insteadOf: chosen(dose.insteadOfId),
                    equalBy: dose.equalBy ?? emptyDose.equalBy,
                  }
                : emptyDose,
            ),
          }))}
          heldIds={choices.ingredients.map(({ id }) => id)}
          text={text}
          language={language}
        />
        <div className="mt-6">
          <CheckGroup id="heldTotals" label={form.held}>
            {heldTotal.options.map((total) => (
              <FormCheck
                key={total}
                name={`content.heldTotals.${total}`}
                label={text.totals[total]}
                defaultChecked={present ? present.heldTotals.includes(total) : usuallyHeld.includes(total)}
              />
            ))}
          </CheckGroup>
          <p className="mt-1 max-w-measure text-small text-ink-2">{form.heldHint}</p>
          <FormAnchor name="content.heldTotals" />
        </div>
      </Section>

      <Section id="size" title={form.size}>
        <FieldStack>
          {number('mixingDays', form.mixingDays, form.mixingDaysHint, undefined, true)}
          {number('batchesPerArm', form.batches, form.batchesHint, undefined, true)}
          {number('piecesPerBatch', form.pieces, undefined, undefined, true)}
          <FormRadioGroup
            name="content.holdsFor"
            label={form.holdsFor}
            options={[
              { value: 'any_day', label: text.holdsFor.any_day, hint: text.holdsForHints.any_day },
              { value: 'these_days', label: text.holdsFor.these_days, hint: text.holdsForHints.these_days },
            ]}
            defaultValue={present?.holdsFor ?? 'any_day'}
          />
        </FieldStack>
      </Section>

      <Section id="blinded" title={form.blinded} note={form.blindedNote}>
        <CheckGroup id="blindTasks" label={form.blindedTasks}>
          {blindTask.options.map((task) => (
            <FormCheck
              key={task}
              name={`content.blinded.${task}`}
              label={text.blindWho[task]}
              defaultChecked={present ? present.blinded.includes(task) : usuallyBlind.includes(task)}
            />
          ))}
        </CheckGroup>
        <p className="mt-1 max-w-measure text-small text-ink-2">{form.blindedHint}</p>
        <FormAnchor name="content.blinded" />
      </Section>

      <Section id="factor" title={form.factor} note={form.factorNote}>
        <FieldStack>
          <FormField
            name="content.factor.name"
            type="text"
            label={form.factorName}
            hint={form.factorNameHint}
            optionalWord={desk.optional}
            defaultValue={present?.factor?.name}
            autoComplete="off"
          />
          <FormTextArea
            name="content.factor.levels"
            label={form.factorLevels}
            hint={form.factorLevelsHint}
            optionalWord={desk.optional}
            defaultValue={present?.factor?.levels.join('\n')}
            maxLength={mostLevelsText}
          />
        </FieldStack>
      </Section>

      <Section id="weighing" title={form.weighing}>
        <FieldStack>
          <FormSelect
            name="content.scaleId"
            label={form.scale}
            emptyLabel={say(form.scaleNone, language, { step: smallStep })}
            options={named(choices.scales)}
            defaultValue={present?.scaleId ?? ''}
            width="full"
            optionalWord={desk.optional}
          />
          <FormSelect
            name="content.mixerId"
            label={form.mixer}
            emptyLabel={form.mixerNone}
            options={named(choices.mixers)}
            defaultValue={present?.mixerId ?? ''}
            width="full"
            optionalWord={desk.optional}
          />
          <div role="group" aria-labelledby="temperatures-title">
            <p id="temperatures-title" className="mb-1 font-semibold">
              {form.temperatures}
            </p>
            <div className="flex flex-wrap gap-x-8 gap-y-4">
              {degrees('flourTempC', form.flourTemp)}
              {degrees('roomTempC', form.roomTemp)}
              <FormField
                name="content.tapTempC"
                type="number"
                label={form.tapTemp}
                hint={
                  choices.tapTempC === null
                    ? form.tapTempNone
                    : say(form.tapTempHint, language, { temp: withUnit(inDegrees(choices.tapTempC), temp.unit) })
                }
                unit={temp.unit}
                width="short"
                required={choices.tapTempC === null}
                optionalWord={choices.tapTempC === null ? undefined : desk.optional}
                defaultValue={typeof present?.tapTempC === 'number' ? inDegrees(present.tapTempC) : undefined}
              />
            </div>
          </div>
        </FieldStack>
      </Section>

      <Section id="note" title={form.noteSection}>
        <FormTextArea name="content.note" label={form.note} optionalWord={desk.optional} defaultValue={present?.note} />
      </Section>

      <ActionRow>
        <SubmitButton tone="go">{form.go}</SubmitButton>
        <LinkButton tone="plain" href={backHref}>
          {present ? form.toPlan : form.back}
        </LinkButton>
      </ActionRow>
    </ActionForm>
  )
}
