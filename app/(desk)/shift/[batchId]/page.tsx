import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { FloorLink } from '@/lib/ui/floor-link'
import { FloorSheet } from '@/lib/ui/floor-sheet'
import { Notice } from '@/lib/ui/notice'
import { Rack } from '@/lib/ui/rack'
import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { BatchStateWord } from '../batch-state-word'
import { Cautions } from './cautions'
import { Figures } from './figures'
import { asKeptReading, asMeasureToRead, needsByPlace } from './for-readings'
import { NextStep } from './next-step'
import { PieceCount } from './piece-count'
import { Process } from './process'
import { ReadingLog } from './reading-log'
import { Readings } from './readings'
import { TakeOut } from './take-out'
import { WeighOut } from './weigh-out'

type Params = { params: Promise<{ batchId: string }> }

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).shift.title }
}

export default async function BatchPage({ params }: Params) {
  const language = await currentLanguage()
  const { shift: words, desk } = wordsIn(language)
  const text = words.batch
  const { bakery, person } = await ask(getDesk)
  const batch = await ask(getBatch, await params)
  const isOver = batch.state === 'measured' || batch.state === 'lost' || batch.state === 'set_aside'
  const weighsFirst = batch.state === 'waiting' || batch.state === 'weighing'
  const shared = { batch, bakery, words, language }
  const toRead = batch.measures.filter(({ derivation }) => derivation === null).map((measure) => asMeasureToRead(measure, bakery))

  const readings = (
    <Section key="readings" id="readings" title={words.readings.title} note={words.readings.note}>
      {batch.state === 'waiting' ? (
        <p>{words.readings.none}</p>
      ) : (
        <Readings
          batchId={batch.id}
          measures={toRead}
          pieces={batch.pieces}
          factorLevels={batch.trial.factorName === null ? [] : batch.trial.factorLevels}
          inTheBook={batch.readings.map((reading) => asKeptReading(reading, batch.measures, bakery, words.readings, language))}
          needs={needsByPlace(batch.figures)}
          isOpen={batch.isOpen}
          me={person.name}
          dateForm={{ locale: bakery.locale, timeZone: bakery.timeZone }}
          words={words.readings}
          language={language}
        />
      )}
    </Section>
  )
  const plan = (
    <div key="plan">
      <WeighOut {...shared} />
      <Process {...shared} />
    </div>
  )

  return (
    <FloorSheet
      headline={say(text.headline, language, { code: batch.code })}
      state={<BatchStateWord state={batch.state} words={words} />}
      under={say(text.under, language, { number: batch.trial.number, formula: batch.trial.formulaName, day: batch.dayNumber })}
      rack={
        <>
          <Rack
            beside
            label={words.rack.batches}
            slots={batch.day.map(({ id, code, state, isNext }) => ({
              key: id,
              href: `/shift/${id}`,
              code,
              state: <BatchStateWord state={state} words={words} />,
              remarks: [],
              nextWord: isNext && id !== batch.id ? words.rack.next : undefined,
              isCurrent: id === batch.id,
            }))}
          />
          <div className="mt-3">
            <FloorLink href="/shift">{words.rack.all}</FloorLink>
          </div>
        </>
      }
    >
      {batch.isOpen ? null : (
        <Notice tone="plain" word={desk.attention}>
          {text.over}
        </Notice>
      )}
      {batch.stateWhy ? <p className="mt-2 text-lead">{say(text.why, language, { why: batch.stateWhy })}</p> : null}
      <Cautions {...shared} />
      {batch.isOpen && !isOver ? <NextStep {...shared} /> : null}
      {weighsFirst ? [plan, readings] : [readings, plan]}
      {batch.isOpen && batch.state !== 'waiting' ? <PieceCount {...shared} /> : null}
      <Figures {...shared} />
      {batch.isOpen && !isOver ? <TakeOut {...shared} /> : null}
      <ReadingLog {...shared} />
    </FloorSheet>
  )
}
