import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormBadge } from '@/lib/ui/form-badge'
import { FormDone } from '@/lib/ui/form-done'
import { FormField } from '@/lib/ui/form-field'
import type { FormAction } from '@/lib/ui/form-state'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'

type BadgeSectionProps = {
  /** Whose it is: somebody else's, or the reader's own. */
  person: { name: string; hasPin: boolean; badge: { madeAt: Date; madeBy: { name: string } } | null }
  isOwn: boolean
  bakery: Parameters<typeof formatDateTime>[1] & { name: string }
  language: Language
  make: FormAction
  withdraw: FormAction
}

/** Whether somebody has a badge for tablets and since when; makes one, and withdraws it. */
export function BadgeSection({ person, isOwn, bakery, language, make, withdraw }: BadgeSectionProps) {
  const { people, desk } = wordsIn(language)
  const { badge: text } = people
  const { name, badge } = person
  const since = badge && { at: formatDateTime(badge.madeAt, bakery), who: badge.madeBy.name }
  return (
    <Section id="badge" title={text.title} note={text.note} screenOnly>
      <p className="mb-4 max-w-measure">
        {since
          ? say(text.since, language, since)
          : person.hasPin
            ? text.none
            : isOwn
              ? text.ownPinFirst
              : text.pinFirst}
      </p>
      {person.hasPin ? (
        <ActionForm action={make} idPrefix="badge-">
          <FormBadge
            words={text}
            name={name}
            bakeryName={bakery.name}
            caution={isOwn ? text.ownCaution : say(text.caution, language, { name })}
          />
          <FieldStack>
            <FormField
              name="password"
              type="password"
              label={people.person.yourPassword}
              hint={text.passwordHint}
              autoComplete="current-password"
            />
          </FieldStack>
          <ActionRow>
            <SubmitButton tone="plain">{badge ? text.makeNew : text.make}</SubmitButton>
          </ActionRow>
        </ActionForm>
      ) : null}
      {badge ? (
        <ActionForm action={withdraw} idPrefix="no-badge-">
          <FormDone word={desk.done} text={text.withdrawn} />
          <ActionRow>
            <SubmitButton tone="plain">{text.withdraw}</SubmitButton>
          </ActionRow>
        </ActionForm>
      ) : null}
    </Section>
  )
}
