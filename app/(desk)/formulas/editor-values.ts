import type { getVersion } from '@/lib/kitchen/formulas/get-version'
import type { AnswerOf } from '@/lib/kitchen/query'
import type { EditorValues } from './formula-editor'

/** A version's content as the texts that stand in the editor's fields, in the bakery's locale, with every digit. */
export function editorValues({ batch, process, version, stages }: AnswerOf<typeof getVersion>['content'], locale: string): EditorValues {
  const form = new Intl.NumberFormat(locale, { useGrouping: false, maximumFractionDigits: 6 })
  const text = (value: number) => form.format(value)
  return {
    pieces: text(batch.pieces),
    scalingMassG: text(batch.scalingMassG),
    doughLossPct: text(batch.doughLossPct),
    doughTempC: text(process.doughTempC),
    mixTimeMin: text(process.mixTimeS / 60),
    bulkTimeMin: text(process.bulkTimeS / 60),
    proofTimeMin: text(process.proofTimeS / 60),
    bakeTempC: text(process.bakeTempC),
    bakeTimeMin: text(process.bakeTimeS / 60),
    method: process.method,
    reason: version.reason,
    stages: stages.map((stage) => ({
      kind: stage.kind,
      name: stage.name,
      lines: stage.lines.map((line) => ({ ingredientId: line.ingredient.id, pctFlour: text(line.pctFlour) })),
    })),
  }
}
