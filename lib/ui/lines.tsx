/** Texts that each stand on a line of their own. */
export function Lines({ texts }: { texts: readonly string[] }) {
  return texts.map((text) => (
    <span key={text} className="block">
      {text}
    </span>
  ))
}
