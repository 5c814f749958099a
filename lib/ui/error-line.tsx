import { ToneMark } from './tone-mark'

/** What is wrong with a field and the way out, below it, with a mark in front. */
export function ErrorLine({ id, text }: { id: string; text: string }) {
  return (
    <p id={id} className="mt-1 flex max-w-column items-baseline gap-2 font-semibold text-stop">
      <ToneMark tone="stop" />
      {text}
    </p>
  )
}
