import { detailsSaid } from '@/lib/station/ui/said-of-step'
import { momentNear } from '@/lib/words/format/moment-near'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { sayRuns } from '../say-runs'
import type { BakeryShown, BatchShown } from './batch-view'

type StepsDoneProps = { course: BatchShown['course']; bakery: BakeryShown; words: Words; language: Language }

/** What was done with a dough, when and by whom, in its order; and what runs. */
export function StepsDone({ course: { steps, runs }, bakery, words, language }: StepsDoneProps) {
  const { steps: text, stationSteps } = words
  const unit = bakery.temperatureUnits === 'fahrenheit' ? '°F' : '°C'
  return (
    <div>
      <h3 className="mb-1 text-ink-2">{text.title}</h3>
      {runs && <p className="mb-2 font-bold">{sayRuns(runs, bakery, words, language)}</p>}
      {steps.length === 0 && <p className="text-ink-2">{text.none}</p>}
      <ol className="border-t border-rule empty:hidden">
        {steps.map((step) => (
          <li key={step.id} className="flex flex-wrap gap-x-4 border-b border-rule py-2">
            <b>{stationSteps.done[step.step]}</b>
            <span className="ml-auto text-small text-ink-2">
              {say(text.byAt, language, { at: momentNear(step.at, new Date(), bakery), who: step.person.name })}
            </span>
            {detailsSaid(step, { unit, locale: bakery.locale, words: stationSteps.step, language }).map((each) => (
              <span key={each} className="w-full text-small">
                {each}
              </span>
            ))}
            {step.isOdd && <span className="w-full text-small font-bold text-warn">{stationSteps.odd}</span>}
          </li>
        ))}
      </ol>
    </div>
  )
}
