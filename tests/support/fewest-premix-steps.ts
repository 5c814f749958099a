import type { DoseAim, Scale } from '@/lib/calc/weighing/types'

/** Steps of the shortest premix by trying every mark of every scale, written without the search that it judges. */
export function fewestSteps(q: DoseAim & { scales: readonly Scale[] }, mostSteps: number): number | null {
  const scales = [...q.scales]
    .map((s) => ({ ...s, u: Math.sqrt(2 * (s.resolutionG ** 2 / 12 + s.repeatabilityG ** 2)) }))
    .sort((a, b) => a.u - b.u)
  const on = (massG: number) => scales.find((s) => s.capacityG >= massG - 1e-12)
  const masses: { g: number; u: number }[] = []
  for (const s of scales) {
    for (let i = 1; i * s.resolutionG <= s.capacityG + 1e-12; i++) {
      if (on(i * s.resolutionG) === s) masses.push({ g: i * s.resolutionG, u: s.u })
    }
  }
  const isGood = (share: number, variance: number, totalG: number) => {
    const portionG = q.doseG / share
    const scale = on(portionG)
    if (scale === undefined || portionG > totalG + 1e-12 || portionG - q.doseG > q.mostCarrierG + 1e-12) return false
    return q.coverageFactor * Math.sqrt(variance + (scale.u / portionG) ** 2) <= q.errorShare
  }
  const search = (stepsLeft: number, share: number, variance: number, totalG: number): boolean => {
    if (stepsLeft === 0) return isGood(share, variance, totalG)
    return masses.some(
      (take) =>
        take.g <= totalG + 1e-12 &&
        masses.some((carrier) => {
          const sum = take.g + carrier.g
          if (sum > q.mostPremixG + 1e-12) return false
          const growth = (carrier.g / sum) ** 2 * ((take.u / take.g) ** 2 + (carrier.u / carrier.g) ** 2)
          return search(stepsLeft - 1, (share * take.g) / sum, variance + growth, sum)
        }),
    )
  }
  for (let steps = 0; steps <= mostSteps; steps++) if (search(steps, 1, 0, Infinity)) return steps
  return null
}
