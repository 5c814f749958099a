import { languageOptions } from '@/lib/ui/language-options'
import { rulesOf } from '@/lib/ui/rules-of'
import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getAccount } from '@/lib/kitchen/people/get-account'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { chooseLanguageInput } from '@/lib/kitchen/people/choose-language.input'
import { choosePinInput } from '@/lib/kitchen/people/choose-pin.input'
import { changeOwnPasswordInput } from '@/lib/kitchen/people/change-own-password.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { Cell } from '@/lib/ui/cell'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormDone } from '@/lib/ui/form-done'
import { FormField } from '@/lib/ui/form-field'
import { FormSelect } from '@/lib/ui/form-select'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SheetTable } from '@/lib/ui/sheet-table'
import { SubmitButton } from '@/lib/ui/submit-button'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { BadgeSection } from '../badge-section'
import { changePassword, chooseLanguage, endOthers, keepPin, makeBadge, withdrawBadge } from './actions'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).people.account.title }
}

export default async function AccountPage() {
  const language = await currentLanguage()
  const { people: words, desk } = wordsIn(language)
  const { account: text } = words
  const { bakery } = await ask(getDesk)
  const account = await ask(getAccount)
  return (
    <Sheet
      kicker={text.title}
      headline={account.name}
      margin={{
        label: text.about,
        entries: [
          { term: text.role, detail: desk.roles[account.role], strong: true },
          { term: text.email, detail: account.email },
        ],
      }}
    >
      <Section id="password-change" title={text.password} note={text.passwordNote} screenOnly>
        <ActionForm rules={rulesOf(changeOwnPasswordInput)} action={changePassword}>
          <FormDone word={desk.done} text={text.passwordChanged} />
          <FieldStack>
            <FormField name="password" type="password" label={text.presentPassword} autoComplete="current-password" />
            <FormField
              name="newPassword"
              type="password"
              label={text.newPassword}
              hint={text.newPasswordHint}
              autoComplete="new-password"
            />
          </FieldStack>
          <ActionRow>
            <SubmitButton tone="go">{text.passwordGo}</SubmitButton>
          </ActionRow>
        </ActionForm>
      </Section>
      <Section id="pin" title={text.pin} note={text.pinNote} screenOnly>
        <p className="mb-4 max-w-measure">
          {account.pinSetAt
            ? say(text.pinSince, language, { at: formatDateTime(account.pinSetAt, bakery) })
            : text.pinNone}
        </p>
        <ActionForm rules={rulesOf(choosePinInput)} action={keepPin} idPrefix="pin-">
          <FormDone word={desk.done} text={text.pinKept} />
          <FieldStack>
            <FormField name="password" type="password" label={text.presentPassword} autoComplete="current-password" />
            <FormField
              name="pin"
              type="password"
              label={text.pinNew}
              hint={text.pinHint}
              width="short"
              autoComplete="off"
            />
          </FieldStack>
          <ActionRow>
            <SubmitButton tone="plain">{text.pinGo}</SubmitButton>
          </ActionRow>
        </ActionForm>
      </Section>
      <BadgeSection
        person={{ name: account.name, hasPin: account.pinSetAt !== null, badge: account.badge }}
        isOwn
        bakery={bakery}
        language={language}
        make={makeBadge}
        withdraw={withdrawBadge}
      />
      <Section id="language" title={text.language} note={text.languageNote} screenOnly>
        <ActionForm rules={rulesOf(chooseLanguageInput)} action={chooseLanguage} idPrefix="language-">
          <FormDone word={desk.done} text={text.languageKept} />
          <FieldStack>
            <FormSelect
              name="language"
              label={text.language}
              emptyLabel={text.languageOfBakery}
              options={languageOptions(words)}
              defaultValue={account.language ?? ''}
            />
          </FieldStack>
          <ActionRow>
            <SubmitButton tone="plain">{text.languageGo}</SubmitButton>
          </ActionRow>
        </ActionForm>
      </Section>
      <Section id="sessions" title={text.sessions} note={text.sessionsNote}>
        <SheetTable
          caption={text.sessions}
          captionHidden
          columns={[
            { key: 'device', label: text.device },
            { key: 'opened', label: text.opened },
            { key: 'seen', label: text.lastSeen },
          ]}
        >
          {account.sessions.map((session) => (
            <tr key={session.id}>
              <Cell head>
                {session.device || text.unknownDevice}
                {session.isThis ? (
                  <span className="block text-small font-normal text-ink-2">{text.thisOne}</span>
                ) : null}
              </Cell>
              <Cell whole>{formatDateTime(session.openedAt, bakery)}</Cell>
              <Cell whole>{formatDateTime(session.lastSeenAt, bakery)}</Cell>
            </tr>
          ))}
        </SheetTable>
        {account.sessions.length > 1 ? (
          <ActionForm action={endOthers} idPrefix="sessions-">
            <ActionRow>
              <SubmitButton tone="plain">{text.endOthers}</SubmitButton>
            </ActionRow>
          </ActionForm>
        ) : null}
      </Section>
    </Sheet>
  )
}
