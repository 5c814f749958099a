import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getShift } from '@/lib/kitchen/shifts/get-shift'
import { CautionList } from '@/lib/ui/caution-list'
import { EmptyState } from '@/lib/ui/empty-state'
import { FloorSheet } from '@/lib/ui/floor-sheet'
import { Rack } from '@/lib/ui/rack'
import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { BatchStateWord } from './batch-state-word'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).shift.title }
}

export default async function ShiftPage() {
  const language = await currentLanguage()
  const { shift: words } = wordsIn(language)
  const text = words.rack
  const trials = await ask(getShift)
  const batches = trials.flatMap((trial) => trial.batches)
  const waiting = batches.filter(({ state }) => state === 'waiting')
  const underWay = batches.filter(({ state }) => state === 'weighing' || state === 'in_work' || state === 'baked')
  const next = batches.find(({ isNext }) => isNext)

  return (
    <FloorSheet
      headline={
        next
          ? say(text.headlineNext, language, { count: waiting.length, code: next.code })
          : underWay.length > 0
            ? say(text.headlineUnderWay, language, { count: underWay.length })
            : text.headlineDone
      }
    >
      {trials.length === 0 ? <EmptyState sentence={text.empty} /> : <CautionList title={words.cautions.title} lines={[words.cautions.rawDough, words.cautions.seed]} />}
      {trials.map((trial) => (
        <Section key={trial.id} id={`trial-${trial.number}`} title={say(text.trial, language, { number: trial.number, formula: trial.formulaName })} note={text.trialNote}>
          {[...new Set(trial.batches.map(({ dayNumber }) => dayNumber))].map((dayNumber) => (
            <div key={dayNumber} className="mb-6">
              <h3 className="mb-1 text-ink-2">{say(text.day, language, { number: dayNumber })}</h3>
              <Rack
                label={say(text.day, language, { number: dayNumber })}
                slots={trial.batches
                  .filter((batch) => batch.dayNumber === dayNumber)
                  .map((batch) => {
                    const toCome = batch.missing.reduce((sum, { have, of }) => sum + of - have, 0)
                    return {
                      key: batch.id,
                      href: `/shift/${batch.id}`,
                      code: batch.code,
                      state: <BatchStateWord state={batch.state} words={words} />,
                      nextWord: batch.isNext ? text.next : undefined,
                      remarks: [
                        ...(batch.kind === 'preparation' ? [text.preparation] : []),
                        ...(batch.cleanDownFirst ? [text.cleanDown] : []),
                        ...(toCome > 0 ? [say(text.toCome, language, { count: toCome })] : []),
                      ],
                    }
                  })}
              />
            </div>
          ))}
        </Section>
      ))}
    </FloorSheet>
  )
}
