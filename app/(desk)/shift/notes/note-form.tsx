import { keepNoteInput } from '@/lib/kitchen/notes/log-note.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorCheck } from '@/lib/ui/floor-check'
import { FloorFold } from '@/lib/ui/floor-fold'
import { FloorTextArea } from '@/lib/ui/floor-text-area'
import { FormDone } from '@/lib/ui/form-done'
import { rulesOf } from '@/lib/ui/rules-of'
import type { Words } from '@/lib/words/words'
import { keep } from './actions'

/** Two taps to write down whatever there is to say of a dough, or of the shift. */
export function NoteForm({ batchId, words }: { batchId: string | null; words: Pick<Words, 'notes' | 'desk'> }) {
  const { notes: text, desk } = words
  return (
    <div className="border-t-2 border-rule print:hidden">
      <FloorFold title={text.write}>
        <ActionForm rules={rulesOf(keepNoteInput)} action={keep.bind(null, batchId)} idPrefix="note-">
          <FormDone word={desk.done} text={text.kept} />
          <div className="grid gap-4">
            <FloorTextArea
              name="text"
              label={text.text}
              hint={batchId === null ? text.writeHintShift : text.writeHint}
            />
            <FloorCheck name="forNext" label={text.forNext} hint={text.forNextHint} />
            <div>
              <FloorButton tone="plain">{text.keep}</FloorButton>
            </div>
          </div>
        </ActionForm>
      </FloorFold>
    </div>
  )
}
