import { FloorLink } from '@/lib/ui/floor-link'
import { say } from '@/lib/words/say'
import { BakeAgain } from '../bake-again'
import type { BatchPart } from './batch-view'

/** What became of a batch that is out, and what can still be done; and of one that was made for another, for which. */
export function Loss({ batch, bakery, words, language }: BatchPart) {
  const { repair: text } = words
  const { loss, madeFor, dayAddedAs } = batch
  return (
    <>
      {madeFor ? (
        <Beside sentence={say(text.madeFor, language, { code: madeFor.code })}>
          <FloorLink href={`/shift/${madeFor.id}`}>{say(text.toAgain, language, { code: madeFor.code })}</FloorLink>
        </Beside>
      ) : null}
      {loss?.again ? (
        <Beside sentence={say(text.again, language, { code: loss.again.code })}>
          <FloorLink href={`/shift/${loss.again.id}`}>
            {say(text.toAgain, language, { code: loss.again.code })}
          </FloorLink>
        </Beside>
      ) : loss && batch.isOpen ? (
        loss.whyNot === null ? (
          <div>
            <BakeAgain dough={loss} locale={bakery.locale} words={words} language={language} />
            <p className="max-w-measure text-ink-2">{text.note}</p>
          </div>
        ) : (
          <Beside sentence={dayAddedAs === null ? text.dayOver : say(text.dayAdded, language, { day: dayAddedAs })}>
            {batch.mayAddDay && dayAddedAs === null ? (
              <FloorLink href={`/trials/${batch.trialId}#repairs`}>{text.toTrial}</FloorLink>
            ) : null}
          </Beside>
        )
      ) : null}
    </>
  )
}

function Beside({ sentence, children }: { sentence: string; children: React.ReactNode }) {
  return (
    <div className="my-3 flex flex-wrap items-center gap-x-6 gap-y-2">
      <p className="max-w-measure text-lead">{sentence}</p>
      <div className="print:hidden">{children}</div>
    </div>
  )
}
