import { mustBeWithin } from '../checks'
import type { Component, CrossProducts } from './types'

/** Levels of the smaller of two crossed factors; the cost grows with their cube. */
const MOST_CROSSED = 200

/**
 * Passes once over the rows and keeps sums by level; whatever is fitted afterwards costs as many steps as there are
 * levels. Two random factors are split into components that no row links, so that nested ones cost no more than one.
 * @param u n × (p + 1) by rows: fixed columns, then y; @param random the levels of one or two random factors, n each
 * @throws CalcError 'out-of-range' when more than 200 levels of the smaller factor hang together
 */
export function crossProducts(q: {
  u: readonly (readonly number[])[]
  random: readonly { name: string; levels: readonly string[] }[]
}): CrossProducts {
  const factors = q.random.map(({ name, levels }) => ({ name, ...codesOf(levels) })).sort((a, b) => b.count - a.count)
  const width = q.u[0]!.length
  const sums = factors.map(({ codes, count }) => sumsByLevel(q.u, codes, count))
  const [fine, coarse] = factors
  const links = sums[0]!.map(() => new Map<number, number>())
  if (coarse)
    fine!.codes.forEach((code, i) => links[code]!.set(coarse.codes[i]!, (links[code]!.get(coarse.codes[i]!) ?? 0) + 1))

  const within = Array.from({ length: width }, () => new Array<number>(width).fill(0))
  const coarseAbout = Array.from({ length: coarse?.count ?? 0 }, () => new Array<number>(width).fill(0))
  q.u.forEach((row, i) => {
    const level = sums[0]![fine!.codes[i]!]!
    const about = row.map((value, j) => value - level.sum[j]! / level.count)
    if (coarse) coarseAbout[coarse.codes[i]!]!.forEach((_, j, own) => (own[j]! += about[j]!))
    about.forEach((a, j) => {
      if (a !== 0) for (let m = 0; m <= j; m++) within[j]![m]! += a * about[m]!
    })
  })
  for (let j = 0; j < width; j++) for (let m = 0; m < j; m++) within[m]![j] = within[j]![m]!
  return {
    n: q.u.length,
    p: width - 1,
    names: factors.map(({ name }) => name),
    levelCounts: factors.map(({ count }) => count),
    largestLevels: sums.map((levels) => levels.reduce((most, { count }) => Math.max(most, count), 0)),
    within,
    components: componentsOf(sums[0]!, coarseAbout, links),
  }
}

function codesOf(levels: readonly string[]): { codes: number[]; count: number } {
  const known = new Map<string, number>()
  const codes = levels.map((level) => {
    const code = known.get(level) ?? known.size
    known.set(level, code)
    return code
  })
  return { codes, count: known.size }
}

function sumsByLevel(
  u: readonly (readonly number[])[],
  codes: readonly number[],
  count: number,
): { count: number; sum: number[] }[] {
  const levels = Array.from({ length: count }, () => ({ count: 0, sum: new Array<number>(u[0]!.length).fill(0) }))
  u.forEach((row, i) => {
    const level = levels[codes[i]!]!
    level.count++
    row.forEach((value, j) => (level.sum[j]! += value))
  })
  return levels
}

function componentsOf(
  fine: readonly { count: number; sum: number[] }[],
  coarseAbout: readonly number[][],
  links: readonly ReadonlyMap<number, number>[],
): Component[] {
  if (coarseAbout.length === 0)
    return [{ fine: fine.map((level) => ({ ...level, links: [] })), coarse: [], crossing: [] }]
  const root = coarseAbout.map((_, j) => j)
  const find = (j: number): number => {
    let top = j
    while (root[top] !== top) top = root[top]!
    root[j] = top
    return top
  }
  for (const own of links) {
    const [first, ...others] = [...own.keys()]
    for (const other of others) root[find(other)] = find(first!)
  }
  const components = new Map<number, Component>()
  const placeOf = coarseAbout.map((about, j) => {
    const component = components.get(find(j)) ?? { fine: [], coarse: [], crossing: [] }
    components.set(find(j), component)
    mustBeWithin('random.levels', component.coarse.push({ about }), { max: MOST_CROSSED })
    return component.coarse.length - 1
  })
  fine.forEach((level, i) => {
    const own = [...links[i]!]
    components
      .get(find(own[0]![0]))!
      .fine.push({ ...level, links: own.map(([j, count]) => ({ coarse: placeOf[j]!, count })) })
  })
  for (const component of components.values()) component.crossing = crossingOf(component)
  return [...components.values()]
}

function crossingOf({ fine, coarse }: Component): number[][] {
  const crossing = coarse.map(() => coarse.map(() => 0))
  for (const { count, links } of fine) {
    if (links.length === 1) continue
    for (const one of links) {
      crossing[one.coarse]![one.coarse]! += one.count
      for (const other of links) crossing[one.coarse]![other.coarse]! -= (one.count * other.count) / count
    }
  }
  return crossing
}
