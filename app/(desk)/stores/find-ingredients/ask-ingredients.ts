import type { FoundIngredient, FoundIngredients } from '@/lib/kitchen/stores/find-ingredients'

/** Longer than any name, and short enough for an address. */
const longestPart = 300
/** So many ids fit into an address. */
const mostIds = 100

/**
 * Ingredients by part of a name, for a field that searches them.
 * @param heldIds ended ones that the form holds already, and that may be chosen again
 * @throws when no answer comes, or none that can be used
 */
export async function askIngredients(
  part: string,
  heldIds: readonly string[],
  signal: AbortSignal,
): Promise<FoundIngredients> {
  return ask([['part', part.slice(0, longestPart)], ...heldIds.slice(0, mostIds).map((id) => ['id', id])], signal)
}

/** Ingredients by their ids, as they stand now. @throws as above */
export async function askIngredientsById(ids: readonly string[]): Promise<FoundIngredient[]> {
  const found: FoundIngredient[] = []
  for (let at = 0; at < ids.length; at += mostIds)
    found.push(...(await ask(ids.slice(at, at + mostIds).map((id) => ['id', id]))).options)
  return found
}

async function ask(question: string[][], signal?: AbortSignal): Promise<FoundIngredients> {
  const response = await fetch(`/stores/find-ingredients?${new URLSearchParams(question).toString()}`, {
    signal: signal ?? null,
  })
  if (!response.ok) throw new Error(`find-ingredients: ${response.status}`)
  return (await response.json()) as FoundIngredients
}
