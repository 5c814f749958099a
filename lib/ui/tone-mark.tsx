export type Tone = 'plain' | 'ok' | 'warn' | 'stop'

/** The small drawing before a notice or a fault: lines, tick, triangle, octagon. The word beside it says the same. */
export function ToneMark({ tone }: { tone: Tone }) {
  return (
    <svg
      viewBox="0 0 20 20"
      aria-hidden="true"
      className="size-[1.15em] shrink-0 translate-y-[0.14em] fill-none stroke-current stroke-2"
    >
      <path d={marks[tone]} />
    </svg>
  )
}

const marks: Record<Tone, string> = {
  plain: 'M3 6h14M3 10h14M3 14h8',
  ok: 'M3 11l5 5L17 4',
  warn: 'M10 2.5L18.5 17.5h-17zM10 8v5M10 14.2v1.6',
  stop: 'M6.5 1.5h7l5 5v7l-5 5h-7l-5-5v-7zM10 5v6M10 13v2.4',
}
