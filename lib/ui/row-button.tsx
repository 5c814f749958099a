export type RowButtonProps = {
  shape: 'up' | 'down' | 'remove'
  /** What it does to which row: 'Line 2 of stage 1: up'. */
  label: string
  onPress: () => void
  disabled?: boolean
}

/** A small button at the end of a row that is being edited: moves the row or takes it away. */
export function RowButton({ shape, label, onPress, disabled }: RowButtonProps) {
  return (
    <button
      type="button"
      onClick={onPress}
      disabled={disabled}
      aria-label={label}
      title={label}
      className="inline-flex size-10 items-center justify-center border border-transparent hover:border-line disabled:opacity-50 print:hidden"
    >
      <svg
        viewBox="0 0 20 20"
        aria-hidden="true"
        className={`size-[1.15em] fill-none stroke-current stroke-2 ${shape === 'remove' ? 'text-stop' : ''}`}
      >
        <path d={shapes[shape]} />
      </svg>
    </button>
  )
}

const shapes = { up: 'M10 17V3M4 9l6-6 6 6', down: 'M10 3v14M4 11l6 6 6-6', remove: 'M4 4l12 12M16 4L4 16' }
