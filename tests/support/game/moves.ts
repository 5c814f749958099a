/** A thing of a dough that a reading is of. */
export type ReadingSpot = { measure: string; piece: number | null; repeat: number }

/** What somebody does on the floor, at the desk or from a device. `dough` is a code, `measure` the code of a measure. */
export type Move =
  | { do: 'wait'; ms: number }
  /** `early`: before its turn, for a reason. */
  | { do: 'begin'; dough: string; early?: true }
  | { do: 'move'; dough: string; to: 'in_work' | 'baked' | 'measured' | 'lost' | 'set_aside' | 'not_baked' }
  /** So many seconds after the move. */
  | { do: 'undo'; dough: string; after: number }
  | { do: 'note'; dough: string }
  /** Something is found later, and signed: by whoever found it, or by a second person who plays along. */
  | { do: 'find'; dough: string }
  | { do: 'sign'; dough: string; by: 'self' | 'second' }
  | { do: 'count'; dough: string; made: number }
  | ({ do: 'read'; dough: string; value: number } & ReadingSpot)
  /** `at`: what holds there is corrected, and becomes what the rest says. */
  | ({ do: 'correct'; dough: string; at: ReadingSpot; value: number } & ReadingSpot)
  /** From a device: what is late is kept aside and not refused. */
  | ({ do: 'send'; dough: string; value: number } & ReadingSpot)
  /** The oldest entry of a dough that is kept aside. */
  | { do: 'settle'; dough: string; take: boolean }
  /** Volumes of one piece, one column a repeat. */
  | { do: 'file'; dough: string; piece: number; values: number[] }
  /** Lines of a dough, from one form; what stands of them gives way. */
  | { do: 'weigh'; dough: string; lines: LineSaid[] }
  /** A dough that is out is baked again. */
  | { do: 'again'; dough: string }
  /** A whole mixing day is added for one. */
  | { do: 'day'; day: number }
  | { do: 'swap'; dough: string; other: string }
  /** When a mixing day is to be. */
  | { do: 'date'; day: number; date: string | null }
  | { do: 'close' }

/** What is written of a line, by its place among those of the plan. */
export type LineSaid = { line: number; how: 'ticked' | 'weighed' | 'left_out'; massG: number }

/** 'done', or the code of what stood in the way. */
export type Outcome = string

const minuteMs = 60_000
export const hourMs = 60 * minuteMs
export const dayMs = 24 * hourMs

/** A minute, but for waiting, and for what is a tap within the seconds in which a move can be undone. */
export function msOf(move: Move): number {
  switch (move.do) {
    case 'wait':
      return move.ms
    case 'undo':
      return move.after * 1000
    case 'again':
    case 'day':
    case 'swap':
      return 1000
    default:
      return minuteMs
  }
}

/** What is noted at a dough, and why anything is done: the words decide nothing. */
export const causeNoted = 'something happened'
export const reasonGiven = 'for a reason'

export const foundBy = 'ingredient_left'
/** Who signs what the player found. */
export const secondName = 'Lars'

/** As somebody types it: to a tenth. */
export function typed(value: number): string {
  return (Math.round(value * 10) / 10).toFixed(1)
}

export const units: Readonly<Record<string, string>> = {
  'water-added': 'g',
  'dough-temp': '°C',
  'proof-time': 's',
  'loaf-mass': 'g',
  'loaf-volume': 'mL',
}
