import type { ReactNode } from 'react'
import { ToneMark, type Tone } from './tone-mark'
import { toneText } from './tone-text'

export type NoticeProps = {
  tone: Tone
  /** The word that carries the tone, run in before the sentence. */
  word: string
  children: ReactNode
}

/** One thing to know about what just happened or stands in the way. Mark and word say the tone; colour only helps. */
export function Notice({ tone, word, children }: NoticeProps) {
  return (
    <div
      role={tone === 'stop' ? 'alert' : 'status'}
      className={`my-5 flex items-baseline gap-3 border-t-2 border-b border-b-rule py-3 ${edges[tone]}`}
    >
      <span className={`flex ${toneText[tone]}`}>
        <ToneMark tone={tone} />
      </span>
      <div className="max-w-measure">
        <strong className={toneText[tone]}>{word}</strong>
        {gap}
        {children}
      </div>
    </div>
  )
}

const gap = '\u2002'

const edges: Record<Tone, string> = {
  plain: 'border-t-ink',
  ok: 'border-t-ok',
  warn: 'border-t-warn',
  stop: 'border-t-stop',
}
