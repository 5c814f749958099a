import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { isOver as isOverState } from '@/lib/kitchen/batches/rules'
import { listNotes } from '@/lib/kitchen/notes/list-notes'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { listPhotos } from '@/lib/kitchen/photos/list-photos'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { ActionForm } from '@/lib/ui/action-form'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorLink } from '@/lib/ui/floor-link'
import { FloorSheet } from '@/lib/ui/floor-sheet'
import { Notice } from '@/lib/ui/notice'
import { Rack } from '@/lib/ui/rack'
import { correctReadingInput } from '@/lib/kitchen/readings/correct-reading.input'
import { logReadingInput } from '@/lib/kitchen/readings/log-reading.input'
import { rulesOf } from '@/lib/ui/rules-of'
import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { KeepCurrent } from '../../keep-current'
import { MarksSection } from '../../marks-section'
import { BatchStateWord } from '../batch-state-word'
import { undo } from './actions'
import { BatchNotes } from './batch-notes'
import { BatchPhotos } from './batch-photos'
import { Causes } from './causes'
import { Cautions } from './cautions'
import { DoughKey } from './dough-key'
import { Exchange } from './exchange'
import { Figures } from './figures'
import { FoundLater } from './found-later'
import { asKeptReading, asMeasureToRead, needsByPlace } from './for-readings'
import { Loss } from './loss'
import { NextStep } from './next-step'
import { PieceCount } from './piece-count'
import { Process } from './process'
import { Readings } from './readings'
import { TakeOut } from './take-out'
import { UndoMove } from './undo-move'
import { WaterTold } from './water-told'
import { Weighed } from './weighed'

type Params = {
  params: Promise<{ batchId: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).shift.title }
}

export default async function BatchPage({ params, searchParams }: Params) {
  const language = await currentLanguage()
  const allWords = wordsIn(language)
  const { shift: words, desk } = allWords
  const text = words.batch
  const [{ batchId }, { after }] = await Promise.all([params, searchParams])
  const [{ bakery, person, record }, batch, notes, { photos }] = await Promise.all([
    ask(getDesk),
    ask(getBatch, { batchId }),
    ask(listNotes, { batchId, after }),
    ask(listPhotos, { batchId }),
  ])
  const isOver = isOverState(batch.state)
  const shared = { batch, bakery, words, language }
  const wanted = new Set(
    batch.gaps.flatMap((gap) => (gap.kind === 'missing' || gap.kind === 'unsettled' ? [gap.measure.id] : [])),
  )
  const toConsistency = batch.key?.mixing.outcome === 'read' ? batch.key.mixing.toConsistency : []
  const consistency =
    toConsistency.length > 0 ? say(words.readings.toConsistency, language, { ingredients: toConsistency }) : null
  const toRead = batch.measures
    .filter(({ derivation }) => derivation === null)
    .map((measure) =>
      asMeasureToRead(
        measure,
        wanted.has(measure.id),
        measure.code === 'water-added' ? consistency : null,
        bakery,
        allWords,
        language,
      ),
    )
  const isLost = batch.state === 'lost'
  const isMixed = batch.state !== 'waiting' && batch.state !== 'not_baked'
  const plan = (
    <div key="plan">
      <WaterTold {...shared} words={allWords.stationWater} />
      <DoughKey {...shared} />
      <Weighed {...shared} />
      <Process {...shared} words={allWords} />
    </div>
  )

  const readings = (
    <Section key="readings" id="readings" title={words.readings.title} note={words.readings.note}>
      {!isMixed ? (
        <p>{batch.state === 'waiting' ? words.readings.none : words.readings.notBaked}</p>
      ) : (
        <Readings
          batchId={batch.id}
          measures={toRead}
          pieces={batch.pieces}
          factorLevels={batch.trial.factorName === null ? [] : batch.trial.factorLevels}
          inTheBook={batch.readings.map((reading) =>
            asKeptReading(reading, batch.measures, bakery, words.readings, language),
          )}
          needs={needsByPlace(batch.figures)}
          isOpen={batch.isOpen}
          mayKeep={batch.isOpen && !isLost}
          between={batch.state === 'weighing' ? plan : undefined}
          rules={{ take: rulesOf(logReadingInput), correct: rulesOf(correctReadingInput) }}
          me={person.name}
          dateForm={{ locale: bakery.locale, timeZone: bakery.timeZone }}
          words={words.readings}
          language={language}
        />
      )}
    </Section>
  )
  // With something missing or odd the step to 'measured' asks for a reason, which comes after what can still be read.
  const stepIsLast = batch.state === 'baked' && batch.gaps.length > 0
  const step = batch.isOpen && !isOver ? <NextStep key="step" {...shared} /> : null
  const parts =
    batch.state === 'waiting'
      ? [step, plan, readings]
      : batch.state === 'weighing'
        ? [step, readings]
        : stepIsLast
          ? [readings, step, plan]
          : [step, readings, plan]

  return (
    <FloorSheet
      headline={say(text.headline, language, { code: batch.code })}
      state={<BatchStateWord state={batch.state} words={words} />}
      under={say(text.under, language, {
        number: batch.trial.number,
        formula: batch.trial.formulaName,
        day: batch.dayNumber,
      })}
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
      <Loss {...shared} />
      {batch.state !== 'waiting' || batch.turn === batch.plannedOrder ? null : (
        <p className="mt-2 text-ink-2">
          {say(words.exchange.place, language, { turn: batch.turn, planned: batch.plannedOrder })}
        </p>
      )}
      <Cautions {...shared} />
      {batch.undo ? (
        <UndoMove key={batch.revision} forMs={batch.undo.forMs}>
          <ActionForm action={undo.bind(null, batch.id, batch.revision)} idPrefix="undo-">
            <div className="flex flex-wrap items-center gap-4">
              <FloorButton tone="plain">{text.undo[batch.undo.to]}</FloorButton>
              <span className="text-ink-2">{text.undoNote}</span>
            </div>
          </ActionForm>
        </UndoMove>
      ) : null}
      {parts}
      <div className="mt-9 flex flex-wrap gap-x-6 gap-y-2 print:hidden">
        <FloorLink href={`/shift/${batch.id}/paper`}>{allWords.paper.toPaper}</FloorLink>
        <FloorLink href={`/shift/${batch.id}/slips`}>{allWords.paper.toSlips}</FloorLink>
        {batch.readings.length > 0 ? <FloorLink href={`/shift/${batch.id}/log`}>{words.log.title}</FloorLink> : null}
      </div>
      {batch.isOpen && isMixed && !isLost ? <PieceCount {...shared} /> : null}
      <MarksSection
        marks={batch.marks.map(({ weighed, readings, ...mark }) => ({
          ...mark,
          doughs: [{ codes: [], weighed, readings }],
        }))}
        form={bakery}
        words={allWords}
        language={language}
      />
      <Figures {...shared} />
      <BatchNotes batchId={batch.id} page={notes} bakery={bakery} words={allWords} language={language} />
      <BatchPhotos {...shared} photos={photos} words={allWords} />
      <Causes {...shared} />
      <FoundLater {...shared} />
      {batch.isOpen && !isOver ? <TakeOut {...shared} /> : null}
      <Exchange {...shared} />
      <KeepCurrent seen={record.number} words={desk.live} />
    </FloorSheet>
  )
}
