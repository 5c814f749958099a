/** What the page knows after the file was looked at, in words. */
export type SeenFile = {
  /** Of which form of table the match below is: of another the columns are guessed anew. */
  matched: string
  columns: readonly { name: string; example: string; use: string }[]
  separator: string
  decimal: string
  /** What stands in the arm column, and the position of the arm that it stands for, or ''. */
  armTexts: readonly { text: string; arm: string }[]
  rows: SeenRows | null
}

export type SeenRows = {
  /** There is something to store, and nothing at fault. */
  isReady: boolean
  storeLabel: string
  sentences: readonly string[]
  faultTitle: string | null
  faultNote: string | null
  faults: readonly { key: string; line: number; column: string; words: string }[]
  /** Values outside what is usual that are stored because they were said to be right. */
  oddTitle: string | null
  oddNote: string
  odd: readonly { key: string; line: number; column: string; value: string; usual: string }[]
  byMeasure: readonly { name: string; count: number }[]
  doughsTitle: string
  doughs: readonly { id: string; dough: string; readings: number; becomes: string }[]
  hasBecomes: boolean
  first: readonly {
    id: string
    line: number
    dough: string
    measure: string
    piece: string
    level: string
    value: string
  }[]
}

export type ImportState = {
  answers: number
  /** Why nothing was stored, in words. */
  refusal: string | null
  /** By field. */
  problems: Readonly<Record<string, string>>
  seen: SeenFile | null
  /** Set when the file was stored. */
  done: string | null
}

export const emptyImportState: ImportState = { answers: 0, refusal: null, problems: {}, seen: null, done: null }
