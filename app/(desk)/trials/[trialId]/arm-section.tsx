import { Cell } from '@/lib/ui/cell'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { paragraph } from '@/lib/words/paragraph'
import { say, sayName } from '@/lib/words/say'
import { armLetter } from '@/lib/kitchen/trials/rules'
import { MixingWater } from '../../mixing/mixing-water'
import { PremixSteps } from '../../mixing/premix-steps'
import { doseWords } from '../dose-words'
import { DoughName } from '../dough-name'
import { allergenList } from '@/lib/words/allergen-list'
import type { ArmShown, PlanPart } from './plan-seen'
import { WarningList } from './warning-list'

type ArmSectionProps = Omit<PlanPart, 'plan'> & { arm: ArmShown; doughTempC: number; locale: string }

/** One dough in words: what is added, what moved for it, what is left over, its water, allergens, what to mind. */
export function ArmSection({ arm, doughTempC, words, format, language, locale }: ArmSectionProps) {
  const { trials: text, stores } = words
  const letter = armLetter(arm.position)
  const isControl = arm.position === 0
  const part = { words, format, language }
  const moved = arm.lines.filter((line) => line.dose === null && line.changeG !== 0)
  const movedLines = moved.map((line) =>
    sayName(text.plan.moved, language, { ingredient: line.ingredient, change: format.massDifference(line.changeG) }),
  )
  const whatMoved =
    moved.length > 0
      ? say(text.plan.movedList, language, { list: movedLines })
      : arm.outcome === 'not-balanced'
        ? text.plan.movedNone
        : null
  const shown = arm.totals.filter(
    (total) => total.isHeld || total.differenceG === null || Math.abs(total.differenceG) >= 0.05,
  )

  return (
    <Section
      id={`dough-${arm.position}`}
      title={isControl ? text.control : say(text.dough, language, { letter })}
      note={isControl ? text.plan.outcomes.control : <DoughName position={arm.position} name={arm.name} text={text} />}
    >
      {arm.doses.map((dose, d) => (
        <div key={d} className="max-w-measure">
          <DoseLine dose={dose} {...part} locale={locale} />
          {dose.doseOf === 'active' && dose.activeName !== null && dose.activeShare !== null ? (
            <p className="text-small text-ink-2">
              {say(text.plan.doseActive, language, {
                active: dose.activeName,
                share: format.pct(100 * dose.activeShare),
              })}
            </p>
          ) : null}
          <WarningList warnings={arm.warnings.filter((warning) => warning.dose === d)} {...part} />
          {dose.weighing?.premix?.outcome === 'not-possible' ? (
            <p className="text-small text-ink-2">{text.plan.premixNone}</p>
          ) : null}
        </div>
      ))}
      {arm.toWeigh.premixes.map((premix, p) => (
        <PremixSteps
          key={p}
          premix={premix}
          namesScales={arm.toWeigh.hasSeveralScales}
          words={words.mixing}
          format={format}
          language={language}
        />
      ))}
      {isControl ? null : (
        <p className="mt-2 max-w-measure">{paragraph([text.plan.outcomes[arm.outcome], whatMoved], language)}</p>
      )}
      <WarningList warnings={arm.warnings.filter((warning) => warning.dose === null)} {...part} />
      {shown.length > 0 ? (
        <div className="mt-3 max-w-measure">
          <SheetTable
            caption={text.plan.leftOver}
            columns={[
              { key: 'total', label: text.plan.leftTotal },
              { key: 'held', label: text.plan.leftHow },
              { key: 'g', label: text.plan.leftG, numeric: true },
              { key: 'pct', label: text.plan.leftPct, numeric: true },
            ]}
          >
            {shown.map((total) => (
              <tr key={total.total}>
                <Cell head>{text.totals[total.total]}</Cell>
                <Cell>{total.isHeld ? text.plan.leftHeld : text.plan.leftFree}</Cell>
                <Cell numeric>
                  {total.differenceG === null
                    ? text.plan.leftUnknown
                    : format.massDifference(almostNothing(total.differenceG))}
                </Cell>
                <Cell numeric>
                  {total.differencePctFlour === null
                    ? null
                    : format.pctDifference(almostNothing(total.differencePctFlour))}
                </Cell>
              </tr>
            ))}
          </SheetTable>
        </div>
      ) : null}
      <dl className="mt-3 max-w-measure">
        <dt className="text-small text-ink-2">{text.plan.water}</dt>
        <dd>
          <MixingWater
            water={arm.water}
            doughTempC={doughTempC}
            words={words.mixing}
            format={format}
            language={language}
          />
        </dd>
        <dt className="mt-2 text-small text-ink-2">{text.plan.allergens}</dt>
        <dd>
          {arm.allergens.length > 0
            ? say(text.plan.allergensOf, language, { list: allergenList(arm.allergens, stores, language) })
            : text.plan.allergensNone}
          {arm.addedAllergens.length > 0 ? (
            <strong className="block text-warn">
              {say(text.plan.allergensAdded, language, { list: allergenList(arm.addedAllergens, stores, language) })}
            </strong>
          ) : null}
          {arm.uncheckedIngredients.length > 0 ? (
            <strong className="block text-warn">
              {say(text.plan.allergensUnchecked, language, { list: arm.uncheckedIngredients })}
            </strong>
          ) : null}
        </dd>
      </dl>
    </Section>
  )
}

function DoseLine({
  dose,
  words,
  format,
  language,
  locale,
}: Omit<PlanPart, 'plan'> & { dose: ArmShown['doses'][number]; locale: string }) {
  const { asked, comesTo } = doseWords(dose, { text: words.trials, format, language, locale })
  return (
    <>
      <p>{asked}</p>
      <p>{comesTo}</p>
    </>
  )
}

/** What the computation leaves of nothing is nothing. */
function almostNothing(value: number): number {
  return Math.abs(value) < 1e-6 ? 0 : value
}
