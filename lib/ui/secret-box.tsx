import type { ReactNode } from 'react'

export type SecretBoxProps = {
  id: string
  label: string
  /** A one-time link or code. It is shown once; the page that shows it must not be cached. */
  secret: string
  /** Who may see it and how long it holds. */
  caution: ReactNode
}

/** A one-time secret, large enough to read out, selected whole by one touch. */
export function SecretBox({ id, label, secret, caution }: SecretBoxProps) {
  return (
    <div className="my-5 border-t-[1.5px] border-ink pt-3">
      <label htmlFor={id} className="font-semibold">
        {label}
      </label>
      <textarea
        id={id}
        readOnly
        rows={2}
        value={secret}
        spellCheck={false}
        autoComplete="off"
        aria-describedby={`${id}-caution`}
        className="mt-2 block field-sizing-content w-full resize-none rounded-none border border-line bg-sheet px-3 py-2.5 text-lead break-all select-all"
      />
      <p id={`${id}-caution`} className="mt-2 max-w-measure text-small text-ink-2 print:hidden">
        {caution}
      </p>
    </div>
  )
}
