import 'server-only'
import { z } from 'zod'
import { textOf } from '@/lib/ui/text-of'
import type { FormState } from '@/lib/ui/form-state'
import { lineFieldId, stageFieldId } from './editor-state'
import { massFigure, temperatureFigure, type FieldFigure } from '@/lib/words/format/figure-in-field'
import { typedNumber } from '@/lib/words/format/typed-number'
import type { OwnUnits } from '@/lib/words/format/own-units'

const sentStages = z
  .array(
    z.object({
      key: z.int(),
      kind: z.string(),
      name: z.string(),
      lines: z
        .array(z.object({ key: z.int(), ingredientId: z.string(), ingredientName: z.string(), pctFlour: z.string() }))
        .max(1000),
    }),
  )
  .max(1000)

type SentStages = z.output<typeof sentStages>

const numbers = ['pieces', 'doughLossPct', 'mixTimeMin', 'bulkTimeMin', 'proofTimeMin', 'bakeTimeMin'] as const

/** The content of the editor's form as a command takes it, in grams and °C whatever was typed, and the rows that were sent, to lead faults back to them. */
export function readEditorForm(form: FormData, { locale, massUnits, temperatureUnits }: OwnUnits) {
  const sent = readStages(textOf(form, 'stages')).map((stage) => ({ ...stage, lines: stage.lines.filter(isBegun) }))
  const number = (name: string) => typedNumber(textOf(form, name), locale)
  const figure = (name: string, { read }: FieldFigure) => {
    const typed = number(name)
    return typeof typed === 'number' ? read(typed) : typed
  }
  const temp = temperatureFigure(temperatureUnits)
  const measured = {
    scalingMassG: figure('scalingMassG', massFigure(massUnits)),
    doughTempC: figure('doughTempC', temp),
    bakeTempC: figure('bakeTempC', temp),
  }
  const typed = Object.fromEntries(numbers.map((name) => [name, number(name)]))
  const stages = sent.map(({ kind, name, lines }) => ({
    kind,
    name,
    lines: lines.map((line) => ({
      ingredientId: line.ingredientId || undefined,
      pctFlour: typedNumber(line.pctFlour, locale),
    })),
  }))
  return {
    sent,
    content: { reason: textOf(form, 'reason'), method: textOf(form, 'method'), ...typed, ...measured, stages },
  }
}

/** A row in which nothing was chosen and nothing typed says nothing; a name that is nobody's is typed. */
function isBegun(line: SentStages[number]['lines'][number]): boolean {
  return line.ingredientId !== '' || line.ingredientName.trim() !== '' || line.pctFlour.trim() !== ''
}

function readStages(text: string): SentStages {
  try {
    return sentStages.catch([]).parse(JSON.parse(text))
  } catch {
    // Not what the editor sends; the command then asks for stages.
    return []
  }
}

/** Leads the faults of lines and stages to the fields of the very rows that were sent, wherever they stand now. */
export function atRows(state: FormState, sent: SentStages): FormState {
  const problems = Object.fromEntries(
    Object.entries(state.problems).map(([path, words]) => [fieldOf(path, sent), words]),
  )
  return { ...state, problems }
}

function fieldOf(path: string, sent: SentStages): string {
  const [of, s, stageField, l, lineField] = path.split('.')
  const stage = of === 'stages' ? sent[Number(s)] : undefined
  if (!stage) return path
  const line = stage.lines[Number(l)]
  if (line && (lineField === 'ingredientId' || lineField === 'pctFlour')) return lineFieldId(line.key, lineField)
  return stageFieldId(stage.key, stageField === 'kind' || stageField === 'name' ? stageField : 'lines')
}
