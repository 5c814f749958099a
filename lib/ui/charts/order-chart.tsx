import { ChartDrawing } from './chart-drawing'
import { orderMarks, type OrderRow, type OrderWords } from './order-marks'

/** Doughs in their order, each under its code; drawn for a narrow and for a wide place, of which the one that fits shows. */
export function OrderChart({ rows, words, label }: { rows: readonly OrderRow[]; words: OrderWords; label: string }) {
  return (
    <figure className="@container">
      <div className="max-w-column @min-[32rem]:hidden">
        <ChartDrawing picture={orderMarks({ rows, size: 'narrow', words })} label={label} />
      </div>
      <div className="hidden max-w-[46rem] @min-[32rem]:block">
        <ChartDrawing picture={orderMarks({ rows, size: 'wide', words })} label={label} />
      </div>
    </figure>
  )
}
