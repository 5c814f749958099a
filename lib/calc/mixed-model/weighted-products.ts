import { matrixProduct } from './matrix-product'
import { spdInverse } from './spd-inverse'
import { traceOfProduct } from './trace-of-product'
import type { Component, CrossProducts, WeightedProducts } from './types'

/**
 * Products of the rows weighted by V⁻¹, V = I + Σ θₖ Zₖ Zₖᵀ, from the sums by level alone. The fine factor is taken out
 * level by level, the coarse one component by component (Woodbury's identity twice), so no n × n matrix is formed.
 * @param cross from crossProducts; @param ratios θ ≥ 0, one for each of its names
 * Source: Searle, Casella & McCulloch (1992), Variance Components, chapter 6 and appendix M.5.
 */
export function weightedProducts(cross: CrossProducts, ratios: readonly number[]): WeightedProducts {
  const width = cross.p + 1
  const zeros = () => Array.from({ length: width }, () => new Array<number>(width).fill(0))
  const names = cross.names
  const sums: WeightedProducts = {
    p: cross.p,
    logDet: 0,
    whole: cross.within.map((row) => [...row]),
    first: names.map(zeros),
    second: names.map(() => names.map(zeros)),
    traces: names.map(() => 0),
    doubleTraces: names.map(() => names.map(() => 0)),
  }
  for (const component of cross.components) {
    if (component.coarse.length > 0) addCrossed(sums, component, ratios[0]!, ratios[1]!)
    else addFine(sums, component, ratios[0]!)
  }
  const all = [sums.whole, ...sums.first, ...sums.second.flat()]
  for (const matrix of all) for (let j = 0; j < width; j++) for (let m = 0; m < j; m++) matrix[m]![j] = matrix[j]![m]!
  if (names.length === 2) {
    sums.second[1]![0] = sums.second[0]![1]!
    sums.doubleTraces[1]![0] = sums.doubleTraces[0]![1]!
  }
  return sums
}

function addFine(sums: WeightedProducts, component: Component, theta: number): void {
  for (const { count, sum } of component.fine) {
    const shrink = 1 / (1 + count * theta)
    const weight = count * shrink
    sums.logDet += Math.log1p(count * theta)
    addOuter(sums.whole, sum, sum, shrink / count)
    addOuter(sums.first[0]!, sum, sum, shrink * shrink)
    addOuter(sums.second[0]![0]!, sum, sum, weight * shrink * shrink)
    sums.traces[0]! += weight
    sums.doubleTraces[0]![0]! += weight * weight
  }
}

function addCrossed(sums: WeightedProducts, { fine, coarse, crossing }: Component, theta: number, phi: number): void {
  const b = coarse.length
  const width = sums.p + 1
  const square = () => Array.from({ length: b }, () => new Array<number>(b).fill(0))
  // after the fine factor alone: R = Z₂ᵀV₁⁻¹Z₂, A = Z₂ᵀV₁⁻¹U, and F = Z₁ᵀV₁⁻¹Z₂ as FᵀF and FᵀDF
  const r = crossing.map((row) => [...row])
  const ff = square()
  const fdf = square()
  const a = coarse.map(({ about }) => [...about])
  const levels = fine.map((level) => ({ ...level, shrink: 1 / (1 + level.count * theta) }))
  for (const { count, sum, links, shrink } of levels) {
    const weight = count * shrink
    sums.logDet += Math.log1p(count * theta)
    sums.traces[0]! += weight
    sums.doubleTraces[0]![0]! += weight * weight
    addOuter(sums.whole, sum, sum, shrink / count)
    for (const one of links) {
      addTo(a[one.coarse]!, sum, (shrink * one.count) / count)
      for (const other of links) {
        const product = one.count * other.count
        r[one.coarse]![other.coarse]! += (shrink * product) / count
        ff[one.coarse]![other.coarse]! += shrink * shrink * product
        fdf[one.coarse]![other.coarse]! += shrink * shrink * weight * product
      }
    }
  }
  // then the coarse one: H = φ (I + φR)⁻¹
  const { inverse, logDet } = spdInverse(r.map((row, i) => row.map((value, j) => phi * value + (i === j ? 1 : 0))))
  const h = inverse.map((row) => row.map((value) => phi * value))
  sums.logDet += logDet
  const ha = matrixProduct(h, a)
  ha.forEach((row, j) => addOuter(sums.whole, a[j]!, row, -1))

  // T₁ = Z₁ᵀV⁻¹U level by level, T₂ = Z₂ᵀV⁻¹U, and I − HR, which is (I + φR)⁻¹
  const ft = coarse.map(() => new Array<number>(width).fill(0))
  for (const { count, sum, links, shrink } of levels) {
    const t = [...sum]
    for (const { coarse: j, count: shared } of links) addTo(t, ha[j]!, -shared)
    addOuter(sums.first[0]!, t, t, shrink * shrink)
    addOuter(sums.second[0]![0]!, t, t, count * shrink * shrink * shrink)
    for (const { coarse: j, count: shared } of links) addTo(ft[j]!, t, shared * shrink * shrink)
  }
  const t2 = matrixProduct(inverse, a)
  const s22 = matrixProduct(r, inverse)
  const [hft, kt, st] = [matrixProduct(h, ft), matrixProduct(inverse, t2), matrixProduct(s22, t2)]
  for (let j = 0; j < b; j++) {
    addOuter(sums.second[0]![0]!, ft[j]!, hft[j]!, -1)
    addOuter(sums.first[1]!, t2[j]!, t2[j]!, 1)
    addOuter(sums.second[0]![1]!, ft[j]!, kt[j]!, 0.5)
    addOuter(sums.second[0]![1]!, kt[j]!, ft[j]!, 0.5)
    addOuter(sums.second[1]![1]!, t2[j]!, st[j]!, 1)
  }
  const hff = matrixProduct(h, ff)
  sums.traces[0]! -= traceOfProduct(h, ff)
  sums.doubleTraces[0]![0]! += traceOfProduct(hff, hff) - 2 * traceOfProduct(h, fdf)
  sums.doubleTraces[0]![1]! += traceOfProduct(matrixProduct(inverse, ff), inverse)
  sums.traces[1]! += s22.reduce((sum, row, j) => sum + row[j]!, 0)
  sums.doubleTraces[1]![1]! += traceOfProduct(s22, s22)
}

/** Adds scale · a bᵀ to the lower triangle. */
function addOuter(target: number[][], a: readonly number[], b: readonly number[], scale: number): void {
  for (let j = 0; j < a.length; j++) {
    const value = scale * a[j]!
    if (value === 0) continue
    const row = target[j]!
    for (let m = 0; m <= j; m++) row[m]! += value * b[m]!
  }
}

function addTo(target: number[], values: readonly number[], scale: number): void {
  for (let j = 0; j < values.length; j++) target[j]! += scale * values[j]!
}
