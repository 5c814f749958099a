'use client'

import { useEffect, useReducer, useState, type ChangeEvent } from 'react'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { FieldStack } from '@/lib/ui/field-stack'
import type { FieldRules } from '@/lib/ui/field-rules'
import { FormField } from '@/lib/ui/form-field'
import type { FormAction } from '@/lib/ui/form-state'
import { FormTextArea } from '@/lib/ui/form-text-area'
import { LinkButton } from '@/lib/ui/link-button'
import { PressButton } from '@/lib/ui/press-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SubmitButton } from '@/lib/ui/submit-button'
import { massFigure, temperatureFigure, type FieldFigure } from '@/lib/words/format/figure-in-field'
import type { Language, Words } from '@/lib/words/words'
import { askIngredientsById } from '../stores/find-ingredients/ask-ingredients'
import { liveFigures, type EditorIngredient } from './editor-figures'
import { EditorStageRows } from './editor-stage-rows'
import { editorStateOf, editorStep, type GivenStage } from './editor-state'
import { editorEntries, EditorTotals } from './editor-totals'
import { FormAnchor } from '@/lib/ui/form-anchor'
import { formulaFormat } from '@/lib/words/format/formula-format'
import type { OwnUnits } from '@/lib/words/format/own-units'
import { stagesOfText } from './stages-of-text'

export type EditorValues = {
  pieces: string
  scalingMassG: string
  doughLossPct: string
  doughTempC: string
  mixTimeMin: string
  bulkTimeMin: string
  proofTimeMin: string
  bakeTempC: string
  bakeTimeMin: string
  method: string
  reason: string
  stages: readonly GivenStage[]
}

type FormulaEditorProps = {
  action: FormAction
  rules: FieldRules
  kicker: string
  headline: string
  /** A new formula is given its name here. */
  hasName: boolean
  values: EditorValues
  /** Those that the lines begin with; others are found as they are chosen. */
  ingredients: readonly EditorIngredient[]
  text: Words['formulas']
  units: OwnUnits
  language: Language
  cancelHref: string
}

/** A formula being written: batch, lines by stage, process, with the totals as they come out of what is typed. */
export function FormulaEditor({
  action,
  rules,
  kicker,
  headline,
  hasName,
  values,
  ingredients,
  text,
  units,
  language,
  cancelHref,
}: FormulaEditorProps) {
  const { editor } = text
  const [mass, temp] = [massFigure(units.massUnits), temperatureFigure(units.temperatureUnits)]
  const [state, step] = useReducer(editorStep, values.stages, editorStateOf)
  const [batch, setBatch] = useState({
    pieces: values.pieces,
    scalingMassG: values.scalingMassG,
    doughLossPct: values.doughLossPct,
  })
  const [chosen, setChosen] = useState<readonly EditorIngredient[]>([])
  const byId = new Map([...ingredients, ...chosen].map((ingredient) => [ingredient.id, ingredient]))
  const live = liveFigures(state.stages, batch, byId, units)
  const format = formulaFormat(units, text.units)
  const { focus } = state

  useEffect(() => {
    if (focus) document.getElementById(focus.id)?.focus()
  }, [focus])

  const takeBatch = ({ target }: ChangeEvent<HTMLDivElement>) => {
    if (target instanceof HTMLInputElement && target.name in batch) setBatch({ ...batch, [target.name]: target.value })
  }
  // A draft holds what was chosen when it was typed, and not what the stores say of that now.
  const lookUp = async (stages: readonly GivenStage[]) => {
    const ids = new Set(stages.flatMap((stage) => stage.lines.flatMap(({ ingredientId }) => ingredientId || [])))
    try {
      const found = await askIngredientsById([...ids])
      setChosen((before) => [...before, ...found])
      step({ do: 'name-ingredients', names: new Map(found.map(({ id, name }) => [id, name])) })
    } catch {
      // The lines are there all the same; their totals come when the book does.
    }
  }
  // Lines and batch live here, so that the totals beside the form follow them.
  const putBack = (typed: Readonly<Record<string, string>> | null) => {
    const from = typed ?? {}
    const stages = stagesOfText(from.stages) ?? values.stages
    step({ do: 'begin-again', stages })
    void lookUp(stages)
    setBatch({
      pieces: from.pieces ?? values.pieces,
      scalingMassG: from.scalingMassG ?? values.scalingMassG,
      doughLossPct: from.doughLossPct ?? values.doughLossPct,
    })
  }
  const number = (
    name: Exclude<keyof EditorValues, 'stages' | 'method' | 'reason'>,
    unit: string,
    range?: true | FieldFigure,
  ) => (
    <FormField
      name={name}
      type="number"
      label={editor[name]}
      unit={unit}
      range={range}
      defaultValue={values[name]}
      width="short"
    />
  )

  return (
    <Sheet
      kicker={kicker}
      headline={headline}
      lead={editor.kept}
      margin={{ label: editor.margin, entries: editorEntries(live, text, format, language) }}
    >
      <ActionForm action={action} rules={rules} onPutBack={putBack}>
        <Section id="about" title={editor.about}>
          <FieldStack>
            {hasName ? <FormField name="name" type="text" label={editor.name} autoComplete="off" /> : null}
            <FormTextArea
              name="reason"
              label={editor.reason}
              hint={editor.reasonHint}
              defaultValue={values.reason}
              rows={2}
            />
          </FieldStack>
        </Section>
        <Section id="batch" title={editor.batch}>
          <div onChange={takeBatch} className="grid items-start gap-x-8 gap-y-4 mid:grid-cols-3">
            {number('pieces', text.units.pieces, true)}
            {number('scalingMassG', mass.unit, mass)}
            <FormField
              name="doughLossPct"
              type="number"
              range
              label={editor.doughLossPct}
              unit={text.units.pct}
              hint={editor.doughLossHint}
              defaultValue={values.doughLossPct}
              width="short"
            />
          </div>
        </Section>
        <Section id="lines" title={editor.lines} note={editor.linesNote}>
          <input type="hidden" name="stages" value={JSON.stringify(state.stages)} />
          <p className="mb-3 text-small text-ink-2 print:hidden">{editor.keys}</p>
          {state.stages.map((stage, index) => (
            <EditorStageRows
              key={stage.key}
              stage={stage}
              number={index + 1}
              isFirst={index === 0}
              isLast={index === state.stages.length - 1}
              isOnly={state.stages.length === 1}
              heldIngredients={byId}
              onChoose={(ingredient) => setChosen((before) => [...before, ingredient])}
              live={live}
              stageFigures={live.figures?.stages[index]}
              text={text}
              format={format}
              language={language}
              step={step}
            />
          ))}
          <FormAnchor name="stages" />
          <div className="mt-4">
            <PressButton tone="plain" onPress={() => step({ do: 'add-stage' })}>
              {editor.addStage}
            </PressButton>
          </div>
          <EditorTotals live={live} text={text} format={format} language={language} />
          <FormAnchor name="flour" />
        </Section>
        <Section id="process" title={editor.process}>
          <div className="mb-5 grid items-start gap-x-8 gap-y-4 mid:grid-cols-3">
            {number('mixTimeMin', text.units.min)}
            {number('doughTempC', temp.unit, temp)}
            {number('bulkTimeMin', text.units.min)}
            {number('proofTimeMin', text.units.min)}
            {number('bakeTempC', temp.unit, temp)}
            {number('bakeTimeMin', text.units.min)}
          </div>
          <FormTextArea
            name="method"
            label={editor.method}
            hint={editor.methodHint}
            defaultValue={values.method}
            rows={6}
          />
        </Section>
        <ActionRow>
          <SubmitButton tone="go">{editor.go}</SubmitButton>
          <LinkButton tone="plain" href={cancelHref}>
            {editor.cancel}
          </LinkButton>
        </ActionRow>
      </ActionForm>
    </Sheet>
  )
}
