import 'server-only'
import type { FormulaContent } from './formula-content.input'

const secondsOf = (minutes: number) => Math.round(minutes * 60)

/** The columns of a version that hold batch size, process and method. Times to the nearest second. */
export function processColumns(content: Omit<FormulaContent, 'stages'>) {
  return {
    pieces: content.pieces,
    scalingMassG: content.scalingMassG,
    doughLossPct: content.doughLossPct,
    doughTempC: content.doughTempC,
    mixTimeS: secondsOf(content.mixTimeMin),
    bulkTimeS: secondsOf(content.bulkTimeMin),
    proofTimeS: secondsOf(content.proofTimeMin),
    bakeTempC: content.bakeTempC,
    bakeTimeS: secondsOf(content.bakeTimeMin),
    method: content.method,
  }
}
