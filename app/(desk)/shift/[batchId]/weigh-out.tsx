import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { lineName } from '../../mixing/line-name'
import { MixingWater } from '../../mixing/mixing-water'
import { PremixSteps } from '../../mixing/premix-steps'
import { planFormat } from '@/lib/words/format/plan-format'
import type { Mixing } from '@/lib/kitchen/shifts/mixing-of'
import type { BatchPart } from './batch-view'

/** What goes in, stage by stage, with the weight that each scale is to show; before it the premixes, after it the water. */
export function WeighOut({ batch, mixing: planned, bakery, words, language }: BatchPart & { mixing: Mixing }) {
  const text = words.weighOut
  const { mixing, desk } = wordsIn(language)
  if (planned.outcome !== 'read') {
    return (
      <Section id="weigh-out" title={text.title}>
        <Notice tone="stop" word={desk.attention}>
          {planned.outcome === 'damaged'
            ? text.unread.damaged
            : say(text.unread['unknown-format'], language, { format: planned.format })}
        </Notice>
      </Section>
    )
  }
  const format = planFormat(bakery)
  const { stages, premixes, totalG, totalResolutionG, hasSeveralScales } = planned.toWeigh
  return (
    <>
      <Section id="weigh-out" title={text.title}>
        <div className="text-lead">
          {premixes.map((premix, p) => (
            <PremixSteps
              key={p}
              premix={premix}
              namesScales={hasSeveralScales}
              words={mixing}
              format={format}
              language={language}
            />
          ))}
        </div>
        {stages.map((stage) => (
          <table
            key={stage.id}
            className="mb-5 w-full max-w-column border-t-2 border-ink text-lead print:break-inside-avoid"
          >
            <caption className="py-1 text-left text-body text-ink-2">{stage.name || text.stages[stage.kind]}</caption>
            <thead className="sr-only">
              <tr>
                <th scope="col">{text.ingredient}</th>
                <th scope="col">{text.target}</th>
              </tr>
            </thead>
            <tbody>
              {stage.lines.map((line) => (
                <tr key={line.key} className="border-b border-rule">
                  <th scope="row" className="py-3 pr-4 text-left font-normal print:py-1">
                    {lineName(line, mixing, language)}
                    {hasSeveralScales && line.scale ? (
                      <span className="block text-body text-ink-2 print:ml-2 print:inline">
                        {say(text.onScale, language, { scale: line.scale.name })}
                      </span>
                    ) : null}
                  </th>
                  <td className="py-3 text-right font-bold whitespace-nowrap print:py-1">
                    {format.weighedInUnit(line.weighedG, line.resolutionG)}
                    {line.parts.length > 0 ? (
                      <span className="block text-body font-normal text-ink-2">
                        {line.parts.map(({ massG }) => format.weighedInUnit(massG, line.resolutionG)).join(' + ')}
                      </span>
                    ) : null}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        ))}
        <p className="flex max-w-column justify-between gap-4">
          <span>{text.total}</span>
          <span className="whitespace-nowrap">{format.weighedInUnit(totalG, totalResolutionG)}</span>
        </p>
      </Section>
      <Section id="mixing-water" title={mixing.water.title}>
        <div className="text-lead print:break-inside-avoid">
          <MixingWater
            water={planned.water}
            doughTempC={batch.process.doughTempC}
            words={mixing}
            format={format}
            language={language}
          />
        </div>
      </Section>
    </>
  )
}
