import 'server-only'
import type { AnswerOf } from '@/lib/kitchen/query'
import type { ColumnUse } from '@/lib/kitchen/readings/import/import-readings.input'
import type { previewImport } from '@/lib/kitchen/readings/import/preview-import'
import { armLetter } from '@/lib/kitchen/trials/rules'
import { wordsOfProblem } from '@/lib/kitchen/words-of-refusal'
import { withUnit } from '@/lib/words/format/with-unit'
import { listOf } from '@/lib/words/list-of'
import { measureName } from '@/lib/words/measure-name'
import { say, sayName } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import type { ImportState, SeenRows } from './import-state'

export type Previewed = AnswerOf<typeof previewImport>
type Seen = NonNullable<Previewed['seen']>
type Dough = NonNullable<Seen['rows']>['doughs'][number]['dough']

/** A column's use as the lists of the form name it. */
export function keyOfUse(use: ColumnUse): string {
  return use.as === 'measure' ? `measure:${use.measureId}:${use.unit}` : use.as
}

/** An arm as the page calls it. */
export function armName({ position, name }: Previewed['trial']['arms'][number], language: Language): string {
  const { importing: text } = wordsIn(language)
  return position === 0 ? text.control : sayName(text.arm, language, { letter: armLetter(position), name })
}

/** What a preview says, in words, for the page to show. */
export function saySeen(
  { trial, seen }: Previewed,
  state: ImportState,
  language: Language,
): Pick<ImportState, 'problems' | 'seen' | 'refusal'> {
  const { refusals } = wordsIn(language)
  if (!seen) return { problems: state.problems, seen: null, refusal: state.refusal }
  const { match, header, sample, armTexts, problems, rows } = seen
  const found = Object.fromEntries(problems.map((problem) => [problem.path, wordsOfProblem(problem, language)]))
  return {
    problems: { ...state.problems, ...found },
    refusal: state.refusal ?? (problems.length > 0 ? refusals.invalid : null),
    seen: match && {
      matched: seen.matched,
      columns: header.map((name, at) => ({
        name,
        example: listOf(new Set(sample.map((cells) => cells[at] ?? '').filter((cell) => cell !== '')), language),
        use: keyOfUse(match.columns[at] ?? { as: 'nothing' }),
      })),
      separator: match.separator,
      decimal: match.decimal,
      armTexts: armTexts.map((text) => ({
        text,
        arm: String(match.arms.find((each) => each.text === text)?.arm ?? ''),
      })),
      rows: rows && sayRows(rows, seen, trial, language),
    },
  }
}

function sayRows(
  rows: NonNullable<Seen['rows']>,
  { header, rowCount, problems }: Seen,
  trial: Previewed['trial'],
  language: Language,
): SeenRows {
  const words = wordsIn(language)
  const { importing: text, trials } = words
  const columnName = (column: number) => header[column] || say(text.column, language, { number: column + 1 })
  const becomesSome = rows.doughs.some(({ becomes }) => becomes !== null)
  const sayDough = (dough: Dough) => {
    if (dough.code !== undefined) return say(text.doughCode, language, { code: dough.code })
    const facts = {
      day: dough.dayNumber,
      arm: dough.arm === 0 ? text.control : sayName(trials.dough, language, { letter: armLetter(dough.arm) }),
      number: dough.number,
    }
    return trial.hasSeveralDoughs ? say(text.doughOfSeveral, language, facts) : say(text.doughOfDay, language, facts)
  }
  return {
    isReady: rows.faultCount === 0 && problems.length === 0 && (rows.stored > 0 || becomesSome),
    storeLabel: rows.stored > 0 ? say(text.store, language, { count: rows.stored }) : text.mark,
    sentences: [
      ...(rows.stored > 0 ? [say(text.stored, language, { count: rows.stored, rows: rowCount })] : []),
      ...(rows.already > 0 ? [say(text.already, language, { count: rows.already })] : []),
      ...(rows.rowsWithout > 0 ? [say(text.rowsWithout, language, { count: rows.rowsWithout })] : []),
    ],
    faultTitle: rows.faultCount > 0 ? say(text.faults, language, { count: rows.faultCount }) : null,
    faultNote:
      rows.faultCount > rows.faults.length ? say(text.faultsMore, language, { shown: rows.faults.length }) : null,
    faults: rows.faults.map((fault, i) => ({
      key: `${fault.line} ${fault.column ?? ''} ${i}`,
      line: fault.line,
      column: fault.column === null ? text.wholeRow : columnName(fault.column),
      words: wordsOfProblem(fault, language),
    })),
    oddTitle: rows.oddCount > 0 ? say(text.oddTitle, language, { count: rows.oddCount }) : null,
    oddNote: rows.oddCount > rows.odd.length ? say(text.oddMore, language, { shown: rows.odd.length }) : text.oddNote,
    odd: rows.odd.map(({ line, column, value, least, most, unit }) => ({
      key: `${line} ${column}`,
      line,
      column: columnName(column),
      value,
      usual: say(text.oddRange, language, { least, most, unit }),
    })),
    byMeasure: rows.byMeasure.map(({ measure, count }) => ({ name: measureName(measure, words), count })),
    doughsTitle: say(text.byDough, language, { count: rows.doughs.length }),
    doughs: rows.doughs.map(({ id, dough, readings, becomes }) => ({
      id,
      dough: sayDough(dough),
      readings,
      becomes: becomes ? text.becomesStates[becomes] : '',
    })),
    hasBecomes: becomesSome,
    first: rows.first.map(({ id, line, dough, measure, piece, factorLevel, value, unit }) => ({
      id,
      line,
      dough: sayDough(dough),
      measure: measureName(measure, words),
      piece: piece === null ? '' : String(piece),
      level: factorLevel ?? '',
      value: withUnit(value, unit),
    })),
  }
}
