import { keyInSheetInput } from '@/lib/kitchen/readings/paper/key-in-sheet.input'
import { ActionForm } from '@/lib/ui/action-form'
import { AfterRefusal } from '@/lib/ui/after-refusal'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorCheck } from '@/lib/ui/floor-check'
import { FloorDisclosure } from '@/lib/ui/floor-disclosure'
import { FloorField } from '@/lib/ui/floor-field'
import { FloorSelect } from '@/lib/ui/floor-select'
import { FormDone } from '@/lib/ui/form-done'
import { rulesOf } from '@/lib/ui/rules-of'
import { withUnit } from '@/lib/words/format/with-unit'
import { keyIn } from './actions'
import { nameInUnit, namePlace, type SheetMeasure, type SheetPart } from './sheet-view'

/** What one sheet says of a batch: who wrote it and when, and a field for every place that has no reading yet. */
export function KeyInForm({ sheet, words, language, timeZone }: SheetPart & { timeZone: string }) {
  const { sheet: text } = words.paper
  const all = sheet.measures.flatMap((measure) => measure.places.map((place) => ({ measure, place })))
  if (all.every(({ place }) => place.reading)) return <p>{text.allThere}</p>
  const wanted = sheet.measures.filter(({ isWanted }) => isWanted)
  const others = sheet.measures.filter(({ isWanted }) => !isWanted)
  const fieldsOf = (measure: SheetMeasure) => (
    <fieldset key={measure.id}>
      <legend className="mb-2 text-lead font-semibold">{nameInUnit(measure, words, language)}</legend>
      <div className="grid grid-cols-[repeat(auto-fill,minmax(11rem,1fr))] gap-4">
        {measure.places.map((place) => {
          const name = namePlace(place, measure, words, language)
          return place.reading ? (
            <p key={`${place.piece} ${place.repeat}`} className="self-end text-ink-2">
              {name}: <b>{withUnit(place.reading.value, place.reading.unit)}</b> {text.there}
            </p>
          ) : (
            <FloorField
              key={`${place.piece} ${place.repeat}`}
              name={`lines.${all.findIndex((each) => each.place === place)}.value`}
              type="mass"
              label={name}
              required={false}
            />
          )
        })}
      </div>
    </fieldset>
  )
  return (
    <ActionForm
      rules={rulesOf(keyInSheetInput)}
      action={keyIn.bind(
        null,
        sheet.id,
        timeZone,
        all.map(({ measure, place: { piece, factorLevel, repeat } }) => ({
          measureId: measure.id,
          piece,
          factorLevel,
          repeat,
          unit: measure.unit,
        })),
      )}
      idPrefix="paper-"
    >
      <FormDone word={words.desk.done} text={text.kept} />
      <div className="grid gap-6">
        <p className="max-w-measure">{text.keyInNote}</p>
        <div className="flex flex-wrap items-start gap-4">
          <FloorSelect
            name="writtenById"
            label={text.who}
            emptyLabel={text.choose}
            options={sheet.people.map(({ id, name }) => ({ value: id, label: name }))}
          />
          <FloorField name="writtenAt" type="day" label={text.day} defaultValue={sheet.day ?? sheet.today} />
          <FloorField name="time" type="time" label={text.time} hint={text.timeHint} required />
        </div>
        {wanted.map(fieldsOf)}
        {others.length > 0 ? (
          <div className="border-t-2 border-rule">
            <FloorDisclosure title={text.others}>
              <div className="grid gap-6">{others.map(fieldsOf)}</div>
            </FloorDisclosure>
          </div>
        ) : null}
        <AfterRefusal>
          <FloorCheck name="confirmed" label={text.confirmed} hint={text.confirmedHint} />
        </AfterRefusal>
        <div>
          <FloorButton tone="go">{text.keep}</FloorButton>
        </div>
      </div>
    </ActionForm>
  )
}
