import 'server-only'
import { dayInZone } from '../../day-in-zone'
import { query } from '../../query'
import { mixedBatches } from '../../batches/mixed-batches'
import { sureOf } from '../../sure-of'
import { isOpen } from '../../trials/rules'
import { examineImport, type Examined } from './examine-import'
import { textsOfArms } from './guess-match'
import { previewImportInput } from './import-readings.input'
import { loadImportFacts, type ImportFacts } from './load-import-facts'
import { matchedOf } from './matched-of'
import { columnOf } from './row-place'

/** Most that a preview lists; how many more there are is told. */
const mostShown = { faults: 100, rows: 8 } as const

/**
 * What a file of readings would bring to a trial: how it is read, what would be stored, and every fault by its line.
 * Nothing is kept. A dough goes by what the file calls it; one that goes by what is in it is for those who opened the
 * key. Without a file it says what
 * can be imported. Refuses: not-found.
 */
export const previewImport = query({
  name: 'readings.preview-import',
  input: previewImportInput,
  right: 'import-readings',
  async run({ db, actor, now, input: { trialId, look } }) {
    const { bakeryId } = actor
    const facts = await loadImportFacts(db, bakeryId, trialId, actor.personId)
    const { trial, measures } = facts
    const examined = look && examineImport({ facts, mixed: await mixedBatches(db, bakeryId, trialId), look, now })
    return {
      trial: {
        id: trial.id,
        number: trial.number,
        question: trial.question,
        isOpen: isOpen(trial.state),
        factorName: trial.factorName,
        arms: trial.arms,
        hasSeveralDoughs: facts.batches.some(({ number }) => number > 1),
      },
      today: dayInZone(now, facts.timeZone),
      measures: measures
        .filter(({ derivation }) => derivation === null)
        .map(({ id, code, name, units }) => ({ id, code, name, units })),
      seen: examined && shownOf(examined, facts),
    }
  },
})

function shownOf({ table, match, problems, rows }: Examined, facts: ImportFacts) {
  const isByCode = match !== null && columnOf(match, 'code') >= 0
  const batches = new Map(facts.batches.map((batch) => [batch.id, batch]))
  const doughOf = (batchId: string) => {
    const { code, dayNumber, arm, number } = sureOf(batches.get(batchId), 'the dough of a row that was placed')
    return isByCode ? { code } : { dayNumber, arm, number }
  }
  const measures = new Map(facts.measures.map(({ id, code, name }) => [id, { code, name }]))
  const measureOf = (id: string) => measures.get(id) ?? { code: null, name: '' }
  return {
    matched: table && match ? matchedOf(table.header, match.separator) : '',
    header: table?.header ?? [],
    rowCount: table?.rows.length ?? 0,
    sample: table?.rows.slice(0, 3).map(({ cells }) => cells) ?? [],
    match,
    armTexts: table && match ? textsOfArms(match.columns, table.rows) : [],
    problems,
    rows: rows && {
      stored: rows.fresh.length,
      already: rows.already,
      rowsWithout: rows.rowsWithout,
      faultCount: rows.faults.length,
      faults: rows.faults.slice(0, mostShown.faults),
      oddCount: rows.odd.length,
      odd: rows.odd.slice(0, mostShown.faults),
      byMeasure: [...tally(rows.fresh.map(({ measureId }) => measureId))].map(([id, count]) => ({
        measure: measureOf(id),
        count,
      })),
      doughs: doughsOf(rows, doughOf),
      first: rows.fresh
        .slice(0, mostShown.rows)
        .map(({ id, line, batchId, measureId, piece, factorLevel, valueEntered, unitEntered }) => ({
          id,
          line,
          dough: doughOf(batchId),
          measure: measureOf(measureId),
          piece,
          factorLevel,
          value: valueEntered,
          unit: unitEntered,
        })),
      cleanDown: rows.outside?.cleanDown ?? [],
      skipped: rows.outside?.skipped ?? null,
    },
  }
}

function doughsOf<Dough>(rows: NonNullable<Examined['rows']>, doughOf: (batchId: string) => Dough) {
  const counts = tally(rows.fresh.map(({ batchId }) => batchId))
  const moves = new Map(rows.outside?.moves.map(({ batchId, to }) => [batchId, to]))
  return rows.doughs.map(({ batch: { id } }) => ({
    id,
    dough: doughOf(id),
    readings: counts.get(id) ?? 0,
    becomes: moves.get(id) ?? null,
  }))
}

function tally(keys: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>()
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1)
  return counts
}
