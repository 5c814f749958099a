/** Whether a choice of how a dose is meant takes all of an ingredient out, so that it asks for no amount. */
export function takesAll(how: string): boolean {
  return how === 'without' || how === 'in_place_all'
}
