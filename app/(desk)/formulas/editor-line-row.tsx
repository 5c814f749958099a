'use client'

import type { KeyboardEvent } from 'react'
import { useFormField } from '@/lib/ui/action-form-context'
import { controlClass } from '@/lib/ui/control-class'
import { ErrorLine } from '@/lib/ui/error-line'
import { FormSearchField } from '@/lib/ui/form-search-field'
import { RowButton } from '@/lib/ui/row-button'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { askIngredients } from '../stores/find-ingredients/ask-ingredients'
import type { EditorIngredient } from './editor-figures'
import { lineFieldId, type EditorAction, type EditorLine } from './editor-state'
import type { FormulaFormat } from '@/lib/words/format/formula-format'

type EditorLineRowProps = {
  line: EditorLine
  stageKey: number
  /** 'Line 2 of stage 1'. */
  label: string
  canMoveUp: boolean
  canMoveDown: boolean
  /** Those that the formula holds. */
  heldIngredients: ReadonlyMap<string, EditorIngredient>
  onChoose: (ingredient: EditorIngredient) => void
  massG: number | undefined
  text: Words['formulas']
  format: FormulaFormat
  language: Language
  step: (action: EditorAction) => void
}

/** One line being written: ingredient, % on flour, what it weighs, and the buttons that move it or take it away. */
export function EditorLineRow({
  line,
  stageKey,
  label,
  canMoveUp,
  canMoveDown,
  heldIngredients,
  onChoose,
  massG,
  text,
  format,
  language,
  step,
}: EditorLineRowProps) {
  const { editor } = text
  const full = (word: string) => say(editor.fieldOf, language, { place: label, field: word })
  const held = heldIngredients.get(line.ingredientId)
  const pct = useFormField(lineFieldId(line.key, 'pctFlour'), full(editor.onFlour))
  const move = (by: -1 | 1, focus: string) => step({ do: 'move-line', line: line.key, by, focus })

  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') {
      event.preventDefault()
      step({ do: 'add-line', stage: stageKey, after: line.key })
    }
    if (event.altKey && (event.key === 'ArrowUp' || event.key === 'ArrowDown')) {
      event.preventDefault()
      const by = event.key === 'ArrowUp' ? -1 : 1
      if (by === -1 ? canMoveUp : canMoveDown) move(by, event.currentTarget.id)
    }
  }

  return (
    <tr>
      <td>
        <FormSearchField<EditorIngredient>
          name={lineFieldId(line.key, 'ingredientId')}
          label={full(editor.ingredient)}
          inTable
          value={{ id: line.ingredientId, text: line.ingredientName }}
          onChange={({ id, text: ingredientName }, chosen) => {
            if (chosen) onChoose(chosen)
            step({ do: 'change-line', line: line.key, to: { ingredientId: id, ingredientName } })
          }}
          find={(part, signal) =>
            askIngredients(
              part,
              [...heldIngredients.values()].flatMap(({ id, isEnded }) => (isEnded ? [id] : [])),
              signal,
            )
          }
          detailOf={({ isEnded }) => (isEnded ? editor.endedIngredient : null)}
          hint={held?.isEnded ? editor.endedIngredient : undefined}
          onKeyDown={onKeyDown}
        />
      </td>
      <td data-numeric>
        <input
          id={pct.id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          aria-label={full(editor.onFlour)}
          aria-invalid={pct.error ? true : undefined}
          aria-describedby={pct.error ? `${pct.id}-error` : undefined}
          defaultValue={line.pctFlour}
          onChange={({ target }) => step({ do: 'change-line', line: line.key, to: { pctFlour: target.value } })}
          onKeyDown={onKeyDown}
          className={`${controlClass('short')} text-right`}
        />
        {pct.error ? (
          <div className="text-left whitespace-normal">
            <ErrorLine id={`${pct.id}-error`} text={pct.error} />
          </div>
        ) : null}
      </td>
      <td data-numeric>{massG === undefined ? text.notThere : format.mass(massG)}</td>
      <td className="align-top print:hidden">
        <div className="flex">
          <RowButton shape="up" label={full(editor.up)} disabled={!canMoveUp} onPress={() => move(-1, pct.id)} />
          <RowButton shape="down" label={full(editor.down)} disabled={!canMoveDown} onPress={() => move(1, pct.id)} />
          <RowButton
            shape="remove"
            label={full(editor.remove)}
            onPress={() => step({ do: 'remove-line', line: line.key })}
          />
        </div>
      </td>
    </tr>
  )
}
