import { DefinitionList } from '@/lib/ui/definition-list'
import { Section } from '@/lib/ui/section'
import { formatDateTime } from '@/lib/words/format/date'
import { measureName } from '@/lib/words/measure-name'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { KnowerList } from '../knower-list'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownResult } from './shown-result'

type Knew = NonNullable<ShownResult['knew']>

/** Whether those who measured knew which dough is which, measure by measure; who opened the key, and who looked. */
export function WhoKnew({ knew, bakery, forms }: { knew: Knew; bakery: ShownBakery; forms: ResultForms }) {
  const { language } = forms
  const text = forms.text.knew
  return (
    <Section id="knew" title={text.title} note={text.note}>
      <Declared knew={knew} forms={forms} />
      <ul className="max-w-measure list-disc pl-5">
        {knew.measures.map((read) => (
          <li key={`${read.measure.code ?? ''} ${read.measure.name}`}>{sentenceOf(read, forms)}</li>
        ))}
      </ul>
      <div className="mt-4">
        {knew.knowers.length === 0 ? (
          <p>{text.nobody}</p>
        ) : (
          <KnowerList knowers={knew.knowers} words={wordsIn(language)} bakery={bakery} language={language} />
        )}
      </div>
      {knew.lookers.length > 0 ? (
        <div className="mt-4">
          <p className="mb-1 text-small text-ink-2">{text.lookers}</p>
          <DefinitionList
            entries={knew.lookers.map(({ name, what, first, days }) => ({
              term: formatDateTime(first, bakery),
              detail: say(text.looked[what], language, { name, count: days }),
            }))}
          />
        </div>
      ) : null}
    </Section>
  )
}

/** Who was not to know by the plan, and whether whoever measured kept to it. */
function Declared({ knew, forms }: { knew: Knew; forms: ResultForms }) {
  const { language } = forms
  const text = forms.text.knew
  if (knew.blinded.length === 0) return <p className="mb-3">{text.declaredNobody}</p>
  const { blindWho } = wordsIn(language).trials
  const isBroken = knew.blinded.includes('measuring') && knew.measures.some(({ byKnowers }) => byKnowers > 0)
  return (
    <>
      <p>{text.declared}</p>
      <ul className="mb-3 max-w-measure list-disc pl-5">
        {knew.blinded.map((task) => (
          <li key={task}>{blindWho[task]}</li>
        ))}
      </ul>
      {isBroken ? <p className="mb-3 font-bold">{text.notKept}</p> : null}
    </>
  )
}

function sentenceOf(
  { measure, readings, byKnowers, unknown }: Knew['measures'][number],
  { text, language }: ResultForms,
) {
  const { measures } = text.knew
  const facts = { measure: measureName(measure, wordsIn(language)), count: readings }
  const said =
    byKnowers === 0
      ? say(measures.none, language, facts)
      : byKnowers === readings
        ? say(measures.all, language, facts)
        : say(measures.some, language, { ...facts, knew: byKnowers })
  return paragraph([said, unknown > 0 ? say(text.knew.unknown, language, { count: unknown }) : null], language)
}
