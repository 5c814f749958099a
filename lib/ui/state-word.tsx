export type StateWordProps = {
  word: string
  /** How far along: 0 nothing yet, 4 done or in force; `off` when it was ended or taken away. */
  level: 0 | 1 | 2 | 3 | 4 | 'off'
  tone?: 'plain' | 'ok' | 'warn' | 'stop'
}

/** A state as a word, behind a small proofing jar that fills as the thing comes along, and is struck out when it ended. */
export function StateWord({ word, level, tone = 'plain' }: StateWordProps) {
  const heightPx = level === 'off' ? 0 : level * 3
  return (
    <span className={`inline-flex items-baseline gap-1.5 ${tones[tone]}`}>
      <svg viewBox="0 0 10 16" aria-hidden="true" className="h-3.5 w-2.5 shrink-0 translate-y-0.5 overflow-visible">
        <path d="M1 1v14h8V1" className="fill-none stroke-current stroke-[1.5]" />
        {heightPx > 0 ? <rect x="2.5" y={14 - heightPx} width="5" height={heightPx} className="fill-current" /> : null}
        {level === 'off' ? <path d="M-2 14L12 3" className="fill-none stroke-current stroke-[1.5]" /> : null}
      </svg>
      <span>{word}</span>
    </span>
  )
}

const tones = { plain: '', ok: 'text-ok', warn: 'text-warn', stop: 'text-stop' }
