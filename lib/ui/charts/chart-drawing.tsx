import { armShape, type Arm } from '../arm-shape'
import type { ChartMark, ChartPicture } from './chart-mark'

/** Draws a list of marks as SVG. The picture has a name; what it says in numbers stands in a table beside it. */
export function ChartDrawing({ picture, label }: { picture: ChartPicture; label: string }) {
  return (
    <svg
      viewBox={`0 0 ${picture.width} ${picture.height}`}
      role="img"
      aria-label={label}
      className="block h-auto w-full overflow-visible"
    >
      {picture.marks.map((mark) => (
        <Mark key={mark.key} mark={mark} />
      ))}
    </svg>
  )
}

function Mark({ mark }: { mark: ChartMark }) {
  switch (mark.kind) {
    case 'band':
      return (
        <rect
          x={tenth(mark.x)}
          y={tenth(mark.y)}
          width={tenth(mark.width)}
          height={tenth(mark.height)}
          className="fill-band"
        />
      )
    case 'lines': {
      const strokes = mark.at.map(({ x1, y1, x2, y2 }) => `M${tenth(x1)} ${tenth(y1)}L${tenth(x2)} ${tenth(y2)}`)
      return <path d={strokes.join('')} className={`${inks[mark.ink]} ${weights[mark.weight]}`} />
    }
    case 'text':
      return (
        <text x={tenth(mark.x)} y={tenth(mark.y)} textAnchor={mark.anchor} className={`text-small ${tones[mark.tone]}`}>
          {mark.text}
        </text>
      )
    case 'arm': {
      const scale = mark.size / 18
      const places = mark.at.map(({ x, y }) => `M${tenth(x / scale)} ${tenth(y / scale)}${armShape[mark.arm]}`)
      return <path d={places.join('')} transform={`scale(${scale})`} className={looks[mark.look](mark.arm)} />
    }
    default:
      return mark satisfies never
  }
}

/** A tenth of a unit is finer than a screen shows; more digits only make the page longer. */
function tenth(value: number): number {
  return Math.round(value * 10) / 10
}

const inks: Record<Arm | 'ink' | 'rule', string> = {
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
  hollow: (arm) => `fill-paper stroke-[2.5] ${inks[arm]}`,
  faint: (arm) => `opacity-60 ${fills[arm]}`,
}
