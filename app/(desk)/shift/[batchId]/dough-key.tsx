import { armLetter } from '@/lib/kitchen/trials/rules'
import { ActionForm } from '@/lib/ui/action-form'
import { FloorButton } from '@/lib/ui/floor-button'
import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import { openKey } from './actions'
import type { BatchPart } from './batch-view'
import { WeighOut } from './weigh-out'

/** What the dough is and what goes in, for whoever knows it; for others one tap that opens it and is kept in the record. */
export function DoughKey(part: BatchPart) {
  const { batch, words, language } = part
  const { key: text } = words
  if (!batch.key)
    return (
      <Section id="key" title={text.title}>
        <p className="max-w-measure">{text.note}</p>
        <div className="mt-4 print:hidden">
          <ActionForm action={openKey.bind(null, batch.id)} idPrefix="key-">
            <FloorButton tone="plain">{text.open}</FloorButton>
          </ActionForm>
        </div>
      </Section>
    )
  const { position, name, ingredients, mixing } = batch.key
  return (
    <>
      <Section id="key" title={text.title}>
        <p className="max-w-measure text-lead">
          <b>{position === 0 ? text.control : say(text.dough, language, { letter: armLetter(position), name })}</b>{' '}
          {batch.isOpen ? text.known : null}
        </p>
        <p className="mt-1 max-w-measure">{say(text.ingredients, language, { list: ingredients })}</p>
      </Section>
      <WeighOut {...part} mixing={mixing} />
    </>
  )
}
