import { armShape, type Arm } from '../arm-shape'
import type { ChartMark, ChartPicture } from './chart-mark'

/** Draws a list of marks as SVG. The picture has a name; what it says in numbers stands in a table beside it. */
export function ChartDrawing({ picture, label }: { picture: ChartPicture; label: string }) {
  return (
    <svg viewBox={`0 0 ${picture.width} ${picture.height}`} role="img" aria-label={label} className="block h-auto w-full overflow-visible">
      {picture.marks.map((mark) => (
        <Mark key={mark.key} mark={mark} />
      ))}
    </svg>
  )
}

function Mark({ mark }: { mark: ChartMark }) {
  switch (mark.kind) {
    case 'band':
      return <rect x={mark.x} y={mark.y} width={mark.width} height={mark.height} className="fill-band" />
    case 'line':
      return <line x1={mark.x1} y1={mark.y1} x2={mark.x2} y2={mark.y2} className={`${strokes[mark.ink]} ${weights[mark.weight]}`} />
    case 'text':
      return (
        <text x={mark.x} y={mark.y} textAnchor={mark.anchor} className={`text-small ${tones[mark.tone]}`}>
          {mark.text}
        </text>
      )
    case 'arm': {
      const scale = mark.size / 18
      return (
        <path
          d={armShape[mark.arm]}
          transform={`translate(${mark.x - mark.size / 2} ${mark.y - mark.size / 2}) scale(${scale})`}
          className={looks[mark.look](mark.arm)}
        />
      )
    }
    default:
      return mark satisfies never
  }
}

const strokes: Record<Arm | 'ink' | 'rule', string> = {
  control: 'stroke-arm-control',
  A: 'stroke-arm-a',
  B: 'stroke-arm-b',
  C: 'stroke-arm-c',
  D: 'stroke-arm-d',
  E: 'stroke-arm-e',
  F: 'stroke-arm-f',
  ink: 'stroke-ink',
  rule: 'stroke-line',
}

const fills: Record<Arm, string> = {
  control: 'fill-arm-control',
  A: 'fill-arm-a',
  B: 'fill-arm-b',
  C: 'fill-arm-c',
  D: 'fill-arm-d',
  E: 'fill-arm-e',
  F: 'fill-arm-f',
}

const weights = { fine: 'stroke-1', plain: 'stroke-[1.5]', heavy: 'stroke-[3]' } as const

const tones = { plain: 'fill-ink', quiet: 'fill-ink-2', strong: 'fill-ink font-bold' } as const

/** A hollow mark is filled with the paper, so that its interval does not run through it. */
const looks: Record<'full' | 'hollow' | 'faint', (arm: Arm) => string> = {
  full: (arm) => fills[arm],
  hollow: (arm) => `fill-paper stroke-[2.5] ${strokes[arm]}`,
  faint: (arm) => `opacity-60 ${fills[arm]}`,
}
