import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { FormSelect } from '@/lib/ui/form-select'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import { say } from '@/lib/words/say'
import { chooseForLines } from './actions'
import type { PlanPart, PlanSeen } from './plan-seen'

type LinesFormProps = Omit<PlanPart, 'plan'> & { trial: PlanSeen['trial']; choosing: NonNullable<PlanSeen['choosing']> }

/** What may move to make room for a dose, and on which scale each line goes: as the rules have it, or as somebody chooses. */
export function LinesForm({ trial, choosing, words, format, language }: LinesFormProps) {
  const { trials: text } = words
  const { plan } = text
  const places = choosing.lines.map(({ stageKind, ingredientId }) => ({ stageKind, ingredientId }))
  const scales = choosing.scales.map(({ id, name }) => ({ value: id, label: name }))
  return (
    <Section id="lines" title={plan.lines} note={plan.linesNote} screenOnly>
      <ActionForm action={chooseForLines.bind(null, trial.id, trial.revision, places)} idPrefix="lines-">
        {choosing.lines.map((line, l) => (
          <fieldset key={`${line.stageKind}.${line.ingredientId}`} className="border-t border-rule py-3">
            <legend className="sr-only">
              {say(plan.linesOf, language, { ingredient: line.ingredient, stage: text.stages[line.stageKind] })}
            </legend>
            <div className="grid items-start gap-x-8 gap-y-3 mid:grid-cols-[minmax(0,1fr)_minmax(0,1fr)_minmax(0,1fr)]">
              <p>
                <b>{line.ingredient}</b> {format.mass(line.massG)}
                {line.stageKind === 'final_dough' ? null : (
                  <span className="block text-small text-ink-2">{text.stages[line.stageKind]}</span>
                )}
              </p>
              {line.whyNoMove === null ? (
                <FormSelect
                  name={`lines.${l}.mayMove`}
                  label={plan.linesMove}
                  width="full"
                  options={[
                    { value: '', label: line.movesAsUsual ? plan.linesUsual.moves : plan.linesUsual.stays },
                    { value: 'moves', label: plan.linesChoices.moves },
                    { value: 'stays', label: plan.linesChoices.stays },
                  ]}
                  defaultValue={line.mayMove === null ? '' : line.mayMove ? 'moves' : 'stays'}
                />
              ) : (
                <p className="text-small text-ink-2 mid:pt-7">
                  {line.whyNoMove === 'dosed' ? plan.linesDosed : plan.linesNever}
                </p>
              )}
              {scales.length > 0 ? (
                <FormSelect
                  name={`lines.${l}.scaleId`}
                  label={plan.linesScale}
                  width="full"
                  emptyLabel={say(plan.linesRule, language, { scale: line.scaleByRule ?? plan.none })}
                  options={scales}
                  defaultValue={line.scaleId ?? ''}
                />
              ) : null}
            </div>
          </fieldset>
        ))}
        <p className="mt-2 max-w-measure text-small text-ink-2">{plan.linesHint}</p>
        <ActionRow>
          <SubmitButton tone="plain">{plan.linesGo}</SubmitButton>
        </ActionRow>
      </ActionForm>
    </Section>
  )
}
