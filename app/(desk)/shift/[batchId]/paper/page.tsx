import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getSheet } from '@/lib/kitchen/readings/paper/get-sheet'
import { FloorLink } from '@/lib/ui/floor-link'
import { FloorSheet } from '@/lib/ui/floor-sheet'
import { PrintButton } from '@/lib/ui/print-button'
import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { KeyInForm } from './key-in-form'
import { PrintedSheet } from './printed-sheet'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).paper.sheet.title }
}

export default async function PaperPage({ params }: { params: Promise<{ batchId: string }> }) {
  const { batchId } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { paper } = words
  const [{ bakery }, sheet] = await Promise.all([ask(getDesk), ask(getSheet, { batchId })])
  const shared = { sheet, words, language }
  return (
    <FloorSheet
      headline={say(paper.sheet.headline, language, { code: sheet.code })}
      under={say(paper.place, language, {
        number: sheet.trialNumber,
        formula: sheet.formulaName,
        day: sheet.dayNumber,
      })}
    >
      <div className="mt-4 grid max-w-measure gap-4 print:hidden">
        <FloorLink href={`/shift/${batchId}`}>{say(paper.back, language, { code: sheet.code })}</FloorLink>
        <p>{paper.sheet.note}</p>
        <div>
          <PrintButton>{paper.sheet.print}</PrintButton>
        </div>
      </div>
      <PrintedSheet {...shared} />
      <Section id="key-in" title={paper.sheet.keyIn} screenOnly>
        {sheet.isOpen ? <KeyInForm {...shared} timeZone={bakery.timeZone} /> : <p>{paper.sheet.notNow}</p>}
      </Section>
    </FloorSheet>
  )
}
