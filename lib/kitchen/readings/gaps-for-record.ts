import 'server-only'
import type { Gap } from './gaps-of-batch'

/** What is still so, in a line each, as the record keeps it beside the reason why it was gone on all the same. */
export function gapsForRecord(gaps: readonly Gap[]): string[] {
  return gaps.map((gap) => {
    switch (gap.kind) {
      case 'fewer-pieces':
        return `pieces made: ${gap.have} of ${gap.of}`
      case 'missing':
        return `${gap.measure.name}: ${gap.have} of ${gap.of} read`
      case 'unsettled':
        return `${gap.measure.name}${ofPiece(gap.piece)}: not settled`
      case 'outside':
        return `${gap.measure.name}${ofPiece(gap.piece)}: ${gap.value} ${gap.measure.unit}, outside ${gap.least} to ${gap.most}`
      case 'to-settle':
        return `entries kept aside and not settled: ${gap.count}`
      default:
        return gap satisfies never
    }
  })
}

function ofPiece(piece: number | null): string {
  return piece === null ? '' : ` of piece ${piece}`
}
