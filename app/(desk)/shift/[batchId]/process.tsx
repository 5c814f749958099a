import { DefinitionList } from '@/lib/ui/definition-list'
import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import { amountInUnits } from './amount-in-units'
import type { BatchPart } from './batch-view'
import { minutesOf } from '@/lib/words/format/minutes-of'

/** The process as it is planned, the same for every batch of the trial. */
export function Process({ batch, bakery, words, language }: BatchPart) {
  const { process: text } = words
  const { scalingMassG, doughTempC, mixTimeS, bulkTimeS, proofTimeS, bakeTempC, bakeTimeS, method } = batch.process
  const minutes = (timeS: number) => minutesOf(timeS, bakery.locale)
  return (
    <Section id="process" title={text.title}>
      <div className="max-w-column text-control">
        <DefinitionList
          entries={[
            { term: text.mix, detail: minutes(mixTimeS), strong: true },
            { term: text.doughTemp, detail: amountInUnits(doughTempC, '°C', 1, bakery), strong: true },
            { term: text.bulk, detail: minutes(bulkTimeS), strong: true },
            { term: text.scaling, detail: amountInUnits(scalingMassG, 'g', 0, bakery), strong: true },
            { term: text.proof, detail: minutes(proofTimeS), strong: true },
            {
              term: text.bake,
              detail: say(text.bakeAt, language, {
                time: minutes(bakeTimeS),
                temp: amountInUnits(bakeTempC, '°C', 0, bakery),
              }),
              strong: true,
            },
            ...(method ? [{ term: text.method, detail: <span className="whitespace-pre-line">{method}</span> }] : []),
          ]}
        />
      </div>
    </Section>
  )
}
