'use client'

import { use, type KeyboardEvent } from 'react'
import { ActionFormContext } from '@/lib/ui/action-form-context'
import { controlClass } from '@/lib/ui/control-class'
import { PressButton } from '@/lib/ui/press-button'
import { say, sayName } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { EditorIngredient, LiveFigures } from './editor-figures'
import { EditorLineRow } from './editor-line-row'
import { stageFieldId, type EditorAction, type EditorStage } from './editor-state'
import { ruleOf } from '@/lib/ui/field-rules'
import { FormAnchor } from '@/lib/ui/form-anchor'
import type { FormulaFormat } from '@/lib/words/format/formula-format'

const kinds = ['final_dough', 'pre_ferment', 'scald', 'soaker'] as const

type EditorStageRowsProps = {
  stage: EditorStage
  number: number
  isFirst: boolean
  isLast: boolean
  isOnly: boolean
  heldIngredients: ReadonlyMap<string, EditorIngredient>
  onChoose: (ingredient: EditorIngredient) => void
  live: LiveFigures
  stageFigures: { pctFlour: number; flourSharePct: number } | undefined
  text: Words['formulas']
  format: FormulaFormat
  language: Language
  step: (action: EditorAction) => void
}

/** One stage being written: its kind and name, its lines as rows, what they come to. */
export function EditorStageRows(props: EditorStageRowsProps) {
  const { stage, number, isFirst, isLast, isOnly, live, stageFigures, text, format, language, step } = props
  const { rules } = use(ActionFormContext)
  const { editor } = text
  const title = sayName(editor.stage, language, { number })
  const massG = stage.lines.reduce((sum, line) => sum + (live.massOfLine.get(line.key) ?? 0), 0)
  const [kindId, nameId] = [stageFieldId(stage.key, 'kind'), stageFieldId(stage.key, 'name')]
  const full = (word: string) => say(editor.fieldOf, language, { place: title, field: word })

  return (
    <fieldset className="mb-7 min-w-0 border-t border-rule pt-3">
      <legend className="sr-only">{title}</legend>
      <div className="mb-3 flex flex-wrap items-end gap-x-5 gap-y-3">
        <div className="w-short">
          <label htmlFor={kindId} className="mb-1 block text-small text-ink-2">
            {editor.stageKind}
          </label>
          <select
            id={kindId}
            defaultValue={stage.kind}
            onChange={({ target }) =>
              step({
                do: 'change-stage',
                stage: stage.key,
                to: { kind: kinds.find((kind) => kind === target.value) ?? stage.kind },
              })
            }
            className={controlClass('short')}
          >
            {kinds.map((kind) => (
              <option key={kind} value={kind}>
                {text.stages[kind]}
              </option>
            ))}
          </select>
        </div>
        <div className="w-short grow mid:max-w-medium">
          <label htmlFor={nameId} className="mb-1 block text-small text-ink-2">
            {editor.stageName}, {editor.stageNameHint}
          </label>
          <input
            id={nameId}
            type="text"
            defaultValue={stage.name}
            maxLength={ruleOf(rules, 'stages.0.name')?.mostLength}
            autoComplete="off"
            onChange={({ target }) => step({ do: 'change-stage', stage: stage.key, to: { name: target.value } })}
            onKeyDown={keepEnter}
            className={controlClass('medium')}
          />
        </div>
        {isOnly ? null : (
          <div className="flex flex-wrap items-center gap-x-4">
            <PressButton
              tone="quiet"
              disabled={isFirst}
              fullLabel={full(editor.moveStageUp)}
              onPress={() => step({ do: 'move-stage', stage: stage.key, by: -1 })}
            >
              {editor.moveStageUp}
            </PressButton>
            <PressButton
              tone="quiet"
              disabled={isLast}
              fullLabel={full(editor.moveStageDown)}
              onPress={() => step({ do: 'move-stage', stage: stage.key, by: 1 })}
            >
              {editor.moveStageDown}
            </PressButton>
            <PressButton
              tone="stop-quiet"
              fullLabel={full(editor.removeStage)}
              onPress={() => step({ do: 'remove-stage', stage: stage.key })}
            >
              {editor.removeStage}
            </PressButton>
          </div>
        )}
      </div>
      <FormAnchor name={stageFieldId(stage.key, 'lines')} />
      <div className="sheet-scroll">
        <table className="sheet-table min-w-[38rem] max-w-[48rem] table-fixed">
          <caption className="sr-only">{title}</caption>
          <thead>
            <tr>
              <th scope="col">{editor.ingredient}</th>
              <th scope="col" data-numeric className="w-[10rem]">
                {editor.onFlour}
              </th>
              <th scope="col" data-numeric className="w-[7.5rem]">
                {editor.weight}
              </th>
              <th scope="col" className="w-[8.5rem] print:hidden">
                <span className="sr-only">{editor.rowButtons}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {stage.lines.map((line, index) => (
              <EditorLineRow
                key={line.key}
                line={line}
                stageKey={stage.key}
                label={sayName(editor.line, language, { line: index + 1, stage: number })}
                canMoveUp={!(isFirst && index === 0)}
                canMoveDown={!(isLast && index === stage.lines.length - 1)}
                heldIngredients={props.heldIngredients}
                onChoose={props.onChoose}
                massG={live.massOfLine.get(line.key)}
                text={text}
                format={format}
                language={language}
                step={step}
              />
            ))}
            <tr className="text-ink-2">
              <td>
                <PressButton
                  tone="quiet"
                  fullLabel={full(editor.addLine)}
                  onPress={() => step({ do: 'add-line', stage: stage.key })}
                >
                  {editor.addLine}
                </PressButton>
              </td>
              <td data-numeric>{stageFigures ? format.pct(stageFigures.pctFlour) : text.notThere}</td>
              <td data-numeric>{live.figures?.batch ? format.mass(massG) : text.notThere}</td>
              <td className="text-small">
                {stageFigures && !isOnly && stageFigures.flourSharePct > 0
                  ? say(editor.stageFlour, language, { share: format.pctShort(stageFigures.flourSharePct) })
                  : null}
              </td>
            </tr>
          </tbody>
        </table>
      </div>
    </fieldset>
  )
}

/** Enter in a name must not send a formula that is half written. */
function keepEnter(event: KeyboardEvent): void {
  if (event.key === 'Enter') event.preventDefault()
}
