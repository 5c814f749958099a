'use client'

import { use, useEffect, useRef, useState } from 'react'
import { ActionFormContext } from '@/lib/ui/action-form-context'
import { ArmMark } from '@/lib/ui/arm-mark'
import { ErrorLine } from '@/lib/ui/error-line'
import { ruleOf } from '@/lib/ui/field-rules'
import { Field } from '@/lib/ui/field'
import { FormSearchField } from '@/lib/ui/form-search-field'
import { PressButton } from '@/lib/ui/press-button'
import { textName } from '@/lib/ui/search'
import { SelectField } from '@/lib/ui/select-field'
import type { FoundIngredient } from '@/lib/kitchen/stores/find-ingredients'
import { armLetter } from '@/lib/kitchen/trials/rules'
import { say, sayName } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { askIngredients } from '../stores/find-ingredients/ask-ingredients'
import { emptyDose, type DoseShown } from './empty-dose'
import { takesAll } from './takes-all'

export type ArmShown = { name: string; how: string; doses: DoseShown[] }

type ArmsEditorProps = {
  present: readonly ArmShown[]
  /** Ingredients that the draft holds, and that may be chosen again when they are no longer in use. */
  heldIds: readonly string[]
  text: Words['trials']
  language: Language
}

const mostArms = 6
const mostDoses = 6
/** Above every key of a row that was there from the start. */
const firstNewKey = 1000
const addArmId = 'add-test-dough'
const emptyArm: ArmShown = { name: '', how: 'balanced', doses: [emptyDose] }

/** `at` is the place that a row had when the form was answered: its faults stand under that. */
type DoseRow = DoseShown & { key: number; at: number | null }
type ArmRow = Omit<ArmShown, 'doses'> & { key: number; at: number | null; doses: DoseRow[] }

/**
 * The test doughs of a trial: as many as wanted, each with its doses. After an answer, or a draft put
 * back, it begins again from what was typed, so that nothing is lost and every fault stands at its row.
 */
export function ArmsEditor({ present, heldIds, text, language }: ArmsEditorProps) {
  const { state, typed, rules } = use(ActionFormContext)
  const keys = useRef(firstNewKey)
  const [arms, setArms] = useState<ArmRow[]>(() => {
    let key = 0
    const shown = typed ? typedArms(typed) : present
    return shown.map((arm, at) => ({
      ...arm,
      key: key++,
      at,
      doses: arm.doses.map((dose, doseAt) => ({ ...dose, key: key++, at: doseAt })),
    }))
  })
  const [focusId, setFocusId] = useState<{ id: string } | null>(null)
  useEffect(() => {
    if (focusId) document.getElementById(focusId.id)?.focus()
  }, [focusId])
  const newKey = () => keys.current++
  const newDose = (): DoseRow => ({ ...emptyDose, key: newKey(), at: null })
  const change = (key: number, doses: (rows: DoseRow[]) => DoseRow[]) =>
    setArms((rows) => rows.map((arm) => (arm.key === key ? { ...arm, doses: doses(arm.doses) } : arm)))
  const { form } = text

  return (
    <div id="content.arms" tabIndex={-1}>
      {state.problems['content.arms'] ? (
        <ErrorLine id="content.arms-error" text={state.problems['content.arms']} />
      ) : null}
      {arms.length === 0 ? <p className="text-ink-2">{form.noArms}</p> : null}
      {arms.map((arm, a) => {
        const letter = armLetter(a + 1)
        const dough = sayName(text.dough, language, { letter })
        const name = `content.arms.${a}`
        const problem = (field: string) =>
          arm.at === null ? undefined : state.problems[`content.arms.${arm.at}.${field}`]
        return (
          <fieldset key={arm.key} className="mb-6 border-t border-rule pt-3">
            <legend className="float-left mb-3 w-full font-bold">
              <ArmMark arm={letter} title={dough} />
            </legend>
            <div className="clear-both grid gap-5">
              <div className="grid items-start gap-x-8 gap-y-5 mid:grid-cols-2">
                <Field
                  name={`${name}.name`}
                  type="text"
                  label={form.armName}
                  hint={form.armNameHint}
                  defaultValue={arm.name}
                  maxLength={ruleOf(rules, `${name}.name`)?.mostLength}
                  autoComplete="off"
                  required
                  error={problem('name')}
                />
                <SelectField
                  name={`${name}.how`}
                  label={form.armHow}
                  width="full"
                  options={[
                    { value: 'balanced', label: form.armBalanced },
                    { value: 'on-top', label: form.armOnTop },
                  ]}
                  defaultValue={arm.how}
                  required
                />
              </div>
              {arm.doses.map((dose, d) => {
                const doseName = `${name}.doses.${d}`
                const hasAmount = !takesAll(dose.how)
                const changeDose = (to: Partial<DoseShown>) =>
                  change(arm.key, (rows) => rows.map((row) => (row.key === dose.key ? { ...row, ...to } : row)))
                const answeredAs =
                  arm.at === null || dose.at === null ? null : `content.arms.${arm.at}.doses.${dose.at}`
                const given = arm.at === null || dose.at === null ? undefined : present[arm.at]?.doses[dose.at]
                const ingredientField = (field: string) => ({
                  name: `${doseName}.${field}`,
                  answeredAs: answeredAs && `${answeredAs}.${field}`,
                  width: 'full' as const,
                  required: true,
                  find: (part: string, signal: AbortSignal) => askIngredients(part, heldIds, signal),
                })
                const doseProblem = (field: string) =>
                  dose.at === null ? undefined : problem(`doses.${dose.at}.${field}`)
                return (
                  <div
                    key={dose.key}
                    className="grid items-start gap-x-5 gap-y-3 mid:grid-cols-2 wide:grid-cols-[minmax(0,2fr)_minmax(0,2fr)_minmax(0,1fr)]"
                  >
                    <FormSearchField<FoundIngredient>
                      {...ingredientField('ingredientId')}
                      label={form.ingredient}
                      value={dose.ingredient}
                      onChange={(ingredient) => changeDose({ ingredient })}
                      present={given?.ingredient}
                      detailOf={({ activeName }) =>
                        activeName === null ? null : say(form.doseActive, language, { active: activeName })
                      }
                    />
                    <SelectField
                      name={`${doseName}.how`}
                      label={form.doseHow}
                      width="full"
                      options={Object.entries(form.doseHowChoices).map(([value, label]) => ({ value, label }))}
                      defaultValue={dose.how}
                      onChoose={(how) => changeDose({ how })}
                      required
                      error={doseProblem('how') ?? (hasAmount ? undefined : doseProblem('value'))}
                    />
                    {/* What was typed stays while another choice asks for no amount. */}
                    <div className={hasAmount ? 'contents' : 'hidden'}>
                      <Field
                        name={`${doseName}.value`}
                        type="number"
                        label={form.dose}
                        defaultValue={dose.value}
                        required={hasAmount}
                        error={doseProblem('value')}
                      />
                      <SelectField
                        name={`${doseName}.basis`}
                        label={form.basis}
                        width="full"
                        options={Object.entries(text.bases).map(([value, label]) => ({ value, label }))}
                        defaultValue={dose.basis}
                        required
                        error={doseProblem('basis')}
                      />
                      <SelectField
                        name={`${doseName}.doseOf`}
                        label={form.doseOf}
                        width="full"
                        options={Object.entries(form.doseOfChoices).map(([value, label]) => ({ value, label }))}
                        defaultValue={dose.doseOf}
                        required
                        error={doseProblem('doseOf')}
                      />
                    </div>
                    {dose.how === 'in_place' || dose.how === 'in_place_all' ? (
                      <>
                        <FormSearchField<FoundIngredient>
                          {...ingredientField('insteadOfId')}
                          label={form.insteadOf}
                          hint={dose.how === 'in_place_all' ? form.insteadOfAllHint : form.insteadOfHint}
                          value={dose.insteadOf}
                          onChange={(insteadOf) => changeDose({ insteadOf })}
                          present={given?.insteadOf}
                        />
                        <SelectField
                          name={`${doseName}.equalBy`}
                          label={form.equalBy}
                          width="full"
                          options={Object.entries(form.equalByChoices).map(([value, label]) => ({ value, label }))}
                          defaultValue={dose.equalBy}
                          required
                          error={doseProblem('equalBy')}
                        />
                      </>
                    ) : null}
                    {arm.doses.length > 1 ? (
                      <div className="wide:pt-7">
                        <PressButton
                          tone="stop-quiet"
                          onPress={() => {
                            change(arm.key, (rows) => rows.filter(({ key }) => key !== dose.key))
                            setFocusId({ id: `${name}.doses.${Math.max(0, d - 1)}.ingredientId` })
                          }}
                        >
                          {form.removeDose}
                        </PressButton>
                      </div>
                    ) : null}
                  </div>
                )
              })}
              <div className="flex flex-wrap gap-x-6">
                {arm.doses.length < mostDoses ? (
                  <PressButton
                    tone="quiet"
                    fullLabel={say(form.addDoseFull, language, { dough })}
                    onPress={() => {
                      change(arm.key, (rows) => [...rows, newDose()])
                      setFocusId({ id: `${name}.doses.${arm.doses.length}.ingredientId` })
                    }}
                  >
                    {form.addDose}
                  </PressButton>
                ) : null}
                <PressButton
                  tone="stop-quiet"
                  onPress={() => {
                    setArms((rows) => rows.filter(({ key }) => key !== arm.key))
                    setFocusId({ id: addArmId })
                  }}
                >
                  {say(form.removeArm, language, { dough })}
                </PressButton>
              </div>
            </div>
          </fieldset>
        )
      })}
      {arms.length < mostArms ? (
        <PressButton
          tone="plain"
          id={addArmId}
          onPress={() => {
            setArms((rows) => [...rows, { ...emptyArm, key: newKey(), at: null, doses: [newDose()] }])
            setFocusId({ id: `content.arms.${arms.length}.name` })
          }}
        >
          {form.addArm}
        </PressButton>
      ) : null}
    </div>
  )
}

/** The rows as they were typed, out of the answer to the form. */
function typedArms(values: Readonly<Record<string, string>>): ArmShown[] {
  const arms: ArmShown[] = []
  for (let a = 0; values[`content.arms.${a}.name`] !== undefined; a++) {
    const at = (field: string) => values[`content.arms.${a}.${field}`] ?? ''
    const doses: DoseShown[] = []
    for (let d = 0; values[`content.arms.${a}.doses.${d}.ingredientId`] !== undefined; d++) {
      const of = (field: string) => at(`doses.${d}.${field}`)
      const chosen = (field: string) => {
        const shown = of(textName(field))
        // What is not seen is not chosen.
        return { id: shown === '' ? '' : of(field), text: shown }
      }
      doses.push({
        ingredient: chosen('ingredientId'),
        value: of('value'),
        basis: of('basis'),
        doseOf: of('doseOf'),
        how: of('how'),
        insteadOf: chosen('insteadOfId'),
        equalBy: of('equalBy') || emptyDose.equalBy,
      })
    }
    arms.push({ name: at('name'), how: at('how'), doses })
  }
  return arms
}
