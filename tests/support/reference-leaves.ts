import { expect, test } from 'vitest'
import { publishedCheck, type PublishedCheck } from './published-check'

export type Leaf = number | string | boolean | null
export type Tree = Leaf | readonly Tree[] | { readonly [name: string]: Tree }

/** A reference case with a tolerance by the name of a figure, and an absolute one where 0 is expected. */
export type ReferenceCase = {
  title: string
  source: string
  computedWith: string
  checkedWith: string
  tolerance: { rel: number; fields: Readonly<Record<string, number>>; zero_abs: number }
  expected: Tree
}

/**
 * Every figure and word of a reference case, each a check of its own, and whatever is not there must not be there.
 * @param got our answer in the shape and under the names of what is expected; it may hold more
 */
export function checkLeaves(c: ReferenceCase, of: NonNullable<PublishedCheck['of']>, got: () => Tree): void {
  let kept: Tree | undefined
  for (const { path, leaf } of leavesOf(c.expected)) {
    const found = () => atPath((kept ??= got()), path)
    const name = path.findLast((step) => typeof step === 'string') ?? ''
    const what = `${c.title}: ${path.join(' ')}`
    const status = `computed with ${c.computedWith}; second route: ${c.checkedWith}`
    if (typeof leaf === 'number') {
      const relative = c.tolerance.fields[name] ?? c.tolerance.rel
      publishedCheck({
        of,
        what,
        source: c.source,
        status,
        expected: leaf,
        got: () => Number(found() ?? NaN),
        tolerance: leaf === 0 ? { absolute: c.tolerance.zero_abs } : { relative },
        why: 'how far both routes can be trusted',
      })
    } else if (typeof leaf === 'string') {
      publishedCheck({ of, what, source: c.source, status, expected: leaf, got: () => String(found()) })
    } else test(what, () => expect(found()).toBe(leaf))
  }
}

type Path = readonly (string | number)[]

function leavesOf(tree: Tree, path: Path = []): { path: Path; leaf: Leaf }[] {
  if (tree === null || typeof tree !== 'object') return [{ path, leaf: tree }]
  const inner: (readonly [string | number, Tree])[] = isList(tree)
    ? tree.map((each, i) => [i, each] as const)
    : Object.entries(tree)
  return inner.flatMap(([step, each]) => leavesOf(each, [...path, step]))
}

function atPath(tree: Tree, path: Path): Leaf | undefined {
  let at: Tree | undefined = tree
  for (const step of path) {
    if (at === undefined || at === null || typeof at !== 'object') return undefined
    at = isList(at) ? at[Number(step)] : at[step]
  }
  return at === undefined || (at !== null && typeof at === 'object') ? undefined : at
}

function isList(tree: Tree): tree is readonly Tree[] {
  return Array.isArray(tree)
}
