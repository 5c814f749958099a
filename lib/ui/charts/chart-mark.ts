import type { Arm } from '../arm-shape'

/** A straight line. */
export type Stroke = { x1: number; y1: number; x2: number; y2: number }

/** One mark of a picture in the picture's own units. Screen, print and whatever else draws from the same list. */
export type ChartMark =
  | { kind: 'band'; key: string; x: number; y: number; width: number; height: number }
  /** Lines of one kind: a page of one mark for each line is several times as long. */
  | {
      kind: 'lines'
      key: string
      at: readonly Stroke[]
      ink: Arm | 'ink' | 'rule'
      weight: 'fine' | 'plain' | 'heavy'
    }
  /** The mark of an arm, at each of some places. */
  | {
      kind: 'arm'
      key: string
      arm: Arm
      at: readonly { x: number; y: number }[]
      size: number
      look: 'full' | 'hollow' | 'faint'
    }
  | {
      kind: 'text'
      key: string
      x: number
      y: number
      text: string
      anchor: 'start' | 'middle' | 'end'
      tone: 'plain' | 'quiet' | 'strong'
    }

export type ChartPicture = { width: number; height: number; marks: ChartMark[] }
