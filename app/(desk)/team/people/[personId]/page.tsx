import { rulesOf } from '@/lib/ui/rules-of'
import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getPerson } from '@/lib/kitchen/people/get-person'
import { changePersonInput } from '@/lib/kitchen/people/change-person.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormCheck } from '@/lib/ui/form-check'
import { FormDone } from '@/lib/ui/form-done'
import { FormField } from '@/lib/ui/form-field'
import { FormRadioGroup } from '@/lib/ui/form-radio-group'
import { FormSecret } from '@/lib/ui/form-secret'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { StateWord } from '@/lib/ui/state-word'
import { SubmitButton } from '@/lib/ui/submit-button'
import { formatDate } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { BadgeSection } from '../../../badge-section'
import { change, makeBadge, makeResetLink, takeAway, withdrawBadge } from './actions'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).people.team.title }
}

export default async function PersonPage({ params }: { params: Promise<{ personId: string }> }) {
  const { personId } = await params
  const language = await currentLanguage()
  const { people: words, desk } = wordsIn(language)
  const { person: text, team } = words
  const { bakery } = await ask(getDesk)
  const person = await ask(getPerson, { personId })
  const works = !person.endedAt

  return (
    <Sheet
      kicker={desk.roles[person.role]}
      headline={person.name}
      margin={{
        label: text.about,
        entries: [
          { term: text.email, detail: person.email },
          { term: text.since, detail: formatDate(person.createdAt, bakery) },
          {
            term: text.state,
            detail: works ? <StateWord word={team.works} level={4} /> : <StateWord word={team.left} level="off" />,
          },
        ],
      }}
    >
      {person.mayChange ? (
        <>
          <Section id="change" title={text.form} screenOnly>
            <ActionForm rules={rulesOf(changePersonInput)} action={change.bind(null, person.id, person.revision)}>
              <FormDone word={desk.done} text={text.kept} />
              <FieldStack>
                <FormField name="name" type="text" label={text.name} defaultValue={person.name} autoComplete="off" />
                <FormRadioGroup
                  name="role"
                  label={text.role}
                  options={person.rolesToGive.map((role) => ({ value: role, label: desk.roles[role] }))}
                  defaultValue={person.role}
                />
                <FormCheck name="works" label={text.works} hint={text.worksHint} defaultChecked={works} />
              </FieldStack>
              <ActionRow>
                <SubmitButton tone="go">{text.go}</SubmitButton>
                <LinkButton tone="plain" href="/team">
                  {text.back}
                </LinkButton>
              </ActionRow>
            </ActionForm>
          </Section>
          {works ? (
            <Section
              id="reset"
              title={text.reset}
              note={say(text.resetNote, language, { name: person.name })}
              screenOnly
            >
              <ActionForm action={makeResetLink.bind(null, person.id, person.name)} idPrefix="reset-">
                <FormSecret id="reset-link" />
                <FieldStack>
                  <FormField
                    name="password"
                    type="password"
                    label={text.yourPassword}
                    hint={text.yourPasswordHint}
                    autoComplete="current-password"
                  />
                </FieldStack>
                <ActionRow>
                  <SubmitButton tone="plain">{text.resetGo}</SubmitButton>
                </ActionRow>
              </ActionForm>
            </Section>
          ) : null}
          {person.hasPin ? (
            <Section id="pin" title={text.pin} note={say(text.pinNote, language, { name: person.name })} screenOnly>
              <ActionForm action={takeAway.bind(null, person.id)} idPrefix="pin-">
                <FormDone word={desk.done} text={text.pinTaken} />
                <ActionRow>
                  <SubmitButton tone="plain">{text.pinGo}</SubmitButton>
                </ActionRow>
              </ActionForm>
            </Section>
          ) : null}
          {works ? (
            <BadgeSection
              person={person}
              isOwn={false}
              bakery={bakery}
              language={language}
              make={makeBadge.bind(null, person.id)}
              withdraw={withdrawBadge.bind(null, person.id)}
            />
          ) : null}
        </>
      ) : (
        <Notice tone="plain" word={desk.attention}>
          {text.noChange}
        </Notice>
      )}
    </Sheet>
  )
}
