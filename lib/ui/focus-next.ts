/**
 * Gives the focus a place again after what held it is gone: the head of the section it was in, or of the page. What has
 * the focus already keeps it.
 * @param sectionId of the section that the form stood in; null where it stood in none
 */
export function focusNext(sectionId: string | null): void {
  const held = document.activeElement
  if (held !== null && held !== document.body && held.isConnected) return
  const section = sectionId === null ? null : document.getElementById(sectionId)
  focusHeading(section?.querySelector<HTMLElement>('h2') ?? document.querySelector<HTMLElement>('main h1'))
}

/** Puts the focus on a heading, for whoever hears the page or goes on with the keyboard. */
export function focusHeading(heading: HTMLElement | null): void {
  if (heading === null) return
  heading.tabIndex = -1
  heading.classList.add('outline-none')
  heading.focus()
}
