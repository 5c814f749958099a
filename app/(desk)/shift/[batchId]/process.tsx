import { DefinitionList } from '@/lib/ui/definition-list'
import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import { amountInUnits } from './amount-in-units'
import type { BatchPart } from './batch-view'
import type { Words } from '@/lib/words/words'
import { minutesOf } from '@/lib/words/format/minutes-of'
import { StepsDone } from './steps-done'

/** The process as it is planned, the same for every batch of the trial, and beside it what was done. */
export function Process({ batch, bakery, words: allWords, language }: Omit<BatchPart, 'words'> & { words: Words }) {
  const { process: text } = allWords.shift
  const { scalingMassG, doughTempC, mixTimeS, bulkTimeS, proofTimeS, bakeTempC, bakeTimeS, method } = batch.process
  const minutes = (timeS: number) => minutesOf(timeS, bakery.locale)
  return (
    <Section id="process" title={text.title}>
      <div className="grid gap-x-12 gap-y-6 text-control wide:grid-cols-2">
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
        {batch.state === 'waiting' ? null : (
          <StepsDone course={batch.course} bakery={bakery} words={allWords} language={language} />
        )}
      </div>
    </Section>
  )
}
