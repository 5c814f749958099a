import { armShape, type Arm } from './arm-shape'

export type ArmMarkProps = {
  arm: Arm
  /** What the mark says to somebody who cannot see it; left out when the words beside it say the same. */
  title?: string
  /** An effect that is not to be trusted is drawn hollow. The control always is. */
  hollow?: boolean
  /** Leaves the letter out where a column or label beside already has it. */
  letterHidden?: boolean
}

/** An arm by shape, colour and letter. */
export function ArmMark({ arm, title, hollow = false, letterHidden = false }: ArmMarkProps) {
  const outline = hollow || arm === 'control'
  return (
    <span className="arm-mark">
      <svg
        viewBox="-9 -9 18 18"
        {...(title ? { role: 'img' } : { 'aria-hidden': true })}
        className={`${inks[arm]} ${outline ? 'fill-none stroke-current' : 'fill-current stroke-none'}`}
      >
        {title ? <title>{title}</title> : null}
        <path d={armShape[arm]} />
      </svg>
      {arm === 'control' || letterHidden ? null : <b>{arm}</b>}
    </span>
  )
}

const inks: Record<Arm, string> = {
  control: 'text-arm-control',
  A: 'text-arm-a',
  B: 'text-arm-b',
  C: 'text-arm-c',
  D: 'text-arm-d',
  E: 'text-arm-e',
  F: 'text-arm-f',
}
