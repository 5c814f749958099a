import { rulesOf } from '@/lib/ui/rules-of'
import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getTeam } from '@/lib/kitchen/people/get-team'
import { invitePersonInput } from '@/lib/kitchen/people/invite-person.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { Cell } from '@/lib/ui/cell'
import { EmptyState } from '@/lib/ui/empty-state'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormField } from '@/lib/ui/form-field'
import { FormRadioGroup } from '@/lib/ui/form-radio-group'
import { FormSecret } from '@/lib/ui/form-secret'
import { LinkButton } from '@/lib/ui/link-button'
import { ListFoot } from '@/lib/ui/list-foot'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SheetTable } from '@/lib/ui/sheet-table'
import { StateWord } from '@/lib/ui/state-word'
import { SubmitButton } from '@/lib/ui/submit-button'
import { formatDate, formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { invite, withdraw } from './actions'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).people.team.title }
}

export default async function TeamPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>
}) {
  const { after } = await searchParams
  const language = await currentLanguage()
  const { people: words, desk } = wordsIn(language)
  const { team: text } = words
  const { bakery } = await ask(getDesk)
  const team = await ask(getTeam, { after })
  const manages = team.rolesToGive.length > 0

  return (
    <Sheet
      kicker={text.title}
      headline={say(text.headline, language, { count: team.workingCount })}
      margin={{
        label: text.margin,
        entries: [
          { term: text.marginPeople, detail: team.workingCount, strong: true },
          ...(manages ? [{ term: text.marginInvited, detail: team.invitations.count }] : []),
          { term: text.marginRights, detail: text.marginRightsText },
        ],
      }}
    >
      <Section id="people" title={text.people}>
        <SheetTable
          caption={text.people}
          captionHidden
          columns={[
            { key: 'name', label: text.name },
            { key: 'role', label: text.role },
            ...(manages ? [{ key: 'email', label: text.email }] : []),
            { key: 'since', label: text.since },
            { key: 'state', label: text.state },
            ...(manages ? [{ key: 'change', label: text.change, screenOnly: true }] : []),
          ]}
        >
          {team.people.rows.map((person) => (
            <tr key={person.id}>
              <Cell head>
                {person.name}
                {person.isMe ? <span className="block text-small font-normal text-ink-2">{text.me}</span> : null}
              </Cell>
              <Cell>{desk.roles[person.role]}</Cell>
              {manages ? <Cell>{person.email}</Cell> : null}
              <Cell whole>{formatDate(person.createdAt, bakery)}</Cell>
              <Cell>
                {person.endedAt ? (
                  <StateWord word={text.left} level="off" />
                ) : (
                  <StateWord word={text.works} level={4} />
                )}
              </Cell>
              {manages ? (
                <Cell screenOnly>
                  {person.mayChange ? (
                    <LinkButton
                      tone="quiet"
                      href={`/team/people/${person.id}`}
                      fullLabel={say(text.changeFull, language, { name: person.name })}
                    >
                      {text.change}
                    </LinkButton>
                  ) : null}
                </Cell>
              ) : null}
            </tr>
          ))}
        </SheetTable>
        <ListFoot
          page={team.people}
          list={text.people}
          address="/team"
          anchor="people"
          words={desk}
          language={language}
        />
      </Section>

      {manages ? (
        <Section id="invitations" title={text.invitations}>
          {team.invitations.count === 0 ? (
            <EmptyState sentence={text.noInvitations} />
          ) : (
            <>
              <SheetTable
                caption={text.invitations}
                captionHidden
                columns={[
                  { key: 'name', label: text.name },
                  { key: 'role', label: text.role },
                  { key: 'what', label: text.what },
                  { key: 'by', label: text.by },
                  { key: 'until', label: text.holdsUntil },
                  { key: 'withdraw', label: text.withdraw, screenOnly: true },
                ]}
              >
                {team.invitations.rows.map((invitation) => (
                  <tr key={invitation.id}>
                    <Cell head>{invitation.name}</Cell>
                    <Cell>{desk.roles[invitation.role]}</Cell>
                    <Cell>{invitation.purpose === 'reset' ? text.purposeReset : text.purposeJoin}</Cell>
                    <Cell>{invitation.invitedBy.name}</Cell>
                    <Cell whole>{formatDateTime(invitation.endsAt, bakery)}</Cell>
                    <Cell screenOnly>
                      {invitation.mayWithdraw ? (
                        <ActionForm action={withdraw.bind(null, invitation.id)} idPrefix={`${invitation.id}-`}>
                          <SubmitButton
                            tone="stop-quiet"
                            fullLabel={say(text.withdrawFull, language, { name: invitation.name })}
                          >
                            {text.withdraw}
                          </SubmitButton>
                        </ActionForm>
                      ) : null}
                    </Cell>
                  </tr>
                ))}
              </SheetTable>
              <ListFoot
                page={team.invitations}
                list={text.invitations}
                address="/team"
                anchor="invitations"
                words={desk}
                language={language}
              />
            </>
          )}
        </Section>
      ) : null}

      {manages ? (
        <Section id="invite" title={text.invite} note={text.inviteNote} screenOnly>
          <ActionForm rules={rulesOf(invitePersonInput)} action={invite}>
            <FormSecret id="invitation-link" />
            <FieldStack>
              <FormField name="name" type="text" label={text.name} autoComplete="off" />
              <FormField name="email" type="email" label={text.email} autoComplete="off" />
              <FormRadioGroup
                name="role"
                label={text.role}
                hint={team.rolesToGive.length === 1 ? text.inviteOnly : undefined}
                options={team.rolesToGive.map((role) => ({ value: role, label: desk.roles[role] }))}
                defaultValue="shift_baker"
              />
            </FieldStack>
            <ActionRow>
              <SubmitButton tone="go">{text.inviteGo}</SubmitButton>
              {team.mayChangeSettings ? (
                <LinkButton tone="plain" href="/team/settings">
                  {text.toSettings}
                </LinkButton>
              ) : null}
              {team.mayManageStations ? (
                <LinkButton tone="plain" href="/stations">
                  {text.toStations}
                </LinkButton>
              ) : null}
              {team.mayReadRecord ? (
                <LinkButton tone="plain" href="/team/record">
                  {text.toRecord}
                </LinkButton>
              ) : null}
            </ActionRow>
          </ActionForm>
        </Section>
      ) : null}
    </Sheet>
  )
}
