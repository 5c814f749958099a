import 'server-only'
import { textOf } from '@/app/act'
import { numberOf } from '@/app/number-of'
import { heldTotal } from '@/lib/kitchen/trials/trial-content.input'
import { temperatureFromUnit } from '@/lib/words/format/temperature'
import type { PlanUnits } from './plan-format'

/** What a trial's form says, in base units, for the command to judge. An empty choice is missing, not wrong. */
export function readTrialForm(form: FormData, units: PlanUnits) {
  const at = (name: string) => `content.${name}`
  const number = (name: string) => numberOf(form, at(name), units.locale)
  const chosen = (name: string) => textOf(form, at(name)) || undefined
  const degrees = (name: string) => {
    const typed = number(name)
    return typeof typed === 'number' ? temperatureFromUnit(typed, units.temperatureUnits) : typed
  }
  return {
    kind: chosen('kind'),
    question: textOf(form, at('question')),
    formulaId: chosen('formulaId'),
    measureId: chosen('measureId'),
    margin: number('margin'),
    marginUnit: chosen('marginUnit'),
    confidencePct: number('confidencePct'),
    mixingDays: number('mixingDays'),
    batchesPerArm: number('batchesPerArm'),
    piecesPerBatch: number('piecesPerBatch'),
    factor: readFactor(textOf(form, at('factor.name')), textOf(form, at('factor.levels'))),
    heldTotals: heldTotal.options.filter((total) => form.has(at(`heldTotals.${total}`))),
    scaleId: chosen('scaleId') ?? null,
    mixerId: chosen('mixerId') ?? null,
    flourTempC: degrees('flourTempC'),
    roomTempC: degrees('roomTempC'),
    tapTempC: degrees('tapTempC'),
    note: textOf(form, at('note')),
    arms: whileThere(form, (a) => at(`arms.${a}.name`)).map((a) => ({
      name: textOf(form, at(`arms.${a}.name`)),
      onTop: textOf(form, at(`arms.${a}.how`)) === 'on-top',
      doses: whileThere(form, (d) => at(`arms.${a}.doses.${d}.value`)).map((d) => ({
        ingredientId: chosen(`arms.${a}.doses.${d}.ingredientId`),
        basis: chosen(`arms.${a}.doses.${d}.basis`),
        doseOf: chosen(`arms.${a}.doses.${d}.doseOf`),
        value: number(`arms.${a}.doses.${d}.value`),
        how: chosen(`arms.${a}.doses.${d}.how`),
        insteadOfId: chosen(`arms.${a}.doses.${d}.insteadOfId`) ?? null,
        equalBy: chosen(`arms.${a}.doses.${d}.equalBy`) ?? null,
      })),
    })),
  }
}

/** Levels are typed one on a line, or on one line with semicolons or commas between them. Nothing typed is no factor. */
function readFactor(name: string, levels: string) {
  const listed = levels.trim()
  const mark = ['\n', ';', ','].find((each) => listed.includes(each)) ?? '\n'
  const named = listed.split(mark).map((level) => level.trim()).filter((level) => level !== '')
  return name.trim() === '' && named.length === 0 ? null : { name, levels: named }
}

/** More than a form may send; the command says how many are too many. */
const mostRows = 20

/** The numbers from 0 for which the form has a field. */
function whileThere(form: FormData, nameOf: (index: number) => string): number[] {
  const found: number[] = []
  while (found.length < mostRows && form.has(nameOf(found.length))) found.push(found.length)
  return found
}
