import { ChartDrawing } from './chart-drawing'
import { effectMarks, type EffectRow, type EffectWords } from './effect-marks'

export type EffectChartProps = {
  rows: readonly EffectRow[]
  /** Half the width of the band of differences not worth having, on the axis; null without one. */
  band: number | null
  words: EffectWords
  label: string
}

/** Arms against the control as dots with intervals; drawn for a narrow and for a wide place, of which the one that fits shows. */
export function EffectChart({ rows, band, words, label }: EffectChartProps) {
  return (
    <figure className="@container">
      <div className="max-w-column @min-[32rem]:hidden">
        <ChartDrawing picture={effectMarks({ rows, band, size: 'narrow', words })} label={label} />
      </div>
      <div className="hidden max-w-[46rem] @min-[32rem]:block">
        <ChartDrawing picture={effectMarks({ rows, band, size: 'wide', words })} label={label} />
      </div>
    </figure>
  )
}
