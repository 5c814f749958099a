import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

/** Whether a note was left for the next shift, and who says that they have read it. */
export function NoteMarks({
  note: { forNext, readBy },
  text,
  language,
}: {
  note: { forNext: boolean; readBy: readonly string[] }
  text: Words['notes']
  language: Language
}) {
  if (!forNext) return null
  return (
    <p className="flex flex-wrap gap-x-4 text-ink-2">
      <b className="font-semibold text-ink">{text.wasForNext}</b>
      {readBy.length > 0 ? <span>{say(text.readBy, language, { names: readBy })}</span> : null}
    </p>
  )
}
