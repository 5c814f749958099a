/** What is wrong with a field and the way out, below it, with a mark in front. */
export function ErrorLine({ id, text }: { id: string; text: string }) {
  return (
    <p id={id} className="mt-1 flex max-w-column gap-2 font-semibold text-stop">
      <svg viewBox="0 0 20 20" aria-hidden="true" className="mt-0.5 size-4 shrink-0 fill-none stroke-current stroke-2">
        <path d="M6.5 1.5h7l5 5v7l-5 5h-7l-5-5v-7zM10 5v6M10 13v2.5" />
      </svg>
      {text}
    </p>
  )
}
