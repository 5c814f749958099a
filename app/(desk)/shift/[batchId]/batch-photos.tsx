import type { listPhotos } from '@/lib/kitchen/photos/list-photos'
import type { AnswerOf } from '@/lib/kitchen/query'
import { FloorFold } from '@/lib/ui/floor-fold'
import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { byline } from '../byline'
import type { BakeryShown, BatchShown } from './batch-view'
import { TakePhoto } from './take-photo'

type BatchPhotosProps = {
  batch: Pick<BatchShown, 'id' | 'code' | 'pieces'>
  photos: AnswerOf<typeof listPhotos>['photos']
  bakery: BakeryShown
  words: Pick<Words, 'photos' | 'notes' | 'desk'>
  language: Language
}

/** The photos of one batch, small, each a way to itself; and a form to add one, whatever became of the batch. */
export function BatchPhotos({ batch, photos, bakery, words, language }: BatchPhotosProps) {
  const { photos: text, notes, desk } = words
  return (
    <Section id="photos" title={text.title} note={photos.length === 0 ? text.none : undefined}>
      {photos.length === 0 ? null : (
        <ul className="flex flex-wrap gap-6">
          {photos.map(({ id, piece, width, height, ...photo }, at) => {
            const facts = { number: at + 1, code: batch.code }
            return (
              <li key={id} className="w-64">
                <a href={`/api/v1/photos/${id}`} className="block bg-band">
                  {/* eslint-disable-next-line @next/next/no-img-element -- it is kept as small as it is shown */}
                  <img
                    src={`/api/v1/photos/${id}?small`}
                    alt={
                      piece === null
                        ? say(text.alt, language, facts)
                        : say(text.altOfPiece, language, { ...facts, piece })
                    }
                    width={width}
                    height={height}
                    loading="lazy"
                    className="h-48 w-full object-contain"
                  />
                </a>
                <p className="mt-1 font-semibold">
                  {piece === null ? text.whole : say(text.piece, language, { number: piece })}
                </p>
                <p className="text-ink-2">{byline(photo, bakery, notes, language)}</p>
              </li>
            )
          })}
        </ul>
      )}
      <div className="mt-4 border-t-2 border-rule print:hidden">
        <FloorFold title={text.take}>
          <TakePhoto
            batchId={batch.id}
            pieces={batch.pieces}
            words={{ ...text, done: desk.done }}
            language={language}
          />
        </FloorFold>
      </div>
    </Section>
  )
}
