import { ToneMark } from './tone-mark'

/** What can hurt somebody, each in a line with a mark in front. It prints. */
export function CautionList({ title, lines }: { title: string; lines: readonly string[] }) {
  return (
    <aside aria-label={title} className="mt-4 border-y border-rule py-2">
      <ul>
        {lines.map((line) => (
          <li key={line} className="flex items-baseline gap-3 py-0.5">
            <span className="flex text-warn">
              <ToneMark tone="warn" />
            </span>
            {line}
          </li>
        ))}
      </ul>
    </aside>
  )
}
