import type { ReactNode } from 'react'

export type NoticeTone = 'plain' | 'ok' | 'warn' | 'stop'

export type NoticeProps = {
  tone: NoticeTone
  /** The word that carries the tone, run in before the sentence. */
  word: string
  children: ReactNode
}

/** One thing to know about what just happened or stands in the way. Mark and word say the tone; colour only helps. */
export function Notice({ tone, word, children }: NoticeProps) {
  const look = looks[tone]
  return (
    <div role={tone === 'stop' ? 'alert' : 'status'} className={`my-5 flex gap-3 border-t-2 border-b border-b-rule py-3 ${look.edge}`}>
      <svg viewBox="0 0 20 20" aria-hidden="true" className={`mt-0.5 size-4.5 shrink-0 fill-none stroke-current stroke-2 ${look.text}`}>
        <path d={look.mark} />
      </svg>
      <div className="max-w-measure">
        <strong className={look.text}>{word}</strong>
        {gap}
        {children}
      </div>
    </div>
  )
}

const gap = '\u2002'

const looks: Record<NoticeTone, { edge: string; text: string; mark: string }> = {
  plain: { edge: 'border-t-ink', text: 'text-ink', mark: 'M3 6h14M3 10h14M3 14h8' },
  ok: { edge: 'border-t-ok', text: 'text-ok', mark: 'M3 11l5 5L17 4' },
  warn: { edge: 'border-t-warn', text: 'text-warn', mark: 'M10 2.5L18.5 17.5h-17zM10 8v5M10 14.5v1.5' },
  stop: { edge: 'border-t-stop', text: 'text-stop', mark: 'M6.5 1.5h7l5 5v7l-5 5h-7l-5-5v-7zM6 10h8' },
}
