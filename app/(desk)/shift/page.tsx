import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { listHandOver } from '@/lib/kitchen/notes/list-hand-over'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getShift } from '@/lib/kitchen/shifts/get-shift'
import { nextState } from '@/lib/kitchen/batches/rules'
import { CautionList } from '@/lib/ui/caution-list'
import { EmptyState } from '@/lib/ui/empty-state'
import { FloorDisclosure } from '@/lib/ui/floor-disclosure'
import { FloorLink } from '@/lib/ui/floor-link'
import { FloorSheet } from '@/lib/ui/floor-sheet'
import { ListFoot } from '@/lib/ui/list-foot'
import { Section } from '@/lib/ui/section'
import { formatDay } from '@/lib/words/format/day'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { KeepCurrent } from '../keep-current'
import { BakeAgain } from './bake-again'
import { DayRack, type ShiftBatch } from './day-rack'
import { HandOver } from './notes/hand-over'
import { NoteForm } from './notes/note-form'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).shift.title }
}

export default async function ShiftPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>
}) {
  const { after } = await searchParams
  const language = await currentLanguage()
  const allWords = wordsIn(language)
  const { shift: words, desk } = allWords
  const text = words.rack
  const [{ bakery, record }, { trials, waiting, underWay, keptAside, checks }, { notes }] = await Promise.all([
    ask(getDesk),
    ask(getShift, { after }),
    ask(listHandOver),
  ])
  const dayLabel = ({ dayNumber: number, day }: { dayNumber: number; day: string | null }) =>
    day === null
      ? say(text.day, language, { number })
      : say(text.dayDated, language, { number, date: formatDay(day, bakery.locale) })
  // The oldest trial comes first, so what is next of a later page is not the next of all.
  const next = trials.isFirst ? trials.rows.flatMap(({ batches }) => batches).find(({ isNext }) => isNext) : undefined

  return (
    <FloorSheet
      headline={
        next
          ? say(text.headlineNext, language, { count: waiting, code: next.code })
          : waiting > 0
            ? say(text.headlineWaiting, language, { count: waiting })
            : underWay > 0
              ? say(text.headlineUnderWay, language, { count: underWay })
              : text.headlineDone
      }
    >
      {keptAside === 0 ? null : (
        <div className="mt-4 print:hidden">
          <FloorLink href="/shift/kept-aside">{say(text.keptAside, language, { count: keptAside })}</FloorLink>
        </div>
      )}
      {checks.failed.length === 0 ? null : (
        <p className="mt-4 font-bold text-warn">{say(allWords.checks.failed, language, { names: checks.failed })}</p>
      )}
      <HandOver notes={notes} bakery={bakery} words={allWords} language={language} />
      {trials.count === 0 ? (
        <EmptyState sentence={text.empty} />
      ) : (
        <CautionList title={words.cautions.title} lines={[words.cautions.rawDough, words.cautions.seed]} />
      )}
      <div id="open-trials">
        {trials.rows.map((trial) => (
          <Section
            key={trial.id}
            id={`trial-${trial.number}`}
            title={say(text.trial, language, { number: trial.number, formula: trial.formulaName })}
            note={text.trialNote}
          >
            {trial.toBakeAgain.map((dough) => (
              <BakeAgain key={dough.id} dough={dough} locale={bakery.locale} words={words} language={language} />
            ))}
            {daysOf(trial.batches).map(({ dayNumber, day, batches, isDone }) =>
              isDone ? (
                <FloorDisclosure key={dayNumber} title={dayLabel({ dayNumber, day })} note={text.dayDone}>
                  <DayRack
                    dayNumber={dayNumber}
                    batches={batches}
                    bakery={bakery}
                    words={allWords}
                    language={language}
                  />
                </FloorDisclosure>
              ) : (
                <div key={dayNumber} className="mb-6">
                  <h3 className="mb-1 text-ink-2">{dayLabel({ dayNumber, day })}</h3>
                  <DayRack
                    dayNumber={dayNumber}
                    batches={batches}
                    bakery={bakery}
                    words={allWords}
                    language={language}
                  />
                </div>
              ),
            )}
          </Section>
        ))}
      </div>
      {trials.count === 0 ? null : (
        <ListFoot
          page={trials}
          list={text.open}
          address="/shift"
          anchor="open-trials"
          onFloor
          words={desk}
          language={language}
        />
      )}
      <div className="mt-9 grid gap-4 print:hidden">
        <NoteForm batchId={null} words={allWords} />
        <div className="flex flex-wrap gap-x-6 gap-y-2">
          {checks.count === 0 ? null : (
            <FloorLink href="/shift/checks">
              {checks.toDo === 0 ? allWords.checks.done : say(allWords.checks.toDo, language, { count: checks.toDo })}
            </FloorLink>
          )}
          <FloorLink href="/shift/notes">{allWords.notes.all}</FloorLink>
        </div>
      </div>
      <KeepCurrent seen={record.number} words={desk.live} />
    </FloorSheet>
  )
}

/** The mixing days in order, those of which nothing is left to do at the end. */
function daysOf(batches: readonly ShiftBatch[]) {
  const days = [...new Set(batches.map(({ dayNumber }) => dayNumber))].map((dayNumber) => {
    const own = batches.filter((batch) => batch.dayNumber === dayNumber)
    return {
      dayNumber,
      day: own[0]?.day ?? null,
      batches: own,
      isDone: own.every(
        ({ state, missing }) => nextState(state) === null && state !== 'waiting' && missing.length === 0,
      ),
    }
  })
  return [...days.filter(({ isDone }) => !isDone), ...days.filter(({ isDone }) => isDone)]
}
