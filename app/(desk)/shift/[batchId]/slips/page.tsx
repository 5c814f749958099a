import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getSlips } from '@/lib/kitchen/stations/get-slips'
import { FloorLink } from '@/lib/ui/floor-link'
import { FloorSheet } from '@/lib/ui/floor-sheet'
import { PrintButton } from '@/lib/ui/print-button'
import { ScanPicture } from '@/lib/ui/scan-picture'
import { allergenList } from '@/lib/words/allergen-list'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { sayPlace } from '../../say-place'

/** Where each of the three slips of a piece goes. */
const places = ['tin', 'rack', 'bag'] as const

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).paper.slips.title }
}

export default async function SlipsPage({ params }: { params: Promise<{ batchId: string }> }) {
  const { batchId } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { slips: text, ...paper } = words.paper
  const batch = await ask(getSlips, { batchId })
  const { code } = batch
  const allergens =
    batch.allergens.length > 0
      ? say(paper.contains, language, { list: allergenList(batch.allergens, words.stores, language) })
      : paper.noAllergens
  return (
    <FloorSheet
      headline={say(text.headline, language, { code })}
      under={say(paper.place, language, {
        number: batch.trialNumber,
        formula: batch.formulaName,
        day: batch.dayNumber,
      })}
    >
      <div className="mt-4 grid max-w-measure gap-4 print:hidden">
        <FloorLink href={`/shift/${batchId}`}>{say(paper.back, language, { code })}</FloorLink>
        <p>{text.note}</p>
        {batch.isScanned ? null : <p>{text.notScanned}</p>}
        <div>
          <PrintButton>{text.print}</PrintButton>
        </div>
      </div>
      <ul className="mt-6 grid grid-cols-[repeat(auto-fill,minmax(15rem,1fr))] print:mt-2 print:grid-cols-3">
        {batch.pieces.flatMap((each) =>
          places.map((place) => (
            <li
              key={`${each.piece} ${place}`}
              className="flex gap-3 border border-dashed border-line p-3 print:break-inside-avoid"
            >
              <div className="min-w-0 flex-1">
                <p className="text-figure leading-tight font-bold">{code}</p>
                <p className="text-lead">{sayPlace(each, words.shift.readings, language)}</p>
                <p className="font-bold">{text.notForSale}</p>
                <p className="text-small">
                  {say(text.of, language, { number: batch.trialNumber, day: batch.dayNumber })}
                </p>
                <p className="text-small">
                  {allergens} {batch.unchecked > 0 ? say(paper.unchecked, language, { count: batch.unchecked }) : null}
                </p>
                <p className="text-small text-ink-2">{text.places[place]}</p>
              </div>
              {each.scan ? (
                <div className="w-24 shrink-0">
                  <ScanPicture rows={each.scan} label={say(text.scan, language, { piece: each.piece, code })} />
                </div>
              ) : null}
            </li>
          )),
        )}
      </ul>
    </FloorSheet>
  )
}
