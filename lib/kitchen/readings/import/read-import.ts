import 'server-only'
import { v5 as uuidOf } from 'uuid'
import type { ProblemCode } from '../../messages'
import { groupBy } from '../../../calc/group-by'
import { Refusal } from '../../refusal'
import { currentReadings } from '../current-readings'
import { enteredValue } from '../entered-value'
import type { ImportMatch } from './import-readings.input'
import type { ImportFacts } from './load-import-facts'
import { mustBePlace } from '../must-be-place'
import type { PlacedRow } from './place-rows'
import { plausibleRange, type PlausibleRange } from '../plausible-range'
import { keyOfPlace } from '../reading-facts'
import { takesRepeat } from '../takes-repeat.input'
import { columnOf, type RowFault } from './row-place'

type Place = { batchId: string; measureId: string; piece: number | null; factorLevel: string | null; repeat: number }

export type ImportedReading = Place & {
  /** Made from trial and place, so that a file that comes twice brings the same ones. */
  id: string
  line: number
  valueEntered: string
  unitEntered: string
  value: number
  /** That it was judged by. */
  range: PlausibleRange
  takenAt: Date
}

/** A value outside its plausible range, which is stored when it was said that such values were looked at. */
export type OddCell = { line: number; column: number; value: string; unit: string } & PlausibleRange

export type ImportRead = {
  /** What is not there yet. */
  fresh: ImportedReading[]
  /** How many are there already from an earlier file, just as they are here. */
  already: number
  /** Rows that bring no reading. */
  rowsWithout: number
  /** Those of the fresh ones that are outside what is usual. */
  odd: OddCell[]
  faults: RowFault[]
}

/** Of the ids that are made here; any fixed one would do. */
const namespace = '3f6c1a52-64de-4c0c-9d50-5f1f2f9d1a77'

const wholeDough = { piece: null, factorLevel: null }

/** The id that an imported reading has at its place in a trial. */
export function idOfImported(trialId: string, { batchId, measureId, piece, factorLevel, repeat }: Place): string {
  return uuidOf(JSON.stringify([trialId, batchId, measureId, piece, factorLevel, repeat]), namespace)
}

/**
 * Reads the cells of rows that have their places: every reading that they bring and every fault. Several columns of one
 * measure are its repeats. Values, units and places are checked by the very functions that check a single reading.
 */
export function readImport(q: {
  facts: ImportFacts
  match: ImportMatch
  placed: readonly PlacedRow[]
  keepOdd: boolean
}): ImportRead {
  const { facts, match } = q
  const columns = match.columns.flatMap((column, at) => {
    const measure = column.as === 'measure' ? facts.measures.find(({ id }) => id === column.measureId) : undefined
    return column.as === 'measure' && measure ? [{ at, unit: column.unit, measure }] : []
  })
  const taken = takenPlaces(facts)
  const holding = new Map<string, readonly { repeat: number; value: number }[]>(
    groupBy(currentReadings(facts.readings), keyOfPlace),
  )
  const inFile = new Map<string, { line: number; entered: string }>()
  const read: ImportRead = { fresh: [], already: 0, rowsWithout: 0, odd: [], faults: [] }

  for (const row of q.placed) {
    const filled = columns.flatMap((column) => {
      const valueEntered = row.cells[column.at] ?? ''
      return valueEntered === '' ? [] : [{ ...column, valueEntered }]
    })
    if (filled.length === 0) read.rowsWithout += 1
    const repeats = new Map<string, number>()
    for (const { at, unit, measure, valueEntered } of filled) {
      const ofPiece = measure.level === 'piece'
      const part = ofPiece ? row.piece : wholeDough
      if (!part) continue
      const fault = (code: ProblemCode, about: RowFault['facts'] = {}, column = at) =>
        void read.faults.push({ line: row.line, column, code, facts: about })
      const repeat = (repeats.get(measure.id) ?? 0) + 1
      repeats.set(measure.id, repeat)
      const place: Place = {
        batchId: row.batchId,
        measureId: measure.id,
        piece: part.piece,
        factorLevel: part.factorLevel,
        repeat,
      }
      const entered = `${valueEntered} ${unit}`
      const problem = (path: string) =>
        path === 'piece' ? columnOf(match, 'piece') : path === 'factorLevel' ? columnOf(match, 'level') : at
      const value = checked(
        () => {
          mustBePlace(place, measure, facts.trial)
          return enteredValue({ value: plainValue(valueEntered, match.decimal), unit }, measure)
        },
        (path, code, about) => fault(code, about, problem(path)),
      )
      if (value === null) continue
      const range = plausibleRange(measure, facts.ranges)
      const id = idOfImported(facts.trial.id, place)
      const other = inFile.get(id)
      if (other) {
        // A figure of the whole dough may stand on each of its lines, as long as it is the same.
        if (ofPiece) fault('row-twice', { line: other.line })
        else if (other.entered !== entered) fault('row-another-value', { line: other.line })
        continue
      }
      inFile.set(id, { line: row.line, entered })
      const there = taken.byId.get(id) ?? taken.byPlace.get(keyOf(place))
      if (!there) {
        const atPlace = holding.get(keyOfPlace(place)) ?? []
        // What is at fault itself counts as well, so that what stands behind it is judged as it would be without the fault.
        holding.set(keyOfPlace(place), [...atPlace, { repeat, value }])
        if (!takesRepeat(repeat, measure, atPlace)) {
          fault('row-no-further-repeat', { count: measure.repeats })
          continue
        }
        const isOdd = value < range.least || value > range.most
        if (isOdd) read.odd.push({ line: row.line, column: at, value: entered, unit: measure.unit, ...range })
        if (isOdd && !q.keepOdd) fault('row-odd', { value: entered, ...range, unit: measure.unit })
        else
          read.fresh.push({
            id,
            line: row.line,
            ...place,
            valueEntered,
            unitEntered: unit,
            value,
            range,
            takenAt: row.takenAt,
          })
      } else if (there.id === id && `${there.valueEntered} ${there.unitEntered}` === entered) read.already += 1
      else fault('row-there', { value: `${there.valueEntered} ${there.unitEntered}` })
    }
  }
  return read
}

/** Runs the checks of a single reading; what they refuse is told instead. */
function checked(
  run: () => number,
  tell: (path: string, code: ProblemCode, facts: RowFault['facts']) => void,
): number | null {
  try {
    return run()
  } catch (error) {
    if (!(error instanceof Refusal) || error.problems.length === 0) throw error
    for (const { path, code, facts } of error.problems) tell(path, code, facts)
    return null
  }
}

/** A number with the file's decimal mark, with a point instead; with the other mark it is no number of this file. */
function plainValue(cell: string, decimal: ImportMatch['decimal']): string {
  if (decimal === '.') {
    if (cell.includes(',')) throw Refusal.at('value', 'row-decimal-mark', { mark: decimal })
    return cell
  }
  if (cell.includes('.')) throw Refusal.at('value', 'row-decimal-mark', { mark: decimal })
  return cell.replace(',', '.')
}

/** What is in the book: by its id, corrected ones as well, and what holds by its place. */
function takenPlaces({ readings }: ImportFacts) {
  return {
    byId: new Map(readings.map((reading) => [reading.id, reading])),
    byPlace: new Map(currentReadings(readings).map((reading) => [keyOf(reading), reading])),
  }
}

function keyOf({ batchId, measureId, piece, factorLevel, repeat }: Place): string {
  return JSON.stringify([batchId, measureId, piece, factorLevel, repeat])
}
