export type QuantityProps = {
  /** Already formatted for the person's locale. */
  number: string
  unit: string
}

/** A number and its unit, which never part at the end of a line. */
export function Quantity({ number, unit }: QuantityProps) {
  return (
    <span className="whitespace-nowrap">
      {number}
      {noBreakSpace}
      <span className="text-[0.86em] text-ink-2">{unit}</span>
    </span>
  )
}

const noBreakSpace = '\u00a0'
