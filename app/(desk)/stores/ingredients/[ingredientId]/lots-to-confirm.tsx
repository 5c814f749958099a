import { confirmLotInput, matchLotInput } from '@/lib/kitchen/stores/confirm-lot.input'
import type { AnswerOf } from '@/lib/kitchen/query'
import type { listLotsToConfirm } from '@/lib/kitchen/weighings/list-lots-to-confirm'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { Cell } from '@/lib/ui/cell'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormDone } from '@/lib/ui/form-done'
import { FormField } from '@/lib/ui/form-field'
import { FormSelect } from '@/lib/ui/form-select'
import { rulesOf } from '@/lib/ui/rules-of'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { SubmitButton } from '@/lib/ui/submit-button'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { confirm, match } from './actions'

export type ToConfirmShown = AnswerOf<typeof listLotsToConfirm>

type LotsToConfirmProps = {
  lots: ToConfirmShown
  bakery: { locale: string; timeZone: string }
  words: Pick<Words, 'lots' | 'desk'>
  language: Language
}

/** Lots that somebody weighed from before the stores knew of them; and for those who may, what they are. */
export function LotsToConfirm(part: LotsToConfirmProps) {
  const { lots, bakery, words, language } = part
  const { lots: text } = words
  if (lots.rows.length === 0) return null
  return (
    <>
      <Section id="lots-to-confirm" title={text.toConfirm} note={text.toConfirmNote}>
        <SheetTable
          caption={text.toConfirm}
          captionHidden
          columns={[
            { key: 'code', label: text.code },
            { key: 'said', label: text.saidBy },
            { key: 'label', label: text.label },
          ]}
        >
          {lots.rows.map(({ id, code, said, photos }) => (
            <tr key={id}>
              <Cell head>{code}</Cell>
              <Cell>{said === null ? text.saidHidden : saidText(said, bakery, text, language)}</Cell>
              <Cell>
                {photos.length === 0 ? (
                  text.noPhoto
                ) : (
                  <span className="flex flex-wrap gap-3">
                    {photos.map((photo, at) => (
                      <a key={photo} href={`/api/v1/photos/${photo}`} className="block size-24 bg-band">
                        {/* eslint-disable-next-line @next/next/no-img-element -- it is kept as small as it is shown */}
                        <img
                          src={`/api/v1/photos/${photo}?small`}
                          alt={say(text.photoAlt, language, { number: at + 1, code })}
                          loading="lazy"
                          className="size-24 object-contain"
                        />
                      </a>
                    ))}
                  </span>
                )}
              </Cell>
            </tr>
          ))}
        </SheetTable>
        {lots.count > lots.rows.length ? <p>{say(text.toConfirmMore, language, { count: lots.rows.length })}</p> : null}
      </Section>
      {lots.mayConfirm ? <ConfirmForms {...part} /> : null}
    </>
  )
}

function saidText(
  { who, at, station }: NonNullable<ToConfirmShown['rows'][number]['said']>,
  bakery: LotsToConfirmProps['bakery'],
  text: Words['lots'],
  language: Language,
): string {
  const facts = { who, at: formatDateTime(at, bakery) }
  return station === null ? say(text.whoAt, language, facts) : say(text.saidAt, language, { ...facts, station })
}

/** It is a delivery that nobody has written down, or another lot under a slip. */
function ConfirmForms({ lots, words }: LotsToConfirmProps) {
  const { lots: text, desk } = words
  const toConfirm = lots.rows.map(({ id, code }) => ({ value: id, label: code }))
  return (
    <>
      <Section id="confirm-lot" title={text.confirm} note={text.confirmNote} screenOnly>
        <ActionForm rules={rulesOf(confirmLotInput)} action={confirm} idPrefix="confirm-lot-">
          <FormDone word={desk.done} text={text.confirmDone} />
          <FieldStack>
            <FormSelect name="lotId" label={text.which} emptyLabel={text.whichEmpty} options={toConfirm} />
            <FormField name="receivedOn" type="date" label={text.receivedField} width="medium" />
            <FormField
              name="bestBefore"
              type="date"
              label={text.bestBeforeField}
              hint={text.bestBeforeHint}
              width="medium"
            />
          </FieldStack>
          <ActionRow>
            <SubmitButton tone="go">{text.confirmGo}</SubmitButton>
          </ActionRow>
        </ActionForm>
      </Section>
      {lots.others.length === 0 ? null : (
        <Section id="match-lot" title={text.match} note={text.matchNote} screenOnly>
          <ActionForm rules={rulesOf(matchLotInput)} action={match} idPrefix="match-lot-">
            <FormDone word={desk.done} text={text.matchDone} />
            <FieldStack>
              <FormSelect name="lotId" label={text.matchWhich} emptyLabel={text.whichEmpty} options={toConfirm} />
              <FormSelect
                name="sameAsId"
                label={text.matchOther}
                emptyLabel={text.whichEmpty}
                options={lots.others.map(({ id, code }) => ({ value: id, label: code }))}
              />
            </FieldStack>
            <ActionRow>
              <SubmitButton tone="plain">{text.matchGo}</SubmitButton>
            </ActionRow>
          </ActionForm>
        </Section>
      )}
    </>
  )
}
