import { allergenList } from '@/lib/words/allergen-list'
import { withUnit } from '@/lib/words/format/with-unit'
import { say } from '@/lib/words/say'
import { sayPlace } from '../../say-place'
import { nameInUnit, namePlace, type SheetPart } from './sheet-view'

const cell = 'h-10 border border-ink px-2 text-left align-middle'

/** The sheet as it is printed: a box for every value that the trial asks for, what is in the book already in its box. */
export function PrintedSheet({ sheet, words, language }: SheetPart) {
  const { sheet: text, contains, noAllergens, unchecked } = words.paper
  const wanted = sheet.measures.filter(({ isWanted }) => isWanted)
  const ofDough = wanted.filter(({ level }) => level === 'batch')
  const columns = wanted
    .filter(({ level }) => level === 'piece')
    .flatMap((measure) => measure.places.filter(({ piece }) => piece === 1).map(({ repeat }) => ({ measure, repeat })))
  const written = (reading: { value: string; unit: string } | null | undefined) =>
    reading ? withUnit(reading.value, reading.unit) : null
  return (
    <div className="hidden print:block" data-sheet>
      <div className="mt-4 grid grid-cols-3 gap-4">
        {[text.writtenBy, text.writtenDay, text.writtenTime].map((label) => (
          <p key={label} className="border-b border-ink pb-6">
            {label}
          </p>
        ))}
      </div>
      <p className="mt-3 font-semibold">
        {sheet.allergens.length > 0
          ? say(contains, language, { list: allergenList(sheet.allergens, words.stores, language) })
          : noAllergens}{' '}
        {sheet.unchecked > 0 ? say(unchecked, language, { count: sheet.unchecked }) : null}
      </p>
      <p className="mt-1">{text.care}</p>
      <table className="mt-4 w-full border-collapse">
        <caption className="sr-only">{text.what}</caption>
        <tbody>
          {ofDough.flatMap((measure) =>
            measure.places.map((place) => (
              <tr key={`${measure.id} ${place.repeat}`}>
                <th scope="row" className={`${cell} font-normal`}>
                  {nameInUnit(measure, words, language)}
                  {measure.places.length > 1 ? <>, {namePlace(place, measure, words, language)}</> : null}
                </th>
                <td className={`${cell} w-1/3`}>{written(place.reading)}</td>
              </tr>
            )),
          )}
        </tbody>
      </table>
      {columns.length > 0 ? (
        <table className="mt-4 w-full border-collapse">
          <caption className="sr-only">{text.what}</caption>
          <thead>
            <tr>
              <td className={cell} />
              {columns.map(({ measure, repeat }) => (
                <th key={`${measure.id} ${repeat}`} scope="col" className={`${cell} font-normal`}>
                  {nameInUnit(measure, words, language)}
                  {measure.places.some((place) => place.repeat > 1) ? ` (${repeat})` : null}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {sheet.pieces.map((each) => (
              <tr key={each.piece}>
                <th scope="row" className={`${cell} font-normal`}>
                  {sayPlace(each, words.shift.readings, language)}
                </th>
                {columns.map(({ measure, repeat }) => (
                  <td key={`${measure.id} ${repeat}`} className={cell}>
                    {written(
                      measure.places.find((place) => place.piece === each.piece && place.repeat === repeat)?.reading,
                    )}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
      <p className="mt-4 min-h-32 border border-ink p-2">{text.remarks}</p>
    </div>
  )
}
