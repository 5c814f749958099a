import type { getVersion } from '@/lib/kitchen/formulas/get-version'
import type { AnswerOf } from '@/lib/kitchen/query'
import { massFigure, temperatureFigure } from '@/lib/words/format/figure-in-field'
import type { EditorValues } from './formula-editor'
import type { OwnUnits } from '@/lib/words/format/own-units'

/** A version's content as the texts that stand in the editor's fields, in the bakery's marks and units, with every digit. */
export function editorValues(
  { batch, process, version, stages }: AnswerOf<typeof getVersion>['content'],
  { locale, massUnits, temperatureUnits }: OwnUnits,
): EditorValues {
  const form = new Intl.NumberFormat(locale, { useGrouping: false, maximumFractionDigits: 6 })
  const text = (value: number) => form.format(value)
  const temp = (tempC: number) => temperatureFigure(temperatureUnits).write(tempC, locale)
  return {
    pieces: text(batch.pieces),
    scalingMassG: massFigure(massUnits).write(batch.scalingMassG, locale),
    doughLossPct: text(batch.doughLossPct),
    doughTempC: temp(process.doughTempC),
    mixTimeMin: text(process.mixTimeS / 60),
    bulkTimeMin: text(process.bulkTimeS / 60),
    proofTimeMin: text(process.proofTimeS / 60),
    bakeTempC: temp(process.bakeTempC),
    bakeTimeMin: text(process.bakeTimeS / 60),
    method: process.method,
    reason: version.reason,
    stages: stages.map((stage) => ({
      kind: stage.kind,
      name: stage.name,
      lines: stage.lines.map((line) => ({
        ingredientId: line.ingredient.id,
        ingredientName: line.ingredient.name,
        pctFlour: text(line.pctFlour),
      })),
    })),
  }
}
