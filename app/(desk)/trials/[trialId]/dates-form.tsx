import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormField } from '@/lib/ui/form-field'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { dateDays } from './actions'
import type { PlanSeen } from './plan-seen'

type DatesFormProps = { trialId: string; days: PlanSeen['days']; text: Words['trials']['plan']; language: Language }

/** When the mixing days are to be: of those of which no dough is begun. */
export function DatesForm({ trialId, days, text, language }: DatesFormProps) {
  const open = days.filter(({ isBegun }) => !isBegun)
  if (open.length === 0) return null
  return (
    <Section id="dates" title={text.dates} note={text.datesNote} screenOnly>
      <ActionForm
        action={dateDays.bind(
          null,
          trialId,
          open.map(({ number, day }) => ({ number, seen: day })),
        )}
        idPrefix="dates-"
      >
        <FieldStack>
          {open.map(({ number, day }, i) => (
            <FormField
              key={number}
              name={`days.${i}.day`}
              type="date"
              label={say(text.day, language, { day: number })}
              width="medium"
              defaultValue={day ?? ''}
            />
          ))}
        </FieldStack>
        <ActionRow>
          <SubmitButton tone="plain">{text.datesGo}</SubmitButton>
        </ActionRow>
      </ActionForm>
    </Section>
  )
}
