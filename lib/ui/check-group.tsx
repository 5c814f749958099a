import type { ReactNode } from 'react'

/** Several ticks that answer one question, in columns where there is room. `id` names the group; each tick has its own. */
export function CheckGroup({ id, label, children }: { id: string; label: string; children: ReactNode }) {
  return (
    <div role="group" aria-labelledby={`${id}-group`} className="max-w-measure">
      <p id={`${id}-group`} className="mb-1 font-semibold">
        {label}
      </p>
      <div className="grid gap-x-8 border-y border-rule py-1 mid:grid-cols-2 wide:grid-cols-3">{children}</div>
    </div>
  )
}
