import 'server-only'
import { textOf } from '@/lib/ui/text-of'
import { numberOf } from '@/lib/ui/number-of'
import { blindTask, heldTotal } from '@/lib/kitchen/trials/trial-content.input'
import { temperatureFigure } from '@/lib/words/format/figure-in-field'
import type { OwnUnits } from '@/lib/words/format/own-units'

/** What a trial's form says, in base units, for the command to judge. An empty choice is missing, not wrong. */
export function readTrialForm(form: FormData, units: OwnUnits) {
  const at = (name: string) => `content.${name}`
  const number = (name: string) => numberOf(form, at(name), units.locale)
  const chosen = (name: string) => textOf(form, at(name)) || undefined
  const degrees = (name: string) => {
    const typed = number(name)
    return typeof typed === 'number' ? temperatureFigure(units.temperatureUnits).read(typed) : typed
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
    holdsFor: chosen('holdsFor'),
    blinded: blindTask.options.filter((task) => form.has(at(`blinded.${task}`))),
    scaleId: chosen('scaleId') ?? null,
    mixerId: chosen('mixerId') ?? null,
    flourTempC: degrees('flourTempC'),
    roomTempC: degrees('roomTempC'),
    tapTempC: degrees('tapTempC') ?? null,
    note: textOf(form, at('note')),
    arms: whileThere(form, (a) => at(`arms.${a}.name`)).map((a) => ({
      name: textOf(form, at(`arms.${a}.name`)),
      onTop: textOf(form, at(`arms.${a}.how`)) === 'on-top',
      doses: whileThere(form, (d) => at(`arms.${a}.doses.${d}.ingredientId`)).map((d) => {
        const of = (field: string) => `arms.${a}.doses.${d}.${field}`
        return {
          ingredientId: chosen(of('ingredientId')),
          insteadOfId: chosen(of('insteadOfId')) ?? null,
          equalBy: chosen(of('equalBy')) ?? null,
          ...amountOf(chosen(of('how')), {
            value: number(of('value')),
            basis: chosen(of('basis')),
            doseOf: chosen(of('doseOf')),
          }),
        }
      }),
    })),
  }
}

/** How a dose is meant, and how much: what takes all of it out asks for no amount. */
function amountOf<Amount>(how: string | undefined, amount: Amount) {
  if (how === 'without') return { how: 'in_all', ...noAmount }
  if (how === 'in_place_all') return { how: 'in_place', allOfIt: true, ...noAmount }
  return { how, ...amount }
}
const noAmount = { value: 0, basis: 'pct_flour', doseOf: 'product' } as const

/** Levels are typed one on a line, or on one line with semicolons or commas between them. Nothing typed is no factor. */
function readFactor(name: string, levels: string) {
  const listed = levels.trim()
  const mark = ['\n', ';', ','].find((each) => listed.includes(each)) ?? '\n'
  const named = listed
    .split(mark)
    .map((level) => level.trim())
    .filter((level) => level !== '')
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
