import type { ReactNode } from 'react'

/** A wet finger taps twice, and the second tap lands on whatever has come up meanwhile. */
const secondTapMs = 600
/** One key of a pad again, faster than anybody types. */
const bounceMs = 120

/** On a pad, for whoever sees it; its name is said beside it. */
export const deleteSign = '⌫'

let actedAt = -Infinity
const keyed = { key: '', at: -Infinity }

type TapProps = {
  onTap(): void
  children: ReactNode
  look?: 'main' | 'plain' | 'row' | 'quiet'
  label?: string
  disabled?: boolean
  pressed?: boolean
}

/** Whatever does something when it is tapped: on release, and once for two taps in a hurry. */
export function Tap({ onTap, children, look = 'plain', label, disabled, pressed }: TapProps) {
  return (
    <button
      type="button"
      className={`tap tap-${look}`}
      aria-label={label}
      aria-pressed={pressed}
      disabled={disabled}
      onClick={({ timeStamp }) => {
        if (timeStamp - actedAt < secondTapMs) return
        actedAt = timeStamp
        onTap()
      }}
    >
      {children}
    </button>
  )
}

/** A key of a pad: two of one digit may follow each other, a bounce may not. */
export function Key({
  onTap,
  children,
  label,
  name,
}: {
  onTap(): void
  children: ReactNode
  label?: string
  name: string
}) {
  return (
    <button
      type="button"
      className="key"
      data-key={name}
      aria-label={label}
      onClick={({ timeStamp }) => {
        if (timeStamp - actedAt < secondTapMs) return
        if (keyed.key === name && timeStamp - keyed.at < bounceMs) return
        Object.assign(keyed, { key: name, at: timeStamp })
        onTap()
      }}
    >
      {children}
    </button>
  )
}
