import 'server-only'
import type { FTest } from '../../calc/comparison/types'
import { sureOf } from '../sure-of'

/** The test of one row of an analysis of variance against the error it is judged by. @throws Error for a row that has none, as the error's own */
export function fTestOf(row: { df: number; f: number | null; p: number | null }, errorDf: number): FTest {
  return { f: sureOf(row.f, 'the F of a row'), df1: row.df, df2: errorDf, p: sureOf(row.p, 'the p of a row') }
}
