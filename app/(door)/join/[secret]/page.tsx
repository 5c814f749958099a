import { rulesOf } from '@/lib/ui/rules-of'
import { askOpenly } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getInvitation } from '@/lib/kitchen/people/get-invitation'
import { acceptInvitationInput } from '@/lib/kitchen/people/accept-invitation.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { ErrorSheet } from '@/lib/ui/error-sheet'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormField } from '@/lib/ui/form-field'
import { LinkButton } from '@/lib/ui/link-button'
import { PlainPage } from '@/lib/ui/plain-page'
import { SubmitButton } from '@/lib/ui/submit-button'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { join } from './actions'

export default async function JoinPage({ params }: { params: Promise<{ secret: string }> }) {
  const { secret } = await params
  const language = await currentLanguage()
  const { desk, door } = wordsIn(language)
  const { join: text } = door
  const found = await askOpenly(getInvitation, { secret })
  if (!found) {
    return (
      <ErrorSheet productName={desk.product} headline={text.deadTitle} happened={text.dead} todo={text.deadTodo}>
        <LinkButton tone="plain" href="/sign-in">
          {text.toSignIn}
        </LinkButton>
      </ErrorSheet>
    )
  }
  const { purpose, name, email, role, bakeryName } = found.value
  const isReset = purpose === 'reset'
  return (
    <PlainPage
      productName={desk.product}
      headline={isReset ? text.resetTitle : say(text.joinTitle, language, { bakery: bakeryName })}
      lead={
        isReset
          ? say(text.resetLead, language, { name, bakery: bakeryName })
          : say(text.joinLead, language, { name, role: desk.roles[role] })
      }
    >
      <ActionForm rules={rulesOf(acceptInvitationInput)} action={join.bind(null, secret)}>
        <FieldStack>
          <p>{say(text.email, language, { email })}</p>
          {/* For password managers, which keep a password beside a name. */}
          <input type="hidden" name="username" autoComplete="username" value={email} />
          <FormField
            name="password"
            type="password"
            label={text.password}
            hint={door.setUp.passwordHint}
            autoComplete="new-password"
          />
        </FieldStack>
        <ActionRow>
          <SubmitButton tone="go">{text.go}</SubmitButton>
        </ActionRow>
      </ActionForm>
    </PlainPage>
  )
}
