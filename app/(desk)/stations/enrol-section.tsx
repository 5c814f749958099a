import type { AnswerOf } from '@/lib/kitchen/query'
import { makeStationInput } from '@/lib/kitchen/stations/make-station.input'
import type { listStations } from '@/lib/kitchen/stations/list-stations'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormField } from '@/lib/ui/form-field'
import { FormSecret } from '@/lib/ui/form-secret'
import { rulesOf } from '@/lib/ui/rules-of'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import { say } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import { make } from './actions'

/** Draws a tablet up, and says who can log on to it. */
export function EnrolSection({
  people,
  language,
}: {
  people: AnswerOf<typeof listStations>['people']
  language: Language
}) {
  const { tablets: text } = wordsIn(language).stations
  const names = (hasPin: boolean) => people.filter((person) => person.hasPin === hasPin).map(({ name }) => name)
  const [have, lack] = [names(true), names(false)]
  return (
    <>
      <Section id="enrol" title={text.enrol} note={text.enrolNote} screenOnly>
        <ActionForm rules={rulesOf(makeStationInput)} action={make} idPrefix="enrol-">
          <FormSecret id="station-code" />
          <FieldStack>
            <FormField name="name" type="text" label={text.name} hint={text.nameHint} autoComplete="off" />
          </FieldStack>
          <ActionRow>
            <SubmitButton tone="go">{text.enrolGo}</SubmitButton>
          </ActionRow>
        </ActionForm>
      </Section>
      <Section id="pins" title={text.pins} note={text.pinsNote}>
        {have.length > 0 ? <p className="max-w-measure">{say(text.havePin, language, { names: have })}</p> : null}
        {lack.length > 0 ? <p className="max-w-measure">{say(text.lackPin, language, { names: lack })}</p> : null}
      </Section>
    </>
  )
}
