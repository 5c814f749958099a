import { Section } from '@/lib/ui/section'
import { digitsOfResolution } from './digits-of-resolution'
import { amountInUnits } from './amount-in-units'
import type { BatchPart } from './batch-view'

/** What goes in, stage by stage, with the weight that the scale is to show. */
export function WeighOut({ batch, bakery, words }: BatchPart) {
  const text = words.weighOut
  const digits = digitsOfResolution(batch.scaleResolutionG)
  const stages = [...new Map(batch.lines.map(({ stage }) => [stage.id, stage])).values()].sort((a, b) => a.position - b.position)
  const total = batch.lines.reduce((sum, { weighedG }) => sum + weighedG, 0)
  return (
    <Section id="weigh-out" title={text.title}>
      {stages.map((stage) => {
        const title = stage.name || text.stages[stage.kind]
        return (
          <table key={stage.id} className="mb-5 w-full max-w-column border-t-2 border-ink text-lead">
            <caption className="py-1 text-left text-body text-ink-2">{title}</caption>
            <thead className="sr-only">
              <tr>
                <th scope="col">{text.ingredient}</th>
                <th scope="col">{text.target}</th>
              </tr>
            </thead>
            <tbody>
              {batch.lines
                .filter((line) => line.stage.id === stage.id)
                .map((line) => (
                  <tr key={line.id} className="border-b border-rule">
                    <th scope="row" className="py-3 pr-4 text-left font-normal">
                      {line.ingredient.name}
                    </th>
                    <td className="py-3 text-right font-bold whitespace-nowrap">{amountInUnits(line.weighedG, 'g', digits, bakery)}</td>
                  </tr>
                ))}
            </tbody>
          </table>
        )
      })}
      <p className="flex max-w-column justify-between gap-4">
        <span>{text.total}</span>
        <span className="whitespace-nowrap">{amountInUnits(total, 'g', digits, bakery)}</span>
      </p>
    </Section>
  )
}
