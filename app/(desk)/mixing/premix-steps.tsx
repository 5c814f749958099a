import type { OnScale, PremixToMake } from '@/lib/kitchen/trials/lines-to-weigh'
import { say, sayName } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { PlanFormat } from '@/lib/words/format/plan-format'

type PremixStepsProps = {
  premix: PremixToMake
  namesScales: boolean
  words: Words['mixing']
  format: PlanFormat
  language: Language
}

/** How a dose that no scale here weighs closely enough is mixed into flour first, step by step. */
export function PremixSteps({ premix, namesScales, words: { premix: text }, format, language }: PremixStepsProps) {
  const { ingredient, carrier: flour, steps, portion, carrierLessG, doughs } = premix
  const mass = ({ massG, resolutionG, scale }: OnScale) => {
    const written = format.weighedInUnit(massG, resolutionG)
    return namesScales && scale ? sayName(text.onScale, language, { mass: written, scale: scale.name }) : written
  }
  return (
    <div className="my-3 max-w-measure break-inside-avoid border-l-4 border-ink pl-4">
      <h3 className="font-bold">{say(text.title, language, { ingredient })}</h3>
      <p className="text-small text-ink-2">{text.why}</p>
      <p className="mt-1">
        <strong>{text.dust}</strong>
      </p>
      <ol className="mt-1 list-decimal pl-6">
        {steps.map((step, s) => (
          <li key={s} className="py-0.5">
            {say(s === 0 ? text.first : text.further, language, {
              take: mass(step.take),
              carrier: mass(step.carrier),
              ingredient,
              flour,
            })}
          </li>
        ))}
        <li className="py-0.5">
          {say(text.portion, language, { portion: mass(portion), ingredient, flour, less: format.mass(carrierLessG) })}
        </li>
      </ol>
      <p className="mt-1">{say(text.doughs, language, { count: doughs })}</p>
    </div>
  )
}
