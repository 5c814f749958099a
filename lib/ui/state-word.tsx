import type { Tone } from './tone-mark'
import { toneText } from './tone-text'

export type StateWordProps = {
  word: string
  /** How far along: 0 nothing yet, 4 done or in force; `off` when it was ended or taken away. */
  level: 0 | 1 | 2 | 3 | 4 | 'off'
  tone?: Tone
}

/** A state as a word, behind a small proofing jar that fills as the thing comes along, and is tipped over when it ended. */
export function StateWord({ word, level, tone = 'plain' }: StateWordProps) {
  const fillHeight = level === 'off' ? 0 : level * 3
  return (
    <span className={`inline-flex items-baseline gap-2 ${toneText[tone]}`}>
      <svg viewBox="0 0 16 16" aria-hidden="true" className="size-[1.05em] shrink-0 translate-y-[0.14em]">
        {level === 'off' ? (
          <path d="M1 4.75h13.25v9.5H1" className="fill-none stroke-current stroke-[1.5]" />
        ) : (
          <>
            <path d="M3.25 1v13.25h9.5V1" className="fill-none stroke-current stroke-[1.5]" />
            {fillHeight > 0 ? (
              <rect x="3.25" y={14 - fillHeight} width="9.5" height={fillHeight} className="fill-current" />
            ) : null}
          </>
        )}
      </svg>
      <span>{word}</span>
    </span>
  )
}
